"""The reading guide: what the package shows, what it is not, verdicts explained, the notices in full."""

from layerfolio.catalogue.notices import notice
from layerfolio.codes.findings import Verdict
from layerfolio.sheets.blocks import Column, Head, Row, Sheet, Table, VerdictCell
from layerfolio.sheets.desk import GUIDE, RECORD, SOURCES, SYMBOLS, Desk, code_words

MEANINGS = {
    Verdict.MEETS: "The figure provided lies on the asked side of the limit named. It is a comparison, not a decision.",
    Verdict.NEEDS_JUDGEMENT: "The comparison cannot settle it: the line puts the question to the authority.",
    Verdict.NEEDS_EVIDENCE: "A document is missing that would settle it: the line names the document.",
    Verdict.DOES_NOT_MEET: "The figure provided lies on the other side of the limit: the line says by how much.",
    Verdict.NOT_ASKED: "The set asks nothing here, or not for this building.",
}
NOTICES = ("what-this-is-not", "who-decides", "structure", "fire")


def guide(desk: Desk) -> Sheet:
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
            record=f"sheet {RECORD}",
            symbols=f"sheet {SYMBOLS}",
            verdicts=verdicts,
            notices=[notice(n) for n in NOTICES],
        ),
    )
