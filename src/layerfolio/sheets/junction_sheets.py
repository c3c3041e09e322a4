"""The building section with the schedule of its junctions, and a sheet for each junction."""

from math import ceil

from layerfolio.assembly.junction_types import Junction
from layerfolio.drawing import font
from layerfolio.drawing.building.drawn import building_drawn
from layerfolio.drawing.detail.all import Drawn, junction_drawn
from layerfolio.drawing.detail.model import Detail
from layerfolio.sheets.blocks import Beside, Block, FieldBreak, Figure, Head, Heading, Paragraph, Sheet
from layerfolio.sheets.building_facts import building_facts
from layerfolio.sheets.desk import BUILDING_SECTION, Desk
from layerfolio.sheets.formats import FIELDS, ROOM, WIDE
from layerfolio.sheets.junction_schedule import schedule
from layerfolio.sheets.markup import plain

SERIES = "Details of the junctions"
LINE, BETWEEN = 4.5, 3.0
REMARKS = 10.0  # of that the remarks below the building section
TEXT_SIZE, FILLED, GUTTER = 9.0, 0.94, 4.0  # pt; share of a line that words fill at least; mm between two columns


def junction_sheets(desk: Desk) -> list[Sheet]:
    """D0, then D1, D2 ... in the order of the schedule; none for a project whose assemblies do not meet."""
    junctions = desk.dossier.junctions
    if not junctions:
        return []
    shown = [one for one in junctions if not one.cannot]
    return [_overview(desk, junctions), *(_sheet(desk, one) for one in shown)]


def _overview(desk: Desk, junctions: tuple[Junction, ...]) -> Sheet:
    """The section on a page of its own, the schedule after it."""
    page = desk.dossier.project.project.page
    facts = building_facts(desk.dossier.project, desk.dossier.assemblies, junctions)
    drawn = building_drawn(
        junctions, desk.dossier.assemblies, facts.storeys, facts.span, desk.system, width=FIELDS[page], room=ROOM[page] - REMARKS,
        light=desk.is_light,
    )
    phrase = "water, air, vapour and heat followed from ground to roof"
    blocks: list[Block] = [Head(BUILDING_SECTION, "Section through the building", phrase)]
    if drawn:
        blocks += [Figure(drawn.drawing), *_remarks(drawn, facts.remarks)]
    blocks += [Heading("Junctions: what passes, through which layers"), schedule(desk, junctions), *_unstated(junctions)]
    scale = drawn.drawing.scale_text if drawn else "—"
    return Sheet(BUILDING_SECTION, "Building section", scale, tuple(blocks), drawn.drawing.families if drawn else ())


def _unstated(junctions: tuple[Junction, ...]) -> list[Block]:
    derived = [str(one.number) for one in junctions if not one.stated]
    if not derived:
        return []
    words = "Not in the file's list of joins, derived from which assemblies there are: junctions " + ", ".join(derived) + "."
    return [Paragraph(words)]


def _sheet(desk: Desk, junction: Junction) -> Sheet:
    """Drawing, order of work beside what to look at, what the drawing adds to the project file."""
    page = desk.dossier.project.project.page
    width = FIELDS[page]

    def room(detail: Detail) -> float:
        return ROOM[page] - (_texts(detail, width) if page not in WIDE else 0.0)

    drawn = junction_drawn(junction, desk.dossier.assemblies, desk.system, width=width, room=room, light=desk.is_light)
    number = f"D{junction.number}"
    blocks = (
        Head(number, plain(junction.title), drawn.detail.kind),
        Figure(drawn.drawing),
        FieldBreak(),
        Beside(_column("Order of work.", drawn.detail.order), _column("Look at.", drawn.detail.look)),
        *_remarks(drawn),
    )
    title = f"{junction.kind.capitalize()} {', '.join(dict.fromkeys(junction.of))}"
    return Sheet(number, plain(title), drawn.drawing.scale_text or "—", blocks, drawn.drawing.families, SERIES)


def _column(title: str, sentences: tuple[str, ...]) -> tuple[Block, ...]:
    return (Paragraph(f"**{title}** " + " ".join(map(plain, sentences))),)


def _remarks(drawn: Drawn, more: tuple[str, ...] = ()) -> list[Block]:
    found = [*more, *drawn.detail.remarks, *drawn.drawing.notes]
    return [Paragraph("Drawing: " + " ".join(_sentence(one) for one in found))] if found else []


def _sentence(text: str) -> str:
    return plain(text if text.endswith(".") else f"{text}.")


def _texts(detail: Detail, width: float) -> float:
    """Height of what stands below the drawing, paper mm."""
    half = (width - GUTTER) / 2
    texts = ("Order of work.", *detail.order), ("Look at.", *detail.look)
    columns = max(_rows(" ".join(one), half) for one in texts)
    return (columns + _rows(" ".join(("Drawing:", *detail.remarks)), width)) * LINE + 2 * BETWEEN


def _rows(text: str, room: float) -> int:
    """Lines that running text takes at most: a word too long for its line leaves a gap."""
    return ceil(font.width(text, TEXT_SIZE) / (room * FILLED))
