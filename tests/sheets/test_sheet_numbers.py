"""Numbers of sheets by two tables: every reference leads to a sheet that is there."""

import re
import shutil
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

from layerfolio.dossier import compile_dossier, open_project
from layerfolio.drawing.marks import Clip, Group, Text
from layerfolio.sheets.as_text import as_text
from layerfolio.sheets.blocks import Beside, Figure
from layerfolio.sheets.numbering import TABLE, by_discipline, kind_of
from layerfolio.sheets.package import package
from layerfolio.sheets.references import References

ROOT = Path(__file__).parents[2]
EXAMPLES = [
    one for one in sorted(ROOT.glob("examples/*/*.yaml")) if one.stem in ("project", "customary", "british-columbia", "fixed")
]
PLAIN = re.compile(r"(?<![\w\-.])(?:G[0-9]|C[1-9]|E1|ST[1-9]|X[0-9]+|[A-Z][A-Za-z0-9]{0,7}-[TV])(?![\w.\-])")
DISCIPLINE = re.compile(r"\b[AGS]-[0-9]{3}\b")
OTHER = ("class ", "Class ", "grade ", "Table ", "Figure ", "Zone ", "zone ", "clause ")


@cache
def made(path: Path, numbers: str):
    """The package of an example; its file with the numbers that are asked for is a neighbour of the original."""
    loaded = open_project(path)
    about = loaded.project.project.but(sheet_numbers=numbers)
    dossier = compile_dossier(loaded)

    return package(replace(dossier, project=dossier.project.but(project=about)))


def printed(path: Path, numbers: str) -> str:
    return "".join(map(as_text, made(path, numbers).sheets)) + "\n".join(lettering(path, numbers))


def drawings(blocks):
    for block in blocks:
        if isinstance(block, Figure):
            yield block.drawing
        elif isinstance(block, Beside):
            yield from drawings((*block.left, *block.right))


def lettering(path: Path, numbers: str, role: str = "") -> list[str]:
    """Texts of all drawings."""
    found, open_ = [], [mark for sheet in made(path, numbers).sheets for one in drawings(sheet.blocks) for mark in one.marks]
    while open_:
        mark = open_.pop()
        if isinstance(mark, Clip | Group):
            open_ += mark.marks
        elif isinstance(mark, Text) and mark.role.startswith(role):
            found.append(mark.text)
    return found


def references(text: str, pattern: re.Pattern) -> set[str]:
    return {one[0] for one in pattern.finditer(text) if not text[: one.start()].endswith(OTHER)}


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda p: f"{p.parent.name}/{p.stem}")
class TestEveryExample:
    def test_every_referenced_sheet_exists(self, path):
        numbers = {one.number for one in made(path, "plain").sheets}
        missing = references(printed(path, "plain"), PLAIN) - numbers
        assert not missing

    def test_by_discipline_too_and_no_plain_number_is_left(self, path):
        text = printed(path, "discipline")
        numbers = {one.number for one in made(path, "discipline").sheets}
        assert references(text, DISCIPLINE) == numbers
        assert not references(text, PLAIN)

    def test_numbers_are_unique_and_of_the_convention(self, path):
        numbers = [one.number for one in made(path, "discipline").sheets]
        assert len(set(numbers)) == len(numbers) and all(re.fullmatch(r"[AGS]-[0-6][0-9]{2}", one) for one in numbers)

    def test_as_many_references_stand_in_both(self, path):
        """Where the plain package refers to a record, a calculation or a schedule, the other does."""
        table = by_discipline([one.number for one in made(path, "plain").sheets])
        for number, other in table.items():
            if re.fullmatch(PLAIN, number) and number not in ("C1", "E1"):
                plain = len(re.findall(rf"(?<![\w\-.]){re.escape(number)}(?![\w.\-])", printed(path, "plain")))
                found = len(re.findall(rf"\b{other}\b", printed(path, "discipline")))
                assert found >= plain > 0, number

    def test_bubbles_of_the_building_section_name_sheets(self, path):
        for profile in ("plain", "discipline"):
            numbers = {one.number for one in made(path, profile).sheets}
            assert set(lettering(path, profile, "bubble sheet")) <= numbers


