"""The section of an assembly as a drawing: level for walls, floors, slabs, ceilings, flat roofs; turned for others."""

from typing import Literal

from layerfolio.assembly.types import Assembly
from layerfolio.drawing import section_level, section_slope
from layerfolio.drawing.figures import Units
from layerfolio.drawing.layout_framing import view_of
from layerfolio.drawing.marks import Drawing

Page = Literal["letter", "a4", "tabloid", "a3"]


def section(
    assembly: Assembly,
    *,
    units: Units = "metric",
    width: float = 180.0,
    scale: float | None = None,
    page: Page = "letter",
    notes: bool = False,
) -> Drawing:
    """One assembly, cut, `width` mm wide and as high as it needs.

    Without `scale` (a denominator) the largest fitting scale is taken. `page` decides whether the key of control lines
    stands under the drawing (letter, A4) or in the strip of the sheet (tabloid, A3); `notes` puts short names beside
    the tags (sloped sections always have them). What could not be drawn true is said in `Drawing.notes`.
    """
    key = page in ("letter", "a4")
    if view_of(assembly) == "slope":
        return section_slope.sloped(assembly, units, width, scale, key)
    return section_level.level(assembly, units, width, scale, key, notes)
