"""Timber cut across, along the grain, and seen beyond the cut."""

from functools import cache
from itertools import pairwise
from math import atan2, ceil, cos, floor, hypot, pi, sin
from random import Random

from layerfolio.drawing.hatches.piece import Piece
from layerfolio.drawing.hatches.strokes import FINE, ROLE, smooth
from layerfolio.drawing.marks import Curve, Line, Mark, Point

POINTS = 72  # to a full ring
_SIDES = ((-1, -1), (1, 1), (1, -1), (-1, 1))  # where the pith lies; successive pieces never look the same way


def end_grain(piece: Piece) -> tuple[Mark, ...]:
    """Growth rings about a pith outside the piece; the piece's number chooses on which side."""
    rng = piece.generator("timber")
    least = min(piece.length, piece.depth)
    step = min(1.25, max(0.85, 0.15 * least))
    pith = _pith(piece, least)
    corners = [(x - pith[0], y - pith[1]) for x, y in _box_corners(piece)]
    nearest, farthest = _reach(piece, pith), max(hypot(x, y) for x, y in corners)
    first, last = _sector(corners)
    commands: list[tuple] = []
    radius = 0.4 * least + rng.random() * step
    while radius < farthest + 0.2:
        wobble = rng.uniform(0.05, 0.13), rng.choice((3, 4, 5)), rng.uniform(0, 2 * pi)
        if radius > nearest - 0.2:
            commands += _ring(piece, pith, radius, wobble, range(first, last + 1))
        radius += step * rng.uniform(0.82, 1.18)
    return piece.paper([Curve(tuple(commands), FINE, role=ROLE)] if commands else ())


def _pith(piece: Piece, least: float) -> Point:
    """The pith of the rings, 0.9 of the smaller side outside the longer face."""
    x0, y0, x1, y1 = piece.box
    across, upward = _SIDES[piece.number % 4]
    x, y = (x0 + x1) / 2, (y0 + y1) / 2
    if piece.length > piece.depth - 1e-6:  # a square piece must not turn on the last digit
        return x + across * 0.22 * piece.length, y + upward * (piece.depth / 2 + 0.9 * least)
    return x + across * (piece.length / 2 + 0.9 * least), y + upward * 0.22 * piece.depth


def _box_corners(piece: Piece) -> list[Point]:
    x0, y0, x1, y1 = piece.box
    return [(x0, y0), (x1, y0), (x1, y1), (x0, y1)]


def _reach(piece: Piece, pith: Point) -> float:
    """Distance of the pith from the piece's box."""
    x0, y0, x1, y1 = piece.box
    return hypot(max(x0 - pith[0], 0, pith[0] - x1), max(y0 - pith[1], 0, pith[1] - y1))


def _sector(corners: list[Point]) -> tuple[int, int]:
    """Numbers of the ring points between which the piece is seen from the pith, one more on either side."""
    middle = atan2(sum(y for _, y in corners), sum(x for x, _ in corners))
    off = [(atan2(y, x) - middle + pi) % (2 * pi) - pi for x, y in corners]
    unit = 2 * pi / POINTS
    return floor((middle + min(off)) / unit) - 1, ceil((middle + max(off)) / unit) + 1


def _ring(piece: Piece, pith: Point, radius: float, wobble: tuple[float, int, float], numbers: range) -> list[tuple]:
    """The stretches of one ring that touch the piece's box, with a point more at each end to smooth them alike."""
    amplitude, waves, phase = wobble
    points = []
    for number in numbers:
        c, s, angle = _unit(number % POINTS)
        r = radius + amplitude * sin(2 * waves * angle + phase)
        points.append((pith[0] + r * c, pith[1] + r * s))
    commands: list[tuple] = []
    for first, last in _stretches(points, piece.box):
        start, end = max(first - 1, 0), min(last + 2, len(points))
        curves = smooth(points[start:end])[first - start : last - start]
        commands += [("M", *points[first]), *curves]
    return commands


def _stretches(points: list[Point], box: tuple[float, float, float, float]) -> list[tuple[int, int]]:
    """First and last point of each run of chords that come near the box."""
    x0, y0, x1, y1 = box[0] - 0.3, box[1] - 0.3, box[2] + 0.3, box[3] + 0.3
    found: list[tuple[int, int]] = []
    for number, ((ax, ay), (bx, by)) in enumerate(pairwise(points)):
        if (ax < x0 and bx < x0) or (ax > x1 and bx > x1) or (ay < y0 and by < y0) or (ay > y1 and by > y1):
            continue
        if found and found[-1][1] == number:
            found[-1] = found[-1][0], number + 1
        else:
            found.append((number, number + 1))
    return found


@cache
def _unit(number: int) -> tuple[float, float, float]:
    """Cosine, sine and angle of one ring point."""
    angle = number * 2 * pi / POINTS
    return cos(angle), sin(angle), angle


def along_grain(piece: Piece, kind: str = "timber-board", step: tuple[float, float] = (0.89, 1.21)) -> tuple[Mark, ...]:
    """Lines along the grain that look ruled by hand; the distance of two lines is between the two steps."""
    rng = piece.generator(kind)
    x0, y0, x1, y1 = piece.box
    commands: list[tuple] = []
    y = y0 + min(0.75 * rng.uniform(*step), piece.depth / 2)
    while y < y1 - 0.35:
        commands += _grain_line(rng, x0, x1, y)
        y += rng.uniform(*step)
    return piece.paper([Curve(tuple(commands), FINE, role=ROLE)] if commands else ())


def _grain_line(rng: Random, x0: float, x1: float, y: float) -> list[tuple]:
    """One slow wave with a little tremble, broken now and then."""
    amplitude, wave, phase = rng.uniform(0.08, 0.18), rng.uniform(26, 46), rng.uniform(0, 2 * pi)
    x = x0 - rng.uniform(0, 30)  # so that not every line begins at the end of the piece
    commands: list[tuple] = []
    while x < x1:
        end = min(x + rng.uniform(18, 52), x1)
        if end > x0:
            stops = [max(x, x0), *_between(max(x, x0), end), end]
            run = [(at, y + amplitude * sin(2 * pi * at / wave + phase) + rng.uniform(-0.025, 0.025)) for at in stops]
            commands += [("M", *run[0]), *(("L", *one) for one in run[1:])]
        x = end + rng.uniform(1.2, 3.4)
    return commands


def _between(start: float, end: float) -> list[float]:
    count = max(1, round((end - start) / 2.5))
    return [start + (end - start) * number / count for number in range(1, count)]


def beyond(piece: Piece) -> tuple[Mark, ...]:
    """Timber seen beyond the cut: wider lines and a thin outline."""
    edge = Line((*piece.outline, piece.outline[0]), 0.25, role="beyond")
    return (*along_grain(piece, "timber-beyond", (1.5, 1.7)), edge)
