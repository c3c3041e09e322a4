"""The section the vapour crosses: layers that count with their values, cut into strips; nodes from the outside in."""

from dataclasses import replace
from math import ceil
from typing import NamedTuple

from layerfolio.assembly.types import Assembly, Layer
from layerfolio.steps.trace import Recorder
from layerfolio.studies import layer_heat
from layerfolio.studies.condensation.run import LayerValue, Node
from layerfolio.studies.types import LayerHeat, LayerVapour
from layerfolio.studies.vapour import vapour_study

STRIP = 0.25
"""Greatest resistance of one strip, m2.K/W (ISO 13788, from memory)."""
MOST_STRIPS = 400
"""Strips of one layer; only a layer of more than 100 m2.K/W would need more."""
STILL_AIR_S_D = 0.01
"""s_d of an air layer that is not ventilated, m (ISO 13788, from memory)."""


class Part(NamedTuple):
    """One layer that counts, with what is known of it; None where nothing is."""

    layer: Layer
    resistance: float | None
    dry: float | None
    wet: float | None

    @property
    def single(self) -> bool:
        return bool(self.layer.vapour and self.layer.vapour.single)


class Column(NamedTuple):
    """Nodes with their s_d (m) and resistance from the outside air (m2.K/W); `total` air to air."""

    nodes: tuple[Node, ...]
    s_d: tuple[float, ...]
    resistance: tuple[float, ...]
    total: float

    def temperatures(self, inside: float, outside: float) -> list[float]:
        """Steady temperatures of the nodes, degC."""
        slope = (inside - outside) / self.total
        return [outside + slope * r for r in self.resistance]


def parts(assembly: Assembly, heat: tuple[LayerHeat, ...], vapour: tuple[LayerVapour, ...]) -> tuple[Part, ...]:
    """The layers that count, from the outside in; a membrane without a resistance has none."""
    by_heat = {one.layer.number: one.resistance for one in heat}
    by_vapour = {one.layer.number: one for one in vapour}
    found = []
    for layer in assembly.layers:
        if layer.counts:
            cups = by_vapour.get(layer.number)
            resistance = by_heat.get(layer.number, 0.0 if layer.kind == "membrane" else None)
            found.append(Part(layer, resistance, cups.s_d_dry if cups else None, cups.s_d_wet if cups else None))
    return tuple(found)


def parts_of(assembly: Assembly) -> tuple[Part, ...]:
    """The same for an assembly that has no studies yet."""
    heat: tuple[LayerHeat, ...] = ()
    known = [x for x in assembly.layers if x.counts and x.name not in layer_heat.layers_without_figures(assembly)]
    if known:
        only = replace(assembly, layers=tuple(known))
        rows = layer_heat.homogeneous(only, Recorder()) | layer_heat.framed(only, Recorder())
        heat = tuple(rows.values())
    return parts(assembly, heat, vapour_study(assembly).layers)


def main_insulation(found: tuple[Part, ...]) -> Layer | None:
    """The layer of greatest resistance, the outermost of equals."""
    return max(found, key=lambda part: part.resistance or 0.0).layer if found else None


def cup_values(
    found: tuple[Part, ...], *, less_favourable: bool, fixed: dict[str, str]
) -> tuple[tuple[LayerValue, ...], tuple[str, ...]]:
    """Each layer with the cup of this run, and the names of those that have no figure for it.

    As expected: dry inboard of the main insulation, wet for it and outboard. Less favourable: wet inboard and for it,
    dry outboard. `fixed` names layers whose cup the project file fixes.
    """
    main = main_insulation(found)
    values, missing = [], []
    for part in found:
        inboard = main is not None and part.layer.number > main.number
        outboard = main is not None and part.layer.number < main.number
        cup = "dry" if (outboard if less_favourable else inboard) else "wet"
        cup = fixed.get(part.layer.name, cup)
        s_d = part.dry if cup == "dry" else part.wet
        if s_d is None or s_d <= 0 or part.resistance is None:
            missing.append(part.layer.name)
            continue
        shown = "single" if part.single else cup
        values.append(LayerValue(part.layer, part.resistance, s_d, shown, part.layer.name in fixed))
    return tuple(values), tuple(missing)


def column(values: tuple[LayerValue, ...], inside_film: float, outside_film: float, strip: float = STRIP) -> Column:
    """Nodes at every face of a layer and of its strips of equal resistance, none above `strip` m2.K/W."""
    names = [*(value.layer.name for value in values), "room air"]
    first = values[0].layer
    nodes = [Node(("outside air", first.name), first.number, 0.0, 0.0, 0.0)]
    resistances = [outside_film]
    depth = s_d = 0.0
    at = outside_film
    for value, inner in zip(values, names[1:], strict=True):
        thickness = value.layer.thickness.value if value.layer.thickness else 0.0
        count = min(max(1, ceil(value.resistance / strip - 1e-9)), MOST_STRIPS)
        for j in range(1, count + 1):
            share = j / count
            between = (value.layer.name, value.layer.name if j < count else inner)
            nodes.append(Node(between, value.layer.number, share, depth + share * thickness, s_d + share * value.s_d))
            resistances.append(at + share * value.resistance)
        depth, s_d, at = depth + thickness, s_d + value.s_d, at + value.resistance
    return Column(tuple(nodes), tuple(node.s_d for node in nodes), tuple(resistances), at + inside_film)
