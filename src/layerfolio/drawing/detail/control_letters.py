"""Where the letters of control lines stand: every 20 to 40 mm, at least once in a straight leg, clear of what is drawn."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from math import ceil, dist

from layerfolio.drawing.detail.control_legs import Leg
from layerfolio.drawing.detail.on_paper import Box
from layerfolio.drawing.geometry import Outline, contains
from layerfolio.drawing.lines import distance
from layerfolio.drawing.marks import Point

PART = 40.0  # mm of line to a letter at most
CORNER, END, NEXT = 5.0, 8.0, 9.0  # a letter's middle from a corner, from an end, from the last letter
LEAST = 8.0  # mm: shorter legs carry no letter of their own
LEADER, OTHER, AIR, APART = 2.6, 2.7, 4.2, 5.0  # from leaders, other control lines, arrows, other letters
HALF = (1.9, 1.7)  # half the room of a letter
CROSSING = 2.3  # from lines that cross


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
    for leg in legs:
        if leg not in carrying:
            continue
        count = max(1, ceil(leg.long / PART))
        if leg is longest and len(carrying) < len(letters):
            count = max(count, len(letters))
        for u in _stations(number, leg, count, taken):
            found.append(Placed(leg, u, letters[len(found) % len(letters)]))
            taken.letters.append(leg.at(u))
    return found


def _stations(number: int, leg: Leg, count: int, taken: Taken) -> list[float]:
    crossed = _crossings(leg, taken.faces)
    first = CORNER if leg.mitre_a else END
    last = leg.long - (CORNER if leg.mitre_b else END)
    if first > last:
        first = last = leg.long / 2
    places: list[float] = []
    part = leg.long / count
    for at in range(count):
        low = max(first, places[-1] + NEXT) if places else first
        for loose in (False, True):
            u = _free((at + 0.5) * part, part, (low, last), lambda u, loose=loose: _clear(number, leg, u, taken, crossed, loose))
            if u is not None:
                places.append(u)
                break
    if not places and last - first >= 0:
        places = [(first + last) / 2]
    return places


def _free(start: float, part: float, within: tuple[float, float], clear) -> float | None:
    """From the middle of a part one step forward, one back, two forward and so on."""
    if within[0] > within[1]:
        return None
    start = min(max(start, within[0]), within[1])
    for step in range(2 * ceil(part) + 1):
        for u in dict.fromkeys((start + step / 2, start - step / 2)):
            if within[0] <= u <= within[1] and clear(u):
                return u
    return None


def _clear(number: int, leg: Leg, u: float, taken: Taken, crossed: Iterable[float], loose: bool) -> bool:
    point = leg.at(u)
    if not loose and (any(abs(u - one) < CROSSING for one in crossed) or any(contains(one, point) for one in taken.members)):
        return False
    if any(dist(point, one) < APART for one in taken.letters):
        return False
    if any(distance(point, *one) < LEADER for one in taken.leaders):
        return False
    if any(distance(point, *one) < AIR for one in taken.arrows):
        return False
    x, y = point
    if any(one[0] - HALF[0] < x < one[2] + HALF[0] and one[1] - HALF[1] < y < one[3] + HALF[1] for one in taken.boxes):
        return False
    others = (one for other, one in taken.legs if other != number)
    return loose or all(distance(point, one.a, one.b) >= OTHER for one in others)


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
