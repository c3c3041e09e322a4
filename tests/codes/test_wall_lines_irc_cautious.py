"""Lines of bracing under the American code that may not meet, however well the rest of them fits: each limit on both sides.

Outside figures, read in two adopted texts of 2021 (Colorado, chapter 3; Connecticut, chapter 6): R301.3 (storeys of wood framing
up to 11 ft 7 in with bearing studs up to 10 ft; by exception 13 ft 7 in with studs up to 12 ft), R602.10.4.2 and R602.10.7
(continuous sheathing on every surface that can be sheathed, each end as one of the figure's conditions), R602.10.4.3 (gypsum
board of 1/2 in opposite the bracing), Table R602.3(3) with its note (least span ratings 24/0 and 24/16; Wall-16 and Wall-24
instead of 24/0), Table R602.10.4 (the board of each method; PBS on studs at 16 in), R602.10.5 (least lengths by the taller
opening, interpolation permitted), Table R602.10.1.3 (lines of townhouses in category C up to 50 ft apart).
"""

from dataclasses import replace
from types import SimpleNamespace

import pytest

import builders as b
from codes_lines import findings, judged, line, mm, pins, place, verdicts, wall, whole
from layerfolio.codes.line_facts import FOOT
from layerfolio.reading.wall_lines import LineOpening, PanelBoard

MEETS, NOT, JUDGE, EVIDENCE, NOT_ASKED = "meets", "does not meet", "needs judgement", "needs evidence", "not asked"
ENDS = (("12 ft", "0 ft"), ("12 ft", "20 ft"))
WHOLE = (("16 ft", "0 ft"), ("16 ft", "16 ft"))
NAILS = pins("2 in x 0.113 in", "6 in", "12 in")
INSIDE, OUTSIDE = wall(studs="16 in"), wall(False, studs="16 in")


def us(panels=ENDS, **more):
    return line(panels, **{
        "length": "32 ft", "height": "9 ft", "line_spacing": "30 ft", "eave_to_ridge": "10 ft", "grade": "plywood",
        "thickness": "3/8 in", "panel_fastening": NAILS, "storeys_above": 0, "plate_nailing": None, "gypsum_opposite": False,
    } | more)  # fmt: skip


def at(*storeys, **more):
    found = place("irc-2021", **{"mph": 115, "exposure": "C"} | more)
    found.storeys = tuple(SimpleNamespace(height=mm(one) if one else None) for one in storeys)
    return found


def rated(rating="24/0", thickness="3/8 in", grade="plywood"):
    return PanelBoard(grade=grade, thickness=mm(thickness), span_rating=rating)


# the height of the storey


@pytest.mark.parametrize(("storey", "height", "face"), [
    ("11 ft 7 in", "9 ft", MEETS), ("11 ft 8 in", "9 ft", JUDGE), ("13 ft 7 in", "12 ft", JUDGE), ("9 ft", "10 ft 4 in", MEETS),
    ("11 ft", "10 ft 5 in", JUDGE), (None, "10 ft 2 in", MEETS), (None, "10 ft 4 in", EVIDENCE),
])  # fmt: skip
def test_the_method_ends_with_the_storey(storey, height, face):
    found = findings(at(*([storey] if storey else []), storeys=1), us(WHOLE, height=height), INSIDE)
    assert str(found["wall-line"].verdict) == face, found["wall-line"].reason
    assert face == MEETS or "R301.3" in found["wall-line"].reason


@pytest.mark.parametrize("height", ["9 ft", "12 ft"])
def test_a_storey_beyond_the_exception_is_designed(height):
    found = findings(at("13 ft 8 in"), us(WHOLE, height=height), INSIDE)
    assert list(found) == ["wall-line"] and str(found["wall-line"].verdict) == JUDGE
    assert "licensed professional" in found["wall-line"].reason and "storey" in found["wall-line"].reason


def test_a_storey_of_18_ft_meets_nothing():
    assert MEETS not in verdicts(at("18 ft"), us(WHOLE, height="12 ft"), INSIDE).values()


