"""The pieces where a wall meets the edge of a roof."""

from collections.abc import Iterator
from math import sqrt

from layerfolio.assembly.courses import Course
from layerfolio.drawing.detail.arm import End
from layerfolio.drawing.detail.edge_place import FASCIA, LOOKOUT, EdgePlace
from layerfolio.drawing.detail.model import Piece
from layerfolio.drawing.geometry import Outline, rectangle

HEAD = 20.0  # mm that the cladding stays below the roof's boards, so that the cavity ends open
JOINT = 3.0  # between linings


def edge_pieces(place: EdgePlace) -> Iterator[Piece]:
    """What is seen beyond the cut first, then wall and roof."""
    yield from _tail(place)
    yield from _wall(place)
    yield from _roof(place)


def _tail(place: EdgePlace) -> Iterator[Piece]:
    """The rafter's tail, or the lookouts of a verge, and the board at their ends."""
    if place.is_ceiling or place.outer - place.tail < FASCIA + 5.0:
        return
    a, b = place.tail + FASCIA, place.cover
    deep = place.carries.end if not place.verge else min(LOOKOUT, place.carries.end)
    if place.has_lookouts:
        yield Piece(_strip(place, a, place.frame_end, 0.0, LOOKOUT), "timber-board", "lookout", 0.0, 0.5)
    else:
        seen = _strip(place, a, b, 0.0, deep)
        yield Piece(seen, "timber-board", "lookout" if place.verge else "rafter tail", place.slope, 0.25, beyond=True)
    top = place.roof.courses[0].start if place.has_lookouts else 0.0
    high, low = place.height(top, place.tail), place.height(deep, a) - 10.0
    board = ((place.tail, high), (a, place.height(top, a)), (a, low), (place.tail, low))
    yield Piece(board, "timber-board", "barge board" if place.verge else "fascia", 90.0, 0.5)


def _strip(place: EdgePlace, a: float, b: float, d0: float, d1: float) -> Outline:
    return place.point(d0, a), place.point(d0, b), place.point(d1, b), place.point(d1, a)


def _wall(place: EdgePlace) -> Iterator[Piece]:
    wall, low = place.wall, End(place.bottom)
    gap = HEAD * sqrt(1 + place.under(0.0).lean ** 2)
    for one in wall.zone("rain"):
        end = place.under(place.under_outer)
        yield from wall.pieces(one, low, end.moved(-gap))
    for one in wall.zone("outer"):
        yield from wall.pieces(one, low, place.under(place.under_outer))
    for one in wall.zone("frame"):
        framed = bool(place.plate and one.layer.member)
        yield from wall.pieces(one, low, End(-place.plates if framed else 0.0))
        if framed:
            for number in range(2):
                y = -place.plate * number
                outline = rectangle(one.start, y - place.plate, one.end, y)
                yield Piece(outline, "timber", "plate", 0.0, 0.5, number=number + one.layer.number)
    for one in wall.zone("inner"):
        if one.depth:
            end = place.under(place.wall_top(one))
            yield from wall.pieces(one, low, end, place.bottom + 120.0)


def _roof(place: EdgePlace) -> Iterator[Piece]:
    roof, right = place.roof, place.plumb(place.right)
    for one in roof.courses:
        if not one.depth:
            continue
        if one.zone in ("rain", "outer"):
            yield from roof.pieces(one, place.plumb(place.outer_edge), right, _first(place, one))
        elif one is place.carries or one.end == place.carries.end:
            yield from _bearing(place, one)
        elif one.zone == "frame":
            yield from roof.pieces(one, place.plumb(0.0), right)
    for one, x in place.inner_starts:
        yield from roof.pieces(one, place.plumb(x), right)


def _bearing(place: EdgePlace, course: Course) -> Iterator[Piece]:
    """The course on the plates: notched over them along the slope; with its rafters where the section cuts them."""
    if place.has_lookouts:
        yield from _under_lookouts(place, course)
        return
    if place.slope < 0.5:
        yield from place.roof.pieces(course, place.plumb(0.0), place.plumb(place.right), _first_rafter(place, course))
        return
    inside = place.frame_end
    low = [(0.0, 0.0), (inside, 0.0)] if place.height(course.start, 0.0) > 0 else [(0.0, place.height(course.start, 0.0) - 1.0)]
    corners = [*low, place.point(course.end, inside), place.point(course.end, place.right)]
    corners += [place.point(course.start, place.right), place.point(course.start, 0.0)]
    outline = tuple(dict.fromkeys((round(x, 6), round(y, 6)) for x, y in corners))
    yield Piece(outline, course.layer.family, place.roof.name(course.layer), place.slope)


def _under_lookouts(place: EdgePlace, course: Course) -> Iterator[Piece]:
    """Below the lookouts a rafter stands on the gable's plates; the first full one stands beside them."""
    member, name, inside = course.layer.member, place.roof.name(course.layer), place.frame_end
    family = "timber" if member.family == "timber-board" else member.family
    wide = member.width.value * 1000
    yield Piece(_strip(place, 0.0, wide, LOOKOUT, course.end), family, f"{name}/{member.name}", 0.0, 0.5, number=1)
    yield Piece(_strip(place, wide, inside, LOOKOUT, course.end), course.layer.family, name, 0.0)
    yield from place.roof.pieces(course, place.plumb(inside), place.plumb(place.right), _first_rafter(place, course))


def _first(place: EdgePlace, course: Course) -> float | None:
    """Where the first member of the roof's outer layers stands: over the rafters in a verge, at the edge in an eave."""
    member = course.layer.member
    if place.verge or member is None or member.width is None:
        return _first_rafter(place, course)
    start = place.plumb(place.outer_edge)
    return max(start.at(course.start), start.at(course.end)) + member.width.value * 500


def _first_rafter(place: EdgePlace, course: Course) -> float | None:
    """In a verge the outermost rafter stands at the inner edge of the wall; battens as far apart stand over the rafters."""
    member = course.layer.member
    rafter = place.carries.layer.member
    if course is not place.carries and (not rafter or not member or rafter.spacing != member.spacing or not rafter.width):
        return None
    if not place.verge or member is None or member.width is None or rafter is None or rafter.width is None:
        return None
    return place.plumb(place.frame_end).s + rafter.width.value * 500
