"""The second view of a wall: cut from top to bottom, where the sheet goes on."""

from layerfolio.drawing.marks import Drawing
from layerfolio.drawing.section import WALLS, section
from layerfolio.sheets.blocks import Block, Figure, Heading, Paragraph
from layerfolio.sheets.desk import Desk
from layerfolio.sheets.formats import FIELDS
from layerfolio.sheets.markup import plain

TALLEST = 170.0  # mm that the drawing may take


def upright_section(desk: Desk, name: str, first: Drawing) -> tuple[tuple[Block, ...], tuple[str, ...]]:
    """Heading, drawing and what it says beside the `first` one, with its hatch families; nothing for roofs and floors."""
    one, page = desk.dossier.assemblies[name], desk.dossier.project.project.page
    if one.kind not in WALLS:
        return (), ()
    drawing = section(one, units=desk.system, page=page, width=FIELDS[page], view="vertical", room=TALLEST, light=desk.is_light)
    more = [note.rstrip(".") for note in drawing.notes if note not in first.notes]
    blocks: list[Block] = [Heading(f"{plain(name)} cut from top to bottom"), Figure(drawing)]
    if more:
        blocks.append(Paragraph(f"Drawing: {plain('; '.join(more))}."))
    return tuple(blocks), drawing.families
