"""White space between pieces, and what must or should stand on one page with what follows it."""

from collections.abc import Sequence

from layerfolio.binding.piece import Piece
from layerfolio.binding.tables import TablePiece
from layerfolio.binding.texts import TextPiece

SMALL = 5  # rows of a table that is too little for a page
FEW_LINES = 3  # of a text that is too little for a page
_TABLES = {"table": 0, "bullets": 0, "result box": 0, "calculation": 1}  # small ones each kind takes along, and texts
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


def bound(piece: Piece, rest: Sequence[Piece]) -> float:
    """What must stand on the same page below a piece."""
    if piece.keep_with_next and rest:
        return gap(piece, rest[0]) + least(rest)
    space, below = _below(rest)
    if below is None or not below.stays_with(piece):
        return 0.0
    between = space.height if space else gap(piece, below)
    behind = rest[2 if space else 1 :]
    return between + below.height + (bound(below, behind) or company(below, behind))


def company(piece: Piece, rest: Sequence[Piece]) -> float:
    """The height of all that is left behind a piece where that is too little to stand alone, else 0."""
    left = [one for one in rest if one.kind != "space"]
    tables = sum(one.kind == "table" for one in left)
    if not left or tables > _TABLES.get(piece.kind, -1) or not all(map(_little, left)):
        return 0.0
    return height([piece, *rest]) - piece.height


def rows_along(piece: Piece, rest: Sequence[Piece]) -> int:
    """How many rows of a table go along with what stands below it."""
    below = _below(rest)[1]
    if below is not None and below.kind == "result box":
        return 3
    return 1 if company(piece, rest) and isinstance(piece, TablePiece) and piece.rows[-1].count > 1 else 2


def _below(rest: Sequence[Piece]) -> tuple[Piece | None, Piece | None]:
    """The white space at the beginning, if there is one, and the piece that follows it."""
    space = rest[0] if rest and rest[0].kind == "space" else None
    return space, next(iter(rest[1 if space else 0 :]), None)


def _little(piece: Piece) -> bool:
    if isinstance(piece, TablePiece):
        return len(piece.rows) <= SMALL
    return "heading" in piece.kind or (isinstance(piece, TextPiece) and len(piece.lines) <= FEW_LINES)
