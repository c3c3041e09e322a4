"""Where tags stand: numbers in a column beside the section, each on a leader that crosses no other."""

from collections.abc import Callable, Sequence
from dataclasses import replace
from itertools import combinations, product
from math import copysign, inf

from layerfolio.drawing.layout_harm import any_crossing, harm, meet, total
from layerfolio.drawing.layout_leader import NOTE_GAP, NOTE_PITCHES, PITCH, RADIUS, SIDE, Column, Leader, Tag, half_width
from layerfolio.drawing.lettering import spread
from layerfolio.drawing.lines import segments_cross

__all__ = [
    "NOTE_GAP", "NOTE_PITCHES", "PITCH", "RADIUS", "SIDE", "Column", "Leader", "Tag", "any_crossing", "arranged",
    "half_width",
]  # fmt: skip
LEANS = (0.0, 1.5, 3.0, -3.0, 6.0)  # mm that both halves of a column draw apart
PASSES = 3  # leaders in each other's way look for better places so often


def arranged(tags: Sequence[Tag], column: Column) -> tuple[Leader, ...]:
    """Circles in the order of the tags; only where leaders would cross, two circles change places."""
    best = _least(tags, column)
    if not any_crossing(best):
        return best
    chosen = list(tags)
    for _ in range(len(tags) ** 2 + 1):
        leaders = _with_dots(chosen, column)
        pairs = combinations(range(len(chosen)), 2)
        crossed = next((pair for pair in pairs if meet(leaders[pair[0]], leaders[pair[1]])), None)
        if crossed is None:
            return leaders
        a, b = crossed
        chosen[a], chosen[b] = chosen[b], chosen[a]
    return _uncrossed(leaders)


def _least(tags: Sequence[Tag], column: Column) -> tuple[Leader, ...]:
    """Of several ways to choose dots, one after the other, the one with the least harm."""
    best, least = (), None
    for lean, turn in product(LEANS if column.top == inf else LEANS[:1], (_members_first, _upward, _downward)):
        leaders = _with_dots(tags, column, turn, lean)
        found = total(leaders, column)
        if least is None or found < least:
            best, least = leaders, found
        if not least:
            break
    return best


def _uncrossed(leaders: tuple[Leader, ...]) -> tuple[Leader, ...]:
    """Dots as they are, circles exchanged: each exchange shortens the leaders, so this ends without a crossing."""
    found = list(leaders)
    pairs = list(combinations(range(len(found)), 2))
    while True:
        pair = next((one for one in pairs if _plainly(found, *one)), None)
        if pair is None:
            return tuple(sorted(found, key=lambda one: -one.circle[1]))
        a, b = found[pair[0]], found[pair[1]]
        found[pair[0]] = replace(a, elbow=b.elbow, circle=b.circle)
        found[pair[1]] = replace(b, elbow=a.elbow, circle=a.circle)


def _plainly(leaders: Sequence[Leader], a: int, b: int) -> bool:
    return segments_cross(leaders[a].dot, leaders[a].elbow, leaders[b].dot, leaders[b].elbow)


def _members_first(tags: Sequence[Tag]) -> list[int]:
    return sorted(range(len(tags)), key=lambda one: (not tags[one].member, one))


def _upward(tags: Sequence[Tag]) -> list[int]:
    return list(range(len(tags)))[::-1]


def _downward(tags: Sequence[Tag]) -> list[int]:
    return list(range(len(tags)))


def _with_dots(
    tags: Sequence[Tag], column: Column, turn: Callable[[Sequence[Tag]], list[int]] = _members_first, lean: float = 0.0
) -> tuple[Leader, ...]:
    """For every circle a dot whose leader is clear of the others; who chooses first is a matter of `turn`."""
    heights = _heights(tags, column.top, lean)
    placed: dict[int, Leader] = {}
    for index in turn(tags):
        y = heights[index]
        placed[index] = _best(tags[index], y, list(placed.values()), column)
    return _bettered([placed[index] for index in range(len(tags))], column)


def _bettered(leaders: list[Leader], column: Column) -> tuple[Leader, ...]:
    """Who chose first could not know where the others would lie: whoever is in the way chooses again."""
    for _ in range(PASSES):
        before = list(leaders)
        for index, one in enumerate(leaders):
            others = [*leaders[:index], *leaders[index + 1 :]]
            if harm(one, others, column):
                leaders[index] = _best(one.tag, one.circle[1], others, column)
        if leaders == before:
            break
    return tuple(leaders)


def _heights(tags: Sequence[Tag], top: float, lean: float) -> list[float]:
    """Near the dots, at their pitch, none above `top`; the upper half `lean` mm higher, the lower half lower."""
    sizes = [one.size for one in tags]
    wanted = [one.places[0][1] for one in tags]
    middle = (max(wanted) + min(wanted)) / 2 if wanted else 0.0
    heights = spread([y + copysign(lean, y - middle) for y in wanted], sizes)
    limit = top
    for index, size in enumerate(sizes):
        heights[index] = min(heights[index], limit)
        following = sizes[index + 1] if index + 1 < len(sizes) else 0.0
        limit = heights[index] - (size + following) / 2
    return heights


def _best(tag: Tag, y: float, placed: list[Leader], column: Column) -> Leader:
    """The first place without harm, else the one with the least."""
    best, least = None, inf
    for dot in tag.places:
        one = Leader(tag, dot, (column.elbow, y), (column.circle, y))
        found = harm(one, placed, column, least)
        if best is None or found < least:
            best, least = one, found
        if not found:
            break
    return best
