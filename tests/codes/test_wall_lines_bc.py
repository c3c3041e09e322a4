"""Lines of bracing in British Columbia's own system: its tables against themselves, both sides of its limits.

Outside figures: the province's data and amendment files of the 2024 edition, 9.23.13 (types and resistances, unadjusted
lengths by wind, factors). The length for gypsum board GWB-A at 0.5 kPa, 5.84 m, breaks the pattern of its table and is set aside.
"""

import pytest

from codes_lines import findings, judged, line, mm, panel, pins, place, verdicts, wall, whole
from layerfolio.codes.line_facts import tables
from layerfolio.codes.lines_bc_length import band_force

MEETS, NOT, JUDGE, EVIDENCE = "meets", "does not meet", "needs judgement", "needs evidence"
TABLES = tables("bc-2024")
RESISTANCE = {one["name"]: one["resistance"] for one in TABLES["types"]["rows"]}
OUTSIDE = wall(False, studs="600 mm")
B = {"thickness": "11 mm", "gypsum_opposite": True}


def at(**more):
    return place("bc-2024", **{"occupancy": "house", "wind": 500} | more)


def required(where, stated, assembly=OUTSIDE):
    return judged(where, stated, assembly).required


# the tables against themselves


@pytest.mark.parametrize("row", TABLES["wind"]["rows"], ids=lambda row: str(row["up_to"]))
@pytest.mark.parametrize("floors", [0, 1, 2])
def test_the_force_behind_the_table_is_one_for_all_types(row, floors):
    """Length times resistance, type by type, within one percent; by load 12.5, 25.7 and 39.0 kN a kilopascal."""
    forces = [row[name][floors] * RESISTANCE[name] for name in ("WSP-A", "WSP-B")]
    assert max(forces) / min(forces) == pytest.approx(1, abs=0.01)
    assert max(forces) / (row["up_to"] / 1000) == pytest.approx((12.5, 25.7, 39.0)[floors], rel=0.01)


def test_the_misprint_is_set_aside():
    """The force at 0.5 kPa by the printed length is 6.72 kN, seven percent over that of the wood panels."""
    aside = TABLES["wind"]["set_aside"]
    weak = next(one["resistance"] for one in TABLES["types"]["gypsum"] if one["name"] == aside["type"])
    assert aside["printed"] * weak / (band_force(TABLES, aside["wind"], 0) / 1000) > 1.05
    assert not any(aside["type"] in row for row in TABLES["wind"]["rows"])


def test_without_the_gypsum_board_a_wood_panel_has_061_less():
    assert RESISTANCE["WSP-B"] - TABLES["types"]["gypsum_part"] == pytest.approx(5.61)


# the path and the face


@pytest.mark.parametrize(("figures", "path"), [
    ({"Smax": 0.47, "wind": 600}, "9.23.13.1"), ({"Smax": 0.471}, "9.23.13.2"), ({"wind": 601}, "9.23.13.2"),
    ({"Smax": 2.6, "wind": 1200}, "9.23.13.2"), ({"Smax": 2.61}, "beyond"), ({"wind": 1201}, "beyond"),
])  # fmt: skip
def test_the_path(figures, path):
    assert judged(at(**figures), line(**B), OUTSIDE).path.startswith(path)


@pytest.mark.parametrize(("height", "beyond"), [("3.1 m", False), ("3.11 m", True)])
def test_the_height_of_the_method(height, beyond):
    found = findings(at(), line(height=height, **B), OUTSIDE)
    assert (list(found) == ["wall-line"]) is beyond
    if beyond:
        assert "licensed professional" in found["wall-line"].reason and str(found["wall-line"].verdict) == JUDGE


@pytest.mark.parametrize("figures", [{"Smax": None}, {"wind": None}])
def test_without_a_figure_of_the_place_nothing_is_judged(figures):
    found = findings(at(**figures), line(**B), OUTSIDE)
    assert list(found) == ["wall-line"] and str(found["wall-line"].verdict) == EVIDENCE


@pytest.mark.parametrize("figures", [{}, {"Smax": 1.0, "wind": 900}])
def test_a_wood_panel_inside_does_not_meet_literally(figures):
    one = findings(at(**figures), line(**B), wall())["wall-line"]
    assert str(one.verdict) == NOT and one.clause == "9.23.13.6.(1)" and "alternative solution" in one.next_step
    assert "kN" in one.next_step and whole(at(**figures), line(**B), wall()) == NOT


