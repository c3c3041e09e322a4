"""What an elevation of a line of bracing shows, in metres; and the scales that it may be drawn at."""

from collections.abc import Sequence
from dataclasses import dataclass

from layerfolio.drawing.figures import Units

SCALES: dict[str, tuple[int, ...]] = {
    "metric": (50, 100, 200, 500, 1000, 2000),
    "customary": (48, 96, 192, 384, 768, 1536),
}
TALLEST = 62.0  # mm on paper


@dataclass(frozen=True, slots=True)
class PanelView:
    """One panel: from the start of the line, m; it stands on the floor."""

    start: float
    length: float
    height: float


@dataclass(frozen=True, slots=True)
class SheetView:
    """Size of the sheets that panels are made of, m; `stated`, else an assumption of the drawing."""

    width: float
    height: float
    stated: bool


@dataclass(frozen=True, slots=True)
class OpeningView:
    """One opening: from the start of the line and from the floor, m; without a height it goes up to the plate, dashed."""

    start: float
    width: float
    sill: float
    height: float | None


@dataclass(frozen=True, slots=True)
class LineView:
    """One line of bracing; `laid_out`: whether the places of its panels are stated, else they are assumed."""

    name: str
    title: str
    length: float
    height: float
    panels: tuple[PanelView, ...]
    openings: tuple[OpeningView, ...] = ()
    laid_out: bool = True
    hold_downs: bool = False
    notes: tuple[str, ...] = ()
    let_in: bool = False  # its panels are bays with one brace from corner to corner, no boards
    sheet: SheetView | None = None
    stud: float | None = None  # spacing of the studs, m
    edge: float | None = None  # fasteners along edges and between them, centre to centre, m
    field: float | None = None
    blocked: bool | None = None


def common_scale(lines: Sequence[LineView], units: Units, room: float) -> int:
    """The largest scale at which every line is no longer than `room` mm on paper and not too tall."""
    longest, tallest = max(one.length for one in lines), max(one.height for one in lines)
    for scale in SCALES[units]:
        if longest * 1000 / scale <= room and tallest * 1000 / scale <= TALLEST:
            return scale
    return SCALES[units][-1]
