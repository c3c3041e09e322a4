"""The two-period balance of DIN 4108-3: a block of winter wets, a block of summer dries; one steady climate in each."""

from layerfolio.assembly.types import Assembly
from layerfolio.formulas import moisture as f
from layerfolio.formulas.moisture import saturation_pressure
from layerfolio.formulas.vapour import DELTA_0
from layerfolio.studies.climate_year import Year
from layerfolio.studies.condensation.limits import judge_period, overall, reserve_limit, worst
from layerfolio.studies.condensation.section import Column, column
from layerfolio.studies.condensation.string import pressures, rates, taut_string
from layerfolio.studies.condensation.timber import run_off
from layerfolio.studies.condensation.types import LayerValue, Period, TwoPeriodStudy

SOURCE = "din-4108-3-2018"
INDOOR, INDOOR_HUMIDITY, OUTDOOR, OUTDOOR_HUMIDITY = 20.0, 0.50, -5.0, 0.80
SECONDS = 90 * 86400.0
"""Each period lasts 90 days."""
SUMMER_PRESSURE = 1200.0
SUMMER_SATURATION = {"roof": 2000.0}
"""Pa at a wet plane in summer, by kind of assembly; 1700 Pa for walls, floors and ceilings."""
OTHER_SATURATION = 1700.0
R_SI, R_SE, R_SE_VENTILATED = 0.25, 0.04, 0.08
GENERAL_LIMIT, RUN_OFF_LIMIT = 1.0, 0.5
"""Greatest condensate, kg/m2: in general, and at a layer that absorbs nothing."""


def two_period_study(
    assembly: Assembly, expected: tuple[LayerValue, ...], less_favourable: tuple[LayerValue, ...],
    year: Year | None = None,
) -> TwoPeriodStudy:  # fmt: skip
    """Both choices of cups and the verdict on them: *meets* needs both, a difference needs judgement.

    `year` only tells whether the room is damper than the method's own; the method brings its climate with it.
    """
    reserve = reserve_limit(assembly)
    runs = [_period(assembly, values, reserve) for values in (expected, less_favourable)]
    outside = outside_limits(assembly, year)
    verdict = overall([run.verdict for run in runs]) if not outside else "needs judgement"
    return TwoPeriodStudy(runs[0], runs[1], condensate_limit(assembly, runs[0].planes), reserve, verdict, outside)


def outside_limits(assembly: Assembly, year: Year | None) -> tuple[str, ...]:
    """Why the method does not reach an assembly (its own scope, from memory)."""
    found = []
    if year is not None:
        coldest = min(range(12), key=lambda month: year.outdoor_temperature[month])
        if year.indoor_humidity[coldest] > INDOOR_HUMIDITY + 1e-9:
            found.append("the room is damper in the coldest month than the 50 % of the method")
    if assembly.faces == "ground":
        found.append("the assembly lies against the ground, for which the method has no climate")
    if assembly.faces == "unheated space":
        found.append("the assembly faces an unheated space, for which the method has no climate")
    return tuple(found)


def outside_film(assembly: Assembly) -> float:
    """Outside surface resistance of the method, m2.K/W: 0.08 beside a ventilated cavity, 0 to ground."""
    if assembly.faces == "ground":
        return 0.0
    beside_cavity = any(layer.kind == "cavity" and not layer.counts for layer in assembly.layers)
    return R_SE_VENTILATED if beside_cavity else R_SE


def winter(assembly: Assembly, values: tuple[LayerValue, ...]) -> tuple[Column, list[float], list[float]]:
    """Nodes, temperatures and the pressures of the winter block: saturation, with the airs at both ends."""
    nodes = column(values, R_SI, outside_film(assembly))
    temperature = nodes.temperatures(INDOOR, OUTDOOR)
    limit = [saturation_pressure(theta) for theta in temperature]
    limit[0] = min(limit[0], OUTDOOR_HUMIDITY * saturation_pressure(OUTDOOR))
    limit[-1] = min(limit[-1], INDOOR_HUMIDITY * saturation_pressure(INDOOR))
    return nodes, temperature, limit


