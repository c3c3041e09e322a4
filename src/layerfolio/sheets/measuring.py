"""About how wide and how high sheet texts will be, for sheets that fit a drawing to what stands below it."""

from layerfolio.drawing import font
from layerfolio.sheets.markup import parse
from layerfolio.sheets.table import Cell, Table, VerdictCell

SIZE = 9.0  # pt
PADDING = 2.6  # mm left and right of a cell together
HEAD = 5.6  # of a table with titles of one line


def width_of(text: str, size: float = SIZE) -> float:
    """Width of a line in mark-up, mm."""
    total = 0.0
    for run in parse(text):
        style = " ".join(name for name, on in (("bold", run.bold), ("oblique", run.oblique)) if on) or "regular"
        total += font.width(run.text, size * (0.72 if run.index else 1.0), style)
    return total


def line_count(text: str, room: float) -> int:
    """Lines that a text takes in `room` mm, broken between words."""
    count = 0
    for part in text.split("\n"):
        used = 0.0
        count += 1
        for word in part.split(" "):
            wide = width_of(word)
            if used and used + width_of("a b") - width_of("ab") + wide > room:
                count += 1
                used = 0.0
            used += wide + (width_of("a b") - width_of("ab") if used else 0.0)
    return count


def table_height(table: Table, width: float) -> float:
    """Height of a table whose titles take one line, mm."""
    left = width - sum(column.width for column in table.columns)
    open_ = sum(not column.width for column in table.columns)
    rooms = [(column.width or left / open_) - PADDING for column in table.columns]
    extra = 0.5 if table.extra is None else table.extra
    rows = (max(_lines(cell, room) for cell, room in zip(row.cells, rooms, strict=True)) for row in table.rows)
    return HEAD + sum(table.leading * lines + extra for lines in rows)


def _lines(cell: Cell, room: float) -> int:
    if isinstance(cell, VerdictCell):
        return 1 + (line_count(cell.text, room) if cell.text else 0)
    return line_count(cell, room)
