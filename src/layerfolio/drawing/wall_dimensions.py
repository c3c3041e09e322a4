"""Dimensions of an elevation: a chain of panels and gaps that adds up, the length below it, the height beside the wall."""

from fractions import Fraction
from itertools import pairwise

from layerfolio.drawing.dimensions import LINE_WIDTH, OFF, PAST, TICK, Dimensions
from layerfolio.drawing.figures import INCH, Units, inch_text
from layerfolio.drawing.lettering import CAPITAL, SIZE, spread, wide
from layerfolio.drawing.marks import Line, Mark, Text
from layerfolio.drawing.wall_views import LineView

ROOM = 2 * TICK + 1.6  # what the ticks take of an interval
BELOW = 5.0  # from the chain to the baseline of figures that do not fit on it
LESS = 1e-3  # m: a gap that is none


def breaks(view: LineView) -> list[float]:
    """Where panels begin and end, and the ends of the line, m, from the start."""
    found = {0.0, view.length}
    for one in view.panels:
        found |= {one.start, one.start + one.length}
    ordered: list[float] = []
    for place in sorted(found):
        if not ordered or place - ordered[-1] > LESS:
            ordered.append(place)
    return ordered


def steps(metres: float, units: Units) -> int:
    """A length in whole steps of what is printed: millimetres, or sixteenths of an inch."""
    return round(metres * 1000) if units == "metric" else round(metres * 1000 / float(INCH) * 16)


def printed(count: int, units: Units) -> str:
    """So many steps as a figure."""
    return str(count) if units == "metric" else inch_text(Fraction(count, 16))


def chain_steps(view: LineView, units: Units) -> list[int]:
    """The length of each interval of `breaks` in steps; their sum is that of the whole.

    A panel keeps its own length, as tables print it, and gaps take up what rounding leaves. Without a gap, or where one is
    too small for that, the places are rounded and not the lengths.
    """
    places = breaks(view)
    pairs = list(pairwise(places))
    found = [steps(b - a, units) for a, b in pairs]
    gaps = [number for number, (a, b) in enumerate(pairs) if not _in_panel(view, (a + b) / 2)]
    for number, following in zip(gaps, [*gaps[1:], len(found)], strict=False):
        found[number] = steps(places[following], units) - sum(found[:number]) - sum(found[number + 1 : following])
    if not gaps or min(found) < 0:
        return [steps(b, units) - steps(a, units) for a, b in pairs]
    return found


def chain(view: LineView, factor: float, units: Units, y: float, field: tuple[float, float]) -> tuple[Dimensions, bool]:
    """The chain at `y` and whether figures stand below it; without known places only panels have figures.

    Figures stand on their interval, or below it on a fine line; where even that is too narrow for `field`, in the table alone.
    """
    made = Dimensions()
    places = breaks(view)
    made.line((-PAST, y), (places[-1] * factor + PAST, y))
    for place in places:
        made.line((place * factor, -4.4 if view.hold_downs else -OFF), (place * factor, y - PAST), role="extension")
        made.tick(place * factor, y)
    small: list[tuple[float, str]] = []
    for (a, b), count in zip(pairwise(places), chain_steps(view, units), strict=True):
        text = printed(count, units)
        if not view.laid_out and not _in_panel(view, (a + b) / 2):
            continue
        middle = (a + b) / 2 * factor
        if (b - a) * factor >= wide(text) + ROOM:
            made.marks.append(Text((middle, y + 1.1), text, SIZE, anchor="middle", role="chain"))
        else:
            small.append((middle, text))
    below = _below(small, y, field)
    made.marks += below
    return made, bool(below)


def _in_panel(view: LineView, place: float) -> bool:
    return any(one.start <= place <= one.start + one.length for one in view.panels)


def _below(small: list[tuple[float, str]], y: float, field: tuple[float, float]) -> list[Mark]:
    """Figures under the chain, pushed apart, each with a line up to the middle of its interval."""
    if not small:
        return []
    widths = [wide(text) + 1.4 for _, text in small]
    places = [-one for one in spread([-middle for middle, _ in small], widths)]
    if places[0] - widths[0] / 2 < field[0] or places[-1] + widths[-1] / 2 > field[1]:
        return []
    marks: list[Mark] = []
    for (middle, text), place in zip(small, places, strict=True):
        marks.append(Line(((middle, y), (place, y - BELOW + CAPITAL + 0.6)), LINE_WIDTH, role="pointer"))
        marks.append(Text((place, y - BELOW), text, SIZE, anchor="middle", role="chain"))
    return marks


def whole(view: LineView, factor: float, units: Units, y: float) -> Dimensions:
    """The length of the line at `y`."""
    made = Dimensions()
    long = view.length * factor
    made.line((-PAST, y), (long + PAST, y))
    for x in (0.0, long):
        made.line((x, y + PAST), (x, y - PAST), role="extension")
        made.tick(x, y)
    text = printed(steps(view.length, units), units)
    fits = long >= wide(text) + ROOM
    at = (long / 2, y + 1.1) if fits else (long + 2.4, y - CAPITAL / 2)
    made.marks.append(Text(at, text, SIZE, anchor="middle" if fits else "start", role="overall"))
    return made


def height_room(view: LineView, factor: float, units: Units) -> float:
    """What the height takes at the left of the wall, mm: its figure is turned where the wall is tall enough for it."""
    text = printed(steps(view.height, units), units)
    return 12.5 if _turned(view, factor, text) else 9.9 + wide(text)


def _turned(view: LineView, factor: float, text: str) -> bool:
    return view.height * factor >= wide(text) + ROOM


def height(view: LineView, factor: float, units: Units) -> Dimensions:
    """The height of the wall, left of it."""
    made = Dimensions()
    x, high = -7.0, view.height * factor
    made.line((x, -PAST), (x, high + PAST))
    for y in (0.0, high):
        made.line((x - PAST, y), (-4.6 if y == 0.0 else -OFF, y), role="extension")
        made.tick(x, y)
    text = printed(steps(view.height, units), units)
    if _turned(view, factor, text):
        made.marks.append(Text((x - 1.0, high / 2), text, SIZE, anchor="middle", turn=90.0, role="height"))
    else:
        made.marks.append(Text((x - 2.4, high / 2 - CAPITAL / 2), text, SIZE, anchor="end", role="height"))
    return made
