"""The grammar of quantities: what a person may write where a number with a unit belongs.

A person's text never reaches a general unit library: those read `1 1/2 in` as 0.5 in and `1,5 mm` as 15 mm.
"""

import re

from layerfolio.units.expression import UnitError
from layerfolio.units.numbers import NUMBER, SIGN, NumberError, number, spread
from layerfolio.units.quantity import Quantity
from layerfolio.units.symbols import FOOT, INCH, SYMBOLS
from layerfolio.units.table import KINDS, unit_factor

LONGEST = 80
_SIMPLE = re.compile(rf"(?P<number>{NUMBER}) ?(?P<unit>[^0-9 .+\-].*)")
_BARE = re.compile(NUMBER)
_FEET_INCHES = re.compile(
    rf"(?P<sign>{SIGN})(?P<feet>[0-9]{{1,6}}) ?(?:ft|feet|foot|') ?-? ?"
    r"(?P<inches>[0-9][0-9 ./\-]*?) ?(?:in|inch|inches|\")"
)
_LABELLED = re.compile(rf"(?P<label>R|RSI)[ \-]?(?P<number>{NUMBER})", re.IGNORECASE)
_U_LABELLED = re.compile(rf"U[ \-]?(?P<number>{NUMBER})", re.IGNORECASE)
_PITCH = re.compile(rf"(?P<rise>{NUMBER}) ?(?::|in) ?12|(?P<plain>[0-9]{{1,3}}(?:\.[0-9]+)?) ?/ ?12")
_MARKS = str.maketrans(
    {"′": "'", "’": "'", "″": '"', "”": '"', "“": '"', "\u00a0": " ", "\u202f": " ", "\u2009": " ", "−": "-"}
)
_TEMPERATURES = {"degC": (1.0, 0.0), "degF": (5 / 9, -160 / 9), "K": (1.0, -273.15)}
_TEMPERATURE_WORDS = {"°C": "degC", "C": "degC", "deg C": "degC", "°F": "degF", "F": "degF", "deg F": "degF"}
_GAUGES = ("ga", "gauge", "gage")
_CUSTOMARY_R = "ft2.h.F/Btu"
_CUSTOMARY_U = "Btu/(h.ft2.F)"


class QuantityError(ValueError):
    """The text is no quantity of that kind; `example` shows one that is."""

    def __init__(self, message: str, example: str):
        super().__init__(message)
        self.message, self.example = message, example


def parse(text: str, kind: str) -> Quantity:
    """Read a number with its unit; the value comes in the house unit of `kind`, a key of units.table.KINDS.

    Raises QuantityError with a message for people when the text is no such quantity or is beyond all reason.
    """
    try:
        value = _value(tidy(text), kind)
    except NumberError as error:
        raise QuantityError(str(error), KINDS[kind].example) from None
    about = KINDS[kind]
    if not about.least <= value <= about.most:
        raise QuantityError(f"{shown(text)} is outside what a building can have", about.example)
    return Quantity(value, kind, text.strip())


def parse_dimensions(text: str) -> tuple[Quantity, ...]:
    """Read lengths joined by `x`, each with its unit: `63 mm x 3.25 mm`."""
    parts = re.split(r" *[x×] *(?=[0-9.])", tidy(text)) if len(text) <= LONGEST else []
    if not 2 <= len(parts) <= 3:
        raise QuantityError(f"{shown(text)} is not two or three lengths joined by x", "63 mm x 3.25 mm")
    return tuple(parse(part, "length") for part in parts)


def tidy(text: str) -> str:
    """Typographic marks and single-character fractions in plain characters; single spaces."""
    return re.sub(r"\s+", " ", spread(text.translate(_MARKS).strip()))


def shown(text: str) -> str:
    """The text as a message may quote it: short and without control characters."""
    clean = "".join(c if c.isprintable() else "?" for c in text)
    return f'"{clean[:40]}…"' if len(clean) > 40 else f'"{clean}"'


def _value(text: str, kind: str) -> float:
    if len(text) <= LONGEST and (kind == "angle" or not _BARE.fullmatch(text)):
        special = _special(text, kind)
        if special is not None:
            return special
        if match := _SIMPLE.fullmatch(text):
            return _with_unit(number(match["number"]), match["unit"].strip(), text, kind)
    raise QuantityError(_reason(text), KINDS[kind].example)


