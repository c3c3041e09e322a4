"""The compliance record: every requirement, its clause, what is asked and provided, the path, the verdict, who decides."""

from layerfolio.codes.findings import Finding
from layerfolio.sheets.blocks import Column, Head, Paragraph, Row, Sheet, Space, Table, VerdictCell, VerdictCount
from layerfolio.sheets.desk import RECORD, Desk, code_words, verdict_counts
from layerfolio.sheets.figures import NONE
from layerfolio.sheets.markup import plain
from layerfolio.sheets.source_book import NOT_REREAD

WIDTHS = (8, 36, 26, 62, 48)
WHO = {
    "authority having jurisdiction": "the authority",
    "a licensed structural engineer and the authority having jurisdiction": "an engineer and the authority",
}


def compliance_record(desk: Desk) -> Sheet:
    findings = desk.dossier.findings
    code = desk.dossier.project.code
    phrase = "; ".join(filter(None, (code_words(desk), f"zone {code.zone}" if code.zone else "", _recovery(code))))
    heads = (
        ("No.", ""),
        ("Question", "clause"),
        ("Path", "who decides"),
        ("Asked", "and provided"),
        ("Verdict", "and what follows"),
    )
    columns = tuple(Column(title, unit, width) for (title, unit), width in zip(heads, WIDTHS, strict=True))
    rows = tuple(Row(_cells(number, finding, desk)) for number, finding in enumerate(findings, 1))
    table = Table(columns, rows, top_rule=False, upright_rules=(1, 2, 3), long_text=True)
    blocks = (
        Head("", "Compliance record", plain(phrase)),
        table,
        Space(2),
        VerdictCount(verdict_counts(findings)),
        Paragraph(
            "A verdict compares a calculated or stated figure with the figure named; it decides nothing. "
            "The authority having jurisdiction decides every line. Clauses are named, not quoted: confirm them against the "
            "adopted text. What stands beside the code set is a standard that the set does not ask for. "
            "† marks what was not re-read in its source."
        ),
    )
    return Sheet(RECORD, "Compliance record", "—", blocks)


def _recovery(code) -> str:
    if code.heat_recovery is None:
        return ""
    return "with heat recovery" if code.heat_recovery else "without heat recovery"


def _cells(number: int, finding: Finding, desk: Desk) -> tuple:
    subject = f", {plain(finding.assembly)}" if finding.assembly else ""
    question = f"**{plain(finding.question)}{subject}**\n{plain(finding.clause)}"
    follows = finding.what_follows
    if finding.mark == "memory" and finding.limit and "memory" not in follows:
        follows = "; ".join(filter(None, (follows, "the limit rests on memory: confirm")))
    if finding.amended:
        follows = "; ".join(filter(None, (follows, f"limit amended: {finding.amended}")))
    path = f"{finding.path}\n{WHO.get(finding.who_decides, plain(finding.who_decides))}"
    return str(number), question, path, _asked(finding), VerdictCell(finding.verdict, plain(follows))


def asked_words(finding: Finding) -> str:
    """What is asked, with a dagger where it was not re-read in its source."""
    return plain(finding.asked) + (f" {NOT_REREAD}" if finding.mark == "memory" else "")


def _asked(finding: Finding) -> str:
    lines = []
    if finding.asked:
        lines.append(f"_asked_ {asked_words(finding)}")
    if finding.given:
        step = f" ({plain(finding.step)})" if finding.step else ""
        lines.append(f"_provided_ {plain(finding.given)}{step}")
    return "\n".join(lines) or NONE
