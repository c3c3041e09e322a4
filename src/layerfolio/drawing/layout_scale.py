"""Which scale a section is drawn at, and how that scale is written."""

from layerfolio.assembly.types import Assembly
from layerfolio.drawing.figures import Units
from layerfolio.drawing.layout_framing import FIRST, framings, view_of
from layerfolio.drawing.layout_stack import LEAST_CUT, SHEET, THINNEST, full_depth, paper_depth, stacked

DEEPEST = 100.0  # mm on paper
SHALLOW = 30.0  # mm on paper: below this a larger scale serves better
SCALES = {"metric": (5, 10, 20), "customary": (4, 8, 12, 16)}
BASE = {"metric": 5, "customary": 8}
LARGER = {"metric": 2, "customary": 4}
_WRITTEN = {
    1: "12\" = 1'-0\"", 2: "6\" = 1'-0\"", 4: "3\" = 1'-0\"", 8: "1 1/2\" = 1'-0\"", 12: "1\" = 1'-0\"",
    16: "3/4\" = 1'-0\"", 24: "1/2\" = 1'-0\"", 32: "3/8\" = 1'-0\"", 48: "1/4\" = 1'-0\"", 96: "1/8\" = 1'-0\"",
    192: "1/16\" = 1'-0\"", 384: "1/32\" = 1'-0\"",
}  # fmt: skip


def scale_text(scale: float, units: Units) -> str:
    """`1 : 5`, or with the customary way of writing it in front."""
    plain = f"1 : {scale:g}"
    written = _WRITTEN.get(scale) if units == "customary" else None
    return f"{written} ({plain})" if written else plain


def level_scale(assembly: Assembly, units: Units, length: float) -> float:
    """Scale of an unturned section drawn `length` mm long: the first that is not too deep and shows two members."""
    depth = full_depth(assembly, 1)
    spacing = lead_spacing(assembly)
    small = LARGER[units]
    if depth / SCALES[units][0] < SHALLOW and depth / small <= DEEPEST and not spacing:
        return small
    deep_enough = [one for one in SCALES[units] if depth / one <= DEEPEST + 1e-6]
    shows_two = [one for one in deep_enough if spacing / one + 2 * FIRST <= length + 1e-6]
    wanted = (shows_two or deep_enough or SCALES[units][-1:])[0]
    base = BASE[units]
    return base if wanted > base and too_thin(assembly, wanted, base) and can_be_cut(assembly, base) else wanted


def lead_spacing(assembly: Assembly) -> float:
    """Spacing of the members that the section should show twice, real mm; 0 without any."""
    found = framings(stacked(assembly, 5, 1e9), view_of(assembly), 134.0)
    cut = [one for one in found if one.seen == "cut"]
    return max((one.spacing * 5 for one in cut if one.band.layer.kind == "solid" or len(cut) == 1), default=0.0)


def too_thin(assembly: Assembly, scale: float, base: float) -> bool:
    """Whether a layer would turn into a mere line at `scale` that still has a depth at `base`."""
    for layer in assembly.layers:
        if layer.thickness and layer.thickness.value >= SHEET:
            deep = layer.thickness.value * 1000
            if deep / scale < THINNEST <= deep / base:
                return True
    return False


def can_be_cut(assembly: Assembly, scale: float, limit: float = DEEPEST) -> bool:
    """Whether cutting one thick layer short brings the section within the limit."""
    depths = [paper_depth(one, scale) for one in assembly.layers if one.kind == "solid" and one.thickness]
    excess = full_depth(assembly, scale) - limit
    return excess <= 0 or max(depths, default=0.0) - excess >= LEAST_CUT
