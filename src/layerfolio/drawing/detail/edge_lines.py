"""Membranes, gutter, tape and control lines where a wall meets the edge of a roof."""

from collections.abc import Iterator
from math import cos, pi, sin

from layerfolio.assembly.courses import Course
from layerfolio.drawing.detail.edge_pieces import HEAD
from layerfolio.drawing.detail.edge_place import EdgePlace
from layerfolio.drawing.detail.model import Sheet, Trace
from layerfolio.drawing.detail.traces import depth_of, insulation_middle, served, sheet_role, tight_pairs
from layerfolio.drawing.marks import Point

GUTTER = 50.0  # mm, radius as drawn
OVER = 45.0  # mm that the covering passes the fascia


def sheets(place: EdgePlace) -> tuple[Sheet, ...]:
    """Membranes of both, then what is added at the edge."""
    return (*_of_wall(place), *_of_roof(place), *_gutter(place), *_verge_flashing(place), *_mesh(place), *_tape(place))


def _of_wall(place: EdgePlace) -> Iterator[Sheet]:
    """A wall's outer membrane ends under the roof's outer boards; an inner one stops at the roof's inner layers."""
    for one in place.wall.courses:
        if not one.sheet:
            continue
        if one.zone in ("rain", "outer"):
            d, low = place.under_outer, HEAD if one.zone == "rain" else 0.0
        else:
            d, low = place.wall_top(one), 0.0
        ends = (one.start, place.bottom), (one.start, place.height(d, one.start) - low)
        yield Sheet(ends, sheet_role(one), place.wall.name(one.layer))


def _of_roof(place: EdgePlace) -> Iterator[Sheet]:
    for one in place.roof.courses:
        if one.sheet:
            start = place.outer_edge if place.has_lookouts else place.tail - (OVER if one.zone == "rain" else 0.0)
            if one.zone in ("frame", "inner"):
                start = place.frame_end if one.zone == "inner" else 0.0
            ends = place.point(one.start, start), place.point(one.start, place.right)
            yield Sheet(ends, sheet_role(one), place.roof.name(one.layer))


def _gutter(place: EdgePlace) -> Iterator[Sheet]:
    if place.verge or place.is_ceiling or place.slope < 2:
        return
    x, y = place.tail - GUTTER - 4.0, place.height(0.0, place.tail) - 6.0
    arc = [(x + GUTTER * cos(t), y + GUTTER * sin(t)) for t in (pi + n * pi / 12 for n in range(13))]
    yield Sheet(((arc[0][0] - 4.0, y + 6.0), *arc, (place.tail - 1.0, y)), "flashing", "gutter")
    if under := served(place.roof, "W"):  # what drains over the underlay drops into the gutter
        edge = place.point(under.end + 1.0, place.tail - 22.0)
        line = place.point(under.end + 1.0, place.tail + 110.0), edge, (edge[0] - 4.0, edge[1] - 26.0)
        yield Sheet(line, "flashing", "eave flashing")


def _verge_flashing(place: EdgePlace) -> Iterator[Sheet]:
    """Over the edge of the covering and down its board."""
    if place.has_lookouts:
        y = place.height(place.roof.courses[0].start, place.tail) + 2.0
        yield Sheet(((place.tail + 70.0, y), (place.tail - 4.0, y), (place.tail - 4.0, y - 70.0)), "flashing", "verge flashing")


def _mesh(place: EdgePlace) -> Iterator[Sheet]:
    cavities = [one for one in place.wall.zone("rain") if one.layer.cavity == "ventilated"]
    for one in cavities[-1:]:
        y = place.height(place.under_outer, one.start) - HEAD - 4.0
        yield Sheet(((one.start, y), (one.end, y)), "mesh", "mesh")
    if place.verge or place.is_ceiling:
        return
    for one in [one for one in place.roof.zone("rain") if one.layer.cavity == "ventilated"][-1:]:
        x = place.tail + 3.0
        yield Sheet((place.point(one.start, x), place.point(one.end, x)), "mesh", "mesh")


def _tape(place: EdgePlace) -> Iterator[Sheet]:
    water = served(place.wall, "W")
    if water and not place.is_ceiling and (link := place.junction.link("W")) and not link.broken:
        x = water.start - 1.2
        y = place.height(place.under_outer, x) - 1.2
        yield Sheet(((x, y - 36.0), (x, y), (x - 30.0, place.height(place.under_outer, x - 30.0) - 1.2)), "tape", "tape")
    link = place.junction.link("A")
    wall, roof = served(place.wall, "A"), served(place.roof, "A")
    if not link or link.broken or "tape" not in link.by or not wall or not roof:
        return
    x, d = wall.end + 1.2, roof.end + 1.2
    y = place.height(d, x)
    yield Sheet(((x, y - 40.0), (x, y), place.point(d, x + 38.0)), "tape", "tape")


def traces(place: EdgePlace) -> tuple[Trace, ...]:
    return (*_water(place), *_tight(place), *_heat(place))


def _water(place: EdgePlace) -> Iterator[Trace]:
    """The roof's line sheds over the edge; the wall's begins under it."""
    wall, roof = served(place.wall, "W"), served(place.roof, "W")
    link = place.junction.link("W")
    broken = bool(link and link.broken)
    runs: list[tuple[Point, ...]] = []
    d = roof.start - place.off if roof else place.under_outer
    if roof:
        runs.append((place.point(d, place.tail + 2.0), place.point(d, place.right)))
    if wall:
        x = wall.start - place.off
        runs.append(((x, place.bottom), (x, place.height(place.under_outer, x) - 1.0)))
    if runs:
        gaps = (runs[-1][-1],) if broken and wall else ()
        yield Trace("W", tuple(runs), gaps)


def _tight(place: EdgePlace) -> Iterator[Trace]:
    for number, (wall, roof, letters) in enumerate(tight_pairs(place.wall, place.roof)):
        yield _turned(place, wall, roof, letters, place.off * (1 + 1.1 * number))


def _turned(place: EdgePlace, wall: Course | None, roof: Course | None, letters: str, off: float) -> Trace:
    link = place.junction.link(letters[0])
    x = depth_of(place.wall, wall, off) if wall else None
    d = depth_of(place.roof, roof, off) if roof else None
    if x is not None and d is not None and not (link and link.broken):
        return Trace(letters, (((x, place.bottom), place.point(d, x), place.point(d, place.right)),))
    runs = []
    if x is not None:
        runs.append(((x, place.bottom), (x, place.height(place.carries.end, x) - 4.0)))
    if d is not None:
        runs.append((place.point(d, place.right), place.point(d, place.frame_end + 4.0)))
    return Trace(letters, tuple(runs), tuple(run[-1] for run in runs))


def _heat(place: EdgePlace) -> Iterator[Trace]:
    x, d = insulation_middle(place.wall), insulation_middle(place.roof)
    link = place.junction.link("T")
    if x is None and d is None:
        return
    if x is not None and d is not None and not (link and link.broken):
        yield Trace("T", (((x, place.bottom), place.point(d, x), place.point(d, place.right)),))
        return
    runs = []
    if x is not None:
        runs.append(((x, place.bottom), (x, -place.plates)))
    if d is not None:
        runs.append((place.point(d, place.right), place.point(d, 4.0)))
    yield Trace("T", tuple(runs), tuple(run[-1] for run in runs))
