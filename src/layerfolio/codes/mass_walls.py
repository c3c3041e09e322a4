"""Mass walls of the American energy chapter (IRC N1102.2.5): which layer makes one, and on which side its insulation lies."""

from typing import Any, NamedTuple

from layerfolio.assembly.types import Assembly, Layer
from layerfolio.codes.climate_zones import cell
from layerfolio.codes.inputs import alone
from layerfolio.codes.requirements import Requirement


class Mass(NamedTuple):
    """`heavy` None: the layers lack the figures that would tell. `inside`: more than half of the insulation lies inside."""

    heavy: bool | None
    framed: bool
    inside: bool


def mass_of(assembly: Assembly, rule: dict[str, Any]) -> Mass:
    """What a wall is. `rule` has the families of heavy materials and the least heat capacity, kJ/(m2.K)."""
    framed = any(one.counts and one.kind == "solid" and one.member for one in assembly.layers)
    layer = _heavy_layer(assembly, rule)
    heavy = True if layer else None if _capacity(assembly) is None else False
    return Mass(heavy, framed, layer is not None and _mostly_inside(assembly, layer))


def row_of(table: dict[str, Any], requirement: Requirement, assembly: Assembly) -> dict[str, Any]:
    """The table of frame walls, or its row of mass walls where the wall is surely one. In zone 3 the figure for insulation inside
    is printed milder than the row itself: the stricter of the two is taken.
    """
    found = mass_of(assembly, requirement.rule["mass"])
    if not found.heavy or found.framed:
        return table
    if not found.inside:
        return table | {"by_zone": table["easier"], "note": "mass wall, insulated mostly outside or within"}
    least = {zone: min(value, table["easier"][zone]) for zone, value in table["inside"].items()}
    unread = ", its figure from memory" if requirement.figures["inside_mark"] == "memory" else ""
    return table | {"by_zone": least, "note": f"mass wall, insulated mostly inside{unread}"}


def milder(table: dict[str, Any], requirement: Requirement, assembly: Assembly, zone: str) -> tuple[float, str] | None:
    """The milder figure in a zone, in the unit of the table, with the question it turns on; None where nothing is open."""
    rule, found = requirement.rule["mass"], mass_of(assembly, requirement.rule["mass"])
    outside, inside = cell(table["easier"], zone), cell(table["inside"], zone)
    if found.heavy and found.framed:
        return (min(outside, inside) if found.inside else outside), rule["framed"]
    if found.heavy is None and not found.framed:
        return outside, requirement.rule["easier_if_unframed"]
    if found.heavy and found.inside and inside > outside:
        return inside, rule["disagree"]
    if found.heavy and found.inside and requirement.figures["inside_mark"] == "memory":
        return outside, rule["unread"]
    return None


def _heavy_layer(assembly: Assembly, rule: dict[str, Any]) -> Layer | None:
    """The layer that makes it a mass wall: by its material, or the heaviest where the wall stores enough heat."""
    solid = [one for one in _solid(assembly) if not one.is_cladding]
    by_family = [one for one in solid if one.family in rule["families"] and not one.insulating and not one.member]
    if by_family:
        return max(by_family, key=lambda one: one.thickness.value if one.thickness else 0.0)
    total = _capacity(assembly)
    if total is None or total < rule["capacity"]:
        return None
    return max(solid, key=_stores)


def _solid(assembly: Assembly) -> list[Layer]:
    return [one for one in assembly.layers if one.counts and one.kind == "solid"]


def _capacity(assembly: Assembly) -> float | None:
    """Heat stored per area, kJ/(m2.K); None where a layer lacks a figure."""
    solid = _solid(assembly)
    if any(not (one.thickness and one.density and one.specific_heat) for one in solid):
        return None
    return sum(map(_stores, solid))


def _stores(layer: Layer) -> float:
    if not (layer.thickness and layer.density and layer.specific_heat):
        return 0.0
    return layer.thickness.value * layer.density.value * layer.specific_heat.value / 1000


def _mostly_inside(assembly: Assembly, mass: Layer) -> bool:
    """Half is not more than half."""
    some = [(one.number, alone(one) or 0.0) for one in assembly.layers if one.counts and one.insulating]
    return sum(R for number, R in some if number > mass.number) > sum(R for _, R in some) / 2
