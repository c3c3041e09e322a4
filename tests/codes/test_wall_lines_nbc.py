"""Lines of bracing under the national Canadian code: both sides of every limit; each input turns the verdict.

Limits: NBC as read in the Alberta edition of 2023 and in Ontario's code of 2024 (9.23.13.1 to .7, Tables 9.23.13.5 and 9.23.13.6,
9.23.3.4, 9.23.3.5.-A to -C, 9.29.6.1, 9.29.9.2).
"""

from dataclasses import replace

import pytest

import builders as b
from codes_lines import findings, judged, line, mm, panel, pins, place, shank, verdicts, wall, whole
from layerfolio.reading.wall_lines import PanelBoard, PlateNailing

MEETS, NOT, JUDGE, EVIDENCE = "meets", "does not meet", "needs judgement", "needs evidence"
NOT_ASKED = "not asked"
FULL = (("4.8 m", "0 m"), ("4.8 m", "4.8 m"))
LOW, HIGH, STRONG = {}, {"Sa02": 0.8}, {"Sa02": 0.95}


@pytest.mark.parametrize(("figures", "path"), [
    ({"Sa02": 0.70}, "9.23.13.1"), ({"Sa02": 0.701}, "9.23.13.2"), ({"wind": 799}, "9.23.13.1"), ({"wind": 800}, "9.23.13.2"),
    ({"wind": 1199}, "9.23.13.2"), ({"wind": 1200}, "9.23.13.3"), ({"Sa02": 1.8}, "9.23.13.2"), ({"Sa02": 1.81}, "9.23.13.3"),
    ({"wind": 1200, "Sa02": 1.9}, "9.23.13.3"),
])  # fmt: skip
def test_the_path_by_the_figures_of_the_place(figures, path):
    assert judged(place(**figures), line(FULL)).path.startswith(path)


@pytest.mark.parametrize("figures", [{"wind": None}, {"Sa02": None}, {"wind": None, "Sa02": None}])
def test_without_a_figure_of_the_place_nothing_is_judged(figures):
    found = findings(place(**figures), line(FULL))
    assert list(found) == ["wall-line"] and str(found["wall-line"].verdict) == EVIDENCE
    assert all(f"site_loads.{word}" in found["wall-line"].next_step for word in
               [{"wind": "wind_pressure_1_50", "Sa02": "seismic.Sa02"}[one] for one in figures])  # fmt: skip


@pytest.mark.parametrize("figures", [{"wind": 1200}, {"Sa02": 1.81}])
def test_extreme_places_are_an_engineer_s(figures):
    found = findings(place(**figures), line(FULL))
    assert list(found) == ["wall-line"] and str(found["wall-line"].verdict) == JUDGE
    assert "licensed professional" in found["wall-line"].reason and "9.23.13.3" in found["wall-line"].place


@pytest.mark.parametrize(("floors", "weight", "extreme"), [
    (2, "light", False), (3, "light", True), (1, "heavy", False), (2, "heavy", True),
])  # fmt: skip
def test_floors_over_what_the_bands_carry(floors, weight, extreme):
    found = judged(place(**HIGH), line(FULL, storeys_above=floors, construction=weight))
    assert found.path.startswith("9.23.13.3") is extreme
    assert not judged(place(wind=900), line(FULL, storeys_above=floors, construction=weight)).path.startswith("9.23.13.3")


def test_the_path_of_little_wind_and_quake_meets_and_asks_no_length():
    found = judged(place(), line(FULL))
    assert whole(place(), line(FULL)) == MEETS and found.required is None and "(2)(a)(iii)" in found.path
    assert set(found.answers) == {f"wall-line{one}" for one in ("", "-length", "-panel", "-fastening", "-tie")}


def test_a_wall_panelled_in_part_is_a_question():
    assert verdicts(place(), line())["wall-line-length"] == JUDGE
    beside = line((("4 m", "0 m"), ("4 m", "5.6 m")), openings=("1.6 m",))
    assert verdicts(place(), beside)["wall-line-length"] == NOT_ASKED
    assert verdicts(place(), line(panels=()))["wall-line-length"] == EVIDENCE


