"""Shapes of members."""

from layerfolio.drawing.geometry import Outline, bounds
from layerfolio.drawing.marks import Curve, Line, Point

METAL = 0.7  # line of a cold-formed profile
LIP = 12.0  # real mm


def channel(outline: Outline, scale: float) -> Line:
    """A C-shaped profile in an upright box, its web at the left."""
    left, bottom, right, top = bounds(outline)
    half = METAL / 2
    lip = min(LIP / scale, (top - bottom) / 3)
    x0, x1, y0, y1 = left + half, right - half, bottom + half, top - half
    return Line(((x1, y1 - lip), (x1, y1), (x0, y1), (x0, y0), (x1, y0), (x1, y0 + lip)), METAL, role="member")


def rounded(points: tuple[Point, ...], width: float, halo: float) -> Curve:
    """A smooth line through points, on white."""
    around = (points[0], *points, points[-1])
    commands: list[tuple] = [("M", *points[0])]
    for (ax, ay), (bx, by), (cx, cy), (dx, dy) in zip(around, around[1:], around[2:], around[3:], strict=False):
        commands.append(("C", bx + (cx - ax) / 6, by + (cy - ay) / 6, cx - (dx - bx) / 6, cy - (dy - by) / 6, cx, cy))
    return Curve(tuple(commands), width, "", halo, "torn")
