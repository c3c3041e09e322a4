"""What changes where the panel that braces a wall stands on its inner face, item by item."""

from layerfolio.catalogue.structure_lists import InsideItem, inside_panel
from layerfolio.codes.wording import sentence
from layerfolio.sheets.blocks import Column, Row, Table
from layerfolio.sheets.desk import BRACING, FASTENING, LOADS, Desk
from layerfolio.sheets.markup import plain
from layerfolio.sheets.source_book import NOT_REREAD


def inside_table(desk: Desk) -> Table | None:
    """Item, the set's rule, what takes its place, what to look at; None where the set says nothing of it."""
    items = inside_panel(desk.dossier.project.code.set)
    if not items:
        return None
    columns = (
        Column("What changes", "", 37), Column("What the set says", "clause", 54), Column("What takes its place", "", 0),
        Column("Look at", "", 36),
    )  # fmt: skip
    return Table(columns, tuple(map(_item, items)))


def _item(one: InsideItem) -> Row:
    """A rule that was not re-read, or is a reading of ours, carries the dagger."""
    doubt = f" {NOT_REREAD}" if one.origin.mark in ("memory", "derived") else ""
    rule = f"{plain(sentence(one.rule))}{doubt}\n{plain(one.clause)}"
    return Row((f"**{plain(one.item)}**", rule, plain(sentence(one.instead)), plain(sentence(one.look))))


def sheets_with_bracing(desk: Desk) -> str:
    """Where the rest stands."""
    parts = [(f"lines of bracing: sheet {BRACING}", desk.dossier.wall_lines),
             (f"fasteners and cladding: sheet {FASTENING}", desk.dossier.wall_lines or desk.dossier.attachments),
             (f"loads: sheet {LOADS}", desk.dossier.dead_loads)]  # fmt: skip
    shown = [words for words, there in parts if there]
    text = "; ".join(shown)
    return text[:1].upper() + text[1:] + "." if text else ""
