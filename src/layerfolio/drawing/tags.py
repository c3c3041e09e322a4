"""Tags: numbers in circles, in a column beside the section, each on a leader that crosses no other."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import combinations

from layerfolio.drawing.geometry import Outline
from layerfolio.drawing.lettering import LINE, middle_text, spread, wide
from layerfolio.drawing.lines import crosses_outline, distance, segments_cross
from layerfolio.drawing.marks import Circle, Curve, Line, Mark, Point

RADIUS, PITCH = 2.9, 6.7
NOTE_GAP, NOTE_PITCH = 1.6, 10.5  # a note of two lines asks for the second
SIDE = 6.2  # from circle to circle where tags share a leader
DOT, RING = 0.55, 0.85
CLEAR = 1.2  # of a leader from another's dot


@dataclass(frozen=True, slots=True)
class Tag:
    """`places` for the dot on the page, best first. Tags that share a leader: several labels, the further dots as
    offsets from the first."""

    labels: tuple[str, ...]
    places: tuple[Point, ...]
    note: tuple[str, ...] = ()
    further: tuple[Point, ...] = ()

    @property
    def size(self) -> float:
        return NOTE_PITCH if len(self.note) > 1 else PITCH


@dataclass(frozen=True, slots=True)
class Leader:
    """A placed tag: dot, elbow, and the middle of its first circle."""

    tag: Tag
    dot: Point
    elbow: Point
    circle: Point

    @property
    def path(self) -> tuple[Point, Point, Point]:
        return self.dot, self.elbow, (self.circle[0] - half_width(self.tag.labels[0]), self.circle[1])


@dataclass(frozen=True, slots=True)
class Column:
    """Where elbows and circles stand; circles stay between `top` and `bottom` where they can."""

    elbow: float
    circle: float
    obstacles: tuple[Outline, ...] = ()


def half_width(label: str) -> float:
    """Half the width of a tag's outline: a circle, for three signs a longer one."""
    return max(RADIUS, wide(label) / 2 + 0.9)


def arranged(tags: Sequence[Tag], column: Column) -> tuple[Leader, ...]:
    """Circles in the order of the tags; only where leaders would cross, two circles change places."""
    chosen = list(tags)
    for _ in range(len(tags) ** 2 + 1):
        leaders = _with_dots(chosen, column)
        crossed = next((pair for pair in combinations(range(len(chosen)), 2) if _cross(leaders, *pair)), None)
        if crossed is None:
            return leaders
        a, b = crossed
        chosen[a], chosen[b] = chosen[b], chosen[a]
    return leaders


def _cross(leaders: tuple[Leader, ...], a: int, b: int) -> bool:
    return segments_cross(leaders[a].dot, leaders[a].elbow, leaders[b].dot, leaders[b].elbow)


def _with_dots(tags: list[Tag], column: Column) -> tuple[Leader, ...]:
    """For every circle the first dot whose leader is clear of all before it; else the one that disturbs least."""
    heights = spread([one.places[0][1] for one in tags], [one.size for one in tags])
    placed: list[Leader] = []
    for tag, y in zip(tags, heights, strict=True):
        best, least = None, None
        for dot in tag.places:
            one = Leader(tag, dot, (column.elbow, y), (column.circle, y))
            harm = _harm(one, placed, column.obstacles)
            if least is None or harm < least:
                best, least = one, harm
            if not harm:
                break
        placed.append(best)
    return tuple(placed)


def _harm(one: Leader, placed: list[Leader], obstacles: tuple[Outline, ...]) -> float:
    """0 for a clear leader; crossings weigh most."""
    harm = 0.0
    for other in placed:
        if segments_cross(one.dot, one.elbow, other.dot, other.elbow):
            harm += 100.0
        near = min(distance(other.dot, one.dot, one.elbow), distance(one.dot, other.dot, other.elbow))
        harm += max(0.0, CLEAR - near)
    return harm + 10.0 * sum(crosses_outline(one.dot, one.elbow, outline) for outline in obstacles)


def shared(tags: list[Tag], thin: Sequence[bool], room: float) -> list[Tag]:
    """Consecutive tags of thin layers on one leader, two and two from the outside in, until the column fits `room`."""
    done, thin = list(tags), list(thin)
    while sum(one.size for one in done) > room:
        pair = next(
            (one for one in range(len(done) - 1) if thin[one] and thin[one + 1] and _single(done, one)), None
        )
        if pair is None:
            break
        first, second = done[pair], done[pair + 1]
        offset = _offset(first, second)
        places = tuple(one for one in first.places)
        merged = replace(first, labels=first.labels + second.labels, places=places, further=(offset,))
        done[pair : pair + 2] = [merged]
        thin[pair : pair + 2] = [True]
    return done


def _single(tags: list[Tag], index: int) -> bool:
    return len(tags[index].labels) == 1 and len(tags[index + 1].labels) == 1


def _offset(first: Tag, second: Tag) -> Point:
    (ax, ay), (bx, by) = first.places[0], min(second.places, key=lambda one: abs(one[0] - first.places[0][0]))
    return bx - ax, by - ay


def leader_marks(leader: Leader) -> list[Mark]:
    """White, line and dots."""
    (x, y), tag = leader.dot, leader.tag
    dots = [leader.dot, *((x + dx, y + dy) for dx, dy in tag.further)]
    marks: list[Mark] = [Line(leader.path, 0.25, (), 0.35, role=f"leader {tag.labels[0]}")]
    if tag.further:
        marks.append(Line(tuple(dots), 0.25, (), 0.35, role=f"leader {tag.labels[-1]}"))
    marks += [Circle(one, RING, fill="white", role="leader dot") for one in dots]
    return marks + [Circle(one, DOT, fill="black", role="leader dot") for one in dots]


def tag_marks(leader: Leader) -> list[Mark]:
    """Circles with their numbers, and the note."""
    x, y = leader.circle
    marks: list[Mark] = []
    for number, label in enumerate(leader.tag.labels):
        at = x + number * SIDE
        marks += [_outline(at, y, label), middle_text(at, y, label, anchor="middle", role=f"tag {label}")]
    start = x + (len(leader.tag.labels) - 1) * SIDE + half_width(leader.tag.labels[-1]) + NOTE_GAP
    rows = leader.tag.note
    for number, words in enumerate(rows):
        height = y + ((len(rows) - 1) / 2 - number) * LINE
        marks.append(middle_text(start, height, words, role="note"))
    return marks


def _outline(x: float, y: float, label: str) -> Mark:
    half = half_width(label)
    if half == RADIUS:
        return Circle((x, y), RADIUS, 0.35, "white", role="tag")
    r, flat = RADIUS, half - RADIUS
    k = 0.5523 * r
    left, right = x - flat, x + flat
    commands = (
        ("M", left, y + r), ("L", right, y + r), ("C", right + k, y + r, right + r, y + k, right + r, y),
        ("C", right + r, y - k, right + k, y - r, right, y - r), ("L", left, y - r),
        ("C", left - k, y - r, left - r, y - k, left - r, y), ("C", left - r, y + k, left - k, y + r, left, y + r), ("Z",),
    )  # fmt: skip
    return Curve(commands, 0.35, "white", role="tag")
