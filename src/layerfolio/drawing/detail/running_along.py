"""Heavy lines and control lines that no leader runs along: its white would wipe them out."""

from collections.abc import Iterable
from dataclasses import dataclass
from math import radians, tan

from layerfolio.drawing.detail.control_legs import Leg
from layerfolio.drawing.marks import Point

LONGEST = 2.5  # mm that a leader may run along a line
STEEP = tan(radians(25.0))  # what crosses so steeply may do so
WORST = 4.5
WHITE = 0.475  # half the width of a leader with its white


@dataclass(frozen=True, slots=True)
class Along:
    """Straight lines with half their widths; asked like `layout_strips.Strips`."""

    lines: tuple[tuple[Leg, float], ...]

    def excess(self, a: Point, b: Point) -> float:
        """What a leader runs longer along lines than it may, mm; never as bad as crossing a figure."""
        return min(WORST, sum(max(0.0, _run(leg, half + WHITE, a, b) - LONGEST) for leg, half in self.lines))

    def mirrored(self) -> "Along":
        return Along(tuple((Leg((-leg.a[0], leg.a[1]), (-leg.b[0], leg.b[1])), half) for leg, half in self.lines))


def along_of(legs: Iterable[Leg], half: float) -> tuple[tuple[Leg, float], ...]:
    return tuple((leg, half) for leg in legs if leg.long > LONGEST)


def _run(leg: Leg, reach: float, a: Point, b: Point) -> float:
    """Length along a leg in which a leader lies within `reach` of it."""
    (ua, va), (ub, vb) = leg.uv(a), leg.uv(b)
    if min(va, vb) > reach or max(va, vb) < -reach or max(ua, ub) < 0 or min(ua, ub) > leg.long:
        return 0.0
    if abs(vb - va) >= STEEP * abs(ub - ua):
        return 0.0
    shares = [0.0, 1.0]
    if abs(vb - va) > 1e-9:
        shares = sorted(min(1.0, max(0.0, (edge - va) / (vb - va))) for edge in (-reach, reach))
    low, high = sorted(ua + share * (ub - ua) for share in shares)
    return max(0.0, min(high, leg.long) - max(low, 0.0))
