"""What stands round a detail on its page: dimensions, tags with leaders, words, triangle, bubbles."""

from dataclasses import dataclass
from itertools import pairwise

from layerfolio.drawing.detail import sign_marks, tag_marks
from layerfolio.drawing.detail.clear_spots import Full
from layerfolio.drawing.detail.control_layer import legs_in
from layerfolio.drawing.detail.control_letters import Taken
from layerfolio.drawing.detail.fit import Fit
from layerfolio.drawing.detail.measure_marks import TICK, dodged, measure_marks
from layerfolio.drawing.detail.model import Detail
from layerfolio.drawing.detail.on_paper import corners, cut_box
from layerfolio.drawing.detail.sheet_marks import BAND
from layerfolio.drawing.detail.tag_columns import columns
from layerfolio.drawing.extent import extent
from layerfolio.drawing.figures import Units
from layerfolio.drawing.geometry import bounds, rectangle, text_box
from layerfolio.drawing.lines import Obstacle
from layerfolio.drawing.marks import Circle, Group, Line, Mark, Point, Text


@dataclass(frozen=True, slots=True)
class Around:
    """Groups in the order of painting; `content` are marks that only show how far the cut and the ground reach."""

    groups: tuple[Group, ...]
    content: tuple[Mark, ...]
    arrows: tuple[tuple[Point, Point], ...]

    def marks(self) -> list[Mark]:
        return [mark for group in self.groups for mark in group.marks]

    def moved(self, rise: float) -> Taken:
        """What letters of control lines keep clear of, on the final page."""
        taken = Taken()
        for mark in self.marks():
            match mark:
                case Line() if mark.role.startswith(("leader", "dimension", "extension", "bubble leader")):
                    taken.leaders += [((a[0], a[1] + rise), (b[0], b[1] + rise)) for a, b in pairwise(mark.points)]
                case Text():
                    x0, y0, x1, y1 = bounds(text_box(mark, 0.4))
                    taken.boxes.append((x0, y0 + rise, x1, y1 + rise))
                case Circle():
                    (x, y), r = mark.centre, mark.radius
                    taken.boxes.append((x - r, y - r + rise, x + r, y + r + rise))
        taken.arrows = [((a[0], a[1] + rise), (b[0], b[1] + rise)) for a, b in self.arrows]
        return taken


def around_of(page: Detail, fit: Fit, units: Units, width: float) -> Around:
    """Tags first, then the words that give way to them."""
    measures = measure_marks(page.measures, units)
    arrows = tuple(sign_marks.arrow_line(one) for one in page.arrows)
    found = columns(page, fit, legs_in(page), _obstacles(measures, arrows), _ground_under(page, fit))
    sides = [(leader, side) for side, group in found.items() for _, leader in group]
    lines = [tag_marks.leader_line(*one) for one in sides]
    content = _content(page, width)
    tags = [mark for one in sides for mark in tag_marks.tag_marks(*one)]
    kept = [corners(extent([one])) for one in (*content[1:], *tags)]
    measures = dodged(measures, lines, kept, width)
    leaders: list[Mark] = [*lines, *(dot for leader, _ in sides for dot in tag_marks.leader_dots(leader))]
    full = _full(page, [*measures, *leaders, *tags], content, arrows, width)
    words: list[Mark] = []
    if page.slope:
        words += sign_marks.slope_marks(*page.slope, units, full)
    for one in page.words:
        words += sign_marks.word_marks(one, full)
    bubbles = [mark for one in page.bubbles for mark in sign_marks.bubble_marks(one, full)]
    named = (("dimensions", measures), ("leaders", leaders), ("tags", tags), ("words", words), ("bubbles", bubbles))
    return Around(tuple(Group(name, tuple(marks)) for name, marks in named if marks), content, arrows)


def _obstacles(measures: list[Mark], arrows: tuple[tuple[Point, Point], ...]) -> list[Obstacle]:
    """What no leader crosses: figures, ticks, arrows."""
    found = [Obstacle.of(text_box(one, 0.4)) for one in measures if isinstance(one, Text)]
    for one in measures:
        if isinstance(one, Line) and one.role == "tick":
            found.append(Obstacle.of(corners(_box(one.points, 0.3))))
    found += [Obstacle.of(corners(_box(one, TICK))) for one in arrows]
    return found


def _box(points: tuple[Point, ...], grow: float) -> tuple[float, float, float, float]:
    x0, y0, x1, y1 = bounds(points)
    return x0 - grow, y0 - grow, x1 + grow, y1 + grow


def _ground_under(page: Detail, fit: Fit) -> float | None:
    """Height of a ground line that reaches under the left column of tags."""
    found = [point for one in page.sheets if one.role == "ground" for point in one.points]
    return found[0][1] if found and min(x for x, _ in found) < fit.elbows[0] else None


def _content(page: Detail, width: float) -> tuple[Mark, ...]:
    """How far cut and ground reach, as lines that are measured and not painted."""
    found = [Line(rectangle(*cut_box(page)), 0.0)]
    for one in page.sheets:
        if one.role == "ground":
            x0, y0, x1, y1 = bounds(one.points)
            found.append(Line(rectangle(max(0.5, x0), y0 - BAND - 0.6, min(width - 0.5, x1), y1 + 0.6), 0.0))
    return tuple(found)


def _full(
    page: Detail, marks: list[Mark], content: tuple[Mark, ...], arrows: tuple[tuple[Point, Point], ...], width: float
) -> Full:
    _, low, _, high = extent([*marks, *content])
    full = Full((0.0, low, width, high))
    full.outlines = [Obstacle.of(one.outline) for one in page.pieces]
    full.lines = [*arrows, *(pair for one in page.breaks for pair in ((one.a, one.b),))]
    full.boxes = [extent([one]) for one in content[1:]]
    for one in (*page.sheets, *(mark for mark in marks if isinstance(mark, Line))):
        full.lines += pairwise(one.points)
    leaders = [one for one in marks if isinstance(one, Line) and one.role.startswith("leader")]
    full.leaders = [pair for one in leaders for pair in pairwise(one.points)]
    full.lines += [pair for one in page.traces for run in one.runs for pair in pairwise(run)]
    for one in marks:
        if isinstance(one, Text):
            full.boxes.append(bounds(text_box(one, 0.6)))
        elif isinstance(one, Circle):
            full.boxes.append(extent([one]))
    return full
