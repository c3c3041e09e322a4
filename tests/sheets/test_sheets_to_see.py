"""Where a line of the record sends its reader: to the sheet that shows the matter, and to none that is not there."""

from functools import cache
from pathlib import Path

import pytest

from layerfolio.dossier import compile_dossier, documented, open_project
from layerfolio.sheets.as_text import as_text
from layerfolio.sheets.compliance import sheets_to_see
from layerfolio.sheets.desk import Desk
from layerfolio.sheets.package import package

EXAMPLES = Path(__file__).parents[2] / "examples"
PROJECTS = ("straw-cottage/project.yaml", "straw-cottage/fixed.yaml", "chandlery/project.yaml", "chandlery/customary.yaml")


@cache
def made(path):
    dossier = compile_dossier(open_project(EXAMPLES / path))
    return package(dossier), documented(dossier)


def seen(path):
    desk = Desk(made(path)[1])
    return {(one.id.rpartition("/")[2], one.assembly): sheets_to_see(one, desk) for one in desk.dossier.findings}


def test_a_line_of_structure_names_the_sheet_that_shows_it():
    found = seen("straw-cottage/project.yaml")
    assert found["dead-load", "W1"] == found["dead-load", "CL1"] == ("ST4",)
    assert found["furring-over-foam", "W1"][:2] == ("W1", "ST3") and "ST1" in found["strawbale-structure", "W1"]
    assert found["bracing", None][0] == found["loads", None][0] == "ST1"
    assert found["wall-line", "L1"][0] == "ST2"


@pytest.mark.parametrize("path", PROJECTS)
def test_no_line_names_a_sheet_that_is_not_there(path):
    there = {one.number for one in made(path)[0].sheets}
    for key, sheets in seen(path).items():
        assert {one for one in sheets if not one.startswith("E1-")} <= there, (key, sheets)


@pytest.mark.parametrize("path", PROJECTS)
def test_the_register_names_sheets_that_are_there(path):
    bound, dossier = made(path)
    there = {one.number for one in bound.sheets}
    assert dossier.register.rows
    for row in dossier.register.rows:
        assert set(row.used_on) <= there, (row.number, row.used_on)



def test_a_line_says_which_open_documents_its_figures_rest_on():
    """The cottage: bales and membrane whose vapour figures nothing proves, batts
    whose paper has expired."""
    dossier = made("straw-cottage/project.yaml")[1]
    number = {row.subject: row.number for row in dossier.register.rows if row.kind == "material"}
    said = {(one.id.rpartition("/")[2], one.assembly): one.rests for one in dossier.findings}
    assert f"{number['straw-bales']}, whose figure in use is not proved" in said["condensation", "W1"]
    assert number["ceiling membrane"] in said["condensation", "CL1"] and number["mineral-wool-batt"] in said["condensation", "F1"]
    expired = dossier.register.row(number["mineral-wool-batt"])
    assert "Expired" in expired.note and "not among what it proves: vapour factor 1" in expired.note
    assert "density" in dossier.register.row(number["wood-fibre-board"]).note


def test_figures_of_the_place_and_of_the_fan_name_their_open_papers():
    """The county list has no document, the paper of the fan has expired: said at the zone and beside the losses."""
    bound, dossier = made("straw-cottage/project.yaml")
    number = {row.subject: row.number for row in dossier.register.rows if row.kind == "claim"}
    [zone] = [one for one in dossier.findings if one.id.endswith("/zone")]
    assert zone.rests == f"rests on {number['climate']}, missing"
    fan = next(row for row in dossier.register.rows if row.subject == "heat-recovery")
    assert "C3" in fan.used_on
    losses = next(as_text(one) for one in bound.sheets if one.number == "C3")
    assert f"its document has expired ({fan.number})" in losses


def test_a_rating_leads_to_the_line_on_what_the_layer_is_and_stands_once():
    """Straw and blown fibre are insulation, not the plaster or the board inside them; the fibre lies in two layers."""
    from layerfolio.sheets.stated_answers import stated_answers

    desk = Desk(made("straw-cottage/project.yaml")[1])
    lines = {one.id.rpartition("/")[2] + one.assembly: str(desk.line(one)) for one in desk.dossier.findings if one.assembly}
    rows = [row.cells for row in stated_answers(desk).rows if "Flame spread" in row.cells[1]]
    shown = {(cells[0].strip("*"), cells[1]): cells[3].split(", ") for cells in rows}
    assert len(rows) == len(shown) == 3
    assert lines["insulation-flame-spreadW1"] in shown["W1", "Flame spread of Straw bales on edge"]
    assert lines["finish-flame-spreadW1"] not in shown["W1", "Flame spread of Straw bales on edge"]
    assert lines["finish-flame-spreadCL1"] not in shown["CL1", "Flame spread of Blown wood fibre"]
