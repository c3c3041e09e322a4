"""Figures of the site and the building as findings print them: customary first with SI in brackets where that is asked."""

import re

from layerfolio.units.quantity import Quantity
from layerfolio.units.show import fixed, in_units, length_figure, length_text, metric_length


def area(value: float, customary: bool = False) -> str:
    """Square metres: "52 m²", "560 ft² (52 m²)"."""
    return _both(f"{fixed(value, 0)} m²", f"{fixed(in_units(value, 'ft2'), 0)} ft²", customary)


def degree_days(value: float, customary: bool = False) -> str:
    """Kelvin days: "4600 degree-days", "8280 °F·d (4600 K·d)"."""
    if not customary:
        return f"{_short(value)} degree-days"
    return f"{fixed(in_units(value, 'F.d'), 0)} °F·d ({_short(value)} K·d)"


def degree_days_span(low: float, high: float, customary: bool = False) -> str:
    """ "4000 to 4999 degree-days", "7200 to 8998 °F·d (4000 to 4999 K·d)"."""
    if not customary:
        return f"{low:g} to {degree_days(high)}"
    ends = " to ".join(fixed(in_units(one, "F.d"), 0) for one in (low, high))
    return f"{ends} °F·d ({low:g} to {high:g} K·d)"


def temperature(value: float, customary: bool = False) -> str:
    """Degrees Celsius: "−27 °C", "−16.6 °F (−27 °C)"."""
    return _both(f"{_short(value)} °C", f"{_short(in_units(value, 'degF'))} °F", customary)


def in_system(text: str, customary: bool = False) -> str:
    """A set's own words, their temperatures (degrees Celsius) as the project prints them."""
    if not customary:
        return text
    return re.sub(r"(−?[0-9.]+) °C", lambda one: temperature(float(one[1].replace("−", "-")), True), text)


def pressure(value: float, customary: bool = False) -> str:
    """Pascals, in kilopascals: "0.45 kPa", "9.4 psf (0.45 kPa)"."""
    return _both(f"{fixed(value / 1000, 2)} kPa", f"{fixed(in_units(value, 'psf'), 1)} psf", customary)


def length(value: Quantity, customary: bool = False) -> str:
    """A thickness or spacing: "15 mm", "9/16" (15 mm)"; from 100 mm on whole millimetres stand in the brackets."""
    if not customary:
        return metric_length(value.value)
    if value.value < 0.1:
        return length_text(value, "customary")
    return f"{length_figure(value, 'customary')} ({fixed(value.value * 1000, 0)} mm)"


def _both(metric: str, other: str, customary: bool) -> str:
    return f"{other} ({metric})" if customary else metric


def _short(value: float) -> str:
    text = fixed(value, 1)
    return text.removesuffix(".0")