@pytest.mark.parametrize(("storey", "factor"), [
    ("8 ft", 0.95), ("9 ft", 0.95), ("9.9 ft", 1.0), ("10 ft", 1.0), ("10.1 ft", 1.05), ("11 ft 7 in", 1.10),
])  # fmt: skip
def test_a_stated_storey_sets_the_factor_for_height(storey, factor):
    """Table R602.10.3(2), item 3: 8 ft .90 to 12 ft 1.10, by the height of the storey; never less than the wall's."""
    assert judged(at(storey), us(), INSIDE).required / FOOT == pytest.approx(5.5 * 1.2 * 1.4 * factor)


def test_beyond_12_ft_of_storey_the_factors_have_no_row():
    assert [judged(at(one), us(), INSIDE).required is None for one in ("12 ft", "12.1 ft")] == [False, True]


@pytest.mark.parametrize(("above", "required"), [(0, 1.0), (1, 0.95)])
def test_the_storey_is_the_line_s_own(above, required):
    """Storeys are listed from the ground up: 9 ft below, 10 ft above."""
    base = {0: 5.5, 1: 10.5}[above]
    found = judged(at("9 ft", "10 ft", storeys=2), us(WHOLE, storeys_above=above), INSIDE).required / FOOT
    assert found == pytest.approx(base * 1.3 * 1.4 * required)


@pytest.mark.parametrize("storeys", [(None,), ("9 ft", None)])
def test_an_own_storey_without_a_height_is_not_known(storeys):
    where = at(*storeys, storeys=len(storeys))
    assert verdicts(where, us(height="10 ft 4 in"), INSIDE)["wall-line"] == EVIDENCE


# continuous sheathing


def opening(width, height="5 ft", at=None):
    return LineOpening(width=mm(width), height=mm(height) if height else None, at=mm(at) if at else None)


def continuous(panels, openings=(), **more):
    return us(panels, method="CS-WSP", panel=rated(), openings=()).but(openings=tuple(openings), **more)


def test_three_short_panels_and_nothing_between_are_not_continuous():
    three, where = (("24 in", "0 ft"), ("24 in", "15 ft"), ("24 in", "30 ft")), at("8 ft", mph=100, exposure="B")
    found = verdicts(where, continuous(three, height=mm("8 ft")), OUTSIDE)
    assert found["wall-line"] == found["wall-line-length"] == found["wall-line-layout"] == EVIDENCE
    assert findings(at("9 ft"), continuous(three), OUTSIDE)["wall-line"].place == "R602.10.4.2"


@pytest.mark.parametrize(("width", "verdict"), [("8 ft", MEETS), ("7.9 ft", EVIDENCE)])
def test_panels_and_openings_cover_the_line(width, verdict):
    stated = continuous(ENDS, [opening(width, at="12 ft")])
    found = verdicts(at("9 ft"), stated, OUTSIDE)
    assert found["wall-line"] == found["wall-line-length"] == verdict


@pytest.mark.parametrize("category", ["A", "B", "C", "D0"])
def test_the_ends_of_continuous_sheathing_are_for_a_figure_that_was_not_read(category):
    one = findings(at("9 ft", category=category), continuous(WHOLE), OUTSIDE)["wall-line-layout"]
    assert str(one.verdict) == JUDGE and "R602.10.7" in one.reason
    assert whole(at("9 ft", category=category), continuous(WHOLE), OUTSIDE) == JUDGE


@pytest.mark.parametrize(("height", "verdict"), [(None, EVIDENCE), ("5 ft", MEETS)])
def test_an_opening_without_a_height_leaves_the_length_open(height, verdict):
    found = findings(at("9 ft"), continuous(ENDS, [opening("8 ft", height, "12 ft")]), OUTSIDE)
    one = found["wall-line-length"]
    assert str(one.verdict) == verdict
    if height is None:
        assert "0.00 ft" not in one.given and "height of every opening" in one.next_step
        assert str(found["wall-line-layout"].verdict) == EVIDENCE


