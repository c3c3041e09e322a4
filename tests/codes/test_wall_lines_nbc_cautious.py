"""Lines of bracing under the national Canadian code: each case that looks as if it met and does not plainly do so.

Source of every limit: NBC as read in the Alberta edition of 2023 and in Ontario's code of 2024, 9.23.13, 9.23.3.4, 9.23.3.5,
9.29.6, 9.29.9. What the articles leave open is a question here, never a verdict.
"""

import pytest

from codes_lines import findings, judged, line, mm, panel, pins, place, strips, verdicts, wall, whole
from layerfolio.reading.wall_lines import PlateNailing

MEETS, NOT, JUDGE, EVIDENCE = "meets", "does not meet", "needs judgement", "needs evidence"
FULL = (("4.8 m", "0 m"), ("4.8 m", "4.8 m"))
LOW, HIGH, WINDY = {}, {"Sa02": 0.8}, {"wind": 900, "Sa02": 0.5}


# 9.23.13.1.(2): the walls, not a part of their height


@pytest.mark.parametrize(("height", "verdict"), [
    ("2.4 m", "not asked"), ("2.35 m", "not asked"), ("2.34 m", JUDGE), ("1.2 m", JUDGE),
])  # fmt: skip
def test_a_panel_lower_than_the_wall_is_a_question_on_the_low_path_too(height, verdict):
    """5 cm are left for the gap at the plate."""
    stated = line((panel("4.8 m", "0 m", height), panel("4.8 m", "4.8 m")))
    assert verdicts(place(**LOW), stated)["wall-line-length"] == verdict
    assert whole(place(**LOW), stated) == (JUDGE if verdict == JUDGE else MEETS)


def test_the_low_path_says_that_openings_are_not_limited_and_strength_stays():
    asked = findings(place(**LOW), line(FULL))["wall-line-length"].asked
    assert "opening" in asked and "9.23.2.1" in asked


@pytest.mark.parametrize(("interior", "verdict"), [(False, MEETS), (True, "not asked")])
def test_the_low_path_asks_nothing_of_an_interior_line(interior, verdict):
    found = findings(place(**LOW), line(FULL, interior=interior))
    assert whole(place(**LOW), line(FULL, interior=interior)) == verdict
    assert set(found) == {"wall-line"} or not interior
    assert "exterior walls" in found["wall-line"].reason or not interior


def test_an_interior_line_is_asked_on_the_high_path():
    assert "wall-line-length" in verdicts(place(**HIGH), line(interior=True))


def test_from_memory_an_interior_line_is_a_question():
    assert verdicts(place("nbc-2015", **LOW), line(FULL, interior=True)) == {"wall-line": JUDGE}


# 9.23.13.2, 9.23.13.3.(1)(a): floors on the lowest exterior frame wall of the building


@pytest.mark.parametrize(("storeys", "weight", "extreme"), [
    (3, "light", False), (4, "light", True), (2, "heavy", False), (3, "heavy", True),
])  # fmt: skip
def test_the_top_line_of_a_tall_building_counts_the_floors_below_it(storeys, weight, extreme):
    found = judged(place(**HIGH, storeys=storeys), line(FULL, construction=weight))
    assert found.path.startswith("9.23.13.3") is extreme
    only = list(findings(place(**HIGH, storeys=storeys), line(FULL, construction=weight)))
    assert (only == ["wall-line"]) is extreme


@pytest.mark.parametrize(("floors", "extreme"), [(2, False), (3, True)])
def test_floors_on_another_line_count(floors, extreme):
    beside = {"L2": line(FULL, storeys_above=floors)}
    assert judged(place(**HIGH), line(FULL), beside=beside).path.startswith("9.23.13.3") is extreme
    assert not judged(place(**WINDY), line(FULL), beside=beside).path.startswith("9.23.13.3")


@pytest.mark.parametrize(("weight", "extreme"), [("light", False), ("heavy", True)])
def test_heavy_construction_on_another_line_counts(weight, extreme):
    beside = {"L2": line(FULL, storeys_above=2, construction=weight)}
    assert judged(place(**HIGH), line(FULL), beside=beside).path.startswith("9.23.13.3") is extreme


def test_storeys_that_are_not_stated():
    found = findings(place(**HIGH, storeys=None), line())
    assert list(found) == ["wall-line"] and str(found["wall-line"].verdict) == EVIDENCE
    assert "building.storeys" in found["wall-line"].next_step
    assert judged(place(**HIGH, storeys=None), line(storeys_above=3)).path.startswith("9.23.13.3")
    assert "wall-line-length" in verdicts(place(**LOW, storeys=None), line(FULL))


def test_weight_that_is_not_stated_matters_between_the_two_limits():
    assert verdicts(place(**HIGH, storeys=2), line(construction=None))["wall-line"] == MEETS
    found = findings(place(**HIGH, storeys=3), line(construction=None))
    assert list(found) == ["wall-line"] and str(found["wall-line"].verdict) == EVIDENCE
    assert "construction" in found["wall-line"].next_step


