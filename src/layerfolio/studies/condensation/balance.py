"""The monthly balance of ISO 13788: start month, one year, a second where it does not clear, and the outcome."""

from typing import NamedTuple

from layerfolio.formulas.moisture import saturation_pressure
from layerfolio.studies.climate_year import MONTHS, SECONDS, Outside, Year
from layerfolio.studies.condensation.march import Passage, march, profile
from layerfolio.studies.condensation.section import Column
from layerfolio.studies.condensation.string import taut_string
from layerfolio.studies.condensation.types import LayerValue, Month, Outcome, Plane, Profile, Run

YEARS = 2


class MonthAir(NamedTuple):
    """One month at every node: temperature degC, saturation Pa, and saturation with the airs at both ends, Pa.

    `wet` when the room air would be more than saturated at the inside surface; it is then taken as saturated there.
    """

    temperature: list[float]
    saturation: list[float]
    limit: list[float]
    wet: bool


def month_airs(column: Column, year: Year, outside: Outside) -> tuple[MonthAir, ...]:
    """The twelve months, January first."""
    found = []
    for month in range(12):
        temperature = column.temperatures(year.indoor_temperature[month], outside.temperature[month])
        saturation = [saturation_pressure(theta) for theta in temperature]
        limit = saturation.copy()
        limit[0] = min(outside.pressure[month], saturation[0])
        limit[-1] = min(year.indoor_pressure[month], saturation[-1])
        found.append(MonthAir(temperature, saturation, limit, year.indoor_pressure[month] > saturation[-1] + 1e-9))
    return tuple(found)


def start_month(column: Column, airs: tuple[MonthAir, ...]) -> int | None:
    """The first month with condensation after a dry one, from the longest dry spell; None where no month has any.

    With condensation in all twelve months any start serves: January.
    """
    ends = [0, len(column.s_d) - 1]
    wet = [len(taut_string(column.s_d, air.limit, ends)) > 2 for air in airs]
    if not any(wet):
        return None
    if all(wet):
        return 0
    spells = {m: next(k for k in range(1, 13) if wet[m - 1 - k]) for m in range(12) if wet[m] and not wet[m - 1]}
    return max(spells, key=lambda m: (spells[m], -m))


def balance(
    values: tuple[LayerValue, ...], column: Column, year: Year, outside: Outside, *, profiles: bool = True
) -> Run:
    """The whole run for one choice of values and one year; without `profiles` those are left out, to save time."""
    airs = month_airs(column, year, outside)
    saturated = tuple(MONTHS[m] for m in range(12) if airs[m].wet)
    start = start_month(column, airs)
    if start is None:
        passages = {m: march(column.s_d, airs[m].limit, {}, SECONDS[m]) for m in range(12)}
        months = tuple(Month(MONTHS[m], (), passages[m].inflow, passages[m].outflow) for m in range(12))
        drawn = _profiles(column, airs, passages) if profiles else ()
        return Run(values, column.nodes, "", 1, months, (), "none", 0.0, "", drawn, saturated)
    order = [(start + k) % 12 for k in range(12)]
    stored: dict[int, float] = {}
    years: list[tuple[Month, ...]] = []
    outcome: Outcome = "does not clear"
    for _ in range(YEARS):
        passages, amounts = _year(column, airs, order, stored)
        years.append(_months(column, order, passages, amounts))
        if not stored or (len(years) > 1 and _every_plane_dries(amounts)):
            outcome = "clears"
        if not stored:
            break
    greatest = max(years[-1], key=lambda month: month.accumulated)
    return Run(
        values, column.nodes, MONTHS[start], len(years), years[-1], years[0] if len(years) > 1 else (), outcome,
        greatest.accumulated, greatest.name, _profiles(column, airs, passages) if profiles else (), saturated,
    )  # fmt: skip


def _year(
    column: Column, airs: tuple[MonthAir, ...], order: list[int], stored: dict[int, float]
) -> tuple[dict[int, Passage], dict[int, dict[int, float]]]:
    """Passages and amounts at month's end, both by month; `stored` goes on changing."""
    passages, amounts = {}, {}
    for m in order:
        passages[m] = march(column.s_d, airs[m].limit, stored, SECONDS[m])
        amounts[m] = dict(stored)
    return passages, amounts


def _every_plane_dries(amounts: dict[int, dict[int, float]]) -> bool:
    """Whether each plane that is wet at some time of the year is dry at the end of some month."""
    touched = {node for held in amounts.values() for node in held}
    return all(any(node not in held for held in amounts.values()) for node in touched)


def _months(
    column: Column, order: list[int], passages: dict[int, Passage], amounts: dict[int, dict[int, float]]
) -> tuple[Month, ...]:
    """Every plane of the year stands in every month, from the outside in."""
    touched = sorted({node for one in passages.values() for node in one.flow})
    return tuple(
        Month(
            MONTHS[m],
            tuple(
                Plane(node, column.nodes[node].between, passages[m].flow.get(node, 0.0), amounts[m].get(node, 0.0))
                for node in touched
            ),
            passages[m].inflow, passages[m].outflow, tuple(passages[m].dried_after),
        )
        for m in order
    )  # fmt: skip


def _profiles(column: Column, airs: tuple[MonthAir, ...], passages: dict[int, Passage]) -> tuple[Profile, ...]:
    return tuple(
        Profile(
            MONTHS[m], tuple(airs[m].temperature), tuple(airs[m].saturation),
            tuple(profile(column.s_d, airs[m].limit, passages[m])), tuple(passages[m].line[1:-1]),
            passages[m].longest,
        )
        for m in range(12)
    )  # fmt: skip
