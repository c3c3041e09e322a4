"""What people read: numbers, lengths and customary units. Pure text, no mark-up."""

from functools import cache

from layerfolio.units.digits import as_number, fixed, significant
from layerfolio.units.expression import UnitError, read_unit
from layerfolio.units.lengths import customary_length, length_figure, length_text, metric_length
from layerfolio.units.table import KINDS, OPENING_UNITS, house_factor

__all__ = [
    "as_number", "customary_length", "fixed", "in_units", "length_figure", "length_text", "metric_length",
    "significant",
]  # fmt: skip


@cache
def _scale(unit: str) -> tuple[float, float]:
    """Factor and shift from the house value to `unit`."""
    if unit in ("degC", "degF"):
        return (1.0, 0.0) if unit == "degC" else (1.8, 32.0)
    for units in OPENING_UNITS.values():
        if unit in units:
            return 1 / units[unit], 0.0
    factor, dimension = read_unit(unit)
    for kind, about in KINDS.items():
        if kind not in OPENING_UNITS and read_unit(about.unit)[1] == dimension:
            return house_factor(kind) / factor, 0.0
    raise UnitError("unknown", unit)


def in_units(value: float, unit: str) -> float:
    """A house value (SI; degC, K.d, mm2/m where the house uses those) in another unit of the same kind.

    `degC` and `degF` are temperatures, `K` and compounds are differences. UnitError for a unit that is not known.
    """
    factor, shift = _scale(unit)
    return value * factor + shift
