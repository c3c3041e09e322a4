"""What is weighed of a part of the building: its own weight, on plan where it slopes, and that which counts beside it."""

from dataclasses import dataclass
from functools import cached_property
from typing import Any

from layerfolio.assembly.types import Assembly
from layerfolio.codes.context import Context
from layerfolio.studies.dead_load import dead_load
from layerfolio.studies.structure_types import DeadLoad

TOGETHER = {"roof": "ceiling", "ceiling": "roof"}
"""Parts whose weights count together, each with the other."""


@dataclass(frozen=True)
class Weighed:
    """A part with those that count beside it; loads in Pa, per area of plan where the part has one."""

    assembly: Assembly
    rule: dict[str, Any]
    about: Context

    @cached_property
    def load(self) -> DeadLoad:
        return dead_load(self.assembly)

    @cached_property
    def others(self) -> dict[str, tuple[Assembly, DeadLoad]]:
        """The other part of roof and ceiling, by name."""
        around, other = self.about.envelope.thermal.values(), TOGETHER.get(self.assembly.kind)
        return {one.assembly.name: (one.assembly, dead_load(one.assembly)) for one in around if one.assembly.kind == other}

    @cached_property
    def heaviest(self) -> tuple[str, float]:
        """The other part that weighs most, and its weight; ("", 0.0) without any."""
        weights = [(on_plan(load), name) for name, (_, load) in self.others.items()]
        return max(((name, figure) for figure, name in weights), key=lambda one: one[1], default=("", 0.0))

    @property
    def sure(self) -> float:
        """What counts by any reading: on plan where the clause says so, else in the part's own plane; the part alone."""
        return on_plan(self.load) if self.rule.get("projection") else self.load.total

    @property
    def all(self) -> float:
        """What counts by the strictest reading: on plan, with the heaviest of the other part."""
        return on_plan(self.load) + self.heaviest[1]


def on_plan(load: DeadLoad) -> float:
    return load.total if load.on_plan is None else load.on_plan


def frame_of(assembly: Assembly) -> str:
    """metal, wood, or nothing for a wall without a frame."""
    members = [one.member for one in assembly.layers if one.member and one.kind == "solid"]
    return "" if not members else "metal" if any(one.is_metal for one in members) else "wood"
