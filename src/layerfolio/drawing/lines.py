"""Straight segments: whether they cross, how near a point lies."""

from dataclasses import dataclass
from math import hypot

from layerfolio.drawing.geometry import Outline, bounds, contains
from layerfolio.drawing.marks import Point


def segments_cross(a: Point, b: Point, c: Point, d: Point) -> bool:
    """Whether two segments have a point in common that is no mere touch of their ends."""
    return _side(a, b, c) * _side(a, b, d) < 0 and _side(c, d, a) * _side(c, d, b) < 0


def distance(point: Point, a: Point, b: Point) -> float:
    """Of a point from a segment, mm."""
    (px, py), (ax, ay), (bx, by) = point, a, b
    dx, dy = bx - ax, by - ay
    square = dx * dx + dy * dy
    share = min(1.0, max(0.0, ((px - ax) * dx + (py - ay) * dy) / square)) if square else 0.0
    return hypot(px - ax - share * dx, py - ay - share * dy)


@dataclass(frozen=True, slots=True)
class Obstacle:
    """An outline that segments keep out of, with its bounding box; two points make a line."""

    outline: Outline
    box: tuple[float, float, float, float]

    @classmethod
    def of(cls, outline: Outline) -> "Obstacle":
        return cls(outline, bounds(outline))

    def crossed_by(self, a: Point, b: Point) -> bool:
        x0, y0, x1, y1 = self.box
        if (a[0] < x0 and b[0] < x0) or (a[0] > x1 and b[0] > x1):
            return False
        if (a[1] < y0 and b[1] < y0) or (a[1] > y1 and b[1] > y1):
            return False
        return crosses_outline(a, b, self.outline)


def crosses_outline(a: Point, b: Point, outline: Outline) -> bool:
    """Whether a segment touches a closed outline or lies in it."""
    edges = zip(outline, (*outline[1:], outline[0]), strict=True)
    return any(segments_cross(a, b, c, d) for c, d in edges) or contains(outline, a) or contains(outline, b)


def _side(a: Point, b: Point, point: Point) -> float:
    return (b[0] - a[0]) * (point[1] - a[1]) - (b[1] - a[1]) * (point[0] - a[0])
