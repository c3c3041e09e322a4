"""A wall cut from top to bottom: the outside at the left, tags with notes on both sides."""

from dataclasses import dataclass
from itertools import pairwise
from math import inf

from layerfolio.assembly.types import Assembly
from layerfolio.drawing import compose, control, dimensions, layout_tags
from layerfolio.drawing.cut import Cut, cut
from layerfolio.drawing.dimensions import Dimensions
from layerfolio.drawing.dodge import clear_of_leaders
from layerfolio.drawing.extent import extent
from layerfolio.drawing.figures import Units, figure, with_other
from layerfolio.drawing.finish import finished
from layerfolio.drawing.frame import Frame
from layerfolio.drawing.layout_framing import FIRST, fitting_length, framings
from layerfolio.drawing.layout_scale import DEEPEST, SCALES, level_scale
from layerfolio.drawing.layout_stack import stacked
from layerfolio.drawing.layout_tags import Leader
from layerfolio.drawing.lettering import CAPITAL, LINE, SIZE, wide
from layerfolio.drawing.lines import Obstacle
from layerfolio.drawing.marks import Drawing, Mark, Text
from layerfolio.drawing.names import sides
from layerfolio.drawing.section_level import BRACKET, WORD_SPACED
from layerfolio.drawing.upright_tags import both_columns
from layerfolio.units.quantity import Quantity

TALLEST, USUAL, LEAST = 112.0, 84.0, 64.0  # mm of the section's height on paper
REST = 52.0  # mm of a drawing's height that chain, words, check bar and key take
CHAIN = 8.6  # chain below the section
SPACING, NEXT = 6.0, 7.0  # spacing line from a face; from one to the next
ENOUGH, LEAST_NOTE, MOST = 20.0, 12.0, 42.0  # mm for notes: to keep a scale; to be written at all; of use
ELBOW, CIRCLE = 4.0, 9.6  # from the outermost face or spacing line


@dataclass(frozen=True, slots=True)
class Columns:
    """Left face of the section, elbows and circles on both sides of it, and the room of the notes; None: no notes."""

    section: float
    left: tuple[float, float]
    right: tuple[float, float]
    note_room: float | None


def upright(
    assembly: Assembly, units: Units, width: float, scale: float | None, with_key: bool, room: float | None
) -> Drawing:
    """See `section.section`; `room` is the height in mm that the whole drawing may take."""
    made, (outer, inner), columns = _fitting(assembly, units, width, scale, _height(room))
    frame = Frame(90.0, (columns.section, 0.0))
    beside = _below(made, units)
    placed = [*frame.marks([*beside.marks, *outer.marks, *inner.marks]), *_bracket_letter(made, frame)]
    obstacles = compose.boxes(placed) + compose.signs_of_air(made, frame)
    leaders = both_columns(made, frame, columns.left, columns.right, columns.note_room, tuple(map(Obstacle.of, obstacles)))
    placed = clear_of_leaders(placed, leaders)
    words = _words(assembly, made, frame, leaders, placed)
    return finished(
        assembly, made, frame, placed, words, leaders, bar_at=0.2, width=width, with_key=with_key
    )


def _height(room: float | None) -> float:
    """What is left of `room` for the section itself: chain, words, check bar and key take the rest."""
    return TALLEST if room is None else min(TALLEST, room - REST)


def _fitting(
    assembly: Assembly, units: Units, width: float, scale: float | None, tallest: float
) -> tuple[Cut, tuple[Dimensions, Dimensions], Columns]:
    """At the scale of the plan section, or the first below it that leaves the notes their room; without notes else."""
    first = scale or level_scale(assembly, units, 134.0)
    for chosen in (first,) if scale else (first, *(one for one in SCALES[units] if one > first)):
        made = _laid_out(assembly, units, chosen, tallest)
        spacings = _spacings(made, units)
        columns = _columns(made, *spacings, width)
        if columns.note_room is not None and columns.note_room >= ENOUGH:
            break
    return made, spacings, columns


def _laid_out(assembly: Assembly, units: Units, chosen: float, tallest: float) -> Cut:
    """As tall as two members or fasteners need, within `tallest`."""
    stack = stacked(assembly, chosen, DEEPEST)
    found = framings(stack, "upright", USUAL)
    apart = [one.spacing for one in found if one.seen == "cut"]
    apart += [1000 * one.fasteners.spacing / chosen for one in assembly.layers if one.fasteners and one.fasteners.spacing]
    wanted = [one + 2 * FIRST for one in apart if one + 2 * FIRST <= tallest]
    length = min(tallest, max([LEAST if apart else USUAL, *wanted]))
    found = framings(stack, "upright", length)
    length = fitting_length(found, length)
    return cut(stack, framings(stack, "upright", length), length, "upright", units)


