"""The building section on paper."""

from collections.abc import Mapping, Sequence

from layerfolio.assembly.junction_types import Junction
from layerfolio.assembly.types import Assembly
from layerfolio.drawing.building.cut import BuildingCut
from layerfolio.drawing.building.section import building_section
from layerfolio.drawing.detail.all import Drawn
from layerfolio.drawing.detail.fit import fits
from layerfolio.drawing.detail.paper import drawing_of
from layerfolio.drawing.figures import Units

SHOWN = (2200.0, 1800.0, 1500.0, 1200.0, 900.0)  # mm of the span that are drawn before a smaller scale is taken
SCALES = {"metric": (20.0, 25.0, 50.0, 100.0), "customary": (16.0, 24.0, 32.0, 48.0, 96.0)}


def building_drawn(
    junctions: Sequence[Junction],
    assemblies: Mapping[str, Assembly],
    storeys: Sequence[float],
    span: float | None,
    units: Units,
    *,
    width: float = 180.0,
    room: float = 190.0,
    light: bool = False,
) -> Drawn | None:
    """`storeys`: heights in m from the ground up; `span`: m from the frame of the wall to the ridge, None where nobody says.

    None where no wall stands on a floor or under a roof.
    """
    if BuildingCut(junctions, assemblies, storeys, span, 20.0).wall is None:
        return None
    large, *small = SCALES[units]
    tries = [(large, None), (small[0], None), *((small[0], shown) for shown in SHOWN), *((one, None) for one in small[1:])]

    def model(one: tuple[float, float | None]):
        scale, shown = one
        return building_section(BuildingCut(junctions, assemblies, storeys, span, scale, shown))

    for one in tries:
        detail = model(one)
        if fits(detail, one[0], units, width, room):
            break
    return Drawn(drawing_of(detail, units=units, width=width, room=room, scale=one[0], light=light), detail)
