"""Lines of bracing made ready to be drawn."""

from collections.abc import Sequence
from typing import Any

from layerfolio.drawing.marks import Drawing
from layerfolio.drawing.wall_elevation import wall_elevations
from layerfolio.drawing.wall_views import LineView, OpeningView, PanelView, SheetView
from layerfolio.sheets.blocks import Table
from layerfolio.sheets.bracing_tables import heights
from layerfolio.sheets.desk import Desk
from layerfolio.sheets.figures import NOT_GIVEN
from layerfolio.sheets.formats import FIELDS, ROOM
from layerfolio.sheets.measuring import table_height
from layerfolio.sheets.structure_parts import thick
from layerfolio.studies.structure_types import WallLineStudy
from layerfolio.units.quantity import Quantity
from layerfolio.units.show import length_figure

LET_IN = "LIB"
ASSUMED_SHEET = {"metric": (1.2, 2.4), "customary": (1.2192, 2.4384)}
"""Width and height in m: an assumption of the drawing, said under it; no figure of a source."""
HEADING = 8.5
TEXTS = 37.2
"""Of it the caution, the note under the tables and the heading take so much on the first page."""


def elevations(desk: Desk, lines: dict[str, WallLineStudy], above: Sequence[Table]) -> tuple[Drawing, ...]:
    """All lines to one scale, several to a drawing; the first takes what the tables above it leave of the page."""
    page = desk.dossier.project.project.page
    views = [view(desk, name, one, desk.system) for name, one in lines.items()]
    first = ROOM[page] - TEXTS - sum(_height(one, FIELDS[page]) for one in above)
    return wall_elevations(views, units=desk.system, width=FIELDS[page], room=ROOM[page] - HEADING, first=max(first, 0.0))


def _height(table: Table, width: float) -> float:
    """With its heading, the line of units and the last lines of its rows."""
    return 9.1 + 4.35 + table_height(table, width) + sum(4.35 for row in table.rows if row.after)


def view(desk: Desk, name: str, one: WallLineStudy, system: str) -> LineView:
    """One line; openings without a place are named in a note, because they cannot be drawn."""
    stated = one.stated
    panels = [PanelView(start, length, high) for (start, length), high in zip(one.panels, heights(one), strict=True)]
    listed = list(getattr(stated, "openings", None) or ())
    placed = [_opening(each) for each in listed if each.at is not None and each.along is not None]
    held = {True: "Hold-downs at the ends of panels.", False: "No hold-downs.", None: "Hold-downs: not given."}
    notes = [f"{fastening_note(stated, system)} {held[getattr(stated, 'hold_downs', None)]}"]
    notes += _about_openings(desk, one, listed)
    title = f"{getattr(stated, 'title', None) or 'line of bracing'}, built as {one.assembly}"
    board, nailed = getattr(stated, "panel", None), getattr(stated, "panel_fastening", None)
    return LineView(
        name, title, one.length, one.height, tuple(panels), tuple(placed), one.laid_out,
        bool(getattr(stated, "hold_downs", None)), tuple(notes), getattr(stated, "method", None) == LET_IN,
        _sheet(board, system), _stud(desk, one.assembly), _metres(nailed, "edge"), _metres(nailed, "field"),
        getattr(nailed, "blocked", None),
    )  # fmt: skip


def _about_openings(desk: Desk, one: WallLineStudy, listed: Sequence[Any]) -> list[str]:
    """What the elevation cannot show of the openings, and what it takes where the file is silent."""
    if not listed:
        of_wall = [name for name, each in desk.dossier.openings.items() if each.wall == one.assembly]
        return ["The file states no openings of this line; those of the wall are not drawn."] if of_wall else []
    placed = [each for each in listed if each.at is not None and each.along is not None]
    low = [each for each in placed if each.sill is None]
    notes = []
    if len(placed) < len(listed):
        notes.append(f"{len(listed) - len(placed)} of {len(listed)} openings have no stated place and are not drawn.")
    if low:
        notes.append(f"{len(low)} of {len(listed)} openings have no stated sill and are drawn from the floor.")
    return notes


def _sheet(board: Any, system: str) -> SheetView:
    """Size of the sheets as stated; else the assumption that the drawing names."""
    width, high = _metres(board, "sheet_width"), _metres(board, "sheet_height")
    usual = ASSUMED_SHEET[system]
    return SheetView(width or usual[0], high or usual[1], bool(width and high))


def _stud(desk: Desk, assembly: str) -> float | None:
    """Spacing of the upright members of the wall's deepest framed layer, m."""
    made = desk.dossier.assemblies.get(assembly)
    framed = [one for one in made.layers if one.kind == "solid" and one.member and one.thickness] if made else []
    deepest = max(framed, key=lambda one: one.thickness.value, default=None)
    if deepest is None or deepest.member.direction != "vertical" or deepest.member.spacing is None:
        return None
    return deepest.member.spacing.value


def _metres(found: Any, name: str) -> float | None:
    value = getattr(found, name, None)
    return value.value if value else None


def _opening(stated: Any) -> OpeningView:
    sill = stated.sill.value if stated.sill else 0.0
    return OpeningView(stated.at.value, stated.along.value, sill, stated.height.value if stated.height else None)


def fastening_note(stated: Any, system: str) -> str:
    """What fastens the panels, in one line."""
    found = getattr(stated, "panel_fastening", None)
    if found is None or not found.kind:
        return "Fasteners of the panels: not given."
    apart = ((found.edge, "along edges"), (found.field, "between"))
    spaced = [f"at {_short(value, system)} {words}" for value, words in apart if value]
    blocked = {True: "all edges blocked", False: "edges not blocked", None: "blocking not given"}[found.blocked]
    return f"{found.kind.capitalize()}s {shank(found.shank, system)}, {', '.join([*spaced, blocked])}."


def shank(one: Any, system: str) -> str:
    """Length by diameter of a nail, screw or staple."""
    if one is None:
        return NOT_GIVEN
    sizes = f"{thick(one.length, 'metric')} x {thick(one.diameter, 'metric')}\u00a0mm"
    if system == "metric":
        return sizes
    inches = thick(one.diameter, system).partition(" (")[0]
    return f"{length_figure(one.length, system)} x {inches} ({sizes})"


def _short(value: Quantity, system: str) -> str:
    figure = length_figure(value, system)
    return f"{figure}\u00a0mm" if system == "metric" else figure
