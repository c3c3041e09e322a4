"""The whole package as text: a golden of the chandlery, and laws over every example."""

import re
from pathlib import Path

import pytest

from layerfolio.catalogue.code_sets import set_ids
from layerfolio.catalogue.sources import all_sources
from layerfolio.dossier import compile_dossier, open_project
from layerfolio.sheets.as_text import as_text
from layerfolio.sheets.desk import SOURCES
from layerfolio.sheets.package import package
from layerfolio.sheets.source_book import NOT_REREAD

ROOT = Path(__file__).parents[2]
GOLDEN = ROOT / "tests" / "golden"
PROJECTS = sorted((ROOT / "examples").glob("*/*.yaml")) + sorted((ROOT / "shared" / "starters").glob("*/project.yaml"))


def printed(path):
    made = package(compile_dossier(open_project(path)))
    return made, "\n".join(as_text(sheet) for sheet in made.sheets)


def test_the_chandlery_reads_as_before():
    """When this fails, read the difference; if every changed line is meant, write the golden again:
    python -c "import test_package as t; t.write()" in tests/sheets."""
    _, text = printed(ROOT / "examples" / "chandlery" / "project.yaml")
    assert text == (GOLDEN / "chandlery.txt").read_text(encoding="utf-8")


def write():
    _, text = printed(ROOT / "examples" / "chandlery" / "project.yaml")
    (GOLDEN / "chandlery.txt").write_text(text, encoding="utf-8")


@pytest.mark.parametrize("path", PROJECTS, ids=lambda p: f"{p.parent.name}/{p.stem}")
class TestEveryExample:
    def test_sheet_numbers_are_unique(self, path):
        made, _ = printed(path)
        numbers = [sheet.number for sheet in made.sheets]
        assert len(numbers) == len(set(numbers))

    def test_every_source_mark_is_resolved(self, path):
        made, text = printed(path)
        listing = next(as_text(s) for s in made.sheets if s.number == SOURCES).partition("## Source marks")[2]
        listed = set(re.findall(rf"^([cdps]\d+{NOT_REREAD}?) \|", listing, re.M))
        text = re.sub(r"\b[0-9a-f]{4}(?: [0-9a-f]{4})+", "", text)  # check sums in groups
        used = set(re.findall(rf"\b([cdps]\d+{NOT_REREAD}?)(?=[\s|)]|$)", text))
        assert used and used <= listed

    def test_no_symbol_is_listed_twice(self, path):
        _, text = printed(path)
        table = text.partition("## Symbols")[2].partition("##")[0]
        listed = [half.strip() for row in table.splitlines() for half in re.findall(r"(?:[^|]*\|){2}[^|]*", row)]
        listed = [one.strip(" |") for one in listed]
        assert len(listed) == len(set(listed)) > 10

    def test_references_point_at_sheets_that_exist(self, path):
        made, text = printed(path)
        numbers = {sheet.number for sheet in made.sheets}
        for reference in set(re.findall(r"\b([A-Z]\d*-[TV])\b", text)):
            assert reference in numbers, reference
        lines = len(compile_dossier(open_project(path)).findings)
        assert all(int(n) <= lines for n in re.findall(r"C1, line (\d+)", text))

    def test_no_key_of_a_source_is_printed_raw(self, path):
        _, text = printed(path)
        raw = [key for key in all_sources() if "-" in key and re.search(rf"\b{re.escape(key)}\b", text)]
        assert not [key for key in raw if key not in set_ids()]  # the id of the set is what a project file states

    def test_the_tool_claims_nothing(self, path):
        _, text = printed(path)
        official = "Official's note"
        words = "\n".join(line for line in text.splitlines() if official not in line)
        words = words.replace("Insulation certificate", "")  # the name of a sheet that is to be filled in
        assert not re.search(r"\b(approved|certif\w+|guarantee\w*|compliant|complies)\b", words, re.I)


@pytest.mark.parametrize("page", ["letter", "a4", "tabloid", "a3"])
def test_every_page_format_binds(page, tmp_path):
    from layerfolio.binding import bind

    text = (ROOT / "examples" / "chandlery" / "project.yaml").read_text(encoding="utf-8")
    file = tmp_path / "project.yaml"
    file.write_text(text.replace("page: letter", f"page: {page}"), encoding="utf-8")
    bound = bind(package(compile_dossier(open_project(file))), tmp_path / "out.pdf")
    assert bound.pages >= len(bound.sheets)


def test_no_step_of_a_customary_sheet_changes_units_on_the_way():
    """A printed step is customary throughout, or in SI throughout and says so."""
    from layerfolio.sheets.calculation import _sections, section_system
    from layerfolio.steps.spelling import spell
    from layerfolio.steps.trace import Step

    dossier = compile_dossier(open_project(ROOT / "examples" / "chandlery" / "customary.yaml"))
    seen = set()
    for study in (*dossier.thermal.values(), *dossier.condensation.values()):
        for _, entries in _sections(study.trace):
            system = section_system(entries, "customary")
            seen.add(system)
            for entry in entries:
                if isinstance(entry, Step):
                    first = dict((name, unit) for name, _, unit in spell(entry, system).arguments)
                    assert system == "metric" or "m2.K/W" not in first.values()
    assert seen == {"metric", "customary"}
