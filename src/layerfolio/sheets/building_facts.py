"""What the building section needs beside the junctions: heights of the storeys and how far the ridge is, in m, with its words."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import radians, tan
from typing import Any

from layerfolio.assembly.junction_types import Junction
from layerfolio.assembly.types import Assembly

OUT_OF_PLUMB = 0.25  # share by which the ridge's height may differ from half the spacing times the slope


@dataclass(frozen=True, slots=True)
class BuildingFacts:
    storeys: tuple[float, ...]
    span: float | None
    remarks: tuple[str, ...]


def building_facts(project: Any, assemblies: dict[str, Assembly], junctions: Sequence[Junction]) -> BuildingFacts:
    """From `storeys`, else from the height of the lines of bracing; the ridge from the spacing of the lines below the eaves."""
    storeys = tuple(one.height.value for one in project.storeys if one.height)
    remarks = []
    lines = list((project.wall_lines or {}).values())
    if len(storeys) < len(project.storeys) or not storeys:
        heights = [one.height.value for one in lines if one.height]
        storeys = (heights[0],) if heights and _count(project) == 1 else ()
        if storeys:
            remarks.append("The height of the storey is that of the lines of bracing.")
    eave = next((one for one in junctions if one.kind == "eave" and not one.cannot), None)
    span = _span(lines, assemblies[eave.of[1]]) if eave else None
    if span:
        remarks.append("The ridge stands midway between the lines of bracing below the eaves.")
    return BuildingFacts(storeys, span, tuple(remarks))


def _count(project: Any) -> int:
    return (project.building.storeys if project.building else None) or 1


def _span(lines: list[Any], roof: Assembly) -> float | None:
    """Half the spacing of the lines whose stated rise to the ridge fits the slope of the roof."""
    if roof.kind != "roof" or not 2.0 < roof.slope <= 60.0:
        return None
    fit = []
    for one in lines:
        spacing, rise = getattr(one, "line_spacing", None), getattr(one, "eave_to_ridge", None)
        if spacing and rise:
            half = spacing.value / 2
            off = abs(half * tan(radians(roof.slope)) / rise.value - 1)
            fit.append((off, half))
    return min(fit)[1] if fit and min(fit)[0] <= OUT_OF_PLUMB else None