def _special(text: str, kind: str) -> float | None:
    """Forms that belong to one kind only: feet and inches, R-20, U-0.24, a roof pitch."""
    if kind == "length" and (match := _FEET_INCHES.fullmatch(text)) and re.fullmatch(NUMBER, match["inches"]):
        length = int(match["feet"]) * FOOT + number(match["inches"]) * INCH
        return -length if match["sign"] == "-" else length
    if kind == "resistance" and (match := _LABELLED.fullmatch(text)):
        unit = _CUSTOMARY_R if match["label"].upper() == "R" else "m2.K/W"
        return number(match["number"]) * unit_factor(unit, kind)
    if kind == "transmittance" and (match := _U_LABELLED.fullmatch(text)):
        return number(match["number"]) * unit_factor(_CUSTOMARY_U, kind)
    if kind == "angle" and (match := _PITCH.fullmatch(text)):
        from math import atan, degrees

        return degrees(atan(number(match["rise"] or match["plain"]) / 12))
    return None


def _with_unit(value: float, unit: str, text: str, kind: str) -> float:
    example = KINDS[kind].example
    if _is_sum(unit):
        raise QuantityError(_reason(text), example)
    if kind == "temperature":
        unit = _TEMPERATURE_WORDS.get(unit, unit)
        if unit not in _TEMPERATURES:
            raise QuantityError(f"{shown(unit)} is not a unit of temperature: use degC, degF or K", example)
        factor, shift = _TEMPERATURES[unit]
        return value * factor + shift
    try:
        return _times(value, unit_factor(unit, kind))
    except UnitError as error:
        raise QuantityError(_unit_message(error, unit, kind), example) from None


def _times(value: float, factor: float) -> float:
    """The product; by division where that is the exact way (38 mm / 1000, 70 % / 100)."""
    parts = round(1 / factor)
    return value / parts if parts > 1 and abs(parts * factor - 1) < 1e-12 else value * factor


def _is_sum(unit: str) -> bool:
    """More arithmetic where the unit should be, as in `9**9 mm` or `5 mm + 3 mm`."""
    return bool(re.match(r"[*/^+,;_]", unit)) or bool(re.search(r"[ +][0-9]|[0-9]{2}", unit))


def _unit_message(error: UnitError, unit: str, kind: str) -> str:
    if error.reason == "dimension":
        return f"{shown(unit)} is not a unit of {KINDS[kind].noun}"
    if error.what.lower() in _GAUGES:
        return f"{shown(error.what)} is a gauge, whose thickness depends on the material: write the thickness"
    from difflib import get_close_matches

    near = [one for one in get_close_matches(error.what, SYMBOLS, 5, 0.6) if _fits(unit.replace(error.what, one, 1), kind)]
    hint = f": did you mean {near[0]}?" if near else ""
    return f"the unit {shown(error.what)} is not known{hint}"


def _fits(unit: str, kind: str) -> bool:
    """Whether this would be a unit of that kind, or wrong in a place of its own."""
    try:
        unit_factor(unit, kind)
    except UnitError as error:
        return error.reason != "dimension"
    return True


def _reason(text: str) -> str:
    """Why a text that fits no form was refused."""
    if not text:
        return "a number with its unit is missing"
    if _BARE.fullmatch(text):
        return f"the bare number {text} needs its unit"
    if re.match(rf"{SIGN}(nan|inf|\.nan|\.inf|infinity)\b", text, re.IGNORECASE):
        return f"{shown(text)} is not a number that can be used"
    if re.match(rf"{SIGN}[0-9]+,[0-9]", text):
        return f"{shown(text)} has a comma: write a decimal point, and no mark between thousands"
    if re.match(rf"{SIGN}[0-9]+[ '_][0-9]{{3}}\b", text):
        return f"{shown(text)} has a mark between thousands: write the digits together"
    if re.match(rf"{SIGN}[0-9.]+[eE][+\-]?[0-9]{{4}}", text):
        return f"the number in {shown(text)} is too large or too small"
    return f"{shown(text)} is not a number with a unit"
