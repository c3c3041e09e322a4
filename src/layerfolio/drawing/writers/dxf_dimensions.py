"""Dimension lines of a drawing found again as what they measure, so that a drawing file holds real dimensions."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import cos, dist, hypot, radians, sin

from layerfolio.drawing import font
from layerfolio.drawing.lines import distance
from layerfolio.drawing.marks import Line, Mark, Point, Text

FIGURES = ("thickness", "overall", "spacing", "chain", "height", "dimension figure")
ON, NEAR = 0.02, 14.0  # mm on paper: a tick lies on its line; a figure belongs to a line no farther away


@dataclass(frozen=True, slots=True)
class Measured:
    """One dimension: where it measures, and its figure."""

    start: Point
    end: Point
    text: Text


def measured(marks: Sequence[Mark]) -> tuple[list[Measured], list[Mark]]:
    """The dimensions, and the marks that are left: lines of which an interval has no figure stay lines, with their ticks."""
    ticks = [one for one in marks if isinstance(one, Line) and one.role == "tick"]
    lines = [one for one in marks if isinstance(one, Line) and one.role == "dimension" and len(one.points) == 2]
    texts = [one for one in marks if isinstance(one, Text) and one.role in FIGURES]
    found, used = [], set()
    for line in lines:
        on = [one for one in ticks if distance(middle(one), *line.points) < ON]
        if len(on) < 2:
            continue
        places = sorted((middle(one) for one in on), key=lambda one: dist(one, line.points[0]))
        figures = _figures(line, places, [one for one in texts if id(one) not in used])
        if None in figures:
            continue
        used |= {id(one) for one in (line, *on, *figures)}
        found += [Measured(a, b, text) for (a, b), text in zip(pairwise(places), figures, strict=True)]
    ends = [end for one in found for end in (one.start, one.end)]
    left = [one for one in marks if id(one) not in used and not _extends(one, ends)]
    return found, left


def _extends(mark: Mark, ends: Sequence[Point]) -> bool:
    """Whether a mark is the extension line of a dimension that draws its own."""
    return isinstance(mark, Line) and mark.role == "extension" and any(distance(one, *mark.points[:2]) < ON for one in ends)


def middle(line: Line) -> Point:
    """Of a tick."""
    (ax, ay), (bx, by) = line.points[0], line.points[-1]
    return (ax + bx) / 2, (ay + by) / 2


def centre(text: Text) -> Point:
    """The middle of a text's capitals."""
    wide, high = font.width(text.text, text.size, text.style, text.spaced), font.cap_height(text.size)
    dx = {"start": wide / 2, "middle": 0.0, "end": -wide / 2}[text.anchor]
    c, s = cos(radians(text.turn)), sin(radians(text.turn))
    return text.at[0] + c * dx - s * high / 2, text.at[1] + s * dx + c * high / 2


def _figures(line: Line, places: Sequence[Point], texts: Sequence[Text]) -> list[Text | None]:
    """For each interval its figure: in order where there are as many as intervals, else the one that stands over it."""
    (ax, ay), (bx, by) = line.points
    long = hypot(bx - ax, by - ay)
    ux, uy = (bx - ax) / long, (by - ay) / long

    def along(point: Point) -> float:
        return (point[0] - ax) * ux + (point[1] - ay) * uy

    near = [one for one in texts if abs((centre(one)[0] - ax) * uy - (centre(one)[1] - ay) * ux) < NEAR]
    near = [one for one in near if -8.0 < along(centre(one)) < long + 30.0]
    pairs = list(pairwise(places))
    if len(near) == len(pairs):
        return sorted(near, key=lambda one: along(centre(one)))
    found: list[Text | None] = []
    for a, b in pairs:
        over = [one for one in near if along(a) < along(centre(one)) < along(b) and one not in found]
        found.append(min(over, key=lambda one: distance(centre(one), a, b)) if over else None)
    return found
