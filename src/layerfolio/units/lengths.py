"""Lengths for print: as the person wrote them, the other system in brackets, inches as fractions to 1/16."""

import re
from fractions import Fraction

from layerfolio.units.digits import MINUS, fixed
from layerfolio.units.grammar import tidy
from layerfolio.units.quantity import Quantity
from layerfolio.units.symbols import INCH

_METRIC = re.compile(r"([+\-]?[0-9.]+) ?(mm|cm|m)")
_INCHES = re.compile(r"([+\-]?[0-9][0-9 ./\-]*?) ?(?:in|inch|inches|\")")
_FEET = re.compile(r"([+\-]?[0-9.]+) ?(?:ft|feet|foot|')(?: ?-? ?([0-9][0-9 ./\-]*?) ?(?:in|inch|inches|\"))?")


def length_text(length: Quantity | float, system: str, as_written: bool = True) -> str:
    """A length in the `system` that comes first ("metric" or "customary"), the other in brackets.

    `38 mm (1 1/2")` or `1 1/2" (38 mm)`. A float is metres. What the person wrote stands as written (`19/32"` is not
    turned into sixteenths) unless `as_written` is False.
    """
    first, second = ("metric", "customary") if system == "metric" else ("customary", "metric")
    return f"{_in(length, first, as_written)} ({_in(length, second, as_written)})"


def length_figure(length: Quantity | float, system: str, as_written: bool = True) -> str:
    """A length in one system as drawings and tables print it: millimetres without a unit, or feet and inches."""
    text = _in(length, system, as_written)
    if system != "metric":
        return text
    if text.endswith(" mm"):
        return text.removesuffix(" mm")
    return _millimetres(_metres(length))


def metric_length(metres: float) -> str:
    """Rounded as a builder reads it: whole millimetres from 20 mm on, tenths below, metres from 10 m on."""
    if abs(metres) >= 10:
        return _plain(metres, 2) + " m"
    return _millimetres(metres) + " mm"


def customary_length(metres: float, feet_from: int = 36) -> str:
    """Inches to 1/16 below so many of them, feet and inches above; decimals where a sixteenth would be too coarse."""
    sign, inches = MINUS if metres < 0 else "", abs(metres) / INCH
    if inches < 0.125 and abs(inches * 16 - round(inches * 16)) > 1e-6:
        return f'{sign}{_plain(inches, 3 if inches >= 0.01 else 4)}"'
    sixteenths = round(inches * 16)
    feet, rest = divmod(sixteenths, 12 * 16) if sixteenths >= feet_from * 16 else (0, sixteenths)
    whole, part = divmod(rest, 16)
    fraction = str(Fraction(part, 16)) if part else ""
    text = " ".join(filter(None, [str(whole) if whole or not part else "", fraction])) + '"'
    return f"{sign}{feet}'-{text}" if feet else sign + text


def _in(length: Quantity | float, system: str, as_written: bool) -> str:
    if as_written and isinstance(length, Quantity):
        written = _written(tidy(length.text), system)
        if written:
            return written
    metres = _metres(length)
    return metric_length(metres) if system == "metric" else customary_length(metres)


def _written(text: str, system: str) -> str:
    """The person's own words in house spelling, empty when they are of the other system."""
    if system == "metric":
        match = _METRIC.fullmatch(text)
        return f"{_true_minus(match[1])} {match[2]}" if match else ""
    if match := _INCHES.fullmatch(text):
        return f'{_mixed(match[1])}"'
    if match := _FEET.fullmatch(text):
        inches = f'-{_mixed(match[2])}"' if match[2] else ""
        return f"{_true_minus(match[1])}'{inches}"
    return ""


def _mixed(text: str) -> str:
    """`1-1/2` as `1 1/2`."""
    return _true_minus(re.sub(r"(?<=[0-9])-(?=[0-9])", " ", text))


def _true_minus(text: str) -> str:
    return text.lstrip("+").replace("-", MINUS)


def _metres(length: Quantity | float) -> float:
    return length.value if isinstance(length, Quantity) else length


def _millimetres(metres: float) -> str:
    size = abs(metres) * 1000
    return _plain(metres * 1000, 0 if size >= 20 else 1 if size >= 1 else 2)


def _plain(value: float, decimals: int) -> str:
    text = fixed(value, decimals)
    return text.rstrip("0").rstrip(".") if "." in text else text
