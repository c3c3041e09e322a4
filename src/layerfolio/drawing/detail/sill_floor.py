"""The pieces of the floor beside and below the wall's foot: slab with its edge, or joists with rim and foundation."""

from collections.abc import Iterator

from layerfolio.assembly.courses import Course
from layerfolio.drawing.detail.arm import End
from layerfolio.drawing.detail.model import Piece
from layerfolio.drawing.detail.sill_place import COATING, SillPlace
from layerfolio.drawing.geometry import rectangle

RIM = 38.0
EDGE_FAMILIES = (  # by words that say what it is, the first that fits
    ("mineral", "mineral-board"), ("wool", "mineral-board"), ("wood", "wood-fibre"), ("cork", "cork"), ("foam", "foam"),
)  # fmt: skip


def floor_pieces(place: SillPlace) -> Iterator[Piece]:
    """From the lowest layer up, then what stands at the edge or carries."""
    right = End(place.right)
    for course in place.floor.courses:
        low, high = course.start - place.base, course.end - place.base
        if high <= place.bottom or not course.depth:
            continue
        if low >= -0.01:
            yield from place.floor.pieces(course, End(finish_from(place)), right)
        elif place.below:
            yield from _hung(place, course, right)
        else:
            cut = course if low >= place.bottom else _cut_at(course, place.bottom + place.base)
            yield from place.floor.pieces(cut, End(0.0), right)
    yield from _edge(place)
    yield from _foundation(place)


def finish_from(place: SillPlace) -> float:
    """x from which the floor's finishes lie: under the lining, up to the panel or to the frame."""
    inner = [one for one in place.wall.zone("inner") if one.depth]
    if not inner:
        return place.frame_end
    return inner[-1].start if inner[-1].layer.kind == "solid" else inner[-1].end


def rim_end(place: SillPlace) -> float:
    members = [one.layer.member for one in place.floor.zone("frame") if one.layer.member and one.layer.member.width]
    return members[0].width.value * 1000 if members else RIM


def _hung(place: SillPlace, course: Course, right: End) -> Iterator[Piece]:
    """Layers of a floor with joists: a rim closes the joists, the deck runs out over it, what hangs below stops short."""
    low, high = course.start - place.base, course.end - place.base
    if course.zone == "frame":
        rim = rim_end(place)
        if place.has_joists:
            yield Piece(rectangle(0.0, low, rim, high), "timber", "rim joist", 90.0, 0.5, number=1)
            yield from place.floor.pieces(course, End(rim), right)
        else:
            yield from place.floor.pieces(course, End(0.0), right)
    elif course.zone == "inner":
        yield from place.floor.pieces(course, End(0.0), right)
    else:
        yield from place.floor.pieces(course, End(place.bears_from), right)


def _cut_at(course: Course, start: float) -> Course:
    return Course(course.layer, start, course.end, course.zone)


def edge_family(place: SillPlace) -> str:
    """The hatch of the edge insulation, by the words that say what it is; none where they say nothing that has one."""
    words = str((place.slab.ground.get("edge_insulation") or {}).get("material") or "").lower()
    return next((family for word, family in EDGE_FAMILIES if word in words), "plain")


def _edge(place: SillPlace) -> Iterator[Piece]:
    if place.edge:
        thick, deep = place.edge
        low = max(place.bottom, -deep)
        inner = place.cover + place.scale  # behind the flashing it fills up to the outer insulation
        step = ((0.0, place.gap), (inner, place.gap), (inner, 0.0)) if -thick < inner < -1.0 else ((0.0, 0.0),)
        yield Piece(((-thick, low), (0.0, low), *step, (-thick, 0.0)), edge_family(place), "edge insulation", 90.0)
        foot = max(low, place.ground - 60.0)
        yield Piece(rectangle(-thick - COATING, foot, -thick, 0.0), "plaster", "protective coating", 90.0, 0.25)


def _foundation(place: SillPlace) -> Iterator[Piece]:
    """A sill plate on a wall, or on a beam where the building stands on posts; nothing where nobody says."""
    if not place.below or not place.has_joists:
        return
    low, kind = place.underside, place.founded
    end = place.bears_from
    if kind == "wall":
        plate = place.sill_plate
        yield Piece(rectangle(0.0, low - plate, min(140.0, end), low), "timber", "sill plate", 0.0, 0.5, number=3)
        yield Piece(rectangle(0.0, place.bottom, end, low - plate), "concrete", "foundation wall", 90.0, 0.5)
    elif kind in ("piers", "piles"):
        yield Piece(rectangle(0.0, low - end, 89.0, low), "timber", "beam", 0.0, 0.5, number=3)
