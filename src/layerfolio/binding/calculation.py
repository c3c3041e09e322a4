"""The calculation sheet: numbered steps, formula field, running total, a source column behind an upright rule."""

from dataclasses import replace

from layerfolio.binding.boxes import BandPiece
from layerfolio.binding.calc_steps import RULE, SOURCE, TOTAL, StepLines, paint_step
from layerfolio.binding.pen import Pen
from layerfolio.binding.piece import CONTINUED_NOTE, Piece, Place
from layerfolio.binding.rich import line
from layerfolio.binding.step_breaks import WHITE, Halves, force_step, least_of, part_step
from layerfolio.binding.tables import NOTE_BASELINE
from layerfolio.sheets.blocks import Calculation

FIRST = 1.68  # from the rule under the head to the first step
LAST = 1.5  # from the last step to the closing rule
WIDE, NARROW = 3.5, 2.5  # between steps: 8 from baseline to baseline, 7 where that saves a page
_SAVED = CONTINUED_NOTE - NOTE_BASELINE - 1.0  # above the note, where steps are closed up


class CalculationPiece(Piece):
    """Steps under one head; closes with the band of its verdict where there is one."""

    kind = "calculation"

    def __init__(
        self,
        block: Calculation,
        steps: tuple[StepLines, ...],
        width: float,
        band: BandPiece | None,
        open_end: bool = False,
    ):
        self.block, self.steps, self.width, self.band, self.open_end = block, steps, width, band, open_end
        self.unit = line(block.total_unit) if block.total_unit else None
        self.head_height = 11.86 if self.unit else 7.6
        self.between = WIDE

    @property
    def height(self) -> float:  # type: ignore[override]
        steps = sum(step.height for step in self.steps) + self.between * (len(self.steps) - 1)
        end = NOTE_BASELINE + 1 if self.open_end else self.band.height if self.band else 0.0
        return self.head_height + FIRST + steps + LAST + end

    @property
    def least(self) -> float:
        first = self.steps[0].height if len(self.steps) > 1 else self.height
        return min(self.height, self._around + min(first, least_of(self.steps[0])))

    @property
    def _around(self) -> float:
        """What a part that goes on elsewhere needs beside its steps."""
        return self.head_height + FIRST + LAST + CONTINUED_NOTE

    def split(self, room: float, force: bool = False) -> "tuple[Piece, Piece] | None":
        """Between two steps; closed up, or within a step, where that would leave too much white."""
        count, left = self._whole_steps(room)
        if left + (WIDE if count else 0.0) > WHITE:
            tight_count, tight_left = self._whole_steps(room + _SAVED, NARROW)
            if tight_count > count:
                return self._halves(tight_count, None, NARROW)
            for space, between in ((left, WIDE), (tight_left, NARROW)):
                broken = part_step(self.steps[count], space)
                if broken:
                    return self._halves(count, broken, between)
        if count:
            return self._halves(count)
        broken = force_step(self.steps[0], left) if force else None
        return self._halves(0, broken) if broken else None

    def split_between(self, room: float) -> "tuple[Piece, Piece] | None":
        count, _ = self._whole_steps(room)
        return self._halves(count) if count else None

    def _whole_steps(self, room: float, between: float = WIDE) -> tuple[int, float]:
        """How many steps stand whole in `room`, never all, and the height left for the next."""
        left, count = room - self._around, 0
        while count < len(self.steps) - 1 and self.steps[count].height <= left:
            left -= self.steps[count].height + between
            count += 1
        return count, left

    def _halves(self, count: int, broken: Halves | None = None, between: float = WIDE) -> "tuple[Piece, Piece]":
        """So many whole steps, then the first half of a broken one."""
        here, there = self.steps[:count], self.steps[count:]
        if broken:
            here, there = (*here, broken[0]), (broken[1], *there[1:])
        first = self._part(here, True)
        first.between = between
        return first, self._part(there, self.open_end)

    def _part(self, steps: tuple[StepLines, ...], open_end: bool) -> "CalculationPiece":
        return CalculationPiece(self.block, steps, self.width, None if open_end else self.band, open_end)

    def closer(self, share: float) -> "CalculationPiece":
        steps = (replace(one, parts=tuple((gap, part.closer(share)) for gap, part in one.parts)) for one in self.steps)
        return self._part(tuple(steps), self.open_end)

    def tighten(self, room: float) -> bool:
        saved = (self.between - NARROW) * (len(self.steps) - 1)
        if saved <= 0 or self.height - saved > room:
            return False
        self.between = NARROW
        return True

    def paint(self, pen: Pen, x: float, y: float, place: Place) -> None:
        right = x + self.width
        if not self.under_head:
            pen.across(x, y, self.width, 0.35)
        self._paint_head(pen, x, y)
        top = y
        y += self.head_height
        pen.across(x, y, self.width, 0.35)
        y += FIRST
        for number, step in enumerate(self.steps):
            y += self.between if number else 0.0
            paint_step(pen, step, x, y, self.width, place)
            y += step.height
        y += LAST
        pen.rule(right - RULE, top, right - RULE, y, 0.25)
        if self.open_end:
            pen.across(x, y, self.width, 0.25)
            pen.set_right(line(place.goes_on, oblique=True), right, y + NOTE_BASELINE)
        elif self.band:
            self.band.paint(pen, x, y, place)
        else:
            pen.across(x, y, self.width, 0.5)

    def _paint_head(self, pen: Pen, x: float, y: float) -> None:
        base, right = y + (5.8 if self.unit else 5.0), x + self.width
        pen.words("Step", x, base, 9, "bold")
        pen.set_right(line(self.block.total_title, bold=True), right - TOTAL, base)
        pen.words("Source", right - SOURCE, base, 9, "bold")
        if self.unit:
            pen.set_right(self.unit, right - TOTAL, base + 4.4)
