"""Nails and panels: the rows of the set's own fastening table; what fastens the panels and ties the plate of each line."""

from typing import Any

from layerfolio.catalogue.structure_lists import NailRow, nailing
from layerfolio.sheets.blocks import Column, Row, Table
from layerfolio.sheets.bracing_views import LET_IN, shank
from layerfolio.sheets.desk import Desk
from layerfolio.sheets.figures import NONE, NOT_GIVEN
from layerfolio.sheets.markup import plain
from layerfolio.sheets.structure_parts import length_unit, long, thick
from layerfolio.studies.structure_types import WallLineStudy

YES_NO = {True: "yes", False: "no", None: NOT_GIVEN}


def nailing_table(desk: Desk) -> Table | None:
    """The set's rows for plates, studs and panels; None where the set carries none."""
    boards = has_boards(desk)
    rows = [one for one in nailing(desk.dossier.project.code.set) if boards or not one.of_boards]
    if not rows:
        return None
    columns = (
        Column("Connection", "", 0), Column("Nails", "", 38), Column("Number", "", 16, "right"),
        Column("Spacing", length_unit(desk.system), 26, "right"), Column("Between", length_unit(desk.system), 24, "right"),
        Column("Src", "", 13),
    )  # fmt: skip
    return Table(columns, tuple(_nails(desk, one) for one in rows))


def has_boards(desk: Desk) -> bool:
    """Whether a line is braced by boards, or a layer is one that braces."""
    lines = desk.dossier.wall_lines.values()
    layers = (layer for one in desk.dossier.assemblies.values() for layer in one.layers)
    return any(not let_in(one) for one in lines) or any("bracing" in layer.serves for layer in layers)


def let_in(one: WallLineStudy) -> bool:
    """Whether a line is braced by bands or boards let into its studs."""
    return getattr(one.stated, "method", None) == LET_IN


def _nails(desk: Desk, one: NailRow) -> Row:
    """A row for braced panels in bold."""
    detail = f"**{plain(one.detail)}**" if one.of_panels else plain(one.detail)
    apart = [NONE if value is None else long(value, desk.system) for value in (one.spacing, one.field)]
    number = NONE if one.count is None else str(one.count)
    return Row((detail, plain(one.nail), number, *apart, desk.book.origin_mark(one.origin)))


def panel_table(desk: Desk, lines: dict[str, WallLineStudy]) -> Table:
    """Board and fasteners of each line, as stated."""
    system = desk.system
    columns = (
        Column("Line", "", 12), Column("Panels", "grade, thickness", 0),
        Column("Fasteners", "length x diameter", 40), Column("Edges", length_unit(system), 20, "right"),
        Column("Between", length_unit(system), 20, "right"), Column("Edges blocked", "", 25),
        Column("Gypsum opposite", "", 28),
    )  # fmt: skip
    return Table(columns, tuple(_panel(desk, name, one, system) for name, one in lines.items()))


def _panel(desk: Desk, name: str, one: WallLineStudy, system: str) -> Row:
    stated = one.stated
    found = getattr(stated, "panel_fastening", None)
    kind = getattr(found, "kind", "")
    nails = f"{kind}s {shank(found.shank, system)}" if kind else NOT_GIVEN
    cells = (
        f"**{plain(name)}**", plain(board(desk, one)), plain(nails), long(getattr(found, "edge", None), system, True),
        long(getattr(found, "field", None), system, True), YES_NO[getattr(found, "blocked", None)],
        YES_NO[getattr(stated, "gypsum_opposite", None)],
    )  # fmt: skip
    return Row(cells, after=plain(_tie(stated, system)) or None)


ON = {"concrete": "on concrete", "wood": "on wood"}


def _tie(stated: Any, system: str) -> str:
    """What ties the bottom plate of a line to the framing below, as stated; empty where nothing is."""
    plate, strips = getattr(stated, "plate_nailing", None), getattr(stated, "plate_strips", None)
    unit = "" if system == "customary" else "\u00a0mm"
    said = [ON[stands]] if (stands := getattr(stated, "plate_on", None)) else []
    if plate:
        said.append(f"nails {shank(plate.nail, system)} at {long(plate.spacing, system)}{unit}")
    if strips:
        size = f"{thick(strips.width, system)} x {thick(strips.thickness, system)}{unit}"
        said.append(f"strips of steel {size} at {long(strips.spacing, system)}{unit}")
    if getattr(stated, "sheathing_lap", None):
        said.append("sheathing lapped over the floor framing")
    return f"Bottom plate: {'; '.join(said)}" if said else ""


def board(desk: Desk, one: WallLineStudy) -> str:
    """The board of a line's panels: stated, else the layer that serves bracing."""
    stated = getattr(one.stated, "panel", None)
    layer = panel_layer(desk, one)
    thickness = getattr(stated, "thickness", None) or getattr(layer, "thickness", None)
    parts: list[Any] = [getattr(stated, "grade", None), getattr(stated, "span_rating", None), layer.title if layer else None]
    if thickness is not None:
        figure = long(thickness, desk.system)
        parts.append(figure if desk.system == "customary" else f"{figure}\u00a0mm")
    return ", ".join(filter(None, parts)) or NOT_GIVEN


def panel_layer(desk: Desk, one: WallLineStudy) -> Any:
    """The layer of the line's wall that its panels are; None where none is named."""
    assembly = desk.dossier.assemblies.get(one.assembly)
    if assembly is None:
        return None
    named = getattr(getattr(one.stated, "panel", None), "material", None)
    layers = assembly.layers
    return next((x for x in layers if named and named in (x.name, x.material)), None) or next(
        (x for x in layers if "bracing" in x.serves), None
    )
