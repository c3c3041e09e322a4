"""Sheets of a bracing panel: seams, studs, blocking, and fasteners at their true spacing."""

from collections.abc import Iterable, Sequence
from itertools import pairwise

from layerfolio.drawing.geometry import rectangle
from layerfolio.drawing.marks import Curve, Line, Mark
from layerfolio.drawing.wall_views import LineView, PanelView

SEAM, STUD, BLOCK = 0.35, 0.2, 0.25
STUD_DASH = (1.6, 0.8)
TICK, TICK_WIDTH = 0.9, 0.25  # of a fastener, mm on paper
CLOSEST = 1.2  # mm on paper: closer fasteners would run together
BLOCKING = 0.038  # m, depth of blocking as drawn
LESS = 0.02  # m: a strip that is none
INSET = 0.010  # m of the rows of fasteners from a sheet's edge, as drawn
Box = tuple[float, float, float, float]


def sheets_of(panel: PanelView, view: LineView) -> list[Box]:
    """The sheets of one panel, m, from its start and from the floor; the whole panel where nothing tells their size."""
    if view.sheet is None:
        return [(panel.start, 0.0, panel.start + panel.length, panel.height)]
    xs = _edges(panel.start, panel.length, view.sheet.width)
    ys = _edges(0.0, panel.height, view.sheet.height)
    return [(a, c, b, d) for a, b in pairwise(xs) for c, d in pairwise(ys)]


def _edges(start: float, length: float, step: float) -> list[float]:
    count = int((length - LESS) / step)
    return [start, *(start + step * number for number in range(1, count + 1)), start + length]


def are_drawn(view: LineView, scale: float) -> bool:
    """Whether the fasteners are far enough apart on paper to be drawn."""
    apart = [one for one in (view.edge, view.field) if one]
    return bool(view.edge) and not view.let_in and min(apart) * 1000 / scale >= CLOSEST


def sheet_marks(view: LineView, panel: PanelView, scale: float) -> list[Mark]:
    """Studs, seams, blocking and fasteners of one panel, on paper."""
    factor = 1000 / scale
    sheets = sheets_of(panel, view)
    marks: list[Mark] = [*_studs(view, panel, sheets, factor), *_seams(panel, sheets, factor)]
    if view.blocked and view.sheet is not None:
        marks += _blocking(panel, sheets, factor)
    if are_drawn(view, scale):
        strokes = [one for sheet in sheets for one in _fasteners(view, panel, sheet, factor)]
        commands = tuple(command for a, b in strokes for command in (("M", *a), ("L", *b)))
        marks.append(Curve(commands, TICK_WIDTH, role="panel fasteners"))
    return marks


def _stud_places(view: LineView, panel: PanelView) -> list[float]:
    """Studs at their spacing from the panel's start; at its ends they lie under edges."""
    if not view.stud:
        return []
    count = int((panel.length - LESS) / view.stud)
    return [panel.start + view.stud * number for number in range(1, count + 1)]


def _studs(view: LineView, panel: PanelView, sheets: Sequence[Box], factor: float) -> list[Mark]:
    seams = {round(x, 4) for a, _, b, _ in sheets for x in (a, b)}
    high = panel.height * factor
    places = [x for x in _stud_places(view, panel) if round(x, 4) not in seams]
    return [Line(((x * factor, 0.0), (x * factor, high)), STUD, STUD_DASH, role="stud behind") for x in places]


def _seams(panel: PanelView, sheets: Sequence[Box], factor: float) -> list[Mark]:
    xs = sorted({round(a, 6) for a, _, _, _ in sheets if a > panel.start + LESS})
    ys = sorted({round(c, 6) for _, c, _, _ in sheets if c > LESS})
    left, right, high = panel.start * factor, (panel.start + panel.length) * factor, panel.height * factor
    upright = [Line(((x * factor, 0.0), (x * factor, high)), SEAM, role="seam") for x in xs]
    return [*upright, *(Line(((left, y * factor), (right, y * factor)), SEAM, role="seam") for y in ys)]


def _blocking(panel: PanelView, sheets: Sequence[Box], factor: float) -> list[Mark]:
    """Behind level seams, from stud to stud."""
    ys = sorted({round(c, 6) for _, c, _, _ in sheets if c > LESS})
    left, right = panel.start * factor, (panel.start + panel.length) * factor
    half = max(BLOCKING / 2 * factor, 0.5)
    boxes = [rectangle(left, y * factor - half, right, y * factor + half) for y in ys]
    return [Line((*box, box[0]), BLOCK, STUD_DASH, role="blocking") for box in boxes]


def _fasteners(view: LineView, panel: PanelView, sheet: Box, factor: float) -> Iterable[tuple[tuple, tuple]]:
    """Strokes of one sheet: round its edges, then along the studs between them."""
    x0, y0, x1, y1 = sheet
    half, inset = TICK / 2, max(INSET * factor, TICK / 2 + 0.15)
    for y, side in ((y0, 1), (y1, -1)):
        for x in _steps(x0, x1, view.edge):
            at = y * factor + side * inset
            yield (x * factor, at - half), (x * factor, at + half)
    for x, side in ((x0, 1), (x1, -1)):
        for y in _steps(y0, y1, view.edge):
            at = x * factor + side * inset
            yield (at - half, y * factor), (at + half, y * factor)
    if view.field:
        for x in (one for one in _stud_places(view, panel) if x0 + LESS < one < x1 - LESS):
            for y in _steps(y0, y1, view.field):
                yield (x * factor - half, y * factor), (x * factor + half, y * factor)


def _steps(start: float, end: float, apart: float) -> list[float]:
    """True spacing from the middle outward, clear of both ends."""
    count = int((end - start - apart / 2) / apart)
    first = (start + end - count * apart) / 2
    return [first + apart * number for number in range(count + 1)]
