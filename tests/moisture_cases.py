"""Walls and climates of the moisture tests, and their studies."""

from dataclasses import replace

from builders import assembly, datum, layer
from layerfolio.studies.climate_year import Year, outside_of
from layerfolio.studies.condensation.balance import balance
from layerfolio.studies.condensation.section import STRIP, column, cup_values, parts_of
from layerfolio.studies.condensation.study import condensation_study
from layerfolio.studies.indoor_air import year_by_class, year_by_humidity
from layerfolio.studies.thermal import thermal_study
from layerfolio.studies.vapour import vapour_study

# A cold climate in round numbers, made up.
TEMPERATURE = (-10, -8, -2, 5, 12, 17, 20, 18, 12, 6, -1, -7)
HUMIDITY = (0.80, 0.78, 0.74, 0.68, 0.65, 0.68, 0.70, 0.72, 0.75, 0.77, 0.81, 0.82)
CLASS_2 = year_by_class(TEMPERATURE, HUMIDITY, 20.0, 2)
CLASS_3 = year_by_class(TEMPERATURE, HUMIDITY, 20.0, 3)
CLASS_4 = year_by_class(TEMPERATURE, HUMIDITY, 20.0, 4)
HALF = year_by_humidity(TEMPERATURE, HUMIDITY, 20.0, 0.50)

# Rows from the outside in: name, d (m), lam, mu (or None), s_d (or None).
SOFT_BOARD = ("soft board", 0.035, 0.05, 5, None)
WOOL = ("wool", 0.140, 0.035, 1, None)
GYPSUM = ("gypsum", 0.0125, 0.25, 10, None)
WALLS = {
    "A": (SOFT_BOARD, ("fibre fill", 0.240, 0.04, 2, None), ("board", 0.015, 0.13, 200, None)),
    "B": (("strand board", 0.012, 0.13, 200, None), WOOL, GYPSUM),
    "D": (("strand board", 0.012, 0.13, 200, None), WOOL, ("retarder", None, None, None, 2.0), GYPSUM),
    "E1 dry": (SOFT_BOARD, WOOL, ("plywood", 0.0125, 0.13, 200, None)),
    "E1 wet": (SOFT_BOARD, WOOL, ("plywood", 0.0125, 0.13, 70, None)),
    "E2 dry": (("strand board", 0.012, 0.13, 50, None), WOOL, ("plywood", 0.0125, 0.13, 200, None)),
    "E2 wet": (("strand board", 0.012, 0.13, 50, None), WOOL, ("plywood", 0.0125, 0.13, 70, None)),
    "E3 dry": (("strand board", 0.012, 0.13, 30, None), WOOL, ("plywood", 0.0125, 0.13, 200, None)),
    "E3 wet": (("strand board", 0.012, 0.13, 30, None), WOOL, ("plywood", 0.0125, 0.13, 70, None)),
}


def wall(rows, **kwargs):
    """An assembly from rows as above; a row without a thickness is a membrane."""
    return assembly(
        [
            layer(i, name=name, d=d, lam=lam, mu=mu, s_d=s_d, kind="solid" if d else "membrane")
            for i, (name, d, lam, mu, s_d) in enumerate(rows, 1)
        ],
        **kwargs,
    )


def section(one, *, r_si=0.13, r_se=0.04, strip=STRIP, less_favourable=False):
    """(values, column) of an assembly."""
    values, missing = cup_values(parts_of(one), less_favourable=less_favourable, fixed={})
    assert not missing
    return values, column(values, r_si, r_se, strip)


def run(one, year, **how):
    """The monthly balance of an assembly, as expected."""
    values, nodes = section(one, **how)
    return balance(values, nodes, year, outside_of(one.faces, year))


def study(one, year, **how):
    """The whole study of an assembly."""
    thermal = thermal_study(one)
    return condensation_study(one, thermal, vapour_study(one, thermal.layers), year, **how)


def grams(months):
    """Accumulated g/m2 by the first three letters of each month."""
    return {month.name[:3]: month.accumulated * 1000 for month in months}


def flows(months):
    """Flow in g/m2 by the first three letters of each month."""
    return {month.name[:3]: month.flow * 1000 for month in months}


def published_wall(*, ventilated=False, **changes):
    """The wall of the published two-period example: boards, retarder, wool; `changes` of the assembly."""
    board = {"d": 0.019, "lam": 0.127, "family": "particle-board"}
    rows = [
        layer(1, name="outer board", mu=100, **board),
        layer(2, name="mineral wool", d=0.160, lam=0.040, mu=1),
        layer(3, name="retarder", kind="membrane", s_d=2.0),
        layer(4, name="inner board", mu=50, **board),
    ]
    rows[0] = replace(rows[0], timber=True, density=datum(700))
    rows[1] = replace(rows[1], absorbent=False)
    rows[2] = replace(rows[2], absorbent=False)
    rows[3] = replace(rows[3], timber=True, density=datum(700))
    if ventilated:
        rows = [replace(row, number=row.number + 1) for row in rows]
        rows.insert(0, layer(1, name="cavity", d=0.03, kind="cavity", cavity="ventilated", counts=False))
    return assembly(rows, **changes)


def months_of(temperature, humidity, indoor_temperature, indoor_pressure, rule=CLASS_2.rule):
    return Year(tuple(temperature), tuple(humidity), tuple(indoor_temperature), tuple(indoor_pressure), rule)
