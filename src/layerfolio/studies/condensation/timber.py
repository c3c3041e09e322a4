"""Wood in the section, and which layers water runs off: what the limits on condensate ask about."""

from typing import NamedTuple

from layerfolio.assembly.types import Assembly, Layer
from layerfolio.formulas.moisture import wood_moisture_rise

SOLID = ("timber", "timber-board")
SOLID_LIMIT, PANEL_LIMIT = 0.05, 0.03
"""Greatest rise of moisture content by mass: solid wood, wood-based panels (din-4108-3-2018, read in study notes)."""
WITHOUT_LIMIT = ("wood-wool-board",)
"""Wood-based, but left out of the limits on the moisture content (din-4108-3-2018, read in study notes)."""


class WoodRise(NamedTuple):
    """Rise of one layer's moisture content by mass if it takes all the condensate of a plane; None: no density."""

    layer: Layer
    condensate: float
    rise: float | None
    limit: float


def wood_rise(layer: Layer, condensate: float) -> WoodRise | None:
    """The rise that so much condensate (kg/m2) makes in a layer; None for a layer without such a limit."""
    if not layer.timber or layer.material in WITHOUT_LIMIT:
        return None
    limit = SOLID_LIMIT if layer.family in SOLID else PANEL_LIMIT
    if layer.density is None or layer.thickness is None:
        return WoodRise(layer, condensate, None, limit)
    rise = wood_moisture_rise(M_c=condensate, rho=layer.density.value, d=layer.thickness.value)
    return WoodRise(layer, condensate, rise, limit)


def enclosed_timber(assembly: Assembly) -> str:
    """What timber is closed in by the layers that count, in words; empty where none is.

    Framing counts between two other layers, a timber layer wherever it is not the room's own face.
    """
    counted = [layer for layer in assembly.layers if layer.counts]
    for position, layer in enumerate(counted):
        covered = 0 < position < len(counted) - 1
        member = layer.member
        if covered and member and member.share.value > 0 and not member.is_metal:
            return f"{member.title} in layer {layer.number}"
        if layer.timber and position < len(counted) - 1:
            return f"layer {layer.number} ({layer.title})"
    return ""


def run_off(assembly: Assembly, between: tuple[str, str]) -> tuple[str, ...]:
    """Names of the layers at a plane that absorb nothing, so that water runs off them."""
    names = dict.fromkeys(between)
    return tuple(layer.name for layer in assembly.layers if layer.name in names and not layer.absorbent)
