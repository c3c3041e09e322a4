"""Lines of bracing in the walls: their panels, openings and nails. Read only where a project states them."""

from __future__ import annotations

import re

from layerfolio.reading.definitions import Definitions
from layerfolio.reading.groups import ListOf, Nested
from layerfolio.reading.measures import Measure
from layerfolio.reading.record import Frozen, Reader, Record, key
from layerfolio.reading.report import Report, quoted
from layerfolio.reading.scalars import Flag, Line, Number, Pick, scalar
from layerfolio.reading.tree import Mapping, Node
from layerfolio.units.grammar import QuantityError, parse_dimensions
from layerfolio.units.quantity import Quantity

SUPPORTS = ("roof", "roof and floor", "roof and two floors")
"""What a line carries; the place in this list is the number of storeys above."""
METHODS = (
    "WSP", "CS-WSP", "LIB", "DWB", "SFB", "GB", "PBS", "PCP", "HPS", "BV-WSP", "ABW", "PFH", "PFG", "CS-G", "CS-PF", "CS-SFB",
)  # fmt: skip
GRADES = (
    "plywood", "OSB O-1", "OSB O-2", "waferboard R-1", "CSA O325 W16", "CSA O325 W20", "CSA O325 W24", "sheathing",
    "structural I", "plywood siding", "particleboard", "fibreboard", "diagonal lumber", "gypsum board", "boards",
)  # fmt: skip
SPANS = ("12/0", "16/0", "20/0", "24/0", "24/16", "32/16", "40/20", "48/24", "Wall-16", "Wall-24")
FASTENERS = ("nail", "screw", "staple")
LONG = Measure("length", most=200.0, example="9.6 m")
FROM_START = Measure("length", least=0.0, most=200.0, example="1.2 m")
TALL = Measure("length", most=30.0, example="2.7 m")
APART = Measure("length", most=3.0, example="150 mm")
_NAIL = "63 mm x 3.25 mm"
_BY_PENNY = re.compile(r" *[0-9]+ ?[dD]\b")


class Shank(Frozen):
    """A nail, screw or staple by two lengths: `length` and `diameter`, as written in `text`."""

    def __init__(self, length: Quantity, diameter: Quantity, text: str):
        self.__dict__.update(length=length, diameter=diameter, text=text)


class ShankReader(Reader):
    """`63 mm x 3.25 mm`: the length first, then the diameter; or `8d common`."""

    example = _NAIL

    def read(self, node: Node, path: str, report: Report) -> Shank | None:
        text = scalar(node, path, report, "length and diameter joined by x", _NAIL)
        if text is None:
            return None
        try:
            if _BY_PENNY.match(text):
                from layerfolio.reading.pennyweight import penny_nail

                return Shank(*penny_nail(text))
            found = parse_dimensions(text)
        except QuantityError as error:
            example = error.example if _BY_PENNY.match(text) else _NAIL
            report.problem(node.place, path, error.message, example)
            return None
        wrong = _shank_wrong(found, text)
        if wrong:
            report.problem(node.place, path, wrong, _NAIL)
            return None
        return Shank(found[0], found[1], text)

    def schema(self, definitions: Definitions) -> dict:
        return {"type": "string", "pattern": "[0-9½¼¾].*[x×]|[0-9] ?d common", "examples": [_NAIL], "title": "length x diameter"}


def _shank_wrong(found: tuple[Quantity, ...], text: str) -> str:
    if len(found) != 2:
        return f"{quoted(text)} has three lengths: length and diameter are expected"
    length, diameter = found
    if length.value <= 0 or diameter.value <= 0:
        return f"{quoted(text)} must be above zero"
    if length.value <= diameter.value:
        return f"{quoted(text)} is thicker than it is long: the length comes first"
    if not 0.01 <= length.value <= 0.3 or not 0.001 <= diameter.value <= 0.013:
        return f"{quoted(text)} is no nail or screw of a panel: 10 to 300 mm long, 1 to 13 mm thick"
    return ""


class BracingPanel(Record):
    """One panel of a line."""

    length: Quantity = key(LONG, "length along the line", required=True)
    at: Quantity | None = key(FROM_START, "from the start of the line to the panel's near edge; of all panels or of none")
    height: Quantity | None = key(TALL, "height where it is less than the line's")


class LineOpening(Record):
    """One opening of a line."""

    width: Quantity | None = key(LONG, "width along the line")
    length: Quantity | None = key(LONG, "the same, in the words of the panels")
    at: Quantity | None = key(FROM_START, "from the start of the line to the opening's near edge")
    height: Quantity | None = key(TALL, "clear height")
    sill: Quantity | None = key(Measure("length", least=0.0, most=30.0, example="900 mm"), "from the floor to its sill")

    @property
    def along(self) -> Quantity | None:
        """Its size along the line, by whichever word it is stated."""
        return self.width or self.length


