"""Sheets laid out into pages before anything is painted, so that counts and page numbers are known."""

from collections.abc import Sequence
from copy import copy
from dataclasses import dataclass, field

from layerfolio.binding.compose import Entries, compose
from layerfolio.binding.formats import Format
from layerfolio.binding.heads import HeadPiece, RulePiece
from layerfolio.binding.piece import Piece
from layerfolio.binding.stacking import Placed, take
from layerfolio.sheets.blocks import Head, Sheet

Fields = list[Placed]


@dataclass(slots=True)
class Page:
    """One page; `sheet` is the sheet's place in the package, `part` counts its pages from 0."""

    sheet: int
    part: int
    fields: Fields = field(default_factory=list)

    @property
    def has_figure(self) -> bool:
        return any(piece.kind == "figure" for placed in self.fields for piece, _ in placed)


def lay_out(sheets: Sequence[Sheet], fmt: Format) -> list[Page]:
    """Every page of the package in order."""
    entries = index_entries(sheets)
    return [page for number, sheet in enumerate(sheets) for page in _pages(number, sheet, fmt, entries)]


def index_entries(sheets: Sequence[Sheet]) -> Entries:
    """What the index lists: every sheet, but neighbours of one series in one line."""
    found: list[tuple[int, str, str]] = []
    for number, sheet in enumerate(sheets):
        before = sheets[number - 1] if number else None
        if sheet.series and before and before.series == sheet.series:
            first = sheets[found[-1][0]].number
            link = ", " if number - found[-1][0] == 1 else " to "
            found[-1] = (found[-1][0], f"{first}{link}{sheet.number}", sheet.series)
        else:
            found.append((number, sheet.number, sheet.title))
    return tuple(found)


def _pages(number: int, sheet: Sheet, fmt: Format, entries: Entries) -> list[Page]:
    pieces = compose(sheet.blocks, fmt.field_width, entries)
    fields = _fill(pieces, sheet, fmt)
    if len(fields) > fmt.fields:
        fields = _closer(pieces, sheet, fmt, fields)
    if fmt.fields == 2 and len(fields) <= 2 and not _breaks_itself(pieces):
        fields = _balanced(pieces, sheet, fmt) or fields
    for placed in fields:
        _stretch(placed, fmt.room)
    step = fmt.fields
    starts = range(0, max(len(fields), 1), step)
    return [Page(number, part, fields[start : start + step]) for part, start in enumerate(starts)]


def _closer(pieces: Sequence[Piece], sheet: Sheet, fmt: Format, fields: Fields) -> Fields:
    """With as little less air as saves a page; unchanged where none can be saved."""
    for share in (0.5, 1.0):
        tight = _fill([piece.closer(share) for piece in pieces], sheet, fmt)
        if -(-len(tight) // fmt.fields) < -(-len(fields) // fmt.fields):
            return tight
    return fields


def _breaks_itself(pieces: Sequence[Piece]) -> bool:
    """Whether the sheet says by itself what stands in which field."""
    return any(piece.kind == "break" for piece in pieces) or sum(piece.kind == "head" for piece in pieces) > 1


def _fill(
    pieces: Sequence[Piece], sheet: Sheet, fmt: Format, *, first_room: float | None = None, whole: bool = False
) -> Fields:
    """The fields of one sheet in order. `first_room` lowers the foot of the first field."""
    rest, fields = [copy(piece) for piece in pieces], []
    head = next((block for block in sheet.blocks if isinstance(block, Head)), None)
    wide = fmt.fields == 2
    while rest or not fields:
        starts = [] if not fields else _continued(rest, head, sheet, fmt, new_page=len(fields) % fmt.fields == 0)
        room = fmt.room if fields or first_room is None else first_room
        placed, rest = take([*starts, *rest], room, wide=wide, whole=whole, force=room == fmt.room)
        fields.append(placed)
    return fields


def _continued(rest: list[Piece], head: Head | None, sheet: Sheet, fmt: Format, new_page: bool) -> list[Piece]:
    """What stands above the content where a sheet goes on: the head again, or its rule alone in the right field."""
    if rest and rest[0].kind == "head":
        return []
    if not new_page:
        return [RulePiece(fmt.field_width)] if head and not head.large else []
    if head is None:
        return []
    again = Head("", sheet.title, head.phrase) if head.large else head
    return [HeadPiece(again, fmt.field_width, continued=True)]


def _balanced(pieces: Sequence[Piece], sheet: Sheet, fmt: Format) -> Fields | None:
    """Both fields of one page about equally full, tables whole if that can be; None where one page is too little."""
    for whole in (True, False):
        tried = []
        for step in range(4, 25):
            fields = _fill(pieces, sheet, fmt, first_room=fmt.room * step / 24, whole=whole)
            if len(fields) <= 2 and all(map(_good, fields, [fmt.room] * 2)):
                tried.append((max(map(_foot, fields)), step, fields))
        if tried:
            return min(tried, key=lambda one: one[:2])[2]
    return None


def _good(placed: Placed, room: float) -> bool:
    """Nothing stands out below, nothing was reduced, and more than a head is there."""
    squeezed = any(piece.squeezed for piece, _ in placed)
    return _foot(placed) <= room + 1e-6 and not squeezed and any(piece.kind != "head" for piece, _ in placed)


def _foot(placed: Placed) -> float:
    return max((y + piece.height for piece, y in placed), default=0.0)


def _stretch(placed: Placed, room: float) -> None:
    """Height that is left goes to the last piece that can take it; what stands below moves down."""
    left = room - _foot(placed)
    for number in range(len(placed) - 1, -1, -1):
        piece = placed[number][0]
        if piece.stretch and left > 0:
            more = min(left, piece.stretch)
            piece.grow(more)
            placed[number + 1 :] = [(below, y + more) for below, y in placed[number + 1 :]]
            return
