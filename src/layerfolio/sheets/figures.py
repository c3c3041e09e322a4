"""Figures as sheets print them: the system that comes first, the other in brackets; significant digits, true signs."""

from collections.abc import Callable

from layerfolio.glossary import term
from layerfolio.steps.spelling import shown
from layerfolio.units.pretty import pretty_unit
from layerfolio.units.quantity import Quantity
from layerfolio.units.show import fixed, in_units, length_figure, significant

NONE = "–"
NOT_GIVEN = "not given"


def rounded(value: float, decimals: int) -> str:
    """So many decimals; a small figure that they would falsify by more than 0.5 % keeps three significant digits."""
    if abs(round(value, decimals) - value) > 0.005 * abs(value):
        return significant(value, 3)
    return fixed(value, decimals)


def in_system(value: float, quantity: str, system: str) -> float:
    """The value in the unit that comes first."""
    found = term(quantity)
    return in_units(value, found.customary) if system == "customary" else value


def unit_of(quantity: str, system: str) -> str:
    """Printed unit of the system that comes first."""
    found = term(quantity)
    return pretty_unit(found.customary if system == "customary" else found.si)


def cell(value: float | None, quantity: str, system: str, decimals: int, customary_decimals: int | None = None) -> str:
    """A table cell without unit; in the customary system with SI in brackets."""
    if value is None:
        return NONE
    si = rounded(value, decimals)
    if system == "metric":
        return si
    places = decimals if customary_decimals is None else customary_decimals
    return f"{rounded(in_system(value, quantity, system), places)} ({si})"


def telling(value: float, limit: float | None, system: str) -> int:
    """Decimals of a transmittance, three or as many as tell it from the limit it is judged by unrounded."""
    decimals = 3
    if limit is None or abs(value - limit) <= abs(limit) * 1e-9:
        return decimals
    units = ("metric",) if system == "metric" else ("metric", "customary")
    while decimals < 9 and any(fixed(one(value), decimals) == fixed(one(limit), decimals) for one in map(_in_u, units)):
        decimals += 1
    return decimals


def _in_u(system: str) -> Callable[[float], float]:
    return lambda value: in_system(value, "U", system)


def u_cell(value: float | None, system: str, limit: float | None = None) -> str:
    """A transmittance in a table, with the digits that tell it from its limit; the limit itself takes the value's digits."""
    return NONE if value is None else u_beside(value, value, limit, system)


def u_beside(shown_value: float, value: float, limit: float | None, system: str) -> str:
    """One of two transmittances that stand beside each other, value and limit, with the digits that tell them apart."""
    decimals = telling(value, limit, system)
    if decimals == 3:
        return cell(shown_value, "U", system, 3)
    metric = fixed(shown_value, decimals)
    return metric if system == "metric" else f"{fixed(in_system(shown_value, 'U', system), decimals)} ({metric})"


def with_unit(value: float, quantity: str, system: str, digits: int = 3, decimals: int | None = None) -> str:
    """A figure with its unit, the other system in brackets when customary comes first.

    `decimals` is the rounding rule of a code set for the SI figure; it wins over `digits`.
    """
    found = term(quantity)
    si = shown(value, digits) if decimals is None else fixed(value, decimals)
    metric = _joined(si, pretty_unit(found.si))
    if system == "metric" or found.customary == found.si:
        return metric
    return f"{_joined(shown(in_units(value, found.customary), digits), pretty_unit(found.customary))} ({metric})"


def _joined(figure: str, unit: str) -> str:
    return f"{figure}\u00a0{unit}" if unit else figure


def permeance_text(value: float, system: str, digits: int = 3) -> str:
    """A permeance: ng/(Pa.s.m2) or US perm first, the other in brackets."""
    metric = f"{shown(value * 1e12, digits)}\u00a0ng/(Pa·s·m²)"
    customary = f"{shown(in_units(value, 'perm'), digits)}\u00a0US perm"
    return f"{customary} ({metric})" if system == "customary" else metric


def thickness(length: Quantity | None, system: str) -> str:
    """Thickness of a layer in a table column headed mm or in."""
    if length is None:
        return NONE
    if system == "metric":
        return _short(length.value * 1000)
    return f"{length_figure(length, 'customary')} ({_short(length.value * 1000)})"


def _short(millimetres: float) -> str:
    return f"{millimetres:.2f}".rstrip("0").rstrip(".")
