"""The small section of an explanation sheet: level, without dimensions, one layer pointed at, a few tags with notes."""

from layerfolio.assembly.types import Assembly
from layerfolio.drawing import breaks, compose, layout_tags, tags
from layerfolio.drawing.cut import Cut, cut
from layerfolio.drawing.extent import extent
from layerfolio.drawing.figures import Units
from layerfolio.drawing.frame import Frame
from layerfolio.drawing.geometry import moved
from layerfolio.drawing.layout_framing import framings, view_of
from layerfolio.drawing.layout_notes import layout_notes
from layerfolio.drawing.layout_scale import scale_text
from layerfolio.drawing.layout_spots import spots
from layerfolio.drawing.layout_stack import full_depth, stacked
from layerfolio.drawing.lettering import CAPITAL, SIZE, wrapped
from layerfolio.drawing.marks import Curve, Drawing, Group, Line, Mark, Text
from layerfolio.drawing.names import sides

LEFT, LENGTH = 6.0, 56.0
ELBOW, CIRCLE = 66.0, 71.0
DEEPEST, SHALLOW = 60.0, 45.0
SCALES = {"metric": (5, 10, 20), "customary": (8, 12, 24)}
WORD_ROOM = 5.6  # mm above and below the section, inside the break lines
SPACED = 0.5 * 72 / 25.4


def mini_section(
    assembly: Assembly,
    highlight: str | None,
    tags: tuple[tuple[int, str], ...],
    *,
    width: float = 138.0,
    units: Units = "metric",
) -> Drawing:
    """A section at the scale of a note. `highlight` is the name of the layer that the triangle points at; `tags` pairs
    numbers of layers with the words beside them."""
    room = _cut(assembly, units)
    frame = Frame(0.0, (LEFT, 0.0))
    leaders = _leaders(room, frame, tags, width)
    text = f"Scale {scale_text(room.stack.scale, units)}"
    below = min([-room.stack.depth - WORD_ROOM, *(one.circle[1] - one.tag.size / 2 - 3.6 for one in leaders)])
    groups = [
        Group("break lines", _long_breaks(room.stack.depth)),
        Group("pointer", tuple(_pointer(room, highlight))),
        Group("tags", _tag_marks(leaders)),
        Group("words", (*_words(assembly, room), Text((CIRCLE - 2.9, below), text, SIZE, role="scale"))),
    ]
    groups = [one for one in groups if one.marks]
    _, bottom, _, top = extent([*groups, compose.outer_marks(room, frame)])
    shift = 0.5 - bottom
    section, body = compose.section_group(room, Frame(0.0, (LEFT, shift)), [])
    placed = (section, *(moved(one, 0.0, (0.0, shift)) for one in groups))
    notes = layout_notes(room.stack, (), body.unknown, units, room.view)
    scale = room.stack.scale
    return Drawing(
        assembly.name, width, top - bottom + 1.0, placed, scale, scale_text(scale, units), tuple(body.families), notes
    )


def _cut(assembly: Assembly, units: Units) -> Cut:
    larger, usual, smaller = SCALES[units]
    deep = full_depth(assembly, 1.0)
    scale = larger if deep / larger <= SHALLOW else usual if deep / usual <= DEEPEST else smaller
    stack, view = stacked(assembly, scale, DEEPEST), view_of(assembly)
    room = cut(stack, framings(stack, view, LENGTH, lone=0.0), LENGTH, view, units)
    return Cut(stack, room.framing, LENGTH, view, units, (), room.signs)


def _leaders(
    room: Cut, frame: Frame, wanted: tuple[tuple[int, str], ...], width: float
) -> tuple[layout_tags.Leader, ...]:
    words = {str(number): note for number, note in wanted}
    note_room = width - CIRCLE - layout_tags.RADIUS - layout_tags.NOTE_GAP
    found = spots(room.stack, room.framing, (), [at for at, _ in room.signs], LENGTH, room.units)
    made = [
        layout_tags.Tag((one.label,), tuple(map(frame.place, one.places)), wrapped(words[one.label], note_room))
        for one in found
        if one.label in words
    ]
    return layout_tags.arranged(made, layout_tags.Column(ELBOW, CIRCLE))


def _tag_marks(leaders: tuple[layout_tags.Leader, ...]) -> tuple[Mark, ...]:
    return (*tags.leaders_marks(leaders), *(mark for one in leaders for mark in tags.tag_marks(one)))


def _long_breaks(depth: float) -> tuple[Mark, ...]:
    """The break lines run on beside the words."""
    ends = ((breaks.REACH, WORD_ROOM), (-depth - breaks.REACH, -depth - WORD_ROOM))
    return tuple(Line(((x, a), (x, b)), 0.25, role="break") for x in (LEFT, LEFT + LENGTH) for a, b in ends)


def _pointer(room: Cut, highlight: str | None) -> list[Mark]:
    """A solid triangle at the left, its tip at the middle of the layer."""
    marks: list[Mark] = []
    for band in room.stack.bands:
        if band.layer.name == highlight:
            y, tip = band.middle, LEFT - 1.8
            commands = (("M", tip, y), ("L", tip - 3.9, y + 2.2), ("L", tip - 3.9, y - 2.2), ("Z",))
            marks.append(Curve(commands, fill="black", role="pointer"))
    return marks


def _words(assembly: Assembly, room: Cut) -> list[Mark]:
    above, below = sides(assembly)
    heights = (WORD_ROOM - 1.2 - CAPITAL, -room.stack.depth - WORD_ROOM + 1.0)
    ground = room.stack.ground
    marks = []
    for y, word in zip(heights, (above, below), strict=True):
        if ground and word == "GROUND":
            y = y - 9.0 if y < 0 else y + 9.0
        marks.append(Text((LEFT + 1.2, y), word, SIZE, "bold", spaced=SPACED, role="side"))
    return marks
