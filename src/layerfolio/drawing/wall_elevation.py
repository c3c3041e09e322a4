"""Elevations of lines of bracing, drawn to one scale: panels, gaps, openings, hold-downs, what fastens them."""

from collections.abc import Sequence

from layerfolio.drawing.extent import extent
from layerfolio.drawing.figures import Units
from layerfolio.drawing.geometry import moved
from layerfolio.drawing.layout_scale import scale_text
from layerfolio.drawing.lettering import CAPITAL, LINE, SIZE, spread, wide, wrapped
from layerfolio.drawing.marks import Drawing, Group, Mark, Text
from layerfolio.drawing.wall_dimensions import chain, height, height_room, printed, steps, whole
from layerfolio.drawing.wall_foot import wall_foot
from layerfolio.drawing.wall_marks import TRIANGLE, wall_marks
from layerfolio.drawing.wall_panels import are_drawn, sheets_of
from layerfolio.drawing.wall_views import LineView, common_scale

ASSUMED = "Places of the panels are not stated: they are spread evenly here so that they can be drawn; gaps are not known."
SHEETS = "Seams: upright sheets of {}, from the start of each panel, are an assumption of this drawing."
CLOSE = "Fasteners are not drawn: at this scale they would run together."
BETWEEN = 3.4  # from one line to the next
LABEL = 1.2  # from the wall to the panel's name
CLEAR = -5.2  # so far left the names of panels may go, clear of the ticks of the height
TOP = 2.0  # of white, under the rule of a head


def wall_elevations(
    lines: Sequence[LineView], *, units: Units = "metric", width: float = 180.0, room: float = 190.0, first: float | None = None
) -> tuple[Drawing, ...]:
    """Drawings no taller than `room` where that can be, each with as many lines as it holds, a check bar and a key.

    `first`: what the page leaves to the first of them; passed over where no line fits it.
    """
    if not lines:
        return ()
    scale = _scale(lines, units, width)
    blocks = [_line(one, scale, units, width) for one in lines]
    foot = wall_foot(lines, scale, units, width)
    drawings: list[Drawing] = []
    beside = _tall(foot) + BETWEEN + TOP + 0.5
    for number, group in enumerate(_pages(blocks, room - beside, (first or room) - beside)):
        drawings.append(_drawing(number, [*group, foot], scale, units, width))
    return tuple(drawings)


def _scale(lines: Sequence[LineView], units: Units, width: float) -> int:
    """Room for the height's figure depends on the scale, the scale on the room: the narrower room serves both."""
    scale = common_scale(lines, units, width - 20.0)
    left = max(height_room(one, 1000 / scale, units) for one in lines)
    return common_scale(lines, units, min(width - 20.0, width - left - 5.0))


def _line(view: LineView, scale: int, units: Units, width: float) -> list[Mark]:
    """One elevation: its title at the top, notes at the foot; x from 0 to `width`, y as it comes."""
    factor = 1000 / scale
    left = height_room(view, factor, units)
    field = (-left, width - left)
    down = TRIANGLE + 1.0 if view.hold_downs else 0.0
    at = -down - 5.6
    links, second = chain(view, factor, units, at, field)
    over = at - (11.2 if second else 6.2)
    total = whole(view, factor, units, over)
    upright = height(view, factor, units)
    dimensions = Group("dimensions", (*links.marks, *total.marks, *upright.marks))
    wall = Group("wall", tuple(wall_marks(view, scale)))
    notes = _notes(view, -left, over, width, scale, units)
    words = [*_labels(view, factor, (CLEAR, field[1])), *_title(view, factor, -left, width), *notes]
    return [moved(one, 0.0, (left, 0.0)) for one in (wall, dimensions, Group("words", tuple(words)))]


def _labels(view: LineView, factor: float, field: tuple[float, float]) -> list[Mark]:
    """P1, P2 ... over the panels; the table has the same names. None where there is no room for all."""
    names = [f"P{number}" for number in range(1, len(view.panels) + 1)]
    if not names:
        return []
    middles = [(one.start + one.length / 2) * factor for one in view.panels]
    widths = [wide(one) + 1.0 for one in names]
    places = [-one for one in spread([-one for one in middles], widths)]
    if places[0] - widths[0] / 2 < field[0] or places[-1] + widths[-1] / 2 > field[1]:
        return []
    y = view.height * factor + LABEL
    return [Text((x, y), name, SIZE, anchor="middle", role="panel") for x, name in zip(places, names, strict=True)]


def _title(view: LineView, factor: float, left: float, width: float) -> list[Mark]:
    y = view.height * factor + LABEL + CAPITAL + 2.6
    name = Text((left, y), view.name, SIZE, "bold", role="title")
    start = left + wide(view.name, "bold") + 2.0
    title = wrapped(view.title, width - (start - left), 1)
    return [name, *(Text((start, y), words, SIZE, role="title") for words in title)]


def _notes(view: LineView, left: float, over: float, width: float, scale: float, units: Units) -> list[Mark]:
    notes = (*view.notes, *_assumed(view, scale, units))
    rows = [row for note in notes for row in wrapped(note, width, 3)]
    top = over - 3.2 - CAPITAL
    return [Text((left, top - number * LINE), row, SIZE, role="note") for number, row in enumerate(rows)]


def _assumed(view: LineView, scale: float, units: Units) -> list[str]:
    """What the drawing takes where the project file is silent, and what it leaves out at its scale."""
    if not view.panels or view.let_in:
        return [] if view.laid_out or not view.panels else [ASSUMED]
    found = [] if view.laid_out else [ASSUMED]
    if view.sheet is not None and not view.sheet.stated and any(len(sheets_of(one, view)) > 1 for one in view.panels):
        size = f"{printed(steps(view.sheet.width, units), units)} by {printed(steps(view.sheet.height, units), units)}"
        found.append(SHEETS.format(size + ("" if units == "customary" else " mm")))
    if view.edge and not are_drawn(view, scale):
        found.append(CLOSE)
    return found


def _tall(marks: Sequence[Mark]) -> float:
    _, low, _, high = extent(marks)
    return high - low


def _pages(blocks: list[list[Mark]], room: float, first: float) -> list[list[list[Mark]]]:
    """As many lines together as fit, at least one; the first page has a room of its own where one line fits it."""
    pages: list[list[list[Mark]]] = [[]]
    left = first if _tall(blocks[0]) <= first else room
    for one in blocks:
        more = _tall(one) + (BETWEEN if pages[-1] else 0.0)
        if pages[-1] and more > left:
            pages.append([])
            left, more = room, _tall(one)
        pages[-1].append(one)
        left -= more
    return pages


def _drawing(number: int, parts: list[list[Mark]], scale: int, units: Units, width: float) -> Drawing:
    """Parts below each other."""
    total = sum(map(_tall, parts)) + BETWEEN * (len(parts) - 1) + TOP + 0.5
    placed: list[Mark] = []
    y = total - TOP
    for part in parts:
        top = extent(part)[3]
        placed += [moved(one, 0.0, (0.0, y - top)) for one in part]
        y -= _tall(part) + BETWEEN
    name = "bracing elevations" if number == 0 else f"bracing elevations {number + 1}"
    return Drawing(name, width, total, tuple(placed), float(scale), scale_text(scale, units))
