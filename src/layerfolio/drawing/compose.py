"""Putting a section on the page: its tags, the letters of its control lines, the painted cut."""

from collections.abc import Sequence
from itertools import pairwise

from layerfolio.drawing import breaks, control
from layerfolio.drawing.body import Body, body_of, clipped
from layerfolio.drawing.control import ControlLine, Stretches
from layerfolio.drawing.cut import Cut
from layerfolio.drawing.dimensions import Dimensions
from layerfolio.drawing.extent import extent
from layerfolio.drawing.frame import Frame
from layerfolio.drawing.geometry import Outline, rectangle, text_box
from layerfolio.drawing.hatches import hatch
from layerfolio.drawing.layout_framing import DRIFT
from layerfolio.drawing.layout_sharing import shared
from layerfolio.drawing.layout_spots import Spots, spots
from layerfolio.drawing.layout_stack import GROUND_DEPTH, Band
from layerfolio.drawing.layout_tags import (
    NOTE_PITCHES,
    PITCH,
    RADIUS,
    Column,
    Leader,
    Tag,
    any_crossing,
    arranged,
    half_width,
)
from layerfolio.drawing.lettering import wide, wrapped
from layerfolio.drawing.marks import Group, Line, Mark, Point, Text

THIN = 2.5  # mm on paper: such neighbours may share a leader
BEYOND = 14.0  # mm that the column of tags may reach beyond either face
NOTES_BEYOND, NOTES_TALLEST = 18.0, 110.0  # the same for tags with notes; and what is never too tall
AIR_ARROW = 7.0  # mm that letters keep from the middle of an arrow
Stations = list[tuple[ControlLine, list[tuple[float, str]]]]


def tags_of(one: Cut, frame: Frame, note_room: float | None) -> list[Tag]:
    """Tags from the top down, notes set into `note_room` mm; thin neighbours share leaders where all are too many."""
    signs, thick = [at for at, _ in one.signs], one.view == "slope"
    found = spots(one.stack, one.framing, one.controls, signs, one.length, one.units, thick, one.pins)
    for pitch in NOTE_PITCHES if note_room is not None else ():
        made = [made_tag(spot, frame, note_room, pitch) for spot in found]
        if sum(tag.size for tag in made) <= max(one.stack.depth + 2 * NOTES_BEYOND, NOTES_TALLEST):
            return made
    made = [made_tag(spot, frame, None) for spot in found]
    deep = {str(band.layer.number): band.depth for band in one.stack.bands}
    room = one.stack.depth + 2 * BEYOND if one.view != "slope" else NOTES_TALLEST
    return shared(made, [deep.get(spot.label, 99.0) < THIN for spot in found], room)


def leaders_of(one: Cut, frame: Frame, tags: list[Tag], column: Column) -> tuple[Leader, ...]:
    """Tags placed; thin layers get leaders of their own after all where shared ones would cross others."""
    leaders = arranged(tags, column)
    if any(tag.further for tag in tags) and any_crossing(leaders):
        signs = [at for at, _ in one.signs]
        found = spots(one.stack, one.framing, one.controls, signs, one.length, one.units, pins=one.pins)
        return arranged([made_tag(spot, frame, None) for spot in found], column)
    return leaders


def made_tag(spot: Spots, frame: Frame, note_room: float | None, pitch: float = PITCH, rows: int = 2) -> Tag:
    """A spot as a tag of the page, its note set into `note_room` mm and so many rows."""
    note = ()
    if note_room is not None:
        room = note_room - half_width(spot.label) + RADIUS
        note = wrapped(next((one for one in spot.notes if wide(one) <= room), spot.notes[-1]), room, rows)
    size = pitch if len(note) > 1 else PITCH
    return Tag((spot.label,), tuple(frame.place(one) for one in spot.places), note, (), size, spot.member)


def letter_stations(one: Cut, frame: Frame, leaders: Sequence[Leader]) -> Stations:
    """Control lines with the places of their letters, clear of members, signs and leaders."""
    paths = [[frame.local(point) for point in (*leader.further[::-1], *leader.path)] for leader in leaders]
    shut = {line.y: _shut(one, line.y, paths) for line in one.controls}
    return control.stations(one.controls, one.length, shut, one.view in ("slope", "upright"))


