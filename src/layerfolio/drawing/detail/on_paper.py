"""A detail brought from building millimetres to paper millimetres: the same types, other lengths."""

from dataclasses import replace

from layerfolio.drawing.detail.model import Detail
from layerfolio.drawing.geometry import Outline, bounds
from layerfolio.drawing.marks import Point

Box = tuple[float, float, float, float]


def on_paper(detail: Detail, scale: float = 1.0, by: Point = (0.0, 0.0)) -> Detail:
    """Every length divided by `scale`, then everything shifted by `by` (paper mm). Paths without length are left out."""
    dx, dy = by

    def at(point: Point) -> Point:
        return point[0] / scale + dx, point[1] / scale + dy

    def path(points: tuple[Point, ...]) -> tuple[Point, ...]:
        return tuple(map(at, points))

    across = {"x": dy, "y": dx}
    return replace(
        detail,
        pieces=tuple(replace(one, outline=path(one.outline)) for one in detail.pieces if len(one.outline) > 2),
        sheets=tuple(replace(one, points=path(one.points)) for one in detail.sheets if len(one.points) > 1),
        traces=tuple(
            replace(one, runs=tuple(path(run) for run in one.runs if len(run) > 1), gaps=path(one.gaps))
            for one in detail.traces
        ),
        notes=tuple(replace(one, at=path(one.at)) for one in detail.notes if one.at),
        measures=tuple(
            replace(one, start=at(one.start), end=at(one.end), line=one.line / scale + across[one.axis])
            for one in detail.measures
        ),
        breaks=tuple(replace(one, a=at(one.a), b=at(one.b)) for one in detail.breaks if one.a != one.b),
        arrows=tuple(replace(one, at=at(one.at)) for one in detail.arrows),
        words=tuple(replace(one, at=at(one.at)) for one in detail.words),
        bubbles=tuple(replace(one, at=at(one.at)) for one in detail.bubbles),
        slope=(at(detail.slope[0]), detail.slope[1]) if detail.slope else None,
        clip=path(detail.clip),
    )  # fmt: skip


def cut_box(detail: Detail) -> Box:
    """What the cut itself takes: the pieces within the clip, sheets but the ground, control lines, breaks."""
    points: list[Point] = [point for one in detail.pieces for point in one.outline]
    if detail.clip:
        points = [_held(point, bounds(detail.clip)) for point in points] or list(detail.clip)
    points += [point for one in detail.sheets if one.role != "ground" for point in one.points]
    points += [point for one in detail.traces for run in one.runs for point in run]
    points += [point for one in detail.breaks for point in (one.a, one.b)]
    return bounds(points) if points else (0.0, 0.0, 1.0, 1.0)


def pieces_box(detail: Detail) -> Box:
    """Of the pieces alone."""
    points = [point for one in detail.pieces for point in one.outline]
    return bounds(points) if points else (0.0, 0.0, 1.0, 1.0)


def grown(box: Box, by: float) -> Box:
    return box[0] - by, box[1] - by, box[2] + by, box[3] + by


def corners(box: Box) -> Outline:
    """The box as an outline."""
    return (box[0], box[1]), (box[2], box[1]), (box[2], box[3]), (box[0], box[3])


def _held(point: Point, box: Box) -> Point:
    return min(max(point[0], box[0]), box[2]), min(max(point[1], box[1]), box[3])
