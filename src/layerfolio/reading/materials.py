"""The project's own materials, or its own figures for materials of the catalogue."""

from __future__ import annotations

from typing import Any

from layerfolio.reading.definitions import Definitions
from layerfolio.reading.documents import Evidence, evidence
from layerfolio.reading.figures import ByCup, Cups
from layerfolio.reading.layer_rules import one_vapour_figure
from layerfolio.reading.layers import FLAME, MU, SMOKE, STRENGTH, THICKNESS
from layerfolio.reading.measures import Measure
from layerfolio.reading.record import Frozen, Reader, Record, key
from layerfolio.reading.report import Report, quoted
from layerfolio.reading.scalars import Flag, Line, Number
from layerfolio.reading.tree import Mapping, Node
from layerfolio.units.quantity import Quantity


class Rated(Frozen):
    """A figure of a product as delivered: `value` holds at `at_thickness` only."""

    def __init__(self, value: Quantity, at_thickness: Quantity | None = None):
        self.__dict__.update(value=value, at_thickness=at_thickness)


class RatedReader(Reader):
    """`{value: 1.4 m2.K/W, at_thickness: 50 mm}`, or the value alone."""

    def __init__(self, kind: str):
        self.inner = ByCup(Measure(kind), THICKNESS)
        del self.inner.readers["dry"], self.inner.readers["wet"]
        self.example = f"{{value: {self.inner.value.example}, at_thickness: 50 mm}}"

    def read(self, node: Node, path: str, report: Report) -> Any:
        found = self.inner.read(node, path, report)
        return None if found is None else Rated(found.dry, found.at_thickness)

    def schema(self, definitions: Definitions) -> dict:
        return self.inner.schema(definitions)


class Material(Record):
    """A material with its figures; what is not stated comes from the catalogue when the name is known there."""

    title: str | None = key(Line("Hemp batts"), "name as printed")
    family: str | None = key(Line("batt", 60), "hatch family")
    conductivity: Quantity | None = key(Measure("conductivity"), "thermal conductivity")
    resistance: Rated | None = key(RatedReader("resistance"), "thermal resistance at one thickness")
    density: Quantity | None = key(Measure("density"), "density")
    specific_heat: Quantity | None = key(Measure("specific_heat"), "specific heat")
    vapour_resistance_factor: Cups | None = key(ByCup(MU), "one number, or by cup {dry: 2, wet: 1}")
    permeability: Cups | None = key(ByCup(Measure("permeability")), "vapour permeability, or by cup")
    permeance: Cups | None = key(ByCup(Measure("permeance"), THICKNESS), "vapour permeance, by cup and at_thickness")
    equivalent_air_layer: Cups | None = key(ByCup(Measure("length"), THICKNESS), "s_d, by cup and at_thickness")
    absorbent: bool | None = key(Flag(), "false where condensate would run off")
    flame_spread: float | None = key(FLAME, "flame-spread rating")
    smoke_developed: float | None = key(SMOKE, "smoke-developed classification")
    specific_gravity: float | None = key(
        Number("a specific gravity", "0.42", 0.2, 1.2), "of wood, oven-dry, as tables of fasteners take it"
    )
    compressive_strength: Quantity | None = key(STRENGTH, "of an insulating board, as tables of fasteners suppose it")
    insulating: bool | None = key(Flag(), "whether it belongs to the thermal control layer")
    source: str | None = key(Line("test report HB-1"), "where the figures come from")
    evidence: tuple[Evidence, ...] = key(evidence(), "documents", default=())

    def check(self, node: Mapping, path: str, report: Report) -> None:
        one_vapour_figure(self, node, path, report)
        if "source" not in self.stated:
            report.caution(path, "the source of these figures is not stated")


def material_name_wrong(name: str) -> str:
    """What is wrong with the name of a material; empty when nothing is."""
    if name and len(name) <= 60 and name.isprintable() and name == " ".join(name.split()):
        return ""
    return f"{quoted(name)} cannot be the name of a material: one line of printable signs, 60 at most"
