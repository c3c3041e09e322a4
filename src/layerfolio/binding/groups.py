"""Pieces made of pieces: the numbered items of an explanation sheet, and two columns side by side."""

from layerfolio.binding.pen import Pen
from layerfolio.binding.piece import Piece, Place
from layerfolio.binding.rich import Line, line, wrap, wrap_few
from layerfolio.binding.stacking import Stack

LABELS = 42.0  # where the text of a numbered item starts
GAP = 4.0  # between two columns
LEADING, RISE = 4.5, 3.42
_FOOT = 1.0  # from the last line to the rule below


class NumberedPiece(Piece):
    """Number and label at the left, its pieces at the right, a rule below where asked for."""

    kind = "numbered"

    def __init__(self, number: str, label: tuple[Line, ...], content: Stack, width: float, rule: bool):
        self.number, self.label, self.content, self.width, self.rule = number, label, content, width, rule
        self.height = max(content.height, LEADING * len(label)) + (_FOOT if rule else 0.0)

    @property
    def least(self) -> float:
        first = self.content.least
        return self.height if first >= self.content.height else max(first, LEADING * len(self.label))

    def split(self, room: float, force: bool = False) -> "tuple[NumberedPiece, NumberedPiece] | None":
        halves = self.content.split(room, force)
        if not halves:
            return None
        again = wrap("_(continued)_", LABELS - 8)
        first = NumberedPiece(self.number, self.label, halves[0], self.width, False)
        return first, NumberedPiece(self.number, again, halves[1], self.width, self.rule)

    def closer(self, share: float) -> "NumberedPiece":
        return NumberedPiece(self.number, self.label, self.content.closer(share), self.width, self.rule)

    def squeeze(self, room: float) -> None:
        for piece in self.content.pieces:
            piece.squeeze(room)
        self.squeezed = any(piece.squeezed for piece in self.content.pieces)
        self.height = max(self.content.height, LEADING * len(self.label)) + (_FOOT if self.rule else 0.0)

    def paint(self, pen: Pen, x: float, y: float, place: Place) -> None:
        pen.words(self.number, x, y + RISE, 9, "bold")
        pen.set_all(self.label, x + (6 if self.number else 0), y + RISE, LEADING)
        self.content.paint(pen, x + LABELS, y, place)
        if self.rule:
            pen.across(x, y + self.height, self.width, 0.25)


def numbered(number: str, label: str, content: Stack, width: float, rule: bool) -> NumberedPiece:
    room = LABELS - 2 - (6 if number else 0)
    return NumberedPiece(line(number).text, wrap_few(label, room, 6, 9, True) if label else (), content, width, rule)


class BesidePiece(Piece):
    """Two stacks of equal width."""

    kind = "columns"

    def __init__(self, left: Stack, right: Stack, width: float):
        self.left, self.right, self.width = left, right, width
        self.height = max(left.height, right.height)

    @property
    def least(self) -> float:
        return max(self.left.least, self.right.least)

    def split(self, room: float, force: bool = False) -> "tuple[BesidePiece, BesidePiece] | None":
        halves = []
        for stack in (self.left, self.right):
            parts = (stack, Stack(())) if stack.height <= room else stack.split(room, force)
            if parts is None:
                return None
            halves.append(parts)
        (left, left_rest), (right, right_rest) = halves
        return BesidePiece(left, right, self.width), BesidePiece(left_rest, right_rest, self.width)

    def closer(self, share: float) -> "BesidePiece":
        return BesidePiece(self.left.closer(share), self.right.closer(share), self.width)

    def paint(self, pen: Pen, x: float, y: float, place: Place) -> None:
        self.left.paint(pen, x, y, place)
        self.right.paint(pen, x + (self.width + GAP) / 2, y, place)