def _period(assembly: Assembly, values: tuple[LayerValue, ...], reserve_asked: float | None) -> Period:
    nodes, _, limit = winter(assembly, values)
    planes = tuple((between, amount) for _, between, amount in wet_planes(nodes, limit))
    condensed = sum(amount for _, amount in planes)
    evaporated = evaporation(places(nodes, limit), nodes.s_d[-1], summer_saturation(assembly))
    reserve = f.drying_reserve(M_ev=evaporated, M_c=condensed)
    most = condensate_limit(assembly, planes)
    checks = judge_period(assembly, planes, condensed, evaporated, most, reserve_asked)
    return Period(values, planes, condensed, evaporated, reserve, checks, worst([c.verdict for c in checks]))


def summer_saturation(assembly: Assembly) -> float:
    return SUMMER_SATURATION.get(assembly.kind, OTHER_SATURATION)


def wet_nodes(nodes: Column, limit: list[float]) -> list[int]:
    """The nodes at which vapour condenses in winter, from the outside in."""
    return taut_string(nodes.s_d, limit, [0, len(nodes.s_d) - 1])[1:-1]


def wet_planes(nodes: Column, limit: list[float]) -> list[tuple[float, tuple[str, str], float]]:
    """(s_d from outside, between, condensate kg/m2) of each plane; a wet zone in one layer counts as its middle."""
    rate, _, _ = rates(nodes.s_d, limit, taut_string(nodes.s_d, limit, [0, len(nodes.s_d) - 1]))
    zones: list[list[int]] = []
    for node in rate:
        if zones and _one_layer(nodes, zones[-1][-1], node):
            zones[-1].append(node)
        else:
            zones.append([node])
    return [
        (
            (nodes.s_d[zone[0]] + nodes.s_d[zone[-1]]) / 2, _names(nodes, zone),
            sum(f.condensate(g_c=rate[node], t=SECONDS) for node in zone),
        )
        for zone in zones
    ]  # fmt: skip


def places(nodes: Column, limit: list[float]) -> list[tuple[float, float]]:
    """(s_d from outside, condensate kg/m2) of the wet planes, or of the plane nearest to saturation where none is."""
    wet = [(position, amount) for position, _, amount in wet_planes(nodes, limit)]
    return wet or [(critical_position(nodes, limit), 0.0)]


def _one_layer(nodes: Column, before: int, node: int) -> bool:
    """Whether both nodes lie in, or at the faces of, one layer and follow each other."""
    return node == before + 1 and nodes.nodes[before].between[1] == nodes.nodes[node].between[0]


def _names(nodes: Column, zone: list[int]) -> tuple[str, str]:
    return (nodes.nodes[zone[0]].between[0], nodes.nodes[zone[-1]].between[1])


def critical_position(nodes: Column, limit: list[float]) -> float:
    """s_d from outside of the face between two layers that comes nearest to saturation in winter, m; none is wet."""
    pressure = pressures(nodes.s_d, limit, [0, len(nodes.s_d) - 1])
    inner = [k for k in range(1, len(nodes.s_d) - 1) if nodes.nodes[k].fraction == 1.0]
    nearest = max(inner, key=lambda k: pressure[k] / limit[k], default=0)
    return nodes.s_d[nearest] if nearest else nodes.s_d[-1] / 2


def evaporation(planes: list[tuple[float, float]], total: float, saturation: float) -> float:
    """What can leave the planes (s_d from outside, amount) in summer, kg/m2, the last of them taken as never dry.

    Planes at one saturation exchange nothing: only the outermost loses to the outside and the innermost to the room.
    One that runs dry early leaves the longer way to the next.
    """
    stored = dict(planes)
    left, gone = SECONDS, 0.0
    while True:
        outer, inner = min(stored), max(stored)
        out = DELTA_0 * (saturation - SUMMER_PRESSURE) / outer
        into = DELTA_0 * (saturation - SUMMER_PRESSURE) / (total - inner)
        if outer == inner:
            return gone + (out + into) * left
        first, step = min(((outer, stored[outer] / out), (inner, stored[inner] / into)), key=lambda one: one[1])
        if step >= left:
            return gone + (out + into) * left
        gone, left = gone + (out + into) * step, left - step
        stored[outer] -= out * step
        stored[inner] -= into * step
        del stored[first]


def condensate_limit(assembly: Assembly, planes: tuple[tuple[tuple[str, str], float], ...]) -> float:
    """0.5 kg/m2 where one of the layers at a wet plane absorbs nothing, else 1.0."""
    return RUN_OFF_LIMIT if any(run_off(assembly, between) for between, _ in planes) else GENERAL_LIMIT
