"""Braced wall lines under the American code: tables against themselves and a worked line, both sides of every limit.

Outside figures: Tables R602.10.3(1) to (4), R602.10.4, R602.10.5, R602.3(1) and (3) of 2021 as five adopted texts print them; the
block up to 120 mph also as a page scan of 2018. Worked line: one storey, 115 mph, exposure C, lines 30 ft apart, 9 ft, roof of
10 ft, two lines, method WSP, no gypsum board opposite: 5.5 x 1.20 x .95 x 1.40 = 8.78 ft, with hold-downs 7.02 ft; at 24 ft
4.3 ft before factors.
"""

from itertools import pairwise
from types import SimpleNamespace

import pytest

from codes_lines import findings, judged, line, mm, panel, pins, place, verdicts, wall, whole
from layerfolio.codes.line_facts import FOOT, tables
from layerfolio.reading.wall_lines import LineOpening, PanelBoard

MEETS, NOT, JUDGE, EVIDENCE = "meets", "does not meet", "needs judgement", "needs evidence"
TABLES = tables("irc-2021")
WIND = TABLES["wind"]
BLOCKS = [row for row in WIND["rows"]]
GROUPS = ("GB", "W", "CS")
ENDS = (("12 ft", "0 ft"), ("12 ft", "20 ft"))
NAILS = pins("2 in x 0.113 in", "6 in", "12 in")


def us(panels=ENDS, *, set_id="irc-2021", **more):
    """A line of 32 ft of plywood under a roof: 3/8 in panels on the inner face."""
    return line(panels, **{
        "length": "32 ft", "height": "9 ft", "line_spacing": "30 ft", "eave_to_ridge": "10 ft", "grade": "plywood",
        "thickness": "3/8 in", "panel_fastening": NAILS, "storeys_above": 0, "plate_nailing": None, "gypsum_opposite": False,
    } | more)  # fmt: skip


def at(**more):
    return place("irc-2021", **{"mph": 115, "exposure": "C"} | more)


INSIDE = wall(studs="16 in")


def required(where, stated, assembly=INSIDE):
    return judged(where, stated, assembly).required / FOOT


# the tables against themselves


def test_a_block_repeats_under_another_load():
    """As printed, below 140 mph under a roof and floor is up to 115 mph under a roof and two floors."""
    low, high = (next(row for row in BLOCKS if row["speed"] == one) for one in (115, 140))
    assert all(high[group][1] == low[group][2] for group in GROUPS)


@pytest.mark.parametrize("row", BLOCKS, ids=lambda row: str(row["speed"]))
def test_every_column_rises_with_distance_and_storeys(row):
    for group in GROUPS:
        for block in row[group]:
            assert len(block) == len(WIND["spacings"]) and all(a < b for a, b in pairwise(block))
        assert all(a < b for one, two in pairwise(row[group]) for a, b in zip(one, two, strict=True))


def test_no_length_falls_with_speed_and_stronger_groups_ask_less():
    cells = [[x for group in GROUPS for block in row[group] for x in block] for row in BLOCKS]
    assert sum(map(len, cells)) == 6 * 54
    assert all(a <= b for one, two in pairwise(cells) for a, b in zip(one, two, strict=True))
    for row in BLOCKS:
        assert all(gb >= w >= cs for n in range(3) for gb, w, cs in zip(*(row[g][n] for g in GROUPS), strict=True))


def test_continuous_sheathing_is_85_percent_of_the_panels_by_earthquake():
    rows = [(TABLES["seismic"][c]["WSP"][n], TABLES["seismic"][c]["CS"][n]) for c in ("C", "D0", "D1", "D2") for n in range(3)]
    pairs = [(w, cs) for wsp, cont in rows if wsp for w, cs in zip(wsp, cont, strict=True)]
    assert len(pairs) == 55 and all(abs(0.85 * w - cs) <= 0.08 for w, cs in pairs)


def test_the_earthquake_rows_go_by_the_length_of_the_line():
    """Each row is so much for each ten feet, rounded to tenths."""
    for one in ("C", "D0", "D1", "D2"):
        for group in ("GB", "WSP", "CS"):
            for row in filter(None, TABLES["seismic"][one][group]):
                assert all(abs(x - row[-1] * n / 5) <= 0.11 for n, x in enumerate(row, 1))


