"""A pipe or duct through a wall: sleeved, falling outward, each control layer closed round it."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from math import radians, tan

from layerfolio.assembly.junction_types import Junction
from layerfolio.assembly.types import Assembly
from layerfolio.drawing.detail.arm import Arm, End
from layerfolio.drawing.detail.model import Break, Detail, Note, Piece, Sheet, Trace, Word
from layerfolio.drawing.detail.on_wall import OnWall
from layerfolio.drawing.detail.traces import depth_of, insulation_middle, served, sheet_role
from layerfolio.drawing.detail.words import course_note, joined_words, slots, with_choices
from layerfolio.drawing.figures import Units
from layerfolio.drawing.geometry import Outline

HALF = 55.0  # mm: half of the pipe as drawn
AROUND = 12.0  # mm of filling round it
FALL = tan(radians(2.0))  # outward
COLLAR = 60.0  # mm of collar on the layer
OUT = 50.0  # mm of pipe beyond either face
SIGN = "Pipe, collars and filling are drawn as a sign: diameter and place follow the services drawings."
UP = 44.0  # paper mm of wall above and below


@dataclass(frozen=True)
class PipePlace(OnWall):
    junction: Junction
    wall: Arm
    scale: float

    @property
    def reach(self) -> float:
        return UP * self.scale

    def axis(self, x: float) -> float:
        """y of the pipe's axis: it falls to the outside."""
        return (x - self.inner) * FALL

    def edge(self, sign: int, more: float = 0.0) -> End:
        """The upper (1) or lower (-1) edge of the hole, across the wall."""
        return End(-self.inner * FALL + sign * (HALF + AROUND + more), FALL)


def penetration(junction: Junction, assemblies: Mapping[str, Assembly], units: Units, scale: float = 5.0) -> Detail:
    """A vertical section through the pipe's axis, outside at the left."""
    place = PipePlace(junction, Arm(assemblies[junction.of[0]]), scale)
    return Detail(
        name=f"penetration {place.wall.assembly.name}",
        kind="vertical section through a bay",
        pieces=tuple(_pieces(place)),
        sheets=tuple(_sheets(place)),
        traces=tuple(_traces(place)),
        notes=(*_layers(place, units), *_notes(place)),
        breaks=tuple(_breaks(place)),
        words=(
            Word("OUTSIDE", (place.outer - 22 * scale, place.reach - 6 * scale)),
            Word("INSIDE", (place.inner + 12 * scale, place.reach - 6 * scale)),
        ),
        remarks=with_choices((SIGN,), junction),
        order=_order(place),
        look=_look(place),
    )


def _pieces(place: PipePlace) -> Iterator[Piece]:
    low, high = End(-place.reach), End(place.reach)
    for one in place.wall.courses:
        yield from place.wall.pieces(one, low, place.edge(-1))
        yield from place.wall.pieces(one, place.edge(1), high)
    for sign in (1, -1):
        filling = _band(place, sign * (HALF + AROUND / 2), AROUND / 2, _filled_from(place), place.inner)
        yield Piece(filling, "plain", "filling round the pipe", 2.0, 0.25)
    yield Piece(_band(place, 0.0, HALF, place.outer - OUT, place.inner + OUT), "plain", "pipe", 2.0, 0.5)


def _filled_from(place: PipePlace) -> float:
    """Depth from which the gap is filled: not across the cavity behind the cladding."""
    found = [one for one in place.wall.courses if one.zone != "rain"]
    return found[0].start if found else place.outer


def _band(place: PipePlace, middle: float, half: float, x0: float, x1: float) -> Outline:
    """A strip along the pipe."""
    a, b = place.axis(x0) + middle, place.axis(x1) + middle
    return (x0, a - half), (x1, b - half), (x1, b + half), (x0, a + half)


