"""Running text: paragraphs and headings."""

from layerfolio.binding.pen import Pen
from layerfolio.binding.piece import Piece, Place
from layerfolio.binding.rich import Line, wrap, wrap_few
from layerfolio.sheets.blocks import Heading, Paragraph

LEADING = 4.5
RISE = 0.76  # of the leading: first baseline below the top


class TextPiece(Piece):
    """Lines of text; breaks with at least two lines on each side."""

    kind = "text"

    def __init__(self, lines: tuple[Line, ...], leading: float = LEADING):
        self.lines = lines
        self.leading = leading
        self.height = leading * len(lines)

    @property
    def least(self) -> float:
        return self.height if len(self.lines) < 4 else 2 * self.leading

    def split(self, room: float, force: bool = False) -> "tuple[TextPiece, TextPiece] | None":
        lines, fewest = len(self.lines), 1 if force else 2
        count = min(int(room / self.leading + 1e-6), lines - fewest)
        if count < fewest:
            return None
        return TextPiece(self.lines[:count], self.leading), TextPiece(self.lines[count:], self.leading)

    def paint(self, pen: Pen, x: float, y: float, place: Place) -> None:
        pen.set_all(self.lines, x, y + RISE * self.leading, self.leading)


def paragraph(block: Paragraph, width: float) -> TextPiece:
    leading = LEADING * max(1.0, block.size / 9 * 0.975)
    return TextPiece(wrap(block.text, width, block.size, block.bold, block.oblique), round(leading, 2))


class HeadingPiece(Piece):
    """A sub-heading, with a rule below where the block asks for it; stays with what follows."""

    keep_with_next = True

    def __init__(self, block: Heading, width: float):
        self.lines = wrap_few(block.text, width, 6, 9.72, True)
        self.rule = block.rule
        self.kind = "ruled heading" if block.rule else "heading"
        self.width = width
        self.height = LEADING * len(self.lines) + (0.5 if block.rule else 0.0)

    def paint(self, pen: Pen, x: float, y: float, place: Place) -> None:
        pen.set_all(self.lines, x, y + RISE * LEADING, LEADING)
        if self.rule:
            pen.across(x, y + self.height, self.width, 0.35)
