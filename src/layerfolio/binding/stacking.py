"""How far pieces may go down one field: the rules of breaking."""

from collections.abc import Sequence

from layerfolio.binding.company import bound, company, gap, height, least, rows_along
from layerfolio.binding.pen import Pen
from layerfolio.binding.piece import Piece, Place
from layerfolio.binding.tables import TablePiece

TINY = 1e-6
Placed = list[tuple[Piece, float]]
Halves = tuple[Piece, Piece]


def take(
    pieces: Sequence[Piece], room: float, *, wide: bool = False, force: bool = True, whole: bool = False
) -> tuple[Placed, list[Piece]]:
    """As many pieces as go into `room`, each with its place below the top, and the rest.

    `force`: the room is an empty field, so something must go in; `whole`: tables and texts are not split.
    """
    placed: Placed = []
    y, above = 0.0, None
    for number, piece in enumerate(pieces):
        if piece.kind == "break":
            if wide and placed:
                return placed, list(pieces[number + 1 :])
            continue
        if piece.kind == "space" and all(one.kind == "head" for one, _ in placed):
            continue
        if piece.kind == "head" and any(one.kind != "head" for one, _ in placed):
            return placed, list(pieces[number:])
        rest = list(pieces[number + 1 :])
        piece.under_head = above is not None and above.kind == "head"
        start = y + gap(above, piece)
        fresh = force and all(one.kind == "head" or one.keep_with_next for one, _ in placed)
        fits, parts = _fitted(piece, rest, room - start, fresh, whole)
        if parts:
            return [*placed, (parts[0], start)], [parts[1], *rest]
        if not fits and not fresh:
            return _without_lost_headings(placed, [piece, *rest])
        placed.append((piece, start))
        if not fits:
            if start + piece.height > room:
                piece.squeeze(room - start)
            return placed, rest
        y, above = start + piece.height, piece
    return placed, []


def _fitted(piece: Piece, rest: Sequence[Piece], room: float, fresh: bool, whole: bool) -> tuple[bool, Halves | None]:
    """Whether the piece stands here with what is bound to it; its two parts where it should break instead."""
    if isinstance(piece, TablePiece):
        piece.along = rows_along(piece, rest)
    below = bound(piece, rest)
    if piece.height + below <= room + TINY or piece.tighten(room - below):
        return True, None if whole else _beside(piece, rest, room)
    return False, piece.split_between(room) if whole else _split(piece, rest, room, fresh)


def _beside(piece: Piece, rest: Sequence[Piece], room: float) -> Halves | None:
    """A piece that fits, in two, where what is left behind it would stand alone on the next page."""
    more = company(piece, rest)
    if not more or piece.height + more <= room + TINY or piece.tighten(room - more):
        return None
    return piece.split(piece.height - 1.0)


def _split(piece: Piece, rest: Sequence[Piece], room: float, force: bool) -> Halves | None:
    """The piece in two; where only what is bound to it does not fit, a part of the piece goes along with that."""
    if piece.height <= room:
        return piece.split(piece.height - 1.0) if bound(piece, rest) and not piece.keep_with_next else None
    return piece.split(room) or (piece.split(room, True) if force else None)


def _without_lost_headings(placed: Placed, rest: list[Piece]) -> tuple[Placed, list[Piece]]:
    """A heading at the foot goes to the next page with what it announces."""
    while placed and placed[-1][0].keep_with_next:
        rest.insert(0, placed.pop()[0])
    return placed, rest


class Stack(Piece):
    """Pieces below each other, as one piece."""

    kind = "stack"

    def __init__(self, pieces: Sequence[Piece]):
        self.pieces = list(pieces)

    @property
    def height(self) -> float:  # type: ignore[override]
        return height(self.pieces)

    @property
    def least(self) -> float:
        return least(self.pieces)

    def split(self, room: float, force: bool = False) -> "tuple[Stack, Stack] | None":
        placed, rest = take(self.pieces, room, force=force)
        if not placed or not rest:
            return None
        return Stack([one for one, _ in placed]), Stack(rest)

    def closer(self, share: float) -> "Stack":
        return Stack([piece.closer(share) for piece in self.pieces])

    def paint(self, pen: Pen, x: float, y: float, place: Place) -> None:
        above = None
        for piece in self.pieces:
            y += gap(above, piece)
            piece.paint(pen, x, y, place)
            y += piece.height
            above = piece
