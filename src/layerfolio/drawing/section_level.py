"""Sections that lie level on the page: walls in plan, floors, slabs, ceilings and flat roofs upright."""

from dataclasses import dataclass

from layerfolio.assembly.types import Assembly
from layerfolio.drawing import compose, control, dimensions, layout_tags
from layerfolio.drawing.cut import Cut, cut
from layerfolio.drawing.dimensions import Dimensions
from layerfolio.drawing.extent import extent
from layerfolio.drawing.figures import Units
from layerfolio.drawing.finish import finished
from layerfolio.drawing.frame import Frame
from layerfolio.drawing.layout_framing import FIRST, fitting_length, framings, view_of
from layerfolio.drawing.layout_scale import DEEPEST, lead_spacing, level_scale
from layerfolio.drawing.layout_stack import stacked
from layerfolio.drawing.layout_strips import strips_of
from layerfolio.drawing.lettering import CAPITAL, SIZE
from layerfolio.drawing.lines import Obstacle
from layerfolio.drawing.marks import Drawing, Mark, Text
from layerfolio.drawing.names import sides

LEFT = {"metric": (26.0, 10.0), "customary": (29.0, 12.0)}  # section from the field's edge, chain from the section
OVERALL = 4.0  # overall line from the field's edge
BRACKET = 4.4  # thermal bracket from the section
CIRCLE_EDGE, ELBOW = 2.7, 6.0  # from the field's right edge; before the circle
NOTE_ELBOW, NOTE_SECTION, NOTE_WIDEST, NOTE_LEAST = 3.2, 7.0, 27.0, 15.0
ABOVE, BELOW = 5.2, 6.1  # spacing lines from the section
CLEAR = 1.6  # spacing lines from what stands out of the section
WORD_SPACED = 0.9 * 72 / 25.4  # points: 0.9 mm


@dataclass(frozen=True, slots=True)
class Sides:
    """Left edge and length of the section; elbows and circles; room for notes or None."""

    left: float
    chain: float
    length: float
    elbow: float
    circle: float
    note_room: float | None


def level(
    assembly: Assembly, units: Units, width: float, scale: float | None, with_key: bool, notes: bool
) -> Drawing:
    """See `section.section`."""
    room, side = _laid_out(assembly, units, width, scale, notes)
    frame = Frame(0.0, (side.left, 0.0))
    found = compose.tags_of(room, frame, side.note_room)
    if any(one.further for one in found):  # circles side by side take the room of the section
        room, side = _laid_out(assembly, units, width - layout_tags.SIDE, scale, False)
        frame = Frame(0.0, (side.left, 0.0))
        found = compose.tags_of(room, frame, None)
    upper, lower = _spacings(room, units)
    beside = _beside(room, units, side, frame)
    around = [*beside, *frame.marks([*upper.marks, *lower.marks])]
    words = _words(assembly, room, side, upper, lower)
    obstacles = compose.boxes([*around, *words]) + compose.kept_free([upper, lower], frame)
    obstacles += compose.signs_of_air(room, frame)
    strips = strips_of(room.stack, room.controls, frame, room.length)
    column = layout_tags.Column(side.elbow, side.circle, tuple(map(Obstacle.of, obstacles)), strips=strips)
    leaders = compose.leaders_of(room, frame, found, column)
    return finished(
        assembly, room, frame, around, words, leaders, bar_at=side.left, width=width, with_key=with_key
    )


def _laid_out(assembly: Assembly, units: Units, width: float, scale: float | None, notes: bool) -> tuple[Cut, Sides]:
    """The cut at the scale that fits, and what stands left and right of it."""
    view = view_of(assembly)
    widest = _sides(width, LEFT[units][0], LEFT[units][1], units, None)
    chosen = scale or level_scale(assembly, units, widest.length)
    stack = stacked(assembly, chosen, DEEPEST)
    left, chain = LEFT[units]
    left = max(left, OVERALL + 2.4 + dimensions.figure_room(stack, units) + dimensions.FIGURE_GAP + chain)
    first = 6.4 if notes else FIRST
    needed = lead_spacing(assembly) / chosen + 2 * first if notes else None
    side = _sides(width, left, chain, units, needed)
    framing = framings(stack, view, side.length, first)
    length = fitting_length(framing, side.length)
    if length < side.length:
        framing = framings(stack, view, length, first)
    return cut(stack, framing, length, view, units), side


def _sides(width: float, left: float, chain: float, units: Units, needed: float | None) -> Sides:
    """`needed` is the length that notes leave to the section; None: no notes."""
    if needed is None:
        circle = width - CIRCLE_EDGE - layout_tags.RADIUS
        elbow = circle - layout_tags.RADIUS - ELBOW
        return Sides(left, chain, elbow - 5.5 - left, elbow, circle, None)
    fixed = left + NOTE_SECTION + 2 * layout_tags.RADIUS + layout_tags.NOTE_GAP
    note = max(NOTE_LEAST, min(NOTE_WIDEST, width - fixed - needed))
    circle = width - note - layout_tags.NOTE_GAP - layout_tags.RADIUS
    edge = circle - layout_tags.RADIUS
    return Sides(left, chain, edge - NOTE_SECTION - left, edge - NOTE_ELBOW, circle, note)


def _spacings(room: Cut, units: Units) -> tuple[Dimensions, Dimensions]:
    above = max(ABOVE, room.above + CLEAR)
    below = max(BELOW, room.below + CLEAR + CAPITAL + 1.1)
    return dimensions.spacing_lines(room.framing, room.stack, units, above, -room.stack.depth - below)


def _beside(room: Cut, units: Units, side: Sides, frame: Frame) -> list[Mark]:
    """Overall line, chain and thermal bracket at the left."""
    chain = dimensions.thickness_chain(room.stack, units, -side.chain)
    whole = dimensions.overall_line(room.stack, units, OVERALL - side.left, False)
    bracket, at = control.bracket(room.stack, -BRACKET)
    marks = [*frame.marks([*chain.marks, *whole.marks, *bracket])]
    return [*marks, control.letter(frame.place(at), "T")] if at else marks


def _words(assembly: Assembly, room: Cut, side: Sides, upper: Dimensions, lower: Dimensions) -> list[Mark]:
    """The names of both sides, centred."""
    top, bottom = sides(assembly)
    high = extent(upper.marks)[3] + 1.8 if upper.marks else max(5.0, room.above + 1.8)
    low = extent(lower.marks)[1] - 4.2 if lower.marks else -room.stack.depth - max(7.0, room.below + 3.8)
    x = side.left + room.length / 2
    return [
        Text((x, y), words, SIZE, "bold", "middle", spaced=WORD_SPACED, role="side")
        for y, words in ((high, top), (low, bottom))
    ]
