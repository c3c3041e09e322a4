"""What would be if nothing condensed, and the area in which that lies over saturation."""

from collections.abc import Sequence

from layerfolio.drawing.geometry import parallels
from layerfolio.drawing.hatches.strokes import strokes
from layerfolio.drawing.marks import Clip, Mark, Point
from layerfolio.drawing.moisture_axes import GRID
from layerfolio.drawing.moisture_view import MonthView
from layerfolio.studies.condensation.types import Run

PITCH = 1.3
SEEN = 0.8  # mm: a lower lobe shows no hatch


def first_pass(run: Run, month: MonthView) -> tuple[float, ...]:
    """The straight line between both ends over the equivalent air layers: as if nothing condensed."""
    pressure, whole = month.profile.pressure, run.nodes[-1].s_d
    return tuple(pressure[0] + (pressure[-1] - pressure[0]) * node.s_d / whole for node in run.nodes)


def surplus(would: Sequence[Point], saturation: Sequence[Point]) -> list[Mark]:
    """Slanted lines where the first pass lies above saturation."""
    marks: list[Mark] = []
    for outline in _lobes(would, saturation):
        half = len(outline) // 2
        if max(u - low for (_, u), (_, low) in zip(outline[:half], reversed(outline[half:]), strict=True)) < SEEN:
            continue
        marks += [Clip(tuple(outline), strokes(parallels(tuple(outline), 45.0, PITCH), GRID))]
    return [one for one in marks if one.marks]


def _lobes(upper: Sequence[Point], lower: Sequence[Point]) -> list[list[Point]]:
    """Outlines between two curves given at the same x, where the upper one is above; cut where they cross."""
    found: list[list[tuple[float, float, float]]] = []
    open_: list[tuple[float, float, float]] = []
    before = None
    for (x, u), (_, low) in zip(upper, lower, strict=True):
        gap = u - low
        if before is not None and before[3] * gap < 0:
            share = before[3] / (before[3] - gap)
            cut = before[0] + share * (x - before[0])
            level = before[1] + share * (u - before[1])
            open_.append((cut, level, level))
        if gap > 1e-9:
            open_.append((x, u, low))
        elif open_:
            if gap > -1e-9:
                open_.append((x, u, low))
            found.append(open_)
            open_ = []
        before = (x, u, low, gap)
    if open_:
        found.append(open_)
    return [[*((x, u) for x, u, _ in one), *((x, low) for x, _, low in reversed(one))] for one in found if len(one) > 1]
