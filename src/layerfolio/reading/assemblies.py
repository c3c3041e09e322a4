"""Assemblies: walls, roofs, floors and what they face."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from layerfolio.reading.groups import Later, ListOf, MapOf, Nested
from layerfolio.reading.layers import Layer
from layerfolio.reading.measures import Measure
from layerfolio.reading.names import name_layers
from layerfolio.reading.record import Record, key, null
from layerfolio.reading.report import Report, did_you_mean, join, quoted
from layerfolio.reading.scalars import Flag, Line, Pick
from layerfolio.reading.tree import Mapping
from layerfolio.units.quantity import Quantity

if TYPE_CHECKING:
    from layerfolio.reading.site_answers import EdgeInsulation, FireBlocks, InvertedRoof, Underfloor, UnheatedSpace, Vents

KINDS = ("wall", "roof", "ceiling", "floor", "slab", "foundation-wall")
FACES = ("outside air", "vented space", "unheated space", "ground")
ROOF_SPACES = (
    "tiles without underlay", "sheeted or tiles with underlay", "as above with low emissivity", "boards and underlay",
)  # fmt: skip
APART = Measure("length", least=0.0, example="1.2 m")
_USUAL_FACES = {"slab": "ground", "foundation-wall": "ground", "ceiling": "vented space"}
_UPRIGHT = ("wall", "foundation-wall")
_ONLY_ON = {"inverted_roof": ("roof",), "roof_space": ("ceiling", "roof"), "vents": ("roof", "ceiling")}
CUP = MapOf(Pick("dry", "wet"), "{hemp-batt: dry}")


class Surfaces(Record):
    """Surface resistances that replace those of the code set."""

    inside: Quantity | None = key(Measure("resistance", least=0.0), "inside surface resistance")
    outside: Quantity | None = key(Measure("resistance", least=0.0), "outside surface resistance")


class Moisture(Record):
    """How the moisture balance is run."""

    method: str | None = key(Pick("monthly", "two-period"), "method of the balance")
    vapour_values: dict[str, str] | None = key(CUP, "layers whose cup is fixed")


class Ground(Record):
    """What the ground does to a slab or foundation wall."""

    conductivity: Quantity | None = key(Measure("conductivity"), "of the ground")
    perimeter: Quantity | None = key(Measure("length"), "exposed perimeter of the floor")
    depth: Quantity | None = key(Measure("length", least=0.0), "of the floor below ground level")
    heated: bool | None = key(Flag(), "whether the slab itself is heated")
    above_frost_line: bool | None = key(Flag(), "whether the footing ends above the frost line")
    integral_footing: bool | None = key(Flag(), "whether slab and footing are one piece")
    permafrost: bool | None = key(Flag(), "whether it lies on permafrost")
    wall_thickness: Quantity | None = key(Measure("length", most=5.0, example="300 mm"), "of the walls that stand on its edge")
    edge_insulation: EdgeInsulation | None = key(
        Later("site_answers", "EdgeInsulation", "{direction: vertical, width: 600 mm, thickness: 50 mm, resistance: 1.4 m2.K/W}"),
        "insulation along the edge of the slab",
    )
    insulated_from_edge: Quantity | None = key(Measure("length", example="1.2 m"), "how far in from its edge it is insulated")
    underfloor: Underfloor | None = key(
        Later("site_answers", "Underfloor", "{height: 400 mm, vents: 1500 mm2/m}"), "the space under a suspended floor"
    )


class Assembly(Record):
    """A wall, roof, ceiling, floor, slab or foundation wall; layers are listed from the outside in."""

    kind: str = key(Pick(*KINDS), "what it is", required=True)
    title: str | None = key(Line("North and east walls"), "name as printed")
    area: Quantity | None = key(Measure("area"), "area, net of openings unless area_includes_openings")
    area_includes_openings: bool | None = key(Flag(), "whether area counts the openings; rules over the project's own answer")
    faces: str | None = key(Pick(*FACES), "what lies outside")
    slope: Quantity | None = key(Measure("angle", least=0.0, most=90.0), "from the horizontal: 90 deg is a wall")
    surfaces: Surfaces | None = key(Nested(Surfaces), "surface resistances of your own")
    moisture: Moisture | None = key(Nested(Moisture), "how the moisture balance is run")
    vapour_values: dict[str, str] | None = key(CUP, "layers whose cup is fixed: {hemp-batt: dry}")
    ground: Ground | None = key(Nested(Ground), "what the ground does to it")
    distance_to_boundary: Quantity | None = key(APART, "limiting distance: to boundary, middle of the street or next building")
    face_area: Quantity | None = key(Measure("area"), "area of the whole exposing building face that it is part of")
    clearance_to_ground: Quantity | None = key(APART, "from the lower edge of the cladding to the ground")
    clearance_to_roof: Quantity | None = key(APART, "from the lower edge of the cladding to a roof below")
    meets_roof: bool | None = key(Flag(), "whether a roof meets the wall below its cladding; false: none does")
    fire_blocks: FireBlocks | None = key(
        Later("site_answers", "FireBlocks", "{vertical: 3 m, material: solid lumber 38 mm}"), "fire blocks in concealed spaces"
    )
    vents: Vents | None = key(
        Later("site_answers", "Vents", "{low: 0.12 m2, high: 0.12 m2}"), "net free vent areas of the space above the insulation"
    )
    roof_space: str | None = key(Pick(*ROOF_SPACES), "what covers an unheated roof space (ISO 6946)")
    inverted_roof: InvertedRoof | None = key(
        Later("site_answers", "InvertedRoof", "{precipitation: 2.5 mm/day, drainage_factor: 0.04}"), "rain on an inverted roof"
    )
    unheated_space: UnheatedSpace | None = key(
        Later("site_answers", "UnheatedSpace", "{volume: 30 m3, air_changes: 1.0}"), "the unheated space beside it"
    )
    layers: tuple[Layer, ...] = key(
        ListOf(Nested(Layer), "[{material: hemp-batt, thickness: 184 mm}]", least=1),
        "from the outside in",
        required=True,
        default=(),
    )

    def check(self, node: Mapping, path: str, report: Report) -> None:
        if "layers" in self.stated and self.layers:
            layers = node.items["layers"]
            self.__dict__["layers"] = name_layers(self.layers, layers, join(path, "layers"), report)
        self._defaults(path, report)
        self._cups(node, path, report)
        for word, kinds in _ONLY_ON.items():
            if self.kind and word in self.stated and self.kind not in kinds:
                message = f"{word} has no meaning on a {self.kind}: it belongs to a {' or '.join(kinds)}"
                report.problem(node.keys[word], join(path, word), message, f"kind: {kinds[0]}")

    def _defaults(self, path: str, report: Report) -> None:
        """What is not stated is taken as usual for the kind, and said."""
        if self.kind and "faces" not in self.stated:
            self.__dict__["faces"] = _USUAL_FACES.get(self.kind, "outside air")
            if self.kind in ("floor", "ceiling"):
                report.caution(path, f"faces is not stated: taken as {self.faces}")
        if self.kind and "slope" not in self.stated:
            upright = self.kind in _UPRIGHT
            self.__dict__["slope"] = Quantity(90.0 if upright else 0.0, "angle", "90 deg" if upright else "0 deg")
            if self.kind == "roof":
                report.caution(path, "slope is not stated: taken as flat")

    def _cups(self, node: Mapping, path: str, report: Report) -> None:
        """`vapour_values` may stand on the assembly or under `moisture`; its names are names of layers."""
        moisture = node.items.get("moisture")
        under = isinstance(moisture, Mapping) and not null(moisture.items.get("vapour_values"))
        if under and "vapour_values" in moisture.items:
            where, stated = join(path, "moisture.vapour_values"), moisture.items["vapour_values"]
            if "vapour_values" in self.stated:
                report.problem(moisture.keys["vapour_values"], where, "vapour_values stands twice: keep one of them")
            self.__dict__["vapour_values"] = self.moisture.vapour_values if self.moisture else None
        else:
            where, stated = join(path, "vapour_values"), node.items.get("vapour_values")
        names = [layer.name for layer in self.layers]
        for name in self.vapour_values or {}:
            if names and name not in names:
                message = f"no layer is called {quoted(name)}{did_you_mean(name, names)}"
                report.problem(stated.keys[name], join(where, name), message)


RESERVED = re.compile(r"[GC][0-9]|E[0-9]|ST[0-9]|X[0-9]+", re.I)
"""Cover and guide, records, evidence, structural sheets and explanations; their numbers cannot name an assembly."""


def opening_name_wrong(name: str) -> str:
    """What is wrong with the name of an opening; empty when nothing is."""
    if re.fullmatch(r"[A-Za-z][A-Za-z0-9]{0,7}", name):
        return ""
    return f"{quoted(name)} cannot be the name of an opening: a letter, then letters and digits, 8 at most"


def line_name_wrong(name: str) -> str:
    """What is wrong with the name of a line of bracing; empty when nothing is."""
    return opening_name_wrong(name).replace("an opening", "a line")


def assembly_name_wrong(name: str) -> str:
    """What is wrong with a name that must serve as a sheet number; empty when nothing is."""
    if RESERVED.fullmatch(name):
        return f"{quoted(name)} is the number of a sheet that every package has: take another, W1 or S1"
    if re.fullmatch(r"[A-Za-z][A-Za-z0-9]{0,7}", name):
        return ""
    return f"{quoted(name)} cannot be a sheet number: a letter, then letters and digits, 8 at most"
