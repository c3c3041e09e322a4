"""Plane geometry in paper millimetres, y upward, angles in degrees anticlockwise."""

from dataclasses import replace
from math import ceil, cos, floor, radians, sin

from layerfolio.drawing import font
from layerfolio.drawing.marks import Area, Circle, Clip, Curve, Group, Line, Mark, Point, Stipple, Text

Outline = tuple[Point, ...]
Segment = tuple[Point, Point]


def turned(point: Point, degrees: float, about: Point = (0.0, 0.0)) -> Point:
    """`point` turned anticlockwise about another."""
    c, s = direction(degrees)
    x, y = point[0] - about[0], point[1] - about[1]
    return about[0] + c * x - s * y, about[1] + s * x + c * y


def rectangle(x0: float, y0: float, x1: float, y1: float) -> Outline:
    """The four corners, anticlockwise from the lower left."""
    return (x0, y0), (x1, y0), (x1, y1), (x0, y1)


def bounds(points: tuple[Point, ...] | list[Point]) -> tuple[float, float, float, float]:
    """Least x, least y, greatest x, greatest y."""
    xs, ys = [one[0] for one in points], [one[1] for one in points]
    return min(xs), min(ys), max(xs), max(ys)


def text_box(text: Text, grow: float = 0.0) -> tuple[Point, Point, Point, Point]:
    """The four corners of the room a text takes, turned with it: deepest letter to tallest, grown by `grow` mm."""
    wide = font.width(text.text, text.size, text.style, text.spaced)
    left = {"start": 0.0, "middle": -wide / 2, "end": -wide}[text.anchor]
    unit = text.size * font.MM_PER_PT
    box = rectangle(left - grow, -font.DESCENT * unit - grow, left + wide + grow, font.ASCENT * unit + grow)
    x, y = text.at
    return tuple(turned((x + dx, y + dy), text.turn, text.at) for dx, dy in box)


def boxes_touch(one: Outline, other: Outline) -> bool:
    """Whether two convex outlines overlap (separating axis; touching edges do not count)."""
    for (ax, ay), (bx, by) in (*_edges(one), *_edges(other)):
        nx, ny = by - ay, ax - bx
        first = [nx * x + ny * y for x, y in one]
        second = [nx * x + ny * y for x, y in other]
        if max(first) <= min(second) + 1e-9 or max(second) <= min(first) + 1e-9:
            return False
    return True


def contains(outline: Outline, point: Point) -> bool:
    """Whether a point lies inside a simple polygon (even-odd rule)."""
    x, y = point
    inside = False
    for (ax, ay), (bx, by) in _edges(outline):
        if (ay > y) != (by > y) and x < ax + (y - ay) * (bx - ax) / (by - ay):
            inside = not inside
    return inside


def parallels(outline: Outline, degrees: float, pitch: float, offset: float = 0.0) -> list[Segment]:
    """Lines of one direction every `pitch`, cut to the outline; their phase comes from the origin, moved by `offset`.

    So lines of two areas that touch run through from one to the other.
    """
    c, s = direction(degrees)
    frame = [(c * x + s * y, c * y - s * x) for x, y in outline]
    edges = _edges(frame)
    across = [v for _, v in frame]
    found = []
    for number in range(ceil((min(across) - offset) / pitch), floor((max(across) - offset) / pitch) + 1):
        v = offset + number * pitch
        cuts = sorted(au + (v - av) * (bu - au) / (bv - av) for (au, av), (bu, bv) in edges if (av > v) != (bv > v))
        for start, end in zip(cuts[::2], cuts[1::2], strict=True):
            if end - start > 0.05:  # a speck in a corner is no line
                found.append(((c * start - s * v, s * start + c * v), (c * end - s * v, s * end + c * v)))
    return found


def moved(mark: Mark, degrees: float = 0.0, by: Point = (0.0, 0.0)) -> Mark:
    """A mark turned about the origin, then shifted."""
    c, s = direction(degrees)
    dx, dy = by

    def place(point: Point) -> Point:
        return c * point[0] - s * point[1] + dx, s * point[0] + c * point[1] + dy

    match mark:
        case Line(points, width, dash, halo, round_ends, role):
            return Line(tuple(map(place, points)), width, dash, halo, round_ends, role)
        case Curve(commands, width, fill, halo, role):
            return Curve(tuple([_placed(one, place) for one in commands]), width, fill, halo, role)
        case Circle(centre, radius, width, fill, role):
            return Circle(place(centre), radius, width, fill, role)
        case Area(outline, layer, family):
            return Area(tuple(map(place, outline)), layer, family)
        case Text():
            return replace(mark, at=place(mark.at), turn=mark.turn + degrees)
        case Stipple():
            outline = tuple(map(place, mark.outline))
            return replace(mark, outline=outline, shift=place(mark.shift), turn=mark.turn + degrees)
        case Clip():
            inner = tuple(moved(one, degrees, by) for one in mark.marks)
            return Clip(tuple(map(place, mark.outline)), inner)
        case Group():
            return Group(mark.name, tuple(moved(one, degrees, by) for one in mark.marks))
    raise TypeError(f"not a mark: {mark!r}")


def _placed(command: tuple, place) -> tuple:
    flat = command[1:]
    points = [place((flat[one], flat[one + 1])) for one in range(0, len(flat), 2)]
    return (command[0], *(value for point in points for value in point))


def _edges(outline: Outline | list[Point]) -> list[Segment]:
    return [(outline[one - 1], outline[one]) for one in range(len(outline))]


def direction(degrees: float) -> Point:
    """Cosine and sine, exact at right angles, so that upright layers keep upright faces."""
    exact = {0: (1.0, 0.0), 90: (0.0, 1.0), 180: (-1.0, 0.0), 270: (0.0, -1.0)}.get(degrees % 360)
    return exact or (cos(radians(degrees)), sin(radians(degrees)))
