"""Where a detail breaks off: pieces and lines run on behind the break, the zigzag cuts them."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from itertools import pairwise
from math import hypot

from layerfolio.drawing.breaks import HEIGHT, SWING
from layerfolio.drawing.detail.model import Break, Detail
from layerfolio.drawing.detail.on_paper import cut_box, grown, pieces_box
from layerfolio.drawing.geometry import Outline
from layerfolio.drawing.marks import Line, Mark, Point

OVER = 5.0  # mm that things run on behind a break
NEAR = 0.06  # mm: what counts as lying on it
ROUND = 0.9  # mm that the clip leaves for lines on the sides that do not break
CLEAR = 3.4  # of the zigzag's middle from lines that end at the break


@dataclass(frozen=True, slots=True)
class Edge:
    """A break with the middle of its zigzag, u mm from `a`; `inner` breaks lie within the drawing, nothing runs on there."""

    a: Point
    b: Point
    middle: float
    inner: bool

    @property
    def long(self) -> float:
        return hypot(self.b[0] - self.a[0], self.b[1] - self.a[1])

    @property
    def along(self) -> Point:
        return (self.b[0] - self.a[0]) / self.long, (self.b[1] - self.a[1]) / self.long

    def off(self, point: Point) -> float:
        """Distance to the left of the line from a to b."""
        c, s = self.along
        return c * (point[1] - self.a[1]) - s * (point[0] - self.a[0])

    def u(self, point: Point) -> float:
        c, s = self.along
        return c * (point[0] - self.a[0]) + s * (point[1] - self.a[1])

    def holds(self, point: Point) -> bool:
        return abs(self.off(point)) < NEAR and -NEAR < self.u(point) < self.long + NEAR

    def point(self, u: float, off: float = 0.0) -> Point:
        c, s = self.along
        return self.a[0] + c * u - s * off, self.a[1] + s * u + c * off

    def path(self) -> tuple[Point, ...]:
        """From a to b with one zigzag."""
        half = min(HEIGHT, 0.6 * self.long) / 2
        turns = ((-half, 0.0), (-half / 3, -SWING), (half / 3, SWING), (half, 0.0))
        return (self.a, *(self.point(self.middle + u, off) for u, off in turns), self.b)


def edges_of(detail: Detail) -> tuple[Edge, ...]:
    """The breaks of a detail on paper, their zigzags clear of lines that end there."""
    box, found = pieces_box(detail), []
    ends = [run[at] for one in detail.traces for run in one.runs for at in (0, -1)]
    ends += [one.points[at] for one in detail.sheets for at in (0, -1)]
    ends += [point for one in detail.pieces for point in one.outline]
    for one in detail.breaks:
        edge = Edge(one.a, one.b, 0.0, not _outer(one, box, detail.clip))
        taken = sorted(edge.u(point) for point in ends if edge.holds(point))
        found.append(replace(edge, middle=_zigzag_at(taken, edge.long)))
    return tuple(found)


def _zigzag_at(taken: list[float], long: float) -> float:
    """The middle of the break, or of the gap between lines that is nearest to it and wide enough; else of the widest."""
    if not taken:
        return long / 2
    gaps = list(pairwise(taken)) or [(0.0, long)]
    wide = [one for one in gaps if one[1] - one[0] >= 2 * CLEAR] or [max(gaps, key=lambda one: one[1] - one[0])]
    places = [min(max(long / 2, min(a + CLEAR, (a + b) / 2)), max(b - CLEAR, (a + b) / 2)) for a, b in wide]
    return min(places, key=lambda u: abs(u - long / 2))


def run_on(points: Iterable[Point], edges: tuple[Edge, ...], closed: bool) -> tuple[Point, ...]:
    """A path or an outline whose ends at outer breaks are moved out behind them, in their own direction."""
    points = tuple(points)
    outer = [one for one in edges if not one.inner]
    moved = list(points)
    for at, point in enumerate(points):
        edge = next((one for one in outer if one.holds(point)), None)
        if edge is None:
            continue
        beside = [points[step] for step in _beside(at, len(points), closed) if not edge.holds(points[step])]
        if len(beside) == 1:
            moved[at] = _moved_out(point, beside[0], edge)
    return tuple(moved)


def clip_of(detail: Detail, edges: tuple[Edge, ...]) -> Outline:
    """What shows: up to the breaks with their zigzags, and a little more on the other sides."""
    outer = [one for one in edges if not one.inner]
    corners = detail.clip or _box_within(detail, outer)
    ring: list[Point] = []
    for a, b in zip(corners, (*corners[1:], corners[0]), strict=True):
        ring.append(a)
        side = Edge(a, b, 0.0, False)
        on = [one for one in outer if abs(side.off(one.a)) < NEAR and abs(side.off(one.b)) < NEAR]
        for one in sorted(on, key=lambda one: side.u(one.point(one.middle))):
            path = one.path()
            ring += path[1:-1] if side.u(one.b) > side.u(one.a) else path[-2:0:-1]
    return tuple(ring)


def break_marks(edges: tuple[Edge, ...]) -> list[Mark]:
    return [Line(one.path(), 0.25, role="break") for one in edges]


def _outer(one: Break, box: tuple[float, float, float, float], clip: Outline) -> bool:
    """Whether a break lies on a side of the clip, or of everything that is cut."""
    sides = clip or ((box[0], box[1]), (box[2], box[1]), (box[2], box[3]), (box[0], box[3]))
    for a, b in zip(sides, (*sides[1:], sides[0]), strict=True):
        if a != b:
            side = Edge(a, b, 0.0, False)
            if abs(side.off(one.a)) < NEAR and abs(side.off(one.b)) < NEAR:
                return True
    return False


def _box_within(detail: Detail, outer: list[Edge]) -> Outline:
    """A rectangle: on the break where a side has one, clear of everything elsewhere."""
    box, limit = pieces_box(detail), list(grown(cut_box(detail), ROUND))
    for number, (axis, value) in enumerate(((0, box[0]), (1, box[1]), (0, box[2]), (1, box[3]))):
        if any(abs(one.a[axis] - value) < NEAR and abs(one.b[axis] - value) < NEAR for one in outer):
            limit[number] = value
    x0, y0, x1, y1 = limit
    return (x0, y0), (x1, y0), (x1, y1), (x0, y1)


def _beside(at: int, count: int, closed: bool) -> list[int]:
    if closed:
        return [(at - 1) % count, (at + 1) % count]
    return [step for step in (at - 1, at + 1) if 0 <= step < count]


def _moved_out(point: Point, beside: Point, edge: Edge) -> Point:
    dx, dy = point[0] - beside[0], point[1] - beside[1]
    out = abs(edge.off(beside))
    if out < 0.01:
        return point
    share = OVER / out
    return point[0] + share * dx, point[1] + share * dy