def test_a_length_that_nobody_asks_is_no_figure_that_meets():
    asked = findings(place(), line(FULL))["wall-line-length"]
    assert str(asked.verdict) == NOT_ASKED and "limits no length" in asked.reason and asked.limit is None


@pytest.mark.parametrize("where", [LOW, HIGH])
def test_a_panel_behind_other_layers_is_less_plainly_a_finish(where):
    """9.23.13.1.(2)(a)(iii) and 9.23.13.6.(1)(c) name an interior panel-type finish by 9.29; whether one behind a service cavity
    and gypsum board is that was found ruled nowhere."""
    hidden = findings(place(**where), line(FULL), wall(gypsum_inside=True))
    assert str(hidden["wall-line"].verdict) == JUDGE and "Board (layer 3)" in hidden["wall-line"].next_step
    assert "9.29" in hidden["wall-line"].next_step and str(hidden["wall-line-panel"].verdict) == MEETS
    assert str(findings(place(**where), line(FULL), wall())["wall-line"].verdict) == MEETS


@pytest.mark.parametrize("where", [LOW, HIGH])
def test_sheathing_outside_may_have_anything_inside(where):
    assert verdicts(place(**where), line(FULL), wall(False, gypsum_inside=True))["wall-line"] == MEETS


FINISH = [  # 9.29.6.1, 9.29.9.2
    ("plywood", "400 mm", "4.7 mm", "4.6 mm", JUDGE), ("plywood", "600 mm", "8.0 mm", "7.9 mm", JUDGE),
    ("plywood", "400 mm", "4.7 mm", "3.9 mm", NOT), ("plywood", "600 mm", "8.0 mm", "4.6 mm", NOT),
    ("OSB O-2", "600 mm", "8.0 mm", "4.6 mm", NOT), ("OSB O-1", "400 mm", "6.35 mm", "5.9 mm", NOT),
    ("OSB O-1", "600 mm", "9.5 mm", "6.3 mm", NOT), ("plywood", "401 mm", "8.0 mm", "4.6 mm", NOT),
    ("plywood", "24 in", "8.0 mm", "4.6 mm", NOT), ("plywood", "16 in", "4.7 mm", "3.9 mm", NOT),
]  # fmt: skip


def panel_of(figures, grade, thickness, assembly):
    return verdicts(place(**figures), line(FULL, grade=grade, thickness=thickness), assembly)["wall-line-panel"]


@pytest.mark.parametrize(("grade", "studs", "enough", "thin", "then"), FINISH)
def test_thickness_of_an_interior_finish(grade, studs, enough, thin, then):
    seen = [panel_of({}, grade, one, wall(studs=studs)) for one in (enough, thin)]
    assert seen == [MEETS, then]


SHEATHING = [  # Table 9.23.17.2.-A and -B
    ("plywood", "400 mm", "6.0 mm", "5.9 mm"), ("plywood", "600 mm", "7.5 mm", "7.4 mm"),
    ("OSB O-1", "400 mm", "6.35 mm", "6.3 mm"), ("OSB O-1", "600 mm", "7.9 mm", "7.8 mm"),
]  # fmt: skip


@pytest.mark.parametrize(("grade", "studs", "enough", "thin"), SHEATHING)
def test_thickness_of_sheathing_outside(grade, studs, enough, thin):
    seen = [panel_of({}, grade, one, wall(False, studs)) for one in (enough, thin)]
    assert seen == [MEETS, NOT]


BANDS = [  # Table 9.23.13.6
    ("plywood", "400 mm", "11 mm", "10.9 mm"), ("plywood", "600 mm", "12.5 mm", "12.4 mm"),
    ("OSB O-1", "400 mm", "11 mm", "10.9 mm"), ("OSB O-2", "600 mm", "12.5 mm", "12.4 mm"),
    ("plywood", "16 in", "7/16 in", "3/8 in"),
]  # fmt: skip


