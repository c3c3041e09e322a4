"""Control lines as straight legs on paper, moved clear of the heavy lines beside them."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from math import hypot

from layerfolio.drawing.control import WIDTH
from layerfolio.drawing.detail.model import Sheet, Trace
from layerfolio.drawing.marks import Point

LEAST = 2.3  # mm from the middle of a membrane's line
ALONG = 2.0  # mm that two lines must run side by side
FLAT = 0.02  # sine of the angle up to which two legs are one
SHIFTED = ("membrane", "metal")


@dataclass(frozen=True, slots=True)
class Leg:
    """A straight part of a run; `mitre_a`, `mitre_b`: how far its line runs on at a corner to fill it, 0 where none lies."""

    a: Point
    b: Point
    mitre_a: float = 0.0
    mitre_b: float = 0.0
    long: float = field(init=False)
    along: Point = field(init=False)

    def __post_init__(self):
        dx, dy = self.b[0] - self.a[0], self.b[1] - self.a[1]
        long = hypot(dx, dy)
        object.__setattr__(self, "long", long)
        object.__setattr__(self, "along", (dx / long, dy / long))

    def at(self, u: float) -> Point:
        c, s = self.along
        return self.a[0] + c * u, self.a[1] + s * u

    def uv(self, point: Point) -> Point:
        """Along the leg from `a`, and to its left."""
        c, s = self.along
        x, y = point[0] - self.a[0], point[1] - self.a[1]
        return c * x + s * y, c * y - s * x

    @property
    def way(self) -> str:
        """How it lies on the page: level, upright or sloped."""
        c, s = self.along
        return "level" if abs(s) < FLAT else "upright" if abs(c) < FLAT else "sloped"


def legs_of(points: Sequence[Point]) -> list[Leg]:
    """The straight legs of a run."""
    points = straightened(points)
    inner = [_mitre(*points[at - 1 : at + 2]) for at in range(1, len(points) - 1)]
    mitres = [0.0, *inner, 0.0]
    return [Leg(points[at], points[at + 1], mitres[at], mitres[at + 1]) for at in range(len(points) - 1)]


def straightened(points: Sequence[Point]) -> list[Point]:
    """Without points that are doubled or lie on a straight line."""
    kept: list[Point] = []
    for point in points:
        if kept and hypot(point[0] - kept[-1][0], point[1] - kept[-1][1]) < 0.05:
            continue
        if len(kept) > 1 and abs(_sine(kept[-2], kept[-1], point)) < FLAT and _onward(kept[-2], kept[-1], point):
            kept.pop()
        kept.append(point)
    return kept


def moved_clear(trace: Trace, sheets: Iterable[Sheet]) -> tuple[tuple[Point, ...], ...]:
    """The runs of a trace, each leg that runs too near beside a membrane moved away from it."""
    lines = [leg for one in sheets if one.role in SHIFTED for leg in legs_of(one.points)]
    return tuple(_moved(run, lines) for run in trace.runs)


def _moved(run: Sequence[Point], lines: list[Leg]) -> tuple[Point, ...]:
    legs = legs_of(run)
    offs = [_shift(leg, lines) for leg in legs]
    if not any(offs):
        return tuple(straightened(run))
    points = [_off(legs[0].a, legs[0], offs[0])]
    for (one, a), (other, b) in zip(zip(legs, offs, strict=True), zip(legs[1:], offs[1:], strict=True), strict=False):
        points.append(_corner(one, a, other, b))
    return (*points, _off(legs[-1].b, legs[-1], offs[-1]))


def _shift(leg: Leg, lines: list[Leg]) -> float:
    """How far a leg moves to its left to keep clear; 0 where it is."""
    best = 0.0
    for one in lines:
        if abs(leg.along[0] * one.along[1] - leg.along[1] * one.along[0]) > FLAT:
            continue
        (u0, v), (u1, _) = leg.uv(one.a), leg.uv(one.b)
        beside = min(max(u0, u1), leg.long) - max(min(u0, u1), 0.0)
        if beside > min(ALONG, 0.5 * leg.long) and 0.4 < abs(v) < LEAST:
            away = (LEAST - abs(v)) * (-1 if v > 0 else 1)
            if abs(away) > abs(best):
                best = away
    return best


def _off(point: Point, leg: Leg, off: float) -> Point:
    c, s = leg.along
    return point[0] - s * off, point[1] + c * off


def _corner(one: Leg, a: float, other: Leg, b: float) -> Point:
    """Where two moved legs meet."""
    p, q = _off(one.b, one, a), _off(other.a, other, b)
    (c, s), (d, t) = one.along, other.along
    cross = c * t - s * d
    share = ((q[0] - p[0]) * t - (q[1] - p[1]) * d) / cross
    return p[0] + share * c, p[1] + share * s


def _mitre(a: Point, b: Point, c: Point) -> float:
    """Half the line's width times the tangent of half the turn."""
    sine, onward = abs(_sine(a, b, c)), _onward(a, b, c)
    cosine = (1 if onward else -1) * max(0.0, 1 - sine * sine) ** 0.5
    return min(WIDTH, WIDTH / 2 * sine / max(0.3, 1 + cosine))


def _sine(a: Point, b: Point, c: Point) -> float:
    ux, uy, vx, vy = b[0] - a[0], b[1] - a[1], c[0] - b[0], c[1] - b[1]
    return (ux * vy - uy * vx) / max(1e-9, hypot(ux, uy) * hypot(vx, vy))


def _onward(a: Point, b: Point, c: Point) -> bool:
    return (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1]) > 0
