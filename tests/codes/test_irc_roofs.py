"""Unvented roofs, zone by zone and on both sides of every limit, and what else is asked of roofs (IRC R806)."""

from dataclasses import replace
from types import SimpleNamespace

import pytest

import builders as b
from codes_builders import amendment, cases
from codes_irc import AIR_REPORT, PERM, REPORT, RSI, SETS, air, board, found, house, panel, studs
from layerfolio.codes.findings import Verdict

CASES = cases("irc-retarders")
ROOFS = CASES["roofs"]["rows"]


def deck(family="plywood"):
    return b.layer(9, R=0.1, d=0.015, permeance=(2 * PERM, 2 * PERM), name="deck", family=family)


def rafters(R=4.0, **more):
    return studs(0.184, R, name="rafters", **more)


def lining(perm=30):
    return panel(perm, serves=(), name="lining")


def foam(R, perm=0.8, documents=(AIR_REPORT, REPORT)):
    """Foam sprayed between the rafters against the sheathing."""
    made = studs(0.08, R * RSI, name="foam", family="foam")
    return replace(made, vapour=b.layer(9, permeance=(perm * PERM, perm * PERM)).vapour, documents=tuple(documents))


def roof(ending, *layers, **about):
    return found(ending, *layers, kind="roof", slope=30, **about)


def with_months(zone, three, set_id="irc-2021"):
    """A house whose three coldest months have those means."""
    where = house(zone, set_id)
    where.climate.monthly = SimpleNamespace(temperature=SimpleNamespace(values=[*three, *([15.0] * 9)]))
    return where


@pytest.mark.parametrize(("zone", "limit"), ROOFS.items(), ids=str)
@pytest.mark.parametrize("set_id", SETS)
def test_rigid_insulation_on_the_sheathing_on_both_sides(set_id, zone, limit):
    at = roof("/unvented-roof", board(limit), deck(), rafters(), lining(), zone=zone, set_id=set_id)
    below = roof("/unvented-roof", board(limit - 0.01), deck(), rafters(), lining(), zone=zone, set_id=set_id)
    assert (at.verdict, below.verdict) == (Verdict.MEETS, Verdict.DOES_NOT_MEET), below.reason
    assert at.limit.value == pytest.approx(limit * RSI) and at.place == "Table R806.5"
    assert ("diffusion port" in below.next_step) == (zone[0] in "123")


@pytest.mark.parametrize(("zone", "limit"), [("5A", 20), ("8", 35)])
def test_foam_against_the_underside_with_fibres_below(zone, limit):
    at = roof("/unvented-roof", deck(), foam(limit), rafters(), lining(), zone=zone)
    below = roof("/unvented-roof", deck(), foam(limit - 0.01), rafters(), lining(), zone=zone)
    assert (at.verdict, below.verdict) == (Verdict.MEETS, Verdict.DOES_NOT_MEET)
    unproved = roof("/unvented-roof", deck(), foam(limit, documents=()), rafters(), lining(), zone=zone)
    assert unproved.verdict == Verdict.NEEDS_EVIDENCE and "air permeance" in unproved.next_step


def test_fibres_between_foam_and_sheathing_are_no_contact():
    one = roof("/unvented-roof", deck(), rafters(), foam(40), lining(), zone="5A")
    assert one.verdict == Verdict.DOES_NOT_MEET


def test_foam_alone_is_asked_no_resistance_but_its_test():
    assert roof("/unvented-roof", deck(), foam(3), lining(), zone="8").verdict == Verdict.MEETS
    assert roof("/unvented-roof", deck(), foam(3, documents=()), lining(), zone="8").verdict == Verdict.NEEDS_EVIDENCE
    expired = (replace(AIR_REPORT, expires="2027-02-02"),)
    assert roof("/unvented-roof", deck(), foam(3, documents=expired), lining()).verdict == Verdict.NEEDS_EVIDENCE


