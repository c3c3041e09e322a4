"""Where things stand at one edge of a window, in building millimetres.

`s` runs from the edge of the rough opening into the wall, `d` inward from the outer face of the wall's frame: head, sill and
jamb are the same in these directions, and the arm turns them upright, over or level.
"""

from dataclasses import dataclass
from functools import cached_property

from layerfolio.assembly.courses import Course
from layerfolio.assembly.junction_types import Junction
from layerfolio.drawing.detail.arm import Arm
from layerfolio.drawing.detail.on_wall import OnWall
from layerfolio.drawing.detail.traces import served
from layerfolio.drawing.marks import Point

JOINT = 12.0  # mm between window and rough opening, filled
INTO, OUT = 44.0, 22.0  # paper mm of the wall, of the window beyond its frame
LINTEL, DOUBLED = 140.0, 2  # header as drawn; studs at the jamb
FALL = 0.09  # of one: five degrees outward
FLASHING = 22.0  # mm between the edge of the opening and what sheds water


@dataclass(frozen=True)
class RevealPlace(OnWall):
    """`edge`: head, sill or jamb."""

    junction: Junction
    wall: Arm
    edge: str
    scale: float
    far_at: float | None = None  # how far into the wall it is drawn, where the page does not decide
    beyond_at: float | None = None  # and into the opening, below zero

    @property
    def far(self) -> float:
        """Into the wall, where it is broken off."""
        return max(INTO * self.scale, self.closing + 16 * self.scale) if self.far_at is None else self.far_at

    @property
    def beyond(self) -> float:
        """Into the opening, where the pane is broken off (below zero)."""
        return -(JOINT + self.width + OUT * self.scale) if self.beyond_at is None else self.beyond_at

    @property
    def width(self) -> float:
        """Face of the window's frame, mm."""
        return self.junction.frame_width * 1000

    @property
    def depth(self) -> float:
        return self.junction.frame_depth * 1000

    @cached_property
    def window(self) -> tuple[float, float]:
        """Depths of the window frame's outer and inner face."""
        if self.junction.frame_set == "at the outside":
            start = self.cover
        elif self.junction.frame_set == "in the framing":
            start = min(30.0, max(0.0, self.frame_end - self.depth))
        else:  # astride the outer face of the frame, in the plane of the insulation
            start = max(self.cover, -self.depth / 2) if self.cover < -20.0 else 10.0
        return start, start + self.depth

    @cached_property
    def member(self) -> float:
        found = [one.layer.member for one in self.wall.zone("frame") if one.layer.member and one.layer.member.width]
        return min(50.0, found[0].width.value * 1000) if found else 0.0

    @property
    def closing(self) -> float:
        """How deep into the wall the timber round the opening reaches."""
        found = {"head": LINTEL, "sill": 1.0 * self.member, "jamb": DOUBLED * self.member}[self.edge] if self.member else 0.0
        return found if self.far_at is None else min(found, self.far_at)

    @property
    def lining(self) -> Course:
        return self.wall.courses[-1]

    @property
    def reveal(self) -> float:
        """Thickness of the reveal's lining, as the wall's own, at most 30 mm; a window board is 20 mm."""
        return 20.0 if self.edge == "sill" else max(6.0, min(30.0, self.lining.depth))

    def top(self, d: float) -> float:
        """s of the upper face of what lies under a window at depth `d`: it falls outward below the pan."""
        return FALL * max(0.0, self.window[1] - d) if self.edge == "sill" else 0.0

    @property
    def rain_from(self) -> float:
        """s at which cladding and cavity begin."""
        return {"head": FLASHING, "sill": FLASHING + 8.0, "jamb": 0.0}[self.edge]

    def place(self, s: float, d: float) -> Point:
        return self.wall.place(s, d)


    def served(self, letter: str) -> Course | None:
        return served(self.wall, letter)
