"""The drawing of any junction, at the largest scale that its page holds."""

from collections.abc import Callable, Mapping
from importlib import import_module

from layerfolio.assembly.junction_types import Junction
from layerfolio.assembly.types import Assembly
from layerfolio.drawing.detail.model import Detail
from layerfolio.drawing.figures import Units

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
SCALES = {"metric": (2.0, 5.0, 10.0, 20.0), "customary": (4.0, 8.0, 12.0, 16.0)}
LARGEST = {"metric": 5.0, "customary": 4.0}  # a detail is not drawn larger unless it is asked for


def detail_of(junction: Junction, assemblies: Mapping[str, Assembly], units: Units, scale: float) -> Detail:
    """The model of a junction; how far it reaches along its arms depends on the scale."""
    return _maker(junction)(junction, assemblies, units, scale)


def _maker(junction: Junction) -> Callable[..., Detail]:
    module, name = MAKERS[junction.kind]
    return getattr(import_module(f"layerfolio.drawing.detail.{module}"), name)
