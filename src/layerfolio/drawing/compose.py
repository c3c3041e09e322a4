"""What every section has, level or sloped: the cut, its lines and letters, its tags."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from layerfolio.drawing import body, breaks, control, hatches
from layerfolio.drawing.air import air_signs
from layerfolio.drawing.control import ControlLine
from layerfolio.drawing.dimensions import Dimensions
from layerfolio.drawing.figures import Units
from layerfolio.drawing.frame import Frame
from layerfolio.drawing.geometry import Outline, rectangle, text_box
from layerfolio.drawing.layout_framing import DRIFT, Framing, View
from layerfolio.drawing.layout_spots import Spots, spots
from layerfolio.drawing.layout_stack import GROUND_DEPTH, Stack
from layerfolio.drawing.layout_tags import NOTE_PITCHES, PITCH, Leader, Tag, shared
from layerfolio.drawing.lettering import wrapped
from layerfolio.drawing.marks import Group, Line, Mark, Point, Text

THIN = 2.5  # mm on paper: such neighbours may share a leader
AIR_ARROW = 7.0  # mm that letters keep from the middle of an arrow
BEYOND = 14.0  # mm that the column of tags may reach beyond either face
NOTES_BEYOND, NOTES_TALLEST = 18.0, 110.0  # the same for tags with notes; and what is never too tall


@dataclass(frozen=True, slots=True)
class Cut:
    """A section before it is placed on the page, in its own directions."""

    stack: Stack
    framing: tuple[Framing, ...]
    length: float
    view: View
    units: Units
    controls: tuple[ControlLine, ...]
    signs: tuple[tuple[Point, tuple[Mark, ...]], ...]
    body: body.Body

    @property
    def corners(self) -> Outline:
        return rectangle(0.0, -self.stack.depth, self.length, 0.0)


def cut(stack: Stack, framing: tuple[Framing, ...], length: float, view: View, units: Units) -> Cut:
    """Everything that lies between the break lines."""
    controls = control.control_lines(stack)
    signs = tuple(air_signs(stack, framing, controls, length, view))
    return Cut(stack, framing, length, view, units, controls, signs, body.body_of(stack, framing, length, view))


def tags_of(one: Cut, frame: Frame, note_room: float | None) -> list[Tag]:
    """Tags from the top down, notes set into `note_room` mm; thin neighbours share leaders where all are too many."""
    signs, thick = [at for at, _ in one.signs], one.view == "slope"
    found = spots(one.stack, one.framing, one.controls, signs, one.length, one.units, thick)
    for pitch in NOTE_PITCHES if note_room is not None else ():
        made = [_tag(spot, frame, note_room, pitch) for spot in found]
        if sum(tag.size for tag in made) <= max(one.stack.depth + 2 * NOTES_BEYOND, NOTES_TALLEST):
            return made
    made = [_tag(spot, frame, None) for spot in found]
    deep = {str(band.layer.number): band.depth for band in one.stack.bands}
    return shared(made, [deep.get(spot.label, 99.0) < THIN for spot in found], one.stack.depth + 2 * BEYOND)


def _tag(spot: Spots, frame: Frame, note_room: float | None, pitch: float = PITCH) -> Tag:
    note = wrapped(spot.note, note_room) if note_room is not None else ()
    size = pitch if len(note) > 1 else PITCH
    return Tag((spot.label,), tuple(frame.place(one) for one in spot.places), note, (), size, spot.member)


def letter_stations(one: Cut, frame: Frame, leaders: Sequence[Leader]) -> list[tuple[ControlLine, list]]:
    """Control lines with the places of their letters, clear of members, signs and leaders."""
    paths = [[frame.local(point) for point in leader.path] for leader in leaders]
    shut = {line.y: _shut(one, line.y, paths) for line in one.controls}
    return control.stations(one.controls, one.length, shut)


def _shut(one: Cut, y: float, paths: list[list[Point]]) -> list[tuple[float, float]]:
    reach, near = control.MEMBER, 1.9
    stretches = []
    for frame in one.framing:
        if frame.band.bottom - near < y < frame.band.top + near:
            stretches += [(a - reach, b + reach) for a, b in frame.intervals]
            if frame.seen == "along":
                stretches.append((frame.torn - reach, frame.torn + DRIFT * frame.band.depth + reach))
        if frame.band.layer.kind == "solid":
            stretches += [(x - reach, x + reach) for x in frame.centres]
    wide = control.AIR if one.view == "plan" else AIR_ARROW
    stretches += [(x - wide, x + wide) for (x, at), _ in one.signs if abs(at - y) < 2 * near]
    for path in paths:
        for (ax, ay), (bx, by) in pairwise(path):
            span = _span(ax, ay, bx, by, y - near, y + near)
            if span:
                stretches.append((span[0] - reach, span[1] + reach))
    return stretches


def _span(ax: float, ay: float, bx: float, by: float, low: float, high: float) -> tuple[float, float] | None:
    """The stretch of x in which a segment runs between two heights."""
    if max(ay, by) < low or min(ay, by) > high:
        return None
    if abs(by - ay) < 1e-9:
        return min(ax, bx), max(ax, bx)
    at = [ax + (min(max(y, min(ay, by)), max(ay, by)) - ay) / (by - ay) * (bx - ax) for y in (low, high)]
    return min(at), max(at)


def section_group(one: Cut, frame: Frame, letters: list[tuple[ControlLine, list]]) -> Group:
    """The clipped section with air signs, control lines and their letters; break lines after it."""
    sloped = frame.turn != 0
    over = [mark for _, marks in one.signs for mark in marks]
    for line, places in letters:
        over += control.line_marks(line, places, one.length, sloped)
    lines = (Group("control lines", tuple(over)),) if over else ()
    section = body.clipped(one.body, one.length, one.stack.depth, lines)
    local = [*ground_strokes(one), section, *breaks.break_lines(one.length, one.stack.depth)]
    signs = [control.letter(frame.place((x, line.y)), sign) for line, places in letters for x, sign in places]
    return Group("section", (*frame.marks(local), *signs))


def ground_strokes(one: Cut) -> tuple[Mark, ...]:
    """The ground against the outermost face, where the assembly lies on it or against it."""
    if not one.stack.ground:
        return ()
    low = 0.0 if one.stack.outside_up else -one.stack.depth - GROUND_DEPTH
    return hatches.hatch("ground", rectangle(0.0, low, one.length, low + GROUND_DEPTH), seed="ground")


def boxes(marks: Sequence[Mark], grow: float = 0.4) -> list[Outline]:
    """The room that texts take."""
    return [text_box(one, grow) for one in marks if isinstance(one, Text)]


def kept_free(dimensions: Sequence[Dimensions], frame: Frame, reach: float = 1.5) -> list[Outline]:
    """The room that ticks take, on the page, and the dimension lines themselves."""
    ticks = [frame.place(tick) for one in dimensions for tick in one.ticks]
    found: list[Outline] = [rectangle(x - reach, y - reach, x + reach, y + reach) for x, y in ticks]
    for mark in (mark for one in dimensions for mark in one.marks):
        if isinstance(mark, Line) and mark.role == "dimension":
            found.append(tuple(map(frame.place, mark.points)))
    return found
