"""Fasteners that a project states for a layer, at true length and place: head flush with what they hold."""

from dataclasses import dataclass

from layerfolio.assembly.types import Layer
from layerfolio.drawing.figures import Units
from layerfolio.drawing.geometry import Outline
from layerfolio.drawing.layout_framing import Framing, View, main_framing
from layerfolio.drawing.layout_stack import Band, Stack
from layerfolio.drawing.marks import Curve, Line, Mark
from layerfolio.units.lengths import length_figure

THINNEST, BODY = 0.5, 0.9  # mm on paper: no shank is drawn thinner; from here on it has two edges
HEAD, TIP = 2.2, 1.6  # width of a head, length of a tip, times the shank
EDGE = 0.25
THREAD, PITCH = 0.5, 0.9  # share of the length that has a thread as drawn; its pitch on paper
HIDDEN = (1.2, 0.7)  # behind what is cut


@dataclass(frozen=True, slots=True)
class Pins:
    """The fasteners of one layer in the section's directions: at `places`, from `head` to `tip`, `width` thick, paper mm.

    `shown_from`: left of it they lie behind the cut. `spacing` on paper, 0 where it does not show in this view.
    """

    layer: Layer
    places: tuple[float, ...]
    head: float
    tip: float
    width: float
    shown_from: float = 0.0
    spacing: float = 0.0
    held: float | None = None  # m in the framing

    def passes(self, y: float) -> bool:
        return min(self.head, self.tip) < y < max(self.head, self.tip)


def pins_of(stack: Stack, framing: tuple[Framing, ...], length: float, view: View) -> tuple[Pins, ...]:
    """One entry for each layer whose fasteners have a length and can be drawn true."""
    found = []
    for index, band in enumerate(stack.bands):
        stated = band.layer.fasteners
        if stated is not None and stated.length and band.form in ("body", "thin"):
            one = _pins(stack, framing, length, view, index)
            if one is not None:
                found.append(one)
    return tuple(found)


def _pins(stack: Stack, framing: tuple[Framing, ...], length: float, view: View, index: int) -> Pins | None:
    band, stated = stack.bands[index], stack.bands[index].layer.fasteners
    main = main_framing([one for one in framing if one.seen != "no" and one.band.layer.kind == "solid"], any_way=True)
    downward = main is None or band.middle >= main.band.middle
    held = _held(stack, index, 1 if downward else -1)
    head = held.top if downward else held.bottom
    tip = head - stated.length * 1000 / stack.scale * (1 if downward else -1)
    if any(one.cut_short or one.nominal for one in stack.bands if one.bottom < max(head, tip) and one.top > min(head, tip)):
        return None
    own = next((one for one in framing if one.band is band), None) or next((one for one in framing if one.band is held), None)
    places, spacing, shown = _places(own, main, stated, stack.scale, length)
    width = max(THINNEST, (stated.outer or stated.diameter or 0.0) * 1000 / stack.scale)
    return Pins(band.layer, places, head, tip, width, shown, spacing, _grip(main, tip, downward, stack.scale)) if places else None


def _held(stack: Stack, index: int, step: int) -> Band:
    """What lies under the head: the battens that boards are pressed on with, else the layer that states the fasteners."""
    band = stack.bands[index]
    while band.layer.kind == "solid" and band.layer.insulating and not band.layer.member:
        index -= step
        if not 0 <= index < len(stack.bands):
            break
        beside = stack.bands[index]
        if beside.form == "sheet":
            continue
        if beside.layer.kind != "cavity" or beside.layer.member:
            band = beside
        if not band.layer.insulating:
            break
    return band


