"""Layers and what is inside them, as the project file states them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from layerfolio.reading.documents import Evidence, evidence
from layerfolio.reading.figures import ByCup, Cups
from layerfolio.reading.groups import Later, ListOf, Nested
from layerfolio.reading.measures import Measure
from layerfolio.reading.record import Record, key
from layerfolio.reading.report import Report, join
from layerfolio.reading.scalars import Flag, Line, Number, Pick
from layerfolio.reading.tree import Mapping
from layerfolio.units.quantity import Quantity

if TYPE_CHECKING:
    from layerfolio.reading.fasteners import Fasteners

SERVES = (
    "weather face", "water control", "air control", "vapour control", "thermal control", "bracing", "structure",
    "fixing", "services", "lining",
)  # fmt: skip
DIRECTIONS = ("vertical", "horizontal", "up the slope", "across the slope")
VAPOUR_KEYS = ("vapour_resistance_factor", "permeability", "permeance", "equivalent_air_layer")
THICKNESS = Measure("length", most=10.0)
MU = Number("a vapour resistance factor", "50", 1, 1e9)
FLAME = Number("a flame-spread rating", "75", 0, 1000)
SMOKE = Number("a smoke-developed classification", "250", 0, 5000)
STRENGTH = Measure("pressure", most=1e9, example="103 kPa")


class Framing(Record):
    """Members that cross a layer, or the battens of a cavity."""

    member: str | None = key(Line("stud", 60), "what it is called: stud, rafter, joist, web, batten")
    material: str | None = key(Line("spruce", 60), "material of the member: of the catalogue or of this file")
    title: str | None = key(Line("Spruce stud"), "name as printed")
    width: Quantity | None = key(THICKNESS, "width of the member as seen in the section, 38 mm")
    spacing: Quantity | None = key(THICKNESS, "centre to centre, 600 mm")
    fraction: Quantity | None = key(Measure("share", most=1.0), "share of the area; decides the heat calculation")
    direction: str | None = key(Pick(*DIRECTIONS), "which way the members run")
    member_id: str | None = key(Line("joist-1", 60), "members of one id overlap: flange and web of one joist")
    staggered: bool | None = key(Flag(), "whether they stand half a spacing beside the members of the other framing")
    resistance: Quantity | None = key(Measure("resistance"), "of the member through the layer")
    conductivity: Quantity | None = key(Measure("conductivity"), "of the member")
    source: str | None = key(Line("test report (number)"), "where the member's own figures come from")

    def check(self, node: Mapping, path: str, report: Report) -> None:
        if self.width and self.spacing and self.spacing.value < self.width.value:
            message = f"the spacing {self.spacing.text} is smaller than the width {self.width.text}"
            report.problem(node.items["spacing"].place, join(path, "spacing"), message, "600 mm")
        if not {"fraction", "spacing"} & self.stated:
            report.problem(
                node.holder, path, "how much of the area it takes is missing: fraction, or spacing", "fraction: 20 %"
            )
        if not {"material", "resistance", "conductivity"} & self.stated:
            report.problem(node.holder, path, "the material of the members is missing", "material: spruce")


class Layer(Record):
    """One layer: a material, a membrane, a cavity, or a name with its own figures."""

    material: str | None = key(Line("hemp-batt", 60), "material: of the catalogue or of this file")
    membrane: str | None = key(
        Line("sheathing membrane", 60), "name of a membrane; its thickness does not count for heat"
    )
    cavity: str | None = key(Pick("unventilated", "slightly ventilated", "ventilated"), "kind of air space")
    name: str | None = key(Line("inner board", 60), "name of the layer, unique in the assembly")
    title: str | None = key(Line("Hemp batts"), "name as printed")
    family: str | None = key(Line("batt", 60), "hatch family")
    thickness: Quantity | None = key(THICKNESS, "thickness: 38 mm, 1-1/2 in")
    conductivity: Quantity | None = key(Measure("conductivity"), "thermal conductivity")
    resistance: Quantity | None = key(Measure("resistance"), "thermal resistance of the layer as built")
    density: Quantity | None = key(Measure("density"), "density")
    specific_heat: Quantity | None = key(Measure("specific_heat"), "specific heat")
    vapour_resistance_factor: Cups | None = key(ByCup(MU), "one number, or by cup {dry: 2, wet: 1}")
    permeability: Cups | None = key(ByCup(Measure("permeability")), "vapour permeability, or by cup")
    permeance: Cups | None = key(
        ByCup(Measure("permeance"), THICKNESS), "vapour permeance of the layer as built, or by cup"
    )
    equivalent_air_layer: Cups | None = key(ByCup(Measure("length"), THICKNESS), "s_d of the layer as built, or by cup")
    openings: Quantity | None = key(Measure("cavity_openings", "openings_per_area"), "of a slightly ventilated cavity")
    battens: Framing | None = key(Nested(Framing, "{material: spruce, width: 38 mm, spacing: 400 mm}"), "in a cavity")
    framing: Framing | None = key(
        Nested(Framing, "{member: stud, material: spruce, width: 38 mm, spacing: 600 mm}"), "members in the layer"
    )
    serves: tuple[str, ...] = key(ListOf(Pick(*SERVES), single=True), "what the layer does", default=())
    fasteners: Fasteners | None = key(
        Later("fasteners", "Fasteners", "{material: steel, diameter: 6 mm, per_area: 5}"), "what goes through the layer"
    )
    air_voids: int | None = key(
        Number("a level of air voids", "1", 0, 2, whole=True), "ISO 6946: 0 none, 1 gaps between boards, 2 with air moving behind"
    )
    flame_spread: float | None = key(FLAME, "flame-spread rating of the layer as built")
    smoke_developed: float | None = key(SMOKE, "smoke-developed classification of the layer as built")
    compressive_strength: Quantity | None = key(STRENGTH, "of an insulating board, as tables of fasteners suppose it")
    seams: str | None = key(Pick("taped", "sealed", "lapped", "open"), "how its seams are made")
    source: str | None = key(Line("test report (number)"), "where the layer's own figures come from")
    evidence: tuple[Evidence, ...] = key(evidence(), "documents", default=())

    @property
    def kind(self) -> str:
        """solid, membrane or cavity."""
        return "cavity" if "cavity" in self.stated else "membrane" if "membrane" in self.stated else "solid"

    def check(self, node: Mapping, path: str, report: Report) -> None:
        from layerfolio.reading.layer_rules import check_layer

        check_layer(self, node, path, report)
