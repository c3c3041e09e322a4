"""The structural basis: figures of the place, which path they open, what a panel on the inner face changes, where to stop."""

from layerfolio.codes.reminders import on_the_room_side, serving
from layerfolio.sheets.blocks import Head, Sheet
from layerfolio.sheets.desk import STRUCTURE, Desk, code_words
from layerfolio.sheets.inside_panel import inside_table, sheets_with_bracing
from layerfolio.sheets.markup import plain
from layerfolio.sheets.site_table import site_stated, site_table
from layerfolio.sheets.source_book import NOT_REREAD
from layerfolio.sheets.structure_parts import caution, findings_on, stop, verdicts
from layerfolio.sheets.templates import Marked


def structural_basis(desk: Desk) -> Sheet | None:
    """Sheet ST1; None where the project states no loads of the place, no line and no layer that braces."""
    if not has_basis(desk):
        return None
    inside = panels_inside(desk)
    blocks = desk.templates.blocks(
        "structural-basis",
        head=Head("", "Structural basis", plain(code_words(desk))),
        caution=caution(),
        site=site_table(desk),
        verdicts=verdicts(desk, findings_on(desk, STRUCTURE)) or "",
        bracing=Marked(sheets_with_bracing(desk)),
        inside=[Marked(words) for words in inside],
        changes=(inside_table(desk) if inside else None) or "",
        stop=stop(desk),
        dagger=NOT_REREAD,
    )
    return Sheet(STRUCTURE, "Structural basis", "—", blocks)


def has_basis(desk: Desk) -> bool:
    """Whether the project states anything that the sheet is about."""
    braced = any(serving(one, "bracing") for one in desk.dossier.assemblies.values())
    return site_stated(desk) or bool(desk.dossier.wall_lines) or braced


def panels_inside(desk: Desk) -> list[str]:
    """The bracing layers that lie inside all insulation, wall by wall, in mark-up."""
    found = []
    for name, one in desk.dossier.assemblies.items():
        layers = [layer for layer in serving(one, "bracing") if one.kind == "wall" and on_the_room_side(layer, one)]
        found += [f"**{plain(name)}**, layer {layer.number}: {plain(layer.title)}" for layer in layers]
    return found