def _places(
    own: Framing | None, main: Framing | None, stated, scale: float, length: float
) -> tuple[tuple[float, ...], float, float]:
    """Places along the section, their spacing on paper, and from where on they are seen."""
    for one in (own, main):
        if one is not None and one.seen == "cut" and one.centres:
            return one.centres, 0.0, 0.0
    step = (stated.spacing or 0.0) * 1000 / scale
    shown = own.torn if own is not None and own.seen == "along" else main.torn if main is not None else 0.0
    if step < 2.0 or step > length:
        return (), 0.0, 0.0
    start = ((length - shown) / 2 + shown) % step
    return tuple(start + one * step for one in range(int((length - start) / step) + 1)), step, shown


def _grip(main: Framing | None, tip: float, downward: bool, scale: float) -> float | None:
    """Length in the carrying framing, m; None where the tip does not reach it."""
    if main is None:
        return None
    deep = main.band.top - tip if downward else tip - main.band.bottom
    return min(deep, main.band.depth) * scale / 1000 if deep > 1e-6 else None


def pin_marks(one: Pins) -> list[Mark]:
    """Each with its head; dashed where it lies behind the cut."""
    marks: list[Mark] = []
    for x in one.places:
        if x < one.shown_from:
            marks.append(Line(((x, one.head), (x, one.tip)), 0.35, HIDDEN, role="fastener"))
        elif one.width < BODY:
            marks.append(Line(((x, one.head), (x, one.tip)), one.width, role="fastener"))
        else:
            marks.append(Curve(_closed(_shank(x, one)), EDGE, "white", role="fastener"))
            marks += _thread(x, one)
        half = HEAD / 2 * max(one.width, 0.7)
        marks.append(Line(((x - half, one.head), (x + half, one.head)), 0.7, role="fastener head"))
    return marks


def _thread(x: float, one: Pins) -> list[Mark]:
    """Short slanted strokes over the inner part of a screw."""
    if "screw" not in (one.layer.fasteners.kind or one.layer.fasteners.title).lower():
        return []
    sign, half = 1 if one.head > one.tip else -1, one.width / 2
    start, end = one.tip + sign * TIP * one.width, one.tip + sign * THREAD * abs(one.head - one.tip)
    count = int(abs(end - start) / PITCH)
    places = [start + sign * PITCH * (number + 0.5) for number in range(count)]
    commands = tuple(c for y in places for c in (("M", x - half, y - 0.2), ("L", x + half, y + 0.2)))
    return [Curve(commands, 0.2, role="fastener thread")] if commands else []


def _shank(x: float, one: Pins) -> Outline:
    half, sign = one.width / 2, 1 if one.head > one.tip else -1
    shoulder = one.tip + sign * min(TIP * one.width, abs(one.head - one.tip) / 2)
    return (x - half, one.head), (x - half, shoulder), (x, one.tip), (x + half, shoulder), (x + half, one.head)


def _closed(outline: Outline) -> tuple[tuple, ...]:
    first, *rest = outline
    return (("M", *first), *(("L", *one) for one in rest), ("Z",))


def pin_note(one: Pins, units: Units) -> str:
    """What the sheet says of them: title, size, spacing as stated, and how deep they hold as drawn."""
    stated = one.layer.fasteners
    size = _sizes(stated, units)
    words = f"Fasteners of layer {one.layer.number}: {stated.kind or stated.title}{size}"
    apart = [_length(value, units) for value in (stated.spacing, stated.rows) if value]
    if len(apart) == 2:
        words += f", {apart[0]} apart in rows {apart[1]} apart"
    elif apart and stated.spacing:
        words += f", {apart[0]} apart"
    held = f"; {_length(one.held, units)} in the framing" if one.held else ""
    return f"{words}, drawn at true length{held}"


def _sizes(stated, units: Units) -> str:
    parts = [_length(value, units, bare=True) for value in (stated.outer or stated.diameter, stated.length) if value]
    unit = "" if units == "customary" else " mm"
    return f" {' × '.join(parts)}{unit}" if parts else ""


def _length(metres: float, units: Units, bare: bool = False) -> str:
    figure = length_figure(metres, units)
    return figure if bare or units == "customary" else f"{figure} mm"
