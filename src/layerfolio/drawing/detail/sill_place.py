"""Where things stand at the foot of a wall, in building millimetres."""

from dataclasses import dataclass
from functools import cached_property

from layerfolio.assembly.courses import Course, courses
from layerfolio.assembly.junction_types import Junction
from layerfolio.assembly.types import Assembly
from layerfolio.drawing.detail.arm import Arm
from layerfolio.drawing.detail.on_wall import OnWall

PLATE = 38.0  # thickness of a plate where the frame does not tell one
UP, ASIDE, DOWN = 54.0, 11.0, 56.0  # paper mm of wall above, of floor inside the lining, of what lies below
OVER = 8.0  # mm from the foot of the outer insulation up to that of the cladding
PAST = 8.0  # mm that the flashing passes what stands over or below it
COATING = 10.0  # mm of coating over edge insulation above the ground
FOUNDATION = 200.0  # mm: a foundation wall as drawn where its thickness is not stated
DECKS = ("plywood", "strand-board", "particle-board", "timber-board", "timber")


@dataclass(frozen=True)
class SillPlace(OnWall):
    """`wall` stands with its datum at x = 0; `floor` is shifted so that what the plate stands on has its top at y = 0."""

    junction: Junction
    wall: Arm
    slab: Assembly
    scale: float
    top_at: float | None = None  # y up to which the wall is drawn, x up to which the floor is: as far as the page asks, else
    right_at: float | None = None

    @cached_property
    def base(self) -> float:
        """Depth of the floor, from its datum, at which the plate stands: on its carrying layers or the deck on them."""
        found = courses(self.slab)
        frame = [one for one in found if one.zone == "frame"][-1]
        above = found[found.index(frame) + 1 : found.index(frame) + 2]
        deck = above and self.has_joists and above[0].layer.family in DECKS
        return above[0].end if deck else frame.end

    @cached_property
    def floor(self) -> Arm:
        return Arm(self.slab, (0.0, -self.base), 0.0, True, "along")

    @cached_property
    def has_joists(self) -> bool:
        return any(one.layer.member for one in courses(self.slab) if one.zone == "frame")

    @cached_property
    def frame(self) -> tuple[Course, ...]:
        return self.wall.zone("frame")

    @property
    def plate(self) -> float:
        """Thickness of the plate: as thick as the studs are wide, at most 50 mm."""
        members = [one.layer.member for one in self.frame if one.layer.member and one.layer.member.width]
        return min(50.0, members[0].width.value * 1000) if members else 0.0

    @property
    def finish(self) -> float:
        """y of the finished floor."""
        return self.floor.courses[-1].end - self.base

    @property
    def underside(self) -> float:
        """y of the underside of the floor's carrying layers."""
        return -self.base

    @property
    def top(self) -> float:
        return UP * self.scale if self.top_at is None else self.top_at

    @property
    def right(self) -> float:
        return self.inner + ASIDE * self.scale if self.right_at is None else self.right_at

    @property
    def whole(self) -> float:
        """y of the floor's lowest face."""
        return self.floor.courses[0].start - self.base

    @property
    def below(self) -> bool:
        """Whether the floor hangs over a space, with a foundation below it."""
        return self.slab.faces != "ground"

    @cached_property
    def bottom(self) -> float:
        wanted = -DOWN * self.scale
        if self.below:
            return min(self.whole - 14 * self.scale, max(wanted, self.ground - 8 * self.scale))
        return max(self.whole, wanted)

    @property
    def goes_on_below(self) -> bool:
        return self.below or self.whole < self.bottom - 0.5

    @property
    def foot(self) -> float:
        """y of the foot of the cladding: over the flashing, clear of its water."""
        return self.gap + OVER

    @property
    def gap(self) -> float:
        """y of the foot of the outer insulation."""
        if self.below:  # over the plate on the foundation
            return self.underside - (self.sill_plate if self.founded == "wall" else 0.0) + 5.0
        return 5.0 + (self.flashing_fall if self.edge else 0.0)

    @property
    def sill_plate(self) -> float:
        """Thickness of the plate between foundation and joists."""
        return self.plate or PLATE

    @cached_property
    def ground(self) -> float:
        """y of the ground outside."""
        if self.junction.clearance is not None:
            return self.foot - self.junction.clearance * 1000
        if self.junction.ground_level is not None:
            return self.finish + self.junction.ground_level * 1000
        return self.foot - 200.0

    @property
    def edge(self) -> tuple[float, float] | None:
        """Thickness and depth of the edge insulation, mm."""
        found = self.junction.edge_insulation
        return (found[0] * 1000, found[1] * 1000) if found and not self.below else None

    @property
    def edge_face(self) -> float:
        """x of the outer face of what stands against the slab or under the floor."""
        return -self.edge[0] if self.edge else 0.0

    @property
    def bears_from(self) -> float:
        """x of the inner face of what carries the joists: what hangs below them begins there."""
        stated = self.slab.ground.get("wall_thickness")
        return stated * 1000 if stated else FOUNDATION

    @property
    def ground_out(self) -> float:
        """How far the ground is drawn beyond the drip."""
        return (13.0 if self.right_at is None else 14.0) * self.scale

    @property
    def founded(self) -> str:
        """What the floor over a space stands on."""
        return self.junction.foundation

    @property
    def floor_left(self) -> float:
        return self.edge_face

    @property
    def drip(self) -> float:
        """x of the flashing's outer edge: past the cladding, and past the edge insulation with its coating."""
        return min(self.outer - PAST, self.edge_face - COATING - PAST)

    @property
    def flashing_fall(self) -> float:
        """How far the flashing falls from the membrane to its drip: five degrees."""
        return 0.09 * (self.cover - self.drip)
