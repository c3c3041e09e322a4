"""How much room marks take."""

from collections.abc import Iterable

from layerfolio.drawing.geometry import text_box
from layerfolio.drawing.marks import Area, Circle, Clip, Curve, Group, Line, Mark, Point, Stipple, Text


def points_of(mark: Mark) -> Iterable[Point]:
    """Points whose bounding box holds the mark; of a clip only its outline, of an area nothing."""
    match mark:
        case Line():
            yield from mark.points
        case Curve():
            for command in mark.commands:
                yield from zip(command[1::2], command[2::2], strict=True)
        case Circle():
            (x, y), reach = mark.centre, mark.radius + mark.width / 2
            yield from ((x - reach, y - reach), (x + reach, y + reach))
        case Text():
            yield from text_box(mark)
        case Clip() | Stipple():
            yield from mark.outline
        case Group():
            for one in mark.marks:
                yield from points_of(one)
        case Area():
            return


def extent(marks: Iterable[Mark]) -> tuple[float, float, float, float]:
    """Least x, least y, greatest x, greatest y."""
    points = [point for mark in marks for point in points_of(mark)]
    xs, ys = [one[0] for one in points], [one[1] for one in points]
    return min(xs), min(ys), max(xs), max(ys)
