"""Temperature, saturation and vapour pressure through the section, by thickness and by equivalent air layer."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from layerfolio.drawing.figures import Units
from layerfolio.drawing.marks import Circle, Line, Mark, Point
from layerfolio.drawing.moisture_axes import Axis, axis, dashed, figures, grid, polyline
from layerfolio.drawing.moisture_surplus import first_pass, surplus
from layerfolio.drawing.moisture_view import MonthView
from layerfolio.formulas.moisture import saturation_pressure
from layerfolio.glossary import term
from layerfolio.studies.condensation.types import Node, Run
from layerfolio.units.show import in_units

MAIN, SECOND, WOULD = 0.70, 0.35, 0.30
WOULD_DASH = (2.0, 1.0)
DOT = 0.9
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
    hatched: list[Mark] = []
    first = first_pass(run, month) if month.worst and month.profile.held else None
    for panel in panels:
        saturation = panel.across(run.nodes, month.profile.saturation, _air_saturation(month))
        ends = month.profile.pressure[0], month.profile.pressure[-1]
        actual = panel.across(run.nodes, month.profile.pressure, ends)
        if first:
            would = panel.across(run.nodes, first, ends)
            hatched += surplus(_on(values, would), _on(values, saturation))
            marks.append(polyline(_on(values, would), WOULD, WOULD_DASH, role="first pass"))
        for points, width, role in ((saturation, SECOND, "saturation"), (actual, MAIN, "pressure")):
            found = polyline(_on(values, points), width, role=role)
            marks.append(found)
            curves.append(found.points)
        for node in month.profile.held:
            at = panel.place(run.nodes[node]), values.at(month.profile.pressure[node])
            marks.append(Circle(at, DOT, fill="black", role="plane dot"))
    return Row((*hatched, *marks), tuple(curves), values, bool(hatched))


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
