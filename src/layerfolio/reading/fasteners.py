"""Screws, nails and ties that go through a layer. Read only where a project states them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from layerfolio.reading.measures import Measure
from layerfolio.reading.record import Record, key
from layerfolio.reading.report import Report, join
from layerfolio.reading.scalars import Line, Number, Pick
from layerfolio.reading.tree import Mapping
from layerfolio.units.quantity import Quantity

if TYPE_CHECKING:
    from layerfolio.reading.layers import Layer

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
    bending_yield_strength: Quantity | None = key(
        Measure("pressure", most=3e9, example="1000 MPa"), "bending yield strength by the fastener's own report"
    )
    spacing: Quantity | None = key(APART, "centre to centre along a row")
    rows_at: Quantity | None = key(APART, "from row to row: the spacing of the members they are driven into")
    per_area: float | None = key(Number("a number of fasteners", "5", 0, 10000), "how many go through a square metre")
    depth: Quantity | None = key(
        Measure("length", least=0.0, most=5.0, example="50 mm"), "how far they reach into the layer; all of it when not stated"
    )


def check_fasteners(layer: Layer, node: Mapping, path: str, report: Report) -> None:
    """Report what does not fit together in the fasteners of a layer; how many there are decides their share of heat."""
    one, items, path = layer.fasteners, node.items["fasteners"].items, join(path, "fasteners")
    assert one is not None
    for inner, outer in (("root_diameter", "diameter"), ("depth", "length")):
        small, large = getattr(one, inner), getattr(one, outer)
        if small and large and small.value > large.value:
            words = f"{inner} {small.text} is more than {outer} {large.text}"
            report.problem(items[inner].place, join(path, inner), words, f"{inner}: {large.text}")
    if one.depth and layer.thickness and one.depth.value > layer.thickness.value:
        words = f"they reach {one.depth.text} into the layer, which is {layer.thickness.text} thick"
        report.problem(items["depth"].place, join(path, "depth"), words, f"depth: {layer.thickness.text}")
    if one.length and layer.thickness and not one.depth and one.length.value < layer.thickness.value:
        words = f"they are {one.length.text} long and do not go through the layer, which is {layer.thickness.text} thick"
        report.problem(items["length"].place, join(path, "length"), words, f"depth: {one.length.text}")
    counted = "per_area" in one.stated or {"spacing", "rows_at"} <= one.stated
    if not counted and not {"bracing", "structure", "fixing"} & set(layer.serves):
        words = "how many go through a square metre is not stated: per_area, or spacing with rows_at; no heat is counted"
        report.caution(path, words)
