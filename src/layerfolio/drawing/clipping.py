"""Polylines cut off at any simple outline, and curves as polylines: for writers that know no clip."""

from collections.abc import Iterable, Sequence
from itertools import pairwise

from layerfolio.drawing.geometry import Outline, bounds, contains
from layerfolio.drawing.marks import Curve, Point

STEPS = 6  # pieces of one Bezier
EDGE = 1e-9


def inside(points: Sequence[Point], outlines: Iterable[Outline]) -> list[tuple[Point, ...]]:
    """The parts of a polyline that lie inside all outlines."""
    runs = [tuple(points)]
    for outline in outlines:
        box = bounds(outline)
        runs = [part for run in runs for part in _inside(run, outline, box)]
    return runs


def _inside(points: tuple[Point, ...], outline: Outline, box: tuple[float, float, float, float]) -> list[tuple[Point, ...]]:
    x0, y0, x1, y1 = bounds(points)
    if x0 > box[2] or x1 < box[0] or y0 > box[3] or y1 < box[1]:
        return []
    found: list[list[Point]] = []
    joined = False
    for a, b in pairwise(points):
        cuts = [0.0, *sorted(_crossings(a, b, outline)), 1.0]
        for start, end in pairwise(cuts):
            if end - start < EDGE:
                continue
            if not contains(outline, _on(a, b, (start + end) / 2)):
                joined = False
            elif joined:
                found[-1].append(_on(a, b, end))
            else:
                found.append([_on(a, b, start), _on(a, b, end)])
                joined = True
    return [tuple(one) for one in found]


def _crossings(a: Point, b: Point, outline: Outline) -> list[float]:
    """Shares of the segment at which it meets the outline's edges."""
    found = []
    dx, dy = b[0] - a[0], b[1] - a[1]
    for number, (cx, cy) in enumerate(outline):
        ex, ey = outline[number - 1][0] - cx, outline[number - 1][1] - cy
        under = dx * ey - dy * ex
        if abs(under) < 1e-12:
            continue
        share = ((cx - a[0]) * ey - (cy - a[1]) * ex) / under
        along = ((cx - a[0]) * dy - (cy - a[1]) * dx) / under
        if EDGE < share < 1 - EDGE and -EDGE <= along <= 1 + EDGE:
            found.append(share)
    return found


def _on(a: Point, b: Point, share: float) -> Point:
    return a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])


def polylines(curve: Curve) -> list[tuple[Point, ...]]:
    """The strokes of a path, Beziers as short pieces."""
    found: list[list[Point]] = []
    for kind, *values in curve.commands:
        match kind:
            case "M":
                found.append([(values[0], values[1])])
            case "L":
                found[-1].append((values[0], values[1]))
            case "C":
                found[-1] += _bezier(found[-1][-1], values)
            case "Z":
                found[-1].append(found[-1][0])
    return [tuple(one) for one in found if len(one) > 1]


def _bezier(start: Point, values: Sequence[float]) -> list[Point]:
    (x0, y0), (x1, y1, x2, y2, x3, y3) = start, values
    points = []
    for step in range(1, STEPS + 1):
        t = step / STEPS
        a, b, c, d = (1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3
        points.append((a * x0 + b * x1 + c * x2 + d * x3, a * y0 + b * y1 + c * y2 + d * y3))
    return points
