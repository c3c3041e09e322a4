"""Every cell of the printed tables, on both sides; zones; what an answer that is missing does."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from codes_builders import amendment, cases, of_resistance, only, project, studies
from layerfolio import codes
from layerfolio.catalogue.code_sets import code_set
from layerfolio.codes.context import zone_of
from layerfolio.codes.findings import Verdict
from layerfolio.codes.requirements import requirements

ZONES = cases("nbc-zones")
TABLES = cases("nbc-tables")
NBC = code_set("nbc-2020")
ANSWERS = {
    "below frost line": {"heated": False, "integral_footing": False, "permafrost": False, "above_frost_line": False},
    "above frost line": {"heated": False, "integral_footing": False, "permafrost": False, "above_frost_line": True},
    "permafrost": {"heated": False, "integral_footing": False, "permafrost": True, "above_frost_line": True},
    "heated": {"heated": True, "integral_footing": False, "permafrost": False},
    "integral footing": {"heated": False, "integral_footing": True, "permafrost": False, "above_frost_line": True},
}


@pytest.mark.parametrize("row", [*ZONES["rows"], *ZONES["between"], *ZONES["places"]["rows"]], ids=str)
def test_zone_of_degree_days(row):
    assert zone_of(NBC, row["degree_days"]) == row["zone"]


def test_no_zone_without_degree_days_or_table():
    assert zone_of(NBC, None) == "" and zone_of(code_set("iso"), 4000) == ""


def judged(question, R, zone, recovery, **about):
    """Finding on one assembly of that resistance in that zone."""
    days = {"4": 2500, "5": 3500, "6": 4500, "7A": 5500, "7B": 6500, "8": 7500}[zone]
    where = project(zone=zone, heat_recovery=recovery, degree_days=days)
    return only(codes.judge(where, studies(of_resistance(R, **about))), f"/{question}")


ABOVE = [(row, zone, cell) for row in TABLES["above_ground"] for zone, cell in zip(TABLES["zones"], row["cells"], strict=True)]


@pytest.mark.parametrize(("row", "zone", "cell"), ABOVE, ids=lambda one: one if isinstance(one, str) else None)
def test_every_cell_above_ground_turns_the_verdict(row, zone, cell):
    about = {"kind": row["kind"], "faces": row["faces"], "slope": row["slope"]}
    at = judged(row["question"], cell, zone, row["recovery"], **about)
    assert at.limit.value == cell and at.verdict == Verdict.MEETS
    assert at.place == f"Table 9.36.2.6.-{'B' if row['recovery'] else 'A'}" and at.clause == "9.36.2.6.(1)"
    rounds_up = judged(row["question"], cell - 0.0049, zone, row["recovery"], **about)
    rounds_down = judged(row["question"], cell - 0.0051, zone, row["recovery"], **about)
    assert rounds_up.verdict == Verdict.MEETS
    assert rounds_down.verdict == Verdict.DOES_NOT_MEET and "0.01" in rounds_down.reason


GROUND = [(row, zone, cell) for row in TABLES["ground"] for zone, cell in zip(TABLES["zones"], row["cells"], strict=True)]


@pytest.mark.parametrize(("row", "zone", "cell"), GROUND, ids=lambda one: one if isinstance(one, str) else None)
def test_every_cell_in_contact_with_the_ground(row, zone, cell):
    walls = row["row"] == "foundation wall"
    question, kind = ("foundation-walls", "foundation-wall") if walls else ("ground-floors", "slab")
    about = {"kind": kind, "faces": "ground", "ground": ANSWERS.get(row["row"])}
    if cell == "none":
        found = judged(question, 0.2, zone, row["recovery"], **about)
        assert found.verdict == Verdict.NOT_ASKED and found.limit is None
        return
    if cell == "n/a":
        found = judged(question, 9.0, zone, row["recovery"], **about)
        assert found.verdict == Verdict.NEEDS_JUDGEMENT and "no figure" in found.reason
        return
    at = judged(question, cell, zone, row["recovery"], **about)
    below = judged(question, cell - 0.0051, zone, row["recovery"], **about)
    assert (at.verdict, below.verdict) == (Verdict.MEETS, Verdict.DOES_NOT_MEET)
    assert at.limit.value == cell and at.place == f"Table 9.36.2.8.-{'B' if row['recovery'] else 'A'}"


@pytest.mark.parametrize("case", TABLES["restated"], ids=lambda case: case["zone"])
def test_zones_restated_elsewhere(case):
    for one in requirements("nbc-2020"):
        if one.question in case["cells"]:
            table = next(x for x in one.figures["tables"] if x["heat_recovery"] == case["recovery"])
            assert table["by_zone"][case["zone"]] == case["cells"][one.question]


def test_the_codes_own_rounding_edge():
    """The note accepts 1.9893 against 1.99: the sum is unrounded, its end is rounded, then compared."""
    case = cases("nbc-worked-rows")["rounding"]
    found = judged("foundation-walls", case["unrounded"], "4", True, kind="foundation-wall", faces="ground")
    assert found.verdict == Verdict.MEETS and found.limit.value == case["limit"]
    assert found.provided.decimals == 2 and found.given.startswith("1.99 ")


def test_a_floor_in_two_rows_takes_the_stricter_figure():
    """9.36.2.8.(2)."""
    both = {"heated": True, "integral_footing": True, "permafrost": False}
    found = judged("ground-floors", 3.0, "8", False, kind="slab", faces="ground", ground=both)
    assert found.limit.value == 4.59
    found = judged("ground-floors", 3.0, "6", False, kind="slab", faces="ground", ground=both)
    assert found.limit.value == 2.32


def test_a_missing_answer_about_the_ground_is_asked():
    found = judged("ground-floors", 4.7, "6", True, kind="slab", faces="ground", ground={})
    assert found.verdict == Verdict.NEEDS_JUDGEMENT
    assert "ground.heated" in found.next_step and "ground.above_frost_line" in found.next_step
    assert "permafrost" not in found.next_step  # zone 6 has no figure for it
    assert "nothing" in found.reason and "1.96" in found.reason and "2.32" in found.reason
    cold = judged("ground-floors", 4.7, "8", True, kind="slab", faces="ground", ground={})
    assert "ground.permafrost" in cold.next_step


def test_an_answer_that_decides_nothing_is_not_asked():
    answers = {"heated": False, "above_frost_line": True}
    found = judged("ground-floors", 4.7, "6", True, kind="slab", faces="ground", ground=answers)
    assert found.verdict == Verdict.MEETS and found.limit.value == 1.96
    answers = {"heated": True}
    assert judged("ground-floors", 4.7, "6", True, kind="floor", faces="ground", ground=answers).limit.value == 2.32
    colder = judged("ground-floors", 4.7, "7A", False, kind="slab", faces="ground", ground=answers)
    assert colder.verdict == Verdict.NEEDS_JUDGEMENT and "ground.integral_footing" in colder.next_step


def test_missing_heat_recovery_is_asked_only_where_it_decides():
    walls = judged("walls", 3.5, "6", None)
    assert walls.verdict == Verdict.NEEDS_JUDGEMENT
    assert "code.heat_recovery" in walls.next_step and "2.97" in walls.reason and "3.08" in walls.reason
    roofs = judged("roofs", 4.67, "6", None, kind="roof")
    assert roofs.verdict == Verdict.MEETS and roofs.limit.value == 4.67


def test_enclosed_unheated_space_eases_a_wall_by_016():
    """9.36.2.4.(4): zone 6 with heat recovery, 2.97 becomes 2.81."""
    at = judged("walls", 2.81, "6", True, faces="unheated space")
    below = judged("walls", 2.80, "6", True, faces="unheated space")
    assert at.limit.value == pytest.approx(2.81) and at.verdict == Verdict.MEETS and "0.16" in at.asked
    assert below.verdict == Verdict.DOES_NOT_MEET
    assert judged("walls", 2.81, "6", True, faces="vented space").verdict == Verdict.DOES_NOT_MEET


def test_a_floor_within_016_of_the_limit_is_a_question():
    """A vented crawl space counts as outside, an attached garage does not: the file says "unheated space" for both."""
    between = judged("floors", 4.55, "6", True, kind="floor", faces="unheated space")
    assert between.verdict == Verdict.NEEDS_JUDGEMENT and "crawl space" in between.next_step
    assert judged("floors", 4.50, "6", True, kind="floor", faces="unheated space").verdict == Verdict.DOES_NOT_MEET
    assert judged("floors", 4.67, "6", True, kind="floor", faces="unheated space").verdict == Verdict.MEETS
    assert judged("floors", 4.55, "6", True, kind="floor", faces="vented space").verdict == Verdict.DOES_NOT_MEET


@pytest.mark.parametrize(("kind", "slope", "question"), [
    ("roof", 59.9, "roofs"), ("roof", 60, "walls"), ("wall", 59.9, "roofs"), ("wall", 60, "walls"),
    ("wall", 90, "walls"), ("ceiling", 0, "roofs"),
])  # fmt: skip
def test_sixty_degrees_part_roofs_from_walls(kind, slope, question):
    """9.36.2.1.(3)."""
    assert judged(question, 9, "6", True, kind=kind, slope=slope).verdict == Verdict.MEETS


@pytest.mark.parametrize("kind", ["wall", "roof", "ceiling", "floor", "slab", "foundation-wall"])
@pytest.mark.parametrize("faces", ["outside air", "vented space", "unheated space", "ground"])
@pytest.mark.parametrize("slope", [0, 30, 60, 90])
@pytest.mark.parametrize("set_id", ["nbc-2020", "iso", "irc-2018", "irc-2021", "irc-2024"])
def test_each_assembly_has_one_thermal_requirement(set_id, kind, faces, slope):
    one = of_resistance(3, kind=kind, faces=faces, slope=slope)
    thermal = [x for x in requirements(set_id) if x.topic == "thermal" and x.asks(one)]
    asking = [x for x in thermal if x.judge not in ("placement", "insulation")]
    assert len(asking) == 1, [x.id for x in asking]


def test_two_zones_stated_the_more_demanding_decides():
    where = project(zone="6", degree_days=6500, heat_recovery=True)
    findings = codes.judge(where, studies(of_resistance(3.0)))
    zone, walls = only(findings, "/zone"), only(findings, "/walls")
    assert zone.verdict == Verdict.NEEDS_JUDGEMENT and "7B" in zone.reason
    assert walls.verdict == Verdict.DOES_NOT_MEET and walls.limit.value == 3.08
    assert "more demanding" in walls.reason
    milder = codes.judge(project(zone="7B", degree_days=4500), studies(of_resistance(3.0)))
    assert only(milder, "/walls").verdict == Verdict.DOES_NOT_MEET


def test_zone_from_degree_days_alone_and_without_either():
    derived = codes.judge(project(zone=None, degree_days=4600), studies(of_resistance(2.97)))
    assert only(derived, "/walls").verdict == Verdict.MEETS and only(derived, "/zone").verdict == Verdict.MEETS
    neither = codes.judge(project(zone=None, degree_days=None), studies(of_resistance(2.97)))
    assert only(neither, "/walls").verdict == Verdict.NEEDS_JUDGEMENT
    assert "which zone" in only(neither, "/walls").next_step
    roofs = codes.judge(project(zone="6", degree_days=None), studies(of_resistance(5, kind="roof", name="R1")))
    assert only(roofs, "/roofs").verdict == Verdict.MEETS
    assert only(roofs, "/zone").verdict == Verdict.NEEDS_JUDGEMENT


@pytest.mark.parametrize(("zone", "days", "asked"), [
    ("4", 2900, "zone 4: fewer than 3000 degree-days below 18 °C"),
    ("5", 3500, "zone 5: 3000 to 3999 degree-days below 18 °C"),
    ("6", 4600, "zone 6: 4000 to 4999 degree-days below 18 °C"),
    ("7B", 6500, "zone 7B: 6000 to 6999 degree-days below 18 °C"),
    ("8", 7500, "zone 8: 7000 degree-days or more below 18 °C"),
    ("6", 6500, "zone 6: 4000 to 4999 degree-days below 18 °C; zone 7B: 6000 to 6999 degree-days below 18 °C"),
    (None, None, "by heating degree-days below 18 °C"),
])  # fmt: skip
def test_the_zone_line_prints_the_limits_of_the_zone(zone, days, asked):
    """Heads of the columns of Table 9.36.2.6.-A."""
    found = only(codes.judge(project(zone=zone, degree_days=days), studies(of_resistance(3))), "/zone")
    assert found.asked == asked


@pytest.mark.parametrize("row", ZONES["rows"], ids=str)
def test_the_degree_days_lie_within_the_limits_that_print(row):
    found = only(codes.judge(project(zone=None, degree_days=row["degree_days"]), studies(of_resistance(3))), "/zone")
    figures = [float(one) for one in re.findall(r"\d{4}", found.asked.partition(": ")[2])]
    low, high = {"fewer": (0, figures[0] - 1), "more": (figures[0], 1e9)}.get(
        "fewer" if "fewer" in found.asked else "more" if "more" in found.asked else "", (figures[0], figures[-1])
    )
    assert low <= row["degree_days"] <= high and found.asked.startswith(f"zone {row['zone']}:")


def test_an_amendment_replaces_the_limit_with_its_source():
    change = amendment("nbc-2020/9.36.2.6/walls", "3.5 m2.K/W", "by-law 12")
    findings = codes.judge(project(amendments=[change]), studies(of_resistance(3.4)))
    walls = only(findings, "/walls")
    assert (walls.verdict, walls.limit.value, walls.amended) == (Verdict.DOES_NOT_MEET, 3.5, "by-law 12")
    assert walls.mark == "given"
    assert only(codes.judge(project(amendments=[change]), studies(of_resistance(3.5))), "/walls").verdict == Verdict.MEETS


@given(st.floats(0.5, 12), st.floats(0, 5), st.sampled_from(["4", "5", "6", "7A", "7B", "8"]), st.booleans())
def test_more_resistance_never_loses_a_verdict(R, more, zone, recovery):
    if judged("walls", R, zone, recovery).verdict == Verdict.MEETS:
        assert judged("walls", R + more, zone, recovery).verdict == Verdict.MEETS


@given(st.floats(0.5, 12), st.sampled_from(["walls", "roofs", "floors", "attic-ceilings"]))
def test_a_colder_zone_never_asks_less(R, question):
    about = {"walls": {}, "roofs": {"kind": "roof"}, "floors": {"kind": "floor"},
             "attic-ceilings": {"kind": "ceiling", "faces": "vented space"}}[question]  # fmt: skip
    limits = [judged(question, R, zone, True, **about).limit.value for zone in TABLES["zones"]]
    assert limits == sorted(limits)
