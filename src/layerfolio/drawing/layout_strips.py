"""Lines and thin layers along the section: a leader's white would wipe them out if it ran along them."""

from collections.abc import Iterable
from dataclasses import dataclass
from math import radians, tan

from layerfolio.drawing.control import WIDTH, ControlLine
from layerfolio.drawing.frame import Frame
from layerfolio.drawing.layout_stack import Stack
from layerfolio.drawing.marks import Point

THIN = 3.0  # mm on paper: thinner layers are wiped out by a leader that runs along them
LONGEST = 2.5  # mm that a leader may run along
STEEP, STEEP_LAYER = tan(radians(30.0)), tan(radians(20.0))  # what crosses lines, or layers, so steeply may do so
WHITE = 0.475  # half the width of a leader with its white


@dataclass(frozen=True, slots=True)
class Strips:
    """Lower and upper edge of each strip, and how steeply it may be crossed, in the directions of a section `length` mm
    long placed by `frame`."""

    frame: Frame
    length: float
    edges: tuple[tuple[float, float, float], ...]

    def runs(self, a: Point, b: Point) -> list[float]:
        """How far a straight leader runs along each strip that it meets at a small angle, mm."""
        (ax, ay), (bx, by) = self.frame.local(a), self.frame.local(b)
        if ax >= self.length:
            return []
        steepness = abs(by - ay) / max(abs(bx - ax), 1e-9) + 1e-9
        if bx > self.length:
            by = ay + (by - ay) * (self.length - ax) / (bx - ax)
            bx = self.length
        return [_run(ax, ay, bx, by, low, high) for low, high, steep in self.edges if steepness < steep]

    def excess(self, a: Point, b: Point) -> float:
        """What the runs are longer than they may be, summed."""
        return sum(max(0.0, one - LONGEST) for one in self.runs(a, b))


def strips_of(stack: Stack, controls: Iterable[ControlLine], frame: Frame, length: float) -> Strips:
    """Heavy lines and control lines, grown by a leader's white, and thin layers."""
    lines = [(one.middle, one.line / 2) for one in stack.bands if one.line]
    lines += [(one.y, WIDTH / 2) for one in controls]
    edges = [(y - half - WHITE, y + half + WHITE, STEEP) for y, half in lines]
    thin = [(one.bottom, one.top, STEEP_LAYER) for one in stack.bands if one.form == "body" and one.depth < THIN]
    return Strips(frame, length, (*edges, *thin))


def _run(ax: float, ay: float, bx: float, by: float, low: float, high: float) -> float:
    """Length of x in which a segment lies between two heights."""
    if max(ay, by) <= low or min(ay, by) >= high:
        return 0.0
    if abs(by - ay) < 1e-9:
        return abs(bx - ax)
    return abs((min(max(ay, by), high) - max(min(ay, by), low)) / (by - ay) * (bx - ax))