def test_storeys_are_said_to_be_an_estimate():
    for storeys in (2, 4):
        one = judged(place(**HIGH, storeys=storeys), line(FULL)).answers["wall-line"]
        assert "concrete" in f"{one.given} {one.reason}" and "knee wall" in f"{one.given} {one.reason}"


def test_wind_without_earthquake_is_said_to_be_read_by_the_table():
    assert "Table 9.23.13.5" in findings(place(**WINDY), line())["wall-line"].given
    assert "Table 9.23.13.5" not in findings(place(**HIGH), line())["wall-line"].given


# 9.23.3.5.(2)(a) and (3)(a): two tables hold by their letter


@pytest.mark.parametrize(("figures", "edge", "verdict"), [
    ({"wind": 799, "Sa02": 0.8}, "150 mm", MEETS), ({"wind": 800, "Sa02": 0.8}, "150 mm", JUDGE),
    ({"wind": 800, "Sa02": 0.5}, "76 mm", JUDGE), ({"wind": 800, "Sa02": 0.5}, "75 mm", MEETS),
    ({"wind": 1199, "Sa02": 0.90}, "76 mm", JUDGE), ({"wind": 1199, "Sa02": 0.90}, "3 in", MEETS),
    ({"wind": 1199, "Sa02": 0.91}, "76 mm", NOT), ({"wind": 1199, "Sa02": 0.90}, "151 mm", NOT),
])  # fmt: skip
@pytest.mark.parametrize("inside", [True, False])
def test_edges_in_strong_wind_and_a_weaker_earthquake(figures, edge, verdict, inside):
    stated = line(FULL, panel_fastening=pins(edge=edge))
    one = findings(place(**figures), stated, wall(inside))["wall-line-fastening"]
    assert str(one.verdict) == verdict
    if verdict == JUDGE:
        assert "(2)(a)" in one.reason and "(3)(a)" in one.reason


def test_staples_in_strong_wind_are_a_question_of_both_tables():
    stated = line(FULL, panel_fastening=pins("63 mm x 1.98 mm", edge="75 mm", kind="staple"))
    one = findings(place(**WINDY), stated)["wall-line-fastening"]
    assert str(one.verdict) == JUDGE and "(3)(a)" in one.reason


@pytest.mark.parametrize(("edge", "verdict"), [("37.5 mm", MEETS), ("38 mm", JUDGE), ("75 mm", JUDGE), ("76 mm", NOT)])
def test_interior_lines_take_half_of_both(edge, verdict):
    stated = line(interior=True, panel_fastening=pins(edge=edge))
    assert verdicts(place(**WINDY), stated)["wall-line-fastening"] == verdict


# 9.23.13.7.(4): panels of 1.2 m through the whole height of the building


@pytest.mark.parametrize(("gap", "storeys", "verdict"), [
    ("6.4 m", 2, MEETS), ("6.41 m", 1, MEETS), ("6.41 m", 2, JUDGE), ("7.3 m", 2, JUDGE), ("7.31 m", 2, NOT), ("7.3 m", 1, MEETS),
])  # fmt: skip
def test_a_wide_gap_between_long_panels_in_a_building_of_storeys(gap, storeys, verdict):
    stated = line((("1.2 m", "0 m"), ("1.2 m", f"{1.2 + mm(gap).value} m")), length=f"{2.4 + mm(gap).value} m")
    one = findings(place(**HIGH, storeys=storeys), stated)["wall-line-layout"]
    assert str(one.verdict) == verdict and ("9.23.13.7.(4)" in one.reason or verdict != JUDGE)


def test_a_wide_gap_where_storeys_or_floors_are_not_of_one_storey():
    stated = {"panels": (panel("1.2 m", "0 m"), panel("1.2 m", "8.2 m")), "length": "9.4 m"}
    assert verdicts(place(**WINDY, storeys=None), line(**stated))["wall-line-layout"] == EVIDENCE
    assert verdicts(place(**WINDY), line(**stated, storeys_above=1))["wall-line-layout"] == JUDGE
    beside = {"L2": line(storeys_above=1)}
    assert verdicts(place(**WINDY), line(**stated), beside=beside)["wall-line-layout"] == JUDGE
    assert verdicts(place(**WINDY), line(**stated))["wall-line-layout"] == MEETS


def test_the_layout_names_what_is_not_judged():
    asked = findings(place(**HIGH), line())["wall-line-layout"].asked
    for clause in ("9.23.13.4", "9.23.6.1.(3)", "9.23.11.4.(5)", "Table 9.23.3.4"):
        assert clause in asked
    assert "not judged" in asked


# 9.23.13.6.(6): strand board, plywood or diagonal lumber


@pytest.mark.parametrize(("grade", "verdict"), [("plywood", MEETS), ("OSB O-1", MEETS), ("waferboard R-1", JUDGE)])
def test_waferboard_is_not_among_what_bands_name(grade, verdict):
    one = findings(place(**HIGH), line(grade=grade))["wall-line-panel"]
    assert str(one.verdict) == verdict and ("9.23.13.6.(6)" in one.reason or verdict == MEETS)
    assert verdicts(place(**LOW), line(FULL, grade=grade))["wall-line-panel"] == MEETS


