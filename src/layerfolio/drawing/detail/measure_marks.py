"""Dimensions of a detail: line, extension lines, ticks and the figure."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

from layerfolio.drawing.detail.model import Measure
from layerfolio.drawing.figures import INCH, Units, inch_text
from layerfolio.drawing.geometry import Outline, bounds, boxes_touch, rectangle, text_box, turned
from layerfolio.drawing.lettering import CAPITAL, SIZE, wide
from layerfolio.drawing.lines import crosses_outline
from layerfolio.drawing.marks import Line, Mark, Text

TICK, PAST, OFF = 1.3, 1.6, 1.5  # half a tick; beyond the end ticks; from the feature
ABOVE = 1.15  # from the line to the feet of its figure
BOX = 0.1


def figure_of(measure: Measure, units: Units) -> str:
    """The figure: the text where one is given, else whole millimetres or inches to 1/16 with millimetres in brackets."""
    if measure.text or measure.value is None:
        return measure.text
    mm = measure.value * 1000
    if units == "metric":
        return f"{round(mm):d}"
    return f"{inch_text(Fraction(round(mm / float(INCH) * 16), 16))} ({round(mm):d})"


def measure_marks(measures: Iterable[Measure], units: Units) -> list[Mark]:
    """All dimensions; figures last, so that no line runs through them."""
    found: dict[Mark, None] = {}
    figures: list[Mark] = []
    for one in measures:
        start, end = sorted((_along(one, one.start), _along(one, one.end)))
        if end - start < 0.3:
            continue
        found |= dict.fromkeys(_lines(one, start, end))
        text = figure_of(one, units)
        if text:
            figures.append(_figure(one, start, end, text))
    return [*found, *figures]


def _along(one: Measure, point: tuple[float, float]) -> float:
    return point[0] if one.axis == "x" else point[1]


def _placed(one: Measure, along: float, across: float) -> tuple[float, float]:
    return (along, across) if one.axis == "x" else (across, along)


def _lines(one: Measure, start: float, end: float) -> Iterator[Mark]:
    yield Line((_placed(one, start - PAST, one.line), _placed(one, end + PAST, one.line)), 0.25, role="dimension")
    for point in (one.start, one.end):
        at, feature = _along(one, point), point[1] if one.axis == "x" else point[0]
        side = 1 if one.line > feature else -1
        if abs(one.line - feature) > OFF + 0.5:
            ends = _placed(one, at, feature + side * OFF), _placed(one, at, one.line + side * PAST)
        else:
            ends = _placed(one, at, one.line - PAST), _placed(one, at, one.line + PAST)
        yield Line(ends, 0.25, role="extension")
        x, y = _placed(one, at, one.line)
        yield Line(((x - TICK, y - TICK), (x + TICK, y + TICK)), 0.5, role="tick")


def _figure(one: Measure, start: float, end: float, text: str) -> Text:
    """Over the line or left of it, read from below or from the right; beside the ticks where it does not fit."""
    fits = end - start >= wide(text) + 2 * TICK + 0.8
    middle = (start + end) / 2
    if one.axis == "x":
        if fits:
            return Text((middle, one.line + ABOVE), text, SIZE, anchor="middle", box=BOX, role="figure")
        return Text((end + PAST + 1.0, one.line - CAPITAL / 2), text, SIZE, box=BOX, role="figure")
    if fits:
        return Text((one.line - ABOVE, middle), text, SIZE, anchor="middle", turn=90.0, box=BOX, role="figure")
    return Text((one.line - TICK - 1.0, middle - CAPITAL / 2), text, SIZE, anchor="end", box=BOX, role="figure")


def dodged(marks: list[Mark], leaders: Sequence[Line], kept: Sequence[Outline], width: float) -> list[Mark]:
    """The same; a figure that a leader cannot help crossing moves along its line, or across it, clear of
    what is drawn round it and of the outlines `kept`, within the page's width."""
    ticks = [_around(one) for one in marks if isinstance(one, Line) and one.role == "tick"]
    lines = [*leaders, *(one for one in marks if isinstance(one, Line) and one.role in ("dimension", "extension"))]
    done = list(marks)
    for number, one in enumerate(marks):
        if isinstance(one, Text) and _crossed(one, leaders):
            others = [text_box(other) for other in done if isinstance(other, Text) and other is not one]
            places = (tried for tried in _other_places(one) if _is_on_page(tried, width))
            done[number] = next((tried for tried in places if _is_free(tried, lines, [*ticks, *others, *kept])), one)
    return done


def _other_places(one: Text) -> Iterator[Text]:
    """Along the line first, then across it too."""
    steps = [1.5 * sign * step for step in range(1, 24) for sign in (1, -1)]
    for across in (0.0, -4.2, 4.2, -8.4, 8.4):
        for along in steps if across == 0.0 else (0.0, *steps):
            dx, dy = turned((along, across), one.turn)
            yield replace(one, at=(one.at[0] + dx, one.at[1] + dy))


def _is_on_page(one: Text, width: float) -> bool:
    box = bounds(text_box(one))
    return box[0] >= 0.0 and box[2] <= width


def _is_free(one: Text, lines: Sequence[Line], taken: Sequence[Outline]) -> bool:
    box = text_box(one, 0.3)
    return not _crossed(one, lines) and not any(boxes_touch(box, other) for other in taken)


def _crossed(one: Text, leaders: Sequence[Line]) -> bool:
    box = text_box(one, 0.2)
    return any(crosses_outline(a, b, box) for line in leaders for a, b in pairwise(line.points))


def _around(tick: Line) -> Outline:
    (x0, y0), (x1, y1) = tick.points
    return rectangle(x0, y0, x1, y1)