class PanelFastening(Record):
    """What fastens the panels of a line to the framing."""

    nail: Shank | None = key(ShankReader(), "length and diameter of the nails")
    screw: Shank | None = key(ShankReader(), "length and diameter of the screws")
    staple: Shank | None = key(ShankReader(), "length and diameter of the staples")
    edge: Quantity | None = key(APART, "centre to centre along the panel's edges")
    field: Quantity | None = key(APART, "centre to centre along the framing between the edges")
    blocked: bool | None = key(Flag(), "whether every edge lies on framing or blocking")
    adhesive: bool | None = key(Flag(), "whether the panels are glued too")

    @property
    def kind(self) -> str:
        """nail, screw or staple; empty when none is stated."""
        return next((one for one in FASTENERS if getattr(self, one)), "")

    @property
    def shank(self) -> Shank | None:
        return getattr(self, self.kind) if self.kind else None


class PlateNailing(Record):
    """What ties the bottom plate of a line to the framing below."""

    nail: Shank | None = key(ShankReader(), "length and diameter of the nails")
    spacing: Quantity | None = key(APART, "centre to centre along the plate")


class PlateStrips(Record):
    """Strips of steel that tie the wall of a line to the floor framing."""

    width: Quantity | None = key(Measure("length", most=0.3, example="50 mm"), "width of a strip")
    thickness: Quantity | None = key(Measure("length", most=0.01, example="0.41 mm"), "thickness of a strip")
    spacing: Quantity | None = key(APART, "centre to centre along the plate")
    nails: int | None = key(Number("a number of nails", "2", 1, 50, whole=True), "nails at each end of a strip")
    nail: Shank | None = key(ShankReader(), "length and diameter of those nails")


class PanelBoard(Record):
    """The board of the panels."""

    grade: str | None = key(Pick(*GRADES), "what it is graded as")
    thickness: Quantity | None = key(Measure("length", most=0.2, example="11 mm"), "thickness; else that of its layer")
    span_rating: str | None = key(Pick(*SPANS), "span rating of the stamp")
    sheet_width: Quantity | None = key(TALL, "width of its sheets, from seam to seam")
    sheet_height: Quantity | None = key(TALL, "height of its sheets; a level seam stands where panels are higher")
    material: str | None = key(Line("panel-15", 60), "name of its layer in the assembly; else the layer that serves bracing")


class WallLine(Record):
    """A braced wall line: panels in one plane, through one storey."""

    assembly: str = key(Line("W1", 60), "the wall assembly that it is built as", required=True)
    length: Quantity = key(LONG, "length of the line", required=True)
    height: Quantity = key(TALL, "height of the wall, plate to plate", required=True)
    title: str | None = key(Line("North wall, ground floor"), "name as printed")
    direction: str | None = key(Line("east-west", 40), "direction; lines of one direction brace together")
    line_spacing: Quantity | None = key(Measure("length", most=100.0, example="7.6 m"), "distance to the next parallel line")
    lines_in_direction: int | None = key(Number("a number of lines", "2", 1, 100, whole=True), "parallel lines of the building")
    storeys_above: int | None = key(
        Number("a number of storeys", "0", 0, 20, whole=True), "storeys above it; 0 under a roof only"
    )
    supports: str | None = key(Pick(*SUPPORTS), "what it carries, in words")
    panels: tuple[BracingPanel, ...] = key(ListOf(Nested(BracingPanel), "[{length: 2.4 m}]"), "its panels", default=())
    openings: tuple[LineOpening, ...] = key(ListOf(Nested(LineOpening), "[{width: 1.2 m}]"), "its openings", default=())
    panel_fastening: PanelFastening | None = key(Nested(PanelFastening, f"{{nail: {_NAIL}}}"), "what fastens its panels")
    panel: PanelBoard | None = key(Nested(PanelBoard, "{grade: plywood, thickness: 12.5 mm}"), "the board of its panels")
    plate_nailing: PlateNailing | None = key(
        Nested(PlateNailing, "{nail: 82 mm x 3.66 mm, spacing: 150 mm}"), "nails of the bottom plate into the framing below"
    )
    plate_strips: PlateStrips | None = key(
        Nested(PlateStrips, "{width: 50 mm, thickness: 0.41 mm, spacing: 1.2 m, nails: 2, nail: 63 mm x 3.25 mm}"),
        "strips of steel from the wall to the floor framing",
    )
    plate_on: str | None = key(
        Pick("wood", "concrete"), "what its bottom plate stands on: a sole plate or floor framing of wood, or concrete"
    )
    sheathing_lap: bool | None = key(
        Flag(), "whether the panels, on the outer face, lap over the floor framing below and are nailed to it"
    )
    gypsum_opposite: bool | None = key(Flag(), "whether gypsum board covers the face opposite the panels")
    hold_downs: bool | None = key(Flag(), "whether every panel end has a hold-down (of 800 lb, 3.6 kN, at least)")
    method: str | None = key(Pick(*METHODS), "bracing method of the American code; else found from the panel")
    construction: str | None = key(Pick("light", "heavy"), "weight of the construction it braces, as the Canadian code says it")
    eave_to_ridge: Quantity | None = key(
        Measure("length", least=0.0, most=50.0, example="3 m"), "height of the roof, eave to ridge"
    )
    interior: bool = key(Flag(), "whether the line lies inside the building", default=False)

    def check(self, node: Mapping, path: str, report: Report) -> None:
        from layerfolio.reading.wall_line_rules import check_line

        check_line(self, node, path, report)

    @property
    def floors_above(self) -> int | None:
        """Storeys above, by number or by words; None where neither is stated."""
        return SUPPORTS.index(self.supports) if self.storeys_above is None and self.supports else self.storeys_above
