"""The explanation sheet: nothing of the comparison is cut, evidence by its rows, words that fit the code and the assembly."""

from functools import cache
from pathlib import Path

import pytest

from layerfolio.dossier import compile_dossier, documented, open_project
from layerfolio.sheets.as_text import as_text
from layerfolio.sheets.blocks import Table
from layerfolio.sheets.desk import Desk
from layerfolio.sheets.explanation import explanation_sheet

CHANDLERY = Path(__file__).parents[2] / "examples" / "chandlery" / "project.yaml"


@cache
def desk(code="nbc-2020"):
    import tempfile

    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "project.yaml"
        path.write_text(CHANDLERY.read_text(encoding="utf-8").replace("set: nbc-2020", f"set: {code}"), encoding="utf-8")
        return Desk(documented(compile_dossier(open_project(path))))


def sheets(code="nbc-2020"):
    made = desk(code)
    found = enumerate(made.dossier.explanations, 1)
    return {one.assembly: explanation_sheet(made, number, one) for number, one in found}


@pytest.mark.parametrize("code", ["nbc-2020", "irc-2021"])
def test_no_cell_of_the_comparison_is_cut(code):
    for sheet in sheets(code).values():
        [table] = [inner for one in sheet.blocks for inner in getattr(one, "blocks", ()) if isinstance(inner, Table)]
        assert table.rows and not any("…" in str(cell) for row in table.rows for cell in row.cells)


def test_the_evidence_names_the_rows_of_the_register():
    register = desk().dossier.register
    text = as_text(sheets()["W1"])
    named = next(one.number for one in register.rows if one.document and one.document.number == "P-15-2")
    [bracing] = register.of("bracing")
    assert f"{named}: P-15-2" in text
    assert f"structural mark or listing ({bracing.number})" in text


def test_the_class_of_the_united_states_stands_where_its_code_does():
    assert not any(word in as_text(sheets()["W1"]) for word in ("Class II", "United States", "1.05 US perm"))
    assert "Class II" in as_text(sheets("irc-2021")["W1"])


def test_bracing_that_no_line_judges_is_named_as_the_project_file_names_it():
    words = "It is named as bracing in the project file; not judged here."
    made = sheets()
    assert words in as_text(made["R1"])
    assert words not in as_text(made["W1"]) and "It is named as bracing of the wall" in as_text(made["W1"])