def _shut(one: Cut, y: float, paths: list[list[Point]]) -> tuple[Stretches, Stretches]:
    """Stretches that a letter at `y` should keep out of, and those that it must."""
    reach, near = control.MEMBER, 1.9 if one.view in ("plan", "level") else 2.6
    soft, hard = [], []
    for frame in one.framing:
        if frame.band.bottom - near < y < frame.band.top + near:
            soft += [(a - reach, b + reach) for a, b in frame.intervals]
            if frame.seen == "along":
                soft.append((frame.torn - reach, frame.torn + DRIFT * frame.band.depth + reach))
        if frame.band.layer.kind == "solid":
            soft += [(x - reach, x + reach) for x in frame.centres]
    soft += [(x - reach, x + reach) for pins in one.pins if pins.passes(y) for x in pins.places]
    hard += [(seam.x - seam.half - 0.5, seam.x + seam.half + 0.5) for seam in one.seams if abs(seam.face - y) < near]
    half = control.AIR if one.view == "plan" else AIR_ARROW
    hard += [(x - half, x + half) for (x, at), _ in one.signs if abs(at - y) < 2 * near]
    for path in paths:
        for (ax, ay), (bx, by) in pairwise(path):
            span = _span(ax, ay, bx, by, y - near, y + near)
            if span:
                hard.append((span[0] - reach, span[1] + reach))
    return soft, hard


def _span(ax: float, ay: float, bx: float, by: float, low: float, high: float) -> tuple[float, float] | None:
    """The stretch of x in which a segment runs between two heights."""
    if max(ay, by) < low or min(ay, by) > high:
        return None
    if abs(by - ay) < 1e-9:
        return min(ax, bx), max(ax, bx)
    at = [ax + (min(max(y, min(ay, by)), max(ay, by)) - ay) / (by - ay) * (bx - ax) for y in (low, high)]
    return min(at), max(at)


def section_group(one: Cut, frame: Frame, stations: Stations) -> tuple[Group, Body]:
    """The clipped section with air signs, control lines and their letters; break lines after it."""
    body = body_of(one, frame)
    over: list[Mark] = []
    for line, places in stations:
        members = [ends for framing in one.framing if _passes(framing.band, line.y) for ends in framing.intervals]
        members += _pinned(one, line.y, members)
        over += control.line_marks(line, places, one.length, frame.turn != 0, members)
    over += [mark for _, marks in one.signs for mark in marks]
    lines = (Group("control lines", frame.marks(over)),) if over else ()
    signs = [control.letter(frame.place((x, line.y)), sign) for line, places in stations for x, sign in places]
    ends = frame.marks(breaks.break_lines(one.length, one.stack.depth))
    return Group("section", (*ground_strokes(one, frame), clipped(body, lines), *ends, *signs)), body


def _pinned(one: Cut, y: float, members: Stretches) -> Stretches:
    """Where fasteners pass a control line outside members: the white of the line stops there too."""
    half = 0.4
    found = [(x - w, x + w) for pins in one.pins if pins.passes(y) for w in (pins.width / 2 + half,) for x in pins.places]
    return [(a, b) for a, b in found if not any(c < b and a < d for c, d in members)]


def _passes(band: Band, y: float) -> bool:
    return band.bottom - control.WIDTH < y < band.top + control.WIDTH


def outer_marks(one: Cut, frame: Frame) -> Group:
    """Break lines and ground: as far as the section reaches, known before it is painted."""
    ends = frame.marks(breaks.break_lines(one.length, one.stack.depth))
    ground = [Line(tuple(map(frame.place, _ground_box(one))), 0.0)] if one.stack.ground else []
    return Group("outer", (*ends, *ground))


def ground_strokes(one: Cut, frame: Frame) -> tuple[Mark, ...]:
    """The ground against the outermost face, where the assembly lies on it or against it."""
    if not one.stack.ground:
        return ()
    return hatch("ground", tuple(map(frame.place, _ground_box(one))), seed="ground", turn=frame.turn)


def _ground_box(one: Cut) -> Outline:
    low = 0.0 if one.stack.outside_up else -one.stack.depth - GROUND_DEPTH
    return rectangle(0.0, low, one.length, low + GROUND_DEPTH)


def boxes(marks: Sequence[Mark], grow: float = 0.4) -> list[Outline]:
    """The room that texts take."""
    return [text_box(one, grow) for one in marks if isinstance(one, Text)]


def signs_of_air(one: Cut, frame: Frame) -> list[Outline]:
    """The room that the signs for moving air take, on the page."""
    edges = [extent(marks) for _, marks in one.signs]
    return [tuple(map(frame.place, rectangle(*edge))) for edge in edges]


def kept_free(dimensions: Sequence[Dimensions], frame: Frame, reach: float = 1.5) -> list[Outline]:
    """The room that ticks take, on the page, and the dimension lines themselves."""
    ticks = [frame.place(tick) for one in dimensions for tick in one.ticks]
    found: list[Outline] = [rectangle(x - reach, y - reach, x + reach, y + reach) for x, y in ticks]
    for mark in (mark for one in dimensions for mark in one.marks):
        if isinstance(mark, Line) and mark.role == "dimension":
            found.append(tuple(map(frame.place, mark.points)))
    return found
