"""What is wrong with a leader: it crosses another, comes near a dot, runs through words or along a line."""

from collections.abc import Sequence
from itertools import combinations, pairwise
from math import dist, inf

from layerfolio.drawing.layout_leader import Column, Leader
from layerfolio.drawing.lines import distance, segments_cross
from layerfolio.drawing.marks import Point

CLEAR = 1.35  # of a leader from another's dot: white of both
APART = 2.2  # from dot to dot


def any_crossing(leaders: Sequence[Leader]) -> bool:
    """Whether two leaders cross, the strokes to further dots included."""
    return any(meet(leaders[pair[0]], leaders[pair[1]]) for pair in combinations(range(len(leaders)), 2))


def meet(one: Leader, other: Leader) -> bool:
    """Whether two leaders cross, the strokes to further dots included."""
    if segments_cross(one.dot, one.elbow, other.dot, other.elbow):
        return True
    if not one.tag.further and not other.tag.further:
        return False
    return any(segments_cross(*first, *second) for first in _strokes(one) for second in _strokes(other))


def _strokes(one: Leader) -> list[tuple[Point, Point]]:
    stops = (one.elbow, one.dot, *one.further)
    return list(pairwise(stops))


def harm(one: Leader, others: Sequence[Leader], column: Column, least: float = inf) -> float:
    """0 for a clear leader; crossings weigh most. From `least` on the sum is not carried further: it is no better."""
    found = _alone(one.dot, one.elbow, column)
    for other in others:
        if found >= least:
            break
        found += _between(one, other)
    return found


def _alone(dot: Point, elbow: Point, column: Column) -> float:
    """Harm of a leader without regard to others; asked of one leader many times while places are tried."""
    known = column.known.get((dot, elbow))
    if known is None:
        known = 10.0 * sum(obstacle.crossed_by(dot, elbow) for obstacle in column.obstacles)
        known += column.strips.excess(dot, elbow) if column.strips else 0.0
        column.known[dot, elbow] = known
    return known


def _between(one: Leader, other: Leader) -> float:
    if not one.tag.further and not other.tag.further:  # plain leaders with white of more than a dot's berth between their heights
        a, b, c, d = one.dot[1], one.elbow[1], other.dot[1], other.elbow[1]
        if (a - APART > c and a - APART > d and b - APART > c and b - APART > d) or (
            a + APART < c and a + APART < d and b + APART < c and b + APART < d
        ):
            return 0.0
    near = min(distance(other.dot, one.dot, one.elbow), distance(one.dot, other.dot, other.elbow))
    found = 8.0 * max(0.0, CLEAR - near) + 4.0 * max(0.0, APART - dist(one.dot, other.dot))
    return found + (100.0 if meet(one, other) else 0.0)


def total(leaders: Sequence[Leader], column: Column) -> float:
    """Of all leaders together."""
    return sum(harm(one, [*leaders[:at], *leaders[at + 1 :]], column) for at, one in enumerate(leaders))
