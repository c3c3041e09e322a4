"""From blocks to pieces of a given width."""

from collections.abc import Callable, Sequence

from layerfolio.binding import groups
from layerfolio.binding.boxes import BandPiece, CountPiece, ResultPiece
from layerfolio.binding.calc_steps import set_step
from layerfolio.binding.calculation import CalculationPiece
from layerfolio.binding.framed import PAD, framed
from layerfolio.binding.heads import CoverHead, HeadPiece
from layerfolio.binding.index import IndexPiece
from layerfolio.binding.lists import bullets, pairs
from layerfolio.binding.piece import Break, Gap, Piece
from layerfolio.binding.spaces import FigurePiece, FreePiece, NotePiece
from layerfolio.binding.stacking import Stack
from layerfolio.binding.tables import table_piece
from layerfolio.binding.texts import HeadingPiece, paragraph
from layerfolio.sheets import blocks as b

Entries = tuple[tuple[int, str, str], ...]


def compose(blocks: Sequence[b.Block], width: float, entries: Entries) -> list[Piece]:
    """The pieces of a sheet or of a column; `entries` are (place in the package, number, title) of all sheets."""
    pieces: list[Piece] = []
    rest = list(blocks)
    while rest:
        block = rest.pop(0)
        if isinstance(block, b.Calculation):
            band = BandPiece(rest.pop(0), width) if rest and isinstance(rest[0], b.Band) else None
            steps = tuple(set_step(step, width) for step in block.steps)
            pieces.append(CalculationPiece(block, steps, width, band))
        elif isinstance(block, b.NoteBox) and pieces and pieces[-1].kind == "numbered":
            pieces.append(NotePiece(block, width, groups.LABELS))  # under the texts of the items
        else:
            pieces.append(_piece(block, width, entries))
    return pieces


def _piece(block: b.Block, width: float, entries: Entries) -> Piece:
    make = _SIMPLE.get(type(block))
    if make:
        return make(block, width)
    if isinstance(block, b.Index):
        return IndexPiece(entries, width)
    if isinstance(block, b.Numbered):
        content = Stack(compose(block.blocks, width - groups.LABELS, entries))
        return groups.numbered(block.number, block.label, content, width, block.rule)
    if isinstance(block, b.Beside):
        column = (width - groups.GAP) / 2
        left, right = (Stack(compose(side, column, entries)) for side in (block.left, block.right))
        return groups.BesidePiece(left, right, width)
    if isinstance(block, b.Framed):
        return framed(block.title, Stack(compose(block.blocks, width - 2 * PAD, entries)), width)
    raise TypeError(f"no piece for {type(block).__name__}")


_SIMPLE: dict[type, Callable[..., Piece]] = {
    b.Head: lambda block, width: CoverHead(block, width) if block.large else HeadPiece(block, width),
    b.Heading: HeadingPiece,
    b.Paragraph: paragraph,
    b.Bullets: bullets,
    b.Pairs: pairs,
    b.Table: table_piece,
    b.Figure: FigurePiece,
    b.Band: BandPiece,
    b.ResultBox: ResultPiece,
    b.VerdictCount: CountPiece,
    b.NoteBox: NotePiece,
    b.FreeSpace: FreePiece,
    b.Space: lambda block, width: Gap(block.height),
    b.FieldBreak: lambda block, width: Break(),
}
