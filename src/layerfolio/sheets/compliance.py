"""The compliance record: one table by topic; every requirement, both paths, the verdict, what follows, where to look."""

from itertools import groupby

from layerfolio.codes.findings import Finding, Verdict
from layerfolio.codes.judging import TOPICS
from layerfolio.codes.paths import BESIDE, NO_CHOICE
from layerfolio.sheets.blocks import Block, Column, Head, Paragraph, Row, Sheet, Space, Table, VerdictCell, VerdictCount
from layerfolio.sheets.desk import CRITERIA, GUIDE, OPENINGS, RECORD, Desk, code_words, verdict_counts
from layerfolio.sheets.figures import NONE
from layerfolio.sheets.markup import plain
from layerfolio.sheets.source_book import NOT_REREAD

COLUMNS = (
    ("No.", "", 8), ("Question", "clause; sheets to see", 38), ("Prescriptive path", "asked and provided", 64),
    ("Performance path", "shown instead", 34), ("Verdict", "path taken", 36),
)  # fmt: skip
NOTE = (
    "The authority having jurisdiction decides every line; where somebody else decides with it, the line says so. "
    f"Clauses are named, not quoted: confirm them. {NOT_REREAD} not re-read in its source. How to read the record: sheet {GUIDE}."
)
EXTRA = 1.9  # air of a row, mm: a record of a hundred lines
SHORT = 110  # characters of a reason that stand under the verdict without making its row taller
DECIDES = "authority having jurisdiction"
WHO = {"a licensed structural engineer and the authority having jurisdiction": "an engineer and the authority"}


def compliance_record(desk: Desk) -> Sheet:
    """Sheet C1. Findings stand in the order of the dossier: by topic, then by subject."""
    findings = desk.dossier.findings
    code = desk.dossier.project.code
    phrase = "; ".join(filter(None, (code_words(desk), f"zone {code.zone}" if code.zone else "", _recovery(code))))
    columns = tuple(Column(*one) for one in COLUMNS)
    table = Table(columns, tuple(_rows(desk)), top_rule=False, upright_rules=(1, 2, 3), long_text=True, extra=EXTRA)
    blocks = (
        Head("", "Compliance record", plain(phrase)),
        table,
        Space(2),
        VerdictCount(verdict_counts(findings)),
        *_without_lines(findings),
        Paragraph(NOTE),
    )
    return Sheet(RECORD, "Compliance record", "—", blocks)


def _recovery(code) -> str:
    if code.heat_recovery is None:
        return ""
    return "with heat recovery" if code.heat_recovery else "without heat recovery"


def _rows(desk: Desk):
    for topic, found in groupby(enumerate(desk.dossier.findings, 1), key=lambda one: one[1].topic):
        yield Row((f"**{plain(topic.capitalize())}**",), head=True)
        yield from (_row(number, finding, desk) for number, finding in found)


def _row(number: int, finding: Finding, desk: Desk) -> Row:
    """What follows from the verdict is the last line of its row, over the whole width; of what is not asked, under it."""
    follows = _capital(plain(_follows(finding)))
    under = finding.verdict is Verdict.NOT_ASKED and len(follows) <= SHORT
    cells = (
        str(number), _question(finding, desk), _asked(finding), _performance(finding),
        VerdictCell(finding.verdict, follows if under else _path(finding, desk)),
    )  # fmt: skip
    return Row(cells, after=follows if follows and not under else None)


def _question(finding: Finding, desk: Desk) -> str:
    subject = f", {plain(finding.assembly)}" if finding.assembly else ""
    see = plain(", ".join(sheets_to_see(finding, desk)))
    return f"**{plain(finding.question)}{subject}**\n{plain(finding.clause)}; _see_ {see}"


def sheets_to_see(finding: Finding, desk: Desk) -> tuple[str, ...]:
    """The drawing or list that shows the subject, then rows of the evidence register; calculations stand at the figure."""
    evidence = tuple(finding.evidence)
    if finding.assembly in desk.dossier.assemblies:
        return (finding.assembly, *evidence)
    if finding.opening:
        wall = getattr((getattr(desk.dossier.project, "openings", None) or {}).get(finding.assembly), "in_", "")
        return tuple(filter(None, (OPENINGS, wall, *evidence)))
    return (finding.step or CRITERIA, *evidence)


def _follows(finding: Finding) -> str:
    """Why the verdict is so and what to do next."""
    follows = finding.what_follows
    if finding.mark == "memory" and finding.limit and "memory" not in follows:
        follows = "; ".join(filter(None, (follows, "the limit rests on memory: confirm")))
    if finding.amended:
        follows = "; ".join(filter(None, (follows, f"limit amended: {finding.amended}")))
    return follows


def asked_words(finding: Finding) -> str:
    """What is asked, with a dagger where it was not re-read in its source."""
    return plain(finding.asked.removeprefix("asked ")) + (f" {NOT_REREAD}" if finding.mark == "memory" else "")


def _asked(finding: Finding) -> str:
    lines = []
    if finding.asked:
        lines.append(f"_asked_ {asked_words(finding)}")
    if finding.given:
        step = f" ({plain(finding.step)})" if finding.step else ""
        lines.append(f"_provided_ {plain(finding.given)}{step}")
    return "\n".join(lines) or NONE


def _performance(finding: Finding) -> str:
    """What is shown instead; a line of the performance path says so, its figures stand beside the others."""
    if finding.verdict is Verdict.NOT_ASKED or finding.performance in ("", "none"):
        return NONE
    if finding.path == "performance":
        return "Calculated on this path"
    return _capital(plain(finding.performance))


def _path(finding: Finding, desk: Desk) -> str:
    """The path taken; that of a met limit is the one word, and an answer names its line. Then who decides, where it is not
    the authority alone."""
    if finding.verdict is Verdict.NOT_ASKED or finding.chosen in ("", BESIDE, NO_CHOICE):
        return ""
    line = next((n for n, one in enumerate(desk.dossier.findings, 1) if one.id == finding.answered_by), 0)
    chosen = "prescriptive" if finding.chosen.startswith("prescriptive") else finding.chosen
    lines = [f"_path_ {plain(chosen)}" + (f", line {line}" if line else "")]
    if finding.who_decides != DECIDES:
        lines.append(f"_decides_ {plain(WHO.get(finding.who_decides, finding.who_decides))}")
    return "\n".join(lines)


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _without_lines(findings: tuple[Finding, ...]) -> tuple[Block, ...]:
    """Topics without a line, so that none is silently missing."""
    empty = [topic for topic in TOPICS if all(one.topic != topic for one in findings)]
    if not empty:
        return ()
    words = (
        f"**No line under: {', '.join(empty)}.** The set as carried here asks nothing of them for what the project file "
        "states; what the adopted text asks comes from others."
    )
    return (Paragraph(words),)
