"""Dimension figures: as the person wrote them, without the unit that the whole drawing shares."""

import re
from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from layerfolio.units.quantity import Quantity

Units = Literal["metric", "customary"]
INCH = Fraction(254, 10)  # mm
_MM = re.compile(r"\s*(\d+(?:\.\d+)?)\s*mm\s*")
_INCHES = re.compile(
    r"""\s*(?:(?P<feet>\d+)\s*(?:ft|')[\s-]*)?
        (?:(?P<whole>\d+(?:\.\d+)?)(?![\d/.]))?[\s-]*
        (?:(?P<top>\d+)/(?P<under>\d+))?\s*(?:in|inch|inches|"|″)?\s*""",
    re.VERBOSE,
)


@dataclass(frozen=True, slots=True)
class Figure:
    """`amount` in mm or in inches, exact as printed; `text` is what stands beside the line."""

    amount: Fraction
    text: str


def figure(length: Quantity, units: Units) -> Figure:
    """The figure of one length: millimetres, or inches as fractions to 1/16 where the person wrote no inches."""
    return _inches(length) if units == "customary" else _millimetres(length)


def total(figures: Iterable[Figure], units: Units) -> Figure:
    """The overall figure: always the sum of the printed ones, so that a chain adds up."""
    amount = sum((one.amount for one in figures), Fraction(0))
    return Figure(amount, inch_text(amount) if units == "customary" else decimal_text(amount))


def with_other(one: Figure, units: Units) -> str:
    """An inch figure with its millimetres in brackets; a metric figure alone."""
    return f"{one.text} ({round(one.amount * INCH)})" if units == "customary" else one.text


def decimal_text(amount: Fraction) -> str:
    """At most three decimals, no trailing zeros."""
    return f"{float(amount):.3f}".rstrip("0").rstrip(".")


def inch_text(amount: Fraction) -> str:
    """`5 1/2"`; what is no fraction of 64 prints to 1/16, or as a decimal below 1/16."""
    if amount.denominator not in (1, 2, 4, 8, 16, 32, 64):
        if amount < Fraction(1, 16):
            return f'{float(amount):.3f}"'
        amount = Fraction(round(amount * 16), 16)
    whole, part = divmod(amount, 1)
    words = [str(whole)] if whole or not part else []
    return " ".join([*words, f"{part.numerator}/{part.denominator}"] if part else words) + '"'


def _millimetres(length: Quantity) -> Figure:
    written = _MM.fullmatch(length.text)
    text = written[1] if written else decimal_text(Fraction(round(length.value * 1e4), 10))
    return Figure(Fraction(text), text)


def _inches(length: Quantity) -> Figure:
    written = _written_inches(length.text)
    if written is not None and abs(float(written.amount) * 0.0254 - length.value) < 1e-6:
        return written
    amount = Fraction(round(length.value / 0.0254 * 16), 16)
    if amount < Fraction(1, 16):
        amount = Fraction(round(length.value / 0.0254 * 1000), 1000)
    return Figure(amount, inch_text(amount))


def _written_inches(text: str) -> Figure | None:
    """What the person wrote in feet and inches; None for any other unit."""
    found = _INCHES.fullmatch(text)
    if not found or not re.search(r"""ft|in|["'″]""", text) or found["under"] == "0":
        return None
    feet, whole, top, under = (found[name] for name in ("feet", "whole", "top", "under"))
    part = Fraction(int(top), int(under)) if top else Fraction(0)
    amount = 12 * Fraction(feet or 0) + Fraction(whole or 0) + part
    decimal = f'{whole}"' if whole and "." in whole and not part and not feet else ""
    return Figure(amount, decimal or inch_text(amount)) if amount else None