# the worked line


def test_worked_line():
    assert required(at(), us()) == pytest.approx(8.778, abs=0.001)
    assert required(at(), us(hold_downs=True)) == pytest.approx(7.0224, abs=0.001)
    assert required(at(exposure="B"), us(line_spacing="24 ft", height="10 ft")) == pytest.approx(4.3 * 1.4)


def test_its_steps_recompute():
    (step,) = [one for one in judged(at(), us(), INSIDE).trace.steps() if one.formula.name == "length_by_wind"]
    assert dict(step.arguments)["k_e"] == 1.2 and dict(step.arguments)["k_g"] == 1.4 and step.value == pytest.approx(8.778 * FOOT)


SPEEDS = [
    (94, 4.0), (95, 5.0), (110, 5.0), (111, 5.5), (115, 5.5), (116, 6.0), (120, 6.0), (121, 7.0), (130, 7.0),
    (131, 8.0), (139, 8.0),
]  # fmt: skip


@pytest.mark.parametrize(("mph", "feet"), SPEEDS)
def test_the_block_of_the_speed(mph, feet):
    """Method W under a roof, lines 30 ft apart: 4.0 below 95, 5.0, 5.5, 6.0, 7.0 and 8.0 ft."""
    assert required(at(mph=mph, exposure="B"), us(height="10 ft")) == pytest.approx(feet * 1.4)


def test_the_first_block_is_not_in_the_edition_of_2018():
    assert judged(place("irc-2018", mph=90, exposure="B"), us(height="10 ft"), INSIDE).required / FOOT == pytest.approx(5.0 * 1.4)


@pytest.mark.parametrize(("change", "factor"), [
    ({"eave_to_ridge": "5 ft"}, 0.7), ({"eave_to_ridge": "5.1 ft"}, 1.0), ({"eave_to_ridge": "15 ft"}, 1.3),
    ({"eave_to_ridge": "20 ft"}, 1.6), ({"lines_in_direction": 3}, 1.3), ({"lines_in_direction": 4}, 1.45),
    ({"lines_in_direction": 5}, 1.6), ({"lines_in_direction": 9}, 1.6), ({"height": "8 ft"}, 0.9 / 0.95),
    ({"height": "9.1 ft"}, 1 / 0.95), ({"height": "11 ft"}, 1.05 / 0.95), ({"height": "12 ft"}, 1.1 / 0.95),
    ({"panel_fastening": pins("2 in x 0.113 in", "6 in", "12 in", blocked=False)}, 2.0),
])  # fmt: skip
def test_factors(change, factor):
    assert required(at(), us(**change)) == pytest.approx(8.778 * factor, abs=0.002)


@pytest.mark.parametrize(("exposure", "storeys", "factor"), [
    ("B", 1, 1.0), ("B", 3, 1.0), ("C", 2, 1.3), ("C", 3, 1.4), ("D", 1, 1.5), ("D", 2, 1.6), ("D", 3, 1.7),
])  # fmt: skip
def test_exposure_by_storeys_of_the_building(exposure, storeys, factor):
    assert required(at(exposure=exposure, storeys=storeys), us()) == pytest.approx(5.5 * 0.95 * 1.4 * factor)


def test_hold_downs_help_the_top_storey_alone():
    assert required(at(), us(hold_downs=True, storeys_above=1)) == required(at(), us(storeys_above=1))


def test_gypsum_board_counts_where_a_layer_of_the_wall_shows_it():
    opposite = us(gypsum_opposite=True)
    assert required(at(), opposite, wall(studs="16 in", gypsum_outside=True)) == pytest.approx(8.778 / 1.4, abs=0.002)
    assert required(at(), opposite) == pytest.approx(8.778, abs=0.001)  # gypsum over the panel is not opposite it
    one = findings(at(), opposite, INSIDE)["wall-line-length"]
    assert str(one.verdict) == JUDGE and "inside face" in one.next_step and "opposite" in one.next_step
    assert required(at(), us(gypsum_opposite=True), wall(False, studs="16 in")) == pytest.approx(8.778 / 1.4, abs=0.002)


# where the method ends


