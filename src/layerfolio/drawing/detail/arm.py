"""An assembly as an arm of a junction: its courses laid along a line, each cut off where the junction says.

Lengths in building millimetres. `s` runs along the arm, `d` across it, inward from the datum (outer face of the frame).
"""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from math import ceil, floor, radians, tan
from typing import Literal

from layerfolio.assembly.courses import Course, courses
from layerfolio.assembly.types import Assembly, Layer
from layerfolio.drawing.detail.model import Piece
from layerfolio.drawing.geometry import Outline, direction
from layerfolio.drawing.marks import Point

BOARD = 140.0  # cover of a cladding board, a drafting measure
TURNS = {"up the slope": "vertical", "across the slope": "horizontal"}
Cut = Literal["upright", "along", "level"]  # which way the paper cuts: walls upright, roofs along their slope, plans level


@dataclass(frozen=True, slots=True)
class End:
    """Where a course ends: at `s` on the datum, growing by `lean` for each mm inward (0: square to the arm)."""

    s: float
    lean: float = 0.0

    def at(self, d: float) -> float:
        return self.s + self.lean * d

    def moved(self, by: float) -> "End":
        return End(self.s + by, self.lean)


@dataclass(frozen=True)
class Arm:
    """`turn`: direction of the arm in degrees; inward is to its right hand, or to its left with `left`."""

    assembly: Assembly
    origin: Point = (0.0, 0.0)
    turn: float = 90.0
    left: bool = False
    cut: Cut = "upright"

    @cached_property
    def courses(self) -> tuple[Course, ...]:
        return courses(self.assembly)

    def zone(self, *names: str) -> tuple[Course, ...]:
        """The courses of these zones, from the outside in."""
        return tuple(one for one in self.courses if one.zone in names)

    def place(self, s: float, d: float) -> Point:
        """A point of the arm on the drawing."""
        c, n = direction(self.turn)
        across = (-n, c) if self.left else (n, -c)
        return self.origin[0] + c * s + across[0] * d, self.origin[1] + n * s + across[1] * d

    def outline(self, d0: float, d1: float, start: End, end: End) -> Outline:
        """The part of the arm between two depths and two ends."""
        corners = ((start.at(d0), d0), (end.at(d0), d0), (end.at(d1), d1), (start.at(d1), d1))
        return tuple(self.place(s, d) for s, d in corners)

    def name(self, layer: Layer) -> str:
        return f"{self.assembly.name}/{layer.name}"

    def pieces(self, course: Course, start: End, end: End, first: float | None = None) -> Iterator[Piece]:
        """One course between two ends: its material, members that the paper cuts, boards with their joints.

        `first`: middle of the first cut member along `s`; else half a spacing from the start.
        """
        if course.depth <= 0:
            return
        layer = course.layer
        gaps = tuple(self._members(course, start, end, first)) if crosses(layer, self.cut) else ()
        for number, (a, b) in enumerate(gaps):
            family = "timber" if layer.member.family == "timber-board" else layer.member.family
            outline = self.outline(course.start, course.end, a, b)
            yield Piece(outline, family, f"{self.name(layer)}/{layer.member.name}", self.turn, 0.5, number=number + layer.number)
        edges = [start, *(edge for pair in gaps for edge in pair), end]
        for number, (a, b) in enumerate(zip(edges[::2], edges[1::2], strict=True)):
            if min(b.at(course.start) - a.at(course.start), b.at(course.end) - a.at(course.end)) > 0.5:
                yield from self._material(course, a, b, number)

    def _material(self, course: Course, a: End, b: End, number: int) -> Iterator[Piece]:
        layer = course.layer
        if layer.kind == "cavity":
            yield Piece(self.outline(course.start, course.end, a, b), "air", self.name(layer), self.turn)
        elif boards_cut(self.assembly, layer, self.cut):
            for index, (one, other) in enumerate(self._boards(course, a, b)):
                outline = self.outline(course.start, course.end, one, other)
                yield Piece(outline, "timber", self.name(layer), self.turn, 0.5, number=index + layer.number)
        else:
            edge = 0.5 if layer.family == "timber" else 0.35
            outline = self.outline(course.start, course.end, a, b)
            yield Piece(outline, layer.family, self.name(layer), self.turn, edge, number=number)

    def _members(self, course: Course, start: End, end: End, first: float | None) -> Iterator[tuple[End, End]]:
        member = course.layer.member
        half, step = member.width.value * 500, member.spacing.value * 1000
        low, high = max(start.at(course.start), start.at(course.end)), min(end.at(course.start), end.at(course.end))
        at = low + step / 2 if first is None else first
        at -= floor((at - half - low) / step) * step
        while at + half <= high:
            yield End(at - half), End(at + half)
            at += step

    def _boards(self, course: Course, a: End, b: End) -> Iterator[tuple[End, End]]:
        """Boards of one cover from the start on, the last as narrow as it comes; a sliver joins its neighbour.

        Their joints are square, so none comes to lie in a slanted end.
        """
        low, high = max(a.at(course.start), a.at(course.end)), min(b.at(course.start), b.at(course.end))
        count = max(1, ceil((high - low) / BOARD - 0.3))
        edges = [a, *(End(low + one * BOARD) for one in range(1, count)), b]
        yield from pairwise(edges)


def crosses(layer: Layer, cut: Cut) -> bool:
    """Whether the members of a layer are cut across by the paper and their width and spacing are known."""
    member = layer.member
    if member is None or member.width is None or member.spacing is None or member.spacing.value <= member.width.value:
        return False
    direction = TURNS.get(member.direction, member.direction)
    if cut == "level":
        return direction != "horizontal"
    return direction == "horizontal"


def boards_cut(assembly: Assembly, layer: Layer, cut: Cut) -> bool:
    """Whether boards are cut across: they run square to the battens they lie on, where those are known."""
    if layer.family != "timber-board":
        return False
    title = layer.title.lower()
    if "vertical" in title or "up the slope" in title:
        return cut == "level"
    under = next((one.member for one in assembly.layers if one.kind == "cavity" and one.member and one.member.direction), None)
    along = TURNS.get(under.direction, under.direction) == "horizontal" if under and under.direction else False
    upright_boards = along and layer.number < max((one.number for one in assembly.layers if one.member is under), default=0)
    return upright_boards if cut == "level" else not upright_boards


def lean(degrees: float) -> float:
    """The lean of an end cut plumb on an arm that slopes by `degrees`: how far `s` grows for each mm inward."""
    return tan(radians(degrees))

