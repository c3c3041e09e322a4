"""Heat-flow paths through framed layers: which pieces lie behind one another, and on what share of the area."""

from dataclasses import dataclass
from itertools import product
from math import prod

from layerfolio.studies.types import LayerHeat

MOST_GROUPS = 10  # 1,024 paths; more independent framings in one assembly are not built


@dataclass(frozen=True, slots=True)
class Path:
    """`in_member` are the numbers of the layers that this path crosses through framing."""

    share: float
    in_member: frozenset[int]
    resistances: tuple[float, ...]  # of the counted layers, from the outside in, without films
    factors: tuple[float, ...] = ()  # shares of the crossed groups; their product is `share`


@dataclass(frozen=True, slots=True)
class _Branch:
    share: float
    in_member: frozenset[int]


def _groups(layers: tuple[LayerHeat, ...]) -> list[list[LayerHeat]]:
    """Framed layers by member_id; each layer without one stands alone."""
    groups: dict[str, list[LayerHeat]] = {}
    for heat in layers:
        if heat.member_resistance is not None:
            groups.setdefault(heat.layer.member.member_id or f"layer {heat.layer.number}", []).append(heat)
    return list(groups.values())


def _branches(group: list[LayerHeat]) -> list[_Branch]:
    """Zones of one group: the smaller share lies wholly inside the larger, the rest of the area has no member."""
    ordered = sorted(group, key=lambda h: h.layer.member.share.value)
    zones, below = [], 0.0
    for position, heat in enumerate(ordered):
        share = heat.layer.member.share.value
        zones.append(_Branch(share - below, frozenset(h.layer.number for h in ordered[position:])))
        below = share
    zones.append(_Branch(1 - below, frozenset()))
    return [zone for zone in reversed(zones) if zone.share > 0]


def paths(layers: tuple[LayerHeat, ...]) -> tuple[Path, ...]:
    """Every combination of crossing framings, the shares of independent groups multiplied; shares add up to 1.

    Raises ValueError beyond MOST_GROUPS independent framings.
    """
    groups = _groups(layers)
    if len(groups) > MOST_GROUPS:
        raise ValueError(f"more than {MOST_GROUPS} independent framings in one assembly")
    found = []
    for branches in product(*map(_branches, groups)):
        members = frozenset().union(*(b.in_member for b in branches))
        resistances = tuple(h.member_resistance if h.layer.number in members else h.resistance for h in layers)
        factors = tuple(b.share for b in branches)
        found.append(Path(prod(factors), members, resistances, factors))  # type: ignore[arg-type]
    return tuple(found)
