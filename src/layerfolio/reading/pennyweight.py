"""Nails by pennyweight: `8d common` is 2.5 in x 0.131 in. Read only where a project writes a nail so."""

import re
from functools import cache
from typing import Any

from layerfolio.home import folder
from layerfolio.units.grammar import QuantityError, parse, parse_dimensions, shown
from layerfolio.units.quantity import Quantity

_PENNY = re.compile(r"([0-9]{1,2}) ?d\b *([a-z ]*?)(?: nails?)? *(?:[,(] *(.*?)\)?)?", re.IGNORECASE)
_FIRST_BARE = re.compile(r"([0-9./ \-½¼¾⅛⅜⅝⅞]+?) *([x×])")
EXAMPLE = "2.5 in x 0.131 in"


@cache
def _sizes() -> dict[str, Any]:
    """Length and diameter of common nails in inches, by pennyweight; each with its source in the data."""
    import yaml

    text = (folder("shared") / "structure" / "unit-shear.yaml").read_text(encoding="utf-8")
    return yaml.load(text, Loader=yaml.CSafeLoader)["nails"]


def penny_nail(text: str) -> tuple[Quantity, Quantity, str]:
    """Length, diameter and name of a nail by pennyweight, the name as written.

    Raises QuantityError for one whose size is not carried here, or beside which another size stands.
    """
    found, sizes = _PENNY.fullmatch(" ".join(text[:80].split())), _sizes()
    weight, kind, beside = (f"{int(found[1])}d", found[2].lower(), found[3]) if found else ("", "", "")
    if kind != "common" or weight not in sizes:
        known = ", ".join(f"{one} common" for one in sizes)
        raise QuantityError(f"{shown(text)} has no size here, known are {known}: write length x diameter", EXAMPLE)
    length, diameter = (parse(f"{sizes[weight][one]} in", "length") for one in ("length", "diameter"))
    if beside:
        _agree(beside, (length, diameter), f"{weight} common")
    return length, diameter, text.split(",")[0].split("(")[0].strip()


def _agree(beside: str, own: tuple[Quantity, Quantity], name: str) -> None:
    """The size written beside a pennyweight is its own."""
    stated = parse_dimensions(_FIRST_BARE.sub(r"\1 in \2", beside, count=1) if _FIRST_BARE.match(beside) else beside)
    if len(stated) != 2 or any(abs(a.value / b.value - 1) > 0.02 for a, b in zip(stated, own, strict=True)):
        size = " x ".join(one.text for one in own)
        raise QuantityError(f'"{beside}" is not the size of {name}, {size}', size)
