"""Where things stand at the ridge, in building millimetres: both slopes meet plumb at x = 0."""

from dataclasses import dataclass
from functools import cached_property
from math import cos, radians, tan

from layerfolio.assembly.courses import Course
from layerfolio.assembly.junction_types import Junction
from layerfolio.assembly.types import Assembly
from layerfolio.drawing.detail.arm import Arm, End
from layerfolio.drawing.detail.edge_place import STEEPEST
from layerfolio.drawing.detail.traces import served
from layerfolio.drawing.marks import Point

ASIDE = 36.0  # paper mm from the middle to each break
GAP = 30.0  # mm that the boards of the rain screen stay off the middle, so that the cavity ends open
BOARD = 19.0  # half of the ridge board
CAP, RISE = 140.0, 28.0  # mm: half of the cap's width, its height over the covering


@dataclass(frozen=True)
class RidgePlace:
    junction: Junction
    over: Assembly
    scale: float
    right_at: float | None = None

    @property
    def slope(self) -> float:
        return min(self.over.slope, STEEPEST)

    @property
    def right(self) -> float:
        return ASIDE * self.scale if self.right_at is None else self.right_at

    @property
    def off(self) -> float:
        return 1.75 * self.scale

    @cached_property
    def arm(self) -> Arm:
        """The slope that falls to the right."""
        return Arm(self.over, (0.0, 0.0), -self.slope, False, "along")

    def height(self, d: float, x: float) -> float:
        """y of depth `d` over x >= 0."""
        a = radians(self.slope)
        return -d / cos(a) - x * tan(a)

    def plumb(self, x: float) -> End:
        a = radians(self.slope)
        return End(x / cos(a), tan(a))

    @property
    def vented(self) -> Course | None:
        found = [one for one in self.arm.zone("rain") if one.layer.cavity == "ventilated"]
        return found[-1] if found else None

    def served(self, letter: str) -> Course | None:
        return served(self.arm, letter)

    @property
    def has_board(self) -> bool:
        return any(one.layer.member for one in self.arm.zone("frame"))

    @property
    def cover(self) -> float:
        """Depth of the covering's upper face."""
        return self.arm.courses[0].start

    def over_ridge(self, d: float, x0: float = 0.0) -> tuple[Point, ...]:
        """A line at one depth from break to break; with `x0` its two halves stop so far from the middle."""
        right = [(self.right, self.height(d, self.right)), (x0, self.height(d, x0))]
        return (*((-x, y) for x, y in right), *(right[::-1] if x0 else right[:1]))
