"""One column of tags: heights, dots, and an order in which no leaders cross. The left column is laid out mirrored."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import combinations

from layerfolio.drawing.detail.column_heights import Slot, heights
from layerfolio.drawing.detail.control_legs import Leg
from layerfolio.drawing.detail.dots import places
from layerfolio.drawing.detail.fit import Fit
from layerfolio.drawing.detail.model import Detail, Note, Side
from layerfolio.drawing.detail.note_rows import rows_of, size_of
from layerfolio.drawing.layout_harm import harm, meet, total
from layerfolio.drawing.layout_tags import Column, Leader, Tag
from layerfolio.drawing.lines import segments_cross

PASSES = 3  # leaders in each other's way look for better places so often
RANK, LONGER = 0.05, 0.02  # what the next place in the list costs, and each mm of a leader
GROUND_BAND = (4.0, 11.0)  # middle below a ground line, and height, of what tags keep off
BAD = 5.0  # harm of a figure or another leader crossed
NUDGES = (9.0, -9.0, 18.0, -18.0, 27.0, -27.0)  # mm that such a tag may want to stand higher
MOVES, FAR = 4, 4  # tags tried elsewhere in the order, and how many places away


@dataclass(frozen=True, slots=True)
class TagSide:
    """`beside`: leaders of the other column. `ground`: height of a ground line that runs out under this one."""

    side: Side
    detail: Detail
    fit: Fit
    column: Column
    legs: list[Leg]
    beside: tuple[Leader, ...] = ()
    ground: float | None = None

    def leaders(self) -> list[tuple[Note, Leader]]:
        """Notes with their leaders, mirrored where the column is the left one."""
        notes = sorted((one for one in self.detail.notes if one.side == self.side), key=lambda one: (-one.at[0][1], one.at[0][0]))
        notes, found = self._uncrossed(notes)
        for _ in range(MOVES):
            better = self._moved(notes, found)
            if better is None:
                break
            notes, found = better
        if any(meet(*pair) for pair in combinations(found, 2)):
            found = self._exchanged(notes, found)
        return list(zip(notes, found, strict=True))

    def _uncrossed(self, notes: list[Note]) -> tuple[list[Note], list[Leader]]:
        """Two whose leaders cross change places."""
        found = self._arranged(notes)
        for _ in range(len(notes) ** 2):
            pair = next((one for one in combinations(range(len(found)), 2) if meet(found[one[0]], found[one[1]])), None)
            if pair is None:
                break
            a, b = pair
            notes[a], notes[b] = notes[b], notes[a]
            found = self._arranged(notes)
        return notes, found

    def _exchanged(self, notes: Sequence[Note], found: Sequence[Leader]) -> list[Leader]:
        """Dots as they are and tags at one pitch; two that cross exchange heights. Each exchange shortens both: this ends."""
        tallest = max(size_of(one, self.fit.room(self.side)) for one in notes)
        levels = self._levels(notes, (0, 0.0), tallest)
        while True:
            ends = [(one.dot, (self.column.elbow, y)) for one, y in zip(found, levels, strict=True)]
            pair = next((one for one in combinations(range(len(ends)), 2) if segments_cross(*ends[one[0]], *ends[one[1]])), None)
            if pair is None:
                break
            a, b = pair
            levels[a], levels[b] = levels[b], levels[a]
        elbow, circle = self.column.elbow, self.column.circle
        return [replace(one, elbow=(elbow, y), circle=(circle, y)) for one, y in zip(found, levels, strict=True)]

    def _moved(self, notes: list[Note], found: list[Leader]) -> tuple[list[Note], list[Leader]] | None:
        """The best order with one tag elsewhere, or its best other height, where it crosses what it must not and that helps."""
        bad = next((at for at, one in enumerate(found) if self._crosses(one, self._others(found, at))), None)
        best, least = None, self._total(found) - BAD
        for tried, nudged in self._tries(notes, bad) if bad is not None else ():
            leaders = self._arranged(tried, nudged)
            if (worth := self._total(leaders)) < least:
                best, least = (tried, leaders), worth
        return best

    def _tries(self, notes: list[Note], bad: int) -> Iterator[tuple[list[Note], tuple[int, float]]]:
        """Orders of the notes, and which of them wants to stand how much higher."""
        for to in range(max(0, bad - FAR), min(len(notes), bad + FAR + 1)):
            tried = [*notes[:bad], *notes[bad + 1 :]]
            tried.insert(to, notes[bad])
            yield tried, (0, 0.0)
        for step in NUDGES:
            yield notes, (bad, step)

    def _crosses(self, one: Leader, others: Sequence[Leader]) -> bool:
        """Whether a leader crosses a figure, a tick, an arrow or another leader."""
        return any(meet(one, other) for other in others) or any(
            obstacle.crossed_by(one.dot, one.elbow) for obstacle in self.column.obstacles
        )

    def _total(self, found: list[Leader]) -> float:
        return total([*found, *self.beside], self.column)

    def _others(self, found: Sequence[Leader], at: int) -> list[Leader]:
        return [*self.beside, *found[:at], *found[at + 1 :]]

    def _arranged(self, notes: Sequence[Note], nudged: tuple[int, float] = (0, 0.0)) -> list[Leader]:
        """Circles in the order of the notes; each leader takes the dot that is least in the way."""
        levels = self._levels(notes, nudged)
        leaders: list[Leader] = []
        for note, level in zip(notes, levels, strict=True):
            leaders.append(self._best(self._tag(note, level), level, [*self.beside, *leaders]))
        for _ in range(PASSES):
            before = list(leaders)
            for at, one in enumerate(leaders):
                others = self._others(leaders, at)
                if harm(one, others, self.column):
                    leaders[at] = self._best(one.tag, one.circle[1], others)
            if leaders == before:
                break
        return leaders

    def _tag(self, note: Note, level: float) -> Tag:
        spots = places(note.at, self.detail, self.legs, level)
        if self.side == "left":
            spots = tuple((-x, y) for x, y in spots)
        room = self.fit.room(self.side)
        return Tag(("1",), spots, rows_of(note, room), (), size_of(note, room))

    def _levels(self, notes: Sequence[Note], nudged: tuple[int, float], size: float = 0.0) -> list[float]:
        slots = [Slot(one.at[0][1], size or size_of(one, self.fit.room(self.side))) for one in notes]
        if nudged[1]:
            at, step = nudged
            slots[at] = replace(slots[at], wanted=slots[at].wanted + step)
        if self.ground is None:
            return heights(slots, self.fit.low, self.fit.high)
        at = sum(one.wanted > self.ground for one in slots)
        band = Slot(self.ground - GROUND_BAND[0], GROUND_BAND[1], True)
        found = heights([*slots[:at], band, *slots[at:]], self.fit.low, self.fit.high)
        return found[:at] + found[at + 1 :]

    def _best(self, tag: Tag, y: float, placed: list[Leader]) -> Leader:
        best, least = None, 0.0
        for number, dot in enumerate(tag.places):
            longer = RANK * number + LONGER * abs(dot[0] - self.column.elbow)
            if best is not None and longer >= least:
                continue
            one = Leader(tag, dot, (self.column.elbow, y), (self.column.circle, y))
            found = harm(one, placed, self.column) + longer
            if best is None or found < least:
                best, least = one, found
        return best


def mirrored(one: Leader) -> Leader:
    """The same on the other side of x = 0."""
    places = (one.dot, one.elbow, one.circle)
    dot, elbow, circle = ((-x, y) for x, y in places)
    return replace(one, dot=dot, elbow=elbow, circle=circle)
