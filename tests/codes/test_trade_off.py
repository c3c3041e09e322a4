"""The trade-off of 9.36.2.11. The figures are derived: zone 6 with heat recovery, wall 120 m2 (2.97), attic 100 m2 (8.67)."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

import builders as b
from codes_builders import insulation, of_resistance, studies
from codes_envelope import building, judged, only, opening
from layerfolio.codes.context import Envelope, context
from layerfolio.codes.envelope import envelope_judged
from layerfolio.codes.findings import Verdict
from layerfolio.codes.paths import with_paths
from layerfolio.units.quantity import Quantity


def of(R, area, **about):
    one = of_resistance(R, **about)
    return replace(one, area=None if area is None else Quantity(area, "area", f"{area} m2"))


def pair(wall, attic=10.43, areas=(120, 100)):
    return of(wall, areas[0]), of(attic, areas[1], name="C1", kind="ceiling", faces="vented space")


def trade(*assemblies, openings=(), **about):
    return only(judged(assemblies, openings, **about), "/trade-off")


def test_the_budget_of_the_example():
    found = trade(*pair(2.84))
    assert found.limit.value == pytest.approx(51.938, abs=5e-4) and found.path == "performance"
    assert found.provided.value == pytest.approx(120 / 2.84 + 100 / 10.43)


@pytest.mark.parametrize(("wall", "verdict"), [(2.83, Verdict.DOES_NOT_MEET), (2.84, Verdict.MEETS)])
def test_the_wall_may_fall_to_2_834(wall, verdict):
    findings = judged(pair(wall))
    assert only(findings, "/walls").verdict == Verdict.DOES_NOT_MEET
    assert only(findings, "/trade-off").verdict == verdict


def test_the_budget_itself_holds():
    wall = 120 / (120 / 2.97 + 100 / 8.67 - 100 / 10.43)
    assert wall == pytest.approx(2.834, abs=5e-4)
    assert trade(*pair(wall)).verdict == Verdict.MEETS


@pytest.mark.parametrize(("wall", "verdict"), [(1.633, Verdict.DOES_NOT_MEET), (1.634, Verdict.MEETS)])
def test_the_floor_of_walls_is_55_percent(wall, verdict):
    """0.55 x 2.97 = 1.6335; areas so large above that the sum always holds."""
    found = trade(*pair(wall, attic=20, areas=(1, 1000)))
    assert found.verdict == verdict and (verdict == Verdict.MEETS or "floor" in found.reason)


@pytest.mark.parametrize(("attic", "verdict"), [(5.201, Verdict.DOES_NOT_MEET), (5.202, Verdict.MEETS)])
def test_the_floor_of_other_parts_is_60_percent(attic, verdict):
    """0.60 x 8.67 = 5.202."""
    found = trade(*pair(30, attic=attic, areas=(1000, 1)))
    assert found.verdict == verdict


@pytest.mark.parametrize(("joists", "R", "verdict"), [
    (True, 2.57, Verdict.MEETS), (True, 2.56, Verdict.DOES_NOT_MEET), (False, 2.57, Verdict.DOES_NOT_MEET),
    (False, 2.81, Verdict.MEETS), (False, 2.80, Verdict.DOES_NOT_MEET),
])  # fmt: skip
def test_roofs_with_insulated_joists_take_the_floor_of_walls(joists, R, verdict):
    """0.55 x 4.67 = 2.5685, 0.60 x 4.67 = 2.802."""
    frame = b.member(0.0, R=1.0, name="rafter") if joists else None
    roof = replace(of(R, 1, kind="roof", name="R1", layers=[insulation(R - 0.15, frame=frame)]))
    assert trade(of(30, 1000), roof).verdict == verdict


def test_nothing_is_traded_where_every_part_reaches_its_figure():
    found = trade(*pair(2.97, attic=8.67))
    assert found.verdict == Verdict.NOT_ASKED and found.provided.value == pytest.approx(found.limit.value)


def test_a_missing_area_is_evidence_that_is_missing():
    found = trade(*pair(2.5, areas=(None, 100)))
    assert found.verdict == Verdict.NEEDS_EVIDENCE and "area of W1" in found.next_step


def test_an_open_zone_leaves_the_trade_open():
    found = trade(*pair(2.84), zone=None, degree_days=None)
    assert found.verdict == Verdict.NEEDS_JUDGEMENT


def test_the_edition_of_2015_decides_no_trade():
    assert trade(*pair(2.84), set_id="nbc-2015").verdict == Verdict.NEEDS_JUDGEMENT


def test_heated_floors_and_the_ground_are_left_out():
    slab = of(0.5, 50, kind="slab", faces="ground", name="S1", ground={"heated": True, "integral_footing": False})
    found = trade(*pair(2.84), slab)
    assert found.verdict == Verdict.MEETS and found.limit.value == pytest.approx(51.938, abs=5e-4)


def test_windows_trade_within_one_orientation():
    """Zone 6, 1.61: 1.81 and 1.41 of one size balance, on two sides they do not."""
    weak, good = opening("A1", U=1.81), opening("A2", U=1.41)
    assert trade(*pair(3.0), openings=[weak, good]).verdict == Verdict.MEETS
    apart = trade(*pair(3.0), openings=[weak, opening("A2", U=1.41, orientation="north")])
    assert apart.verdict == Verdict.DOES_NOT_MEET
    assert trade(*pair(3.0), openings=[weak, opening("A2", U=1.42)]).verdict == Verdict.DOES_NOT_MEET


def test_doors_are_not_traded():
    door = opening("D1", "door", U=3.0)
    assert trade(*pair(3.0), openings=[door, opening("D2", "door", U=0.5)]).verdict == Verdict.NOT_ASKED


def credit(attic, **about):
    windows = [opening("A1", U=1.6, size=(5.0, 2.0), count=1)]
    return trade(of(2.97, 90), of(attic, 100, name="C1", kind="ceiling", faces="vented space"), openings=windows, **about)


def test_the_credit_of_a_low_building_is_a_question():
    """Gross wall 100 m2, openings 10 %: credit (17 - 10) x 1.61 = 11.27 W/K; attic of 5.30 loses 7.33 W/K too much."""
    assert pytest.approx(7.334, abs=1e-3) == 100 / 5.30 - 100 / 8.67
    found = credit(5.30)
    assert found.verdict == Verdict.NEEDS_JUDGEMENT and "11.27 W/K" in found.reason and "2.34 m" in found.next_step
    assert credit(5.30, storeys=2).verdict == Verdict.DOES_NOT_MEET
    assert trade(of(2.5, 90), of(8.67, 100, name="C1", kind="ceiling", faces="vented space"),
                 openings=[opening("A1", size=(5.0, 2.0))]).verdict == Verdict.DOES_NOT_MEET  # fmt: skip


def whole(*assemblies, openings=()):
    found = studies(*assemblies)
    envelope = Envelope(thermal={n: x[0] for n, x in found.items()}, openings={x.name: x for x in openings})
    return context(building(), envelope), judged(assemblies, openings)


def test_every_part_stands_beside_its_figure():
    about, findings = whole(*pair(2.84), openings=[opening("A1", U=1.2), opening("D1", "door", U=2.0)])
    known = envelope_judged(about, findings)
    assert [(row.name, row.asked) for row in known.rows] == [("W1", 2.97), ("C1", 8.67), ("A1", 1.61), ("D1", 1.61)]
    assert known.trade_off_verdict == "meets" and known.lacking == ()
    assert known.ua_designed == pytest.approx(120 / 2.84 + 100 / 10.43 + 1.68 * (1.2 + 2.0))
    assert known.ua_limit == pytest.approx(51.938 + 2 * 1.68 * 1.61, abs=5e-4)
    assert {row.name for row in known.trade_off_rows} == {"W1", "C1", "A1"}


def test_what_is_missing_is_named_and_leaves_the_sums_open():
    about, findings = whole(*pair(2.84, areas=(None, 100)), openings=[opening("A1", U=None)])
    known = envelope_judged(about, findings)
    assert known.ua_designed is None and known.trade_off_designed is None
    assert known.lacking == ("the area of W1", "the transmittance of A1")
    assert envelope_judged(context(building(set_id="iso"), Envelope()), ()) is None


@given(st.floats(1.7, 6), st.floats(5.3, 20), st.floats(1, 500), st.floats(1, 500))
def test_the_sum_decides_above_the_floors(wall, attic, of_wall, of_attic):
    found = trade(*pair(wall, attic, (of_wall, of_attic)), storeys=2)
    lost, may = of_wall / wall + of_attic / attic, of_wall / 2.97 + of_attic / 8.67
    if found.verdict == Verdict.MEETS:
        assert lost <= may * (1 + 1e-8)
    elif found.verdict == Verdict.DOES_NOT_MEET:
        assert lost > may


def test_a_trade_answers_only_the_parts_that_it_reaches():
    """A foundation wall below its figure stays so, whatever the parts above the ground save; so does a second poor door."""
    cellar = of(1.0, 50, kind="foundation-wall", faces="ground", name="F1")
    openings = [opening("A1", U=1.81), opening("A2", U=1.41), opening("D1", "door", U=3.0)]
    about, findings = whole(*pair(2.84), cellar, openings=openings)
    said = with_paths(findings, building(), envelope_judged(about, findings))
    energy = [one for one in said if one.topic in ("thermal", "openings") and one.verdict == Verdict.DOES_NOT_MEET]
    short = {one.assembly: bool(one.answered_by) for one in energy if one.assembly}
    assert only(findings, "/trade-off").verdict == Verdict.MEETS
    assert {name: short[name] for name in ("W1", "F1", "A1", "D1")} == {"W1": True, "F1": False, "A1": True, "D1": False}
