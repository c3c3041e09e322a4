"""Sheet E1 as text: what each row says, the foot with its count and check sums, and that long registers break."""

import re
from functools import cache
from pathlib import Path

import pytest

from layerfolio.binding.book import render
from layerfolio.codes.register import register
from layerfolio.codes.register_types import Register, State
from layerfolio.dossier import compile_dossier, open_project
from layerfolio.sheets.as_text import as_text
from layerfolio.sheets.blocks import Package, Table, VerdictCell
from layerfolio.sheets.desk import Desk
from layerfolio.sheets.evidence import WIDTHS, evidence_sheet
from layerfolio.sheets.package import title_block

ROOT = Path(__file__).parents[2]
EXAMPLES = sorted((ROOT / "examples").glob("*/*.yaml"))


@cache
def sheet(path):
    loaded = open_project(path)
    dossier = compile_dossier(loaded)
    found = register(loaded.project, dossier.assemblies, {}, dossier.findings, loaded.folder)
    return dossier, found, evidence_sheet(Desk(dossier), found)


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda p: f"{p.parent.name}/{p.stem}")
class TestEveryExample:
    def test_a_row_each_with_its_number_title_and_state(self, path):
        _, found, made = sheet(path)
        table = next(x for x in made.blocks if isinstance(x, Table))
        assert [row.cells[0] for row in table.rows] == [f"**{x.number}**" for x in found.rows]
        assert all(len(row.cells) == len(WIDTHS) and all(row.cells) for row in table.rows)

    def test_what_waits_is_bold_and_carries_its_verdict(self, path):
        _, found, made = sheet(path)
        table = next(x for x in made.blocks if isinstance(x, Table))
        for row, one in zip(table.rows, found.rows, strict=True):
            assert row.cells[1].startswith("**") == one.waits
            assert isinstance(row.after, VerdictCell) == one.waits
            assert not one.waits or row.after.verdict is one.verdict

    def test_the_expected_standard_is_printed_in_the_row(self, path):
        _, found, made = sheet(path)
        text = as_text(made)
        assert all(x.expected_words.replace("\u00a0", " ") in text for x in found.rows)

    def test_the_foot_counts_and_lists_the_check_sums(self, path):
        _, found, made = sheet(path)
        text = as_text(made)
        files = [x for x in found.rows if x.sha256]
        assert f"Beside this set {len(files)} of {len(found.rows)}." in text
        assert all(f"{x.sum_in_groups} …" in text and x.document.file in text for x in files)
        for state, words in ((State.MISSING, "missing"), (State.NAMED, "named without a file"), (State.EXPIRED, "expired on")):
            count = sum(x.state is state for x in found.rows)
            assert not count or re.search(rf"\b{count} {words}", text)

    def test_it_prints_in_the_units_of_the_project(self, path):
        dossier, _, made = sheet(path)
        assert ("Btu" in as_text(made)) == (dossier.system == "customary")

    @pytest.mark.parametrize("page", ["letter", "a3"])
    def test_it_binds_and_every_row_is_on_a_page(self, path, page):
        import io
        from dataclasses import replace

        import pypdf

        dossier, found, made = sheet(path)
        package = Package(replace(title_block(dossier), page=page), "Register", (made,))
        data = render(package)[0]
        assert render(package)[0] == data
        text = "".join(one.extract_text() for one in pypdf.PdfReader(io.BytesIO(data)).pages)
        assert all(x.number in text for x in found.rows)


def test_the_columns_fill_the_field():
    assert sum(WIDTHS) == 180


def test_an_empty_register_says_so():
    dossier, _, _ = sheet(EXAMPLES[0])
    text = as_text(evidence_sheet(Desk(dossier), Register(())))
    assert "asks for a document" in text and "Beside this set 0 of 0." in text


def test_the_explanation_of_a_material_is_among_its_sheets():
    dossier, found, made = sheet(ROOT / "examples" / "chandlery" / "project.yaml")
    layer = dossier.assemblies["W1"].layer(dossier.explanations[0].layer)
    (row,) = found.of(layer.material, "material")
    line = next(x for x in as_text(made).splitlines() if x.startswith(row.number))
    assert line.endswith("X1, X2")