@pytest.mark.parametrize(("grade", "studs", "enough", "thin"), BANDS)
def test_thickness_in_bands(grade, studs, enough, thin):
    seen = [panel_of(HIGH, grade, one, wall(studs=studs)) for one in (enough, thin)]
    assert seen == [MEETS, NOT]


@pytest.mark.parametrize(("studs", "mark", "verdict"), [
    ("400 mm", "CSA O325 W16", MEETS), ("600 mm", "CSA O325 W16", NOT), ("600 mm", "CSA O325 W24", MEETS),
    ("601 mm", "CSA O325 W24", JUDGE),
])  # fmt: skip
def test_marks_by_span(studs, mark, verdict):
    assert verdicts(place(**HIGH), line(grade=mark, thickness="11 mm"), wall(studs=studs))["wall-line-panel"] == verdict


@pytest.mark.parametrize(("quake", "thickness", "verdict"), [
    (0.90, "9.5 mm", JUDGE), (0.901, "9.5 mm", NOT), (0.90, "9.4 mm", NOT),
])  # fmt: skip
def test_waferboard_ends_with_the_earthquake(quake, thickness, verdict):
    """The table has a row for it; 9.23.13.6.(6) does not name it for bands as close as these."""
    stated = line(grade="waferboard R-1", thickness=thickness)
    assert verdicts(place(Sa02=quake), stated, wall())["wall-line-panel"] == verdict


FASTENING = [  # place, stays, turns; a finish inside on the low path is a question of its own: test_wall_lines_nbc_cautious
    (LOW, "51 mm x 2.84 mm", "50 mm x 2.84 mm"), (LOW, "51 mm x 2.84 mm", "51 mm x 2.5 mm"),
    (LOW, "2 in x 0.113 in", "1-3/4 in x 0.113 in"), (LOW, "57 mm x 2.87 mm", "57 mm x 2.8 mm"),
    (HIGH, "63 mm x 3.25 mm", "62 mm x 3.25 mm"), (HIGH, "63 mm x 3.25 mm", "63 mm x 2.87 mm"),
    (HIGH, "2-1/2 in x 0.131 in", "2 in x 0.131 in"),
]  # fmt: skip


@pytest.mark.parametrize("inside", [True, False])
@pytest.mark.parametrize(("where", "enough", "little"), FASTENING)
def test_nails(where, enough, little, inside):
    lines = [line(FULL, panel_fastening=pins(one)) for one in (enough, little)]
    seen = [verdicts(place(**where), one, wall(inside))["wall-line-fastening"] for one in lines]
    assert seen == [MEETS, JUDGE if inside and where is LOW else NOT]


@pytest.mark.parametrize(("where", "edge", "verdict"), [
    (LOW, "150 mm", MEETS), (LOW, "151 mm", NOT), (LOW, "6 in", MEETS), (HIGH, "150 mm", MEETS), (HIGH, "151 mm", NOT),
    ({"Sa02": 0.90}, "150 mm", MEETS), ({"Sa02": 0.91}, "150 mm", NOT), ({"Sa02": 0.91}, "75 mm", MEETS),
    ({"Sa02": 0.91}, "76 mm", NOT), ({"wind": 900, "Sa02": 0.91}, "150 mm", NOT), ({"wind": 900, "Sa02": 0.91}, "75 mm", MEETS),
])  # fmt: skip
def test_nails_along_the_edges(where, edge, verdict):
    assert verdicts(place(**where), line(FULL, panel_fastening=pins(edge=edge)))["wall-line-fastening"] == verdict


@pytest.mark.parametrize("where", [LOW, HIGH, STRONG])
@pytest.mark.parametrize(("field", "verdict"), [("300 mm", MEETS), ("301 mm", NOT)])
def test_nails_between(where, field, verdict):
    assert verdicts(place(**where), line(FULL, panel_fastening=pins(edge="75 mm", field=field)))["wall-line-fastening"] == verdict


