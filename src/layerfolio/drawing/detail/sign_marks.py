"""Signs of a detail: moving air, words for the sides, the triangle of a slope, bubbles that lead to other sheets."""

from math import cos, radians, sin, tan

from layerfolio.drawing.air import arrow, towards
from layerfolio.drawing.detail.clear_spots import Full, clear_spot
from layerfolio.drawing.detail.model import Arrow, Bubble, Word
from layerfolio.drawing.figures import Units
from layerfolio.drawing.geometry import moved
from layerfolio.drawing.lettering import CAPITAL, SIZE, middle_text, wide
from layerfolio.drawing.marks import Circle, Line, Mark, Point, Text

SPACED = 0.9 * 72 / 25.4  # points: 0.9 mm
WORD_CLEAR = (3.0, 2.4)  # white round a word for a side
RUN, TALL = 12.0, 14.0  # of the triangle: its run, and its greatest rise
RADIUS = 4.8  # of a bubble
ARROW = 9.0


def arrow_marks(one: Arrow) -> tuple[Mark, ...]:
    if one.towards_viewer:
        return towards(*one.at)
    return tuple(moved(mark, one.turn, one.at) for mark in arrow(0.0, 0.0))


def arrow_line(one: Arrow) -> tuple[Point, Point]:
    """What an arrow takes, tail and tip."""
    if one.towards_viewer:
        return one.at, one.at
    dx, dy = ARROW / 2 * cos(radians(one.turn)), ARROW / 2 * sin(radians(one.turn))
    return (one.at[0] - dx, one.at[1] - dy), (one.at[0] + dx, one.at[1] + dy)


def word_marks(word: Word, full: Full) -> list[Mark]:
    """A word for a side at its place, or at the nearest free one."""
    half = wide(word.text, "bold", SPACED) / 2
    room = (half + WORD_CLEAR[0], CAPITAL / 2 + WORD_CLEAR[1])
    x, y = _taken(clear_spot(word.at, room, full, full.is_one_side), room, full)
    return [Text((x, y - CAPITAL / 2), word.text, SIZE, "bold", "middle", spaced=SPACED, role="side")]


def slope_marks(at: Point, degrees: float, units: Units, full: Full) -> list[Mark]:
    """A right triangle with the angle, in customary units with run and rise too."""
    if degrees < 0.5 or degrees > 89:
        return []
    run = min(RUN, TALL / tan(radians(degrees)))
    rise = run * tan(radians(degrees))
    angle = f"{round(degrees, 1):g}°"
    figures = (angle,) if units == "metric" else (f"{12 * tan(radians(degrees)):.2f}".rstrip("0").rstrip("."), f"({angle})")
    below = 0.0 if units == "metric" else 1.2 + CAPITAL
    long = run + 1.6 + max(map(wide, figures))
    room = (long / 2 + 2.0, (max(rise, 4.2 * len(figures)) + below) / 2 + 1.6)
    x, y = _taken(clear_spot(at, room, full), room, full)
    left, low = x - long / 2, y - (rise - below) / 2
    marks: list[Mark] = [Line(((left, low), (left + run, low), (left + run, low + rise), (left, low)), 0.35, role="slope")]
    if below:
        marks.append(Text((left + run / 2, low - below), "12", SIZE, anchor="middle", role="slope run"))
    for number, text in enumerate(figures):
        height = low + rise / 2 + ((len(figures) - 1) / 2 - number) * 4.2
        marks.append(middle_text(left + run + 1.6, height, text, role="slope figure"))
    return marks


def bubble_marks(one: Bubble, full: Full) -> list[Mark]:
    """Number over sheet in a circle, a leader to what it points at."""
    x, y = _taken(clear_spot(one.at, (RADIUS + 1, RADIUS + 1), full, full.is_open), (RADIUS, RADIUS), full)
    long = ((one.at[0] - x) ** 2 + (one.at[1] - y) ** 2) ** 0.5
    marks: list[Mark] = []
    if long > RADIUS + 0.5:
        share = RADIUS / long
        edge = x + share * (one.at[0] - x), y + share * (one.at[1] - y)
        marks.append(Line((one.at, edge), 0.25, halo=0.35, role="bubble leader"))
        full.leaders.append((one.at, edge))
        full.lines.append((one.at, edge))
    marks += [
        Circle((x, y), RADIUS, 0.35, "white", role="bubble"),
        Line(((x - RADIUS, y), (x + RADIUS, y)), 0.25, role="bubble"),
        middle_text(x, y + 2.1, one.number, style="bold", anchor="middle", role="bubble number"),
        middle_text(x, y - 2.1, one.sheet, anchor="middle", role="bubble sheet"),
    ]
    return marks


def _taken(at: Point, half: tuple[float, float], full: Full) -> Point:
    full.boxes.append((at[0] - half[0], at[1] - half[1], at[0] + half[0], at[1] + half[1]))
    return at
