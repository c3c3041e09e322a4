"""Where tags stand: numbers in a column beside the section, each on a leader that crosses no other."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from itertools import combinations, pairwise
from math import inf

from layerfolio.drawing.lettering import spread, wide
from layerfolio.drawing.lines import Obstacle, distance, segments_cross
from layerfolio.drawing.marks import Point

RADIUS, PITCH = 2.9, 6.7
NOTE_GAP = 1.6
NOTE_PITCHES = (10.5, 8.6)  # round a note of two lines; where tags are many
SIDE = 6.2  # from circle to circle where tags share a leader
CLEAR = 1.2  # of a leader from another's dot


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

    @property
    def further(self) -> tuple[Point, ...]:
        x, y = self.dot
        return tuple((x + dx, y + dy) for dx, dy in self.tag.further)

    @property
    def path(self) -> tuple[Point, Point, Point]:
        return self.dot, self.elbow, (self.circle[0] - half_width(self.tag.labels[0]), self.circle[1])


@dataclass(frozen=True, slots=True)
class Column:
    """Where elbows and circles stand, the highest circle's middle, and what leaders keep clear of."""

    elbow: float
    circle: float
    obstacles: tuple[Obstacle, ...] = ()
    top: float = inf


def half_width(label: str) -> float:
    """Half the width of a tag's outline: a circle, for three signs a longer one."""
    return max(RADIUS, wide(label) / 2 + 0.9)


def arranged(tags: Sequence[Tag], column: Column) -> tuple[Leader, ...]:
    """Circles in the order of the tags; only where leaders would cross, two circles change places."""
    for turn in (_members_first, _upward, _downward):
        leaders = _with_dots(tags, column, turn)
        if not any_crossing(leaders):
            return leaders
    chosen = list(tags)
    for _ in range(len(tags) ** 2 + 1):
        leaders = _with_dots(chosen, column)
        crossed = next((pair for pair in combinations(range(len(chosen)), 2) if _cross(leaders, *pair)), None)
        if crossed is None:
            return leaders
        a, b = crossed
        chosen[a], chosen[b] = chosen[b], chosen[a]
    return _uncrossed(leaders)


def _uncrossed(leaders: tuple[Leader, ...]) -> tuple[Leader, ...]:
    """Dots as they are, circles exchanged: each exchange shortens the leaders, so this ends without a crossing."""
    found = list(leaders)
    pairs = list(combinations(range(len(found)), 2))
    while True:
        pair = next((one for one in pairs if _plainly(found, *one)), None)
        if pair is None:
            return tuple(sorted(found, key=lambda one: -one.circle[1]))
        a, b = found[pair[0]], found[pair[1]]
        found[pair[0]] = replace(a, elbow=b.elbow, circle=b.circle)
        found[pair[1]] = replace(b, elbow=a.elbow, circle=a.circle)


def _plainly(leaders: Sequence[Leader], a: int, b: int) -> bool:
    return segments_cross(leaders[a].dot, leaders[a].elbow, leaders[b].dot, leaders[b].elbow)


def any_crossing(leaders: Sequence[Leader]) -> bool:
    """Whether two leaders cross, the strokes to further dots included."""
    return any(_cross(leaders, *pair) for pair in combinations(range(len(leaders)), 2))


def _cross(leaders: Sequence[Leader], a: int, b: int) -> bool:
    return _meet(leaders[a], leaders[b])


def _meet(one: Leader, other: Leader) -> bool:
    """Whether two leaders cross, the strokes to further dots included."""
    if segments_cross(one.dot, one.elbow, other.dot, other.elbow):
        return True
    if not one.tag.further and not other.tag.further:
        return False
    return any(segments_cross(*first, *second) for first in _strokes(one) for second in _strokes(other))


def _strokes(one: Leader) -> list[tuple[Point, Point]]:
    stops = (one.elbow, one.dot, *one.further)
    return list(pairwise(stops))


def _members_first(tags: Sequence[Tag]) -> list[int]:
    return sorted(range(len(tags)), key=lambda one: (not tags[one].member, one))


def _upward(tags: Sequence[Tag]) -> list[int]:
    return list(range(len(tags)))[::-1]


def _downward(tags: Sequence[Tag]) -> list[int]:
    return list(range(len(tags)))


def _with_dots(
    tags: Sequence[Tag], column: Column, turn: Callable[[Sequence[Tag]], list[int]] = _members_first
) -> tuple[Leader, ...]:
    """For every circle a dot whose leader is clear of the others; who chooses first is a matter of `turn`."""
    heights = _heights(tags, column.top)
    placed: dict[int, Leader] = {}
    for index in turn(tags):
        y = heights[index]
        placed[index] = _best(tags[index], y, list(placed.values()), column)
    return tuple(placed[index] for index in range(len(tags)))


def _heights(tags: Sequence[Tag], top: float) -> list[float]:
    """Near the dots, at their pitch, none above `top`."""
    sizes = [one.size for one in tags]
    heights = spread([one.places[0][1] for one in tags], sizes)
    limit = top
    for index, size in enumerate(sizes):
        heights[index] = min(heights[index], limit)
        following = sizes[index + 1] if index + 1 < len(sizes) else 0.0
        limit = heights[index] - (size + following) / 2
    return heights


def _best(tag: Tag, y: float, placed: list[Leader], column: Column) -> Leader:
    """The first place without harm, else the one with the least."""
    best, least = None, None
    for dot in tag.places:
        one = Leader(tag, dot, (column.elbow, y), (column.circle, y))
        harm = _harm(one, placed, column.obstacles)
        if least is None or harm < least:
            best, least = one, harm
        if not harm:
            break
    return best


def _harm(one: Leader, placed: list[Leader], obstacles: tuple[Obstacle, ...]) -> float:
    """0 for a clear leader; crossings weigh most."""
    harm = 0.0
    for other in placed:
        if _meet(one, other):
            harm += 100.0
        near = min(distance(other.dot, one.dot, one.elbow), distance(one.dot, other.dot, other.elbow))
        harm += max(0.0, CLEAR - near)
    return harm + 10.0 * sum(obstacle.crossed_by(one.dot, one.elbow) for obstacle in obstacles)
