"""What the open lines of a record leave to do, sorted by who can do it; equal wishes stand once, with their lines."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from enum import StrEnum

from layerfolio.codes.findings import Finding, Verdict


class Kind(StrEnum):
    """In the order in which they help: an answer in the project file may close many lines at once."""

    ANSWER = "answers for the project file"
    PAPER = "papers and figures to supply"
    QUESTION = "questions to the authority"
    CHANGE = "what does not meet"


@dataclass(frozen=True, slots=True)
class Wish:
    """One thing to do and the lines that wait for it: their numbers in the record, each with its subject or None."""

    kind: Kind
    words: str
    lines: tuple[tuple[int, str | None], ...]


KEY = re.compile(
    r"^(state|write)\b|\b[a-z]+_[a-z_]+\b|\b(serves|proves|glazed|egress): |"
    r"\b(building|code|climate|site_loads|indoor|ground|panel|panel_fastening|clear_opening|framing|documents)\.[a-z]"
)
"""Words of a next step that name a key of the project file."""
ABSENCE = re.compile(r"where there is none, state building\.absent: \[(.*)\]")
PAPER = ("supply", "show", "complete", "name")


def left_to_do(findings: Iterable[Finding]) -> tuple[Wish, ...]:
    """The wishes of all open lines, kind by kind, each kind in the order of the record. A line that another path answers
    leaves nothing.
    """
    found: dict[tuple[Kind, str], dict[tuple[int, str | None], None]] = {}
    for number, one in enumerate(findings, 1):
        if one.verdict in (Verdict.MEETS, Verdict.NOT_ASKED) or one.answered_by:
            continue
        for kind, words in _wishes(one):
            found.setdefault((kind, words), {})[number, one.assembly] = None
    order = list(Kind)
    wishes = [Wish(kind, words, tuple(lines)) for (kind, words), lines in found.items()]
    return tuple(sorted(_absences_together(wishes), key=lambda one: order.index(one.kind)))


def _absences_together(wishes: list[Wish]) -> Iterator[Wish]:
    """What may be stated to be absent, as one wish in the place of the first."""
    told = {at: found[1] for at, one in enumerate(wishes) if (found := ABSENCE.fullmatch(one.words))}
    for at, one in enumerate(wishes):
        if at not in told:
            yield one
        elif at == min(told):
            words = f"state under building.absent what the building has none of: {', '.join(told.values())}"
            yield Wish(Kind.ANSWER, words, tuple(line for place in told for line in wishes[place].lines))


def _wishes(finding: Finding) -> list[tuple[Kind, str]]:
    """The next step part by part: what a key answers apart from what is to be supplied, asked or changed."""
    if not finding.next_step:
        return [(_rest(finding, finding.reason), finding.reason)]
    parts = finding.next_step.split("; ")
    keys = [one for one in parts if KEY.search(one)]
    others = "; ".join(one for one in parts if one not in keys)
    made = [(Kind.ANSWER, one) for one in keys]
    return [*made, (_rest(finding, others), others)] if others else made


def _rest(finding: Finding, words: str) -> Kind:
    if finding.verdict is Verdict.DOES_NOT_MEET:
        return Kind.CHANGE
    paper = finding.verdict is Verdict.NEEDS_EVIDENCE or words.startswith(PAPER)
    return Kind.PAPER if paper else Kind.QUESTION