def _spacings(made: Cut, units: Units) -> tuple[Dimensions, Dimensions]:
    """Spacings of what is cut, and of fasteners in the paper: those of the outer half beside the outer face, the rest inside."""
    outer, inner = Dimensions(), Dimensions()
    y, low = max(SPACING, made.above + 4.0), -made.stack.depth - max(SPACING, made.below + 4.0)
    y = _pin_spacing(outer, made, units, y)
    done: set[tuple[bool, float]] = set()
    for one in made.framing:
        is_outer = one.band.middle > -made.stack.depth / 2
        if len(one.centres) < 2 or (is_outer, round(one.spacing, 3)) in done:
            continue
        done.add((is_outer, round(one.spacing, 3)))
        prefix = f"{one.tag}: " if (is_outer and outer.marks) or (not is_outer and inner.marks) else ""
        dimensions.spacing_line(
            outer if is_outer else inner, one, units, y if is_outer else low, 0.0 if is_outer else -made.stack.depth, prefix, inf
        )
        y, low = (y + NEXT, low) if is_outer else (y, low - NEXT)
    for one in (outer, inner):
        one.marks.sort(key=lambda mark: isinstance(mark, Text))
    return outer, inner


def _pin_spacing(drawn: Dimensions, made: Cut, units: Units, y: float) -> float:
    """Spacing of the fasteners that lie in the paper; the height that is free beyond it."""
    shown = next((one for one in made.pins if one.spacing and len(one.places) > 1), None)
    if shown is None:
        return y
    stated = shown.layer.fasteners.spacing
    text = with_other(figure(Quantity(stated, "length", f"{round(stated * 1000, 1):g} mm"), units), stated, units)
    room = 2 * dimensions.TICK + 0.6
    first, last = shown.places[0], shown.places[1]
    if wide(text) + room > last - first and len(shown.places) > 2:  # one figure for the whole run
        last, text = shown.places[-1], f"{len(shown.places) - 1} × {text}"
    drawn.line((first - dimensions.PAST, y), (last + dimensions.PAST, y))
    for x in (one for one in shown.places if first <= one <= last):
        drawn.line((x, max(shown.head, 0.0) + dimensions.OFF), (x, y + dimensions.PAST), role="extension")
        drawn.tick(x, y)
    _pin_figure(drawn, shown.places, (first, last), y, text)
    return y + NEXT


def _pin_figure(drawn: Dimensions, places: tuple[float, ...], span: tuple[float, float], y: float, text: str) -> None:
    """Over the line where no tick is in its way, else above the end of the run."""
    (first, last), half = span, wide(text) / 2 + dimensions.TICK + 0.3
    middle = next(
        (x for x in ((first + last) / 2, *((a + b) / 2 for a, b in pairwise(places))) if first + half <= x <= last - half
         and all(abs(x - one) >= half for one in places)), None,
    )  # fmt: skip
    if middle is None:
        at, anchor = (last + dimensions.PAST + 1.0, y - CAPITAL / 2), "start"
    else:
        at, anchor = (middle, y + 1.1), "middle"
    drawn.marks.append(Text(at, text, SIZE, anchor=anchor, box=0.1, role="spacing"))


def _columns(made: Cut, outer: Dimensions, inner: Dimensions, width: float) -> Columns:
    """As near to the section as dimensions allow; notes take what is left of `width`."""
    deep = made.stack.depth
    beside_left = extent(outer.marks)[3] if outer.marks else made.above
    beside_right = -deep - extent(inner.marks)[1] if inner.marks else made.below
    left, right = (max(one + 2.5, 4.0) for one in (beside_left, beside_right))
    free = width - deep - left - right - 2 * (CIRCLE + layout_tags.RADIUS + 0.5)
    room = min(free / 2 - layout_tags.NOTE_GAP, MOST)
    x = left + CIRCLE + layout_tags.RADIUS + 0.5 + free / 2
    a, b = left + ELBOW, left + CIRCLE
    c, d = right + ELBOW, right + CIRCLE
    return Columns(x, (x - a, x - b), (x + deep + c, x + deep + d), room if room >= LEAST_NOTE else None)


def _below(made: Cut, units: Units) -> Dimensions:
    """Bracket, chain and overall line under the section, in its own directions."""
    off = CHAIN
    chain = dimensions.thickness_chain(made.stack, units, -off)
    under = off + dimensions.FIGURE_GAP + dimensions.figure_room(made.stack, units) + 5.0
    overall = dimensions.overall_line(made.stack, units, -under, True)
    bracket, _ = control.bracket(made.stack, -BRACKET)
    return Dimensions([*chain.marks, *overall.marks, *bracket], [*chain.ticks, *overall.ticks])


def _bracket_letter(made: Cut, frame: Frame) -> list[Mark]:
    _, at = control.bracket(made.stack, -BRACKET)
    return [control.letter(frame.place(at), "T")] if at else []


def _words(assembly: Assembly, made: Cut, frame: Frame, leaders: tuple[Leader, ...], beside: list[Mark]) -> list[Mark]:
    """The names of both sides over the upper corners, clear of tags and of dimensions beside the section."""
    outside, inside = sides(assembly)
    tops = [one.circle[1] + max(layout_tags.RADIUS, len(one.tag.note) * LINE / 2) for one in leaders]
    tops.append(extent(beside)[3] if beside else 0.0)
    y = max([made.length + 5.4, *(one + 1.6 for one in tops)])
    left, right = frame.place((y, 0.0)), frame.place((y, -made.stack.depth))
    start = max(left[0] - 2.0, 0.5 + wide(outside, "bold", WORD_SPACED))
    style = {"style": "bold", "spaced": WORD_SPACED, "role": "side"}
    return [
        Text((start, left[1]), outside, SIZE, anchor="end", **style),
        Text((max(right[0] + 2.0, start + 4.0), right[1]), inside, SIZE, anchor="start", **style),
    ]