@pytest.mark.parametrize(("where", "stated", "beyond"), [
    ({"mph": 139}, {}, False), ({"mph": 140}, {}, True), ({"category": "E"}, {}, True), ({"category": "D"}, {}, True),
    ({"storeys": 3}, {}, False), ({}, {"storeys_above": 2}, False), ({}, {"storeys_above": 3}, True),
    ({}, {"height": "12 ft"}, False), ({}, {"height": "12.1 ft"}, True),
])  # fmt: skip
def test_where_engineering_starts(where, stated, beyond):
    found = findings(at(**where), us(**stated), INSIDE)
    assert (list(found) == ["wall-line"]) is beyond
    if beyond:
        assert str(found["wall-line"].verdict) == JUDGE and "licensed professional" in found["wall-line"].reason


@pytest.mark.parametrize("where", [{"mph": None}, {"exposure": "rough"}, {"category": None}, {"storeys": None}])
def test_a_figure_that_is_missing(where):
    found = findings(at(**where), us(), INSIDE)
    assert list(found) == ["wall-line"] and str(found["wall-line"].verdict) == EVIDENCE
    assert "supply" in found["wall-line"].next_step


@pytest.mark.parametrize(("change", "verdict"), [
    ({"line_spacing": "60 ft"}, MEETS), ({"line_spacing": "60.1 ft"}, JUDGE), ({"eave_to_ridge": "20.1 ft"}, JUDGE),
    ({"lines_in_direction": 1}, JUDGE), ({"line_spacing": None}, EVIDENCE), ({"eave_to_ridge": None}, EVIDENCE),
    ({"lines_in_direction": None}, EVIDENCE), ({"storeys_above": 2, "eave_to_ridge": "16 ft"}, JUDGE),
])  # fmt: skip
def test_beyond_the_tables_there_is_no_length(change, verdict):
    long = (("16 ft", "0 ft"), ("16 ft", "16 ft"))
    assert verdicts(at(exposure="B"), us(long, **change), INSIDE)["wall-line-length"] == verdict


# demand against supply


@pytest.mark.parametrize(("second", "verdict"), [("4.779 ft", MEETS), ("4.777 ft", NOT)])
def test_the_length_turns_the_verdict(second, verdict):
    """8.778 ft are asked. An edition that means the storey leaves a question while its floor framing could ask more."""
    where = at()
    where.storeys = (SimpleNamespace(height=mm("9 ft")),)
    assert verdicts(where, us((("4 ft", "0 ft"), (second, "20 ft"))), INSIDE)["wall-line-length"] == verdict


def test_a_storey_taller_than_its_wall_has_to_be_stated():
    """With 16 in of floor framing over 9 ft the factor is 1.05 and not .95: 9.70 ft."""
    seen = [verdicts(at(), us((("5 ft", "0 ft"), (one, "20 ft"))), INSIDE)["wall-line-length"] for one in ("4.7 ft", "4.71 ft")]
    assert seen == [EVIDENCE, MEETS]


def test_a_region_of_wind_design_is_looked_up_over_120_mph():
    seen = [verdicts(at(mph=one, exposure="B"), us(), INSIDE)["wall-line-length"] for one in (120, 121)]
    assert seen == [MEETS, JUDGE]


def test_a_line_that_meets_meets_in_every_question():
    assert set(verdicts(at(), us(), INSIDE).values()) == {MEETS} and whole(at(), us(), INSIDE) == MEETS


@pytest.mark.parametrize("change", [
    {"panel_fastening": None}, {"panel": None}, {"storeys_above": None}, {"panels": ()}, {"lines_in_direction": None},
    {"panel_fastening": pins("2 in x 0.113 in", "6 in", "12 in", blocked=None)},
    {"panels": (panel("12 ft", "0 ft", "7 ft"), panel("12 ft", "20 ft"))},
], ids=lambda one: " ".join(one))  # fmt: skip
def test_each_input_taken_away_turns_the_verdict(change):
    assert whole(at(), us(**change), INSIDE) != MEETS


# panels that count


