"""Reading a unit: `W/(m.K)`, `Btu.in/(h.ft2.F)`, `ng/(Pa·s·m²)` to its SI factor and dimension.

What stands after the first stroke is all below it, as people write it: `W/m.K` is W/(m.K).
"""

import re

from layerfolio.units.symbols import ALIASES, NONE, SYMBOLS, Dimension

LONGEST = 40
_SIGNS = str.maketrans(
    {"·": ".", "⋅": ".", "∙": ".", "*": ".", "²": "2", "³": "3", "⁻": "-", "¹": "1", "μ": "µ", "−": "-"}
)
_TOKEN = re.compile(
    r"(?P<name>(?:kg|g|t)CO2e?|m2K|[A-Za-zµ°%]+|[\"'])(?:\^?(?P<power>-?[1-4]))?|(?P<sign>[./()])|(?P<bad>.)"
)


class UnitError(Exception):
    """`reason` is "unknown" or "dimension"; `what` the unit or the part of it that is meant."""

    def __init__(self, reason: str, what: str):
        super().__init__(f"{reason}: {what}")
        self.reason, self.what = reason, what


def read_unit(text: str) -> tuple[float, Dimension]:
    """SI factor and dimension of a unit as people write it; UnitError("unknown") when it cannot be read."""
    if text == "1":
        return 1.0, NONE
    if len(text) > LONGEST:
        raise UnitError("unknown", text[:LONGEST] + "…")
    factor, total = 1.0, NONE
    for name, power in _parts(text):
        one, dimension = _symbol(name)
        factor *= one**power
        total = tuple(a + b * power for a, b in zip(total, dimension, strict=True))  # type: ignore[assignment]
    return factor, total


def _prepare(text: str) -> str:
    text = text.strip().translate(_SIGNS).replace("..", "^")  # ** has become ..
    text = re.sub(r"\b(?:US|U\.S\.) (?=perm)", "", text)
    text = re.sub(r"\b(?:sq|square) ?(ft|foot|feet|m|mm|in)\b", r"\1^2", text)
    text = re.sub(r"\b(?:cu|cubic) ?(ft|foot|feet|m|in)\b", r"\1^3", text)
    text = re.sub(r" ?([./()^]) ?", r"\1", text)
    return re.sub(r" +", ".", text)


def _parts(text: str) -> list[tuple[str, int]]:
    """Symbols with their powers, aliases resolved."""
    parts: list[tuple[str, int]] = []
    below = [1]
    before = ""
    for token in _TOKEN.finditer(_prepare(text)):
        if token["bad"]:
            raise UnitError("unknown", text)
        sign = token["sign"]
        if sign is None:
            if before not in ("", ".", "/", "("):
                raise UnitError("unknown", text)
            power = below[-1] * int(token["power"] or 1)
            parts += [(name, power * inner) for name, inner in _resolved(token["name"])]
        else:
            _turn(sign, below, before, text)
        before = sign or "name"
    alone = len(parts) == 1 or all(name != "%" for name, _ in parts)
    if len(below) != 1 or before in ("", ".", "/") or not alone:
        raise UnitError("unknown", text)
    return parts


def _turn(sign: str, below: list[int], before: str, text: str) -> None:
    """Keep account of what is above and below the stroke while brackets open and close."""
    if sign == "(" and before in ("", ".", "/", "("):
        below.append(below[-1])
    elif sign == ")" and len(below) > 1 and before in ("name", ")"):
        below.pop()
    elif sign == "/" and before in ("name", ")"):
        below[-1] = -(below[-2] if len(below) > 1 else 1)
    elif sign != "." or before not in ("name", ")"):
        raise UnitError("unknown", text)


def _resolved(name: str) -> list[tuple[str, int]]:
    name = ALIASES.get(name, name)
    if "." not in name and not name[-1].isdigit():
        return [(name, 1)]
    return [(one.rstrip("23"), int(one[-1]) if one[-1] in "23" else 1) for one in name.split(".")]


def _symbol(name: str) -> tuple[float, Dimension]:
    if name in SYMBOLS:
        return SYMBOLS[name]
    from layerfolio.units.outside import look_up

    found = look_up(name)
    if found is None:
        raise UnitError("unknown", name)
    return found
