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
NOTICES = ("what-this-is-not", "who-decides", "structure", "moisture", "fire", "alternatives")


def guide(desk: Desk) -> Sheet:
    sheets = (
        (RECORD, "each question with its clause, figure asked, figure provided and verdict"),
        (SOURCES, "assumptions, and what each source mark stands for"),
        ("W1, R1 …", "one sheet for each assembly: section to scale, layers, results"),
        ("W1-T …", "the same assembly's heat calculation, step by step, and its vapour figures"),
        ("X1 …", "one choice that is not seen every day: why it is built so, what must hold, who decides"),
        (SYMBOLS, "symbols, formulas, units, rounding, hatches"),
    )
    guide_table = Table((Column("Sheet", width=26), Column("What to look for there")),
                        tuple(Row((f"**{n}**", words)) for n, words in sheets))  # fmt: skip
    verdicts = Table((Column("Verdict", width=42), Column("What it says")),
                     tuple(Row((VerdictCell(v), words)) for v, words in MEANINGS.items()))  # fmt: skip
    return Sheet(GUIDE, "How to read this package", "—", desk.templates.blocks(
        "reading-guide", head=Head("", "How to read this package", "and what it is not"), code=code_words(desk),
        assumptions=f"sheet {SOURCES}", guide=guide_table, verdicts=verdicts, notices=[notice(n) for n in NOTICES],
    ))  # fmt: skip
