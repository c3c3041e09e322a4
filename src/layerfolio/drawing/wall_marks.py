"""The wall of an elevation: outline, panels, openings, hold-downs; paper mm, the floor at y 0, the line's start at x 0."""

from layerfolio.drawing.geometry import Outline, parallels, rectangle
from layerfolio.drawing.hatches.strokes import strokes
from layerfolio.drawing.marks import Clip, Curve, Line, Mark
from layerfolio.drawing.wall_panels import sheet_marks
from layerfolio.drawing.wall_views import LineView, OpeningView, PanelView

OUTLINE, EDGE, THIN, FLOOR, BRACE = 0.5, 0.35, 0.25, 0.7, 0.7
HATCH, WIDE_HATCH = 2.6, 5.2
BEYOND = 4.0  # the floor runs on at both ends
TRIANGLE = 2.6  # width of a hold-down's mark
DASH = (2.0, 1.0)


def wall_marks(view: LineView, scale: float) -> list[Mark]:
    """Hatch, panels, openings, outline, floor, hold-downs, in the order of painting."""
    factor = 1000 / scale
    long, high = view.length * factor, view.height * factor
    marks: list[Mark] = []
    for panel in view.panels:
        outline = panel_outline(panel, factor)
        if view.let_in:
            marks += brace_marks(outline)
            continue
        marks += panel_marks(outline, HATCH if view.sheet is None else WIDE_HATCH) + sheet_marks(view, panel, scale)
    for opening in view.openings:
        marks += _opening(opening, factor, high)
    marks.append(Curve(_closed(rectangle(0.0, 0.0, long, high)), OUTLINE, role="outline wall"))
    marks.append(Line(((-BEYOND, 0.0), (long + BEYOND, 0.0)), FLOOR, role="floor"))
    if view.hold_downs:
        marks += [hold_down(x) for x in panel_ends(view, factor)]
    return marks


def panel_outline(panel: PanelView, factor: float) -> Outline:
    """Its four corners on paper."""
    start = panel.start * factor
    return rectangle(start, 0.0, start + panel.length * factor, panel.height * factor)


def panel_marks(outline: Outline, pitch: float = HATCH) -> list[Mark]:
    """A panel: lines at 45 degrees inside its edge, wider apart where seams and fasteners lie over them."""
    hatch = strokes(parallels(outline, 45.0, pitch))
    clipped: list[Mark] = [Clip(outline, hatch)] if hatch else []
    return [*clipped, Curve(_closed(outline), OUTLINE, role="outline panel")]


def brace_marks(outline: Outline) -> list[Mark]:
    """A bay with a brace let in from corner to corner; which way it leans the project file does not say."""
    start, _, end, _ = outline
    return [Line((*outline, outline[0]), EDGE, DASH, role="outline bay"), Line((start, end), BRACE, role="brace")]


def opening_marks(outline: Outline, dashed: bool = False) -> list[Mark]:
    """An opening: white, with one thin diagonal; dashed where its height is not stated."""
    (x0, y0), _, (x1, y1), _ = outline
    marks: list[Mark] = [Curve(_closed(outline), fill="white", role="opening field")]
    marks.append(Line((*outline, outline[0]), EDGE, DASH if dashed else (), role="outline opening"))
    return [*marks, Line(((x0, y0), (x1, y1)), THIN, role="opening diagonal")]


def hold_down(x: float, y: float = 0.0) -> Mark:
    """An open triangle that hangs under the floor at the end of a panel."""
    corners = ((x, y - 0.6), (x + TRIANGLE / 2, y - 0.6 - TRIANGLE), (x - TRIANGLE / 2, y - 0.6 - TRIANGLE))
    return Curve(_closed(corners), EDGE, "white", role="hold-down")


def panel_ends(view: LineView, factor: float) -> list[float]:
    """The ends of the panels on paper, each once: two panels that touch share one."""
    ends = {round(x * factor, 3) for one in view.panels for x in (one.start, one.start + one.length)}
    return sorted(ends)


def _opening(opening: OpeningView, factor: float, high: float) -> list[Mark]:
    start, sill = opening.start * factor, opening.sill * factor
    top = high if opening.height is None else min(high, sill + opening.height * factor)
    return opening_marks(rectangle(start, sill, start + opening.width * factor, top), opening.height is None)


def _closed(outline: Outline) -> tuple[tuple, ...]:
    first, *rest = outline
    return (("M", *first), *(("L", *one) for one in rest), ("Z",))