def test_the_chandlery_has_bubbles():
    path = ROOT / "examples" / "chandlery" / "project.yaml"
    assert {"A-501", "A-502"} <= set(lettering(path, "discipline", "bubble sheet"))


def copied(folder: Path, *changes: tuple[str, str]) -> Path:
    """A chandlery numbered by discipline, with changes to its file."""
    project = Path(shutil.copytree(ROOT / "examples" / "chandlery", folder / "chandlery")) / "project.yaml"
    text = project.read_text(encoding="utf-8")
    for old, new in (("  units: metric", "  units: metric\n  sheet_numbers: discipline"), *changes):
        assert old in text
        text = text.replace(old, new)
    project.write_text(text, encoding="utf-8")
    return project


def test_a_door_with_the_name_of_a_detail_keeps_it(tmp_path):
    """Door D1 and detail D1 have one name; only the detail's sheet is renumbered."""
    found = package(compile_dossier(open_project(copied(tmp_path, ("A4", "D1")))))
    text = "".join(map(as_text, found.sheets))
    assert "D1 | Shop door" in text and "sheet A-501" in text and "acceptance of A-501 to A-5" in text


@pytest.mark.parametrize(("plain", "kind"), [
    ("G0", "G-0"), ("C1", "G-0"), ("C4", "A-6"), ("E1", "G-0"), ("X3", "G-0"), ("D0", "A-3"), ("D7", "A-5"), ("ST1", "S-0"),
    ("ST2", "S-2"), ("ST3", "S-6"), ("ST4", "S-0"), ("W1-T", "A-6"), ("W1-V", "A-6"), ("W1", "A-4"), ("Roof2", "A-4"),
])  # fmt: skip
def test_one_table_gives_discipline_and_kind(plain, kind):
    assert kind_of(plain) == kind
    assert all(re.fullmatch(r"[A-Z]-[0-9]", one) for _, _, one in TABLE)


def test_sequence_follows_the_package():
    assert by_discipline(["G0", "W1", "W1-T", "R1", "D0", "D1", "D2"]) == {
        "G0": "G-001", "W1": "A-401", "W1-T": "A-601", "R1": "A-402", "D0": "A-301", "D1": "A-501", "D2": "A-502",
    }  # fmt: skip


NUMBERS = by_discipline(["C1", "E1", "W1", "W1-T", "D0", "D1", "D2", "ST1"])


@pytest.mark.parametrize(("text", "then"), [
    ("C1, line 3", "G-001, line 3"), ("see W1, E1-03", "see A-401, G-002-03"), ("_see_ W1", "_see_ A-401"),
    ("wall W1 on slab S1", "wall W1 on slab S1"), ("calculated on W1-T.", "calculated on A-601."),
    ("Drawn on D1 to D2", "Drawn on A-501 to A-502"), ("as D1 and D2 draw it", "as A-501 and A-502 draw it"),
    ("state safety_glazing of D1", "state safety_glazing of D1"), ("categories D0 to D2", "categories D0 to D2"),
    ("panels of class E1", "panels of class E1"), ("sheet D0", "sheet A-301"), ("AC1-C1x", "AC1-C1x"), ("W1-TX", "W1-TX"),
    ("(D2)", "(A-502)"), ("grade C1", "grade C1"), ("no number", "no number"), ("C12", "C12"), ("3.C1", "3.C1"),
])  # fmt: skip
def test_a_text_by_the_other_table(text, then):
    assert References(NUMBERS).rewritten(text) == then


def test_what_the_user_wrote_stays():
    """A report called C1-12 or a lot in block E1 is no sheet."""
    references = References(NUMBERS, ("Lot 7, block E1", "C1"))
    assert references.rewritten("Lot 7, block E1 | E1") == "Lot 7, block E1 | G-002"


def test_a_projects_own_words_are_kept(tmp_path):
    project = copied(tmp_path, ("Lot 7, Tern Point Road", "Lot C1, see E1 and W1"))
    made_ = package(compile_dossier(open_project(project)))
    assert made_.title_block.site == "Lot C1, see E1 and W1"
    assert "Lot C1, see E1 and W1" in as_text(made_.sheets[0])
