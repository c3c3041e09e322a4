"""The section of an assembly as a drawing: level for walls, floors, slabs, ceilings, flat roofs; turned for others."""

from typing import Literal

from layerfolio.assembly.types import Assembly
from layerfolio.drawing.figures import Units
from layerfolio.drawing.layout_framing import view_of
from layerfolio.drawing.lighter import lighter
from layerfolio.drawing.marks import Drawing

Page = Literal["letter", "a4", "tabloid", "a3"]
Wanted = Literal["plan", "vertical"]
NO_PLAN = "a {} is cut upright: it has no section in plan"
WALLS = ("wall", "foundation-wall")


def section(
    assembly: Assembly,
    *,
    units: Units = "metric",
    width: float = 180.0,
    scale: float | None = None,
    page: Page = "letter",
    notes: bool = False,
    view: Wanted | None = None,
    room: float | None = None,
    light: bool = False,
) -> Drawing:
    """One assembly, cut, `width` mm wide and as high as it needs.

    Without `scale` (a denominator) the largest fitting scale is taken. `page` decides whether the key of control lines
    stands under the drawing (letter, A4) or in the strip of the sheet (tabloid, A3); `notes` puts short names beside
    the tags (sloped and upright sections always have them). Walls are cut level, or, with `view` "vertical", from top to
    bottom, no taller than `room` mm; all others are cut upright anyway, and ValueError says so of "plan". `light` thins
    the hatches. What could not be drawn true is said in `Drawing.notes`.
    """
    drawing = _drawn(assembly, units, width, scale, page, notes, view, room)
    return lighter(drawing) if light else drawing


def _drawn(assembly, units, width, scale, page, notes, view, room) -> Drawing:
    from layerfolio.drawing import section_level, section_slope, section_upright

    key = page in ("letter", "a4")
    if view == "plan" and assembly.kind not in WALLS:
        raise ValueError(NO_PLAN.format(assembly.kind))
    if view == "vertical" and assembly.kind in WALLS:
        return section_upright.upright(assembly, units, width, scale, key, room)
    if view_of(assembly) == "slope":
        return section_slope.sloped(assembly, units, width, scale, key)
    return section_level.level(assembly, units, width, scale, key, notes)
