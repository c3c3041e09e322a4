"""Weights up to which construction is normal, on both sides; what stands in the way of a verdict."""

from dataclasses import replace

import pytest

import builders as b
from codes_irc import wall
from layerfolio.codes.findings import Verdict
from structure_walls import PSF, cladding, fasteners, furring, of_clause

LOAD = "/dead-load"


def of_weight(pascals, kind="wall", set_id="bc-2024", *, sheet=False, mark="given"):
    heavy = replace(cladding(1), density=b.datum(pascals / 9.80665 / 0.02, mark=mark))
    layers = (heavy, *((b.layer(9, kind="membrane", s_d=5, name="sheet"),) if sheet else ()))
    return wall(*layers, kind=kind, slope=90.0 if kind == "wall" else 0.0, set_id=set_id)


@pytest.mark.parametrize(("kind", "limit"), [("wall", 400), ("roof", 500), ("floor", 500)])
def test_british_columbia_on_both_sides(kind, limit):
    """0.4 kPa of wall, 0.5 kPa of roof and floor: averages of normal construction (BC 2024, 9.23.13)."""
    within, beyond = (of_clause(LOAD, of_weight(limit * x, kind), "bc-2024") for x in (1, 1.001))
    assert within.verdict == Verdict.MEETS and within.limit.value == limit
    assert beyond.verdict == Verdict.DOES_NOT_MEET and "licensed professional" in beyond.reason


@pytest.mark.parametrize(("kind", "psf"), [("wall", 15), ("roof", 15), ("ceiling", 15), ("floor", 10)])
@pytest.mark.parametrize("category", ["C", "D0", "D2"])
def test_seismic_provisions_on_both_sides(kind, psf, category):
    """Exterior wall and roof 15 psf, floor 10 psf (IRC 2021, weights for the seismic provisions)."""
    one = (of_weight(psf * PSF * x, kind, "irc-2021") for x in (0.99999, 1.001))
    within, beyond = (of_clause(LOAD, x, "irc-2021", category=category) for x in one)
    assert within.verdict == Verdict.MEETS and beyond.verdict == Verdict.DOES_NOT_MEET


@pytest.mark.parametrize(("category", "verdict"), [
    ("A", Verdict.NOT_ASKED), ("b", Verdict.NOT_ASKED), (None, Verdict.NEEDS_EVIDENCE),
])  # fmt: skip
def test_where_the_category_does_not_ask(category, verdict):
    assert of_clause(LOAD, of_weight(2000, set_id="irc-2021"), "irc-2021", category=category).verdict == verdict


@pytest.mark.parametrize("set_id", ["irc-2018", "irc-2024"])
@pytest.mark.parametrize("pascals", [300, 900])
def test_editions_that_were_not_read_decide_nothing(set_id, pascals):
    found = of_clause(LOAD, of_weight(pascals, set_id=set_id), set_id, category="D1")
    assert found.verdict == Verdict.NEEDS_JUDGEMENT and "memory" in found.reason


@pytest.mark.parametrize(("pascals", "verdict"), [(379, Verdict.MEETS), (381, Verdict.NEEDS_EVIDENCE)])
def test_a_membrane_that_could_turn_it_is_asked_for(pascals, verdict):
    assert of_clause(LOAD, of_weight(pascals, sheet=True), "bc-2024").verdict == verdict


def test_a_density_from_memory_never_meets():
    assert of_clause(LOAD, of_weight(300, mark="memory"), "bc-2024").verdict == Verdict.NEEDS_EVIDENCE


def test_a_missing_density_is_named():
    one = wall(replace(cladding(1), density=None), furring(fasteners("screw")), set_id="bc-2024")
    found = of_clause(LOAD, one, "bc-2024")
    assert found.verdict == Verdict.NEEDS_EVIDENCE and "cladding (layer 1)" in found.reason and found.provided is None
