"""Where things stand where a wall meets the edge of a roof, in building millimetres.

The outer face of the wall's frame is x = 0, the top of its plates y = 0. An eave is cut along the slope of the roof, a verge
square to it, so that the roof lies level there and its rafters are cut.
"""

from dataclasses import dataclass
from functools import cached_property
from math import cos, radians, sin, tan

from layerfolio.assembly.courses import Course, courses
from layerfolio.assembly.junction_types import Junction
from layerfolio.assembly.types import Assembly
from layerfolio.drawing.detail.arm import Arm, End, crosses
from layerfolio.drawing.detail.on_wall import OnWall
from layerfolio.drawing.marks import Point

DOWN, ASIDE, LEVEL = 46.0, 14.0, 27.0  # paper mm of wall below the plates, of roof inside the lining
FASCIA, LOOKOUT = 20.0, 89.0
STEEPEST = 60.0


@dataclass(frozen=True)
class EdgePlace(OnWall):
    """`wall` and `over`: the wall and the roof or ceiling on it."""

    junction: Junction
    wall: Arm
    over: Assembly
    scale: float
    verge: bool
    bottom_at: float | None = None  # y down to which the wall is drawn, x up to which the roof is: as the page asks, else
    right_at: float | None = None

    @property
    def slope(self) -> float:
        """Degrees, as this section shows them."""
        return 0.0 if self.verge or self.over.kind == "ceiling" else min(self.over.slope, STEEPEST)

    @property
    def is_ceiling(self) -> bool:
        """Insulation below a roof that stands in another assembly or in no assembly."""
        return self.over.kind == "ceiling"

    @cached_property
    def roof(self) -> Arm:
        """Its frame's underside passes the seat of the rafter on the plates."""
        a = radians(self.slope)
        deep = self.carries.end
        return Arm(self.over, (self.seat - sin(a) * deep, cos(a) * deep), self.slope, False, "level" if self.verge else "along")

    @cached_property
    def carries(self) -> Course:
        """The course that bears on the plates."""
        return [one for one in courses(self.over) if one.zone == "frame"][-1]

    @cached_property
    def seat(self) -> float:
        """x at which the underside meets the plates: the notch takes no more than a third of the rafter's depth."""
        a = radians(self.slope)
        return self.frame_end if a < 0.01 else min(self.frame_end, self.carries.depth / 3 / sin(a))

    @cached_property
    def plate(self) -> float:
        members = [one.layer.member for one in self.wall.zone("frame") if one.layer.member and one.layer.member.width]
        return min(50.0, members[0].width.value * 1000) if members else 0.0

    @property
    def plates(self) -> float:
        """Depth of both plates together."""
        return 2 * self.plate

    @property
    def tail(self) -> float:
        """x of the roof's edge; a ceiling ends at the frame of the wall."""
        return 0.0 if self.is_ceiling else self.outer - (self.junction.overhang or 0.0) * 1000

    @property
    def right(self) -> float:
        aside = ASIDE if self.slope >= 2 else LEVEL  # a level ceiling leaves no room for words beside it
        return self.inner + aside * self.scale if self.right_at is None else self.right_at

    @property
    def bottom(self) -> float:
        if self.bottom_at is not None:
            return self.bottom_at
        lining = min((self.height(one.end, self.inner) for one in self.roof.courses[-1:]), default=0.0)
        return min(-self.plates - 8 * self.scale, lining - 10 * self.scale, -DOWN * self.scale)

    def height(self, d: float, x: float) -> float:
        """y of the roof's depth `d` over `x`."""
        px, py = self.roof.place(0.0, d)
        return py + (x - px) * tan(radians(self.slope))

    def point(self, d: float, x: float) -> Point:
        return x, self.height(d, x)

    def plumb(self, x: float) -> End:
        """The end of a roof course cut plumb at `x`."""
        a = radians(self.slope)
        return End((x - self.roof.origin[0]) / cos(a), -tan(a))

    def under(self, d: float) -> End:
        """The end of a wall course that stops under the roof's depth `d`: it grows with x as the roof rises."""
        return End(self.height(d, 0.0), tan(radians(self.slope)))


    @cached_property
    def outer_edge(self) -> float:
        """x at which the roof's outer layers begin: a verge's board covers their ends."""
        return self.tail + (FASCIA if self.has_lookouts else 0.0)

    @cached_property
    def has_lookouts(self) -> bool:
        """Whether a verge is carried by lookouts over the gable's plates: it has an overhang, and rafters deep enough."""
        one = self.carries
        cut = crosses(one.layer, "level") and one.depth > LOOKOUT + 60.0 and one.layer.member.width.value * 1000 < self.frame_end
        return self.verge and cut and self.outer - self.tail >= FASCIA + 5.0 and len(self.roof.zone("frame")) == 1

    @cached_property
    def inner_starts(self) -> tuple[tuple[Course, float], ...]:
        """The roof's inner courses with the x where each begins: its twin in the wall, counted from the frame and the room."""
        walls = [one for one in self.wall.zone("inner") if one.depth]
        roofs = [one for one in self.roof.zone("inner") if one.depth]
        found = []
        for number, one in enumerate(roofs):
            found.append((one, walls[self._twin(number, len(roofs), len(walls))].start if walls else self.frame_end))
        return tuple(found)

    @staticmethod
    def _twin(number: int, roofs: int, walls: int) -> int:
        if roofs == walls:
            return number
        return walls - 1 if number == roofs - 1 else min(number, max(0, walls - 2))

    def wall_top(self, course: Course) -> float:
        """Depth of the roof under which an inner course of the wall stops."""
        over = [one.end for one, start in self.inner_starts if start <= course.start + 0.01]
        return max(over, default=self.carries.end)

    @cached_property
    def top(self) -> float:
        return max(self.height(self.roof.courses[0].start, self.right), self.height(self.roof.courses[0].start, 0.0))

    @property
    def under_outer(self) -> float:
        """Depth of the underside of the roof's outer boards: the wall's outer layers run up to it."""
        if self.is_ceiling:
            return self.roof.courses[0].start
        return LOOKOUT if self.has_lookouts else 0.0
