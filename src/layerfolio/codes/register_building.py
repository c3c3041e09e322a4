"""The register while it is built: rows get their numbers in the order in which their subjects are entered."""

from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

from layerfolio.assembly.types import Assembly
from layerfolio.catalogue.expected_documents import Region
from layerfolio.codes.findings import Verdict
from layerfolio.codes.register_figures import matter_of, words_of
from layerfolio.codes.register_papers import Paper, project_papers, standing
from layerfolio.codes.register_subjects import Subject
from layerfolio.codes.register_types import EVIDENCE, OPENINGS, RECORD, EvidenceRow, Register, State
from layerfolio.codes.register_waiting import missing
from layerfolio.codes.wording import sentence

MATTERS = ("conductivity", "vapour", "density")


@dataclass(slots=True)
class Building:
    """Rows so far. A document that speaks for several subjects has one row; the others find it by `also`."""

    date: str
    folder: Path | None
    region: Region | None
    assemblies: dict[str, Assembly]
    project: Any
    rows: list[EvidenceRow] = field(default_factory=list)
    waiting: dict[tuple[str, str | None], tuple[str, ...]] = field(default_factory=dict)
    papers: dict[Paper, int] = field(default_factory=dict)  # documents of the project with a row, by its place
    asked: set[str] = field(default_factory=set)  # numbers of the rows that a finding has made

    def done(self) -> Register:
        """The register as it stands."""
        return Register(tuple(self.rows), self.waiting, self.date)

    def enter(self, subject: Subject) -> None:
        """The rows of a subject: one for each document, or the one that says what is missing."""
        held = [*subject.papers, *self._for(subject)]
        for paper in dict.fromkeys(held):
            self._enter_paper(paper, subject)
        self._say_unproved(subject, held)
        if not held:
            self.add_missing(subject, "; ".join(subject.wanted()), missing(subject.why))

    def _say_unproved(self, subject: Subject, held: list[Paper]) -> None:
        """Figures of a material that are in use and that none of its documents proves."""
        proved = {matter_of(claim) for paper in held for claim in paper.document.proves}
        left = {one: subject.figures[one] for one in MATTERS if one in subject.figures and one not in proved}
        place = next((at for at, row in enumerate(self.rows) if row.subject == subject.key and row.kind == "material"), None)
        if held and left and place is not None:
            row = self.rows[place]
            note = f"{row.note} In use and not among what it proves: {'; '.join(left.values())}.".strip()
            self.rows[place] = replace(row, note=note, unproved=tuple(left))

    def ask_too(self, number: str, words: str) -> None:
        """One more request at a row that a finding has made."""
        place = next(at for at, row in enumerate(self.rows) if row.number == number)
        note = self.rows[place].note
        if number in self.asked and words.rstrip(".").lower() not in note.lower():
            self.rows[place] = replace(self.rows[place], note=f"{note} {words}")

    def _for(self, subject: Subject) -> list[Paper]:
        """Documents of the project that name a material or opening."""
        if subject.kind == "claim":
            return []
        return [one for one in project_papers(self.project) if subject.key in one.speaks_for]

    def _enter_paper(self, paper: Paper, subject: Subject) -> None:
        if paper in self.papers:
            self._share(self.papers[paper], subject)
            return
        if paper in project_papers(self.project):
            self.papers[paper] = len(self.rows)
        found = standing(paper, self.date, self.folder)
        proves = words_of(paper.document.proves, subject.figures) or "; ".join(subject.wanted())
        proves = proves or f"for {', '.join(paper.speaks_for)}" if paper.speaks_for else proves
        title = f"{subject.title}: {paper.words}" if subject.kind != "claim" else sentence(paper.words)
        self._add(
            subject, title=title, state=found.state, document=paper.document, proves=proves, verdict=found.verdict,
            note=found.note, sha256=found.sha256, used_on=self._used_on(subject, paper),
        )  # fmt: skip

    def _used_on(self, subject: Subject, paper: Paper) -> tuple[str, ...]:
        named = [one for one in paper.speaks_for if one in self.assemblies]
        named += [OPENINGS] if any(one in (getattr(self.project, "openings", None) or {}) for one in paper.speaks_for) else []
        return tuple(dict.fromkeys((*subject.used_on, *named)))

    def _share(self, place: int, subject: Subject) -> None:
        row = self.rows[place]
        used_on = tuple(dict.fromkeys((*row.used_on, *subject.used_on)))
        also = row.also if subject.key == row.subject else tuple(dict.fromkeys((*row.also, subject.key)))
        self.rows[place] = replace(row, used_on=used_on, also=also)

    def add_missing(self, subject: Subject, proves: str, note: str) -> str:
        """The row of a document that is missing; its number."""
        return self._add(
            subject, title=subject.title, state=State.MISSING, proves=proves, verdict=Verdict.NEEDS_EVIDENCE, note=note,
            used_on=tuple(subject.used_on),
        )  # fmt: skip

    def _add(self, subject: Subject, **said: Any) -> str:
        number = f"{EVIDENCE}-{len(self.rows) + 1:02d}"
        expected, region = subject.expected, self.region
        self.rows.append(EvidenceRow(
            number, subject.key, subject.kind, region=region.title if region else "", shows=expected.shows,
            expected=expected.expected_in(region), **said,
        ))  # fmt: skip
        return number

    def enter_other_papers(self) -> None:
        """Documents of the project that no subject has taken: for assemblies, or for a claim in words of its own."""
        from layerfolio.catalogue.expected_documents import named

        for paper in project_papers(self.project):
            entered = paper in self.papers or any(one.document == paper.document for one in self.rows)
            if not entered:
                key = ", ".join(paper.speaks_for or paper.document.proves) or "project"
                subject = Subject(key, "claim", sentence(key), named("other"), used_on=[RECORD])
                self._enter_paper(paper, subject)

    def rows_of(self, key: str) -> list[EvidenceRow]:
        """The rows of a subject so far."""
        return [x for x in self.rows if key in (x.subject, *x.also)]
