"""A package with the numbers of the open sheet-identification convention: sheets, and all references to them."""

from collections.abc import Iterator
from dataclasses import fields, is_dataclass, replace
from typing import Any

from layerfolio.drawing.lettering import wide
from layerfolio.drawing.marks import Circle, Drawing, Group, Line, Mark, Text
from layerfolio.drawing.tags import long_circle
from layerfolio.sheets.blocks import Head, Package, Sheet, Table
from layerfolio.sheets.numbering import by_discipline
from layerfolio.sheets.references import DETAIL, References

SHEET_COLUMNS = ("Sheet", "Sheets", "Used on", "used on")
BESIDE, CHORD = 0.6, 1.36  # mm between a number and its bubble's outline; what the rounding of the outline takes there


def renumbered(package: Package, project: Any) -> Package:
    """The same sheets under other numbers; `project` is the validated project file, whose own words stay as they are."""
    numbers = by_discipline([one.number for one in package.sheets])
    references = References(numbers, _kept(project, numbers))
    return replace(package, sheets=tuple(_sheet(one, references) for one in package.sheets))


def _sheet(sheet: Sheet, references: References) -> Sheet:
    blocks = tuple(_walked(one, references) for one in sheet.blocks)
    first = blocks[0] if blocks else None
    if isinstance(first, Head) and first.tag == sheet.number and DETAIL.fullmatch(sheet.number):
        blocks = (replace(first, tag=references.numbers[sheet.number]), *blocks[1:])
    return replace(sheet, number=references.numbers[sheet.number], title=references.rewritten(sheet.title), blocks=blocks)


def _walked(one: Any, references: References) -> Any:
    match one:
        case str():
            return references.rewritten(one)
        case Drawing():
            return _drawing(one, references)
        case Table():
            return _table(one, references)
        case tuple():
            return tuple(_walked(each, references) for each in one)
        case _ if is_dataclass(one) and not isinstance(one, type):
            changed = {each.name: _walked(getattr(one, each.name), references) for each in fields(one) if each.init}
            return replace(one, **changed)
    return one


def _table(table: Table, references: References) -> Table:
    """Cells under a head that says so are nothing but numbers of sheets."""
    lists = {n for n, column in enumerate(table.columns) if column.title in SHEET_COLUMNS}
    rows = []
    for row in table.rows:
        cells = tuple(
            references.listed(cell) if n in lists and isinstance(cell, str) and len(row.cells) == len(table.columns)
            else _walked(cell, references)
            for n, cell in enumerate(row.cells)
        )  # fmt: skip
        rows.append(replace(row, cells=cells, after=_walked(row.after, references)))
    columns = tuple(_walked(one, references) for one in table.columns)
    return replace(table, columns=columns, rows=tuple(rows))


def _drawing(drawing: Drawing, references: References) -> Drawing:
    marks = tuple(_marks(drawing.marks, references))
    return replace(drawing, marks=marks, notes=tuple(map(references.rewritten, drawing.notes)))


def _marks(marks: tuple[Mark, ...], references: References) -> Iterator[Mark]:
    wider = 0.0
    for number, mark in enumerate(marks):
        match mark:
            case Group():
                yield replace(mark, marks=tuple(_marks(mark.marks, references)))
            case Text() if mark.role == "bubble sheet":
                yield replace(mark, text=references.numbers.get(mark.text, mark.text))
            case Text():
                yield replace(mark, text=references.rewritten(mark.text)) if any(c.isdigit() for c in mark.text) else mark
            case Circle() if mark.role == "bubble":
                wider = _half(marks[number:], references)
                yield _long(mark, wider)
            case Line() if mark.role == "bubble" and wider:
                (x0, y), (x1, _) = mark.points
                middle = (x0 + x1) / 2
                half = max(wider, (x1 - x0) / 2)
                yield replace(mark, points=((middle - half, y), (middle + half, y)))
            case _:
                yield mark


def _half(following: tuple[Mark, ...], references: References) -> float:
    """Half the width of a bubble that its number asks for, where the number stands."""
    text = next((one for one in following if isinstance(one, Text) and one.role == "bubble sheet"), None)
    if text is None:
        return 0.0
    return CHORD + wide(references.numbers.get(text.text, text.text)) / 2 + BESIDE


def _long(circle: Circle, half: float) -> Mark:
    """A bubble as wide as its number: a box with round ends."""
    return long_circle(*circle.centre, half, circle.radius, "bubble") if half > circle.radius else circle


def _kept(project: Any, numbers: dict[str, str]) -> tuple[str, ...]:
    """Texts of the project file in which something looks like the number of a sheet."""
    plain = References(numbers)
    return tuple(dict.fromkeys(one for one in _texts(project) if one not in numbers and plain.rewritten(one) != one))


def _texts(one: Any) -> Iterator[str]:
    match one:
        case str():
            yield one
        case dict():
            for each in one.values():
                yield from _texts(each)
        case list() | tuple():
            for each in one:
                yield from _texts(each)
        case _ if hasattr(one, "__dict__") and type(one).__module__.startswith("layerfolio.reading"):
            yield from _texts(vars(one))

