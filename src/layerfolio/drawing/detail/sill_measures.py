"""Dimensions at the foot of a wall."""

from collections.abc import Iterator

from layerfolio.drawing.detail.model import Measure
from layerfolio.drawing.detail.sill_place import SillPlace
from layerfolio.drawing.detail.wholes import whole
from layerfolio.drawing.figures import Units


def measures(place: SillPlace, units: Units) -> tuple[Measure, ...]:
    """Clearance of the cladding over the ground, thickness of the edge insulation, thickness of the wall."""
    return (*_clearance(place), *_edge(place), *whole(place.wall, place.top + 7 * place.scale, place.top, units))


def _clearance(place: SillPlace) -> Iterator[Measure]:
    rain = place.wall.zone("rain") or place.wall.zone("outer") or place.frame
    x, line = rain[0].start, place.drip - 8 * place.scale
    if place.foot - place.ground < 1.0:
        return
    value = (place.foot - place.ground) / 1000
    yield Measure((x, place.ground), (x, place.foot), "y", line, value)


def _edge(place: SillPlace) -> Iterator[Measure]:
    if place.edge:
        low = place.bottom - 6 * place.scale
        yield Measure((-place.edge[0], place.bottom), (0.0, place.bottom), "x", low, place.edge[0] / 1000)
