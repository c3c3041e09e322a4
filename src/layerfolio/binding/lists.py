"""Lists: bullets and boxes to tick, and pairs of label and value."""

from dataclasses import dataclass

from layerfolio.binding.pen import Pen
from layerfolio.binding.piece import Piece, Place
from layerfolio.binding.rich import Line, wrap
from layerfolio.binding.texts import LEADING, RISE
from layerfolio.sheets.blocks import Bullets, Pairs

_COLUMN_GAP = 4.0
INDENT = {"box": 4.6, "square": 4.1}  # of the text behind its marker


@dataclass(frozen=True, slots=True)
class _Item:
    """One item set; `marked` is False on the rest of an item that broke."""

    lines: tuple[Line, ...]
    marked: bool = True


class BulletsPiece(Piece):
    """A list in columns, the first column filled first; breaks between items."""

    kind = "bullets"
    BETWEEN = 0.4

    def __init__(self, items: tuple[_Item, ...], marker: str, columns: int, column_width: float):
        self.items, self.marker, self.columns, self.column_width = items, marker, columns, column_width
        per = -(-len(items) // columns)
        self.parts = [items[at : at + per] for at in range(0, len(items), per)] if items else []
        self.height = max((self._high(part) for part in self.parts), default=0.0)

    def _high(self, items: tuple[_Item, ...]) -> float:
        return sum(LEADING * len(item.lines) + self.BETWEEN for item in items) - self.BETWEEN

    @property
    def least(self) -> float:
        return self._high(self.items[:1]) if self.columns == 1 and self.items else self.height

    def split(self, room: float, force: bool = False) -> "tuple[BulletsPiece, BulletsPiece] | None":
        if self.columns > 1 and not force:
            return None
        for count in range(len(self.items) - 1, 0, -1):
            first = self._part(self.items[:count])
            if first.height <= room:
                return first, self._part(self.items[count:])
        fitting = int(room / LEADING)
        if not force or fitting < 1 or not self.items or len(self.items[0].lines) <= fitting:
            return None
        one = self.items[0]
        rest = (_Item(one.lines[fitting:], False), *self.items[1:])
        return self._part((_Item(one.lines[:fitting], one.marked),)), self._part(rest)

    def _part(self, items: tuple[_Item, ...]) -> "BulletsPiece":
        return BulletsPiece(items, self.marker, self.columns, self.column_width)

    def paint(self, pen: Pen, x: float, y: float, place: Place) -> None:
        for items in self.parts:
            top = y
            for item in items:
                if item.marked:
                    self._paint_marker(pen, x, top + RISE * LEADING)
                pen.set_all(item.lines, x + INDENT[self.marker], top + RISE * LEADING, LEADING)
                top += LEADING * len(item.lines) + self.BETWEEN
            x += self.column_width + _COLUMN_GAP

    def _paint_marker(self, pen: Pen, x: float, base: float) -> None:
        if self.marker == "box":
            tick_box(pen, x, base)
            return
        low, side = base - 0.35, 1.5
        pen.polygon(((x, low), (x + side, low), (x + side, low - side), (x, low - side)), colour=0)


def bullets(block: Bullets, width: float) -> BulletsPiece:
    columns = max(1, block.columns)
    column_width = (width - _COLUMN_GAP * (columns - 1)) / columns
    items = tuple(_Item(wrap(item, column_width - INDENT[block.marker])) for item in block.items)
    return BulletsPiece(items, block.marker, columns, column_width)


def tick_box(pen: Pen, x: float, baseline: float) -> None:
    """A box to be ticked on paper."""
    pen.box(x + 0.1, baseline - 2.5, 2.7, 2.7, 0.25)


PairLines = tuple[tuple[Line, ...], tuple[Line, ...]]


class PairsPiece(Piece):
    """Label and bold value; breaks between rows."""

    kind = "pairs"
    ROW = 5.25

    def __init__(self, rows: tuple[PairLines, ...], label_width: float, row: float = ROW):
        self.rows, self.label_width, self.row = rows, label_width, row
        self.height = sum(map(self._high, rows))

    def _high(self, row: PairLines) -> float:
        return self.row + LEADING * (max(map(len, row)) - 1)

    @property
    def least(self) -> float:
        return sum(map(self._high, self.rows[:2]))

    def split(self, room: float, force: bool = False) -> "tuple[PairsPiece, PairsPiece] | None":
        count, used = 0, 0.0
        while count < len(self.rows) and used + self._high(self.rows[count]) <= room:
            used += self._high(self.rows[count])
            count += 1
        if 0 < count < len(self.rows):
            return self._with(self.rows[:count]), self._with(self.rows[count:])
        fitting = int((room - self.row + LEADING) / LEADING)
        if not force or count or fitting < 1:
            return None
        label, value = self.rows[0]
        first, rest = (label[:fitting], value[:fitting]), (label[fitting:], value[fitting:])
        return self._with((first,)), self._with((rest, *self.rows[1:]))

    def _with(self, rows: tuple[PairLines, ...]) -> "PairsPiece":
        return PairsPiece(rows, self.label_width, self.row)

    def closer(self, share: float) -> "PairsPiece":
        return PairsPiece(self.rows, self.label_width, self.row - share * (self.row - LEADING))

    def paint(self, pen: Pen, x: float, y: float, place: Place) -> None:
        for label, value in self.rows:
            pen.set_all(label, x, y + RISE * LEADING, LEADING)
            pen.set_all(value, x + self.label_width, y + RISE * LEADING, LEADING)
            y += self._high((label, value))


def pairs(block: Pairs, width: float) -> PairsPiece:
    room = width - block.label_width
    rows = tuple((wrap(label, block.label_width - 2), wrap(value, room, bold=True)) for label, value in block.rows)
    return PairsPiece(rows, block.label_width)
