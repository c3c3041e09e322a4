"""Where the dot of a leader may lie: the place its maker named, or another one in the same piece or on the same line."""

from collections.abc import Iterable, Iterator
from itertools import islice

from layerfolio.drawing.detail.control_legs import Leg, legs_of
from layerfolio.drawing.detail.model import Detail, Piece
from layerfolio.drawing.geometry import bounds, contains, direction
from layerfolio.drawing.lines import distance
from layerfolio.drawing.marks import Point

STEPS = (0.0, 3.0, -3.0, 6.0, -6.0, 9.0, -9.0, 13.0, -13.0, 18.0, -18.0, 24.0, -24.0, 32.0, -32.0)
SHARES = (0.5, 0.35, 0.65, 0.25, 0.75)
ENOUGH = 14  # places to choose from
FACE, LINE = 0.9, 1.5  # of a dot's middle from the faces of a deep piece, from control lines
ON_SHEET = 0.8  # mm that counts as lying on a heavy line


def places(at: Iterable[Point], detail: Detail, legs: list[Leg], level: float | None = None) -> tuple[Point, ...]:
    """Best first. `level`: the height of the circle, where a dot makes the leader straight."""
    found: dict[Point, None] = {}
    named = tuple(at)
    for point in named:
        found |= dict.fromkeys(islice(_near(point, detail, legs, level), ENOUGH))
    return tuple(found) or named


def _near(point: Point, detail: Detail, legs: list[Leg], level: float | None) -> Iterator[Point]:
    sheet = next((one for one in _sheet_legs(detail) if distance(point, one.a, one.b) < ON_SHEET), None)
    piece = next((one for one in detail.pieces if not one.beyond and contains(one.outline, point)), None)
    piece = piece or next((one for one in detail.pieces if contains(one.outline, point)), None)
    if piece is not None and (sheet is None or _deep(piece, point)):
        inside = (one for one in _in_piece(point, piece, level) if _within(one, piece, detail))
        yield from (one for one in inside if all(distance(one, leg.a, leg.b) >= LINE for leg in legs))
        return
    yield point
    if sheet is not None:
        yield from _on_sheet(point, sheet, level)


def _sheet_legs(detail: Detail) -> Iterator[Leg]:
    """Short heavy lines first: a tape lies on its membrane."""
    found = [leg for one in detail.sheets if one.role != "ground" for leg in legs_of(one.points)]
    yield from sorted(found, key=lambda one: one.long)


def _deep(piece: Piece, point: Point) -> bool:
    """Whether a point lies so far inside that it cannot mean a line on the face."""
    ring = piece.outline
    return all(distance(point, ring[at - 1], ring[at]) > ON_SHEET for at in range(len(ring)))


def _in_piece(point: Point, piece: Piece, level: float | None) -> Iterator[Point]:
    c, s = direction(piece.turn)
    if level is not None and abs(s) > 0.2:  # along the layer to the circle's height
        step = (level - point[1]) / s
        yield point[0] + step * c, level
        yield from _across(point[0] + step * c, level, piece)
    for step in STEPS:
        yield point[0] + step * c, point[1] + step * s
    yield from _across(*point, piece)
    for step in STEPS[1:9]:
        yield from _across(point[0] + step * c, point[1] + step * s, piece)


def _across(x: float, y: float, piece: Piece) -> Iterator[Point]:
    """The same place along the layer, elsewhere in its depth."""
    c, s = direction(piece.turn)
    heights = [c * v - s * u for u, v in piece.outline]
    here, low, high = c * y - s * x, min(heights), max(heights)
    for share in SHARES:
        off = low + share * (high - low) - here
        yield x - s * off, y + c * off


def _within(point: Point, piece: Piece, detail: Detail) -> bool:
    if not contains(piece.outline, point):
        return False
    ring = piece.outline
    x0, y0, x1, y1 = bounds(ring)
    clear = min(FACE, 0.3 * min(x1 - x0, y1 - y0))
    if any(distance(point, ring[at - 1], ring[at]) < clear for at in range(len(ring))):
        return False
    return not detail.clip or contains(detail.clip, point)


def _on_sheet(point: Point, sheet: Leg, level: float | None) -> Iterator[Point]:
    here = sheet.uv(point)[0]
    along = [here + step for step in STEPS]
    if level is not None and sheet.way != "level":
        along.insert(0, (level - sheet.a[1]) / sheet.along[1])
    else:
        along[2:2] = [1.2, sheet.long - 1.2]  # a leader soon leaves the line at its end
    yield from (sheet.at(u) for u in along if 0.8 < u < sheet.long - 0.8)
