"""Choices that a reviewer does not see every day, each found by a small named rule, each with an explanation sheet."""

from collections.abc import Mapping
from dataclasses import dataclass

from layerfolio.studies.types import ThermalStudy, VapourStudy

INSIDE_PANEL = "inside-panel-braces-and-controls-vapour"


@dataclass(frozen=True, slots=True)
class Explanation:
    """`question` names the explanation (templates/explanations/<question>.txt); `because` says why it was raised."""

    question: str
    assembly: str
    layer: str
    because: str


def find_explanations(
    thermal: Mapping[str, ThermalStudy], vapour: Mapping[str, VapourStudy]
) -> tuple[Explanation, ...]:
    """Every explanation that the project raises, in the order of its assemblies."""
    found = (inside_panel(thermal[name], vapour[name]) for name in thermal)
    return tuple(one for one in found if one)


def inside_panel(thermal: ThermalStudy, vapour: VapourStudy) -> Explanation | None:
    """Structural sheathing on the room side of the main insulation that is the vapour control layer as well."""
    control = vapour.control
    if control is None or "bracing" not in control.layer.serves or vapour.main_insulation is None:
        return None
    main = thermal.assembly.layer(vapour.main_insulation)
    if control.layer.number < main.number:
        return None
    because = f"layer {control.layer.number} serves bracing and vapour control and lies inside the main insulation"
    return Explanation(INSIDE_PANEL, thermal.assembly.name, control.layer.name, because)
