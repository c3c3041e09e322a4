"""The nearest free place on the page for a word, a triangle or a bubble."""

from collections.abc import Callable
from dataclasses import dataclass, field
from functools import cache
from math import hypot

from layerfolio.drawing.detail.on_paper import Box, corners
from layerfolio.drawing.geometry import Outline, bounds, contains
from layerfolio.drawing.lines import Obstacle, segments_cross
from layerfolio.drawing.marks import Point

STEP, FAR = 3.5, 90.0  # mm: of the search, and how far it goes


@dataclass(slots=True)
class Full:
    """What is drawn already: outlines of pieces, boxes of texts and tags, lines."""

    limit: Box
    outlines: list[Obstacle] = field(default_factory=list)
    boxes: list[Box] = field(default_factory=list)
    lines: list[tuple[Point, Point]] = field(default_factory=list)
    leaders: list[tuple[Point, Point]] = field(default_factory=list)

    def free(self, box: Box) -> bool:
        x0, y0, x1, y1 = box
        limit = self.limit
        if x0 < limit[0] or y0 < limit[1] or x1 > limit[2] or y1 > limit[3]:
            return False
        if any(x0 < one[2] and one[0] < x1 and y0 < one[3] and one[1] < y1 for one in self.boxes):
            return False
        ring = corners(box)
        if any(_touches(a, b, box, ring) for a, b in self.lines):
            return False
        return not any(_overlaps(one, box, ring) for one in self.outlines)

    def is_one_side(self, a: Point, b: Point) -> bool:
        """Whether no piece lies between two points: a word for the inside never moves outside."""
        return not any(one.crossed_by(a, b) and not contains(one.outline, a) for one in self.outlines)

    def is_open(self, a: Point, b: Point) -> bool:
        """Whether a leader may run between two points: through no text, across no other leader."""
        if any(segments_cross(a, b, *one) for one in self.leaders):
            return False
        return not any(_touches(a, b, box, corners(box)) for box in self.boxes)


def clear_spot(
    wanted: Point, half: tuple[float, float], full: Full, accept: Callable[[Point, Point], bool] = lambda a, b: True
) -> Point:
    """The middle nearest to `wanted` at which a box of `half` sides is free and that `accept` takes (given both points);
    where none is, above everything or below it."""
    for dx, dy in _offsets():
        x, y = wanted[0] + dx, wanted[1] + dy
        if full.free((x - half[0], y - half[1], x + half[0], y + half[1])) and accept(wanted, (x, y)):
            return x, y
    return _beyond(wanted, half, full)


def _beyond(wanted: Point, half: tuple[float, float], full: Full) -> Point:
    """Above everything, or below it for what was wanted in the lower half: a word for the inside never moves over a roof."""
    x0, y0, x1, y1 = full.limit
    up = 1 if wanted[1] > (y0 + y1) / 2 else -1
    x, y = min(max(wanted[0], x0 + half[0]), x1 - half[0]), (y1 if up > 0 else y0) + up * (half[1] + 1.0)
    while any(_meets(one, (x, y), half) for one in full.boxes):
        y += up * STEP
    return x, y


def _meets(box: Box, middle: Point, half: tuple[float, float]) -> bool:
    x, y = middle
    return box[0] < x + half[0] and x - half[0] < box[2] and box[1] < y + half[1] and y - half[1] < box[3]


@cache
def _offsets() -> tuple[Point, ...]:
    """A net of places round the wanted one, the nearest first."""
    count = int(FAR / STEP)
    net = [(STEP * a, STEP * b) for a in range(-count, count + 1) for b in range(-count, count + 1)]
    return tuple(sorted((one for one in net if hypot(*one) <= FAR), key=lambda one: (round(hypot(*one), 6), one)))


def _touches(a: Point, b: Point, box: Box, ring: Outline) -> bool:
    x0, y0, x1, y1 = box
    if max(a[0], b[0]) < x0 or min(a[0], b[0]) > x1 or max(a[1], b[1]) < y0 or min(a[1], b[1]) > y1:
        return False
    if any(x0 <= x <= x1 and y0 <= y <= y1 for x, y in (a, b)):
        return True
    return any(segments_cross(a, b, ring[at - 1], ring[at]) for at in range(4))


def _overlaps(one: Obstacle, box: Box, ring: Outline) -> bool:
    x0, y0, x1, y1 = one.box
    if x1 < box[0] or x0 > box[2] or y1 < box[1] or y0 > box[3]:
        return False
    return any(one.crossed_by(ring[at - 1], ring[at]) for at in range(4)) or _inside(one.outline, box)


def _inside(outline: Outline, box: Box) -> bool:
    x0, y0, x1, y1 = bounds(outline)
    return box[0] <= x0 and x1 <= box[2] and box[1] <= y0 and y1 <= box[3]
