"""The words and the triangle of a sloped section: placed in the empty corners, never turned."""

from math import cos, radians, tan

from layerfolio.drawing.cut import Cut
from layerfolio.drawing.extent import extent
from layerfolio.drawing.frame import Frame
from layerfolio.drawing.lettering import CAPITAL, SIZE, middle_text, wide
from layerfolio.drawing.marks import Line, Mark, Text

SPACED = 0.9 * 72 / 25.4  # points: 0.9 mm
LEFT, RUN, GAP = 8.0, 14.0, 1.4


def outside_words(word: str, frame: Frame, around: list[Mark], room: Cut) -> list[Mark]:
    """The word over the empty upper corner, below it the triangle of the slope."""
    run = RUN if frame.turn <= 45 else RUN / tan(radians(frame.turn))
    rise = run * tan(radians(frame.turn))
    figures = (f"{12 * tan(radians(frame.turn)):.2f}".rstrip("0").rstrip("."), f"({round(frame.turn, 1):g}°)")
    x = LEFT + 4.0
    right = max(x + run + GAP + max(map(wide, figures)), LEFT + wide(word, "bold", SPACED)) + 2.0
    low = _clear_above(frame, around, right, room.above) + CAPITAL + 2.2
    low += 0.35 * max(0.0, frame.place((room.length, 0.0))[1] - low - rise - 8.0)
    corners = ((x, low), (x + run, low), (x + run, low + rise), (x, low))
    level = max(rise / 2, 3.0)
    return [
        Text((LEFT, low + max(rise, 7.0) + 4.5), word, SIZE, "bold", spaced=SPACED, role="side"),
        Line(corners, 0.35, role="slope"),
        Text((x + run / 2, low - 1.2 - CAPITAL), "12", SIZE, anchor="middle", role="slope run"),
        middle_text(x + run + GAP, low + level + 2.1, figures[0], role="slope rise"),
        middle_text(x + run + GAP, low + level - 2.1, figures[1], role="slope angle"),
    ]


def _clear_above(frame: Frame, around: list[Mark], right: float, above: float) -> float:
    """The lowest height at which nothing of the section or its dimensions stands left of `right`."""
    x, y = frame.shift
    a = radians(frame.turn)
    edge = y + max(0.0, right - x) * tan(a) + (5.0 + above) / cos(a)
    beside = [extent([one]) for one in around]
    return max([edge, *(top + 1.5 for left, _, _, top in beside if left < right)])


def word_below(word: str, frame: Frame, room: Cut, lower: list[Mark]) -> Mark:
    """Under the lower face and its dimensions (`lower`, in the section's directions), towards the right end."""
    a = radians(frame.turn)
    corner = frame.place((room.length, -room.stack.depth))
    long = wide(word, "bold", SPACED)
    x = corner[0] - long - 4.0
    reach = -extent(lower)[1] - room.stack.depth + 1.5 if lower else 0.0
    off = max(5.0, room.below + 2.4, reach) / cos(a)
    y = corner[1] - (long + 4.0) * tan(a) - off - CAPITAL
    return Text((x, y), word, SIZE, "bold", spaced=SPACED, role="side")