@pytest.mark.parametrize(("height", "size", "counts"), [
    ("9 ft", "48 in", 48), ("9 ft", "47.9 in", 47.8), ("9 ft", "42 in", 36), ("9 ft", "41.9 in", 0), ("8 ft", "36 in", 27),
    ("8 ft", "35.9 in", 0), ("8 ft", "39 in", 31.5), ("8 ft", "45 in", 42), ("10 ft", "48 in", 48), ("10 ft", "47.9 in", 0),
    ("11 ft", "53 in", 53), ("11 ft", "52.9 in", 0), ("12 ft", "58 in", 58), ("12 ft", "57.9 in", 0),
])  # fmt: skip
def test_what_a_panel_counts(height, size, counts):
    found = judged(at(), us(((size, "0 ft"),), height=height), INSIDE)
    assert found.provided / 0.0254 == pytest.approx(counts)


@pytest.mark.parametrize(("category", "counts"), [("C", 36), ("D0", 0)])
def test_no_part_counts_where_the_earthquake_is_strong(category, counts):
    found = judged(at(category=category), us((("42 in", "0 ft"),), height="9 ft"), INSIDE)
    assert found.provided / 0.0254 == pytest.approx(counts)


def test_gypsum_board_on_one_face_counts_half():
    stated = us((("96 in", "0 ft"),), method="GB", grade="gypsum board", thickness="1/2 in")
    assert judged(at(), stated, INSIDE).provided == pytest.approx(48 * 0.0254)


@pytest.mark.parametrize(("height", "least"), [("8 ft", 55), ("9 ft", 62), ("10 ft", 69), ("11 ft", None)])
def test_let_in_braces(height, least):
    def provided(inches):
        return judged(at(), us(((f"{inches} in", "0 ft"),), method="LIB", height=height, gypsum_opposite=True), INSIDE).provided

    assert provided(200) == (pytest.approx(200 * 0.0254) if least else 0)
    if least:
        assert provided(least) > 0 and provided(least - 0.1) == 0


@pytest.mark.parametrize(("clear", "height", "least"), [
    (64, "8 ft", 24), (64, "12 ft", 36), (76, "9 ft", 29), (80, "8 ft", 32), (84, "8 ft", 35), (84, "9 ft", 32),
    (96, "10 ft", 38), (104, "8 ft", None), (144, "12 ft", 72), (145, "12 ft", None),
])  # fmt: skip
def test_continuous_panels_beside_an_opening(clear, height, least):
    def provided(inches):
        opening = LineOpening(width=mm("3 ft"), height=mm(f"{clear} in"))
        return judged(at(), us(((f"{inches} in", "0 ft"),), method="CS-WSP", height=height, openings=()).but(openings=(opening,)),
                      INSIDE).provided  # fmt: skip

    assert (provided(100) > 0) is (least is not None)
    if least:
        assert provided(least) > 0 and provided(least - 0.1) == 0


# where panels stand


@pytest.mark.parametrize(("panels", "verdict"), [
    ((("8 ft", "10 ft"), ("4 ft", "18.1 ft")), MEETS), ((("8 ft", "10.1 ft"), ("4 ft", "20 ft")), NOT),
    ((("6 ft", "0 ft"), ("6 ft", "26 ft")), MEETS), ((("5.9 ft", "0 ft"), ("6 ft", "26 ft")), NOT), ((("24 ft", "4 ft"),), NOT),
])  # fmt: skip
def test_ends_gaps_and_number(panels, verdict):
    assert verdicts(at(), us(panels), INSIDE)["wall-line-layout"] == verdict


@pytest.mark.parametrize(("length", "verdict"), [("16 ft", MEETS), ("16.1 ft", NOT)])
def test_one_panel_of_a_short_line(length, verdict):
    assert verdicts(at(), us((("9 ft", "3 ft"),), length=length), INSIDE)["wall-line-layout"] == verdict


def test_the_ends_are_a_question_where_the_earthquake_is_strong():
    assert verdicts(at(category="D0"), us(), INSIDE)["wall-line-layout"] == JUDGE


# panel and nails


@pytest.mark.parametrize(("thickness", "studs", "verdict"), [
    ("3/8 in", "16 in", MEETS), ("0.36 in", "16 in", NOT), ("3/8 in", "17 in", NOT),
    ("7/16 in", "24 in", MEETS), ("7/16 in", "25 in", NOT), ("9.5 mm", "16 in", MEETS), ("11 mm", "24 in", MEETS),
])  # fmt: skip
def test_panels_and_studs(thickness, studs, verdict):
    assert verdicts(at(), us(thickness=thickness), wall(studs=studs))["wall-line-panel"] == verdict


