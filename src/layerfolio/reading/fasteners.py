"""Screws, nails and ties that go through a layer. Read only where a project states them."""

from __future__ import annotations

from layerfolio.reading.measures import Measure
from layerfolio.reading.record import Record, key
from layerfolio.reading.scalars import Line, Number, Pick
from layerfolio.units.quantity import Quantity

STEELS = ("steel", "stainless steel", "plastic")
THIN = Measure("length", most=0.1, example="6 mm")
APART = Measure("length", most=10.0, example="150 mm")


class Fasteners(Record):
    """Fasteners through a layer: what they are and how many."""

    kind: str | None = key(Line("screw, partial thread", 120), "what they are: screw, nail, staple, tie, and its type")
    material: str | None = key(Pick(*STEELS), "what they are made of")
    conductivity: Quantity | None = key(Measure("conductivity", example="17 W/(m.K)"), "thermal conductivity of the fastener")
    diameter: Quantity | None = key(THIN, "diameter of the shank; of a screw the outer one")
    root_diameter: Quantity | None = key(THIN, "diameter at the root of the thread; decides heat where it stands")
    length: Quantity | None = key(Measure("length", most=5.0, example="160 mm"), "length of the fastener")
    spacing: Quantity | None = key(APART, "centre to centre along a row")
    rows_at: Quantity | None = key(APART, "from row to row: the spacing of the members they are driven into")
    per_area: float | None = key(Number("a number of fasteners", "5", 0, 10000), "how many go through a square metre")
    depth: Quantity | None = key(
        Measure("length", least=0.0, most=5.0, example="50 mm"), "how far they reach into the layer; all of it when not stated"
    )
