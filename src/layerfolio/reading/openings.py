"""Windows, doors and skylights, as the project file states them. Read only where a project has openings."""

from __future__ import annotations

from layerfolio.reading.documents import Evidence, evidence
from layerfolio.reading.groups import Nested
from layerfolio.reading.measures import Measure
from layerfolio.reading.record import Record, key
from layerfolio.reading.report import Report
from layerfolio.reading.scalars import Flag, Line, Number, Pick
from layerfolio.reading.tree import Mapping
from layerfolio.units.quantity import Quantity

KINDS = ("window", "door", "skylight", "hatch", "glass-block", "vehicle-door")
POINTS = ("north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west")
OPERATIONS = ("fixed", "side-hung", "top-hung", "bottom-hung", "tilt and turn", "sliding", "swinging")
FRAMES = ("wood", "pvc", "metal with thermal break", "metal")
SIZE = Measure("length", most=30.0, example="1200 mm")
U = Measure("transmittance", most=20.0, example="1.4 W/(m2.K)")


class Frame(Record):
    """The frame of an opening: its face as seen from inside, and what passes through it."""

    width: Quantity | None = key(Measure("length", most=2.0, example="110 mm"), "width of its face all round; mullions need area")
    depth: Quantity | None = key(Measure("length", most=0.5, example="82 mm"), "depth from its outer to its inner face")
    area: Quantity | None = key(Measure("area", example="0.41 m2"), "projected area; decides where width stands too")
    transmittance: Quantity | None = key(U, "thermal transmittance of the frame, U_f")
    material: str | None = key(Pick(*FRAMES), "what it is made of; decides the default figure of the glass edge")


class Glass(Record):
    """The glazing of an opening."""

    transmittance: Quantity | None = key(U, "thermal transmittance at the centre of the glass, U_g")
    area: Quantity | None = key(Measure("area", example="1.3 m2"), "visible area, where frame width does not give it")
    panes: int | None = key(Number("a number of panes", "2", 1, 4, whole=True), "number of panes")
    coating: bool | None = key(Flag(), "whether a pane has a coating of low emissivity")
    tint: str | None = key(Pick("clear", "tinted"), "clear or tinted")


class Edge(Record):
    """Where glass and frame meet."""

    psi: Quantity | None = key(
        Measure("linear_transmittance", least=0.0, most=1.0, example="0.04 W/(m.K)"), "linear transmittance of the glass edge"
    )
    length: Quantity | None = key(Measure("length", example="4.2 m"), "visible perimeter of the glass")
    spacer: str | None = key(Pick("metal", "improved"), "spacer of the panes: metal, or thermally improved")


class ClearOpening(Record):
    """What is free to pass through when the opening stands open."""

    width: Quantity | None = key(SIZE, "clear width")
    height: Quantity | None = key(SIZE, "clear height")
    area: Quantity | None = key(Measure("area", example="0.5 m2"), "clear area, where it is less than width by height")


class Opening(Record):
    """A window, door, skylight or hatch; `count` of one size in one assembly."""

    kind: str = key(Pick(*KINDS), "what it is", required=True)
    title: str | None = key(Line("Shop windows"), "name as printed")
    count: int = key(Number("a number of openings", "1", 1, 1000, whole=True), "how many of them", default=1)
    in_: str = key(Line("W1", 60), "the assembly that holds it", required=True, name="in")
    orientation: str | None = key(Pick(*POINTS), "where it looks; a skylight in a flat roof has none")
    width: Quantity = key(SIZE, "width over the frame", required=True)
    height: Quantity = key(SIZE, "height over the frame; of a skylight along the slope", required=True)
    transmittance: Quantity | None = key(U, "thermal transmittance U as declared or rated; else give frame and glass")
    basis: str | None = key(Line("rated to CSA A440.2", 200), "how the stated transmittance was found; goes with it")
    solar_factor: float | None = key(Number("a solar factor", "0.5", 0, 1), "share of the sun's heat that comes in")
    energy_rating: float | None = key(Number("an energy rating", "29", -100, 100), "ER by CSA A440.2")
    frame: Frame | None = key(Nested(Frame, "{width: 110 mm, transmittance: 1.1 W/(m2.K)}"), "its frame")
    glass: Glass | None = key(Nested(Glass, "{transmittance: 0.6 W/(m2.K)}"), "its glass")
    edge: Edge | None = key(Nested(Edge, "{psi: 0.04 W/(m.K)}"), "edge of the glass; without psi a table value is taken")
    clear_opening: ClearOpening | None = key(Nested(ClearOpening, "{width: 560 mm, height: 1000 mm}"), "free when it is open")
    sill_height: Quantity | None = key(
        Measure("length", least=0.0, most=30.0, example="900 mm"), "from the floor to the clear opening"
    )
    egress: bool | None = key(Flag(), "whether it is the way of escape of a sleeping room")
    operation: str | None = key(Pick(*OPERATIONS), "how it opens")
    safety_glazing: bool | None = key(Flag(), "whether its glass is safety glass")
    glazed: bool | None = key(Flag(), "whether it has glass; false for an opaque door")
    source: str | None = key(Line("data sheet WD-7"), "where its figures come from")
    evidence: tuple[Evidence, ...] = key(evidence(), "documents", default=())

    def check(self, node: Mapping, path: str, report: Report) -> None:
        from layerfolio.reading.opening_rules import check_opening

        check_opening(self, node, path, report)
