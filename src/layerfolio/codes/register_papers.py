"""The documents of the project file as the register holds them: found on disk or not, valid or not."""

from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path
from typing import Any

from layerfolio.assembly.figures import documents
from layerfolio.catalogue.datum import Document
from layerfolio.codes.findings import Verdict
from layerfolio.codes.proving import findable, valid_on
from layerfolio.codes.register_types import State


@dataclass(frozen=True, slots=True)
class Paper:
    """A document with its title, and what it is for where it speaks for the whole project."""

    document: Document
    title: str = ""
    speaks_for: tuple[str, ...] = ()

    @property
    def words(self) -> str:
        """How the document is called: "test report HB-1"."""
        one = self.document
        if self.title:
            return self.title if not one.number or one.number in self.title else f"{self.title}, {one.number}"
        return f"document {one.number}" if one.number else one.file.rpartition("/")[2] or "document without number or title"


@dataclass(frozen=True, slots=True)
class Standing:
    """What a document is worth on the project's date."""

    state: State
    verdict: Verdict | None
    note: str
    sha256: str


def papers(entry: Any) -> tuple[Paper, ...]:
    """The evidence of a layer, material, opening or join of the project file."""
    return _papers(entry, getattr(entry, "evidence", None) or ())


class _Project:
    """The project's own documents under the name that other entries have theirs."""

    def __init__(self, project: Any):
        self.evidence = tuple(getattr(project, "documents", None) or ())


def project_papers(project: Any) -> tuple[Paper, ...]:
    """The documents that speak for the project as a whole."""
    entry = _Project(project)
    return _papers(entry, entry.evidence)


def _papers(entry: Any, records: Any) -> tuple[Paper, ...]:
    return tuple(
        Paper(document, getattr(record, "title", None) or "", tuple(getattr(record, "for_", None) or ()))
        for document, record in zip(documents(entry), records, strict=True)
    )


def standing(paper: Paper, date: str, folder: Path | None) -> Standing:
    """Attached, named or expired; what is left to do, and why. A document is valid on the day it expires."""
    one, total = paper.document, _sum(paper.document.file, folder)
    state = State.ATTACHED if total else State.NAMED
    valid = valid_on(one.expires, date)
    if valid is False:
        note = f"Expired on {one.expires}, before the date of this set ({date}): a newer edition is asked for."
        return Standing(State.EXPIRED, Verdict.NEEDS_EVIDENCE, note, total)
    if not (one.file or one.number or one.issuer or one.edition):
        note = "Still to come: number, issuer and edition are open."
        return Standing(State.MISSING, Verdict.NEEDS_EVIDENCE, note, "")
    lacking = _lacking(paper, total)
    if lacking:
        return Standing(state, Verdict.NEEDS_EVIDENCE, lacking, total)
    if valid is None:
        note = f"Valid to {one.expires}; the project file states no date, so whether it is valid still cannot be told."
        return Standing(state, Verdict.NEEDS_JUDGEMENT, note, total)
    return Standing(state, None, "", total)


def _lacking(paper: Paper, total: str) -> str:
    """What keeps a document that is not out of date from proving anything; empty when nothing does."""
    one = paper.document
    if not findable(one):
        return "No number with an issuer or an edition: nobody can find it again, so it proves nothing here."
    if not one.proves and not paper.speaks_for:
        return "What it proves is not stated, so it proves nothing here."
    if not total:
        return "The file is not there: hand it in." if one.file else "No file is named: hand the document in beside this set."
    return ""


def _sum(name: str, folder: Path | None) -> str:
    """SHA-256 of a file of the project, in full; empty where there is none that can be read."""
    if not name or folder is None:
        return ""
    try:
        return sha256((folder / name).read_bytes()).hexdigest()
    except OSError:
        return ""
