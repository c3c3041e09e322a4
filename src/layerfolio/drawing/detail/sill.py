"""The foot of a wall: on the edge of a slab, or on a floor with joists over a foundation, a beam or posts.

The top of the floor's carrying layers (slab, or deck on the joists) is y = 0, the outer face of the wall's frame x = 0.
"""

from collections.abc import Mapping

from layerfolio.assembly.junction_types import Junction
from layerfolio.assembly.types import Assembly
from layerfolio.drawing.detail.arm import Arm
from layerfolio.drawing.detail.model import Arrow, Break, Detail, Word
from layerfolio.drawing.detail.sill_floor import floor_pieces
from layerfolio.drawing.detail.sill_lines import sheets, traces
from layerfolio.drawing.detail.sill_measures import measures
from layerfolio.drawing.detail.sill_place import SillPlace
from layerfolio.drawing.detail.sill_wall import wall_pieces
from layerfolio.drawing.detail.sill_words import look_at, notes, order_of_work, remarks
from layerfolio.drawing.figures import Units


def sill(junction: Junction, assemblies: Mapping[str, Assembly], units: Units, scale: float = 5.0) -> Detail:
    """A vertical section through a bay of the wall, outside at the left."""
    wall, floor = (assemblies[name] for name in junction.of[:2])
    place = SillPlace(junction, Arm(wall), floor, scale)
    pieces = (*wall_pieces(place), *floor_pieces(place))
    return Detail(
        name=f"sill {wall.name} {floor.name}",
        kind="vertical section through a bay",
        pieces=pieces,
        sheets=sheets(place),
        traces=traces(place),
        notes=notes(place, units),
        measures=measures(place, units),
        breaks=_breaks(place),
        arrows=_arrows(place),
        words=(
            Word("OUTSIDE", (place.outer - 22 * scale, place.top - 6 * scale)),
            Word("INSIDE", (place.inner + 14 * scale, place.top - 6 * scale)),
        ),
        remarks=remarks(place),
        order=order_of_work(place),
        look=look_at(place),
    )


def _breaks(place: SillPlace) -> tuple[Break, ...]:
    over = 4 * place.scale
    up = max(0.0, place.finish)
    return (
        Break((place.outer - over, place.top), (place.inner + over, place.top)),
        Break((place.right, up + over), (place.right, place.bottom - over)),
        *((Break((place.floor_left - over, place.bottom), (place.right + over, place.bottom)),) if place.goes_on_below else ()),
    )


def _arrows(place: SillPlace) -> tuple[Arrow, ...]:
    found = [one for one in place.wall.zone("rain") if one.layer.cavity == "ventilated"]
    return tuple(Arrow((one.middle, place.foot + 24 * place.scale)) for one in found[-1:])
