"""Where the columns of a table stand, and where their decimal points."""

from dataclasses import dataclass

from layerfolio.binding.cells import RowLines, Slot
from layerfolio.binding.rich import Line
from layerfolio.sheets.blocks import Table

PAD, LONG_PAD = 1.3, 2.0


@dataclass(frozen=True, slots=True)
class Layout:
    """What all parts of a broken table share. Places are counted from the table's left edge."""

    slots: tuple[Slot, ...]
    heads: tuple[tuple[tuple[Line, ...], tuple[Line, ...]], ...]
    points: tuple[float | None, ...]
    width: float
    indent: float
    leading: float
    extra: float
    upright: tuple[tuple[int, float], ...]  # column and place of each rule behind a column
    long_text: bool

    @property
    def head_height(self) -> float:
        count = max((len(name) + len(unit) for name, unit in self.heads), default=0)
        first, step = (6.7, 4.4) if self.long_text else (5.2, 3.95)
        return first + step * (count - 1) if count else 0.0


def slots_of(table: Table, width: float) -> tuple[Slot, ...]:
    """Columns as wide as they say; those that say nothing share what is left, else all stretch or shrink alike."""
    widths = [column.width for column in table.columns]
    fixed, open_ones = sum(widths), widths.count(0)
    left = width - fixed
    if open_ones and left < 16 * open_ones:
        scale = (width - 16 * open_ones) / fixed if fixed else 1.0
        widths, left = [one * scale for one in widths], 16 * open_ones
    elif not open_ones and fixed:
        widths = [one * width / fixed for one in widths]
    pad, slots, x = LONG_PAD if table.long_text else PAD, [], 0.0
    last = len(widths) - 1
    for number, (column, own) in enumerate(zip(table.columns, widths, strict=True)):
        own = own or left / open_ones
        slots.append(Slot(x, own, 0.0 if number == 0 else pad, 0.0 if number == last else pad, column.align))
        x += own
    return tuple(slots)


def point_of(number: int, slot: Slot, rows: tuple[RowLines, ...]) -> float | None:
    """Where the decimal points of a column stand: the widest decimal part ends at the right padding.

    None where the column is too narrow for that; then its figures end at the right padding, each for itself.
    """
    if slot.align != "decimal":
        return None
    cells = [row.cells[number] for row in rows if number < len(row.cells)]
    behind = [cell.lines[0].width - cell.point for cell in cells if cell.point is not None]
    before = [cell.point for cell in cells if cell.point is not None]
    if not behind:
        return None
    return slot.end - max(behind) if max(before) + max(behind) <= slot.width - slot.right else None