def test_all_insulation_on_the_sheathing_is_not_asked():
    assert roof("/unvented-roof", board(5), deck("timber-board"), zone="8").verdict == Verdict.NOT_ASKED


def test_without_a_sheathing_it_is_a_question():
    one = roof("/unvented-roof", board(40), rafters(), lining(), zone="6A")
    assert one.verdict == Verdict.NEEDS_JUDGEMENT and "sheathing" in one.next_step


@pytest.mark.parametrize(("zone", "verdict"), [("2B", Verdict.MEETS), ("3B", Verdict.MEETS), ("2A", Verdict.DOES_NOT_MEET)])
def test_tile_roofs_of_dry_zones_are_asked_nothing(zone, verdict):
    tiles = replace(b.layer(9, R=0.02, d=0.015, name="tiles", family="tile"), material="clay-roof-tile")
    assert roof("/unvented-roof", tiles, deck(), rafters(), lining(), zone=zone).verdict == verdict


@pytest.mark.parametrize("row", CASES["warm_sheathing"]["rows"], ids=str)
def test_enough_on_top_keeps_the_sheathing_above_45_fahrenheit(row):
    """R806.5, item 5.1.4, where the table itself is not reached; films and all layers counted."""
    inner, films = 6.0, 0.15  # with the deck's 0.1, the lining's 0.1 and the inside film 0.12
    below = inner + 0.1 + 0.12
    share = (7.2222222 - row["t"]) / (20 - row["t"])
    assert share == pytest.approx(row["share"], abs=5e-4)
    above = below * share / (1 - share) - 0.03 - 0.1  # outside film and deck lie above the plane

    def at(R):
        layers = (board(R / RSI, family="mineral-board"), deck(), rafters(inner), lining())
        return roof("/unvented-roof", *layers, where=with_months("8", [row["t"]] * 3))

    assert films and at(max(above, 0.01) * 1.01).verdict == Verdict.MEETS
    colder = at(above * 0.98)
    assert colder.verdict == (Verdict.DOES_NOT_MEET if above < 35 * RSI else Verdict.MEETS)
    if colder.verdict == Verdict.DOES_NOT_MEET:
        assert "°C inside" in colder.reason and "7.22 °C" in colder.reason


def test_the_mean_of_the_three_coldest_months_counts_not_the_coldest():
    layers = (board(13), deck(), rafters(2.0), lining())
    cold = roof("/unvented-roof", *layers, where=with_months("6A", [-20.0, -20.0, -20.0]))
    mixed = roof("/unvented-roof", *layers, where=with_months("6A", [-20.0, 4.0, 4.0]))
    assert (cold.verdict, mixed.verdict) == (Verdict.DOES_NOT_MEET, Verdict.MEETS)
    unknown = roof("/unvented-roof", *layers, zone="6A")
    assert unknown.verdict == Verdict.DOES_NOT_MEET and "monthly means" in unknown.reason


def test_resistance_from_memory_on_the_sheathing_does_not_carry_it():
    layers = (board(20, mark="memory"), deck(), rafters(), lining())
    assert roof("/unvented-roof", *layers, zone="5A").verdict == Verdict.NEEDS_EVIDENCE


def test_an_amended_resistance():
    where = house("8", amendments=[amendment("irc-2021/R806.5/unvented-roof", "R-18", "ordinance 9")])
    one = roof("/unvented-roof", board(18), deck(), rafters(), lining(), where=where)
    assert (one.verdict, one.amended) == (Verdict.MEETS, "ordinance 9")


# Vented or not


VENTED = (deck(), air(0.05), rafters(), lining())


def test_a_cavity_between_sheathing_and_insulation_is_ventilation():
    outside = tuple(replace(one, counts=False) for one in VENTED[:2])
    layers = (*outside, *VENTED[2:])
    assert roof("/unvented-roof", *layers).verdict == Verdict.NOT_ASKED
    vents = roof("/roof-ventilation", *layers)
    assert vents.verdict == Verdict.NEEDS_EVIDENCE and "net free area" in vents.next_step
    for other in ("/unvented-roof-ceiling-side", "/unvented-roof-foam", "/unvented-roof-shingles"):
        with pytest.raises(AssertionError):
            roof(other, *layers)


