"""The formula field of a calculation sheet: lines aligned on the equals sign, dots that lead to the running total."""

from dataclasses import dataclass

from layerfolio.binding.pen import Pen
from layerfolio.binding.piece import Piece, Place
from layerfolio.binding.rich import Line, line, wrap
from layerfolio.sheets.blocks import Equation

LEADING, RISE = 4.5, 3.42
EQUALS = 30.0  # from the left edge of the field
BEFORE, BEHIND = 1.5, 4.0  # from the left side's end to the sign, from the sign to the right side
FIELD_LEFT = 9.0
_DOTS_END = 9.5  # dots stop this far before the right edge of the running totals


def equals_at(equations: list[Equation], right: float) -> float:
    """Where the equals signs of a step stand: further right where a left side is wide, at most half-way."""
    lefts = [line(one.left).width for one in equations]
    return min(max([EQUALS, *(FIELD_LEFT + one + BEFORE for one in lefts)]), right / 2)


@dataclass(frozen=True, slots=True)
class _Right:
    lines: tuple[Line, ...]
    first: bool  # carries the equals sign


class EquationPiece(Piece):
    """One equation; `right` is where the running totals end."""

    kind = "equation"

    def __init__(self, block: Equation, equals: float, right: float):
        self.equals, self.right = equals, right
        self.left = line(block.left)
        self.total = line(block.total, bold=True) if block.total else None
        self.rights = []
        for number, text in enumerate(block.rights):
            last = number == len(block.rights) - 1
            room = right - equals - BEHIND - (12.0 if self.total and last else 0.0)
            bold = bool(last and block.total and "**" not in text)
            self.rights.append(wrap(text, room, 9, bold))
        self.over = self.left.width > equals - BEFORE - FIELD_LEFT  # the left side takes a line of its own
        self.height = LEADING * (sum(map(len, self.rights)) + (1 if self.over else 0))

    def paint(self, pen: Pen, x: float, y: float, place: Place) -> None:
        base = y + RISE
        if self.over:
            pen.set(self.left, x + FIELD_LEFT, base)
            base += LEADING
        elif self.rights:
            pen.set_right(self.left, x + self.equals - BEFORE, base)
        for number, lines in enumerate(self.rights):
            pen.words("=", x + self.equals, base, 9)
            pen.set_all(lines, x + self.equals + BEHIND, base, LEADING)
            base += LEADING * len(lines)
            if self.total and number == len(self.rights) - 1:
                self._paint_total(pen, x, base - LEADING, lines[-1])

    def _paint_total(self, pen: Pen, x: float, base: float, last: Line) -> None:
        end = x + self.right
        pen.set_right(self.total, end, base)
        dots_end = end - max(self.total.width + 1.5, _DOTS_END)
        pen.dots(x + self.equals + BEHIND + last.width + 1.6, dots_end, base - 0.2, end)
