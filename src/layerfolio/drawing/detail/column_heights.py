"""Heights of tags in a column: near what they point at, in order, apart, within the page, clear of what lies across it."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

HEAVY = 1e5  # what cannot move


@dataclass(frozen=True, slots=True)
class Slot:
    """What wants to stand at `wanted` and takes `size` mm of height; `fixed`: it stands there."""

    wanted: float
    size: float
    fixed: bool = False


def heights(slots: Sequence[Slot], low: float, high: float) -> list[float]:
    """Middles from the top down: the least moves in all (pooled neighbours), then held between `low` and `high` where
    their sizes allow it."""
    if not slots:
        return []
    offsets = [0.0]
    for one, other in pairwise(slots):
        offsets.append(offsets[-1] + (one.size + other.size) / 2)
    level = _pooled([one.wanted + off for one, off in zip(slots, offsets, strict=True)], slots)
    top, bottom = high - slots[0].size / 2, low + slots[-1].size / 2 + offsets[-1]
    if bottom > top:  # too many for the height: they reach out at both ends alike
        top = bottom = (top + bottom) / 2
    return [min(max(value, bottom), top) - off for value, off in zip(level, offsets, strict=True)]


def _pooled(wanted: Sequence[float], slots: Sequence[Slot]) -> list[float]:
    """The nearest sequence that never rises (weighted, by pooling neighbours)."""
    pools: list[list[float]] = []  # weighted sum, weight, count
    for value, slot in zip(wanted, slots, strict=True):
        weight = HEAVY if slot.fixed else 1.0
        pools.append([value * weight, weight, 1])
        while len(pools) > 1 and pools[-2][0] / pools[-2][1] < pools[-1][0] / pools[-1][1]:
            total, weight, count = pools.pop()
            pools[-1][0] += total
            pools[-1][1] += weight
            pools[-1][2] += count
    return [total / weight for total, weight, count in pools for _ in range(int(count))]
