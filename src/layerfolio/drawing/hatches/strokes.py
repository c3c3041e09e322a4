"""Small shapes that hatches are made of, as marks of role "hatch"."""

from collections.abc import Iterable
from itertools import groupby
from math import cos, radians, sin, tan

from layerfolio.drawing.geometry import Segment
from layerfolio.drawing.marks import Circle, Curve, Mark, Point

ROLE = "hatch"
FINE, FLECK, BATT = 0.20, 0.22, 0.25  # line widths; nothing is thinner than 0.20
_QUARTER = 0.5523  # handle of a quarter circle drawn as one Bezier


def strokes(segments: Iterable[Segment], width: float = FINE) -> tuple[Mark, ...]:
    """Straight strokes as one mark, none when there are none."""
    commands = [command for (ax, ay), (bx, by) in segments for command in (("M", ax, ay), ("L", bx, by))]
    return (Curve(tuple(commands), width, role=ROLE),) if commands else ()


def dot(x: float, y: float, radius: float) -> Circle:
    """A filled dot."""
    return Circle((x, y), radius, fill="black", role=ROLE)


def fleck(x: float, y: float, half: float, degrees: float, width: float = FLECK) -> Curve:
    """A straight stroke about its middle."""
    dx, dy = half * cos(radians(degrees)), half * sin(radians(degrees))
    return Curve((("M", x - dx, y - dy), ("L", x + dx, y + dy)), width, role=ROLE)


def polygon(points: list[Point], width: float = FINE, fill: str = "") -> Curve:
    """A closed shape with straight sides."""
    first, *rest = points
    return Curve((("M", *first), *(("L", *one) for one in rest), ("Z",)), width, fill, role=ROLE)


def ellipse(x: float, y: float, a: float, b: float, degrees: float, width: float = FINE) -> Curve:
    """An oval of half-axes `a` along `degrees` and `b` across, in four Beziers."""
    c, s = cos(radians(degrees)), sin(radians(degrees))

    def at(u: float, v: float) -> Point:
        return x + c * u * a - s * v * b, y + s * u * a + c * v * b

    q = _QUARTER
    quarters = (
        (1, q, q, 1, 0, 1),
        (-q, 1, -1, q, -1, 0),
        (-1, -q, -q, -1, 0, -1),
        (q, -1, 1, -q, 1, 0),
    )
    curves = (("C", *at(*one[:2]), *at(*one[2:4]), *at(*one[4:])) for one in quarters)
    return Curve((("M", *at(1, 0)), *curves, ("Z",)), width, role=ROLE)


def blob(points: list[Point], width: float = FINE, fill: str = "") -> Curve:
    """A closed smooth shape through the points."""
    return Curve((("M", *points[0]), *smooth(points, closed=True), ("Z",)), width, fill, role=ROLE)


def smooth(points: list[Point], closed: bool = False) -> list[tuple]:
    """Bezier commands through points (Catmull-Rom): a handle is one sixth of the chord between the two neighbours."""
    around = [points[-1], *points, *points[:2]] if closed else [points[0], *points, points[-1]]
    commands = []
    for one in range(1, len(around) - 2):
        (ax, ay), (bx, by), (cx, cy), (dx, dy) = around[one - 1 : one + 3]
        commands.append(("C", bx + (cx - ax) / 6, by + (cy - ay) / 6, cx - (dx - bx) / 6, cy - (dy - by) / 6, cx, cy))
    return commands


def arc(x: float, y: float, radius: float, start: float, sweep: float, parts: int = 4) -> list[tuple]:
    """Bezier commands of a circle's arc from angle `start` by `sweep` (radians, anticlockwise); no opening move."""
    step = sweep / parts
    handle = 4 / 3 * tan(step / 4) * radius
    commands = []
    for number in range(parts):
        a, b = start + number * step, start + (number + 1) * step
        ax, ay, bx, by = x + radius * cos(a), y + radius * sin(a), x + radius * cos(b), y + radius * sin(b)
        handles = (ax - handle * sin(a), ay + handle * cos(a), bx + handle * sin(b), by - handle * cos(b))
        commands.append(("C", *handles, bx, by))
    return commands


def merged(marks: Iterable[Mark]) -> tuple[Mark, ...]:
    """The same marks with strokes of one width joined into one path and dots in order of radius: short to write."""
    ordered = sorted(marks, key=_kind)
    joined: list[Mark] = []
    for _, group in groupby(ordered, _kind):
        same = list(group)
        if isinstance(same[0], Curve):
            commands = tuple(command for one in same for command in one.commands)
            same = [Curve(commands, same[0].width, same[0].fill, role=ROLE)]
        joined += same
    return tuple(joined)


def _kind(mark: Mark) -> tuple:
    return (1, mark.width, mark.fill) if isinstance(mark, Curve) else (0, mark.radius, mark.fill)

