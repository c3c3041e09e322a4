"""Texts in a strong frame: a caution, or what stands outside the tool. They are read as one, so they break only when forced."""

from layerfolio.binding.pen import Pen
from layerfolio.binding.piece import Piece, Place
from layerfolio.binding.rich import Line, wrap_few
from layerfolio.binding.stacking import Stack

PAD = 3.0  # from the frame to the text
TITLE, BELOW = 4.5, 0.6  # height of a line of the title, and from the title to the text


class FramedPiece(Piece):
    """A bold title, then pieces, inside a line of 0.7."""

    kind = "framed"

    def __init__(self, title: tuple[Line, ...], content: Stack, width: float):
        self.title, self.content, self.width = title, content, width
        self.head = TITLE * len(title) + (BELOW if title and content.pieces else 0.0)
        self.height = self.head + content.height + 2 * PAD - 1.0

    def split(self, room: float, force: bool = False) -> "tuple[FramedPiece, FramedPiece] | None":
        halves = self.content.split(room - self.head - 2 * PAD + 1.0, True) if force else None
        if not halves:
            return None
        return FramedPiece(self.title, halves[0], self.width), FramedPiece(self.title, halves[1], self.width)

    def paint(self, pen: Pen, x: float, y: float, place: Place) -> None:
        pen.box(x, y, self.width, self.height, 0.7)
        top = y + PAD - 0.5
        pen.set_all(self.title, x + PAD, top + 0.76 * TITLE, TITLE)
        self.content.paint(pen, x + PAD, top + self.head, place)


def framed(title: str, content: Stack, width: float) -> FramedPiece:
    return FramedPiece(wrap_few(title, width - 2 * PAD, 2, 9.72, True) if title else (), content, width)
