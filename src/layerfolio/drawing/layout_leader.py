"""A tag, its leader, and the column they stand in."""

from dataclasses import dataclass, field
from math import inf

from layerfolio.drawing.layout_strips import Strips
from layerfolio.drawing.lettering import wide
from layerfolio.drawing.lines import Obstacle
from layerfolio.drawing.marks import Point

RADIUS, PITCH = 2.9, 6.7
NOTE_GAP = 1.6
NOTE_PITCHES = (10.5, 8.6)  # round a note of two lines; where tags are many
SIDE = 6.2  # from circle to circle where tags share a leader


@dataclass(frozen=True, slots=True)
class Tag:
    """`places` for the dot on the page, best first; `size` is the room along the column. Tags that share a leader:
    several labels, the further dots as offsets from the first."""

    labels: tuple[str, ...]
    places: tuple[Point, ...]
    note: tuple[str, ...] = ()
    further: tuple[Point, ...] = ()
    size: float = PITCH
    member: bool = False  # its dot has little choice


@dataclass(frozen=True, slots=True)
class Leader:
    """A placed tag: dot, elbow, and the middle of its first circle."""

    tag: Tag
    dot: Point
    elbow: Point
    circle: Point
    left: bool = False  # stands left of the drawing, its note left of the circle

    @property
    def further(self) -> tuple[Point, ...]:
        x, y = self.dot
        return tuple((x + dx, y + dy) for dx, dy in self.tag.further)

    @property
    def path(self) -> tuple[Point, Point, Point]:
        reach = half_width(self.tag.labels[0]) * (-1 if self.left else 1)
        return self.dot, self.elbow, (self.circle[0] - reach, self.circle[1])


@dataclass(frozen=True, slots=True)
class Column:
    """Where elbows and circles stand, the highest circle's middle, and what leaders keep clear of;
    `strips` are the lines and thin layers that none runs along."""

    elbow: float
    circle: float
    obstacles: tuple[Obstacle, ...] = ()
    top: float = inf
    strips: Strips | None = None
    known: dict[tuple[Point, Point], float] = field(default_factory=dict, compare=False, repr=False)  # harm, see layout_harm


def half_width(label: str) -> float:
    """Half the width of a tag's outline: a circle, for three signs a longer one."""
    return max(RADIUS, wide(label) / 2 + 0.9)
