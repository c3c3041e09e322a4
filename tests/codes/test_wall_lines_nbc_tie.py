"""The tie of the bottom plate: nails, strips of steel, or the sheathing's lap; asked on every path.

Source: NBC as read in the Alberta edition of 2023 and in Ontario's code of 2024, Table 9.23.3.4 (82 mm at 400 mm, at required
braced panels 82 mm at 150 mm, for interior walls above and below) and 9.23.3.4.(2) (lap; strips of 50 × 0.41 mm at 1.2 m, two
nails of 63 mm at each end).
"""

import pytest

from codes_lines import findings, line, mm, pins, place, shank, strips, verdicts, wall, whole
from layerfolio.reading.wall_lines import PlateNailing

MEETS, NOT, JUDGE, EVIDENCE = "meets", "does not meet", "needs judgement", "needs evidence"
FULL = (("4.8 m", "0 m"), ("4.8 m", "4.8 m"))
LOW, HIGH = {}, {"Sa02": 0.8}
BARE = {"plate_nailing": None}


def nails(nail="82 mm x 3.66 mm", spacing="400 mm"):
    return PlateNailing(nail=shank(nail) if nail else None, spacing=mm(spacing) if spacing else None)


def tie(figures, assembly=None, **stated):
    return findings(place(**figures), line(FULL, **stated), assembly)["wall-line-tie"]


@pytest.mark.parametrize("inside", [True, False])
@pytest.mark.parametrize(("figures", "nail", "spacing", "verdict"), [
    (LOW, "82 mm x 3.66 mm", "400 mm", MEETS), (LOW, "82 mm x 3.66 mm", "401 mm", NOT), (LOW, "81 mm x 3.66 mm", "400 mm", NOT),
    (LOW, "82 mm x 3.25 mm", "400 mm", NOT), (LOW, "3-1/4 in x 0.148 in", "16 in", MEETS),
    (HIGH, "82 mm x 3.66 mm", "150 mm", MEETS), (HIGH, "82 mm x 3.66 mm", "151 mm", NOT),
    (HIGH, "82 mm x 3.66 mm", "400 mm", NOT), ({"wind": 900, "Sa02": 0.5}, "82 mm x 3.66 mm", "151 mm", NOT),
])  # fmt: skip
def test_nails_of_the_plate(inside, figures, nail, spacing, verdict):
    assert str(tie(figures, wall(inside), plate_nailing=nails(nail, spacing)).verdict) == verdict


@pytest.mark.parametrize("inside", [True, False])
@pytest.mark.parametrize("figures", [LOW, HIGH])
@pytest.mark.parametrize("stated", [None, nails(None), nails(spacing=None)])
def test_without_a_tie_no_line_meets(inside, figures, stated):
    assert whole(place(**figures), line(FULL, plate_nailing=stated), wall(inside)) == EVIDENCE
    assert "plate_nailing" in tie(figures, wall(inside), plate_nailing=stated).next_step


@pytest.mark.parametrize(("change", "verdict"), [
    ({}, MEETS), ({"width": "49 mm"}, NOT), ({"thickness": "0.4 mm"}, NOT), ({"spacing": "1.21 m"}, NOT), ({"nails": 1}, NOT),
    ({"nail": "62 mm x 3.25 mm"}, NOT), ({"width": "2 in", "spacing": "48 in", "nail": "2-1/2 in x 0.131 in"}, MEETS),
    ({"width": None}, EVIDENCE), ({"thickness": None}, EVIDENCE), ({"spacing": None}, EVIDENCE), ({"nails": None}, EVIDENCE),
    ({"nail": None}, EVIDENCE),
])  # fmt: skip
@pytest.mark.parametrize("inside", [True, False])
def test_strips_on_the_low_path(change, verdict, inside):
    assert str(tie(LOW, wall(inside), **BARE, plate_strips=strips(**change)).verdict) == verdict


def test_strips_at_required_braced_panels_are_a_question():
    one = tie(HIGH, **BARE, plate_strips=strips())
    assert str(one.verdict) == JUDGE and "9.23.3.4.(2)" in one.reason
    assert str(tie(HIGH, **BARE, plate_strips=strips(spacing="1.21 m")).verdict) == NOT


@pytest.mark.parametrize("figures", [LOW, HIGH])
@pytest.mark.parametrize(("inside", "lap", "verdict"), [
    (False, True, MEETS), (False, False, EVIDENCE), (False, None, EVIDENCE), (True, True, JUDGE), (True, False, EVIDENCE),
])  # fmt: skip
def test_the_lap_of_the_sheathing(figures, inside, lap, verdict):
    assert str(tie(figures, wall(inside), **BARE, sheathing_lap=lap).verdict) == verdict


@pytest.mark.parametrize("figures", [LOW, HIGH])
@pytest.mark.parametrize(("change", "verdict"), [
    ({"panel_fastening": pins("45 mm x 2.84 mm")}, NOT), ({"panel_fastening": None}, EVIDENCE),
    ({"panel_fastening": pins("63 mm x 4 mm", kind="screw")}, JUDGE), ({"grade": "fibreboard"}, JUDGE),
    ({"grade": None}, EVIDENCE),
])  # fmt: skip
def test_the_lap_holds_as_its_nails_do(figures, change, verdict):
    """9.23.3.4.(2)(a): plywood, strand board or waferboard, nailed by 9.23.3.5."""
    assert str(tie(figures, wall(False), **BARE, sheathing_lap=True, **change).verdict) == verdict


def test_one_sufficient_tie_is_enough():
    assert str(tie(LOW, plate_nailing=nails(spacing="600 mm"), plate_strips=strips()).verdict) == MEETS
    assert str(tie(LOW, plate_nailing=nails(), plate_strips=strips(nails=1)).verdict) == MEETS


def test_an_interior_line_is_nailed_above_too():
    one = tie(HIGH, interior=True)
    assert str(one.verdict) == JUDGE and "above" in one.reason
    assert str(tie(HIGH, interior=True, plate_nailing=nails(spacing="151 mm")).verdict) == NOT
    assert str(tie(HIGH, wall(False), interior=True, **BARE, sheathing_lap=True, plate_strips=strips()).verdict) == EVIDENCE


@pytest.mark.parametrize("figures", [LOW, HIGH])
def test_anchors_are_said_not_to_be_judged(figures):
    one = tie(figures)
    assert "9.23.6.1" in one.asked and "not judged" in one.asked


def test_a_low_line_with_its_tie_meets_in_every_question():
    found = verdicts(place(**LOW), line(FULL, plate_nailing=nails()))
    assert set(found.values()) == {MEETS} and "wall-line-tie" in found
