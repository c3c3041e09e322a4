"""Boxes that people write in (official's note, free space), and the place of a drawing."""

from layerfolio.binding.lists import tick_box
from layerfolio.binding.pen import Pen
from layerfolio.binding.piece import Piece, Place
from layerfolio.binding.rich import line, wrap, wrap_few
from layerfolio.sheets.blocks import Figure, FreeSpace, NoteBox

LEADING = 4.5


class FreePiece(Piece):
    """A framed space that takes what is left."""

    kind = "free space"

    def __init__(self, block: FreeSpace, width: float):
        self.lines = wrap(block.text, width - 5)
        self.width = width
        self.height = max(25.0, block.least)
        self.stretch = float("inf")

    def grow(self, more: float) -> None:
        self.height += more

    def paint(self, pen: Pen, x: float, y: float, place: Place) -> None:
        pen.box(x, y, self.width, self.height, 0.35)
        pen.set_all(self.lines, x + 2.5, y + 4.2, LEADING)


class NotePiece(Piece):
    """The official's note: boxes to tick, ruled lines, name, date, signature."""

    kind = "note box"
    LINE, PAD = 6.4, 2.5

    def __init__(self, block: NoteBox, width: float, indent: float = 0.0):
        self.block, self.width, self.indent = block, width - indent, indent
        self.lines = max(2, block.lines)
        self.height = max(30.0, self._high(self.lines) - self.lines)  # lines a little closer where room is short
        self.stretch = self._high(self.lines) + 25.0 - self.height

    def _high(self, lines: int) -> float:
        return 4.0 + self.LINE * lines + 9.0

    def grow(self, more: float) -> None:
        self.height += more
        while self._high(self.lines + 1) <= self.height:
            self.lines += 1

    def paint(self, pen: Pen, x: float, y: float, place: Place) -> None:
        x += self.indent
        pen.box(x, y, self.width, self.height, 0.5)
        left, right = x + self.PAD, x + self.width - self.PAD
        self._ticks(pen, left, right, y + 4.7)
        pitch = (self.height - 13.0) / self.lines
        for number in range(1, self.lines + 1):
            base = y + 4.0 + pitch * number
            pen.rule(left, base, right, base, 0.25)
        base, span = y + self.height - 2.9, right - left
        for name, start, end in (("Name", 0, 0.42), ("Date", 0.447, 0.673), ("Signature", 0.702, 1)):
            pen.words(name, left + span * start, base, 9)
            line_start = left + span * start + line(name).width + 2
            pen.rule(line_start, base + 0.9, left + span * end, base + 0.9, 0.25)

    def _ticks(self, pen: Pen, left: float, right: float, base: float) -> None:
        title = wrap_few(self.block.title, 60, 1, 9, True)[0]
        pen.set(title, left, base)
        ticks = [line(tick) for tick in self.block.ticks]
        used = title.width + sum(one.width + 4.6 for one in ticks)
        between = min((right - left - used) / max(1, len(ticks)), 9.0)
        at = left + title.width
        for one in ticks:
            at += between
            tick_box(pen, at, base)
            pen.set(one, at + 4.6, base)
            at += 4.6 + one.width


class FigurePiece(Piece):
    """A drawing at its own size. One that no page holds is reduced, and says so."""

    kind = "figure"

    def __init__(self, block: Figure, width: float):
        self.drawing, self.width = block.drawing, width
        self.shrink = min(1.0, width / block.drawing.width) if block.drawing.width > width + 0.01 else 1.0
        self.height = self._high()

    def _high(self) -> float:
        return self.drawing.height * self.shrink + (LEADING if self.shrink < 1 else 0.0)

    def squeeze(self, room: float) -> None:
        self.shrink = max(0.01, min(self.shrink, (room - LEADING) / self.drawing.height))
        self.squeezed = True
        self.height = self._high()

    def paint(self, pen: Pen, x: float, y: float, place: Place) -> None:
        if not self.drawing.width or not self.drawing.height:
            return
        pen.figure(self.drawing, x, y, self.shrink)
        if self.shrink < 1:
            pen.words("Reduced to fit the sheet: not to scale.", x, y + self.height - 1, 9, "oblique")
