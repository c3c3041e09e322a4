"""Weights up to which construction is normal, on both sides; what stands in the way of a verdict.

Outside figures: BC 2024, 9.23.13.2.(3) (averages of a storey, normal construction: exterior walls 0.4, roof 0.5, floors 0.5 kPa;
heavy: 1.2, 1.0, 1.5 kPa); R301.2.2 and R301.2.2.2 as an adopted text of 2021 prints them (townhouses in C, all dwellings in D0 to
D2; 15 psf of roof and ceiling together on a horizontal projection, 25 psf with more bracing; floors 10 psf; exterior walls: light
frames of wood 15 psf, of cold-formed steel 14 psf, structural insulated panels 10 psf).
"""

from dataclasses import replace
from math import cos, radians

import pytest

import builders as b
from codes_irc import wall
from layerfolio.codes.findings import Verdict
from structure_walls import PSF, cladding, fasteners, furring, of_clause, studs

LOAD = "/dead-load"
MEETS, NOT, JUDGE, EVIDENCE = Verdict.MEETS, Verdict.DOES_NOT_MEET, Verdict.NEEDS_JUDGEMENT, Verdict.NEEDS_EVIDENCE
NOT_ASKED = Verdict.NOT_ASKED


def light(made):
    """A framed layer of insulation that weighs nothing, so that the cladding alone is the weight."""
    member = replace(made.member, density=b.datum(1e-9))
    return replace(made, density=b.datum(1e-9), member=member)


def of_weight(
    pascals, kind="wall", set_id="bc-2024", *, sheet=False, mark="given", slope=None, name="W1", frame=True, metal=False
):  # fmt: skip
    heavy = replace(cladding(1), density=b.datum(pascals / 9.80665 / 0.02, mark=mark))
    framed = light(studs())
    if metal:
        framed = replace(framed, member=replace(framed.member, is_metal=True))
    layers = (heavy, *([framed] if frame else ()), *((b.layer(9, kind="membrane", s_d=5, name="sheet"),) if sheet else ()))
    slope = slope if slope is not None else 90.0 if kind == "wall" else 0.0
    return wall(*layers, kind=kind, slope=slope, set_id=set_id, name=name)


@pytest.mark.parametrize(("kind", "limit", "most"), [("wall", 400, 1200), ("roof", 500, 1000), ("floor", 500, 1500)])
def test_british_columbia_on_both_sides(kind, limit, most):
    within, beyond, heavy, over = (of_clause(LOAD, of_weight(x, kind), "bc-2024") for x in (limit, limit + 1, most, most + 1))
    assert within.verdict == MEETS and within.limit.value == limit
    assert beyond.verdict == heavy.verdict == JUDGE and "heavy" in beyond.reason
    assert over.verdict == NOT and "licensed professional" in over.reason


@pytest.mark.parametrize(("kind", "psf"), [("wall", 15), ("floor", 10)])
@pytest.mark.parametrize("category", ["D0", "D2"])
def test_seismic_provisions_on_both_sides(kind, psf, category):
    one = (of_weight(psf * PSF * x, kind, "irc-2021") for x in (0.99999, 1.001))
    within, beyond = (of_clause(LOAD, x, "irc-2021", category=category) for x in one)
    assert within.verdict == MEETS and beyond.verdict == NOT


@pytest.mark.parametrize(("psf", "verdict"), [(14.999, MEETS), (15.01, JUDGE), (24.99, JUDGE), (25.01, NOT)])
def test_a_roof_heavier_than_15_psf_takes_more_bracing(psf, verdict):
    found = of_clause(LOAD, of_weight(psf * PSF, "roof", "irc-2021"), "irc-2021", category="D1")
    assert found.verdict == verdict
    if verdict == JUDGE:
        assert "R602.10.3(4)" in found.reason


@pytest.mark.parametrize(("slope", "psf", "verdict"), [
    (60, 7.49, MEETS), (60, 7.51, JUDGE), (60, 12.51, NOT), (45, 10.6, MEETS), (45, 10.61, JUDGE), (0, 14.99, MEETS),
])  # fmt: skip
def test_a_roof_weighs_on_its_plan(slope, psf, verdict):
    """15 psf on a horizontal projection: at 60 degrees 7.5 psf in the plane of the roof."""
    found = of_clause(LOAD, of_weight(psf * PSF, "roof", "irc-2021", slope=float(slope)), "irc-2021", category="D1")
    assert found.verdict == verdict
    assert found.provided.value == pytest.approx(psf * PSF / cos(radians(slope)), rel=1e-3)
    if slope:
        assert "on plan" in found.given and f"{slope}°" in found.given


@pytest.mark.parametrize(("slope", "pascals", "verdict"), [(60, 249, MEETS), (60, 251, JUDGE), (60, 499, JUDGE), (60, 1001, NOT)])
def test_whether_a_slope_counts_is_a_question_in_british_columbia(slope, pascals, verdict):
    found = of_clause(LOAD, of_weight(pascals, "roof", slope=float(slope)), "bc-2024")
    assert found.verdict == verdict
    assert verdict != JUDGE or "plan" in found.reason


@pytest.mark.parametrize(("set_id", "limit"), [("irc-2021", 15 * PSF), ("bc-2024", 500)])
@pytest.mark.parametrize(("roof", "ceiling", "verdict"), [(0.5, 0.499, MEETS), (0.5, 0.51, JUDGE), (0.2, 0.79, MEETS)])
def test_roof_and_ceiling_weigh_together(set_id, limit, roof, ceiling, verdict):
    over = of_weight(limit * roof, "roof", set_id, name="R1")
    below = of_weight(limit * ceiling, "ceiling", set_id, name="C1")
    for one, other in ((over, below), (below, over)):
        found = of_clause(LOAD, one, set_id, category="D1", beside=(other,))
        assert found.verdict == verdict, found.reason
        assert other.name in found.given or verdict == MEETS


