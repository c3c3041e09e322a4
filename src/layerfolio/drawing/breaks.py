"""Break lines: where a section goes on, where a layer is cut short, where soft insulation is torn away."""

from layerfolio.drawing.geometry import Outline
from layerfolio.drawing.layout_framing import DRIFT
from layerfolio.drawing.marks import Curve, Line, Mark, Point
from layerfolio.drawing.seeds import generator

REACH = 4.0  # beyond the outer faces
SWING, HEIGHT = 2.2, 4.8  # of a zigzag, to each side and along the line
GAP = 3.0  # between the two lines of a layer cut short


def zigzag(x: float, top: float, bottom: float) -> tuple[Point, ...]:
    """From `top` down to `bottom`, one zigzag at half height."""
    middle, half = (top + bottom) / 2, min(HEIGHT, 0.6 * (top - bottom)) / 2
    turns = ((0.0, half), (-SWING, half / 3), (SWING, -half / 3), (0.0, -half))
    return (x, top), *((x + dx, middle + dy) for dx, dy in turns), (x, bottom)


def clip_outline(length: float, depth: float, beyond: float = 2.5) -> Outline:
    """What shows between the two break lines, a little more than the section's depth."""
    left, right = (zigzag(x, beyond, -depth - beyond) for x in (0.0, length))
    return (*left, *right[::-1])


def break_lines(length: float, depth: float) -> tuple[Mark, ...]:
    """The two lines at the ends of a section."""
    return tuple(Line(_level(x, depth), 0.25, role="break") for x in (0.0, length))


def _level(x: float, depth: float) -> tuple[Point, ...]:
    inner = zigzag(x, 2.5, -depth - 2.5)
    return (x, REACH), *inner[1:-1], (x, -depth - REACH)


def cut_short(length: float, middle: float) -> tuple[Mark, ...]:
    """Two lines along a layer with white between them: something of its depth is left out here."""
    x, half = 0.4 * length, HEIGHT / 2
    turns = ((0.0, 0.0), (x - half, 0.0), (x - half / 3, SWING), (x + half / 3, -SWING), (x + half, 0.0), (length, 0.0))
    upper, lower = (tuple((u, middle + v + dy) for u, v in turns) for dy in (GAP / 2, -GAP / 2))
    ends = (upper[0][0] - SWING, upper[-1][0] + SWING)
    ring = ((ends[0], upper[0][1]), *upper, (ends[1], upper[0][1]), (ends[1], lower[0][1]), *lower[::-1])
    ring = (*ring, (ends[0], lower[0][1]))
    white = Curve((("M", *ring[0]), *(("L", *one) for one in ring[1:]), ("Z",)), 0.0, "white", role="break")
    return (white, *(Line(one, 0.25, role="break") for one in (upper, lower)))


def torn_edge(x: float, top: float, bottom: float, seed: str) -> tuple[Point, ...]:
    """A hand-drawn edge from top to bottom, drifting a little."""
    rng = generator("torn", seed)
    deep = top - bottom
    count = max(3, round(deep / 3.6))
    sway = min(0.55, 0.08 * deep)
    points = []
    for number in range(count + 1):
        share = number / count
        inner = 0 < number < count
        points.append((x + DRIFT * deep * share + inner * rng.uniform(-sway, sway), top - share * deep))
    return tuple(points)