@pytest.mark.parametrize("where", [HIGH, STRONG])
def test_nails_of_a_lining_give_no_resistance(where):
    """38 mm finishing nails at 150 and 300 mm satisfy 9.29.6.3.(1) and 9.29.9.3.(1) and hold a lining; they brace no band."""
    one = findings(place(**where), line(FULL, panel_fastening=pins("38 mm x 1.9 mm", edge="75 mm")))["wall-line-fastening"]
    assert str(one.verdict) == NOT and "lining" in one.reason


@pytest.mark.parametrize("where", [LOW, HIGH, STRONG])
def test_screws_are_a_question(where):
    stated = line(FULL, panel_fastening=pins("60 mm x 4 mm", edge="75 mm", kind="screw"))
    one = findings(place(**where), stated)["wall-line-fastening"]
    assert str(one.verdict) == JUDGE and "screw" in one.next_step
    short = line(FULL, panel_fastening=pins("44 mm x 4 mm", edge="75 mm", kind="screw"))
    assert verdicts(place(**where), short)["wall-line-fastening"] == NOT


def test_staples_are_not_in_the_strictest_table():
    stapled = line(FULL, panel_fastening=pins("63 mm x 1.98 mm", edge="75 mm", kind="staple"))
    assert verdicts(place(**HIGH), stapled)["wall-line-fastening"] == JUDGE
    assert verdicts(place(**STRONG), stapled)["wall-line-fastening"] == NOT


def test_half_of_the_nail_goes_into_the_stud():
    seen = [
        verdicts(place(), line(FULL, thickness=one, panel_fastening=pins("57 mm x 2.87 mm")))["wall-line-fastening"]
        for one in ("25 mm", "25.1 mm", "20 mm")
    ]  # fmt: skip
    assert seen == [MEETS, JUDGE, MEETS]
    thick = line(FULL, thickness="19 mm", panel_fastening=pins("36 mm x 2.84 mm", kind="nail"))
    assert verdicts(place(), thick)["wall-line-fastening"] == NOT


@pytest.mark.parametrize(("blocked", "verdict"), [(True, MEETS), (False, NOT), (None, EVIDENCE)])
@pytest.mark.parametrize("where", [LOW, HIGH])
def test_edges_of_a_panel_inside_are_supported(where, blocked, verdict):
    assert verdicts(place(**where), line(FULL, panel_fastening=pins(blocked=blocked)))["wall-line-fastening"] == verdict


@pytest.mark.parametrize(("figures", "blocked", "verdict"), [
    ({"Sa02": 1.2}, False, MEETS), ({"Sa02": 1.21}, False, NOT), ({"Sa02": 1.21}, None, EVIDENCE), ({"Sa02": 1.21}, True, MEETS),
])  # fmt: skip
def test_edges_of_sheathing_outside(figures, blocked, verdict):
    """9.23.3.5.(8): blocking where Sa(0.2) is over 1.2 or more than a light roof is carried."""
    stated = line(panel_fastening=pins(edge="75 mm", blocked=blocked))
    assert verdicts(place(**figures), stated, wall(False))["wall-line-fastening"] == verdict


def test_edges_of_sheathing_under_a_floor():
    under = line(storeys_above=1, panel_fastening=pins(blocked=False))
    assert verdicts(place(**HIGH), under, wall(False))["wall-line-fastening"] == NOT
    assert verdicts(place(**HIGH), line(panel_fastening=pins(blocked=False)), wall(False))["wall-line-fastening"] == MEETS


SHARES = [  # floors, weight, share, panels that reach it and panels that do not, of 10 m
    (0, "light", 0.25), (1, "light", 0.25), (2, "light", 0.40), (0, "heavy", 0.25), (1, "heavy", 0.40),
]  # fmt: skip


@pytest.mark.parametrize(("floors", "weight", "share"), SHARES)
def test_share_of_the_band(floors, weight, share):
    def at(total):
        half = f"{total / 2} m"
        return line(((half, "0 m"), (half, f"{10 - total / 2} m")), length="10 m", storeys_above=floors, construction=weight)

    enough, little = (findings(place(**HIGH), at(one))["wall-line-length"] for one in (10 * share, 10 * share - 0.01))
    assert (str(enough.verdict), str(little.verdict)) == (MEETS, NOT)
    assert enough.limit.value == share and enough.provided.value == pytest.approx(share)


