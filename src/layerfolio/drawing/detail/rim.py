"""The edge of a floor between two storeys: the wall above stands on the deck, the one below carries the joists.

Coordinates as at a sill: the top of the deck is y = 0, the outer face of the wall's frame x = 0.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from layerfolio.assembly.junction_types import Junction
from layerfolio.assembly.types import Assembly
from layerfolio.drawing.detail.arm import Arm, End
from layerfolio.drawing.detail.model import Arrow, Break, Detail, Note, Piece, Sheet, Trace, Word
from layerfolio.drawing.detail.sill_floor import floor_pieces
from layerfolio.drawing.detail.sill_place import SillPlace
from layerfolio.drawing.detail.sill_wall import wall_pieces
from layerfolio.drawing.detail.sill_words import wall_notes
from layerfolio.drawing.detail.traces import depth_of, insulation_middle, served, sheet_role, tight_pairs
from layerfolio.drawing.detail.words import course_note, with_choices
from layerfolio.drawing.figures import Units
from layerfolio.drawing.geometry import rectangle

LOW = 40.0  # paper mm of the wall below


@dataclass(frozen=True)
class RimPlace(SillPlace):
    """Outer layers run past the floor from the lower break to the upper one."""

    bottom_at: float | None = None

    @property
    def below(self) -> bool:
        return True

    @cached_property
    def bottom(self) -> float:
        return self.whole - LOW * self.scale if self.bottom_at is None else self.bottom_at

    @property
    def foot(self) -> float:
        return self.bottom

    @property
    def gap(self) -> float:
        return self.bottom

    @property
    def founded(self) -> str:
        return ""

    @property
    def bears_from(self) -> float:
        """x from which what hangs under the joists begins: the lining of the wall below."""
        return self.inner


def rim(junction: Junction, assemblies: Mapping[str, Assembly], units: Units, scale: float = 5.0) -> Detail:
    """A vertical section through a bay, outside at the left."""
    wall, floor = (assemblies[name] for name in junction.of[:2])
    place = RimPlace(junction, Arm(wall), floor, scale)
    return Detail(
        name=f"rim {wall.name} {floor.name}",
        kind="vertical section through a bay",
        pieces=tuple(rim_pieces(place)),
        sheets=tuple(rim_sheets(place)),
        traces=tuple(rim_traces(place)),
        notes=(*wall_notes(place, units), *_notes(place, units)),
        breaks=tuple(_breaks(place)),
        arrows=tuple(Arrow((one.middle, 20 * scale)) for one in wall_cavities(place)),
        words=(
            Word("OUTSIDE", (place.outer - 22 * scale, place.top - 6 * scale)),
            Word("INSIDE", (place.inner + 10 * scale, place.top - 6 * scale)),
        ),
        remarks=_remarks(place),
        order=_order(place),
        look=("No joint of the air control layer behind the rim left open.", "No empty pocket behind the rim."),
    )


def wall_cavities(place: SillPlace) -> list:
    return [one for one in place.wall.zone("rain") if one.layer.cavity == "ventilated"][-1:]


def rim_pieces(place: RimPlace) -> Iterator[Piece]:
    """Wall above, floor, wall below."""
    yield from wall_pieces(place)
    yield from floor_pieces(place)
    low = End(place.bottom)
    top = place.underside
    for one in place.wall.zone("frame"):
        framed = bool(place.plate and one.layer.member)
        yield from place.wall.pieces(one, low, End(top - 2 * place.plate if framed else top))
        if framed:
            for number in range(2):
                y = top - place.plate * number
                outline = rectangle(one.start, y - place.plate, one.end, y)
                yield Piece(outline, "timber", "plate", 0.0, 0.5, number=number + one.layer.number)
    for one in place.wall.zone("inner"):
        if one.depth:
            yield from place.wall.pieces(one, low, End(top), place.bottom + 120.0)


def rim_sheets(place: RimPlace) -> Iterator[Sheet]:
    for one in place.wall.courses:
        if not one.sheet:
            continue
        role, name = sheet_role(one), place.wall.name(one.layer)
        if one.zone in ("rain", "outer"):
            yield Sheet(((one.start, place.bottom), (one.start, place.top)), role, name)
        else:
            yield Sheet(((one.start, 0.0), (one.start, place.top)), role, name)
            yield Sheet(((one.start, place.bottom), (one.start, place.underside)), role, name)
    if _wraps(place):
        yield Sheet(_strip(place, 0.0), "membrane", "strip round the rim")


def _wraps(place: SillPlace) -> bool:
    """Whether air control lies inside the frame, where the joists interrupt it: a strip takes it round the rim."""
    link = place.junction.link("A")
    course = served(place.wall, "A")
    return course is not None and course.start >= place.frame_end - 0.01 and not (link and link.broken)


def _strip(place: SillPlace, off: float) -> tuple[tuple[float, float], ...]:
    course = served(place.wall, "A")
    x = course.end + 0.5 if course else place.frame_end
    low, high = place.underside - off, off
    return (x, low), (-off, low), (-off, high), (x, high)


def rim_traces(place: RimPlace) -> Iterator[Trace]:
    if water := served(place.wall, "W"):
        x = water.start - place.off
        yield Trace("W", (((x, place.top), (x, place.bottom)),))
    for number, (course, _, letters) in enumerate(tight_pairs(place.wall, place.wall)):
        yield _round(place, course, letters, place.off * (1 + 1.1 * number))
    middle = insulation_middle(place.wall)
    if middle is not None:
        yield Trace("T", (((middle, place.top), (middle, place.bottom)),))


def _round(place: RimPlace, course, letters: str, off: float) -> Trace:
    x = depth_of(place.wall, course, off)
    if course.start < place.frame_end - 0.01:
        return Trace(letters, (((x, place.top), (x, place.bottom)),))
    if _wraps(place):
        strip = _strip(place, off)
        line = ((x, place.top), (x, strip[3][1]), strip[2], strip[1], (x, strip[0][1]), (x, place.bottom))
        return Trace(letters, (line,))
    ends = (x, 4.0), (x, place.underside - 4.0)
    return Trace(letters, (((x, place.top), ends[0]), (ends[1], (x, place.bottom))), ends)


def _notes(place: RimPlace, units: Units) -> Iterator[Note]:
    if _wraps(place):
        yield Note("strip of membrane round the rim, taped to both", ((-1.0, place.underside * 0.5),), "left")
    yield Note("rim joist", ((19.0, place.underside * 0.7),), "left")
    yield Note("two plates", ((place.frame_end * 0.5, place.underside - place.plate / 2),), "right")
    for one in place.floor.courses[::-1]:
        if one.layer.kind != "cavity":
            at = place.right - 8 * place.scale, (one.start + one.end) / 2 - place.base
            yield course_note(place.floor, one, at, "right", units)
    for one in place.junction.broken:
        yield Note(one.broken, ((place.frame_end, place.underside * 0.4),), "right")


def _breaks(place: RimPlace) -> Iterator[Break]:
    over = 4 * place.scale
    yield Break((place.outer - over, place.top), (place.inner + over, place.top))
    yield Break((place.outer - over, place.bottom), (place.inner + over, place.bottom))
    yield Break((place.right, max(0.0, place.finish) + over), (place.right, place.whole - over))


def _remarks(place: RimPlace) -> tuple[str, ...]:
    found = ["Plates, rim and strip are drawn as commonly built; the project file does not give their sizes."]
    return with_choices(found, place.junction)


def _order(place: RimPlace) -> tuple[str, ...]:
    if _wraps(place):
        return ("Strip laid on the lower plates before the joists, folded up outside the rim and in over the deck.",
                "Strip taped to the inner layer of both walls before linings.")  # fmt: skip
    return ("Rim and deck first, then the wall above.",)
