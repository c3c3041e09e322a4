"""Dimension figures: as the person wrote them, without the unit that the whole drawing shares."""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from layerfolio.units.lengths import length_figure
from layerfolio.units.quantity import Quantity

Units = Literal["metric", "customary"]
INCH = Fraction(254, 10)  # mm
FEET_FROM = 36  # inches: from here on feet and inches
_CUSTOMARY = re.compile(r"""(?:(?P<feet>[\d.]+)'-?)?(?:(?P<whole>[\d.]+)(?![\d./]))? ?(?:(?P<part>\d+/\d+))?"?""")


@dataclass(frozen=True, slots=True)
class Figure:
    """`amount` in mm or in inches, exactly what `text` says."""

    amount: Fraction
    text: str


def figure(length: Quantity, units: Units) -> Figure:
    """The figure of one length, as tables print it too."""
    text = length_figure(length, units)
    if units == "metric":
        return Figure(Fraction(text), text)
    amount = _inches(text)
    if amount is None:  # written in a way that no ruler shows
        amount = Fraction(round(length.value * 1000 / float(INCH) * 16), 16)
        text = inch_text(amount)
    return Figure(amount, text)


def total(figures: Iterable[Figure], units: Units) -> Figure:
    """The overall figure: always the sum of the printed ones, so that a chain adds up."""
    amount = sum((one.amount for one in figures), Fraction(0))
    return Figure(amount, inch_text(amount) if units == "customary" else decimal_text(amount))


def with_other(one: Figure, metres: float, units: Units) -> str:
    """An inch figure with the true millimetres in brackets (the inches may be rounded); a metric figure alone."""
    return f"{one.text} ({round(metres * 1000, 1):g})" if units == "customary" else one.text


def decimal_text(amount: Fraction) -> str:
    """At most three decimals, no trailing zeros."""
    return f"{float(amount):.3f}".rstrip("0").rstrip(".")


def inch_text(amount: Fraction) -> str:
    """`18 15/32"`; what is no fraction of 64 prints as a decimal; feet and inches from three feet on."""
    if amount.denominator not in (1, 2, 4, 8, 16, 32, 64):
        return f'{decimal_text(amount)}"'
    feet, inches = divmod(amount, 12) if amount >= FEET_FROM else (0, amount)
    whole, part = divmod(inches, 1)
    words = [str(whole)] if whole or feet or not part else []
    text = " ".join([*words, f"{part.numerator}/{part.denominator}"] if part else words) + '"'
    return f"{feet}'-{text}" if feet else text


def _inches(text: str) -> Fraction | None:
    found = _CUSTOMARY.fullmatch(text)
    if found is None:
        return None
    return 12 * Fraction(found["feet"] or 0) + Fraction(found["whole"] or 0) + Fraction(found["part"] or 0)