@pytest.mark.parametrize(("clear", "height", "least"), [
    (80, "8 ft", 32), (80, "8.5 ft", 32), (80, "9 ft", 30), (88, "8.5 ft", 38), (88, "9.5 ft", 35), (64, "8.1 ft", 27),
    (64, "11.5 ft", 36), (104, "9.5 ft", 49), (100, "8.5 ft", None),
])  # fmt: skip
def test_between_two_heights_the_greater_length_is_taken(clear, height, least):
    def provided(inches):
        stated = continuous(((f"{inches} in", "0 ft"),), [opening("3 ft", f"{clear} in")]).but(height=mm(height))
        return judged(at("9 ft"), stated, OUTSIDE).provided

    assert (provided(120) > 0) is (least is not None)
    if least:
        assert provided(least) > 0 and provided(least - 0.1) == 0


# gypsum board opposite


def with_board(*between, thick=0.0127, inside=True):
    """Studs with the panel on one face, and on the other a gypsum board beyond what lies between."""
    board = b.layer(1, R=0.08, d=thick, name="Gypsum", family="gypsum")
    made = wall(inside, studs="16 in", gypsum_inside=False)
    layers = [board, *between, *made.layers] if inside else [*made.layers, *between, board]
    return b.assembly([replace(one, number=n) for n, one in enumerate(layers, 1)], name="W1")


CAVITY = b.layer(1, kind="cavity", cavity="unventilated", d=0.038, family="air", name="service cavity")
FOAM = b.layer(1, R=1.4, d=0.05, insulating=True, family="foam", name="foam")
MEMBRANE = b.layer(1, kind="membrane", s_d=5, name="membrane")


@pytest.mark.parametrize("inside", [True, False])
@pytest.mark.parametrize(("between", "factor"), [((), 1.0), ((MEMBRANE,), 1.0), ((CAVITY,), 1.4), ((FOAM,), 1.4)])
def test_gypsum_board_counts_on_the_studs_alone(inside, between, factor):
    stated, made = us(gypsum_opposite=True), with_board(*between, inside=inside)
    assert judged(at("9 ft"), stated, made).required / FOOT == pytest.approx(5.5 * 1.2 * 0.95 * factor)
    verdict = verdicts(at("9 ft"), stated, made)["wall-line-length"]
    assert verdict == (MEETS if factor == 1.0 else JUDGE)


@pytest.mark.parametrize(("thick", "factor"), [(0.0127, 1.0), (0.0125, 1.4)])
def test_gypsum_board_opposite_is_half_an_inch(thick, factor):
    found = judged(at("9 ft"), us(gypsum_opposite=True), with_board(thick=thick)).required
    assert found / FOOT == pytest.approx(5.5 * 1.2 * 0.95 * factor)


# span rating of the outer face


@pytest.mark.parametrize(("rating", "thickness", "studs", "verdict"), [
    ("12/0", "7/16 in", "16 in", NOT), ("20/0", "3/8 in", "16 in", NOT), ("24/0", "3/8 in", "16 in", MEETS),
    ("24/0", "7/16 in", "16 in", MEETS), ("24/0", "7/16 in", "24 in", NOT), ("24/16", "7/16 in", "24 in", MEETS),
    ("32/16", "7/16 in", "24 in", MEETS), ("24/16", "3/8 in", "16 in", MEETS), (None, "7/16 in", "16 in", EVIDENCE),
    ("Wall-24", "3/8 in", "16 in", MEETS), ("Wall-16", "7/16 in", "24 in", NOT),
])  # fmt: skip
def test_the_stamp_of_a_panel_outside(rating, thickness, studs, verdict):
    stated = us(panel=rated(rating, thickness))
    assert verdicts(at("9 ft"), stated, wall(False, studs=studs))["wall-line-panel"] == verdict


def test_a_panel_inside_is_asked_for_no_rating():
    assert verdicts(at("9 ft"), us(panel=rated(None)), INSIDE)["wall-line-panel"] == MEETS


def test_a_thick_panel_of_a_low_rating_takes_the_row_of_its_rating():
    """24/0 stands for 6d nails up to 115 mph in exposure C, whatever the thickness."""
    stated = us(panel=rated("24/0", "7/16 in"))
    assert verdicts(at("9 ft"), stated, OUTSIDE)["wall-line-fastening"] == MEETS
    assert verdicts(at("9 ft", mph=116), stated, OUTSIDE)["wall-line-fastening"] == JUDGE


# method and board


def sfb(grade="fibreboard", thickness="1/2 in", method="SFB"):
    return us(method=method, grade=grade, thickness=thickness, panel_fastening=pins("1-1/2 in x 0.12 in", "3 in", "6 in"))


