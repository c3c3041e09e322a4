"""What a sheet must say about a drawing that does not show everything true to scale."""

from layerfolio.drawing.cut import Cut
from layerfolio.drawing.fasteners import pin_note
from layerfolio.drawing.figures import Units, figure
from layerfolio.drawing.layout_framing import Framing, View
from layerfolio.drawing.layout_stack import Band, Stack
from layerfolio.drawing.seams import seam_note


def layout_notes(
    stack: Stack, framing: tuple[Framing, ...], unknown: list[str], units: Units, view: View
) -> tuple[str, ...]:
    """Sentences without the closing stop, in the order of the layers from the top of the drawing."""
    notes = [note for band in stack.bands for note in _of_band(band, units)]
    notes += [note for one in framing for note in _of_framing(one, units, view)]
    notes += [f"No hatch is known for {one!r}: drawn as a plain outline" for one in dict.fromkeys(unknown)]
    return tuple(notes)


def notes_of(cut: Cut, unknown: list[str]) -> tuple[str, ...]:
    """All notes of a section: of layers and framing, then of fasteners and seams."""
    notes = layout_notes(cut.stack, cut.framing, unknown, cut.units, cut.view)
    return (*notes, *(pin_note(one, cut.units) for one in cut.pins), *seam_note(cut.seams))


def _of_band(band: Band, units: Units) -> list[str]:
    name = f"Layer {band.layer.number} ({band.layer.title})"
    if band.nominal:
        return [f"{name}: thickness not given: not to scale, and no overall figure"]
    if band.cut_short:
        return [f"{name} is broken: its full thickness is written"]
    if band.form == "thin":
        return [f"{name}: thickness not to scale"]
    if band.form == "sheet" and band.layer.thickness:
        text = figure(band.layer.thickness, units).text + ("" if units == "customary" else " mm")
        return [f"{name}: thickness not to scale; its {text} is not in the chain"]
    return []


def _of_framing(one: Framing, units: Units, view: View) -> list[str]:
    name = f"{one.tag} ({one.member.title or one.member.name})"
    if one.seen == "no":
        share = f", {one.member.share.value * 100:g} % of the area," if one.member.share else ""
        return [f"{name}{share} is not drawn: its width and spacing are not both given"]
    if one.seen == "along" and view in ("slope", "upright"):
        return []  # what runs up is seen along its length in every section that is cut from bottom to top
    if one.seen == "along":
        spacing = figure(one.member.spacing, units).text + ("" if units == "customary" else " mm")
        return [f"{name} runs along the section at {spacing} and is seen beyond the cut"]
    if len(one.centres) < 2:
        spacing = figure(one.member.spacing, units).text + ("" if units == "customary" else " mm")
        return [f"{name}: one of those at {spacing} is shown"]
    return []
