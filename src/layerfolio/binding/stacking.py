"""How far pieces may go down one field: the gaps between them and the rules of breaking."""

from collections.abc import Sequence

from layerfolio.binding.pen import Pen
from layerfolio.binding.piece import Piece, Place

TINY = 1e-6
_AFTER_HEAD = {"table": 0.0, "calculation": 0.0, "figure": 0.0, "break": 0.0, "space": 0.0, "columns": 3.1}
_BEFORE = {"heading": 3.4, "table": 2.0, "result box": 2.7, "count": 2.0, "note box": 2.1, "free space": 2.1}
_PAIRS = {
    ("heading", "table"): 1.2, ("heading", "text"): 0.6, ("heading", "bullets"): 0.6, ("heading", "pairs"): 0.9,
    ("heading", "index"): 0.9, ("ruled heading", "table"): 0.0, ("pairs", "heading"): 4.6,
    ("pairs", "ruled heading"): 4.6,
    ("table", "text"): 2.0, ("table", "table"): 3.0, ("figure", "table"): 2.5, ("figure", "text"): 2.0,
    ("text", "figure"): 3.0,
    ("result box", "text"): 1.0, ("count", "text"): 0.9, ("numbered", "numbered"): 1.25, ("text", "bullets"): 0.6,
    ("numbered", "note box"): 2.2, ("heading", "columns"): 0.6, ("heading", "numbered"): 0.6,
}  # fmt: skip


def gap(above: Piece | None, below: Piece) -> float:
    """White space between two pieces."""
    if above is None or "space" in (above.kind, below.kind):
        return 0.0
    if above.kind == "head":
        return _AFTER_HEAD.get(below.kind, 2.4)
    found = _PAIRS.get((above.kind, below.kind))
    if found is not None:
        return found
    if above.kind == "ruled heading":
        return 1.9
    return _BEFORE.get(below.kind.removeprefix("ruled "), 1.2)


def height(pieces: Sequence[Piece]) -> float:
    """Of all pieces below each other."""
    total, above = 0.0, None
    for piece in pieces:
        total += gap(above, piece) + piece.height
        above = piece
    return total


def least(pieces: Sequence[Piece]) -> float:
    """The height of the smallest beginning that may stand at the foot of a page."""
    if not pieces:
        return 0.0
    first = pieces[0]
    if first.keep_with_next and len(pieces) > 1:
        return first.height + gap(first, pieces[1]) + least(pieces[1:])
    return first.least


Placed = list[tuple[Piece, float]]


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
        bound = _bound(piece, rest)
        if start + piece.height + bound <= room + TINY or piece.tighten(room - start - bound):
            placed.append((piece, start))
            y, above = start + piece.height, piece
            continue
        parts = piece.split_between(room - start) if whole else _split(piece, rest, room - start, fresh)
        if parts:
            return [*placed, (parts[0], start)], [parts[1], *rest]
        if fresh:
            if start + piece.height > room:
                piece.squeeze(room - start)
            return [*placed, (piece, start)], rest
        return _without_lost_headings(placed, [piece, *rest])
    return placed, []


def _bound(piece: Piece, rest: Sequence[Piece]) -> float:
    """What must stand on the same page below a piece."""
    if not rest:
        return 0.0
    if piece.keep_with_next:
        return gap(piece, rest[0]) + least(rest)
    if rest[0].keep_with_previous:
        return gap(piece, rest[0]) + rest[0].height + _bound(rest[0], rest[1:])
    if rest[0].kind == "space" and len(rest) > 1 and rest[1].keep_with_previous:
        return rest[0].height + rest[1].height + _bound(rest[1], rest[2:])
    return 0.0


def _split(piece: Piece, rest: Sequence[Piece], room: float, force: bool) -> tuple[Piece, Piece] | None:
    """The piece in two; where only what is bound to it does not fit, a part of the piece goes along with that."""
    if piece.height <= room:
        return piece.split(piece.height - 1.0) if _bound(piece, rest) and not piece.keep_with_next else None
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

    def paint(self, pen: Pen, x: float, y: float, place: Place) -> None:
        above = None
        for piece in self.pieces:
            y += gap(above, piece)
            piece.paint(pen, x, y, place)
            y += piece.height
            above = piece