def made_of(family, insulating=False, thick=0.0127):
    made = wall(False, studs="16 in")
    layers = [replace(one, family=family, insulating=insulating, thickness=b.length(thick)) if "bracing" in one.serves else one
              for one in made.layers]  # fmt: skip
    return b.assembly(layers, name="W1")


@pytest.mark.parametrize(("method", "grade", "right"), [
    ("SFB", "fibreboard", True), ("SFB", "gypsum board", False), ("SFB", "plywood", False), ("PBS", "particleboard", True),
    ("PBS", "fibreboard", False), ("GB", "gypsum board", True), ("GB", "plywood", False), ("WSP", "fibreboard", False),
    ("CS-WSP", "particleboard", False),
])  # fmt: skip
def test_the_board_is_that_of_the_method(method, grade, right):
    found = verdicts(at("9 ft"), sfb(grade, method=method), OUTSIDE)
    assert (found["wall-line-panel"] == MEETS) is right
    if not right:
        assert found["wall-line-panel"] == NOT and MEETS not in found.values()


@pytest.mark.parametrize(("grade", "method", "family", "insulating", "verdict"), [
    ("fibreboard", "SFB", "wood-fibre", False, MEETS), ("fibreboard", "SFB", "wood-fibre", True, JUDGE),
    ("fibreboard", "SFB", "gypsum", False, JUDGE), ("fibreboard", "SFB", "plywood", False, JUDGE),
    ("gypsum board", "GB", "gypsum", False, MEETS), ("gypsum board", "GB", "wood-fibre", False, JUDGE),
    ("gypsum board", "GB", "plywood", False, JUDGE), ("particleboard", "PBS", "particle-board", False, MEETS),
    ("particleboard", "PBS", "gypsum", False, JUDGE), ("particleboard", "PBS", "foam", True, JUDGE),
])  # fmt: skip
def test_the_layer_is_what_the_line_grades_it_as(grade, method, family, insulating, verdict):
    found = verdicts(at("9 ft"), sfb(grade, method=method), made_of(family, insulating))
    assert found["wall-line"] == verdict and (found["wall-line-panel"] == MEETS) is (verdict == MEETS)


@pytest.mark.parametrize(("studs", "verdict"), [("16 in", MEETS), ("24 in", NOT)])
def test_particleboard_stands_on_studs_at_16_in(studs, verdict):
    assert verdicts(at("9 ft"), sfb("particleboard", method="PBS"), wall(False, studs=studs))["wall-line-panel"] == verdict


# distance of lines where the earthquake counts


@pytest.mark.parametrize(("apart", "townhouse", "verdict"), [
    ("50 ft", True, MEETS), ("50.1 ft", True, NOT), ("50.1 ft", False, MEETS), ("60 ft", False, MEETS),
])  # fmt: skip
def test_lines_of_townhouses_in_category_c_stand_closer(apart, townhouse, verdict):
    where = at("9 ft", category="C")
    where.building.townhouse = townhouse
    assert verdicts(where, us(WHOLE, line_spacing=apart), INSIDE)["wall-line-layout"] == verdict


@pytest.mark.parametrize(("apart", "verdict"), [("35 ft", JUDGE), ("35.1 ft", NOT)])
def test_lines_in_category_d_stand_closer(apart, verdict):
    assert verdicts(at("9 ft", category="D1"), us(WHOLE, line_spacing=apart), INSIDE)["wall-line-layout"] == verdict


def test_what_lies_beside_the_method_is_said():
    asked = findings(at("9 ft"), us(), INSIDE)["wall-line-layout"].asked
    assert all(one in asked for one in ("R602.3.5", "R602.10.8", "R602.11", "not judged"))


@pytest.mark.parametrize(("studs", "verdict"), [("24 in", MEETS), ("25 in", JUDGE)])
def test_gypsum_board_on_wide_studs_is_a_question(studs, verdict):
    """Table R602.10.4 names no studs for method GB; the table of interior gypsum board, R702.3.5, was not read."""
    stated = sfb("gypsum board", method="GB")
    assert verdicts(at("9 ft"), stated, wall(False, studs=studs))["wall-line-panel"] == verdict
