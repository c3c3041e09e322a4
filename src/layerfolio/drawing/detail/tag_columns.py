"""Tags of a detail: one column on each side, leaders that cross neither each other nor a figure."""

from collections.abc import Sequence
from dataclasses import replace
from itertools import combinations

from layerfolio.drawing.detail.column_heights import Slot, heights
from layerfolio.drawing.detail.control_legs import Leg
from layerfolio.drawing.detail.dots import places
from layerfolio.drawing.detail.fit import Fit
from layerfolio.drawing.detail.model import Detail, Note, Side
from layerfolio.drawing.detail.note_rows import rows_of, size_of
from layerfolio.drawing.layout_harm import harm, meet
from layerfolio.drawing.layout_tags import Column, Leader, Tag
from layerfolio.drawing.lines import Obstacle
from layerfolio.drawing.marks import Point

PASSES = 3
RANK, LONGER = 0.05, 0.02  # what the next place in the list costs, and each mm of a leader
Numbered = tuple[Note, Leader]


def columns(
    detail: Detail, fit: Fit, legs: list[Leg], obstacles: Sequence[Obstacle], ground: float | None
) -> dict[Side, list[Numbered]]:
    """Leaders of both sides from the top down, numbered: first the right column, then the left one.

    `ground`: the height of a ground line that runs out under the left column; tags keep off it.
    """
    right = _side(detail, fit, "right", legs, obstacles, [], None)
    left = _side(detail, fit, "left", legs, obstacles, [one for _, one in right], ground)
    return {"right": _numbered(right, 1), "left": _numbered(left, 1 + len(right))}


def _side(
    detail: Detail, fit: Fit, side: Side, legs: list[Leg], obstacles: Sequence[Obstacle], others: list[Leader],
    ground: float | None,
) -> list[Numbered]:  # fmt: skip
    """The left column is laid out mirrored, so that one rule serves both."""
    notes = sorted((one for one in detail.notes if one.side == side), key=lambda one: (-one.at[0][1], one.at[0][0]))
    column = fit.column(side, [_mirrored_obstacle(one) if side == "left" else one for one in obstacles])
    beside = [_mirrored(one) for one in others] if side == "left" else others
    found = _arranged(notes, detail, fit, column, legs, beside, side, ground)
    for _ in range(len(notes) ** 2):
        pair = next((one for one in combinations(range(len(found)), 2) if meet(found[one[0]], found[one[1]])), None)
        if pair is None:
            break
        a, b = pair
        notes[a], notes[b] = notes[b], notes[a]
        found = _arranged(notes, detail, fit, column, legs, beside, side, ground)
    if side == "left":
        found = [_mirrored(one) for one in found]
    return list(zip(notes, found, strict=True))


def _arranged(
    notes: list[Note], detail: Detail, fit: Fit, column: Column, legs: list[Leg], beside: list[Leader], side: Side,
    ground: float | None,
) -> list[Leader]:  # fmt: skip
    """Circles in the order of the notes; each leader takes the dot that is least in the way."""
    levels = _levels(notes, fit, side, ground)
    tags = []
    for note, level in zip(notes, levels, strict=True):
        spots = places(note.at, detail, legs, level)
        if side == "left":
            spots = tuple((-x, y) for x, y in spots)
        tags.append(Tag(("1",), spots, rows_of(note, fit.room(side)), (), size_of(note, fit.room(side))))
    leaders: list[Leader] = []
    for tag, level in zip(tags, levels, strict=True):
        leaders.append(_best(tag, level, [*beside, *leaders], column))
    for _ in range(PASSES):
        before = list(leaders)
        for index, one in enumerate(leaders):
            others = [*beside, *leaders[:index], *leaders[index + 1 :]]
            if harm(one, others, column):
                leaders[index] = _best(one.tag, one.circle[1], others, column)
        if leaders == before:
            break
    return leaders


def _levels(notes: list[Note], fit: Fit, side: Side, ground: float | None) -> list[float]:
    slots = [Slot(one.at[0][1], size_of(one, fit.room(side))) for one in notes]
    if ground is None:
        return heights(slots, fit.low, fit.high)
    at = sum(one.wanted > ground for one in slots)
    band = Slot(ground - 4.0, 11.0, True)
    found = heights([*slots[:at], band, *slots[at:]], fit.low, fit.high)
    return found[:at] + found[at + 1 :]


def _best(tag: Tag, y: float, placed: list[Leader], column: Column) -> Leader:
    best, least = None, 0.0
    for number, dot in enumerate(tag.places):
        one = Leader(tag, dot, (column.elbow, y), (column.circle, y))
        longer = RANK * number + LONGER * abs(dot[0] - column.elbow)
        if best is not None and longer >= least:
            continue
        found = harm(one, placed, column) + longer
        if best is None or found < least:
            best, least = one, found
    return best


def _numbered(found: list[Numbered], first: int) -> list[Numbered]:
    """Numbers follow the circles from the top down."""
    ordered = sorted(found, key=lambda one: -one[1].circle[1])
    return [
        (note, replace(leader, tag=replace(leader.tag, labels=(str(first + at),)))) for at, (note, leader) in enumerate(ordered)
    ]


def _mirrored(one: Leader) -> Leader:
    return replace(one, dot=_flip(one.dot), elbow=_flip(one.elbow), circle=_flip(one.circle))


def _mirrored_obstacle(one: Obstacle) -> Obstacle:
    return Obstacle.of(tuple(map(_flip, one.outline)))


def _flip(point: Point) -> Point:
    return -point[0], point[1]
