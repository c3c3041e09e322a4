"""The reading guide: what the package shows and where, how to read the record, verdicts explained, the notices in full."""

from layerfolio.catalogue.notices import notice
from layerfolio.codes.findings import Verdict
from layerfolio.codes.paths import ways
from layerfolio.sheets.blocks import Column, Head, Row, Sheet, Table, VerdictCell
from layerfolio.sheets.desk import (
    BUILDING,
    BUILDING_SECTION,
    CERTIFICATE,
    CRITERIA,
    EVIDENCE,
    GUIDE,
    OPENINGS,
    RECORD,
    SOURCES,
    SYMBOLS,
    Desk,
    code_words,
)  # fmt: skip
from layerfolio.sheets.structure import structural_answers

MEANINGS = {
    Verdict.MEETS: "The figure provided lies on the asked side of the limit named. It is a comparison, not a decision.",
    Verdict.NEEDS_JUDGEMENT: "The comparison cannot settle it: the line puts the question to the authority.",
    Verdict.NEEDS_EVIDENCE: "A document is missing that would settle it: the line names the document.",
    Verdict.DOES_NOT_MEET: "The figure provided lies on the other side of the limit: the line says by how much.",
    Verdict.NOT_ASKED: "The set asks nothing here, or not for this building.",
}
NOTICES = ("what-this-is-not", "who-decides", "structure", "fire")


def guide(desk: Desk) -> Sheet:
    """Sheet G1."""
    verdicts = Table(
        (Column("Verdict", width=42), Column("What it says")),
        tuple(Row((VerdictCell(v), words)) for v, words in MEANINGS.items()),
    )
    return Sheet(
        GUIDE,
        "How to read this package",
        "—",
        desk.templates.blocks(
            "reading-guide",
            head=Head("", "How to read this package", "and what it is not"),
            code=code_words(desk),
            assumptions=f"sheet {SOURCES}",
            criteria=f"Sheet {CRITERIA}",
            record=f"sheet {RECORD}",
            symbols=f"sheet {SYMBOLS}",
            sheets=_sheets(desk),
            verdicts=verdicts,
            paths=ways(desk.dossier.project.code.set).get("note", ""),
            notices=[notice(n) for n in NOTICES],
        ),
    )


def _sheets(desk: Desk) -> Table:
    """What each kind of sheet answers, in the order of the package; only those that a project can have."""
    first, *more = desk.dossier.assemblies
    others = " ..." if more else ""
    openings = bool(desk.dossier.openings)
    american = desk.dossier.project.code.set.startswith("irc-")
    rows = (
        (RECORD, "each requirement: clause, prescriptive and performance path, verdict, what follows", True),
        (CRITERIA, "design criteria with their sources; documents from others", True),
        (BUILDING, "the whole building: areas, heat loss, total against the code's own", True),
        (OPENINGS, "windows and doors: sizes, transmittances, egress", openings),
        (f"{SOURCES}, {SYMBOLS}", "assumptions, choices, source marks; symbols, formulas, hatches", True),
        (CERTIFICATE, "insulation values, to be posted at the electrical panel", american),
        (f"{first}{others}", "an assembly: section to scale, layers, results", True),
        (f"{first}-T, {first}-V{others}", "its heat calculation; its moisture calculation", True),
        (BUILDING_SECTION, "a section through the building; what passes each junction", bool(desk.dossier.junctions)),
        ("D1 ...", "one junction each: how the layers of both sides meet, order of work", bool(desk.dossier.junctions)),
        *structural_answers(desk),
        ("X1 ...", "one question about an unusual choice, answered on one sheet", bool(desk.dossier.explanations)),
        (EVIDENCE, "the evidence register: each document, what it proves, what is missing", True),
    )
    columns = (Column("Sheet", width=30), Column("What it answers"))
    return Table(columns, tuple(Row((f"**{number}**", words)) for number, words, there in rows if there))
