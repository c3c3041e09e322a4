"""Framing members and battens, cut across."""

from layerfolio.drawing.geometry import Outline, bounds
from layerfolio.drawing.hatches import FAMILIES, hatch
from layerfolio.drawing.layout_framing import Framing
from layerfolio.drawing.marks import Area, Curve, Line, Mark, Point

METAL = 0.7  # line of a cold-formed profile


def cut_member(frame: Framing, outline: Outline, number: int, scale: float) -> tuple[Mark, ...]:
    """One member cut across: rings in a strong outline, or the profile's own line for metal."""
    name = f"{frame.band.layer.name}/{frame.member.name}"
    area = Area(outline, name, frame.member.family)
    if frame.member.is_metal or frame.member.family == "metal":
        return area, _channel(outline, scale)
    piece = number + frame.band.layer.number
    known = frame.member.family if frame.member.family in FAMILIES else "plain"
    family = "timber" if known == "timber-board" else known
    edge = Line((*outline, outline[0]), 0.5, role="member")
    return area, *hatch(family, outline, seed=name, piece=piece, scale=scale), edge


def _channel(outline: Outline, scale: float) -> Line:
    """A C-shaped profile, its web at the left; lips of 12 real mm."""
    left, bottom, right, top = bounds(outline)
    half = METAL / 2
    lip = min(12 / scale, (top - bottom) / 3)
    x0, x1, y0, y1 = left + half, right - half, bottom + half, top - half
    return Line(((x1, y1 - lip), (x1, y1), (x0, y1), (x0, y0), (x1, y0), (x1, y0 + lip)), METAL, role="member")


def rounded(points: tuple[Point, ...], width: float, halo: float) -> Curve:
    """A smooth line through points, on white."""
    around = (points[0], *points, points[-1])
    commands: list[tuple] = [("M", *points[0])]
    for (ax, ay), (bx, by), (cx, cy), (dx, dy) in zip(around, around[1:], around[2:], around[3:], strict=False):
        commands.append(("C", bx + (cx - ax) / 6, by + (cy - ay) / 6, cx - (dx - bx) / 6, cy - (dy - by) / 6, cx, cy))
    return Curve(tuple(commands), width, "", halo, "torn")
