"""The index of the sheets."""

from layerfolio.binding.fit import fit
from layerfolio.binding.measure import width
from layerfolio.binding.pen import Pen
from layerfolio.binding.piece import Piece, Place
from layerfolio.binding.rich import line
from layerfolio.binding.texts import RISE


class IndexPiece(Piece):
    """The sheets of the set with the pages they begin on, joined by dots."""

    kind = "index"
    ROW, CLOSEST = 4.3, 3.6

    def __init__(self, entries: tuple[tuple[int, str, str], ...], width: float, row: float = ROW):
        self.entries, self.width, self.row = entries, width, row
        numbers = [line(number, 9, bold=True) for _, number, _ in entries]
        self.indent = min(max([15.0, *(one.width + 3 for one in numbers)]), width / 3)
        self.height = row * len(entries)

    @property
    def least(self) -> float:
        return self.row * min(4, len(self.entries))

    def split(self, room: float, force: bool = False) -> "tuple[IndexPiece, IndexPiece] | None":
        count = int(room / self.row + 1e-6)
        if not 0 < count < len(self.entries):
            return None
        first, rest = self.entries[:count], self.entries[count:]
        return IndexPiece(first, self.width, self.row), IndexPiece(rest, self.width, self.row)

    def closer(self, share: float) -> "IndexPiece":
        return IndexPiece(self.entries, self.width, self.row - share * (self.row - self.CLOSEST))

    def paint(self, pen: Pen, x: float, y: float, place: Place) -> None:
        right = x + self.width
        for sheet, number, title in self.entries:
            base = y + RISE * self.row
            pen.words(fit(number, self.indent - 2, (9,), "bold").lines[0], x, base, 9, "bold")
            shown = fit(title, self.width - self.indent - 9, (9,)).lines[0]
            pen.words(shown, x + self.indent, base, 9)
            pen.words(str(place.first_pages[sheet]), right, base, 9, anchor=1)
            pen.dots(x + self.indent + width(shown, 9) + 1.6, right - 4.6, base - 0.2, right)
            y += self.row
