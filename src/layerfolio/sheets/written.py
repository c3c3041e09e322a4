"""Quantities of the project file as sheets print them: as written, the other system in brackets."""

import re

from layerfolio.sheets.figures import NOT_GIVEN
from layerfolio.units.pretty import pretty_unit
from layerfolio.units.quantity import Quantity
from layerfolio.units.show import fixed, in_units, significant

UNITS = {
    "temperature": ("degC", "degF"),
    "pressure": ("kPa", "psf"),
    "area": ("m2", "ft2"),
    "volume": ("m3", "ft3"),
    "degree_days": ("K.d", "F.d"),
    "speed": ("m/s", "mph"),
    "airflow": ("L/s", "cfm"),
}
"""By kind of quantity: the metric unit and the customary one that a cover prints."""

_CUSTOMARY = re.compile("F|ft|in|yd|sf|ps[fi]|mph|cfm")


def written(quantity: Quantity | None, system: str) -> str:
    """A quantity of the project file as its writer put it, and beside it the other system where the two differ in order.

    Customary first: both, the metric figure in brackets. Metric first: as written, after the metric figure if that is customary.
    """
    if quantity is None:
        return NOT_GIVEN
    units = UNITS.get(quantity.kind)
    in_customary = bool(_CUSTOMARY.search(quantity.text.partition(" ")[2]))
    if units is None or (system == "metric" and not in_customary):
        return _as_text(quantity)
    as_written, other = _as_text(quantity), _converted(quantity, units[0] if in_customary else units[1])
    first_as_written = in_customary == (system == "customary")
    return f"{as_written} ({other})" if first_as_written else f"{other} ({as_written})"


def _converted(quantity: Quantity, unit: str) -> str:
    value = in_units(quantity.value, unit)
    figure = significant(value, 3)
    if quantity.kind == "degree_days":  # as the record prints them
        figure = fixed(value, 1 if unit == "K.d" else 0).removesuffix(".0")
    return f"{figure}\u00a0{pretty_unit(unit)}"


def _as_text(quantity: Quantity) -> str:
    number, _, unit = quantity.text.partition(" ")
    return f"{number.replace('-', '−')}\u00a0{pretty_unit(unit)}".strip() if unit else quantity.text