def test_the_force_that_the_equivalent_has_to_show():
    """0.5 kPa under a roof: 6.2 kN before factors; lines 3.8 m apart .51, four bands 1.38."""
    one = findings(at(), line(line_spacing="3.8 m", lines_in_direction=4, **B), wall())["wall-line"]
    assert "6.2 kN" in one.next_step and f"{6.232 * 0.51 * 1.38:.1f} kN" in one.next_step


def test_the_force_is_found_step_by_step():
    """0.5 kPa under a roof: 1.90 m of WSP-A at 3.28 kN/m are 6.232 kN; .51 for the distance, 1.38 for the number."""
    found = judged(at(), line(line_spacing="3.8 m", lines_in_direction=4, **B), wall())
    steps = {one.formula.name: one for one in found.trace.steps()}
    assert steps["band_force"].value == pytest.approx(1.00 * 6220, rel=0.01)
    assert steps["force_by_factors"].value == pytest.approx(6232 * 0.51 * 1.38)


@pytest.mark.parametrize("stated", [B, B | {"panels": (panel("9.6 m", "0 m"),)}])
@pytest.mark.parametrize("assembly", [OUTSIDE, wall()])
def test_no_line_meets_while_the_lengths_by_earthquake_are_not_carried(stated, assembly):
    assert whole(at(), line(**stated), assembly) != MEETS


def test_gypsum_board_is_asked_on_the_other_face():
    assert verdicts(at(), line(thickness="11 mm"), OUTSIDE)["wall-line"] == EVIDENCE
    assert verdicts(at(), line(**B), OUTSIDE)["wall-line"] == JUDGE


# types


@pytest.mark.parametrize(("change", "studs", "name"), [
    ({"panel_fastening": pins("51 mm x 2.84 mm", blocked=False), "thickness": "9.5 mm"}, "400 mm", "WSP-A"),
    ({}, "600 mm", "WSP-B"), ({"panel_fastening": pins(edge="100 mm")}, "600 mm", "WSP-C"),
    ({"panel_fastening": pins(edge="75 mm")}, "600 mm", "WSP-D"),
    ({"panel_fastening": pins("76 mm x 3.66 mm", edge="75 mm"), "thickness": "15.5 mm"}, "600 mm", "WSP-E"),
    ({"panel_fastening": pins(edge="101 mm")}, "600 mm", "WSP-B"), ({"panel_fastening": pins(blocked=False)}, "400 mm", "WSP-A"),
])  # fmt: skip
def test_the_type_that_is_filled(change, studs, name):
    one = findings(at(), line(**B | change), wall(False, studs=studs))["wall-line-fastening"]
    assert str(one.verdict) == MEETS and one.given.endswith(name)


@pytest.mark.parametrize("change", [
    {"panel_fastening": pins("62 mm x 3.25 mm")}, {"panel_fastening": pins("63 mm x 3.2 mm")},
    {"panel_fastening": pins(edge="151 mm")}, {"panel_fastening": pins(field="301 mm")},
    {"panel_fastening": pins(blocked=False)}, {"thickness": "10.9 mm"},
    {"panel_fastening": pins("38 mm x 1.9 mm")},
])  # fmt: skip
def test_what_fills_no_type(change):
    assert verdicts(at(), line(**B | change), OUTSIDE)["wall-line-fastening"] == NOT


def test_screws_are_not_permitted():
    one = findings(at(), line(panel_fastening=pins("75 mm x 5 mm", kind="screw"), **B), OUTSIDE)["wall-line-fastening"]
    assert str(one.verdict) == NOT and "screw" in one.reason


# lengths


@pytest.mark.parametrize(("wind", "length"), [
    (300, 0.60), (301, 0.80), (400, 0.80), (450, 1.00), (500, 1.00), (600, 1.20), (601, 1.80),
    (900, 1.80), (901, 2.40), (1200, 2.40),
])  # fmt: skip
def test_the_row_that_reaches_the_wind(wind, length):
    """No figure is read between rows; panels that leave a part of the wall open take 1.15."""
    assert required(at(wind=wind), line(**B)) == pytest.approx(length * 1.15)


