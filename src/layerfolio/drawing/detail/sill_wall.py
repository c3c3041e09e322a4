"""The pieces of the wall above its foot."""

from collections.abc import Iterator

from layerfolio.assembly.courses import Course
from layerfolio.drawing.detail.arm import End
from layerfolio.drawing.detail.model import Piece
from layerfolio.drawing.detail.sill_place import SillPlace
from layerfolio.drawing.geometry import rectangle

JOINT = 10.0  # mm under the lining
WIDEST = 240.0  # mm: wider frames stand on two plates
PLATE_WIDE = 89.0


def wall_pieces(place: SillPlace) -> Iterator[Piece]:
    """From the outside in; what stands on the floor stops at it, what covers the joint runs past it."""
    wall, top = place.wall, End(place.top)
    for one in wall.zone("rain"):
        yield from wall.pieces(one, End(place.foot), top)
    for one in wall.zone("outer"):
        yield from wall.pieces(one, End(place.gap), top)
    yield from _frame(place, top)
    inner = [one for one in wall.zone("inner") if one.depth]
    for one in inner:
        yield from _inner(place, one, top, one is inner[-1])


def plates(place: SillPlace) -> tuple[tuple[float, float], ...]:
    """x ranges of the bottom plates: one under each framed layer, two under a very deep one."""
    framed = [one for one in place.frame if one.layer.member]
    if not place.plate or not framed:
        return ()
    if len(framed) == 1 and framed[0].depth > WIDEST:
        a, b = framed[0].start, framed[0].end
        return (a, a + PLATE_WIDE), (b - PLATE_WIDE, b)
    return tuple((one.start, one.end) for one in framed)


def _frame(place: SillPlace, top: End) -> Iterator[Piece]:
    """The frame's courses over the plates, and between two plates down to the floor."""
    found = plates(place)
    for number, (a, b) in enumerate(found):
        yield Piece(rectangle(a, 0.0, b, place.plate), "timber", "plate", 0.0, 0.5, number=number)
    for course in place.frame:
        over = [(a, b) for a, b in found if a < course.end and b > course.start]
        if over and (over[0][0] > course.start or over[-1][1] < course.end or len(over) > 1):
            yield from _beside_plates(place, course, over, top)
        else:
            yield from place.wall.pieces(course, End(place.plate if over else 0.0), top)


def _beside_plates(place: SillPlace, course: Course, over: list[tuple[float, float]], top: End) -> Iterator[Piece]:
    """One piece that fills what the plates leave of a deep course."""
    corners = [(course.start, top.s)]
    at = course.start
    for a, b in over:
        if a > at:
            corners += [(at, 0.0), (a, 0.0)]
        corners += [(a, place.plate), (b, place.plate)]
        at = b
    if at < course.end:
        corners += [(at, 0.0), (course.end, 0.0)]
    corners.append((course.end, top.s))
    yield Piece(tuple(dict.fromkeys(corners)), course.layer.family, place.wall.name(course.layer), 90.0)


def _inner(place: SillPlace, course: Course, top: End, last: bool) -> Iterator[Piece]:
    """Panels down to the floor; a nailer closes a cavity; the lining keeps a joint over the finished floor."""
    low = place.finish + JOINT if last else 0.0
    if course.layer.kind == "cavity":
        high = place.plate or 38.0
        yield Piece(rectangle(course.start, 0.0, course.end, high), "timber", "nailer", 0.0, 0.5, number=2)
        low = high
    yield from place.wall.pieces(course, End(low), top, place.finish + 400.0)
