"""Cells of a table: their lines, and where a figure's decimal point stands."""

import re
from dataclasses import dataclass, replace

from layerfolio.binding.measure import width
from layerfolio.binding.pen import Pen
from layerfolio.binding.rich import Line, line, wrap
from layerfolio.binding.verdicts import verdict_width, verdict_words
from layerfolio.codes.findings import Verdict
from layerfolio.sheets.blocks import Cell, Column, Row, VerdictCell

_FIGURE = re.compile(r"[−+-]?\d[\d\u00a0 ]*(?:\.\d*)?")
DASHES = ("–", "—", "-")
AFTER_GAP = 2.5
NOTE_GAP = "\u2003"


@dataclass(frozen=True, slots=True)
class Slot:
    """A column's place: from `x` on, text between the paddings `left` and `right`."""

    x: float
    width: float
    left: float
    right: float
    align: str

    @property
    def room(self) -> float:
        return max(self.width - self.left - self.right, 3.0)

    @property
    def end(self) -> float:
        return self.x + self.width - self.right


@dataclass(frozen=True, slots=True)
class CellLines:
    """A cell set: an optional verdict (it takes the first line), lines, and the lines that begin a part of the text."""

    lines: tuple[Line, ...]
    verdict: Verdict | None = None
    begins: tuple[int, ...] = ()
    point: float | None = None  # of a decimal figure: from the start of its line to the point

    @property
    def count(self) -> int:
        return len(self.lines) + (1 if self.verdict is not None else 0)

    def parted(self, count: int) -> "tuple[CellLines, CellLines]":
        """The first `count` lines and the rest."""
        at = max(0, count - (1 if self.verdict is not None else 0))
        begins = tuple(one - at for one in self.begins if one > at)
        return replace(self, lines=self.lines[:at]), CellLines(self.lines[at:], None, begins)


def set_cell(cell: Cell, slot: Slot, bold: bool = False) -> CellLines:
    """Break a cell into lines."""
    if isinstance(cell, VerdictCell):
        return CellLines(wrap(cell.text, slot.room) if cell.text else (), cell.verdict)
    if slot.align == "decimal" and "\n" not in cell:
        one = line(cell, bold=bold)
        if one.width <= slot.room:
            return CellLines((one,), point=decimal_point(one))
    parts = [wrap(part, slot.room, 9, bold) for part in cell.split("\n")] if cell else []
    begins, at = [], 0
    for part in parts:
        begins.append(at)
        at += len(part)
    return CellLines(tuple(one for part in parts for one in part), begins=tuple(begins))


def decimal_point(one: Line) -> float | None:
    """From the start of a figure to its decimal point (its end without one); the middle of a dash; None for words."""
    text = one.text
    if text in DASHES:
        return one.width / 2
    figure = _FIGURE.match(text)
    if not figure:
        return None
    at = figure.group().find(".")
    return _offset(one, at if at >= 0 else len(figure.group().rstrip(" \u00a0")))


def _offset(one: Line, count: int) -> float:
    """Where the character with that number starts."""
    for bit in one.bits:
        if count <= len(bit.text):
            return bit.x + width(bit.text[:count], bit.size, bit.style)
        count -= len(bit.text)
    return one.width


@dataclass(frozen=True, slots=True)
class AfterLines:
    """The last lines of a row, from `column` to the right edge, below `at` lines of its cells; `beside` other cells or
    under all of them."""

    cell: Cell
    lines: tuple[Line, ...]
    column: int
    at: int
    beside: bool = False

    @property
    def end(self) -> int:
        return self.at + max(1, len(self.lines))

    def parted(self, count: int) -> "tuple[AfterLines | None, AfterLines | None]":
        """What stands in the first `count` lines of the row, and the rest."""
        fitting = max(0, count - self.at) if self.beside else 0
        fitting = 0 if fitting < 2 or len(self.lines) - fitting == 1 else fitting  # no line of a text stands alone
        first = replace(self, lines=self.lines[:fitting]) if fitting else None
        left = self.lines[fitting:]
        return first, replace(self, lines=left, at=max(0, self.at - count)) if left or not fitting else None


