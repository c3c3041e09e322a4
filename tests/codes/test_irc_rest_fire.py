"""Fire under the residential code: distance to the lot line, finishes, insulation, fireblocking; both sides of each limit."""

from dataclasses import replace
from types import SimpleNamespace as N

import pytest

import builders as b
from codes_builders import cases, insulation, of_resistance, quantity
from codes_envelope import PAPER, judged, length, only, opening
from codes_irc import SETS
from layerfolio.codes.findings import Verdict

FEET, INCH, FT2 = 0.3048, 0.0254, 0.3048**2
CASES = cases("irc-rest")
FLAME = N(**vars(PAPER) | {"proves": ("flame spread",)})


def wall(layers=None, set_id="irc-2021"):
    return of_resistance(3.0, layers=layers, set_id=set_id)


def of_wall(ending, layers=None, openings=(), set_id="irc-2021", stated=None, **answers):
    given = {"W1": N(**stated or {})}
    return only(judged([wall(layers, set_id)], openings, set_id=set_id, zone="6A", assemblies=given, **answers), ending)


@pytest.mark.parametrize("row", CASES["distances"], ids=lambda row: f"{row['feet']}-{row['sprinklered']}")
@pytest.mark.parametrize("set_id", SETS)
def test_wall_by_distance(set_id, row):
    stated = {"distance_to_boundary": length(row["feet"] * FEET)}
    found = of_wall("/fire-separation", set_id=set_id, stated=stated, sprinklered=row["sprinklered"])
    assert found.verdict == (Verdict.MEETS if row["free"] else Verdict.NEEDS_EVIDENCE)
    if not row["free"]:
        assert "1 h fire resistance" in found.reason and "ASTM E119" in found.reason
        assert ("from both sides" in found.reason) != row["sprinklered"]


@pytest.mark.parametrize("row", CASES["distances"], ids=lambda row: f"{row['feet']}-{row['sprinklered']}")
@pytest.mark.parametrize("set_id", SETS)
def test_openings_by_distance(set_id, row):
    """The wall is 100 ft2, so the share is the area in ft2."""
    stated = {"distance_to_boundary": length(row["feet"] * FEET), "face_area": quantity(100 * FT2)}

    def at(square_feet):
        holes = [opening("A1", size=(square_feet * FT2, 1.0))]
        about = {"openings": holes, "set_id": set_id, "stated": stated, "sprinklered": row["sprinklered"]}
        return of_wall("/openings-near-line", **about).verdict

    if row["share"] == "none":
        assert at(99) == Verdict.MEETS
    elif row["share"] == 0:
        assert at(0.1) == Verdict.DOES_NOT_MEET
    else:
        assert (at(100 * row["share"]), at(100 * row["share"] + 0.01)) == (Verdict.MEETS, Verdict.DOES_NOT_MEET)


def test_an_unknown_sprinkler_is_asked_where_it_decides():
    at = {feet: {"distance_to_boundary": length(feet * FEET), "face_area": quantity(10.0)} for feet in (2, 4, 5)}
    holes = [opening("A1", size=(3.0, 1.0))]
    assert of_wall("/fire-separation", stated=at[4]).verdict == Verdict.NEEDS_JUDGEMENT
    assert "building.sprinklered" in of_wall("/fire-separation", stated=at[4]).next_step
    assert of_wall("/fire-separation", stated=at[5]).verdict == Verdict.MEETS
    assert of_wall("/fire-separation", stated=at[2]).verdict == Verdict.NEEDS_EVIDENCE
    assert of_wall("/openings-near-line", openings=holes, stated=at[4]).verdict == Verdict.NEEDS_JUDGEMENT
    assert of_wall("/openings-near-line", openings=holes, stated=at[2]).verdict == Verdict.DOES_NOT_MEET


def test_what_is_missing_is_named():
    assert "distance_to_boundary" in of_wall("/fire-separation").next_step
    assert of_wall("/openings-near-line").verdict == Verdict.NEEDS_EVIDENCE
    near = {"distance_to_boundary": length(4 * FEET)}
    holes = [opening("A1")]
    assert "face_area" in of_wall("/openings-near-line", openings=holes, stated=near, sprinklered=False).next_step
    assert "list the openings" in of_wall("/openings-near-line", stated=near, sprinklered=False).next_step
    elsewhere = [opening("A1", wall="W9")]
    assert of_wall("/openings-near-line", openings=elsewhere, stated=near, sprinklered=False).verdict == Verdict.MEETS


def lined(flame, smoke, papers=(FLAME,)):
    lining = b.layer(2, R=0.1, d=0.012, name="panel", family="gypsum")
    return [insulation(3.0), lining], {"layers": (N(), N(flame_spread=flame, smoke_developed=smoke, evidence=papers))}


