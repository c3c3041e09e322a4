"""Roofs: cut along the slope and turned by it, rising to the right; words, tags and letters stay upright."""

from dataclasses import dataclass
from math import cos, radians, sin

from layerfolio.assembly.types import Assembly
from layerfolio.drawing import compose, control, dimensions, layout_tags
from layerfolio.drawing.cut import Cut, cut
from layerfolio.drawing.dimensions import Dimensions
from layerfolio.drawing.extent import extent
from layerfolio.drawing.figures import Units
from layerfolio.drawing.finish import finished
from layerfolio.drawing.frame import Frame
from layerfolio.drawing.layout_framing import framings
from layerfolio.drawing.layout_scale import lead_spacing
from layerfolio.drawing.layout_stack import Stack, stacked
from layerfolio.drawing.layout_strips import strips_of
from layerfolio.drawing.lettering import wide
from layerfolio.drawing.lines import Obstacle
from layerfolio.drawing.marks import Drawing, Mark
from layerfolio.drawing.names import layer_note, member_note, sides
from layerfolio.drawing.section_level import BRACKET
from layerfolio.drawing.slope_words import outside_words, word_below

LONGEST, SHORTEST = 134.0, 55.0
TALLEST = {"metric": 96.0, "customary": 82.0}  # mm: what leaves the layer table its page, where a key stands below
TALLEST_WIDE = {"metric": 96.0, "customary": 110.0}  # on wide sheets
SCALES = {"metric": (5, 10, 20), "customary": (8, 12, 16)}
CHAIN = {"metric": (10.0, 22.0), "customary": (9.0, 24.0)}  # chain and overall line from the section
NOTE_WIDEST, NOTE_LEAST = 38.0, 18.0
BELOW = 7.0  # spacing line from the section
FREE = 6.5  # between the section and the elbows
STEEPEST = 75.0  # degrees: what is steeper is drawn so


@dataclass(frozen=True, slots=True)
class Place:
    """What a slope leaves for the section: angle, offsets of chain and overall line, width and elbows."""

    slope: float
    chain: float
    overall: float
    circle: float
    note_room: float
    tallest: float

    @property
    def elbow(self) -> float:
        return self.circle - layout_tags.RADIUS - 6.0

    def longest(self, depth: float) -> float:
        """Length of a section `depth` mm deep that stays within width and height."""
        a = radians(self.slope)
        wide_ = self.elbow - FREE - 1.0 - (self.overall + 5.0) * cos(a) - depth * sin(a)
        tall = self.tallest - 6.0 - self.overall * sin(a) - depth * cos(a)
        return min(wide_ / cos(a), tall / sin(a), LONGEST)


def sloped(assembly: Assembly, units: Units, width: float, scale: float | None, with_key: bool) -> Drawing:
    """See `section.section`."""
    room, place = _laid_out(assembly, units, width, scale, (TALLEST if with_key else TALLEST_WIDE)[units])
    frame = Frame(place.slope, (0.0, 0.0))
    below = -room.stack.depth - max(BELOW, room.below + 5.2)
    _, lower = dimensions.spacing_lines(room.framing, room.stack, units, None, below, room.length)
    beside = _beside(room, units, place)
    reach = [*frame.marks([*beside.marks, *lower.marks]), compose.outer_marks(room, frame)]
    spaced = extent(frame.marks(lower.marks))[2] if lower.marks else 0.0
    frame = Frame(place.slope, (_shift(room, place, reach, spaced), 0.0))
    around = [*frame.marks([*beside.marks, *lower.marks]), *_bracket_letter(room, frame)]
    words = _words(assembly, room, frame, around, lower)
    obstacles = compose.boxes(around) + compose.kept_free([beside, lower], frame)  # words give way themselves
    top = _highest_tag(room, frame, extent(around)[1] if around else 0.0)
    obstacles += compose.signs_of_air(room, frame)
    strips = strips_of(room.stack, room.controls, frame, room.length)
    column = layout_tags.Column(place.elbow, place.circle, tuple(map(Obstacle.of, obstacles)), top, strips)
    found = compose.tags_of(room, frame, place.note_room)
    leaders = compose.leaders_of(room, frame, found, column)
    return finished(assembly, room, frame, around, words, leaders, bar_at=0.0, width=width, with_key=with_key)