def _sheets(place: PipePlace) -> Iterator[Sheet]:
    for one in place.wall.courses:
        if one.sheet:
            role = sheet_role(one)
            for sign in (1, -1):
                ends = (one.start, sign * place.reach), (one.start, place.edge(sign).at(one.start))
                yield Sheet(ends, role, place.wall.name(one.layer))
    for letter, side in (("W", -1), ("A", 1)):
        course = served(place.wall, letter)
        link = place.junction.link(letter)
        if course is None or (link and link.broken):
            continue
        for sign in (1, -1):
            x = course.start - 1.5 if side < 0 else course.end + 1.5
            if side < 0 and sign > 0 and course.sheet:  # the upper leg lies behind the membrane, which laps over it
                x = course.start + 0.8 * place.scale
            edge = place.edge(sign).at(x)
            pipe = place.axis(x) + sign * HALF
            yield Sheet(((x, edge + sign * COLLAR), (x, pipe), (x + side * 34.0, pipe + side * 34.0 * FALL)), "tape", "collar")


def _traces(place: PipePlace) -> Iterator[Trace]:
    for letters, x in _lines(place):
        link = place.junction.link(letters[0])
        runs, ends = [], []
        for sign in (1, -1):
            end = (x, place.axis(x) + sign * (HALF if not (link and link.broken) else HALF + AROUND + 20.0))
            runs.append(((x, sign * place.reach), end))
            ends.append(end)
        yield Trace(letters, tuple(runs), tuple(ends) if link and link.broken else ())
    middle = insulation_middle(place.wall)
    if middle is not None:
        yield Trace("T", tuple(((middle, s * place.reach), (middle, place.axis(middle) + s * (HALF + AROUND))) for s in (1, -1)))


def _lines(place: PipePlace) -> Iterator[tuple[str, float]]:
    if water := served(place.wall, "W"):
        yield "W", water.start - place.off
    air, vapour = served(place.wall, "A"), served(place.wall, "V")
    if air and air == vapour:
        yield "AV", depth_of(place.wall, air, place.off)
        return
    for number, (letter, one) in enumerate((("A", air), ("V", vapour))):
        if one:
            yield letter, depth_of(place.wall, one, place.off * (1 + 1.1 * number))


def _layers(place: PipePlace, units: Units) -> Iterator[Note]:
    found = [one for one in place.wall.courses if one.layer.kind != "cavity"]
    left = [one for one in found if one.zone in ("rain", "outer")]
    right = [one for one in found if one.zone in ("frame", "inner")][::-1]
    for side, some in (("left", left), ("right", right)):
        for one, y in zip(some, slots(place.reach - 8 * place.scale, HALF + 70.0, len(some)), strict=True):
            yield course_note(place.wall, one, (one.middle, y), side, units)


def _notes(place: PipePlace) -> Iterator[Note]:
    yield Note("pipe or duct, falls outward", ((place.outer - 30.0, place.axis(place.outer - 30.0)),), "left")
    x = place.wall.zone("frame")[-1].middle
    at = x, place.axis(x) - HALF - AROUND / 2
    yield Note("gap filled with insulation", (at,), "right")
    if water := served(place.wall, "W"):
        yield Note("outer collar, lapped under above", ((water.start - 1.5, -HALF - AROUND - COLLAR * 0.6),), "left")
    for _, letter in joined_words(place.junction, place.wall)[:3]:
        if letter != "W" and (course := served(place.wall, letter)):
            yield Note("inner collar, taped all round", ((course.end + 1.5, -HALF - AROUND - COLLAR * 0.6),), "right")
            break
    for one in place.junction.broken:
        yield Note(one.broken, ((place.inner - 2.0, -HALF - AROUND - 30.0),), "right")


def _breaks(place: PipePlace) -> Iterator[Break]:
    over = 4 * place.scale
    for y in (place.reach, -place.reach):
        yield Break((place.outer - over, y), (place.inner + over, y))


def _order(place: PipePlace) -> tuple[str, ...]:
    found = ["Hole no larger than needed; pipe fixed before collars are stuck on."]
    if served(place.wall, "A"):
        found.append("Inner collar before services and lining.")
    if served(place.wall, "W"):
        found.append("Outer collar before battens, its upper edge lapped over or taped.")
    return tuple(found)


def _look(place: PipePlace) -> tuple[str, ...]:
    found = ["Pipe falls outward; flues keep the clearance of their own rules."]
    return ("Collars stuck all round, no fold at the lower edge.", *found) if served(place.wall, "A") else tuple(found)
