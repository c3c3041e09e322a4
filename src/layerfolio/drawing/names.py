"""Short names beside tags, and the words for the two sides of an assembly."""

from layerfolio.assembly.types import Assembly, Layer
from layerfolio.drawing.figures import Units, figure
from layerfolio.drawing.layout_framing import Framing
from layerfolio.drawing.layout_stack import Band

NBSP = "\u00a0"
_FACES = {"vented space": "VENTED SPACE", "unheated space": "UNHEATED SPACE", "ground": "GROUND"}


def sides(assembly: Assembly) -> tuple[str, str]:
    """The words above and below the drawing: the outside first, except for floors and slabs."""
    outside = _FACES.get(assembly.faces, "OUTSIDE")
    inside = "INSIDE" if assembly.kind in ("wall", "roof", "foundation-wall") else "ROOM"
    return (inside, outside) if assembly.kind in ("floor", "slab") else (outside, inside)


def layer_note(band: Band, units: Units | None) -> str:
    """`hemp batts 184`: name and thickness; without `units` the name alone."""
    return layer_words(band.layer, units if band.form != "sheet" else None)


def layer_words(layer: Layer, units: Units | None) -> str:
    """The same for a layer that is not laid out on paper; a membrane's name alone."""
    title = layer.title
    if len(title) > 1 and not title[1].isupper() and not title[1].isdigit():
        title = title[0].lower() + title[1:]
    thick = figure(layer.thickness, units).text if units and layer.thickness else ""
    thick = thick.replace(" ", NBSP)
    return f"{title} {thick}" if thick and not title.endswith(thick) else title


def member_note(frame: Framing, units: Units) -> str:
    """`stud 38 × 184`."""
    if frame.member.width is None:
        return frame.member.name
    wide = figure(frame.member.width, units).text.removesuffix('"').replace(" ", NBSP)
    thickness = frame.band.layer.thickness
    if thickness is None:
        return f"{frame.member.name} {wide}"
    deep = figure(thickness, units).text.replace(" ", NBSP)
    return f"{frame.member.name} {wide}{NBSP}×{NBSP}{deep}"