def _highest_tag(room: Cut, frame: Frame, bottom: float) -> float:
    """A little above the section at most, unless the column would then reach below everything else."""
    count = len(room.stack.bands) + sum(one.seen != "no" for one in room.framing)
    return max(frame.place((room.length, 0.0))[1] + 4.0, bottom + (count - 0.5) * layout_tags.PITCH)


def _laid_out(
    assembly: Assembly, units: Units, width: float, scale: float | None, tallest: float
) -> tuple[Cut, Place]:
    """The cut at the first scale that leaves it long enough."""
    for chosen in (scale,) if scale else SCALES[units]:
        stack = stacked(assembly, chosen, 1e9)
        place = _place(assembly, stack, units, width, tallest)
        needed = max(SHORTEST, lead_spacing(assembly) / chosen + 16.0)
        if place.longest(stack.depth) >= needed:
            break
    if place.longest(stack.depth) < SHORTEST:
        stack = stacked(assembly, chosen, _deepest(place))
        place = _place(assembly, stack, units, width, tallest)  # the word for what is cut short needs its room
    length = max(place.longest(stack.depth), 0.5 * SHORTEST)
    return cut(stack, framings(stack, "slope", length), length, "slope", units), place


def _deepest(place: Place) -> float:
    """The depth that leaves the shortest useful length."""
    depth = 200.0
    while depth > 30.0 and place.longest(depth) < SHORTEST:
        depth -= 2.0
    return depth


def _place(assembly: Assembly, stack: Stack, units: Units, width: float, tallest: float) -> Place:
    chain, overall = CHAIN[units]
    overall = max(overall, chain + dimensions.FIGURE_GAP + dimensions.figure_room(stack, units) + 2.4)
    frames = framings(stack, "slope", LONGEST)
    notes = [layer_note(one, units) for one in stack.bands] + [member_note(one, units) for one in frames]
    note = max(NOTE_LEAST, min(NOTE_WIDEST, max(map(wide, notes)) + 0.5))
    circle = width - note - layout_tags.NOTE_GAP - layout_tags.RADIUS
    return Place(min(assembly.slope, STEEPEST), chain, overall, circle, note, tallest)


def _beside(room: Cut, units: Units, place: Place) -> Dimensions:
    """Chain, overall line and bracket at the lower end, in the section's directions."""
    chain = dimensions.thickness_chain(room.stack, units, -place.chain)
    whole = dimensions.overall_line(room.stack, units, -place.overall, True)
    bracket, _ = control.bracket(room.stack, -BRACKET)
    return Dimensions([*chain.marks, *whole.marks, *bracket], [*chain.ticks, *whole.ticks])


def _bracket_letter(room: Cut, frame: Frame) -> list[Mark]:
    _, at = control.bracket(room.stack, -BRACKET)
    return [control.letter(frame.place(at), "T")] if at else []


def _shift(room: Cut, place: Place, reach: list[Mark], spaced: float) -> float:
    """From the left edge: what is free is shared between both sides of the section; `spaced`: how far right spacings reach."""
    frame = Frame(place.slope, (0.0, 0.0))
    right = max(x for x, _ in map(frame.place, room.corners))
    left = min(extent(reach)[0], 0.0)
    free = place.elbow - FREE - (right - left)
    beside = place.elbow - (spaced - left)  # a steep section's spacings come to lie below the tags
    return min(0.6 * max(free, 0.0), max(beside - 1.0, 0.0)) - left + 0.5


def _words(assembly: Assembly, room: Cut, frame: Frame, around: list[Mark], lower: Dimensions) -> list[Mark]:
    above, below = sides(assembly)
    return [
        *outside_words(above, frame, around, room),
        word_below(below, frame, room, lower.marks),
    ]
