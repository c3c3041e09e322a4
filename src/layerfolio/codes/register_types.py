"""The evidence register: which documents a package rests on, which of them are there, and which it still waits for."""

from dataclasses import dataclass, field
from enum import StrEnum
from typing import Literal

from layerfolio.catalogue.datum import Document
from layerfolio.catalogue.expected_documents import Standard
from layerfolio.codes.findings import Finding, Verdict

RECORD, BUILDING, OPENINGS, EVIDENCE = "C1", "C3", "C4", "E1"
LINES, FASTENING = "ST2", "ST3"
"""Numbers of the sheets that a row may be used on, as the sheets' room gives them."""


class State(StrEnum):
    ATTACHED = "attached"
    NAMED = "named, not attached"
    MISSING = "missing"
    EXPIRED = "expired"


RowKind = Literal["material", "opening", "join", "claim"]


@dataclass(frozen=True, slots=True)
class EvidenceRow:
    """One document, or the place of one that is missing.

    `subject` is the name of a material or opening, the place of a join or the name of a claim; `also` other subjects that
    the document names. `proves` is what it proves, or of a missing one what it has to. `expected` are the standards its
    label or sheet is expected to name in `region`; `shows` what such a document has to show, empty where only a finding
    asks. `verdict` is None where nothing is left to do; `note` says why it is what it is. `sha256` of the attached file,
    in full; empty without one.
    """

    number: str
    subject: str
    kind: RowKind
    title: str
    state: State
    document: Document | None = None
    proves: str = ""
    region: str = ""
    expected: tuple[Standard, ...] = ()
    shows: str = ""
    used_on: tuple[str, ...] = ()
    verdict: Verdict | None = None
    note: str = ""
    sha256: str = ""
    also: tuple[str, ...] = ()
    unproved: tuple[str, ...] = ()  # matters in use that the document does not prove: conductivity, vapour, density

    @property
    def waits(self) -> bool:
        """Whether a document is still to come, or a newer or better one."""
        return self.verdict is not None

    @property
    def expected_words(self) -> str:
        """The expected standards in one line, each from memory with a dagger; empty where none is recorded."""
        return "; ".join(one.text + ("\u00a0†" if one.origin.mark == "memory" else "") for one in self.expected)

    @property
    def sum_in_groups(self) -> str:
        """The first sixteen digits of the check sum in groups of four, for print."""
        return " ".join(self.sha256[at : at + 4] for at in range(0, 16, 4)) if self.sha256 else ""


@dataclass(frozen=True, slots=True)
class Register:
    """`waiting`: rows a finding waits for, by the finding's id and subject. `resting`: open rows that figures rest on, by topic
    and subject. `date`: of the project, ISO, empty without one.
    """

    rows: tuple[EvidenceRow, ...]
    waiting: dict[tuple[str, str | None], tuple[str, ...]] = field(default_factory=dict)
    date: str = ""
    resting: dict[tuple[str, str | None], tuple[str, ...]] = field(default_factory=dict)

    def of(self, subject: str, kind: RowKind | None = None) -> tuple[EvidenceRow, ...]:
        """The rows of a material, opening, join or claim, in order."""
        return tuple(x for x in self.rows if subject in (x.subject, *x.also) and kind in (None, x.kind))

    def row(self, number: str) -> EvidenceRow:
        """The row of that number; KeyError when there is none."""
        for one in self.rows:
            if one.number == number:
                return one
        raise KeyError(number)

    def rows_for(self, finding: Finding) -> tuple[str, ...]:
        """Numbers of the rows that a finding waits for."""
        return self.waiting.get((finding.id, finding.assembly), ())
