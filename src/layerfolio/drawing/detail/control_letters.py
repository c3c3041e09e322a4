"""Where the letters of control lines stand: every 20 to 40 mm, at least once in a straight leg, clear of what is drawn."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from math import ceil

from layerfolio.drawing.detail.control_legs import Leg
from layerfolio.drawing.detail.on_paper import Box
from layerfolio.drawing.geometry import Outline, contains
from layerfolio.drawing.lines import distance
from layerfolio.drawing.marks import Point

PART = 40.0  # mm of line to a letter at most
NEXT = 9.0  # from the last letter
LEAST = 8.0  # mm: shorter legs carry no letter of their own
OTHER = 2.7  # from other control lines
HALF = (1.9, 1.7)  # half the room of a letter
CROSSING = 2.3  # from lines that cross


@dataclass(frozen=True, slots=True)
class Rules:
    """mm that the middle of a letter keeps: from a corner, an end, leaders, arrows; from other letters across and upward."""

    corner: float
    end: float
    leader: float
    arrow: float
    across: float
    upward: float
    drawn: bool = False  # whether it keeps off members, lines that cross and other control lines


STRICT = Rules(5.0, 8.0, 2.7, 4.2, 4.6, 4.2, True)
LOOSE = Rules(5.0, 8.0, 2.7, 4.2, 4.6, 4.2)
TIGHT = Rules(2.2, 2.2, 2.7, 2.6, 3.7, 3.4)


@dataclass(slots=True)
class Taken:
    """What letters keep clear of on the page: always of `hard`, where they can of `soft`."""

    leaders: list[tuple[Point, Point]] = field(default_factory=list)
    arrows: list[tuple[Point, Point]] = field(default_factory=list)
    boxes: list[Box] = field(default_factory=list)  # texts, dots
    faces: list[tuple[Point, Point]] = field(default_factory=list)  # outlines, heavy lines
    members: list[Outline] = field(default_factory=list)  # small cut timber
    legs: list[tuple[int, Leg]] = field(default_factory=list)  # of all traces, with the trace's number
    letters: list[Point] = field(default_factory=list)


@dataclass(frozen=True, slots=True)
class Placed:
    """A letter on a leg."""

    leg: Leg
    u: float
    letter: str

    @property
    def at(self) -> Point:
        return self.leg.at(self.u)


def letters_of(number: int, letters: str, legs: Sequence[Leg], taken: Taken) -> list[Placed]:
    """Letters of one trace in turn along all its legs; `taken.letters` grows by them."""
    found: list[Placed] = []
    carrying = [one for one in legs if one.long >= LEAST] or sorted(legs, key=lambda one: -one.long)[:1]
    longest = max(carrying, key=lambda one: one.long, default=None)
    for leg in carrying:
        count = max(1, ceil(leg.long / PART))
        if leg is longest and len(carrying) < len(letters):
            count = max(count, len(letters))
        for u in _stations(Search(number, leg, taken), count):
            found.append(Placed(leg, u, letters[len(found) % len(letters)]))
            taken.letters.append(leg.at(u))
    return found


def _stations(search: "Search", count: int) -> list[float]:
    """The middles of equal parts, or as near to them as is clear; rules give way where a leg would stay without any."""
    places: list[float] = []
    part = search.leg.long / count
    for at in range(count):
        for rules in (STRICT, LOOSE):
            u = search.nearest((at + 0.5) * part, part, rules, places[-1] + NEXT if places else 0.0)
            if u is not None:
                places.append(u)
                break
    if not places:
        u = search.nearest(search.leg.long / 2, search.leg.long, TIGHT, 0.0)
        places += [] if u is None else [u]
    return places


@dataclass(slots=True)
class Search:
    """For a clear place on one leg of a trace."""

    number: int
    leg: Leg
    taken: Taken
    crossed: list[float] = field(init=False)

    def __post_init__(self):
        self.crossed = _crossings(self.leg, self.taken.faces)

    def nearest(self, start: float, part: float, rules: Rules, low: float) -> float | None:
        """From the middle of a part one step forward, one back, two forward and so on."""
        leg = self.leg
        first, last = rules.corner if leg.mitre_a else rules.end, leg.long - (rules.corner if leg.mitre_b else rules.end)
        if first > last:
            first = last = leg.long / 2
        low = max(low, first)
        if low > last:
            return None
        start = min(max(start, low), last)
        for step in range(2 * ceil(part) + 1):
            for u in dict.fromkeys((start + step / 2, start - step / 2)):
                if low <= u <= last and self._clear(u, rules):
                    return u
        return None

    def _clear(self, u: float, rules: Rules) -> bool:
        point, taken = self.leg.at(u), self.taken
        x, y = point
        if rules.drawn and not self._off_drawn(u, point):
            return False
        if any(abs(x - a) < rules.across and abs(y - b) < rules.upward for a, b in taken.letters):
            return False
        if any(distance(point, *one) < rules.leader for one in taken.leaders):
            return False
        if any(distance(point, *one) < rules.arrow for one in taken.arrows):
            return False
        return not any(
            one[0] - HALF[0] < x < one[2] + HALF[0] and one[1] - HALF[1] < y < one[3] + HALF[1] for one in taken.boxes
        )

    def _off_drawn(self, u: float, point: Point) -> bool:
        """Clear of members, of lines that cross, of other control lines."""
        if any(abs(u - one) < CROSSING for one in self.crossed):
            return False
        if any(contains(one, point) for one in self.taken.members):
            return False
        others = (one for other, one in self.taken.legs if other != self.number)
        return all(distance(point, one.a, one.b) >= OTHER for one in others)


def _crossings(leg: Leg, faces: Iterable[tuple[Point, Point]]) -> list[float]:
    """Where lines cross a leg or end at it, along the leg."""
    found = []
    for a, b in faces:
        (ua, va), (ub, vb) = leg.uv(a), leg.uv(b)
        if min(va, vb) > HALF[0] or max(va, vb) < -HALF[0] or max(ua, ub) < 0 or min(ua, ub) > leg.long:
            continue
        if abs(va - vb) > 0.8 * abs(ua - ub):
            found.append((ua + ub) / 2 if abs(va - vb) < 1e-9 else ua + (ub - ua) * min(1, max(0, va / (va - vb))))
    return found
