"""Control lines as marks: their white, the line between its letters, cross strokes where they are interrupted."""

from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise
from math import hypot

from layerfolio.drawing.control import DASHES, HALO, WIDTH
from layerfolio.drawing.detail.control_legs import Leg
from layerfolio.drawing.detail.control_letters import Placed
from layerfolio.drawing.geometry import Outline, contains
from layerfolio.drawing.lettering import CAPITAL, middle_text, wide
from layerfolio.drawing.marks import Circle, Curve, Line, Mark, Point

CIRCLE = 2.0  # radius of the white round a letter on a sloped line
UPRIGHT = 2.5  # half a gap in an upright line
STROKE, TWO = 3.4, 1.1  # cross strokes at an interruption: long, apart


def whites(legs: Iterable[Leg], members: Sequence[Outline]) -> Iterator[Mark]:
    """White under the lines; none inside small cut members, which it would cut to crumbs."""
    half = WIDTH / 2 + HALO
    for leg in legs:
        for start, end in _outside(leg, members):
            corners = [_beside(leg, u, v) for u, v in ((start, -half), (end, -half), (end, half), (start, half))]
            yield _area(corners, "control white")


def letter_fields(letters: Iterable[Placed]) -> Iterator[Mark]:
    """White behind letters, narrow enough to leave a face beside it whole."""
    for one in letters:
        (x, y), across, up = one.at, wide(one.letter, "bold") / 2 + 0.1, CAPITAL / 2 + 0.35
        if one.leg.way == "sloped":
            yield Circle((x, y), CIRCLE, fill="white", role="letter field")
        else:
            yield _area([(x - across, y - up), (x + across, y - up), (x + across, y + up), (x - across, y + up)], "letter field")


def lines(letters: str, legs: Sequence[Leg], placed: Sequence[Placed]) -> Iterator[Mark]:
    """The line, its dashes fitted so that every corner and every gap begins and ends with a full one."""
    role = f"control {' '.join(letters)}"
    dash = DASHES[letters[0]]
    for leg in legs:
        gaps = [(one.u - _half(one), one.u + _half(one)) for one in placed if one.leg is leg]
        for a, b in _between(gaps, -leg.mitre_a, leg.long + leg.mitre_b):
            if b - a > 0.3:
                yield Line((leg.at(a), leg.at(b)), WIDTH, fitted(dash, b - a), role=role)


def fitted(dash: tuple[float, ...], long: float) -> tuple[float, ...]:
    """The dashes a little longer or shorter, so that a whole number of them with their gaps between fills `long`."""
    if not dash:
        return ()
    on, off = dash
    count = max(1, round((long + off) / (on + off)))
    return ((long - (count - 1) * off) / count, off) if count > 1 else ()


def cross_strokes(gaps: Iterable[Point], runs: Sequence[Sequence[Point]]) -> Iterator[Mark]:
    """Two short strokes across the end of a line that is interrupted."""
    for gap in gaps:
        c, s = _direction_at(gap, runs)
        for step in (-TWO / 2, TWO / 2):
            x, y = gap[0] + step * c, gap[1] + step * s
            half = STROKE / 2
            yield Line(((x + s * half, y - c * half), (x - s * half, y + c * half)), 0.5, halo=0.35, role="interrupted")


def letter_texts(placed: Iterable[Placed]) -> Iterator[Mark]:
    """The letters, never turned."""
    for one in placed:
        yield middle_text(*one.at, one.letter, style="bold", anchor="middle", role=f"control letter {one.letter}")


def _half(one: Placed) -> float:
    return {"level": wide(one.letter, "bold") / 2 + 1.1, "upright": UPRIGHT, "sloped": CIRCLE}[one.leg.way]


def _between(gaps: Iterable[tuple[float, float]], start: float, end: float) -> Iterator[tuple[float, float]]:
    for low, high in sorted(gaps):
        yield start, low
        start = high
    yield start, end


def _outside(leg: Leg, members: Sequence[Outline]) -> Iterator[tuple[float, float]]:
    """The stretches of a leg that lie in no member."""
    stops = {0.0, leg.long}
    for outline in members:
        for at in range(len(outline)):
            (ua, va), (ub, vb) = leg.uv(outline[at - 1]), leg.uv(outline[at])
            if va * vb < 0:
                u = ua + (ub - ua) * va / (va - vb)
                if 0 < u < leg.long:
                    stops.add(u)
    ordered = sorted(stops)
    for a, b in pairwise(ordered):
        middle = leg.at((a + b) / 2)
        if b - a > 0.05 and not any(contains(one, middle) for one in members):
            yield a, b


def _beside(leg: Leg, u: float, v: float) -> Point:
    c, s = leg.along
    x, y = leg.at(u)
    return x - s * v, y + c * v


def _area(corners: Sequence[Point], role: str) -> Curve:
    commands = (("M", *corners[0]), *(("L", *one) for one in corners[1:]), ("Z",))
    return Curve(commands, fill="white", role=role)


def _direction_at(gap: Point, runs: Sequence[Sequence[Point]]) -> Point:
    """Of the run that ends nearest to a gap."""
    ends = [(run[0], run[1]) for run in runs] + [(run[-1], run[-2]) for run in runs]
    if not ends:
        return 1.0, 0.0
    end, beside = min(ends, key=lambda one: hypot(one[0][0] - gap[0], one[0][1] - gap[1]))
    long = hypot(end[0] - beside[0], end[1] - beside[1]) or 1.0
    return (end[0] - beside[0]) / long, (end[1] - beside[1]) / long