# 9.29.6.3.(1), 9.29.9.3.(1): a lining's nails satisfy the finish that the low path names, and are shorter than Table A


@pytest.mark.parametrize(("nail", "inside", "verdict"), [
    ("51 mm x 2.84 mm", True, MEETS), ("50 mm x 2.84 mm", True, JUDGE), ("51 mm x 2.5 mm", True, JUDGE),
    ("38 mm x 1.9 mm", True, JUDGE), ("57 mm x 2.8 mm", True, JUDGE), ("37 mm x 1.9 mm", True, NOT),
    ("38 mm x 1.9 mm", False, NOT), ("50 mm x 2.84 mm", False, NOT), ("51 mm x 2.5 mm", False, NOT),
    ("51 mm x 2.84 mm", False, MEETS),
])  # fmt: skip
def test_nails_between_those_of_a_lining_and_table_a(nail, inside, verdict):
    one = findings(place(**LOW), line(FULL, panel_fastening=pins(nail)), wall(inside))["wall-line-fastening"]
    assert str(one.verdict) == verdict
    if verdict == JUDGE:
        assert "9.29.6.3.(1)" in one.reason and "9.29.9.3.(1)" in one.reason


@pytest.mark.parametrize(("kind", "verdict"), [("staple", JUDGE), ("screw", NOT)])
def test_short_staples_and_screws_of_a_finish_inside(kind, verdict):
    stated = line(FULL, panel_fastening=pins("44 mm x 1.98 mm", kind=kind))
    assert verdicts(place(**LOW), stated)["wall-line-fastening"] == verdict


@pytest.mark.parametrize(("edge", "field", "verdict"), [
    ("150 mm", "300 mm", JUDGE), ("151 mm", "300 mm", NOT), ("150 mm", "301 mm", NOT),
])  # fmt: skip
def test_nails_of_a_lining_have_spacings_too(edge, field, verdict):
    stated = line(FULL, panel_fastening=pins("38 mm x 1.9 mm", edge=edge, field=field))
    assert verdicts(place(**LOW), stated)["wall-line-fastening"] == verdict


@pytest.mark.parametrize(("blocked", "verdict"), [(True, JUDGE), (None, EVIDENCE), (False, NOT)])
def test_edges_of_a_lining_are_supported_all_the_same(blocked, verdict):
    stated = line(FULL, panel_fastening=pins("38 mm x 1.9 mm", blocked=blocked))
    assert verdicts(place(**LOW), stated)["wall-line-fastening"] == verdict


def test_british_columbia_s_low_path_counts_the_lowest_wall():
    at = {"occupancy": "house", "wind": 500, "Smax": 0.4}
    assert judged(place("bc-2024", **at, storeys=3), line(FULL)).path.startswith("9.23.13.1")
    assert judged(place("bc-2024", **at, storeys=4), line(FULL)).path.startswith("9.23.13.2")


def test_british_columbia_s_layout_names_what_is_not_judged():
    found = findings(place("bc-2024", occupancy="house", wind=500), line(FULL, gypsum_opposite=True), wall(False))
    assert str(found["wall-line-layout"].verdict) == MEETS and "not judged" in found["wall-line-layout"].asked


@pytest.mark.parametrize("figures", [LOW, HIGH, WINDY])
def test_the_edition_of_2015_decides_none_of_it(figures):
    for change in (
        {"plate_nailing": PlateNailing(nail=None, spacing=None), "plate_strips": strips()}, {"grade": "waferboard R-1"},
        {"panel_fastening": pins("38 mm x 1.9 mm")}, {"storeys_above": 3},
    ):  # fmt: skip
        assert not {MEETS, NOT} & set(verdicts(place("nbc-2015", **figures), line(FULL, **change)).values())


# 9.23.3.5: the rows that are carried are those of plywood, strand board and waferboard

OTHER = ("gypsum board", "fibreboard", "particleboard", "boards", "diagonal lumber", "plywood siding")


@pytest.mark.parametrize("inside", [True, False])
@pytest.mark.parametrize("figures", [LOW, HIGH, WINDY])
@pytest.mark.parametrize("grade", OTHER)
def test_nails_of_other_boards_are_a_question(figures, inside, grade):
    """However long and close they are."""
    for nail in ("63 mm x 3.25 mm", "38 mm x 2 mm"):
        one = findings(place(**figures), line(FULL, grade=grade, panel_fastening=pins(nail)), wall(inside))["wall-line-fastening"]
        assert str(one.verdict) == JUDGE and grade in one.reason


@pytest.mark.parametrize("figures", [LOW, HIGH, WINDY])
def test_nails_of_a_panel_without_a_grade_wait_for_it(figures):
    one = findings(place(**figures), line(FULL, grade=None), wall())["wall-line-fastening"]
    assert str(one.verdict) == EVIDENCE and "panel.grade" in one.next_step


@pytest.mark.parametrize("grade", ["plywood", "OSB O-1", "OSB O-2", "waferboard R-1", "CSA O325 W24"])
def test_nails_of_wood_panels_meet(grade):
    assert verdicts(place(**LOW), line(FULL, grade=grade), wall())["wall-line-fastening"] == MEETS
