"""Quantities of the project file as sheets print them: as written, the other system in brackets."""

import re
from contextlib import suppress
from math import isclose

from layerfolio.sheets.figures import NOT_GIVEN
from layerfolio.units.expression import UnitError
from layerfolio.units.grammar import tidy
from layerfolio.units.numbers import NUMBER, NumberError, number
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

SPELLED = {
    "temperature": ("degC", "degF"), "pressure": ("kPa", "Pa", "psf", "psi"), "area": ("m2", "ft2"), "volume": ("m3", "ft3"),
    "degree_days": ("K.d", "F.d"), "speed": ("m/s", "mph", "km/h"), "airflow": ("L/s", "cfm", "m3/h"),
}  # fmt: skip
"""Units that print in the house's spelling, however they were typed: `70 sqm` is 70 m²."""

_CUSTOMARY = re.compile("F|ft|in|yd|sf|ps[fi]|mph|cfm")


def written(quantity: Quantity | None, system: str) -> str:
    """A quantity of the project file as its writer put it, and beside it the other system where the two differ in order.

    Customary first: both, the metric figure in brackets. Metric first: as written, after the metric figure if that is customary.
    """
    if quantity is None:
        return NOT_GIVEN
    units = UNITS.get(quantity.kind)
    in_customary = bool(_CUSTOMARY.search(_number_and_unit(quantity)[1]))
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
    figure, unit = _number_and_unit(quantity)
    return f"{figure.replace('-', '−')}\u00a0{pretty_unit(unit)}".strip() if unit else quantity.text


def _number_and_unit(quantity: Quantity) -> tuple[str, str]:
    """The number as typed and its unit in the spelling of the house, or as typed where it is none of those listed."""
    typed = re.fullmatch(rf"({NUMBER}) ?(\D.*)", tidy(quantity.text))
    if typed:
        with suppress(NumberError, UnitError):
            figure = number(typed[1])
            for unit in SPELLED.get(quantity.kind, ()):
                if isclose(in_units(quantity.value, unit), figure, rel_tol=1e-9, abs_tol=1e-9):
                    return typed[1], unit
        return typed[1], typed[2]
    figure, _, unit = quantity.text.partition(" ")
    return figure, unit