def test_what_is_no_wood_structural_panel():
    assert verdicts(at(), us(grade="fibreboard", method="WSP"), INSIDE)["wall-line-panel"] == NOT
    assert verdicts(at(), us(grade="OSB O-2"), INSIDE)["wall-line-panel"] == JUDGE


@pytest.mark.parametrize(("thickness", "nail", "verdict"), [
    ("3/8 in", "2 in x 0.113 in", MEETS), ("1/2 in", "2 in x 0.113 in", MEETS), ("19/32 in", "2 in x 0.113 in", NOT),
    ("19/32 in", "2-1/2 in x 0.131 in", MEETS), ("3/4 in", "2-1/2 in x 0.131 in", MEETS),
    ("7/8 in", "2-1/2 in x 0.131 in", JUDGE), ("3/8 in", "1-7/8 in x 0.113 in", NOT), ("3/8 in", "2 in x 0.099 in", NOT),
])  # fmt: skip
def test_nails_of_interior_sheathing(thickness, nail, verdict):
    stated = us(thickness=thickness, panel_fastening=pins(nail, "6 in", "12 in"))
    assert verdicts(at(), stated, INSIDE)["wall-line-fastening"] == verdict


@pytest.mark.parametrize(("edge", "field", "verdict"), [
    ("6 in", "12 in", MEETS), ("6-1/8 in", "12 in", NOT), ("6 in", "12-1/4 in", NOT), ("152 mm", "305 mm", MEETS),
    ("153 mm", "305 mm", NOT),
])  # fmt: skip
def test_distance_of_nails(edge, field, verdict):
    stated = us(panel_fastening=pins("2 in x 0.113 in", edge, field))
    assert verdicts(at(), stated, INSIDE)["wall-line-fastening"] == verdict


@pytest.mark.parametrize(("mph", "exposure", "thickness", "nail", "verdict"), [
    (115, "C", "3/8 in", "2 in x 0.113 in", MEETS), (116, "C", "3/8 in", "2 in x 0.113 in", JUDGE),
    (110, "D", "3/8 in", "2 in x 0.113 in", MEETS), (111, "D", "3/8 in", "2 in x 0.113 in", JUDGE),
    (116, "C", "7/16 in", "2-1/2 in x 0.131 in", MEETS), (135, "D", "7/16 in", "2-1/2 in x 0.131 in", MEETS),
    (136, "D", "7/16 in", "2-1/2 in x 0.131 in", JUDGE), (115, "C", "7/16 in", "2 in x 0.113 in", NOT),
    (115, "C", "7/16 in", "2-1/8 in x 0.131 in", NOT), (115, "C", "3/8 in", "1-3/4 in x 0.113 in", NOT),
])  # fmt: skip
def test_exterior_sheathing_goes_by_speed(mph, exposure, thickness, nail, verdict):
    stated = us(thickness=thickness, panel_fastening=pins(nail, "6 in", "12 in"))
    assert verdicts(at(mph=mph, exposure=exposure), stated, wall(False, studs="16 in"))["wall-line-fastening"] == verdict


def test_screws_and_glue():
    screwed = pins("2 in x 0.15 in", "6 in", "12 in", kind="screw")
    assert verdicts(at(), us(panel_fastening=screwed), INSIDE)["wall-line-fastening"] == JUDGE
    glued = pins("2 in x 0.113 in", "6 in", "12 in", adhesive=True)
    seen = [verdicts(at(category=one), us(panel_fastening=glued), INSIDE)["wall-line-fastening"] for one in ("B", "C", "D0")]
    assert seen == [MEETS, NOT, NOT]


def test_finishing_nails_of_a_lining_give_nothing():
    assert verdicts(at(), us(panel_fastening=pins("38 mm x 1.9 mm")), INSIDE)["wall-line-fastening"] == NOT


# faces and methods


def test_the_face():
    seen = [verdicts(at(), us(method="WSP"), one)["wall-line"] for one in (INSIDE, wall(False, studs="16 in"))]
    assert seen == [MEETS, MEETS]
    whole_line = us((("16 ft", "0 ft"), ("16 ft", "16 ft")), method="CS-WSP")
    assert verdicts(at(), whole_line, INSIDE)["wall-line"] == JUDGE
    assert verdicts(at(), whole_line, wall(False, studs="16 in"))["wall-line"] == MEETS


