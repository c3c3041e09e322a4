"""The blocks of a sheet: what is on it, not how it is set. Only `binding` turns them into pages.

Texts are in the small mark-up of sheets.markup: **bold**, _oblique_, `mono`, {R_si} a glossary symbol, {R|5;q} the same
with another index; a person's own text is escaped by sheets.markup.plain before it gets here. Lengths are paper mm.
"""

from dataclasses import dataclass, field
from typing import Literal

from layerfolio.codes.findings import Verdict
from layerfolio.drawing.marks import Drawing
from layerfolio.sheets.table import Cell, Column, Row, Table, VerdictCell  # noqa: F401  (taken from here by all others)


@dataclass(frozen=True, slots=True)
class Head:
    """Head of a page: tag in a box (may be empty), title, one phrase at the far right, a rule below.

    `large` is the head of the cover: title at 27.2, `subtitle` under it, phrase bold, `under` (a date) below it.
    A second Head in a sheet begins the second field of a wide sheet, else a new page.
    """

    tag: str
    title: str
    phrase: str = ""
    large: bool = False
    subtitle: str = ""
    under: str = ""


@dataclass(frozen=True, slots=True)
class Heading:
    text: str
    rule: bool = False


@dataclass(frozen=True, slots=True)
class Paragraph:
    text: str
    size: float = 9
    oblique: bool = False
    bold: bool = False


@dataclass(frozen=True, slots=True)
class Bullets:
    items: tuple[str, ...]
    marker: Literal["square", "box"] = "square"  # box: to be ticked on site
    columns: int = 1


@dataclass(frozen=True, slots=True)
class Pairs:
    """Label and value, two columns (cover). `label_width` is the share kept for labels."""

    rows: tuple[tuple[str, str], ...]
    label_width: float = 31


@dataclass(frozen=True, slots=True)
class Figure:
    drawing: Drawing


@dataclass(frozen=True, slots=True)
class Equation:
    """Lines aligned on the equals sign: the left side once, then formula, substitution, result with its unit.

    The result's mark-up makes it bold; where a running total stands behind it and it has no mark-up, it is set bold.
    """

    left: str
    rights: tuple[str, ...]
    total: str = ""  # running total at the right edge, joined by dots


@dataclass(frozen=True, slots=True)
class CalcStep:
    """One numbered step of a calculation sheet."""

    number: str
    title: str
    source: str
    body: tuple["Equation | Table | Paragraph", ...]


@dataclass(frozen=True, slots=True)
class Calculation:
    """The steps of one calculation, source column at the right; ends with a band when `required` is given."""

    total_title: str  # "Running total"
    total_unit: str
    steps: tuple[CalcStep, ...]


@dataclass(frozen=True, slots=True)
class Band:
    """Between two strong rules at the foot of a calculation: required, provided, verdict, where judged."""

    required: str
    provided: str
    verdict: Verdict
    where: str


@dataclass(frozen=True, slots=True)
class ResultBox:
    """Up to three key figures and a verdict; each figure is (name, figure, small figure behind it).

    Two or three `verdicts`, each (what is judged, verdict), stand in place of clause and verdict.
    """

    figures: tuple[tuple[str, str, str], ...]
    clause: str
    verdict: Verdict | None
    remark: str = ""
    verdicts: tuple[tuple[str, Verdict], ...] = ()


@dataclass(frozen=True, slots=True)
class VerdictCount:
    counts: tuple[tuple[Verdict, int], ...]


@dataclass(frozen=True, slots=True)
class Index:
    """The sheet index of the cover; binding fills the page numbers."""


@dataclass(frozen=True, slots=True)
class NoteBox:
    """The official's note: boxes to tick, ruled lines, name, date, signature. Never breaks."""

    title: str
    ticks: tuple[str, ...]
    lines: int = 4


@dataclass(frozen=True, slots=True)
class FreeSpace:
    """A framed space that takes all height left, at least `least`."""

    text: str
    least: float = 25


@dataclass(frozen=True, slots=True)
class Numbered:
    """An item of an explanation sheet: number and label at the left, blocks at the right."""

    number: str
    label: str
    blocks: tuple["Block", ...]
    rule: bool = False  # a rule below


@dataclass(frozen=True, slots=True)
class Beside:
    """Two columns of equal width, side by side."""

    left: tuple["Block", ...]
    right: tuple["Block", ...]


@dataclass(frozen=True, slots=True)
class Framed:
    """A caution in a strong frame: title and blocks, read as one; it does not break."""

    title: str
    blocks: tuple["Block", ...]


@dataclass(frozen=True, slots=True)
class Space:
    height: float


@dataclass(frozen=True, slots=True)
class FieldBreak:
    """On a wide sheet what follows begins the next field (drawing left, tables right); nothing on a portrait sheet."""


Block = (
    Head | Heading | Paragraph | Bullets | Pairs | Table | Figure | Calculation | Band | ResultBox | VerdictCount
    | Index | NoteBox | FreeSpace | Numbered | Beside | Framed | Space | FieldBreak
)


@dataclass(frozen=True, slots=True)
class TitleBlock:
    """What stands in every sheet's title block beside its own number, title and scale. Plain text, not mark-up."""

    project: str
    site: str
    prepared_by: str
    date: str
    revision: str
    page: Literal["letter", "tabloid", "a4", "a3"]
    input_sha256: str = ""
    version: str = ""


@dataclass(frozen=True, slots=True)
class Sheet:
    """One sheet, of one page or more; `number` is never reused after an issue."""

    number: str
    title: str
    scale: str  # "1 : 5", or an em dash
    blocks: tuple[Block, ...]
    legend: tuple[str, ...] = field(default=())  # hatch families to show in the strip of a wide sheet
    series: str = ""  # neighbours of one series share a line of the index, under this title


@dataclass(frozen=True, slots=True)
class Package:
    title_block: TitleBlock
    title: str  # document title
    sheets: tuple[Sheet, ...]