@pytest.mark.parametrize(("floors", "weight", "share"), [(3, "light", 0.75), (2, "heavy", 0.75)])
def test_share_under_many_floors_by_wind(floors, weight, share):
    at = line((("3.75 m", "0 m"), ("3.75 m", "6.25 m")), length="10 m", storeys_above=floors, construction=weight)
    assert judged(place(wind=900), at).required == share
    assert verdicts(place(wind=900), at)["wall-line-length"] == MEETS
    more = line((("3.75 m", "0 m"), ("3.75 m", "6.25 m")), length="10 m", storeys_above=floors + 1, construction=weight)
    assert verdicts(place(wind=900), more)["wall-line-length"] == JUDGE


def test_what_is_carried_has_to_be_stated():
    assert verdicts(place(**HIGH), line(storeys_above=None))["wall-line-length"] == EVIDENCE
    assert verdicts(place(**HIGH), line(construction=None))["wall-line-length"] == MEETS  # light and heavy ask the same
    assert verdicts(place(**HIGH), line(storeys_above=1, construction=None))["wall-line-length"] == EVIDENCE


@pytest.mark.parametrize(("figures", "most", "over"), [
    ({"Sa02": 0.99}, "10.6 m", "10.61 m"), ({"Sa02": 1.0}, "7.6 m", "7.61 m"), ({"wind": 800}, "7.6 m", "7.61 m"),
])  # fmt: skip
def test_distance_of_the_bands(figures, most, over):
    seen = [verdicts(place(**figures), line(line_spacing=one))["wall-line-layout"] for one in (most, over)]
    assert seen == [MEETS, NOT]
    assert verdicts(place(**figures), line(line_spacing=None))["wall-line-layout"] == EVIDENCE


@pytest.mark.parametrize(("size", "gap", "verdict"), [
    ("1 m", "6.4 m", MEETS), ("1 m", "6.41 m", NOT), ("1.2 m", "7.3 m", MEETS), ("1.2 m", "7.31 m", NOT),
    ("1.19 m", "6.41 m", NOT),
])  # fmt: skip
def test_clear_distance_between_panels(size, gap, verdict):
    wide, apart = mm(size).value, mm(gap).value
    stated = line(((size, "0 m"), (size, f"{wide + apart} m")), length=f"{2 * wide + apart} m")
    assert verdicts(place(**HIGH), stated)["wall-line-layout"] == verdict


@pytest.mark.parametrize(("start", "verdict"), [("2.4 m", MEETS), ("2.41 m", NOT)])
def test_distance_from_the_end(start, verdict):
    stated = line((("2 m", start), ("2 m", "7.6 m")))
    assert verdicts(place(**HIGH), stated)["wall-line-layout"] == verdict


def test_panels_too_short_do_not_count():
    long, short = (line(((size, "1 m"), (size, "4 m"), (size, "7.5 m"))) for size in ("750 mm", "749 mm"))
    assert judged(place(**HIGH), long).provided == pytest.approx(2.25 / 9.6)
    assert judged(place(**HIGH), short).provided == 0 and verdicts(place(**HIGH), short)["wall-line-layout"] == NOT


@pytest.mark.parametrize(("size", "counts"), [("600 mm", True), ("599 mm", False)])
def test_short_panels_at_the_end_are_a_question(size, counts):
    stated = line(((size, "0 m"), ("4 m", "5.6 m")))
    assert judged(place(**HIGH), stated).provided == pytest.approx((4 + counts * mm(size).value) / 9.6)
    if counts:
        assert {verdicts(place(**HIGH), stated)[f"wall-line-{one}"] for one in ("length", "layout")} == {JUDGE}


def test_places_that_are_not_stated():
    assert verdicts(place(**HIGH), line((("2.4 m", None), ("2.4 m", None))))["wall-line-layout"] == EVIDENCE


