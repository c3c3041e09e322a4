"""Tables: rules, heads that repeat, rows that break only where the page design allows it."""

from dataclasses import replace

from layerfolio.binding.cells import CellLines, RowLines, head_lines, head_row, paint_after, paint_cell, set_row
from layerfolio.binding.pen import Pen
from layerfolio.binding.piece import CONTINUED_NOTE, Piece, Place
from layerfolio.binding.rich import line
from layerfolio.binding.table_layout import Layout, point_of, slots_of
from layerfolio.sheets.blocks import Table

RISE = 0.76
UNDER_HEAD = 1.1
CLOSE = 4.3  # the least leading
CONTINUED = ", continued"
TALL = 9  # lines of a row that may break; a lower one stays with its reason
NOTE_BASELINE = 5.0  # of "continued on", below the last rule

Halves = tuple[RowLines, RowLines]


def table_piece(table: Table, width: float) -> "TablePiece":
    """The whole table, ready to be placed."""
    width -= table.indent
    slots = slots_of(table, width)
    leading = 4.5 if table.long_text and table.extra is None else table.leading
    extra = table.extra if table.extra is not None else (3.0 if table.long_text else 0.5)
    rows = tuple(set_row(row, slots, leading, extra, width) for row in table.rows)
    heads = tuple(head_lines(column, slot) for column, slot in zip(table.columns, slots, strict=True))
    upright = tuple((number, slots[number].x + slots[number].width) for number in table.upright_rules if number < len(slots))
    points = tuple(point_of(number, slot, rows) for number, slot in enumerate(slots))
    layout = Layout(slots, heads, points, width, table.indent, leading, extra, upright, table.long_text)
    return TablePiece(layout, rows, table.top_rule)