def test_continuous_sheathing():
    whole_wall = line((("4 m", "0 m"), ("4 m", "5.6 m")), openings=("1.6 m",), **B)
    assert required(at(), whole_wall) == pytest.approx(1.00)


@pytest.mark.parametrize(("change", "factor"), [
    ({"line_spacing": "3.8 m"}, 0.51), ({"line_spacing": "3.9 m"}, 1.0), ({"line_spacing": "10.6 m"}, 1.35),
    ({"lines_in_direction": 3}, 1.28), ({"lines_in_direction": 4}, 1.38), ({"lines_in_direction": 7}, 1.43),
    ({"eave_to_ridge": "1.5 m"}, 0.52), ({"eave_to_ridge": "4.5 m"}, 1.58), ({"eave_to_ridge": "6 m"}, 1.99),
    ({"gypsum_opposite": False}, 1.2),
])  # fmt: skip
def test_factors(change, factor):
    assert required(at(), line(**B | change)) == pytest.approx(1.15 * factor)


@pytest.mark.parametrize(("storeys", "factor"), [(1, 1.29), (2, 1.40), (3, 1.48)])
def test_open_terrain(storeys, factor):
    assert required(at(exposure="open", storeys=storeys), line(**B)) == pytest.approx(1.15 * factor)


def test_gypsum_board_left_out_without_blocking():
    thin = {"thickness": "9.5 mm", "panel_fastening": pins("51 mm x 2.84 mm", blocked=False), "gypsum_opposite": False}
    assert required(at(), line(**thin), wall(False, studs="400 mm")) == pytest.approx(1.90 * 1.15 * 1.40)


@pytest.mark.parametrize(("floors", "length"), [(0, 1.00), (1, 2.06), (2, 3.12)])
def test_floors_that_are_carried(floors, length):
    assert required(at(), line(storeys_above=floors, **B)) == pytest.approx(length * 1.15)
    if floors:
        assert required(at(), line(storeys_above=floors, eave_to_ridge="3.1 m", **B)) is None


@pytest.mark.parametrize(("change", "word"), [
    ({"storeys_above": None}, "storeys_above"), ({"line_spacing": None}, "line_spacing"),
    ({"eave_to_ridge": None}, "eave_to_ridge"), ({"lines_in_direction": None}, "lines_in_direction"),
])  # fmt: skip
def test_what_the_length_needs(change, word):
    one = findings(at(), line(**B | change), OUTSIDE)["wall-line-length"]
    assert str(one.verdict) == EVIDENCE and word in one.next_step


def test_terrain_has_to_be_named():
    assert "rough or open" in findings(at(exposure="B"), line(**B), OUTSIDE)["wall-line-length"].next_step


@pytest.mark.parametrize(("change", "beyond"), [
    ({"line_spacing": "10.7 m"}, True), ({"eave_to_ridge": "6.1 m"}, True), ({}, False),
])  # fmt: skip
def test_beyond_the_factors_there_is_no_length(change, beyond):
    assert (judged(at(), line(**B | change), OUTSIDE).required is None) is beyond


@pytest.mark.parametrize(("size", "verdict"), [("1.151 m", JUDGE), ("1.149 m", NOT)])
def test_a_line_too_short_by_wind(size, verdict):
    assert verdicts(at(), line(((size, "0 m"),), **B), OUTSIDE)["wall-line-length"] == verdict


@pytest.mark.parametrize(("panels", "verdict"), [
    ((("2 m", "2.4 m"), ("2 m", "7 m")), MEETS), ((("2 m", "2.41 m"), ("2 m", "7 m")), NOT),
    ((("1.6 m", "0 m"), ("1.6 m", "8 m")), MEETS), ((("1.59 m", "0 m"), ("1.6 m", "8 m")), NOT),
    ((("749 mm", "0 m"), ("749 mm", "5 m")), NOT),
])  # fmt: skip
def test_places(panels, verdict):
    assert verdicts(at(), line(panels, **B), OUTSIDE)["wall-line-layout"] == verdict


def test_lines_of_figures_are_the_project_s():
    assert mm("10.6 m").value * 1000 == TABLES["bands"]["spacing"]
    seen = [verdicts(at(), line(line_spacing=one, **B), OUTSIDE)["wall-line-layout"] for one in ("10.6 m", "10.61 m")]
    assert seen == [MEETS, NOT]