def test_a_cavity_under_the_covering_alone_is_none():
    steel = b.layer(9, R=0.0, d=0.001, name="steel", family="metal", counts=False)
    layers = (steel, air(), deck(), rafters(), lining())
    assert roof("/unvented-roof", *layers, zone="6A").verdict == Verdict.DOES_NOT_MEET
    with pytest.raises(AssertionError):
        roof("/roof-ventilation", *layers)


@pytest.mark.parametrize(("depth", "verdict"), [(0.025, Verdict.NEEDS_EVIDENCE), (0.0249, Verdict.DOES_NOT_MEET)])
def test_an_inch_of_air_over_the_insulation(depth, verdict):
    layers = (replace(deck(), counts=False), air(depth), rafters(), lining())
    assert roof("/roof-ventilation", *layers).verdict == verdict


def test_a_vented_attic_is_asked_its_openings():
    one = found("/roof-ventilation", rafters(), lining(), kind="ceiling", faces="vented space")
    assert one.verdict == Verdict.NEEDS_EVIDENCE and "1/150" in one.asked


# The other conditions of unvented roofs


@pytest.mark.parametrize(("perm", "verdict"), [(0.1, Verdict.DOES_NOT_MEET), (0.1001, Verdict.MEETS), (30, Verdict.MEETS)])
def test_no_class_i_on_the_ceiling_side(perm, verdict):
    one = roof("/unvented-roof-ceiling-side", board(40), deck(), rafters(), panel(perm), zone="6A")
    assert one.verdict == verdict
    unproved = panel(perm, documents=())
    one = roof("/unvented-roof-ceiling-side", board(40), deck(), rafters(), unproved, zone="6A")
    assert one.verdict == Verdict.NEEDS_EVIDENCE


@pytest.mark.parametrize(("zone", "perm", "verdict"), [
    ("5A", 1.0, Verdict.MEETS), ("5A", 1.0001, Verdict.DOES_NOT_MEET), ("8", 0.05, Verdict.MEETS),
    ("4C", 5.0, Verdict.NOT_ASKED), ("3A", 5.0, Verdict.NOT_ASKED),
])  # fmt: skip
def test_foam_under_the_sheathing_is_class_ii_in_cold_zones(zone, perm, verdict):
    assert roof("/unvented-roof-foam", deck(), foam(40, perm), lining(), zone=zone).verdict == verdict


def test_foam_may_be_covered_by_a_class_ii_retarder():
    covered = (deck(), foam(40, 5.0), panel(0.9, serves=(), name="coating"), lining())
    assert roof("/unvented-roof-foam", *covered, zone="6A").verdict == Verdict.MEETS
    unproved = (deck(), foam(40, 0.9, documents=(AIR_REPORT,)), lining())
    assert roof("/unvented-roof-foam", *unproved, zone="6A").verdict == Verdict.NEEDS_EVIDENCE
    assert roof("/unvented-roof-foam", board(40), deck(), rafters(), lining()).verdict == Verdict.NOT_ASKED


@pytest.mark.parametrize(("depth", "verdict"), [
    (0.00635, Verdict.MEETS), (0.0063, Verdict.DOES_NOT_MEET), (None, Verdict.DOES_NOT_MEET),
])  # fmt: skip
def test_air_under_wood_shingles(depth, verdict):
    shingles = replace(b.layer(9, R=0.1, d=0.01, name="shingles", family="timber-board"), material="wood-shingles")
    gap = () if depth is None else (air(depth),)
    outer = (replace(shingles, counts=depth is None), *gap)
    assert roof("/unvented-roof-shingles", *outer, deck(), rafters(), lining()).verdict == verdict
    assert roof("/unvented-roof-shingles", deck(), rafters(), lining()).verdict == Verdict.NOT_ASKED