class TablePiece(Piece):
    """A table or a part of one; `open_end` says that it goes on elsewhere."""

    kind = "table"
    along = 2  # rows, at least, behind a break
    signed = True  # an open end says where the table goes on

    def __init__(self, layout: Layout, rows: tuple[RowLines, ...], top_rule: bool = True, open_end: bool = False):
        self.layout, self.rows = layout, rows
        self.top_rule, self.open_end = top_rule, open_end

    @property
    def head_height(self) -> float:
        """Under the head of a page the table's own head stands a little lower."""
        return self.layout.head_height + (UNDER_HEAD if self.under_head and not self.layout.long_text else 0.0)

    @property
    def height(self) -> float:  # type: ignore[override]
        note = NOTE_BASELINE + 1.0 if self.open_end and self.signed else 0.0
        return self.head_height + sum(row.height for row in self.rows) + note

    @property
    def least(self) -> float:
        if len(self.rows) < 4:
            return self.height
        return self.head_height + sum(row.height for row in self.rows[:2]) + CONTINUED_NOTE

    def closer(self, share: float) -> "TablePiece":
        """At most lines at 4.3 and no air between rows of one line; records of long text keep theirs."""
        lay = self.layout
        if lay.long_text or lay.leading <= CLOSE:
            return self
        saved, less = share * (lay.leading - CLOSE), share * min(lay.extra, 0.5)
        rows = tuple(replace(row, height=row.height - less - saved * row.lines) for row in self.rows)
        layout = replace(lay, leading=lay.leading - saved, extra=lay.extra - less)
        return TablePiece(layout, rows, self.top_rule, self.open_end)

    def split(self, room: float, force: bool = False) -> "tuple[TablePiece, TablePiece] | None":
        room -= self.head_height + CONTINUED_NOTE
        count, used = 0, 0.0
        while count < len(self.rows) and used + self.rows[count].height <= room:
            used += self.rows[count].height
            count += 1
        tall = self._part_tall(count, room - used)
        if tall:
            return self._parts((*self.rows[:count], tall[0]), (tall[1], *self.rows[count + 1 :]))
        for at in range(min(count, len(self.rows) - 1), 0, -1):
            if self._may_break(at) or (force and not self.rows[at - 1].head):
                return self._parts(self.rows[:at], self.rows[at:])
        lead = 1 if self.rows and self.rows[0].head else 0
        if force and count <= lead < len(self.rows):
            parts = self._part_row(self.rows[lead], room - sum(row.height for row in self.rows[:lead]))
            if parts:
                return self._parts((*self.rows[:lead], parts[0]), (parts[1], *self.rows[lead + 1 :]))
        return None

    def _may_break(self, at: int) -> bool:
        enough = at >= 2 and len(self.rows) - at >= self.along
        return enough and not self.rows[at].total and not self.rows[at - 1].keep_with_next

    def _parts(self, first: tuple[RowLines, ...], rest: tuple[RowLines, ...]) -> "tuple[TablePiece, TablePiece]":
        part = next((row for row in reversed(first) if row.head), None)
        if part and not rest[0].head:
            again = part.head if part.head.endswith(CONTINUED) else part.head + CONTINUED
            lay = self.layout
            rest = (head_row(again, part.note, leading=lay.leading, extra=lay.extra, right=lay.width), *rest)
        return TablePiece(self.layout, first, self.top_rule, True), TablePiece(self.layout, rest, True, self.open_end)

    def _part_tall(self, at: int, room: float) -> Halves | None:
        """A record's row of `TALL` lines and more, in two where a part of its longest cell begins, so that the foot is filled."""
        if not self.layout.long_text or at < 1 or len(self.rows) - at < self.along or self.rows[at].lines < TALL:
            return None
        row, fitting = self.rows[at], int((room - self.layout.extra) / self.layout.leading)
        question = row.cells[1].count if len(row.cells) > 1 else 1
        begins = [one for one in _longest(row).begins if max(2, question) <= one <= fitting]
        return self._parted(row, begins[-1], again=True) if begins else None

    def _part_row(self, row: RowLines, room: float) -> Halves | None:
        """A row that no page holds, in two: rather where a part of its longest cell begins."""
        count = int((room - self.layout.extra) / self.layout.leading)
        if count < 1 or count >= row.count:
            return None
        begins = [one for one in _longest(row).begins if 2 <= one <= count]
        return self._parted(row, begins[-1] if begins and begins[-1] > count // 2 else count)

    def _parted(self, row: RowLines, count: int, again: bool = False) -> Halves:
        """The first `count` lines of a row, and the rest with what follows from it; `again`: below its question."""
        parts = [cell.parted(count) for cell in row.cells]
        above, below = row.after.parted(count) if row.after else (None, None)
        first = replace(row, cells=tuple(one for one, _ in parts), height=self._high(count), after=above)
        cells = tuple(_repeated(number, one, more, again) for number, (one, more) in enumerate(parts))
        if below and not below.beside:
            below = replace(below, at=max(cell.count for cell in cells))
        rest = replace(row, cells=cells, after=below)
        return first, replace(rest, height=self._high(rest.lines))

    def _high(self, lines: int) -> float:
        return lines * self.layout.leading + self.layout.extra

    def paint(self, pen: Pen, x: float, y: float, place: Place) -> None:
        lay = self.layout
        x += lay.indent
        if self.top_rule and not self.under_head:
            pen.across(x, y, lay.width, 0.5)
        self._paint_heads(pen, x, y + self.head_height - lay.head_height)
        top = y = y + self.head_height
        if lay.head_height:
            pen.across(x, y, lay.width, 0.35)
        for number, row in enumerate(self.rows):
            if number:
                pen.across(x, y, lay.width, 0.35 if row.total else 0.25)
            self._paint_row(pen, row, x, y)
            y += row.height
        self._paint_uprights(pen, x, top)
        pen.across(x, y, lay.width, 0.25 if self.open_end else 0.5)
        if self.open_end and self.signed:
            pen.set_right(line(place.goes_on, oblique=True), x + lay.width, y + NOTE_BASELINE)

    def _paint_uprights(self, pen: Pen, x: float, top: float) -> None:
        """Beside the cells of each run of rows; what stands over several columns stays clear of them."""
        for number, at in self.layout.upright:
            start = y = top
            for row in self.rows:
                clear = row.height if row.head else self._over(row, number)
                y += row.height
                if clear:
                    if y - clear > start:
                        pen.rule(x + at, start, x + at, y - clear, 0.25)
                    start = y
            if y > start:
                pen.rule(x + at, start, x + at, y, 0.25)

    def _over(self, row: RowLines, number: int) -> float:
        """How much of the row's foot is taken by lines that run across the rule behind that column."""
        if row.after is None or number < row.after.column:
            return 0.0
        return row.height - row.after.at * self.layout.leading - self.layout.extra / 2

    def _paint_heads(self, pen: Pen, x: float, y: float) -> None:
        first, step = (4.75, 4.4) if self.layout.long_text else (3.64, 3.95)
        for (name, unit), slot in zip(self.layout.heads, self.layout.slots, strict=True):
            head = CellLines((*name, *unit))
            align = "right" if slot.align == "decimal" else slot.align
            paint_cell(pen, head, replace(slot, align=align), x, y + first, step, None)

    def _paint_row(self, pen: Pen, row: RowLines, x: float, y: float) -> None:
        lay = self.layout
        base = y + RISE * lay.leading + lay.extra / 2
        for cell, slot, point in zip(row.cells, lay.slots, lay.points, strict=False):
            paint_cell(pen, cell, slot, x, base, lay.leading, point)
        paint_after(pen, row, lay.slots, x, base, lay.leading)


def _longest(row: RowLines) -> CellLines:
    return max(row.cells, key=lambda cell: cell.count)


def _repeated(number: int, first: CellLines, rest: CellLines, again: bool = False) -> CellLines:
    """On the continued row, number and question stand again where nothing is left of them, or in any case."""
    if number > 1 or (rest.lines and not (again and number == 1)):
        return rest
    begin = first.lines[:1]
    if number == 0 or not begin:
        return CellLines(begin)
    return CellLines((*begin, line("(continued)", oblique=True), *rest.lines))
