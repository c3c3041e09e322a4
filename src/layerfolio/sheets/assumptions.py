"""Assumptions and sources: what was taken as given, what the tool chose, and what every source mark stands for."""

from layerfolio.sheets.blocks import Column, Head, Heading, Paragraph, Row, Sheet, Table
from layerfolio.sheets.desk import SOURCES, Desk
from layerfolio.sheets.figures import cell, permeance_text, unit_of, with_unit
from layerfolio.sheets.markup import plain
from layerfolio.sheets.source_book import MEANING, NOT_REREAD
from layerfolio.units.show import fixed


def assumptions(desk: Desk) -> Sheet:
    """Comes after all sheets that use the source book, so that every mark is listed."""
    films = _films(desk)
    choices = _choices(desk)
    blocks = [
        Head("", "Assumptions and sources", "choices, films, source marks"),
        Heading("Air films and directions"),
        films,
        *((Heading("Choices taken where the project file left them open"), choices) if choices.rows else ()),
        *_climate(desk),
        *_drawing_notes(desk),
        *_disagreements(desk),
        Heading("Source marks"),
        _marks(desk),
        Paragraph(
            "; ".join(f"**{letter}** {words}" for letter, words in MEANING.items())
            + f". {NOT_REREAD} not re-read in its source: confirm before relying on it. A limit so marked decides no verdict."
        ),
        *_cautions(desk),
    ]
    return Sheet(SOURCES, "Assumptions and sources", "—", tuple(blocks))


def _films(desk: Desk) -> Table:
    unit = unit_of("R_si", desk.system)
    columns = (
        Column("Assembly", width=24),
        Column("Faces", width=30),
        Column("Heat flows", width=24),
        Column("{R_si}", unit, 26, "decimal"),
        Column("{R_se}", unit, 26, "decimal"),
        Column("Src"),
    )
    rows = []
    for name, one in desk.dossier.assemblies.items():
        rows.append(
            Row(
                (
                    f"**{plain(name)}**",
                    plain(one.faces),
                    one.heat_direction,
                    cell(one.inside_film.value, "R_si", desk.system, 3),
                    cell(one.outside_film.value, "R_se", desk.system, 3),
                    desk.book.marks(one.inside_film, one.outside_film),
                )
            )
        )
    return Table(columns, tuple(rows))


def _choices(desk: Desk) -> Table:
    """Equal choices of several assemblies stand in one row."""
    where: dict[tuple[str, str], list[str]] = {}
    for name, one in desk.dossier.assemblies.items():
        for choice in one.choices:
            where.setdefault((choice.text, choice.because), []).append(name)
    rows = [Row((f"**{plain(', '.join(names))}**", plain(text), plain(because))) for (text, because), names in where.items()]
    return Table((Column("Where", width=20), Column("Choice", width=80), Column("Because")), tuple(rows))


def _drawing_notes(desk: Desk) -> tuple:
    """What a drawing must say where its own sheet has no room left."""
    if not desk.moved_notes:
        return ()
    rows = tuple(Row((f"**{plain(name)}**", plain("; ".join(notes)))) for name, notes in desk.moved_notes.items())
    return Heading("Notes to the drawings"), Table((Column("Sheet", width=20), Column("Note")), rows)


def _disagreements(desk: Desk) -> tuple:
    """Other published figures for the materials used, where sources disagree."""
    seen, rows = set(), []
    for one in desk.dossier.assemblies.values():
        for layer in one.layers:
            if layer.counts and layer.also_published and layer.material not in seen:
                seen.add(layer.material)
                rows += [
                    Row(
                        (
                            plain(layer.title),
                            plain(what),
                            _published(name, datum.value, desk.system),
                            desk.book.mark(datum),
                        )
                    )
                    for what, name, datum in layer.also_published
                ]
    if not rows:
        return ()
    columns = (
        Column("Material", width=44),
        Column("Also published, not used"),
        Column("Figure", width=46),
        Column("Src", width=17),
    )
    return Heading("Where published sources disagree"), Table(columns, tuple(rows))


def _published(name: str, value: float, system: str) -> str:
    return f"{{W}} = {permeance_text(value, system)}" if name == "W" else f"{{{name}}} = {with_unit(value, name, system)}"


def _marks(desk: Desk) -> Table:
    columns = (Column("Mark", width=12), Column("Source", width=60), Column("Place", width=74), Column("How sure"))
    return Table(columns, tuple(Row(tuple(map(plain, row))) for row in desk.book.rows()))


def _cautions(desk: Desk) -> tuple:
    if not desk.dossier.cautions:
        return ()
    rows = tuple(Row((plain(c.path), plain(c.message))) for c in desk.dossier.cautions)
    return Heading("To look at again in the project file"), Table((Column("Place", width=58), Column("What")), rows)


def _climate(desk: Desk) -> tuple:
    """The year outside and inside as the moisture studies take it; nothing without monthly means."""
    year = next((study.year for study in desk.dossier.condensation.values() if study.year), None)
    if year is None:
        return ()
    months = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
    customary = desk.system == "customary"
    degrees = (lambda t: fixed(t * 1.8 + 32, 0)) if customary else (lambda t: fixed(t, 1))
    unit = "°F" if customary else "°C"
    rows = (
        (f"outside, {unit}", [degrees(t) for t in year.outdoor_temperature]),
        ("outside, %", [fixed(h * 100, 0) for h in year.outdoor_humidity]),
        (f"room, {unit}", [degrees(t) for t in year.indoor_temperature]),
        ("room, %", [fixed(h * 100, 0) for h in year.indoor_humidity]),
    )
    columns = (Column("Month", width=30), *(Column(month, width=12.5, align="right") for month in months))
    table = Table(columns, tuple(Row((words, *values)) for words, values in rows))
    return Heading("Climate by month, and the room"), table, Paragraph(plain(f"Room humidity: {year.rule.words}."))
