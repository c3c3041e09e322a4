"""Scale of a detail, and where drawing and tag columns stand across the page."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

from layerfolio.drawing.detail.measure_marks import measure_marks
from layerfolio.drawing.detail.model import Detail, Note, Side
from layerfolio.drawing.detail.on_paper import Box, cut_box, on_paper
from layerfolio.drawing.extent import extent
from layerfolio.drawing.figures import Units
from layerfolio.drawing.layout_tags import NOTE_GAP, PITCH, RADIUS, Column
from layerfolio.drawing.lettering import LINE, wide, wrapped
from layerfolio.drawing.lines import Obstacle

SCALES = {"metric": (2.0, 5.0, 10.0, 20.0), "customary": (4.0, 8.0, 12.0, 16.0)}
SMALLER = {"metric": (25.0, 50.0), "customary": (24.0, 48.0)}  # where even the last does not fit
NARROW, WIDE = 14.0, 36.0  # of a column of notes
ELBOW, GAP = 3.4, 2.6  # from elbow to circle; from the drawing to the elbow at least
LOOSE = 6.0  # mm that a wide page adds to the gap
TWO_LINES = 10.0  # room of a tag whose note has two lines
FOOT = 22.0  # check bar, scale and key below the drawing
_FIGURE = re.compile(r" (?=[\d(]\S*$)")
BEYOND = 5.0  # mm that columns may reach above and below the drawing


@dataclass(frozen=True, slots=True)
class Fit:
    """A scale, and the page across: widths of the notes, elbows, circles, shift of the drawing, heights of the columns."""

    scale: float
    rooms: tuple[float, float]  # left, right
    elbows: tuple[float, float]
    circles: tuple[float, float]
    shift: float
    low: float
    high: float

    def room(self, side: Side) -> float:
        return self.rooms[side == "right"]

    def column(self, side: Side, obstacles: Sequence[Obstacle]) -> Column:
        """The column as leaders see it; the left one mirrored."""
        at, sign = (1, 1) if side == "right" else (0, -1)
        return Column(sign * self.elbows[at], sign * self.circles[at], tuple(obstacles))


def fitted(detail: Detail, units: Units, width: float, room: float, scale: float | None) -> Fit:
    """The largest scale at which drawing, columns and foot find room; `scale` is taken as it is."""
    for one in (scale,) if scale else (*SCALES[units], *SMALLER[units]):
        found, spare = _across(detail, one, units, width)
        if spare >= 0 and _height(detail, found) <= room:
            break
    return found


def rows_of(note: Note, room: float) -> tuple[str, ...]:
    """The words in one line or in two of like length, in three where two do not hold them."""
    words = bound(note.words)
    if wide(words) <= room:
        return (words,)
    first, other = _halves(words)
    return (first, other) if max(wide(first), wide(other)) <= room else wrapped(words, room, 3)


def size_of(note: Note, room: float) -> float:
    """Height that a tag takes in its column."""
    return {0: PITCH, 1: PITCH, 2: TWO_LINES}.get(len(rows := rows_of(note, room)), len(rows) * LINE + 1.6)


def fits(detail: Detail, scale: float, units: Units, width: float, room: float) -> bool:
    """Whether drawing, tag columns and foot find room at one scale."""
    found, spare = _across(detail, scale, units, width)
    return spare >= 0 and _height(detail, found) <= room


def content(detail: Detail, units: Units) -> Box:
    """What stands between the columns: the cut and its dimensions."""
    box, marks = cut_box(detail), measure_marks(detail.measures, units)
    if not marks:
        return box
    other = extent(marks)
    return min(box[0], other[0]), min(box[1], other[1]), max(box[2], other[2]), max(box[3], other[3])


def _across(detail: Detail, scale: float, units: Units, width: float) -> tuple[Fit, float]:
    """Everything at one scale, and the width that is left over (below zero: that is missing)."""
    x0, y0, x1, y1 = content(on_paper(detail, scale), units)
    rooms = tuple(_note_room([one for one in detail.notes if one.side == side]) for side in ("left", "right"))
    taken = [one and one + NOTE_GAP + 2 * RADIUS + ELBOW + GAP for one in rooms]
    spare = width - (x1 - x0) - sum(taken)
    loose = min(LOOSE, max(0.0, spare) / 4)
    edge = max(0.0, spare - loose * sum(one > 0 for one in rooms)) / 2
    left = edge + taken[0] + (loose if rooms[0] else 0.0)
    right = left + x1 - x0
    circles = left - GAP - loose - ELBOW - RADIUS, right + GAP + loose + ELBOW + RADIUS
    elbows = circles[0] + RADIUS + ELBOW, circles[1] - RADIUS - ELBOW
    return Fit(scale, rooms, elbows, circles, left - x0, y0 - BEYOND, y1 + BEYOND), spare


def _height(detail: Detail, fit: Fit) -> float:
    columns = [_tall(detail, side, fit) for side in ("left", "right")]
    return max(fit.high - fit.low - 2 * BEYOND, *columns) + FOOT


def _tall(detail: Detail, side: Side, fit: Fit) -> float:
    return sum(size_of(one, fit.room(side)) for one in detail.notes if one.side == side)


def _note_room(notes: Sequence[Note]) -> float:
    """The least width that sets every note in two lines; 0 without notes."""
    return max((_least(one.words) for one in notes), default=0.0)


@cache
def _least(words: str) -> float:
    return min(WIDE, max(NARROW, max(map(wide, _halves(bound(words)))) + 0.05))


@cache
def _halves(words: str) -> tuple[str, str]:
    """Two lines of like length."""
    parts = words.split(" ")
    splits = [(" ".join(parts[:at]), " ".join(parts[at:])) for at in range(1, len(parts) + 1)]
    return min(splits, key=lambda one: max(map(wide, one)))


def bound(words: str) -> str:
    """A figure keeps to the word before it."""
    return _FIGURE.sub("\u00a0", words)
