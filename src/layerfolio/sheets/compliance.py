"""The compliance record: one table by topic; every requirement, both paths, the verdict, what follows, where to look."""

from collections.abc import Iterator
from itertools import groupby

from layerfolio.codes.findings import Finding, Verdict
from layerfolio.codes.judging import TOPICS
from layerfolio.codes.moisture_making import PRACTICE
from layerfolio.codes.paths import BESIDE
from layerfolio.codes.wording import sentence
from layerfolio.sheets.blocks import Block, Column, Head, Paragraph, Row, Sheet, Space, Table, VerdictCell, VerdictCount
from layerfolio.sheets.desk import BRACING, CRITERIA, GUIDE, LOADS, OPENINGS, RECORD, Desk, code_words, verdict_counts
from layerfolio.sheets.figures import NONE
from layerfolio.sheets.markup import plain
from layerfolio.sheets.record_paths import TopicWords, answering_line, path_cell, performance_cell, topic_words
from layerfolio.sheets.record_summary import summary
from layerfolio.sheets.source_book import NOT_REREAD
from layerfolio.sheets.stated_answers import rests_on_an_answer
from layerfolio.sheets.structure_parts import sheet_to_see

COLUMNS = (
    ("No.", "", 8), ("Question", "clause; sheets to see", 44), ("Prescriptive path", "asked and provided", 67),
    ("Performance", "path instead", 26), ("Verdict", "path taken", 35),
)  # fmt: skip
NOTE = (
    "The authority having jurisdiction decides every line; where somebody else decides with it, the line or the head of its "
    f"topic says so. Clauses are named, not quoted: confirm them. {NOT_REREAD} not re-read in its source. "
    f"How to read the record: sheet {GUIDE}."
)
EXTRA = 1.2  # air of a row, mm: a record of a hundred lines
SHORT = 110  # characters of a reason that stand under the verdict without making its row taller


def compliance_record(desk: Desk) -> Sheet:
    """Sheet C1. Findings stand in the order of the dossier: by topic, then by subject."""
    findings = desk.dossier.findings
    code = desk.dossier.project.code
    phrase = "; ".join(filter(None, (code_words(desk), f"zone {code.zone}" if code.zone else "", _recovery(code))))
    columns = tuple(Column(*one) for one in COLUMNS)
    table = Table(columns, tuple(_rows(desk)), upright_rules=(1, 2, 3), long_text=True, extra=EXTRA)
    blocks = (
        Head("", "Compliance record", plain(phrase)),
        summary(findings),
        Space(2),
        VerdictCount(verdict_counts(findings)),
        *_without_lines(findings),
        Paragraph(NOTE),  # before the lines: after them it might stand on a page of its own
        Space(2),
        table,
    )
    return Sheet(RECORD, "Compliance record", "—", blocks)


def _recovery(code) -> str:
    if code.heat_recovery is None:
        return ""
    return "with heat recovery" if code.heat_recovery else "without heat recovery"


def _rows(desk: Desk) -> Iterator[Row]:
    for topic, group in groupby(enumerate(desk.dossier.findings, 1), key=lambda one: one[1].topic):
        found = tuple(group)
        words = topic_words(found)
        yield Row(tuple(filter(None, (f"**{plain(topic.capitalize())}**", words.text))), head=True)
        yield from (_row(number, desk, words) for number, _ in found)


def _row(number: int, desk: Desk, words: TopicWords) -> Row:
    """What follows from the verdict is the last line of its row, over the whole width or under the verdict; of what is not
    asked, under the verdict."""
    findings = desk.dossier.findings
    finding = findings[number - 1]
    follows = plain(sentence(_follows(finding, findings)))
    under = finding.verdict is Verdict.NOT_ASKED and len(follows) <= SHORT
    cell, below = performance_cell(number, findings, words)
    cells = (
        str(number), _question(finding, desk), _asked(finding), cell,
        VerdictCell(finding.verdict, follows if under else path_cell(finding, findings, words)),
    )  # fmt: skip
    after = ". ".join(filter(None, (below, "" if under else follows)))
    return Row(cells, after=after or None, after_beside=3)


def _question(finding: Finding, desk: Desk) -> str:
    subject = f", {plain(finding.assembly)}" if finding.assembly else ""
    see = plain(", ".join(sheets_to_see(finding, desk)))
    return f"**{plain(finding.question)}{subject}**\n{plain(finding.clause)}; _see_ {see}"


def sheets_to_see(finding: Finding, desk: Desk) -> tuple[str, ...]:
    """The drawing or list that shows the subject, then rows of the evidence register; calculations stand at the figure."""
    evidence = tuple(finding.evidence)
    structural = sheet_to_see(finding, desk)
    if structural == LOADS:
        return (LOADS, *evidence)
    if finding.assembly in desk.dossier.assemblies and structural:
        return (finding.assembly, structural, *evidence)
    if finding.assembly in desk.dossier.assemblies:
        return (finding.assembly, *((CRITERIA,) if rests_on_an_answer(finding, desk) else ()), *evidence)
    if finding.opening:
        wall = desk.dossier.openings[finding.assembly].wall
        return tuple(filter(None, (OPENINGS, wall, *evidence)))
    if finding.assembly in desk.dossier.wall_lines:
        return (BRACING, *evidence)
    return (finding.step or structural or CRITERIA, *evidence)


def _follows(finding: Finding, findings: tuple[Finding, ...]) -> str:
    """Why the verdict is so and what to do next; the line of the table that shows it in this one's place."""
    follows = finding.what_follows
    if finding.verdict is Verdict.NOT_ASKED and (line := answering_line(finding, findings)):
        follows = f"{follows}, line {line}"
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
        lines.append(f"_{_who_asks(finding)}_ {asked_words(finding)}")
    if finding.given:
        step = f" ({plain(finding.step)})" if finding.step else ""
        lines.append(f"_provided_ {plain(finding.given)}{step}")
    return "\n".join(lines) or NONE


def _who_asks(finding: Finding) -> str:
    """The set asks, or a standard beside it, or practice alone."""
    if finding.chosen != BESIDE:
        return "asked"
    return "asked by practice" if finding.source == PRACTICE else "asked by the standard"


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
