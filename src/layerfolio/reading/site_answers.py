"""Answers about an assembly that a few requirements ask for: roof vents, fire blocks, spaces beside it, the ground.

Read only where a project gives one of them.
"""

from __future__ import annotations

from typing import Any

from layerfolio.reading.documents import Evidence, evidence
from layerfolio.reading.groups import ListOf, Nested
from layerfolio.reading.measures import Measure
from layerfolio.reading.record import Record, key
from layerfolio.reading.report import Report, quoted
from layerfolio.reading.scalars import Line, Number, Pick
from layerfolio.reading.tree import Node
from layerfolio.units.quantity import Quantity

AIR_CHANGES = Number("air changes per hour", "0.5", 0, 100)
VENT = Measure("area", least=0.0, example="0.12 m2")


class FireBlocks(Record):
    """Fire blocks in a concealed space: how far apart they are, and of what."""

    vertical: Quantity | None = key(Measure("length", most=100.0, example="3 m"), "greatest distance apart, measured upwards")
    horizontal: Quantity | None = key(Measure("length", most=100.0, example="6 m"), "greatest distance apart, measured along")
    material: str | None = key(Line("solid lumber 38 mm"), "what they are made of")


class Vents(Record):
    """Vents of a roof or attic space: net free areas."""

    low: Quantity | None = key(VENT, "net free area at the eaves or low in the space")
    high: Quantity | None = key(VENT, "net free area at the ridge or high in the space")
    roof_area: Quantity | None = key(Measure("area"), "insulated ceiling area that the vents serve")


class PerDay(Measure):
    """Rain as a depth per time, kept as a number of mm/day."""

    def __init__(self) -> None:
        super().__init__("speed", least=0.0, example="2.5 mm/day")

    def read(self, node: Node, path: str, report: Report) -> Any:
        found = super().read(node, path, report)
        return None if found is None else found.value * 86400 * 1000

    def limits(self, value: float, text: str) -> str:
        over = value * 86400 * 1000 > 100
        return f"{quoted(text)} is over 100 mm/day" if over else super().limits(value, text)


class InvertedRoof(Record):
    """Insulation above the waterproof layer: rain that runs under it carries heat off (ISO 6946, annex F)."""

    precipitation: float | None = key(PerDay(), "mean precipitation of the heating season")
    drainage_factor: float | None = key(
        Number("a drainage factor", "0.04", 0, 1), "f.x of ISO 6946, W.day/(m2.K.mm): 0.04 for one layer with butt joints"
    )


class UnheatedPart(Record):
    """One part of the envelope between an unheated space and outside air."""

    area: Quantity = key(Measure("area", example="12 m2"), "its area", required=True)
    transmittance: Quantity = key(Measure("transmittance", most=20.0), "its thermal transmittance", required=True)


class UnheatedSpace(Record):
    """A space without heating between the assembly and outside air: garage, porch, store."""

    envelope: tuple[UnheatedPart, ...] = key(
        ListOf(Nested(UnheatedPart), "[{area: 12 m2, transmittance: 2.0 W/(m2.K)}]"),
        "what lies between it and outside air",
        default=(),
    )
    volume: Quantity | None = key(Measure("volume", example="30 m3"), "volume of the space")
    air_changes: float | None = key(AIR_CHANGES, "air changes of the space per hour")


class EdgeInsulation(Record):
    """Insulation along the edge of a slab."""

    direction: str = key(Pick("vertical", "horizontal"), "down the footing, or under the edge of the slab", required=True)
    width: Quantity = key(Measure("length", most=20.0, example="600 mm"), "how deep it goes, or how far in", required=True)
    thickness: Quantity = key(Measure("length", most=2.0, example="50 mm"), "its thickness", required=True)
    resistance: Quantity = key(Measure("resistance", example="1.4 m2.K/W"), "its thermal resistance", required=True)
    material: str | None = key(Line("mineral-wool board"), "what it is, in words")
    source: str | None = key(Line("maker's sheet EB-1"), "where its resistance comes from")
    evidence: tuple[Evidence, ...] = key(evidence(), "documents that prove it", default=())


class Underfloor(Record):
    """The space under a suspended floor."""

    height: Quantity | None = key(
        Measure("length", least=0.0, most=10.0, example="400 mm"), "of the upper side of the floor above outside ground level"
    )
    wall_transmittance: Quantity | None = key(
        Measure("transmittance", most=20.0), "of the walls of the space, above ground level"
    )
    vents: Quantity | None = key(Measure("cavity_openings", example="1500 mm2/m"), "free area of vents per metre of perimeter")
    wind_speed: Quantity | None = key(Measure("speed", least=0.0, most=50.0, example="4 m/s"), "mean wind speed at 10 m height")
    shielding: str | None = key(Pick("sheltered", "average", "exposed"), "how the wind reaches the vents")


class Ventilation(Record):
    """Mechanical ventilation of the heated volume."""

    flow: Quantity | None = key(Measure("airflow", least=0.0), "air flow that runs all the time in winter")
    recovery: Quantity | None = key(Measure("share", least=0.0, most=1.0, example="75 %"), "share of its heat that is recovered")
