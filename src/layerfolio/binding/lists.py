"""Lists: bullets and boxes to tick, pairs of label and value, the index of sheets."""

from layerfolio.binding.fit import fit
from layerfolio.binding.pen import Pen
from layerfolio.binding.piece import Piece, Place
from layerfolio.binding.rich import Line, line, width, wrap
from layerfolio.binding.texts import LEADING, RISE
from layerfolio.sheets.blocks import Bullets, Pairs

_COLUMN_GAP = 4.0


class BulletsPiece(Piece):
    """A list in columns, the first column filled first; breaks between items."""

    kind = "bullets"
    BETWEEN = 0.4

    def __init__(self, block: Bullets, width: float):
        self.block, self.width = block, width
        self.columns = max(1, block.columns)
        self.column_width = (width - _COLUMN_GAP * (self.columns - 1)) / self.columns
        self.indent = 4.6 if block.marker == "box" else 4.1
        items = [wrap(item, self.column_width - self.indent) for item in block.items]
        per = -(-len(items) // self.columns)
        self.parts = [items[at : at + per] for at in range(0, len(items), per)] if items else []
        self.height = max((self._high(part) for part in self.parts), default=0.0)

    def _high(self, items: list[tuple[Line, ...]]) -> float:
        return sum(LEADING * len(lines) + self.BETWEEN for lines in items) - self.BETWEEN

    @property
    def least(self) -> float:
        return self._high(self.parts[0][:1]) if self.columns == 1 and self.parts else self.height

    def split(self, room: float, force: bool = False) -> "tuple[BulletsPiece, BulletsPiece] | None":
        items = self.block.items
        if self.columns > 1 and not force:
            return None
        for count in range(len(items) - 1, 0, -1):
            first = BulletsPiece(Bullets(items[:count], self.block.marker, self.columns), self.width)
            if first.height <= room:
                return first, BulletsPiece(Bullets(items[count:], self.block.marker, self.columns), self.width)
        return None

    def paint(self, pen: Pen, x: float, y: float, place: Place) -> None:
        for items in self.parts:
            top = y
            for lines in items:
                self._marker(pen, x, top)
                pen.set_all(lines, x + self.indent, top + RISE * LEADING, LEADING)
                top += LEADING * len(lines) + self.BETWEEN
            x += self.column_width + _COLUMN_GAP

    def _marker(self, pen: Pen, x: float, y: float) -> None:
        if self.block.marker == "box":
            tick_box(pen, x, y + RISE * LEADING)
            return
        low, side = y + RISE * LEADING - 0.35, 1.5
        pen.polygon(((x, low), (x + side, low), (x + side, low - side), (x, low - side)), colour=0)


def tick_box(pen: Pen, x: float, baseline: float) -> None:
    """A box to be ticked on paper."""
    pen.box(x + 0.1, baseline - 2.5, 2.7, 2.7, 0.25)


class PairsPiece(Piece):
    """Label and bold value; breaks between rows."""

    kind = "pairs"
    ROW = 5.25

    def __init__(self, block: Pairs, width: float):
        self.block, self.width = block, width
        room = width - block.label_width
        self.rows = [
            (wrap(label, block.label_width - 2), wrap(value, room, bold=True)) for label, value in block.rows
        ]
        self.height = sum(map(self._high, self.rows))

    def _high(self, row: tuple) -> float:
        return self.ROW + LEADING * (max(map(len, row)) - 1)

    @property
    def least(self) -> float:
        return sum(map(self._high, self.rows[:2]))

    def split(self, room: float, force: bool = False) -> "tuple[PairsPiece, PairsPiece] | None":
        count, used = 0, 0.0
        while count < len(self.rows) and used + self._high(self.rows[count]) <= room:
            used += self._high(self.rows[count])
            count += 1
        if not 0 < count < len(self.rows):
            return None
        rows, share = self.block.rows, self.block.label_width
        return PairsPiece(Pairs(rows[:count], share), self.width), PairsPiece(Pairs(rows[count:], share), self.width)

    def paint(self, pen: Pen, x: float, y: float, place: Place) -> None:
        for label, value in self.rows:
            pen.set_all(label, x, y + RISE * LEADING, LEADING)
            pen.set_all(value, x + self.block.label_width, y + RISE * LEADING, LEADING)
            y += self._high((label, value))


class IndexPiece(Piece):
    """The sheets of the set with the pages they begin on, joined by dots."""

    kind = "index"
    ROW = 4.3

    def __init__(self, entries: tuple[tuple[int, str, str], ...], width: float):
        self.entries, self.width = entries, width
        numbers = [line(number, 9, bold=True) for _, number, _ in entries]
        self.indent = min(max([15.0, *(one.width + 3 for one in numbers)]), width / 3)
        self.height = self.ROW * len(entries)

    @property
    def least(self) -> float:
        return self.ROW * min(4, len(self.entries))

    def split(self, room: float, force: bool = False) -> "tuple[IndexPiece, IndexPiece] | None":
        count = int(room / self.ROW + 1e-6)
        if not 0 < count < len(self.entries):
            return None
        return IndexPiece(self.entries[:count], self.width), IndexPiece(self.entries[count:], self.width)

    def paint(self, pen: Pen, x: float, y: float, place: Place) -> None:
        right = x + self.width
        for sheet, number, title in self.entries:
            base = y + RISE * self.ROW
            pen.words(fit(number, self.indent - 2, (9,), "bold").lines[0], x, base, 9, "bold")
            shown = fit(title, self.width - self.indent - 9, (9,)).lines[0]
            pen.words(shown, x + self.indent, base, 9)
            pen.words(str(place.first_pages[sheet]), right, base, 9, anchor=1)
            pen.dots(x + self.indent + width(shown, 9) + 1.6, right - 4.6, base - 0.2, right)
            y += self.ROW
