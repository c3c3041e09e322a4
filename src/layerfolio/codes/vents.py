"""Vents of a roof space as the project file states them."""

from typing import NamedTuple

from layerfolio.assembly.types import Assembly
from layerfolio.codes.context import Context
from layerfolio.codes.stated import figure_of


class Vents(NamedTuple):
    """Net free areas and the area they serve, m2; None where they are not given."""

    low: float | None
    high: float | None
    served: float | None

    @property
    def missing(self) -> list[str]:
        names = ("vents.low", "vents.high", "vents.roof_area")
        return [name for name, one in zip(names, self, strict=True) if one is None]


def vents_of(assembly: Assembly, about: Context) -> Vents:
    """The vents of an assembly; without `vents.roof_area` they serve its own area."""
    served = figure_of(about, assembly.name, "vents.roof_area") or (assembly.area.value if assembly.area else None)
    return Vents(*(figure_of(about, assembly.name, f"vents.{key}") for key in ("low", "high")), served)
