"""A wall under the edge of a roof: at the eave, cut along the slope, and at the verge, cut square to it."""

from collections.abc import Mapping

from layerfolio.assembly.junction_types import Junction
from layerfolio.assembly.types import Assembly
from layerfolio.drawing.detail.arm import Arm
from layerfolio.drawing.detail.edge_lines import sheets, traces
from layerfolio.drawing.detail.edge_pieces import edge_pieces
from layerfolio.drawing.detail.edge_place import LOOKOUT, EdgePlace
from layerfolio.drawing.detail.edge_words import look_at, notes, order_of_work, remarks
from layerfolio.drawing.detail.model import Arrow, Break, Detail, Measure, Word
from layerfolio.drawing.figures import Units


def eave(junction: Junction, assemblies: Mapping[str, Assembly], units: Units, scale: float = 10.0) -> Detail:
    """Outside at the left; the roof rises to the right."""
    return _detail(junction, assemblies, units, scale, False)


def verge(junction: Junction, assemblies: Mapping[str, Assembly], units: Units, scale: float = 10.0) -> Detail:
    """Outside at the left; the roof lies level in this section, its rafters are cut."""
    return _detail(junction, assemblies, units, scale, True)


def _detail(junction: Junction, assemblies: Mapping[str, Assembly], units: Units, scale: float, is_verge: bool) -> Detail:
    wall, over = (assemblies[name] for name in junction.of[:2])
    place = EdgePlace(junction, Arm(wall), over, scale, is_verge)
    steep = place.slope >= 2
    return Detail(
        name=f"{junction.kind} {wall.name} {over.name}",
        kind="vertical section square to the slope" if is_verge else "vertical section through a bay",
        pieces=tuple(edge_pieces(place)),
        sheets=sheets(place),
        traces=traces(place),
        notes=notes(place, units),
        measures=_measures(place),
        breaks=_breaks(place),
        arrows=_arrows(place),
        words=(
            Word("OUTSIDE", (place.tail - 8 * scale, place.height(place.roof.courses[0].start, place.tail) + 24 * scale)),
            Word("INSIDE", (place.inner + 13 * scale, place.bottom + (6 if not steep else -3) * scale)),
        ),
        slope=((place.inner + 12 * scale, place.bottom + 22 * scale), place.slope) if steep else None,
        remarks=remarks(place),
        order=order_of_work(place),
        look=look_at(place),
    )


def _measures(place: EdgePlace) -> tuple[Measure, ...]:
    if place.is_ceiling or not place.junction.overhang:
        return ()
    deep, down = (min(LOOKOUT, place.carries.end), 7.0) if place.verge else (place.carries.end, 14.0)
    low = place.height(deep, place.tail) - down * place.scale
    start, end = (place.tail, place.height(0.0, place.tail)), (place.outer, low + 20.0)
    return (Measure(start, end, "x", low, place.junction.overhang),)


def _breaks(place: EdgePlace) -> tuple[Break, ...]:
    over, roof = 4 * place.scale, place.roof.courses
    top, low = place.height(roof[0].start, place.right) + over, place.height(roof[-1].end, place.right) - over
    return (
        Break((place.outer - over, place.bottom), (place.inner + over, place.bottom)),
        Break((place.right, top), (place.right, low)),
    )


def _arrows(place: EdgePlace) -> tuple[Arrow, ...]:
    found = []
    walls = [one for one in place.wall.zone("rain") if one.layer.cavity == "ventilated"]
    found += [Arrow((one.middle, place.bottom + 18 * place.scale)) for one in walls[-1:]]
    roofs = [one for one in place.roof.zone("rain") if one.layer.cavity == "ventilated"]
    for one in roofs[-1:]:
        x = place.frame_end * 0.5
        found.append(Arrow(place.point(one.middle, x), place.slope, towards_viewer=place.verge))
    return tuple(found)
