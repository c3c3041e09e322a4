"""Temperature, saturation and vapour pressure through the section, by thickness and by equivalent air layer."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from layerfolio.drawing.figures import Units
from layerfolio.drawing.geometry import parallels
from layerfolio.drawing.hatches.strokes import strokes
from layerfolio.drawing.marks import Circle, Clip, Line, Mark, Point
from layerfolio.drawing.moisture_axes import GRID, Axis, axis, dashed, figures, grid, polyline
from layerfolio.drawing.moisture_view import MonthView
from layerfolio.formulas.moisture import saturation_pressure
from layerfolio.glossary import term
from layerfolio.studies.condensation.types import Node, Run
from layerfolio.units.show import in_units

MAIN, SECOND, WOULD = 0.70, 0.35, 0.30
WOULD_DASH = (2.0, 1.0)
SURPLUS_PITCH = 1.3
DOT = 0.9
SEEN = 0.8  # mm: a lower lobe shows no hatch
PLANE = 0.35
FIGURE_GAP = 1.6
OVERHANG = 1.0  # faces run above a chart


@dataclass(frozen=True, slots=True)
class Panel:
    """One way of laying the section along a chart: `place` of each node, ends with the air beside them, faces."""

    left: float
    right: float
    place: Callable[[Node], float]
    faces: tuple[float, ...]
    first: float  # the outermost node
    last: float

    def across(self, nodes: Sequence[Node], values: Sequence[float], ends: tuple[float, float]) -> list[Point]:
        """Points of one quantity through the air outside, every node, and the room."""
        inner = [(self.place(node), value) for node, value in zip(nodes, values, strict=True)]
        return [(self.left, ends[0]), (self.first, ends[0]), *inner, (self.last, ends[1]), (self.right, ends[1])]


@dataclass(frozen=True, slots=True)
class Row:
    """Charts of one quantity side by side; their curves on paper, for what is set beside them."""

    marks: tuple[Mark, ...]
    curves: tuple[tuple[Point, ...], ...]
    axis: Axis
    hatched: bool = False


def shown_temperature(theta: float, units: Units) -> float:
    """In degC, or in degF where customary units come first."""
    return in_units(theta, term("theta").customary) if units == "customary" else theta


def temperature_row(
    run: Run, months: Sequence[MonthView], panels: Sequence[Panel], top: float, bottom: float, units: Units,
    planes: Sequence[int],
) -> Row:  # fmt: skip
    """Both months in one chart, the worst in the strong line."""
    every = [shown_temperature(t, units) for one in months for t in (*one.profile.temperature, one.outside, one.inside)]
    values = axis(min(every), max(every), bottom, top, lines=6)
    marks = _frames(values, panels, run, planes)
    curves = []
    for month in reversed(months):
        for panel in panels:
            line = [shown_temperature(t, units) for t in month.profile.temperature]
            ends = shown_temperature(month.outside, units), shown_temperature(month.inside, units)
            found = polyline(
                _on(values, panel.across(run.nodes, line, ends)), MAIN if month.worst else SECOND, role="temperature"
            )
            marks.append(found)
            curves.append(found.points)
    return Row(tuple(marks), tuple(curves), values)


def pressure_axis(months: Sequence[MonthView], top: float, bottom: float) -> Axis:
    """From nothing to the highest pressure of any month shown."""
    every = [p for one in months for p in (*one.profile.saturation, *one.profile.pressure, *_air_saturation(one))]
    found = axis(0.0, max(every), bottom, top)
    count = len(found.ticks) - 1
    if count > 3 and count % 2:  # so that a lower chart has figures between
        found = replace(found, high=found.high + found.step)
    return found


def pressure_row(run: Run, month: MonthView, panels: Sequence[Panel], values: Axis, planes: Sequence[int]) -> Row:
    """Saturation and actual pressure of one month; of the worst one also what would be if nothing condensed."""
    marks = _frames(values, panels, run, planes)
    curves: list[tuple[Point, ...]] = []
    surplus: list[Mark] = []
    first = first_pass(run, month) if month.worst and month.profile.held else None
    for panel in panels:
        saturation = panel.across(run.nodes, month.profile.saturation, _air_saturation(month))
        ends = month.profile.pressure[0], month.profile.pressure[-1]
        actual = panel.across(run.nodes, month.profile.pressure, ends)
        if first:
            would = panel.across(run.nodes, first, ends)
            surplus += _surplus(_on(values, would), _on(values, saturation))
            marks.append(polyline(_on(values, would), WOULD, WOULD_DASH, role="first pass"))
        for points, width, role in ((saturation, SECOND, "saturation"), (actual, MAIN, "pressure")):
            found = polyline(_on(values, points), width, role=role)
            marks.append(found)
            curves.append(found.points)
        for node in month.profile.held:
            at = panel.place(run.nodes[node]), values.at(month.profile.pressure[node])
            marks.append(Circle(at, DOT, fill="black", role="plane dot"))
    return Row((*surplus, *marks), tuple(curves), values, bool(surplus))


def first_pass(run: Run, month: MonthView) -> tuple[float, ...]:
    """The straight line between both ends over the equivalent air layers: as if nothing condensed."""
    pressure, whole = month.profile.pressure, run.nodes[-1].s_d
    return tuple(pressure[0] + (pressure[-1] - pressure[0]) * node.s_d / whole for node in run.nodes)


def _air_saturation(month: MonthView) -> tuple[float, float]:
    return saturation_pressure(month.outside), saturation_pressure(month.inside)


def _on(values: Axis, points: Sequence[Point]) -> list[Point]:
    return [(x, values.at(value)) for x, value in points]


def _frames(values: Axis, panels: Sequence[Panel], run: Run, planes: Sequence[int]) -> list[Mark]:
    """Grid, faces and wet planes of every panel; figures at the left of the first."""
    marks: list[Mark] = []
    top, bottom = values.end, values.start
    for number, panel in enumerate(panels):
        marks += grid(values, panel.left, panel.right)
        marks += [Line(((x, bottom), (x, top)), 0.25, role="axis") for x in (panel.left,)]
        wet = [panel.place(run.nodes[node]) for node in planes]
        marks += [dashed(x, top + OVERHANG, bottom) for x in panel.faces if all(abs(x - at) > 0.3 for at in wet)]
        marks += [Line(((x, top + OVERHANG), (x, bottom)), PLANE, role="plane line") for x in wet]
        if number == 0:
            marks += figures(values, panel.left - FIGURE_GAP)
    return marks


def _surplus(would: Sequence[Point], saturation: Sequence[Point]) -> list[Mark]:
    """Slanted lines where the first pass lies above saturation."""
    marks: list[Mark] = []
    for outline in _lobes(would, saturation):
        half = len(outline) // 2
        if max(u - low for (_, u), (_, low) in zip(outline[:half], reversed(outline[half:]), strict=True)) < SEEN:
            continue
        marks += [Clip(tuple(outline), strokes(parallels(tuple(outline), 45.0, SURPLUS_PITCH), GRID))]
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
