"""Soft insulation: one continuous curve of bulbs that crosses the layer's depth."""

from dataclasses import dataclass
from itertools import pairwise
from math import acos, atan2, cos, hypot, pi, sin
from random import Random

from layerfolio.drawing.hatches.piece import Piece
from layerfolio.drawing.hatches.strokes import BATT, ROLE, arc
from layerfolio.drawing.marks import Curve, Mark, Point

CLEAR = 0.55  # of a bulb from the face, before it is disturbed
LEAST_CLEAR = 0.30  # after it


@dataclass(frozen=True, slots=True)
class Bulb:
    x: float
    y: float
    radius: float
    top: bool


def batt(piece: Piece) -> tuple[Mark, ...]:
    """Bulbs at both faces in turn, half a bulb at either end of the bay, joined by strands that lean back."""
    rng = piece.generator("batt")
    bulbs = _bulbs(piece, rng)
    sway = min(0.55, 0.015 * piece.depth)
    first = bulbs[0]
    commands: list[tuple] = [("M", first.x, first.y + first.radius)]
    entry = pi / 2
    for one, following in pairwise(bulbs):
        leave, enter = _tangent(one, following)
        commands += _round(one, entry, leave)
        commands.append(_strand(_on(one, leave), _on(following, enter), rng.uniform(-sway, sway)))
        entry = enter
    last = bulbs[-1]
    commands += _round(last, entry, pi / 2 if last.top else -pi / 2)
    return piece.paper([Curve(tuple(commands), BATT, role=ROLE)])


def _bulbs(piece: Piece, rng: Random) -> list[Bulb]:
    """Even but not equal: the inner ones are moved a little; the first and the last stand on the ends of the bay."""
    x0, y0, _, y1 = piece.box
    depth = piece.depth
    pitch = min(13.0, max(3.4, 0.29 * depth))
    count = max(2, 2 * round(piece.length / pitch))
    half = piece.length / count
    plain = min(0.74 * half, (depth - 1.2) / 3)
    bulbs = []
    for number in range(count + 1):
        inner = 0 < number < count
        radius = plain * (1 + inner * rng.uniform(-0.08, 0.08))
        x = x0 + number * half + inner * rng.uniform(-0.09, 0.09) * half
        across = inner * rng.uniform(-1, 1) * min(0.45, 0.015 * depth)
        inset = max(plain + CLEAR + across, radius + LEAST_CLEAR)
        top = number % 2 == 0
        bulbs.append(Bulb(x, y1 - inset if top else y0 + inset, radius, top))
    return bulbs


def _tangent(one: Bulb, other: Bulb) -> tuple[float, float]:
    """Angles of the touching radii of the inner tangent: on `one`, and on `other` (the opposite direction)."""
    dx, dy = other.x - one.x, other.y - one.y
    spread = acos(min(1.0, (one.radius + other.radius) / hypot(dx, dy)))
    leave = atan2(dy, dx) + (spread if one.top else -spread)
    return leave, leave + pi


def _on(bulb: Bulb, angle: float) -> Point:
    return bulb.x + bulb.radius * cos(angle), bulb.y + bulb.radius * sin(angle)


def _round(bulb: Bulb, start: float, end: float) -> list[tuple]:
    """Over the top from left to right (clockwise), or along the bottom from left to right (anticlockwise)."""
    sweep = -((start - end) % (2 * pi)) if bulb.top else (end - start) % (2 * pi)
    return arc(bulb.x, bulb.y, bulb.radius, start, sweep)


def _strand(start: Point, end: Point, sway: float) -> tuple:
    (ax, ay), (bx, by) = start, end
    dx, dy = (bx - ax) / 3, (by - ay) / 3
    return "C", ax + dx + sway, ay + dy, bx - dx - sway, by - dy, bx, by
