"""What is drawn as a heavy line: membranes, flashing, tape, mesh, and the ground with its strokes."""

from collections.abc import Iterable, Iterator
from itertools import pairwise

from layerfolio.drawing.detail.ends import Edge, run_on
from layerfolio.drawing.detail.model import Piece, Sheet
from layerfolio.drawing.geometry import bounds, rectangle
from layerfolio.drawing.hatches import hatch
from layerfolio.drawing.marks import Line, Mark

WIDTHS = {"membrane": 1.0, "flashing": 0.8, "tape": 1.6, "gasket": 1.4, "mesh": 0.7, "metal": 0.8, "ground": 1.0, "seal": 1.4}
FINER = {"membrane": 0.85, "tape": 1.3, "gasket": 1.2, "seal": 1.2}  # at 1 : 8 and smaller
FINEST = {"membrane": 0.6, "flashing": 0.6, "tape": 0.8, "gasket": 0.8, "mesh": 0.5, "metal": 0.6, "seal": 0.8}  # at 1 : 20
DOTTED = (0.5, 0.6)
BAND = 8.6  # depth of the ground's strokes: two rows
PATCH = 4.0  # mm of width that is worth strokes


def width(role: str, scale: float) -> float:
    """Of the line, mm on paper."""
    finer = FINEST if scale >= 20 else FINER if scale >= 8 else {}
    return finer.get(role, WIDTHS[role])


def sheet_marks(sheets: Iterable[Sheet], edges: tuple[Edge, ...], scale: float) -> Iterator[Mark]:
    """Heavy lines in their order, short ones with round ends last."""
    found = [one for one in sheets if one.role != "ground"]
    for one in sorted(found, key=lambda one: one.role in ("tape", "gasket", "seal", "mesh")):
        dash = DOTTED if one.role == "mesh" else ()
        points = run_on(one.points, edges, False)
        yield Line(points, width(one.role, scale), dash, round_ends=one.role in ("seal", "gasket"), role=one.role)


def ground_marks(sheets: Iterable[Sheet], pieces: tuple[Piece, ...], limit: tuple[float, float]) -> Iterator[Mark]:
    """Ground lines within the page's width, and strokes below them where nothing else is drawn."""
    for number, one in enumerate(sheet for sheet in sheets if sheet.role == "ground"):
        points = tuple((min(max(x, limit[0]), limit[1]), y) for x, y in one.points)
        for a, b in pairwise(points):
            (x0, y0), (x1, y1) = sorted((a, b))
            top = min(y0, y1)
            for left, right in _free(x0, x1, top, pieces):
                box = rectangle(left, top - BAND - 0.3, right, top - 0.3)
                yield from hatch("ground", box, seed="ground", piece=number)
        yield Line(points, WIDTHS["ground"], role="ground")


def _free(x0: float, x1: float, top: float, pieces: tuple[Piece, ...]) -> Iterator[tuple[float, float]]:
    """Stretches of a strip under the ground line that no piece reaches into."""
    taken = [bounds(one.outline) for one in pieces if not one.beyond]
    taken = sorted((box[0], box[2]) for box in taken if box[1] < top - 0.4 and box[3] > top - BAND)
    at = x0
    for left, right in [*taken, (x1, x1)]:
        if min(left, x1) - at > PATCH:
            yield at, min(left, x1)
        at = max(at, right)