@dataclass(frozen=True, slots=True)
class RowLines:
    """A row set; `height` without the row's rule."""

    cells: tuple[CellLines, ...]
    height: float
    total: bool = False
    keep_with_next: bool = False
    after: AfterLines | None = None
    head: str = ""  # the text of a row that begins a part of the table
    note: str = ""  # what stands behind it

    @property
    def count(self) -> int:
        return max((cell.count for cell in self.cells), default=1)

    @property
    def lines(self) -> int:
        """All lines of the row, that of its verdict included."""
        return max(self.count, 1, self.after.end if self.after else 0)


def set_row(row: Row, slots: tuple[Slot, ...], leading: float, extra: float, right: float) -> RowLines:
    """Break a row into lines; cells that are missing at its end stay empty."""
    if row.head:
        return head_row(*map(str, row.cells[:2]), leading=leading, extra=extra, right=right)
    cells = tuple(set_cell(cell, slot, row.total) for cell, slot in zip(row.cells, slots, strict=False))
    after = _after(row, cells, slots, right) if row.after is not None else None
    made = RowLines(cells, 0.0, row.total, row.keep_with_next, after)
    return replace(made, height=made.lines * leading + extra)


def _after(row: Row, cells: tuple[CellLines, ...], slots: tuple[Slot, ...], right: float) -> AfterLines:
    """Under all cells, or under the last ones where that ends higher."""
    count = max(1, *(cell.count for cell in cells))
    under = _after_lines(row.after, min(row.after_from, len(slots) - 1), slots, right, count)
    if row.after_beside is None:
        return under
    at = max(1, *(cell.count for cell in cells[row.after_beside :]))
    beside = replace(_after_lines(row.after, row.after_beside, slots, right, at), beside=True)
    return beside if max(count, beside.end) < under.end else under


def _after_lines(cell: Cell, column: int, slots: tuple[Slot, ...], right: float, at: int) -> AfterLines:
    room = right - slots[column].x - slots[column].left
    if isinstance(cell, VerdictCell):
        room -= verdict_width(cell.verdict) + AFTER_GAP
    text = cell.text if isinstance(cell, VerdictCell) else cell
    return AfterLines(cell, wrap(text, room) if text else (), column, at)


def head_row(text: str, note: str = "", *, leading: float, extra: float, right: float) -> RowLines:
    """A row that begins a part of the table: bold, a note behind it regular, over the whole width, kept with the next."""
    lines = wrap(f"{text}{NOTE_GAP}{note}", right) if note else wrap(text, right, 9, bold=True)
    return RowLines((CellLines(lines),), len(lines) * leading + extra, keep_with_next=True, head=text, note=note)


def paint_cell(pen: Pen, cell: CellLines, slot: Slot, x: float, y: float, leading: float, point: float | None) -> None:
    """`y` is the first baseline, `x` the left edge of the table, `point` where the column's decimal points stand."""
    if cell.verdict is not None:
        verdict_words(pen, cell.verdict, x + slot.x + slot.left, y)
        y += leading
    for one in cell.lines:
        pen.set(one, x + _start(one, cell, slot, point), y)
        y += leading


def _start(one: Line, cell: CellLines, slot: Slot, point: float | None) -> float:
    if slot.align == "decimal" and cell.point is not None and point is not None:
        return point - cell.point
    if slot.align in ("right", "decimal"):
        return slot.end - one.width
    if slot.align == "centre":
        return slot.x + slot.left + (slot.room - one.width) / 2
    return slot.x + slot.left


def paint_after(pen: Pen, row: RowLines, slots: tuple[Slot, ...], x: float, y: float, leading: float) -> None:
    """The last lines of a row: verdict and reason from a column on; `y` is the first baseline of the row."""
    if row.after is None:
        return
    after = row.after
    y += after.at * leading
    start = x + slots[after.column].x + slots[after.column].left
    if isinstance(after.cell, VerdictCell):
        start = verdict_words(pen, after.cell.verdict, start, y) + AFTER_GAP
    pen.set_all(after.lines, start, y, leading)


def head_lines(column: Column, slot: Slot) -> tuple[tuple[Line, ...], tuple[Line, ...]]:
    """Name (bold) and unit (regular) of a column."""
    return wrap(column.title, slot.room, 9, bold=True), wrap(column.unit, slot.room) if column.unit else ()
