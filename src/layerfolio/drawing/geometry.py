"""Plane geometry in paper millimetres, y upward, angles in degrees anticlockwise."""

from math import cos, radians, sin

from layerfolio.drawing import font
from layerfolio.drawing.marks import Point, Text

Outline = tuple[Point, ...]


def turned(point: Point, degrees: float, about: Point = (0.0, 0.0)) -> Point:
    """`point` turned anticlockwise about another."""
    c, s = cos(radians(degrees)), sin(radians(degrees))
    x, y = point[0] - about[0], point[1] - about[1]
    return about[0] + c * x - s * y, about[1] + s * x + c * y


def rectangle(x0: float, y0: float, x1: float, y1: float) -> Outline:
    """The four corners, anticlockwise from the lower left."""
    return (x0, y0), (x1, y0), (x1, y1), (x0, y1)


def bounds(points: tuple[Point, ...] | list[Point]) -> tuple[float, float, float, float]:
    """Least x, least y, greatest x, greatest y."""
    xs, ys = [one[0] for one in points], [one[1] for one in points]
    return min(xs), min(ys), max(xs), max(ys)


def text_box(text: Text, grow: float = 0.0) -> tuple[Point, Point, Point, Point]:
    """The four corners of the room a text takes, turned with it: from the deepest letter to the tallest, grown by `grow` mm."""
    wide = font.width(text.text, text.size, text.style, text.spaced)
    left = {"start": 0.0, "middle": -wide / 2, "end": -wide}[text.anchor]
    unit = text.size * font.MM_PER_PT
    box = rectangle(
        left - grow, -font.DESCENT * unit - grow, left + wide + grow, font.ASCENT * unit + grow
    )
    return tuple(_moved(turned(corner, text.turn), text.at) for corner in box)


def boxes_touch(one: Outline, other: Outline) -> bool:
    """Whether two convex outlines overlap (separating axis; touching edges do not count)."""
    for shape in (one, other):
        for (ax, ay), (bx, by) in zip(shape, shape[1:] + shape[:1], strict=True):
            nx, ny = by - ay, ax - bx
            first = [nx * x + ny * y for x, y in one]
            second = [nx * x + ny * y for x, y in other]
            if max(first) <= min(second) + 1e-9 or max(second) <= min(first) + 1e-9:
                return False
    return True


def _moved(point: Point, by: Point) -> Point:
    return point[0] + by[0], point[1] + by[1]
