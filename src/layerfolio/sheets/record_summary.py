"""The head of the compliance record: each topic with its lines, and the numbers of those that are open."""

from itertools import groupby

from layerfolio.codes.findings import Finding, Verdict
from layerfolio.sheets.blocks import Column, Row, Table
from layerfolio.sheets.figures import NONE

OPEN = (Verdict.DOES_NOT_MEET, Verdict.NEEDS_JUDGEMENT, Verdict.NEEDS_EVIDENCE)
CLOSED = (Verdict.MEETS, Verdict.NOT_ASKED)


def summary(findings: tuple[Finding, ...]) -> Table:
    """Topic by verdict: the numbers of the open lines, the count of the others."""
    columns = (
        Column("Topic", width=26), Column("Lines", width=20), *(Column(str(one).capitalize(), width=19) for one in CLOSED),
        Column("Does not meet", "line", 30), Column("Needs judgement", "line", 34), Column("Needs evidence", "line"),
    )  # fmt: skip
    numbered = enumerate(findings, 1)
    rows = (_row(topic, tuple(found)) for topic, found in groupby(numbered, key=lambda one: one[1].topic))
    return Table(columns, (*rows, _total(findings)), top_rule=False)


def _total(findings: tuple[Finding, ...]) -> Row:
    counts = [sum(one.verdict is verdict for one in findings) for verdict in (*CLOSED, *OPEN)]
    words = [f"{count} line{'s' * (count != 1)}" for count in counts]
    return Row(("Together", str(len(findings)), *map(str, counts[: len(CLOSED)]), *words[len(CLOSED) :]), total=True)


def _row(topic: str, found: tuple[tuple[int, Finding], ...]) -> Row:
    def lines(verdict: Verdict) -> list[int]:
        return [number for number, one in found if one.verdict is verdict]

    counts = (str(len(lines(one)) or NONE) for one in CLOSED)
    return Row((f"**{topic.capitalize()}**", ranges([n for n, _ in found]), *counts, *(ranges(lines(one)) for one in OPEN)))


def ranges(numbers: list[int]) -> str:
    """ "5, 8 to 10": three and more in a row are drawn together; a dash for none."""
    parts, at = [], 0
    while at < len(numbers):
        end = at
        while end + 1 < len(numbers) and numbers[end + 1] == numbers[end] + 1:
            end += 1
        step = numbers[at : end + 1]
        parts += [f"{step[0]} to {step[-1]}"] if len(step) > 2 else [str(one) for one in step]
        at = end + 1
    return ", ".join(parts) or NONE


def in_words(numbers: list[int]) -> str:
    """ "line 5", "lines 5, 8 to 10"."""
    return f"line{'s' * (len(numbers) != 1)} {ranges(numbers)}"
