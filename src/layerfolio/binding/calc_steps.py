"""One step of a calculation sheet: number, title, formula field, source."""

from dataclasses import dataclass

from layerfolio.binding.equations import FIELD_LEFT, LEADING, RISE, EquationPiece, equals_at
from layerfolio.binding.pen import Pen
from layerfolio.binding.piece import Piece, Place
from layerfolio.binding.rich import Line, wrap
from layerfolio.binding.tables import table_piece
from layerfolio.binding.texts import TextPiece, paragraph
from layerfolio.sheets.blocks import CalcStep, Equation, Paragraph, Table

SOURCE = 40.0  # width of the source column
RULE, TOTAL = 42.5, 44.0  # upright rule and right edge of the totals, from the field's right edge
_PARTS = {  # white space between two parts of a step
    ("text", "table"): 1.0, ("equation", "table"): 1.0, ("table", "equation"): 1.9, ("table", "text"): 1.5,
    ("table", "table"): 2.0, ("equation", "text"): 1.0,
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class StepLines:
    """One step set; `parts` with their gaps above; `again` is the title where the step goes on."""

    number: str
    title: tuple[Line, ...]
    source: tuple[Line, ...]
    parts: tuple[tuple[float, Piece], ...]
    again: tuple[Line, ...] = ()

    @property
    def body(self) -> float:
        return sum(gap + part.height for gap, part in self.parts)

    @property
    def height(self) -> float:
        return max(len(self.title) * LEADING + self.body, len(self.source) * LEADING)


def set_step(step: CalcStep, width: float) -> StepLines:
    """Break a step into lines and parts; its equations share one place of the equals sign."""
    right = width - TOTAL
    room = right - FIELD_LEFT
    equals = equals_at([one for one in step.body if isinstance(one, Equation)], right)
    parts, above = [], "title"
    for block in step.body:
        piece: Piece
        if isinstance(block, Equation):
            piece = EquationPiece(block, equals, right)
        elif isinstance(block, Table):
            piece = table_piece(block, room)
        else:
            piece = paragraph(block, room) if isinstance(block, Paragraph) else TextPiece(())
        gap = {"table": 1.0}.get(piece.kind, 0.5) if above == "title" else _PARTS.get((above, piece.kind), 0.0)
        parts.append((gap, piece))
        above = piece.kind
    source = wrap(step.source, SOURCE, oblique=True) if step.source else ()
    title, again = (wrap(text, room, bold=True) for text in (step.title, f"{step.title} (continued)"))
    return StepLines(step.number, title, source, tuple(parts), again)


def paint_step(pen: Pen, step: StepLines, x: float, y: float, width: float, place: Place) -> None:
    pen.words(step.number, x, y + RISE, 9, "bold")
    pen.set_all(step.title, x + FIELD_LEFT, y + RISE, LEADING)
    pen.set_all(step.source, x + width - SOURCE, y + RISE, LEADING)
    y += len(step.title) * LEADING
    for gap, part in step.parts:
        y += gap
        part.paint(pen, x if part.kind == "equation" else x + FIELD_LEFT, y, place)
        y += part.height
