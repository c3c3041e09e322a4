"""Tables: columns, rows, cells. Texts are in the small mark-up of sheets.markup; lengths are paper millimetres."""

from dataclasses import dataclass
from typing import Literal

from layerfolio.codes.findings import Verdict


@dataclass(frozen=True, slots=True)
class Column:
    """`width` 0: shares what is left. `align` decimal lines figures up on the point."""

    title: str
    unit: str = ""
    width: float = 0
    align: Literal["left", "right", "centre", "decimal"] = "left"


@dataclass(frozen=True, slots=True)
class VerdictCell:
    """A verdict's shape and word, and under it in regular what follows from it."""

    verdict: Verdict
    text: str = ""


Cell = str | VerdictCell


@dataclass(frozen=True, slots=True)
class Row:
    """Cells in the order of the columns; a newline in a cell begins a new line. `after` is a last line of the row, set
    from column `after_from` to the right edge (what is missing in an evidence register); a text has no verdict before it."""

    cells: tuple[Cell, ...]
    total: bool = False  # rule above, bold
    keep_with_next: bool = False
    after: Cell | None = None
    after_from: int = 1
    after_beside: int | None = None  # it stands under the cells from this column on where the row is lower so
    head: bool = False  # a bold cell, perhaps a note behind it, over the whole width: begins a part, stays with its first row


@dataclass(frozen=True, slots=True)
class Table:
    columns: tuple[Column, ...]
    rows: tuple[Row, ...]
    top_rule: bool = True  # False: directly under a Head, whose rule serves
    upright_rules: tuple[int, ...] = ()  # after which columns (0-based) an upright rule stands
    long_text: bool = False  # the looser padding of compliance records
    indent: float = 0
    leading: float = 4.35  # between the lines of a cell; 4.5 where `long_text` and no `extra`
    extra: float | None = None  # added to each row; None: 0.5, or 3.0 where `long_text`