def test_the_heaviest_ceiling_counts():
    set_id, parts = "irc-2021", [of_weight(x * PSF, "ceiling", "irc-2021", name=f"C{x}") for x in (2, 9)]
    found = of_clause(LOAD, of_weight(7 * PSF, "roof", set_id, name="R1"), set_id, category="D1", beside=parts)
    assert found.verdict == JUDGE and found.provided.value == pytest.approx(16 * PSF)


@pytest.mark.parametrize("set_id", ["irc-2021", "bc-2024"])
def test_a_ceiling_without_its_roof_is_not_settled(set_id):
    found = of_clause(LOAD, of_weight(100, "ceiling", set_id), set_id, category="D1")
    assert found.verdict == EVIDENCE and "roof" in found.reason


@pytest.mark.parametrize("set_id", ["irc-2021", "bc-2024"])
def test_a_roof_without_insulation_has_a_ceiling_below(set_id):
    found = of_clause(LOAD, of_weight(100, "roof", set_id, frame=False), set_id, category="D1")
    assert found.verdict == EVIDENCE and "ceiling" in found.reason


def test_the_weight_of_the_ceiling_has_to_be_known():
    unknown = wall(replace(cladding(1), density=None), light(studs()), kind="ceiling", slope=0.0, name="C1")
    found = of_clause(LOAD, of_weight(100, "roof", "irc-2021", name="R1"), "irc-2021", category="D1", beside=(unknown,))
    assert found.verdict == EVIDENCE and "C1" in found.reason


@pytest.mark.parametrize(("psf", "more", "verdict"), [
    (13.99, {"metal": True}, MEETS), (14.01, {"metal": True}, NOT), (9.99, {"frame": False}, MEETS),
    (10.01, {"frame": False}, JUDGE), (16, {"frame": False}, JUDGE), (14.99, {}, MEETS),
])  # fmt: skip
def test_a_wall_goes_by_its_frame(psf, more, verdict):
    assert of_clause(LOAD, of_weight(psf * PSF, set_id="irc-2021", **more), "irc-2021", category="D1").verdict == verdict


@pytest.mark.parametrize(("category", "townhouse", "verdict"), [
    ("A", None, NOT_ASKED), ("b", True, NOT_ASKED), (None, None, EVIDENCE), ("C", None, NOT_ASKED), ("C", False, NOT_ASKED),
    ("C", True, MEETS), ("D0", None, MEETS), ("d2", True, MEETS), ("E", None, JUDGE), ("D", None, EVIDENCE),
    ("X", None, EVIDENCE),
])  # fmt: skip
def test_the_category_decides_whether_it_is_asked(category, townhouse, verdict):
    found = of_clause(LOAD, of_weight(300, set_id="irc-2021"), "irc-2021", category=category, townhouse=townhouse)
    assert found.verdict == verdict


def test_a_dwelling_unit_in_category_c_says_whether_it_is_a_townhouse():
    found = of_clause(LOAD, of_weight(300, set_id="irc-2021"), "irc-2021", category="C", occupancy="dwelling-unit")
    assert found.verdict == EVIDENCE and "townhouse" in found.next_step


@pytest.mark.parametrize("set_id", ["irc-2018", "irc-2024"])
@pytest.mark.parametrize("pascals", [300, 900])
def test_editions_that_were_not_read_decide_nothing(set_id, pascals):
    found = of_clause(LOAD, of_weight(pascals, set_id=set_id), set_id, category="D1")
    assert found.verdict == JUDGE and "memory" in found.reason


@pytest.mark.parametrize(("pascals", "verdict"), [(379, MEETS), (381, EVIDENCE)])
def test_a_membrane_that_could_turn_it_is_asked_for(pascals, verdict):
    assert of_clause(LOAD, of_weight(pascals, sheet=True), "bc-2024").verdict == verdict


def test_a_density_from_memory_never_meets():
    assert of_clause(LOAD, of_weight(300, mark="memory"), "bc-2024").verdict == EVIDENCE


def test_a_missing_density_is_named():
    one = wall(replace(cladding(1), density=None), furring(fasteners("screw")), set_id="bc-2024")
    found = of_clause(LOAD, one, "bc-2024")
    assert found.verdict == EVIDENCE and "cladding (layer 1)" in found.reason and found.provided is None


@pytest.mark.parametrize("set_id", ["irc-2021", "bc-2024"])
@pytest.mark.parametrize(("slope", "verdict"), [(60.0, MEETS), (59.9, JUDGE), (45.0, JUDGE)])
def test_a_leaning_wall_is_not_left_out(set_id, slope, verdict):
    found = of_clause(LOAD, of_weight(300, set_id=set_id, slope=slope), set_id, category="D1")
    assert found is not None and found.verdict == verdict
    assert verdict != JUDGE or "roof" in found.next_step


@pytest.mark.parametrize(("clause", "set_id"), [
    ("/furring-over-foam", "irc-2021"), ("/wind-on-cladding", "irc-2021"), ("/cladding-attachment", "nbc-2020"),
])  # fmt: skip
def test_cladding_hung_on_a_leaning_wall_is_judged_too(clause, set_id):
    from structure_walls import hung

    one = replace(hung(fasteners("screw", length=4.0, spacing=12), weight=3, set_id=set_id), slope=45.0)
    found = of_clause(clause, one, set_id)
    assert found is not None and found.verdict in (JUDGE, EVIDENCE)