def test_methods_that_are_not_carried_are_not_judged():
    assert verdicts(at(), us(method="ABW"), INSIDE) == {"wall-line": JUDGE}
    assert verdicts(at(), us(grade=None), INSIDE)["wall-line"] == EVIDENCE


def test_let_in_braces_never_meet():
    found = verdicts(at(), us(method="LIB", gypsum_opposite=True), wall(studs="16 in", gypsum_outside=True))
    assert found["wall-line-panel"] == EVIDENCE == found["wall-line-fastening"]
    assert whole(at(), us(method="LIB"), INSIDE) != MEETS
    assert verdicts(at(), us(method="LIB", gypsum_opposite=True), wall(studs="17 in"))["wall-line-panel"] == NOT
    assert verdicts(at(), us(method="LIB", storeys_above=2, gypsum_opposite=True), INSIDE)["wall-line-length"] == NOT


# earthquake


def test_categories_without_a_table_of_earthquake():
    base = required(at(), us())
    assert required(at(category="A"), us()) == required(at(category="C"), us()) == base
    assert verdicts(at(category="C", occupancy="dwelling-unit"), us(), INSIDE)["wall-line-length"] == EVIDENCE


@pytest.mark.parametrize(("occupancy", "townhouse", "asked"), [
    ("house", None, False), ("house", False, False), ("dwelling-unit", False, False), ("dwelling-unit", True, True),
    ("house", True, True),
])  # fmt: skip
def test_in_category_c_townhouses_alone_have_a_length_by_earthquake(occupancy, townhouse, asked):
    where = at(category="C", occupancy=occupancy)
    where.building.townhouse = townhouse
    steps = judged(where, us(), INSIDE).trace.steps()
    assert any(one.formula.name == "length_by_earthquake" for one in steps) == asked


@pytest.mark.parametrize(("category", "per_ten"), [("D0", 1.8), ("D1", 2.0), ("D2", 2.5)])
def test_the_greater_of_wind_and_earthquake(category, per_ten):
    """32 ft of line; no gypsum board opposite 1.5, lines 30 ft apart 1.2."""
    quake = per_ten * 3.2 * 1.5 * 1.2
    assert required(at(category=category), us()) == pytest.approx(max(quake, 8.778), abs=0.001)
    assert verdicts(at(category=category), us(), INSIDE)["wall-line-length"] == (JUDGE if quake <= 24 else NOT)


@pytest.mark.parametrize(("change", "factor"), [({"line_spacing": "25 ft"}, 1.0), ({"line_spacing": "25.1 ft"}, 1.2),
                                                ({"line_spacing": "35 ft"}, 1.4), ({"height": "10.1 ft"}, 1.44)])  # fmt: skip
def test_factors_by_earthquake(change, factor):
    assert required(at(category="D2", mph=90, exposure="B"), us(**change)) == pytest.approx(2.5 * 3.2 * 1.5 * factor)


def test_beyond_the_table_of_earthquake():
    for change in ({"line_spacing": "35.1 ft"}, {"length": "51 ft"}, {"storeys_above": 2}):
        one = findings(at(category="D2"), us((("16 ft", "0 ft"), ("16 ft", "16 ft")), **change), INSIDE)["wall-line-length"]
        assert str(one.verdict) in (JUDGE, NOT) and str(one.verdict) != MEETS


@pytest.mark.parametrize("set_id", ["irc-2018", "irc-2024"])
def test_editions_that_were_not_read_as_a_whole_decide_nothing(set_id):
    found = verdicts(place(set_id, mph=115, exposure="C"), us(), INSIDE)
    assert len(found) == 5 and set(found.values()) == {JUDGE}
    thin = us(panel=PanelBoard(grade="plywood", thickness=mm("1/4 in")))
    assert NOT not in verdicts(place(set_id, mph=115, exposure="C"), thin, INSIDE).values()


def test_metric_studs_and_more_storeys_than_stated():
    seen = [verdicts(at(), us(thickness="7/16 in"), wall(studs=one))["wall-line-panel"] for one in ("610 mm", "611 mm")]
    assert seen == [MEETS, NOT]
    assert required(at(storeys=1), us(storeys_above=1)) == required(at(storeys=2), us(storeys_above=1))
