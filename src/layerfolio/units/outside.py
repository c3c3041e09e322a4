"""A unit symbol that our own table lacks is looked up in pint, one name at a time and never a person's whole text.

pint is slow to import and its parser evaluates arithmetic, so it sees nothing but a short word of letters.
"""

import re
from functools import cache

from layerfolio.units.symbols import NONE, Dimension

_WORD = re.compile(r"[A-Za-z]{2,20}")
_ORDER = ("[length]", "[mass]", "[time]", "[temperature]")


@cache
def look_up(name: str) -> tuple[float, Dimension] | None:
    """SI factor and dimension of one unit name, None when pint has no plain multiplicative unit of that name."""
    if not _WORD.fullmatch(name):
        return None
    try:
        one = _registry().Quantity(1.0, name)
        base = one.to_base_units()
        zero = _registry().Quantity(0.0, name).to_base_units().magnitude
        powers = dict(base.dimensionality)
        found = (*(int(powers.pop(key, 0)) for key in _ORDER), 0, 0)
    except Exception:  # pint raises many unrelated types for a name it cannot use; all mean the same here
        return None
    # pint's base unit of mass is the kilogram here (mks); offsets and plain counts are of no use in a compound
    if powers or zero != 0.0 or found == NONE:
        return None
    return float(base.magnitude), found  # type: ignore[return-value]


@cache
def _registry():
    import pint

    return pint.UnitRegistry(cache_folder=None)