@pytest.mark.parametrize(("flame", "smoke", "papers", "verdict"), [
    (200, 450, (FLAME,), Verdict.MEETS), (201, 450, (FLAME,), Verdict.DOES_NOT_MEET), (200, 451, (FLAME,), Verdict.DOES_NOT_MEET),
    (200, 450, (), Verdict.NEEDS_EVIDENCE), (200, None, (FLAME,), Verdict.NEEDS_EVIDENCE),
    (None, None, (FLAME,), Verdict.NEEDS_EVIDENCE), (200, 450, (PAPER,), Verdict.NEEDS_EVIDENCE),
])  # fmt: skip
@pytest.mark.parametrize("set_id", SETS)
def test_finish(set_id, flame, smoke, papers, verdict):
    layers, stated = lined(flame, smoke, papers)
    found = of_wall("/finish-flame-spread", layers, set_id=set_id, stated=stated)
    assert found.verdict == verdict
    assert "flame spread of 200 or less, smoke developed of 450 or less" in found.asked
    if verdict == Verdict.NEEDS_EVIDENCE:
        assert "ASTM E84" in found.next_step


def filled(family, flame, smoke, papers=(FLAME,), inside=()):
    layers = [replace(insulation(3.0), family=family), *inside]
    return layers, {"layers": (N(flame_spread=flame, smoke_developed=smoke, evidence=papers), *(N() for _ in inside))}


@pytest.mark.parametrize(("family", "flame", "smoke", "verdict"), [
    ("batt", 25, 450, Verdict.MEETS), ("batt", 26, 450, Verdict.DOES_NOT_MEET), ("batt", 25, 451, Verdict.DOES_NOT_MEET),
    ("batt", None, None, Verdict.NEEDS_EVIDENCE), ("loose-fill", 25, 450, Verdict.MEETS),
    ("loose-fill", 30, 450, Verdict.DOES_NOT_MEET), ("straw", 25, 450, Verdict.MEETS),
    ("straw", None, None, Verdict.NEEDS_JUDGEMENT),
])  # fmt: skip
@pytest.mark.parametrize("set_id", SETS)
def test_insulation(set_id, family, flame, smoke, verdict):
    layers, stated = filled(family, flame, smoke)
    assert of_wall("/insulation-flame-spread", layers, set_id=set_id, stated=stated).verdict == verdict


def test_routes_of_loose_fill_and_straw():
    layers, stated = filled("loose-fill", None, None)
    loose = of_wall("/insulation-flame-spread", layers, stated=stated)
    assert loose.verdict == Verdict.NEEDS_EVIDENCE and "16 CFR 1209 and 1404" in loose.reason and "S102.2" in loose.next_step
    layers, stated = filled("straw", None, None)
    assert "strawbale appendix" in of_wall("/insulation-flame-spread", layers, stated=stated).next_step


def test_an_expired_report_of_flame_spread_is_said_to_have_expired():
    layers, stated = filled("batt", 0, 5, papers=(N(**vars(FLAME) | {"expires": "2001-12-31"}),))
    found = of_wall("/insulation-flame-spread", layers, stated=stated)
    assert found.verdict == Verdict.NEEDS_EVIDENCE and "has expired (2001-12-31)" in found.reason
    layers, stated = filled("batt", 0, 5, papers=())
    assert "has no report" in of_wall("/insulation-flame-spread", layers, stated=stated).reason


@pytest.mark.parametrize(("flame", "board", "verdict"), [
    (75, 0.0127, Verdict.MEETS), (76, 0.0127, Verdict.DOES_NOT_MEET), (75, 0.0125, Verdict.MEETS),
    (75, 0.0095, Verdict.NEEDS_JUDGEMENT), (75, None, Verdict.NEEDS_JUDGEMENT),
])  # fmt: skip
@pytest.mark.parametrize(("set_id", "clause"), [("irc-2018", "R316.4"), ("irc-2021", "R316.4"), ("irc-2024", "R303.4")])
def test_foam_has_limits_of_its_own_and_a_barrier(set_id, clause, flame, board, verdict):
    """R316.3, R316.4: 75 and 450, and half an inch of gypsum board toward the room; 12.5 mm is that in whole millimetres."""
    inside = () if board is None else (b.layer(2, R=0.1, d=board, name="gypsum", family="gypsum"),)
    layers, stated = filled("foam", flame, 450, inside=inside)
    found = of_wall("/insulation-flame-spread", layers, set_id=set_id, stated=stated)
    assert found.verdict == verdict
    if verdict == Verdict.NEEDS_JUDGEMENT:
        assert clause in found.reason


