"""Lines of bracing in British Columbia's own system go by the board of their panels: wood panels fill a type of theirs alone.

Outside figures: the province's edition of 2024, 9.23.13.6.(1) (wood sheathing outside and gypsum board inside, or gypsum board
alone) and its framing types: gypsum board GWB-A to GWB-D of 12.5 mm with 1.15 to 3.28 kN/m against WSP-B with 6.22 kN/m.
"""

from dataclasses import replace

import pytest

import builders as b
from codes_lines import findings, judged, line, mm, pins, place, verdicts, wall
from layerfolio.reading.wall_lines import PanelBoard

MEETS, NOT, JUDGE, EVIDENCE = "meets", "does not meet", "needs judgement", "needs evidence"
OUTSIDE = wall(False, studs="400 mm")
QUESTIONS = ("wall-line-panel", "wall-line-fastening", "wall-line-length")
OTHER = ("fibreboard", "particleboard", "boards", "diagonal lumber", "plywood siding", "waferboard R-1", "sheathing")


def at(**more):
    return place("bc-2024", **{"occupancy": "house", "wind": 500} | more)


def stated(grade, thickness="12.7 mm", **more):
    board = PanelBoard(grade=grade, thickness=mm(thickness))
    return line(thickness=thickness, gypsum_opposite=True, panel=board, **more)


@pytest.mark.parametrize("grade", ["plywood", "OSB O-1", "OSB O-2", "CSA O325 W24"])
def test_wood_panels_fill_a_type(grade):
    found = findings(at(), stated(grade), OUTSIDE)
    assert str(found["wall-line-panel"].verdict) == str(found["wall-line-fastening"].verdict) == MEETS
    assert "WSP-B" in found["wall-line-fastening"].given and judged(at(), stated(grade), OUTSIDE).required


@pytest.mark.parametrize("grade", OTHER)
def test_other_boards_fill_none_of_theirs(grade):
    found = findings(at(), stated(grade), OUTSIDE)
    assert {str(found[one].verdict) for one in QUESTIONS} == {JUDGE}
    assert not any("WSP" in found[one].given + found[one].asked for one in QUESTIONS[1:])
    assert judged(at(), stated(grade), OUTSIDE).required is None


@pytest.mark.parametrize("assembly", [OUTSIDE, wall()])
@pytest.mark.parametrize(("thickness", "panel"), [("12.7 mm", JUDGE), ("12.5 mm", JUDGE), ("12.4 mm", NOT)])
def test_gypsum_board_goes_by_its_own_types(thickness, panel, assembly):
    found = findings(at(), stated("gypsum board", thickness), assembly)
    assert str(found["wall-line-panel"].verdict) == panel and "9.5 mm" not in found["wall-line-panel"].asked
    assert str(found["wall-line-fastening"].verdict) == JUDGE and "GWB" in found["wall-line-fastening"].asked
    assert str(found["wall-line-length"].verdict) == JUDGE and judged(at(), stated("gypsum board"), OUTSIDE).required is None


@pytest.mark.parametrize(("edge", "verdict"), [("200 mm", JUDGE), ("201 mm", NOT)])
def test_nails_of_gypsum_board_stand_at_200_mm(edge, verdict):
    one = stated("gypsum board", panel_fastening=pins("32 mm x 2.48 mm", edge=edge, field="200 mm"))
    assert verdicts(at(), one, OUTSIDE)["wall-line-fastening"] == verdict


@pytest.mark.parametrize(("edge", "verdict"), [("300 mm", JUDGE), ("301 mm", NOT)])
def test_screws_of_gypsum_board_stand_at_300_mm(edge, verdict):
    one = stated("gypsum board", panel_fastening=pins("32 mm x 3.5 mm", edge=edge, field="300 mm", kind="screw"))
    assert verdicts(at(), one, OUTSIDE)["wall-line-fastening"] == verdict


def test_a_panel_without_a_grade_waits_for_it():
    found = verdicts(at(), line(grade=None, gypsum_opposite=True), OUTSIDE)
    assert found["wall-line-panel"] == found["wall-line-fastening"] == EVIDENCE


@pytest.mark.parametrize(("between", "factor"), [((), 1.0), (("cavity",), 1.2)])
def test_gypsum_board_beyond_a_cavity_is_none_on_the_studs(between, factor):
    """Omitted with blocked edges 1.20."""
    made = wall(False, studs="600 mm", gypsum_inside=False)
    board = b.layer(1, R=0.08, d=0.0127, name="Gypsum", family="gypsum")
    air = b.layer(1, kind="cavity", cavity="unventilated", d=0.038, family="air", name="service cavity")
    layers = [*made.layers, *([air] if between else []), board]
    wide = b.assembly([replace(one, number=n) for n, one in enumerate(layers, 1)], name="W1")
    assert judged(at(), stated("plywood"), wide).required == pytest.approx(1.15 * factor)
