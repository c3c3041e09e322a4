"""Laws of the monthly balance over many walls and climates."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from layerfolio.formulas.moisture import saturation_pressure
from layerfolio.studies.climate_year import SECONDS, Outside, outside_of
from layerfolio.studies.condensation.balance import balance, month_airs
from layerfolio.studies.condensation.march import march
from layerfolio.studies.condensation.section import column
from layerfolio.units.quantity import Quantity
from moisture_cases import CLASS_3, CLASS_4, WALLS, months_of, run, section, study, wall

LAW = settings(deadline=None, max_examples=60)  # the machine that runs the tests may be busy

rows = st.lists(
    st.tuples(st.floats(0.005, 0.3), st.floats(0.03, 2.0), st.floats(1.0, 300.0)).map(
        lambda one: ("layer", one[0], one[1], one[2], None)
    ),
    min_size=1, max_size=5,
)  # fmt: skip
membranes = st.floats(0.02, 50.0).map(lambda s_d: ("membrane", None, None, None, s_d))


@st.composite
def walls(draw):
    found = draw(rows)
    if draw(st.booleans()):
        found.insert(draw(st.integers(0, len(found))), draw(membranes))
    return wall([(f"{name} {i}", *rest) for i, (name, *rest) in enumerate(found)])


@st.composite
def years(draw, coldest=-25.0, hottest=32.0):
    temperature = draw(st.lists(st.floats(coldest, hottest), min_size=12, max_size=12))
    humidity = draw(st.lists(st.floats(0.3, 1.0), min_size=12, max_size=12))
    inside = draw(st.lists(st.floats(0.2, 0.95), min_size=12, max_size=12))
    room = draw(st.floats(12.0, 26.0))
    pressure = [share * saturation_pressure(room) for share in inside]
    return months_of(temperature, humidity, (room,) * 12, pressure)


def all_months(result):
    return (*result.first_year, *result.months)


@LAW
@given(walls(), years())
def test_mass_is_conserved_month_by_month(one, year):
    """What comes in from the room and does not leave to the outside is the month's condensate."""
    result = run(one, year)
    for month in all_months(result):
        assert month.inflow - month.outflow == pytest.approx(month.flow, abs=1e-9 + 1e-9 * abs(month.inflow))


@LAW
@given(walls(), years())
def test_amounts_follow_from_flows_and_never_fall_below_nothing(one, year):
    result = run(one, year)
    before = {}
    for month in all_months(result):
        for plane in month.planes:
            held = before.get(plane.node, 0.0)
            assert plane.accumulated == pytest.approx(held + plane.flow, abs=1e-9)
            assert plane.accumulated >= 0
            before[plane.node] = plane.accumulated


@LAW
@given(walls(), years())
def test_pressure_never_exceeds_saturation_and_wet_planes_are_saturated(one, year):
    for profile in run(one, year).profiles:
        for pressure, saturation in zip(profile.pressure[1:-1], profile.saturation[1:-1], strict=True):
            assert pressure <= saturation * (1 + 1e-9)
        for node in profile.held:
            assert profile.pressure[node] == profile.saturation[node]


@LAW
@given(walls(), years())
def test_the_outcome_says_what_the_months_say(one, year):
    result = run(one, year)
    wet = [month for month in result.months if month.accumulated > 0]
    assert (result.outcome == "none") == (not result.start) == (not wet and not result.planes())
    if result.outcome == "does not clear":
        left = [p for p in result.months[-1].planes if p.accumulated > 0]
        assert left and result.years == 2
    if result.years == 1 and result.start:
        assert all(plane.accumulated == 0 for plane in result.months[-1].planes)
    assert result.greatest_accumulation == max(month.accumulated for month in result.months)


@LAW
@given(walls(), years(), st.floats(0.0, 0.3))
def test_a_damper_room_never_leaves_less_water_in_the_first_month(one, year, points):
    """From a dry start, one month: more vapour in the room, more condensate."""
    _, nodes = section(one)
    damper = replace(year, indoor_pressure=tuple(p * (1 + points) for p in year.indoor_pressure))
    outside = outside_of("outside air", year)
    for drier_air, damper_air in zip(month_airs(nodes, year, outside), month_airs(nodes, damper, outside), strict=True):
        amounts = []
        for air in (drier_air, damper_air):
            stored = {}
            march(nodes.s_d, air.limit, stored, SECONDS[0])
            amounts.append(sum(stored.values()))
        assert amounts[1] >= amounts[0] - 1e-9


