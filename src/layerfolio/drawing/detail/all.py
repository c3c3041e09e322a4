"""The drawing of any junction, at the largest scale that its page holds."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from importlib import import_module

from layerfolio.assembly.junction_types import Junction
from layerfolio.assembly.types import Assembly
from layerfolio.drawing.detail.fit import fits
from layerfolio.drawing.detail.model import Detail
from layerfolio.drawing.detail.paper import drawing_of
from layerfolio.drawing.figures import Units
from layerfolio.drawing.marks import Drawing

MAKERS = {  # module and function; loaded when a project has such a junction
    "sill": ("sill", "sill"),
    "rim": ("rim", "rim"),
    "eave": ("roof_edge", "eave"),
    "verge": ("roof_edge", "verge"),
    "ridge": ("ridge", "ridge"),
    "outside corner": ("corners", "outside_corner"),
    "inside corner": ("corners", "inside_corner"),
    "window head": ("window", "head"),
    "window sill": ("window", "sill"),
    "window jamb": ("window", "jamb"),
    "penetration": ("penetration", "penetration"),
}
SCALES = {"metric": (5.0, 10.0, 20.0), "customary": (4.0, 8.0, 12.0, 16.0)}
SMALLER = {"metric": (25.0, 50.0), "customary": (24.0, 48.0)}  # where even the last does not fit


@dataclass(frozen=True, slots=True)
class Drawn:
    """A drawing, and what its sheet says beside it."""

    drawing: Drawing
    detail: Detail


def junction_drawn(
    junction: Junction,
    assemblies: Mapping[str, Assembly],
    units: Units,
    *,
    width: float = 180.0,
    room: float | Callable[[Detail], float] = 170.0,
    scale: float | None = None,
    light: bool = False,
) -> Drawn:
    """One junction `width` mm wide and, where it can be, at most `room` mm high (which its texts may decide). How far its arms
    reach depends on the scale.
    """

    for one in (scale,) if scale else (*SCALES[units], *SMALLER[units]):
        detail = detail_of(junction, assemblies, units, one)
        high = room(detail) if callable(room) else room
        if fits(detail, one, units, width, high):
            break
    return Drawn(drawing_of(detail, units=units, width=width, room=high, scale=one, light=light), detail)


def detail_of(junction: Junction, assemblies: Mapping[str, Assembly], units: Units, scale: float) -> Detail:
    """The model of a junction at one scale."""
    return _maker(junction)(junction, assemblies, units, scale)


def _maker(junction: Junction) -> Callable[..., Detail]:
    module, name = MAKERS[junction.kind]
    return getattr(import_module(f"layerfolio.drawing.detail.{module}"), name)