@pytest.mark.parametrize(("nail", "spacing", "verdict"), [
    ("82 mm x 3.66 mm", "150 mm", MEETS), ("81 mm x 3.66 mm", "150 mm", NOT), ("82 mm x 3.66 mm", "151 mm", NOT),
    ("82 mm x 3.25 mm", "150 mm", NOT), ("3-1/4 in x 0.148 in", "6 in", MEETS),
])  # fmt: skip
def test_tie_of_the_plate_under_a_panel_inside(nail, spacing, verdict):
    stated = line(plate_nailing=PlateNailing(nail=shank(nail), spacing=mm(spacing)))
    assert verdicts(place(**HIGH), stated)["wall-line-tie"] == verdict


def test_a_band_that_meets_meets_in_every_question():
    assert set(verdicts(place(**HIGH), line()).values()) == {MEETS} and whole(place(**HIGH), line()) == MEETS
    assert judged(place(**HIGH), line()).required == 0.25


TURN = [
    {"plate_nailing": None}, {"panel_fastening": None}, {"panel": None}, {"storeys_above": None}, {"line_spacing": None},
    {"panels": ()}, {"panel": PanelBoard(grade="plywood", thickness=mm("10 mm"))}, {"line_spacing": "11 m"},
    {"panels": (panel("2.4 m", "0 m", "2 m"), panel("2.4 m", "7.2 m"))},
]  # fmt: skip


@pytest.mark.parametrize("change", TURN, ids=lambda one: " ".join(one))
def test_each_input_taken_away_or_spoilt_turns_the_verdict(change):
    assert whole(place(**HIGH), line(**change)) != MEETS


def test_interior_lines_with_one_face_take_half_the_spacing():
    stated = [line(interior=True, panel_fastening=pins(edge=one)) for one in ("75 mm", "76 mm")]
    seen = [verdicts(place(**HIGH), one)["wall-line-fastening"] for one in stated]
    assert seen == [MEETS, NOT]


@pytest.mark.parametrize("where", [LOW, HIGH])
def test_a_panel_that_does_not_lie_on_the_studs(where):
    apart = wall(between=(b.layer(1, R=1, d=0.04, name="Boards"),))
    one = findings(place(**where), line(FULL), apart)["wall-line"]
    assert str(one.verdict) == JUDGE and "between" in one.reason
    bare = wall(between=(replace(b.layer(1, R=0.01, d=0.001, name="Foil"), kind="membrane", thickness=None),))
    assert verdicts(place(**where), line(FULL), bare)["wall-line"] == MEETS


@pytest.mark.parametrize("where", [LOW, HIGH])
@pytest.mark.parametrize("grade", ["gypsum board", "fibreboard", "particleboard"])
def test_boards_that_are_not_carried_are_a_question(where, grade):
    assert verdicts(place(**where), line(FULL, grade=grade))["wall-line"] == JUDGE


@pytest.mark.parametrize("where", [LOW, HIGH])
def test_the_edition_of_2015_decides_nothing(where):
    found = verdicts(place("nbc-2015", **where), line(FULL))
    assert found and set(found.values()) == {JUDGE}
    assert JUDGE in verdicts(place("nbc-2015", **where), line(FULL, grade="plywood", thickness="3 mm")).values()


def test_findings_name_the_line_and_who_decides():
    for one in findings(place(**HIGH), line()).values():
        assert one.assembly == "L1" and one.topic == "structure" and "engineer" in one.who_decides and one.source == "nbc-2020"


def test_a_layer_that_is_no_wood_panel_is_not_taken_for_one():
    board = wall()
    other = replace(board, layers=tuple(replace(x, insulating=True) if x.name == "Panel" else x for x in board.layers))
    for figures in (LOW, HIGH):
        assert verdicts(place(**figures), line(FULL), other)["wall-line"] == JUDGE
    assert verdicts(place("bc-2024"), line(FULL, gypsum_opposite=True), replace(other, layers=other.layers))["wall-line"] == NOT


def test_customary_figures_stand_first():
    found = findings(place(**HIGH, units="customary"), line(FULL))
    assert '2 1/2" (63 mm)' in found["wall-line-fastening"].given
    assert found["wall-line-panel"].asked.startswith('7/16" (11 mm)')
