"""The schedule of junctions: for each control what passes from which layer to which, joined by what."""

from layerfolio.assembly.junction_types import Junction, Link
from layerfolio.drawing.control import NAMES
from layerfolio.sheets.blocks import Column, Row, Table
from layerfolio.sheets.desk import Desk
from layerfolio.sheets.markup import plain

NONE = "–"
UNNAMED = Row((NONE, NONE, NONE, "no layer of these parts is named as a control"))


def schedule(desk: Desk, junctions: tuple[Junction, ...]) -> Table:
    """A head row for each junction with its sheet, below it a row for each control."""
    columns = (
        Column("Control", width=26),
        Column("from", width=46),
        Column("to", width=46),
        Column("joined by"),
    )
    rows: list[Row] = []
    for one in junctions:
        rows.append(Row((_head(one),), head=True))
        rows += [_row(desk, link) for link in one.links] or [UNNAMED]
    return Table(columns, tuple(rows), long_text=True, extra=1.0)


def _head(one: Junction) -> str:
    where = f"sheet D{one.number}" if not one.cannot else f"not drawn: {one.cannot}"
    return f"**{one.number} {plain(one.title)}**: {plain(where)}"


def _row(desk: Desk, link: Link) -> Row:
    name = f"**{link.letter}** {NAMES[link.letter].removesuffix(' control')}"
    how = f"**does not pass**: {plain(link.broken)}" if link.broken else plain(link.words or link.by or NONE)
    return Row((name, _layer(desk, link.start), _layer(desk, link.end), how))


def _layer(desk: Desk, named: tuple[str, str] | None) -> str:
    """`W1.6 Panel-15`: assembly, number in its layer table, name."""
    if named is None:
        return NONE
    assembly, layer = named
    found = desk.dossier.assemblies.get(assembly)
    if found is None:
        return plain(layer if assembly == layer else f"{layer} of {assembly}")
    one = next((each for each in found.layers if each.name == layer), None)
    return plain(f"{assembly}.{one.number} {one.title}" if one else f"{layer} of {assembly}")
