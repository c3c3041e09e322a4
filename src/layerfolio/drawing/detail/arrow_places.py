"""Arrows of moving air in the widest part of their cavity that no control line takes."""

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from layerfolio.drawing.air import LEAST, LINE
from layerfolio.drawing.detail.control_legs import Leg
from layerfolio.drawing.detail.model import Arrow, Detail
from layerfolio.drawing.geometry import Outline, contains, direction
from layerfolio.drawing.marks import Point

FACE = 0.5  # mm that a face or a membrane takes
PARALLEL = 0.05


def placed(detail: Detail, legs: Sequence[Leg]) -> tuple[Arrow, ...]:
    """The arrows of a detail on paper; one for which a cavity has no room is left out, as in sections."""
    found = []
    for one in detail.arrows:
        space = _clear(one, detail, legs)
        if space is None:
            found.append(one)
        elif space[0] >= LEAST:
            found.append(replace(one, at=_moved(one, space[1])))
    return tuple(found)


def _clear(one: Arrow, detail: Detail, legs: Sequence[Leg]) -> tuple[float, float] | None:
    """Width and middle (across, from the arrow) of the widest clear stretch; None outside any cavity."""
    piece = next((piece for piece in detail.pieces if piece.family == "air" and contains(piece.outline, one.at)), None)
    if piece is None:
        return None
    c, s = direction(one.turn)
    across = [_off(one, corner, c, s) for corner in piece.outline]
    low, high = _faces_beside(one, piece.outline, c, s) or (min(across), max(across))
    edges = [(low, FACE), (high, FACE)]
    for leg in legs:
        if abs(c * leg.along[1] - s * leg.along[0]) < PARALLEL and low < (off := _off(one, leg.a, c, s)) < high:
            edges.append((off, LINE))
    edges.sort()
    gaps = [((b - wb) - (a + wa), (a + wa + b - wb) / 2) for (a, wa), (b, wb) in pairwise(edges)]
    return max(gaps)


def _faces_beside(one: Arrow, outline: Outline, c: float, s: float) -> tuple[float, float] | None:
    """Where a line square to the arrow leaves the cavity, on either side."""
    cuts = []
    for at in range(len(outline)):
        (ax, ay), (bx, by) = outline[at - 1], outline[at]
        ua, ub = (c * (x - one.at[0]) + s * (y - one.at[1]) for x, y in ((ax, ay), (bx, by)))
        if (ua > 0) != (ub > 0):
            share = ua / (ua - ub)
            cuts.append(_off(one, (ax + share * (bx - ax), ay + share * (by - ay)), c, s))
    left, right = [v for v in cuts if v > 0], [v for v in cuts if v < 0]
    return (max(right), min(left)) if left and right else None


def _off(one: Arrow, point: Point, c: float, s: float) -> float:
    return c * (point[1] - one.at[1]) - s * (point[0] - one.at[0])


def _moved(one: Arrow, off: float) -> Point:
    c, s = direction(one.turn)
    return one.at[0] - s * off, one.at[1] + c * off