@LAW
@given(walls(), years())
def test_a_wall_turned_round_between_turned_climates_gives_the_same_planes(one, year):
    """Nothing in the balance knows inside from outside."""
    values, forward = section(one)
    backward = column(values[::-1], 0.04, 0.13)
    turned = months_of(
        year.indoor_temperature, _shares(year), year.outdoor_temperature, year.outdoor_pressure, year.rule
    )
    first = balance(values, forward, year, _outside(year.outdoor_temperature, year.outdoor_pressure))
    second = balance(values[::-1], backward, turned, _outside(year.indoor_temperature, year.indoor_pressure))
    assert first.outcome == second.outcome
    assert first.greatest_accumulation == pytest.approx(second.greatest_accumulation, rel=1e-6, abs=1e-8)
    last = len(first.nodes) - 1
    assert [last - node for node, _ in first.planes()][::-1] == [node for node, _ in second.planes()]


def _shares(year):
    return [min(1.0, share) for share in year.indoor_humidity]


def _outside(temperature, pressure):
    return Outside(tuple(temperature), tuple(pressure), "", "")


ZONED = (("board", 0.02, 0.13, 300, None), ("fill", 0.4, 0.04, 2, None), ("lining", 0.0125, 0.25, 10, None))


@settings(max_examples=20, deadline=None)
@given(st.floats(0.06, 0.5), st.floats(1.0, 5.0), st.floats(0.55, 0.95))
def test_finer_strips_converge(thick, mu, share):
    """A wet zone inside the fill: halving the strips moves the result less and less; at 0.25 it is within 2 %."""
    damp = months_of(
        CLASS_3.outdoor_temperature, CLASS_3.outdoor_humidity, (22.0,) * 12, [share * saturation_pressure(22.0)] * 12
    )
    one = wall((ZONED[0], ("fill", thick, 0.04, mu, None), ZONED[2]))
    amounts = [run(one, damp, strip=strip).greatest_accumulation for strip in (0.25, 0.125, 0.0625, 0.03125)]
    assert amounts[0] == pytest.approx(amounts[-1], rel=0.02, abs=1e-4)
    assert abs(amounts[2] - amounts[3]) <= max(abs(amounts[0] - amounts[3]), 1e-4 * amounts[3]) + 1e-9


def test_strips_find_a_wet_zone_inside_a_layer():
    damp = months_of(
        CLASS_3.outdoor_temperature, CLASS_3.outdoor_humidity, (22.0,) * 12, [0.95 * saturation_pressure(22.0)] * 12
    )
    coarse, fine = run(wall(ZONED), damp, strip=99.0), run(wall(ZONED), damp)
    assert len(coarse.planes()) < len(fine.planes())
    assert ("fill", "fill") in {between for _, between in fine.planes()}


@pytest.mark.parametrize("name", WALLS)
def test_no_strip_is_thicker_than_a_quarter(name):
    values, nodes = section(wall(WALLS[name]))
    steps = [b - a for a, b in zip(nodes.resistance, nodes.resistance[1:], strict=False)]
    assert max(steps) <= 0.25 + 1e-12
    assert nodes.s_d[-1] == pytest.approx(sum(value.s_d for value in values))
    assert nodes.total == pytest.approx(0.17 + sum(value.resistance for value in values))


def test_area_changes_nothing_per_square_metre():
    small, large = (wall(WALLS["D"], area=Quantity(area, "area", f"{area} m2")) for area in (1.0, 580.0))
    first, second = study(small, CLASS_4), study(large, CLASS_4)
    assert first.expected.months == second.expected.months
    assert first.two_period == second.two_period and first.surface == second.surface


def test_months_keep_their_own_days():
    """Case B in a climate that is the same all year: the condensate of each month is in proportion to its days."""
    steady = months_of((-5.0,) * 12, (0.8,) * 12, (20.0,) * 12, [0.6 * saturation_pressure(20.0)] * 12)
    result = run(wall(WALLS["B"]), steady)
    flows = {month.name: month.flow for month in result.months}
    assert flows["January"] / flows["February"] == pytest.approx(31 / 28)
    assert flows["April"] / flows["January"] == pytest.approx(30 / 31)
