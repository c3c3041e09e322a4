"""Stone-like materials, ground, metal, glass and sheets."""

from math import ceil, floor

from layerfolio.drawing.geometry import Segment, rectangle
from layerfolio.drawing.hatches.boards import ACROSS
from layerfolio.drawing.hatches.piece import Piece
from layerfolio.drawing.hatches.strokes import BATT, polygon, strokes
from layerfolio.drawing.marks import Mark


def masonry(piece: Piece) -> tuple[Mark, ...]:
    """Lines at 45°."""
    return piece.lines(ACROSS[piece.alternate], 1.8)


def metal(piece: Piece) -> tuple[Mark, ...]:
    """Slanted lines in close pairs."""
    degrees = ACROSS[piece.alternate]
    return (*piece.lines(degrees, 1.9), *piece.lines(degrees, 1.9, offset=0.6))


def glass(piece: Piece) -> tuple[Mark, ...]:
    """Now and then three steep strokes, the middle one longest."""
    x0, y0, x1, _ = piece.box
    rows = max(1, round(piece.depth / 5))
    deep = piece.depth / rows
    segments: list[Segment] = []
    for row in range(rows):
        middle = y0 + (row + 0.5) * deep
        half = min(1.7, 0.40 * deep)
        for column in range(floor(x0 / 9) - 1, ceil(x1 / 9) + 1):
            x = (column + 0.5 + 0.5 * (row % 2)) * 9
            for step, share in ((-0.8, 0.6), (0.0, 1.0), (0.8, 0.6)):
                lean, rise = share * half / 2, share * half
                ends = (x + step - lean, middle - rise), (x + step + lean, middle + rise)
                if piece.holds(*ends):
                    segments.append(ends)
    return piece.paper(strokes(segments))


def tile(piece: Piece) -> tuple[Mark, ...]:
    """A square net along the layer, its rows as deep as the layer allows."""
    x0, y0, x1, y1 = piece.box
    rows = max(1, round(piece.depth / 1.6))
    segments = [((x0, y0 + piece.depth * row / rows), (x1, y0 + piece.depth * row / rows)) for row in range(1, rows)]
    columns = range(ceil(x0 / 1.6), floor(x1 / 1.6) + 1)
    return piece.paper(strokes([*segments, *(((1.6 * one, y0), (1.6 * one, y1)) for one in columns)]))


def membrane(piece: Piece) -> tuple[Mark, ...]:
    """A mat thick enough to show: black and white fields in turn along it."""
    x0, y0, x1, y1 = piece.box
    fields = range(floor(x0 / 6), ceil(x1 / 6))
    return piece.paper([polygon(list(rectangle(6 * one, y0, 6 * one + 3.6, y1)), 0.0, "black") for one in fields])


def concrete(piece: Piece, finer: float = 1.0) -> tuple[Mark, ...]:
    """Dots, and a stone at a quarter of the places."""
    return piece.scattered("concrete", finer)


def gravel(piece: Piece) -> tuple[Mark, ...]:
    """Ovals, turned at random."""
    return piece.scattered("gravel")


def earth(piece: Piece) -> tuple[Mark, ...]:
    """Short bowed strokes along the layer, and dots."""
    return piece.scattered("earth")


def plaster(piece: Piece) -> tuple[Mark, ...]:
    """Fine even dots."""
    return piece.scattered("plaster")


def ground(piece: Piece) -> tuple[Mark, ...]:
    """Groups of three strokes, each drawn whole or not at all; neighbours lean the other way."""
    rng = piece.generator("ground")
    x0, _, _, y1 = piece.box
    segments: list[Segment] = []
    rows = max(1, floor(piece.depth / 4.3))
    for row in range(rows):
        for column in range(-1, ceil(piece.length / 5.2) + 1):
            x = x0 + (column + 0.5 + 0.5 * (row % 2) + rng.uniform(-0.12, 0.12)) * 5.2
            y = y1 - (row + 0.5 + rng.uniform(-0.12, 0.12)) * 4.3
            group = _group(x, y, 1 if (row + column) % 2 else -1)
            if piece.holds(*(point for one in group for point in one)):
                segments += group
    return piece.paper(strokes(segments, BATT))


def _group(x: float, y: float, lean: int) -> list[Segment]:
    """Three strokes at 45°, 0.85 apart."""
    strokes_of = []
    for step, length in ((-0.85, 2.8), (0.0, 3.5), (0.85, 2.8)):
        half, across = length / 2 * 0.70711, step * 0.70711
        mx, my = x - across * lean, y + across
        strokes_of.append(((mx - half * lean, my - half), (mx + half * lean, my + half)))
    return strokes_of


