"""A fastener through insulation, cut along its axis: side member, what is crossed, framing, all at true length."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate, pairwise

from layerfolio.drawing import key
from layerfolio.drawing.dimensions import LINE_WIDTH, PAST, TICK, Dimensions
from layerfolio.drawing.extent import extent
from layerfolio.drawing.figures import Units
from layerfolio.drawing.geometry import moved, rectangle
from layerfolio.drawing.layout_scale import scale_text
from layerfolio.drawing.lettering import CAPITAL, SIZE, spread, wide, wrapped
from layerfolio.drawing.marks import Curve, Drawing, Group, Line, Mark, Text
from layerfolio.units.show import length_figure

SCALES: dict[str, tuple[int, ...]] = {"metric": (1, 2, 5, 10), "customary": (1, 2, 4, 8)}
HIGH = 16.0  # of the strip, mm
BEHIND = 9.0  # of framing shown beyond the tip
FIRST = 20.0  # where the strip begins
HEAD = 4.4
NAMES = ("under the head", "crossed", "in the framing")


@dataclass(frozen=True, slots=True)
class FastenerView:
    """Lengths in m: of the fastener's three parts, its head flush with the outer face, and its diameter."""

    name: str
    side: float
    gap: float
    penetration: float
    diameter: float


def fastener_sketch(view: FastenerView, *, units: Units = "metric", width: float = 180.0) -> Drawing:
    """To the largest scale that fits, with a check bar; the parts are dimensioned below, the whole length above."""
    parts = (view.side, view.gap, view.penetration)
    room = width - FIRST - BEHIND - 16.0
    scale = next((one for one in SCALES[units] if sum(parts) * 1000 / one <= room), SCALES[units][-1])
    factor = 1000 / scale
    edges = [FIRST + one * factor for one in accumulate((0.0, *parts))]
    marks = [
        Group("members", tuple(_members(edges))), Group("fastener", tuple(_fastener(edges, view.diameter * factor))),
        Group("dimensions", tuple(_dimensions(edges, parts, units))), Group("words", tuple(_words(edges, view.name))),
    ]  # fmt: skip
    text = scale_text(scale, units)
    low = extent(marks)[1] - 6.0
    words = text if units == "customary" else f"Scale {text}"
    at = min(114.0, width - 2.0 - wide(words, "bold"))
    bar = Group("check bar", (*key.check_bar(0.2, low, units), Text((at, low - 0.4), words, SIZE, "bold", role="scale")))
    _, bottom, _, top = extent([*marks, bar])
    placed = tuple(moved(one, 0.0, (0.0, 0.5 - bottom)) for one in (*marks, bar))
    return Drawing(f"fastener of {view.name}", width, top - bottom + 1.0, placed, float(scale), text)


def _members(edges: Sequence[float]) -> list[Mark]:
    """Side member and framing, each with its diagonals as cut timber; what is crossed is left white between two faces."""
    side, end = rectangle(edges[0], 0.0, edges[1], HIGH), edges[3] + BEHIND
    marks: list[Mark] = [_box(side), *_diagonals(side)]
    main = rectangle(edges[2], 0.0, end, HIGH)
    marks.append(Line(((end, HIGH), (edges[2], HIGH), (edges[2], 0.0), (end, 0.0)), 0.5, role="outline framing"))
    marks += _diagonals(main)
    marks += [Line(((edges[1], y), (edges[2], y)), 0.2, (1.4, 1.0), role="crossed") for y in (0.0, HIGH)]
    half = HIGH / 2
    zigzag = (
        (end, -2.0),
        (end, half - 2.4),
        (end - 2.0, half - 1.2),
        (end + 2.0, half + 1.2),
        (end, half + 2.4),
        (end, HIGH + 2.0),
    )
    return [*marks, Line(zigzag, LINE_WIDTH, role="break")]


def _box(outline: Sequence[tuple[float, float]]) -> Mark:
    first, *rest = outline
    return Curve((("M", *first), *(("L", *one) for one in rest), ("Z",)), 0.5, role="outline side")


def _diagonals(outline: Sequence[tuple[float, float]]) -> list[Mark]:
    a, b, c, d = outline
    return [Line((a, c), 0.2, role="cut timber"), Line((b, d), 0.2, role="cut timber")]


def _fastener(edges: Sequence[float], thick: float) -> list[Mark]:
    """Shank with its tip, no thinner than a bold line, and the head."""
    half, y = max(thick, 0.7) / 2, HIGH / 2
    tip = min(2.0, (edges[3] - edges[0]) / 4)
    shank = ((edges[0], y - half), (edges[3] - tip, y - half), (edges[3], y), (edges[3] - tip, y + half), (edges[0], y + half))
    head = Line(((edges[0], y - HEAD / 2), (edges[0], y + HEAD / 2)), 1.0, role="fastener head")
    commands = (("M", *shank[0]), *(("L", *one) for one in shank[1:]), ("Z",))
    return [Curve(commands, 0.35, "black", 0.5, role="fastener"), head]


def _dimensions(edges: Sequence[float], parts: Sequence[float], units: Units) -> list[Mark]:
    """Each part below, the whole above; figures too wide for their part stand under the line."""
    made, low, high = Dimensions(), -9.0, HIGH + 6.0
    made.line((edges[0] - PAST, low), (edges[3] + PAST, low))
    made.line((edges[0] - PAST, high), (edges[3] + PAST, high))
    for place in dict.fromkeys(edges):
        made.line((place, -1.5), (place, low - PAST), role="extension")
        made.tick(place, low)
    for place in (edges[0], edges[3]):
        made.line((place, HIGH + 1.5), (place, high + PAST), role="extension")
        made.tick(place, high)
    whole = length_figure(sum(parts), units)
    made.marks.append(Text(((edges[0] + edges[3]) / 2, high + 1.1), whole, SIZE, anchor="middle", role="length"))
    return [*made.marks, *_parts(edges, parts, units, low)]


def _parts(edges: Sequence[float], parts: Sequence[float], units: Units, y: float) -> list[Mark]:
    shown = [
        (a, b, length_figure(part, units), name) for (a, b), part, name in zip(pairwise(edges), parts, NAMES, strict=True) if part
    ]
    texts = [f"{figure} {name}" for _, _, figure, name in shown]
    middles = [(a + b) / 2 for a, b, _, _ in shown]
    places = [-one for one in spread([-one for one in middles], [wide(one) + 3.0 for one in texts])]
    shift = max(0.0, 0.5 - (places[0] - wide(texts[0]) / 2))
    marks: list[Mark] = []
    for middle, place, text in zip(middles, places, texts, strict=True):
        top = y - TICK - 2.6
        marks.append(Line(((middle, y), (place + shift, top)), LINE_WIDTH, role="pointer"))
        marks.append(Text((place + shift, top - 0.6 - CAPITAL), text, SIZE, anchor="middle", role="part"))
    return marks


def _words(edges: Sequence[float], name: str) -> list[Mark]:
    y = HIGH / 2 - CAPITAL / 2
    return [
        Text((0.0, HIGH + 6.0 + 1.1 + CAPITAL + 2.6), wrapped(name, 170.0, 1)[0], SIZE, "bold", role="title"),
        Text((FIRST - 5.0, y), "outside", SIZE, anchor="end", role="side"),
        Text((edges[3] + BEHIND + 3.5, y), "inside", SIZE, role="side"),
    ]  # fmt: skip
