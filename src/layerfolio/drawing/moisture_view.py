"""What a moisture picture shows of a study: the worst and the best month, the wet zones and their names."""

from collections.abc import Sequence
from dataclasses import dataclass

from layerfolio.assembly.types import Assembly
from layerfolio.studies.climate_year import MONTHS, outside_of
from layerfolio.studies.condensation.shown import months_of, nearest
from layerfolio.studies.condensation.types import CondensationStudy, Node, Profile, Run

__all__ = ["MonthView", "Zone", "months_shown", "nearest", "node_words", "shown_zones", "zones"]
SURFACE = "the surface"
MOST_ZONES = 3  # rows of bars; beyond them the others stand together


@dataclass(frozen=True, slots=True)
class Zone:
    """A wet plane, or neighbouring ones inside one layer; `node` is the wettest of them. Amounts kg/m2, month by month.

    `amounts` stand at the month's end, `flows` are what the month adds (negative: takes away).
    """

    name: str
    nodes: tuple[int, ...]
    node: int
    amounts: tuple[float, ...]
    flows: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class MonthView:
    """One month to draw: its profile and the airs at both ends (degC)."""

    profile: Profile
    outside: float
    inside: float
    worst: bool

    @property
    def name(self) -> str:
        return self.profile.month


def months_shown(study: CondensationStudy) -> tuple[MonthView, MonthView]:
    """The month that wets most and the one that dries most; in a dry year nearest to and farthest from saturation."""
    run = study.expected
    assert run is not None and study.year is not None
    most, least = months_of(run)
    return _view(study, run, most, True), _view(study, run, least, False)


def _view(study: CondensationStudy, run: Run, name: str, worst: bool) -> MonthView:
    month = MONTHS.index(name)
    outside = outside_of(study.assembly.faces, study.year).temperature[month]
    return MonthView(run.profiles[month], outside, study.year.indoor_temperature[month], worst)


def zones(assembly: Assembly, run: Run) -> tuple[Zone, ...]:
    """Every zone that was wet in the year, from the outside in."""
    groups: list[list[int]] = []
    for position, (node, _) in enumerate(run.planes()):
        before = run.planes()[groups[-1][-1]][0] if groups else None
        if before is not None and _one_zone(run.nodes, before, node):
            groups[-1].append(position)
        else:
            groups.append([position])
    return tuple(_zone(assembly, run, group) for group in groups)


def _one_zone(nodes: Sequence[Node], before: int, node: int) -> bool:
    """Whether two neighbouring nodes belong to one zone inside a layer, not to its two faces."""
    inside = any(nodes[k].between[0] == nodes[k].between[1] for k in (before, node))
    return node == before + 1 and inside and nodes[before].between[1] == nodes[node].between[0]


def _zone(assembly: Assembly, run: Run, positions: list[int]) -> Zone:
    planes = run.planes()
    nodes = tuple(planes[p][0] for p in positions)
    most = max(positions, key=lambda p: max(month.planes[p].accumulated for month in run.months))
    name = zone_name(assembly, [run.nodes[node] for node in nodes])
    amounts = tuple(sum(month.planes[p].accumulated for p in positions) for month in run.months)
    flows = tuple(sum(month.planes[p].flow for p in positions) for month in run.months)
    return Zone(name, nodes, planes[most][0], amounts, flows)


def zone_name(assembly: Assembly, nodes: Sequence[Node]) -> str:
    """`4|5` for a face between two layers, `in 5` for a zone inside a layer, `4|5 and in 5` for both."""
    numbers = {layer.name: layer.number for layer in assembly.layers}
    faces = [one for one in nodes if one.between[0] != one.between[1]]
    inside = [numbers[one.between[0]] for one in nodes if one.between[0] == one.between[1]]
    named = [f"{numbers[a]}|{numbers[b]}" for a, b in (one.between for one in faces) if a in numbers and b in numbers]
    layer = f"{inside[0]}" if inside else ""
    if not named:
        return f"in {layer}" if layer else SURFACE
    return " and ".join(named) + (f" and in {layer}" if layer else "")


def node_words(assembly: Assembly, node: Node) -> str:
    """`plane 4|5`, or `in layer 5`."""
    name = zone_name(assembly, [node])
    if name == SURFACE:
        return name
    return f"layer {name.removeprefix('in ')}" if name.startswith("in ") else f"plane {name}"


def shown_zones(found: Sequence[Zone]) -> tuple[Zone, ...]:
    """At most three rows: the wettest, and all others together in the last."""
    if len(found) <= MOST_ZONES:
        return tuple(found)
    by_amount = sorted(found, key=lambda zone: max(zone.amounts), reverse=True)
    kept = [zone for zone in found if zone in by_amount[: MOST_ZONES - 1]]
    rest = [zone for zone in found if zone not in kept]
    amounts = tuple(map(sum, zip(*(zone.amounts for zone in rest), strict=True)))
    flows = tuple(map(sum, zip(*(zone.flows for zone in rest), strict=True)))
    others = Zone(f"the {len(rest)} others together", tuple(n for zone in rest for n in zone.nodes), rest[0].node, amounts, flows)
    return (*kept, others)
