"""Figures as findings print them: the customary unit first where the project asks for it, the other in brackets."""

from math import floor, log10

from layerfolio.glossary import term
from layerfolio.units.pretty import pretty_unit
from layerfolio.units.show import fixed, in_units, significant

NANO = 1e12  # permeances print in ng/(Pa.s.m2)
DECIMALS = 4
"""At most so many has a figure of a code in customary units: R 11.25, U 0.045."""
USUAL = {"R_eff": 2, "U": 3, "W": 3}


def figure(
    quantity: str, value: float, *, customary: bool = False, both: bool = False, digits: int | None = None
) -> str:
    """The value with its unit, "2.97 m²·K/W"; with `customary` "16.9 ft²·°F·h/Btu (2.97 m²·K/W)"; with `both` alone the
    customary figure in brackets.

    `digits` after the point, for permeances significant ones; None takes what the quantity usually prints with.
    """
    metric = f"{_number(quantity, value, digits)} {_unit(quantity)}".rstrip()
    unit = term(quantity).customary
    if not (customary or both):
        return metric
    other = f"{_customary(value, unit, digits, quantity)} {pretty_unit(unit)}"
    return f"{other} ({metric})" if customary else f"{metric} ({other})"


def _customary(value: float, unit: str, digits: int | None, quantity: str) -> str:
    """Three significant digits, or as many as the metric figure was given to be told from its limit; a figure of the
    code's own, which has few decimals in this unit, as it stands.
    """
    more = max(0, (digits or 0) - USUAL.get(quantity, 2))
    found = in_units(value, unit)
    if abs(found - round(found, DECIMALS)) < abs(found) * 1e-7:
        return f"{round(found, DECIMALS):g}"
    text = significant(found, 3 + more)
    if "·" in text:  # a difference too small for four decimals: written out, as pocket calculators show it
        text = fixed(found, 2 - floor(log10(abs(found))))
    return text.rstrip("0").rstrip(".") if "." in text else text


def _unit(quantity: str) -> str:
    return "ng/(Pa·s·m²)" if quantity == "W" else pretty_unit(term(quantity).si)


def _number(quantity: str, value: float, digits: int | None) -> str:
    digits = USUAL.get(quantity, 2) if digits is None else digits
    if quantity != "W":
        return fixed(value, digits)
    text = significant(value * NANO, digits)  # without zeros that say nothing: 48, 4.17, 2600
    return text.rstrip("0").rstrip(".") if "." in text else text


def pair(
    quantity: str, value: float, limit: float, decimals: int | None, *, customary: bool = False, both: bool = False
) -> tuple[str, str]:
    """Value and limit as printed. A set without a rounding rule is judged unrounded: where the print would hide that
    they differ, both get more digits until it shows.
    """
    digits = USUAL.get(quantity, 2) if decimals is None else decimals
    if decimals is None and abs(value - limit) > abs(limit) * 1e-9:
        ways = [lambda one: _number(quantity, one, digits)]
        if customary or both:
            ways.append(lambda one: _customary(one, term(quantity).customary, digits, quantity))
        while digits < 9 and any(way(value) == way(limit) for way in ways):
            digits += 1
    shown = [figure(quantity, one, customary=customary, both=both, digits=digits) for one in (value, limit)]
    return shown[0], shown[1]


def conductances(*values: float, customary: bool = False, both: bool = False) -> list[str]:
    """Sums of area and transmittance with four digits, "31.27 W/K", or as many as tell them apart; with `customary` or `both`
    in either unit: "59.28 Btu/(h·°F) (31.27 W/K)".
    """
    unit, apart, digits = term("H_x").customary, len({f"{one:.9g}" for one in values}), 4

    def told(texts: set[str]) -> bool:
        return len(texts) == apart

    while digits < 9 and not (
        told({significant(one, digits) for one in values}) and told({significant(in_units(one, unit), digits) for one in values})
    ):
        digits += 1
    metric = [f"{significant(one, digits)} {pretty_unit(term('H_x').si)}" for one in values]
    other = [f"{significant(in_units(one, unit), digits)} {pretty_unit(unit)}" for one in values]
    if not (customary or both):
        return metric
    return [f"{a} ({b})" if customary else f"{b} ({a})" for a, b in zip(other, metric, strict=True)]


def listed(words: list[str] | tuple[str, ...]) -> str:
    """ "a", "a and b", "a, b and c"."""
    return " and ".join((", ".join(words[:-1]), words[-1])) if len(words) > 1 else "".join(words)


def sentence(text: str) -> str:
    """Its first letter as a capital; a key of the project file at its beginning stays as it is written there."""
    first = text.partition(" ")[0].rstrip(".,;:")
    return text if "_" in first or "." in first else text[:1].upper() + text[1:]
