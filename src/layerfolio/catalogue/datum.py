"""A figure and where it comes from: no figure enters a calculation without this."""

from dataclasses import dataclass, field
from typing import Literal

Mark = Literal["found", "memory", "derived", "given"]
ChosenBy = Literal["layer", "project", "code", "catalogue", "default"]


@dataclass(frozen=True, slots=True)
class Document:
    """A test report, data sheet or listing named in the project file. Dates are ISO texts; unknown fields empty."""

    file: str = ""
    number: str = ""
    issuer: str = ""
    edition: str = ""
    expires: str = ""
    proves: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Origin:
    """Who chose a figure and where it is published.

    `chosen_by`: the layer, the project's materials, the chosen code set's tables, the catalogue or a method's default.
    `source`: a key of shared/sources.yaml (code, catalogue, default) or the person's own words (layer, project).
    `place`: table, clause or page in that source. `mark`: found (read in the source), memory (not re-read), derived
    (computed by us) or given (the project file's own). `via`: the key of the publication the figure was read in, where
    that is not the source itself (a table reprinted by a library, a handbook).
    """

    chosen_by: ChosenBy
    source: str
    place: str = ""
    mark: Mark = "given"
    documents: tuple[Document, ...] = ()
    via: str = ""


@dataclass(frozen=True, slots=True)
class Datum:
    """One figure in the SI unit of its glossary name, with its origin. `note`: what was chosen or derived, in words."""

    value: float
    origin: Origin
    note: str = field(default="", compare=False)