def test_one_worst_layer_decides():
    layers = [insulation(2.0), insulation(2.0, 2, name="more")]
    stated = {"layers": (N(flame_spread=0, smoke_developed=5, evidence=(FLAME,)), N(flame_spread=80, smoke_developed=5))}
    assert of_wall("/insulation-flame-spread", layers, stated=stated).verdict == Verdict.DOES_NOT_MEET


@pytest.mark.parametrize(("name", "proves", "verdict"), [
    ("blown wood fibre", ("flame spread",), Verdict.NEEDS_EVIDENCE),
    ("cellulose", ("flame spread",), Verdict.NEEDS_EVIDENCE),
    ("cellulose", ("flame spread", "16 CFR 1209"), Verdict.MEETS),
    ("mineral wool", ("flame spread",), Verdict.MEETS),
])  # fmt: skip
def test_cellulosic_loose_fill_has_a_federal_rule_beside(name, proves, verdict):
    """R302.10.3, alike in adopted texts of 2018, 2021 and 2024."""
    layers, stated = filled("loose-fill", 15, 210, papers=(N(**vars(FLAME) | {"proves": proves}),))
    found = of_wall("/insulation-flame-spread", [replace(layers[0], title=name)], stated=stated)
    assert found.verdict == verdict
    if verdict == Verdict.NEEDS_EVIDENCE:
        assert "16 CFR 1209 and 1404" in found.next_step


@pytest.mark.parametrize(("insulating", "proves", "verdict"), [
    (True, ("flame spread",), Verdict.NEEDS_EVIDENCE), (True, ("critical radiant flux",), Verdict.NEEDS_JUDGEMENT),
    (False, ("flame spread",), Verdict.NOT_ASKED),
])  # fmt: skip
@pytest.mark.parametrize("set_id", SETS)
def test_insulation_exposed_in_an_attic(set_id, insulating, proves, verdict):
    """R302.10.4: 0.12 W/cm2 by ASTM E970, alike in adopted texts of 2018, 2021 and 2024; no such figure is in a project file."""
    top = replace(insulation(5.0), insulating=insulating)
    one = of_resistance(5.0, layers=[top, insulation(3.0, 2)], kind="ceiling", faces="vented space", name="CL1", set_id=set_id)
    papers = (N(**vars(FLAME) | {"proves": proves}),)
    stated = {"CL1": N(layers=(N(flame_spread=5, smoke_developed=5, evidence=papers), N()))}
    found = only(judged([one], set_id=set_id, zone="6A", assemblies=stated), "/attic-insulation")
    assert found.verdict == verdict and "0.12 W/cm²" in found.asked and "E970" in found.asked


@pytest.mark.parametrize("set_id", SETS)
def test_linings_and_insulation_ask_for_papers_of_their_own(set_id):
    layers, stated = filled("batt", 0, 5, papers=())
    assert "of the insulation" in of_wall("/insulation-flame-spread", layers, set_id=set_id, stated=stated).next_step
    layers, stated = lined(100, 100, ())
    assert "of the lining" in of_wall("/finish-flame-spread", layers, set_id=set_id, stated=stated).next_step


def blocked(along, up=None, material="softwood", depth=0.019, set_id="irc-2021", cavity="unventilated"):
    layers = [
        b.layer(1, R=0.1, d=0.02, family="timber-board", counts=False),
        b.layer(2, kind="cavity", cavity=cavity, d=depth, family="air", counts=False), insulation(3.0, 3),
    ]  # fmt: skip
    blocks = None if along is None and up is None else N(vertical=length(up), horizontal=length(along), material=material)
    return of_wall("/fireblocking", layers, set_id=set_id, stated={"fire_blocks": blocks})


@pytest.mark.parametrize("set_id", SETS)
def test_fireblocking(set_id):
    assert blocked(10 * FEET, set_id=set_id).verdict == Verdict.MEETS
    assert blocked(10 * FEET + 0.001, set_id=set_id).verdict == Verdict.DOES_NOT_MEET
    assert blocked(10 * FEET, up=9.0, set_id=set_id).verdict == Verdict.MEETS  # upwards it goes by floors, not by metres
    assert blocked(None, set_id=set_id).verdict == Verdict.NEEDS_EVIDENCE
    assert "material" in blocked(10 * FEET, material=None, set_id=set_id).next_step
    assert of_wall("/fireblocking", [insulation(3.0)], set_id=set_id).verdict == Verdict.NOT_ASKED


@pytest.mark.parametrize("set_id", SETS)
def test_solid_blocks_close_a_space_that_is_ventilated(set_id):
    one = blocked(10 * FEET, set_id=set_id, cavity="ventilated")
    assert one.verdict == Verdict.NEEDS_JUDGEMENT and "how does air pass" in one.next_step
    assert blocked(10 * FEET + 0.001, set_id=set_id, cavity="ventilated").verdict == Verdict.DOES_NOT_MEET
