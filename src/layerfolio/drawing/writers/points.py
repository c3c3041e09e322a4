"""Millimetres as the points of a PDF page, and where the tiles of an area lie."""

from math import floor

from layerfolio.drawing.marks import Point
from layerfolio.drawing.tiles import OVERHANG, SIDE

MM = 72 / 25.4


def places(area: tuple[float, float, float, float]) -> list[tuple[int, int]]:
    """Columns and rows of the tiles that reach into an area."""
    x0, y0, x1, y1 = area
    columns = range(floor((x0 - OVERHANG) / SIDE), floor((x1 + OVERHANG) / SIDE) + 1)
    rows = range(floor((y0 - OVERHANG) / SIDE), floor((y1 + OVERHANG) / SIDE) + 1)
    return [(column, row) for row in rows for column in columns]


def pt(mm: float) -> float:
    """A length in points, two decimals."""
    return round(mm * MM, 2)


def pair(point: Point) -> tuple[float, float]:
    """A place in points."""
    return round(point[0] * MM, 2), round(point[1] * MM, 2)
