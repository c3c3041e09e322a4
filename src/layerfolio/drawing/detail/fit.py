"""Scale of a detail, and where drawing and tag columns stand across the page."""

from dataclasses import dataclass

from layerfolio.drawing.detail.measure_marks import measure_marks
from layerfolio.drawing.detail.model import Detail, Side
from layerfolio.drawing.detail.note_rows import room_for, size_of
from layerfolio.drawing.detail.on_paper import Box, cut_box, on_paper
from layerfolio.drawing.extent import extent
from layerfolio.drawing.figures import Units
from layerfolio.drawing.layout_tags import NOTE_GAP, RADIUS

SCALES = {"metric": (2.0, 5.0, 10.0, 20.0), "customary": (4.0, 8.0, 12.0, 16.0)}
SMALLER = {"metric": (25.0, 50.0), "customary": (24.0, 48.0)}  # where even the last does not fit
ELBOW, GAP = 3.4, 2.6  # from elbow to circle; from the drawing to the elbow at least
LOOSE = 6.0  # mm that a wide page adds to the gap
EDGE = 2.0  # beside a drawing without tags on that side
FOOT = 25.5  # check bar, scale and key below the drawing, zigzag and white above it
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


def fitted(detail: Detail, units: Units, width: float, room: float, scale: float | None) -> Fit:
    """The largest scale at which drawing, columns and foot find room; `scale` is taken as it is."""
    for one in (scale,) if scale else (*SCALES[units], *SMALLER[units]):
        found, is_held = _at(detail, one, units, width, room)
        if is_held:
            break
    return found


def fits(detail: Detail, scale: float, units: Units, width: float, room: float) -> bool:
    """Whether drawing, tag columns and foot find room at one scale."""
    return _at(detail, scale, units, width, room)[1]


def _at(detail: Detail, scale: float, units: Units, width: float, room: float) -> tuple[Fit, bool]:
    """The page at one scale, and whether it holds everything: notes of two lines, of three where two are too wide."""
    for lines in (2, 3):
        found, spare = _across(detail, scale, units, width, lines)
        is_held = spare >= 0 and _height(detail, found) <= room
        if is_held:
            break
    return found, is_held


def content(detail: Detail, units: Units) -> Box:
    """What stands between the columns: the cut and its dimensions."""
    box, marks = cut_box(detail), measure_marks(detail.measures, units)
    if not marks:
        return box
    other = extent(marks)
    return min(box[0], other[0]), min(box[1], other[1]), max(box[2], other[2]), max(box[3], other[3])


def _across(detail: Detail, scale: float, units: Units, width: float, lines: int) -> tuple[Fit, float]:
    """Everything at one scale with notes of so many lines, and the width that is left over (below zero: that is missing)."""
    x0, y0, x1, y1 = content(on_paper(detail, scale), units)
    rooms = tuple(room_for([one for one in detail.notes if one.side == side], lines) for side in ("left", "right"))
    taken = [one + NOTE_GAP + 2 * RADIUS + ELBOW + GAP if one else EDGE for one in rooms]
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
