"""The moisture sheet of one assembly: picture and verdicts, what they rest on, what would turn them, the steps."""

from layerfolio.catalogue.notices import notice
from layerfolio.catalogue.sources import printed
from layerfolio.drawing.marks import Drawing
from layerfolio.drawing.moisture import moisture_picture
from layerfolio.drawing.moisture_bars import Limit
from layerfolio.sheets import moisture_missing as missing
from layerfolio.sheets import moisture_tables as tables
from layerfolio.sheets import moisture_words as words
from layerfolio.sheets.assembly_sheets import calculations
from layerfolio.sheets.blocks import Figure, Head, Heading, Sheet, Table
from layerfolio.sheets.desk import KIND_WORDS, Desk
from layerfolio.sheets.figures import with_unit
from layerfolio.sheets.formats import FIELDS, ROOM
from layerfolio.sheets.markup import plain
from layerfolio.sheets.measuring import table_height
from layerfolio.sheets.moisture_steps import moisture_steps
from layerfolio.sheets.templates import Marked
from layerfolio.studies.condensation.types import CondensationStudy
from layerfolio.units.show import fixed

LEAST, MOST = 146.0, 172.0


def moisture_sheet(desk: Desk, name: str) -> Sheet:
    """Sheet "<name>-V" of an assembly that faces air."""
    study, vapour = desk.dossier.condensation[name], desk.dossier.vapour[name]
    verdicts = tables.verdicts(desk, name)
    picture = _picture(desk, study, verdicts)
    blocks = desk.templates.blocks(
        "moisture",
        head=Head(plain(name), "Moisture", plain(_phrase(study, desk.system))),
        picture=Figure(picture) if picture else None,
        verdicts=verdicts,
        missing=[Marked(line) for line in missing.missing(study)],
        missing_lead=missing.missing_lead(study),
        values=tables.values(desk, study),
        control=Marked(words.control(desk, name)),
        ratio=Marked(words.ratio(vapour, desk.system)),
        surface=tables.surface(study),
        periods=tables.periods(study),
        periods_note=Marked(words.periods_note(study)),
        sensitivity=tables.sensitivity(study, desk.system),
        construction=Marked(words.construction(study)),
        cautions=[Marked(line) for line in words.cautions(desk, name)],
        notice=notice("moisture"),
        steps_head=Heading("Steps"),
        steps=moisture_steps(vapour, study, desk.system, desk.book),
    )
    scale = picture.scale_text if picture else "—"
    title = f"{KIND_WORDS[study.assembly.kind]} {name}: moisture"
    families = picture.families if picture else ()
    return Sheet(f"{name}-V", title, scale, blocks, families, calculations(desk.dossier.assemblies[name]))


def _picture(desk: Desk, study: CondensationStudy, below: Table) -> Drawing | None:
    """Only with a monthly balance, as high as the table below it allows; its limit is that of the two-period method, the
    one that the balance is held against."""
    if study.expected is None:
        return None
    page = desk.dossier.project.project.page
    height = min(max(ROOM[page] - table_height(below, FIELDS[page]), LEAST), MOST)
    limit = study.two_period.limit if study.two_period else None
    shown = Limit(limit, f"limit {fixed(limit, 2)}", printed("din-4108-3-2018").partition(":")[0]) if limit is not None else None
    return moisture_picture(study, units=desk.system, width=FIELDS[page], height=height, limit=shown)


def _phrase(study: CondensationStudy, system: str) -> str:
    """Method and room in one phrase."""
    method = "DIN 4108-3, two periods" if study.method == "two-period" else "ISO 13788, monthly means"
    if study.year is None:
        return method
    rooms = study.year.indoor_temperature
    room = with_unit(max(rooms), "theta_i", system, 3)
    span = room if max(rooms) - min(rooms) < 0.05 else f"{with_unit(min(rooms), 'theta_i', system, 3)} to {room}"
    return f"{method}; room {span}, {study.year.rule.words.replace('relative humidity month by month', 'humidity by month')}"
