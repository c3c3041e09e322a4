"""One column of tags: heights, dots, and an order in which no leaders cross. The left column is laid out mirrored."""

from collections.abc import Sequence
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

PASSES = 3  # leaders in each other's way look for better places so often
RANK, LONGER = 0.05, 0.02  # what the next place in the list costs, and each mm of a leader
GROUND_BAND = (4.0, 11.0)  # middle below a ground line, and height, of what tags keep off
BAD = 5.0  # harm of a figure or another leader crossed
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

    def _moved(self, notes: list[Note], found: list[Leader]) -> tuple[list[Note], list[Leader]] | None:
        """The best order with one tag elsewhere, where one crosses what it must not and that helps."""
        bad = [at for at, one in enumerate(found) if harm(one, self._others(found, at), self.column) >= BAD]
        best, least = None, self._total(found) - BAD
        for at in bad[:1]:
            for to in range(max(0, at - FAR), min(len(notes), at + FAR + 1)):
                tried = [*notes[:at], *notes[at + 1 :]]
                tried.insert(to, notes[at])
                leaders = self._arranged(tried)
                if (worth := self._total(leaders)) < least:
                    best, least = (tried, leaders), worth
        return best

    def _total(self, found: list[Leader]) -> float:
        return total([*found, *self.beside], self.column)

    def _others(self, found: Sequence[Leader], at: int) -> list[Leader]:
        return [*self.beside, *found[:at], *found[at + 1 :]]

    def _arranged(self, notes: Sequence[Note]) -> list[Leader]:
        """Circles in the order of the notes; each leader takes the dot that is least in the way."""
        levels = self._levels(notes)
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

    def _levels(self, notes: Sequence[Note]) -> list[float]:
        slots = [Slot(one.at[0][1], size_of(one, self.fit.room(self.side))) for one in notes]
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
