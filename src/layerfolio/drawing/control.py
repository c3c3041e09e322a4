"""Control lines: water, air, vapour along the layers that serve them; the thermal bracket beside the section."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from math import ceil

from layerfolio.drawing.layout_stack import Band, Stack
from layerfolio.drawing.lettering import CAPITAL, middle_text, spread, wide
from layerfolio.drawing.marks import Circle, Curve, Line, Mark, Point, Text

WIDTH, HALO = 0.7, 0.45
DASHES: dict[str, tuple[float, ...]] = {"W": (5.0, 1.2), "A": (), "V": (), "T": (1.4, 1.0)}
NAMES = {"W": "water control", "A": "air control", "V": "vapour control", "T": "thermal control"}
SOFT = ("batt", "loose-fill", "straw")
OFF, OFF_LINE = 1.75, 1.3  # mm from a face; from the edge of a membrane's line
OFF_SHALLOW, OFF_LINE_SHALLOW, SHALLOW = 1.1, 0.85, 5.0  # in cavities so shallow, to leave room for dots
APART = 1.9  # two lines at least
CLOSE, CLOSE_SLOPED = 4.0, 6.0  # nearer lines have their letters in different stations
ENDS, NEXT, STEP = 5.0, 9.0, 1.0  # letters: from each end, from the last letter, of the search
MEMBER, AIR = 3.2, 4.2  # letters stay clear by so much
Stretches = list[tuple[float, float]]


@dataclass(frozen=True, slots=True)
class ControlLine:
    """One line at height `y` of the section; its letters follow each other in turn."""

    y: float
    letters: str
    layer: str


def control_lines(stack: Stack) -> tuple[ControlLine, ...]:
    """All lines from the top down, apart from each other."""
    found = []
    for index, band in enumerate(stack.bands):
        if band.form == "ground":
            continue
        if "water control" in band.layer.serves:
            found.append(ControlLine(_outside(band, stack), "W", band.layer.name))
        letters = "".join(sign for sign in "AV" if NAMES[sign] in band.layer.serves)
        if letters:
            found.append(ControlLine(_inside(index, stack), letters, band.layer.name))
    found.sort(key=lambda one: -one.y)
    apart = spread([one.y for one in found], [APART] * len(found))
    return tuple(replace(one, y=y) for one, y in zip(found, apart, strict=True))


def letters_used(stack: Stack) -> str:
    """The letters that the key must explain, in the order W A V T."""
    used = "".join(one.letters for one in control_lines(stack)) + ("T" if insulated(stack) else "")
    return "".join(one for one in "WAVT" if one in used)


def insulated(stack: Stack) -> tuple[float, float] | None:
    """Top and bottom of the insulating layers, from the first to the last."""
    bands = [one for one in stack.bands if one.layer.insulating and one.form == "body"]
    return (bands[0].top, bands[-1].bottom) if bands else None


def _outside(band: Band, stack: Stack) -> float:
    sign = 1 if stack.outside_up else -1
    return _off(band, _neighbour(stack.bands.index(band), stack, -sign), sign)


def _inside(index: int, stack: Stack) -> float:
    """Off the inner side, but in the middle of a panel that soft insulation or a thin board follows."""
    band, sign = stack.bands[index], 1 if stack.outside_up else -1
    inner = _neighbour(index, stack, sign)
    if not band.line and inner and inner.layer.kind == "solid" and inner.form == "body":
        poor = inner.layer.family in SOFT or inner.depth < 2 * OFF
        if poor and band.depth >= 2.4:
            return band.middle
    return _off(band, inner, -sign)


def _neighbour(index: int, stack: Stack, step: int) -> Band | None:
    return stack.bands[index + step] if 0 <= index + step < len(stack.bands) else None


def _off(band: Band, beside: Band | None, side: int) -> float:
    """A line on the upper (1) or lower (-1) side of a layer, in the layer `beside` it."""
    is_shallow = beside is not None and beside.layer.kind == "cavity" and beside.depth < SHALLOW
    if band.line:
        return band.middle + side * (band.line / 2 + (OFF_LINE_SHALLOW if is_shallow else OFF_LINE))
    return (band.top if side > 0 else band.bottom) + side * (OFF_SHALLOW if is_shallow else OFF)


def stations(
    lines: Iterable[ControlLine],
    length: float,
    blocked: dict[float, tuple[Stretches, Stretches]],
    sloped: bool,
) -> list[tuple[ControlLine, list[tuple[float, str]]]]:
    """Each line with the places of its letters. `blocked[y]` lists the stretches that letters at y keep out of where
    they can (members, centre lines) and those that they always keep out of (leaders, signs)."""
    done: list[tuple[ControlLine, list[tuple[float, str]]]] = []
    for line in lines:
        soft, hard = blocked.get(line.y, ([], []))
        close, half = (CLOSE_SLOPED, NEXT / 2 + 1) if sloped else (CLOSE, NEXT / 2)
        near = [places for one, places in done if abs(one.y - line.y) < close]
        others = [(x - half, x + half) for places in near for x, _ in places]
        places = _letters(line, length, [*soft, *hard, *others], ENDS)
        if len(places) < len(line.letters):
            places = _letters(line, length, [*hard, *others], ENDS / 2)
        done.append((line, places))
    return done


def _letters(line: ControlLine, length: float, shut: Stretches, ends: float) -> list[tuple[float, str]]:
    count = max(len(line.letters), ceil(length / 40))
    count += count % len(line.letters)
    places, last = [], -NEXT
    for number in range(count):
        x = _free((number + 0.5) * length / count, length / count, shut, (max(ends, last + NEXT), length - ends))
        if x is not None:
            places.append((x, line.letters[len(places) % len(line.letters)]))
            last = x
    return places


def _free(start: float, reach: float, shut: Stretches, within: tuple[float, float]) -> float | None:
    """From the middle of a part one step forward, one back, two forward and so on."""
    for step in range(ceil(reach / STEP) + 1):
        for x in (start + step * STEP, start - step * STEP):
            if within[0] <= x <= within[1] and not any(left < x < right for left, right in shut):
                return x
    return None


def line_marks(
    line: ControlLine, places: list[tuple[float, str]], length: float, sloped: bool, members: Stretches
) -> list[Mark]:
    """The line between its letters, on white that stops at `members`, and the white field behind each letter."""
    dash, role = DASHES[line.letters[0]], f"control {' '.join(line.letters)}"
    marks: list[Mark] = []
    start = 0.5
    for x, letter in [*places, (length - 0.5, "")]:
        half = (2.0 if sloped else wide(letter, "bold") / 2 + 1.1) if letter else 0.0
        if x - half - start > 0.3:
            marks += _whites(line.y, start, x - half, members)
            marks.append(Line(((start, line.y), (x - half, line.y)), WIDTH, dash, role=role))
        start = x + half
    fields = [x for x, _ in places]
    if sloped:
        return marks + [Circle((x, line.y), 2.0, fill="white", role="letter field") for x in fields]
    return marks + [_white(x, line.y, wide(letter, "bold") / 2 + 0.6, CAPITAL / 2 + 0.25) for x, letter in places]


def _whites(y: float, start: float, end: float, members: Stretches) -> list[Mark]:
    edges = [start, *(edge for left, right in sorted(members) for edge in (left, right)), end]
    pairs = [(max(start, left), min(end, right)) for left, right in zip(edges[::2], edges[1::2], strict=True)]
    half = WIDTH / 2 + HALO
    return [_white((a + b) / 2, y, (b - a) / 2, half, "control white") for a, b in pairs if b - a > 0.05]


def _white(x: float, y: float, half: float, up: float, role: str = "letter field") -> Curve:
    corners = ((x - half, y - up), (x + half, y - up), (x + half, y + up), (x - half, y + up))
    commands = (("M", *corners[0]), *(("L", *one) for one in corners[1:]), ("Z",))
    return Curve(commands, fill="white", role=role)


def letter(point: Point, sign: str) -> Text:
    """A control letter about its middle, never turned."""
    return middle_text(*point, sign, style="bold", anchor="middle", role=f"control letter {sign}")


def bracket(stack: Stack, x: float) -> tuple[tuple[Mark, ...], Point | None]:
    """The thermal bracket with its feet, and the place of its letter."""
    span = insulated(stack)
    if span is None:
        return (), None
    top, bottom = span
    role, middle = "control T", top - (top - bottom) / 3
    gap = 3.0 if top - bottom >= 12.0 else 0.0
    runs = [((x, top), (x, middle + gap)), ((x, middle - gap), (x, bottom))] if gap else [((x, top), (x, bottom))]
    marks = [Line(run, WIDTH, DASHES["T"], role=role) for run in runs]
    marks += [Line(((x - WIDTH / 2, y), (x + 1.4, y)), WIDTH, role=role) for y in (top, bottom)]
    return tuple(marks), (x, middle if gap else top + 2.6)


