"""Hatches: what a piece of material looks like when it is cut."""

from collections.abc import Callable

from layerfolio.drawing.geometry import rectangle
from layerfolio.drawing.hatches import boards, massive, timber
from layerfolio.drawing.hatches.batt import batt
from layerfolio.drawing.hatches.piece import Piece, piece_of
from layerfolio.drawing.marks import Circle, Line, Mark, Point

THIN = 1.2  # mm on paper; a thinner layer gets no hatch
THIN_SMALL = 1.5  # at 1 : 10 and smaller


def _nothing(piece: Piece) -> tuple[Mark, ...]:
    return ()


_RECIPES: dict[str, Callable[[Piece], tuple[Mark, ...]]] = {
    "timber": timber.end_grain,
    "timber-board": timber.along_grain,
    "plywood": boards.plywood,
    "strand-board": boards.strand_board,
    "particle-board": boards.particle_board,
    "wood-fibre": boards.wood_fibre,
    "mineral-board": boards.mineral_board,
    "batt": batt,
    "loose-fill": boards.loose_fill,
    "straw": boards.straw,
    "cork": boards.cork,
    "foam": boards.foam,
    "gypsum": boards.gypsum,
    "masonry": massive.masonry,
    "concrete": massive.concrete,
    "gravel": massive.gravel,
    "ground": massive.ground,
    "earth": massive.earth,
    "plaster": massive.plaster,
    "metal": massive.metal,
    "membrane": massive.membrane,
    "glass": massive.glass,
    "tile": massive.tile,
    "air": _nothing,
    "plain": _nothing,
}
FAMILIES: tuple[str, ...] = tuple(_RECIPES)


def hatch(
    family: str,
    outline: tuple[Point, ...],
    *,
    seed: str,
    piece: int = 0,
    turn: float = 0.0,
    alternate: bool = False,
    scale: float = 5,
) -> tuple[Mark, ...]:
    """The hatch of one piece of material, cut off at `outline` (paper mm, any simple polygon), without its edge line.

    `turn` is the direction of the layer's length in degrees; batts cross what lies square to it, so a strip above a
    chart that is short along the layer passes `turn` + 90. `seed` is the layer's stable name, `piece` the number of the
    piece in it; for timber cut across add the layer's number: it chooses which way the rings look. `alternate` turns
    45° lines to 135° for the second of two adjacent layers of one kind. `scale` is the drawing's denominator. A piece
    thinner than 1.2 mm (1.5 at 1 : 10 and smaller) gets nothing. A bay of batts that a break line cuts is hatched whole
    and clipped there. KeyError for an unknown family.
    """
    recipe = _RECIPES[family]
    one = piece_of(outline, turn, seed, piece, alternate)
    if min(one.length, one.depth) < (THIN_SMALL if scale >= 10 else THIN):
        return ()
    return recipe(one)


def timber_beyond(outline: tuple[Point, ...], *, turn: float = 0.0, seed: str) -> tuple[Mark, ...]:
    """Timber seen beyond the cut: wider lines along the grain and its outline of 0.25."""
    return timber.beyond(piece_of(outline, turn, seed, 0, False))


def swatch(family: str, width: float, height: float) -> tuple[Mark, ...]:
    """A sample for the legend, lower left corner at (0, 0), with its outline of 0.35 (ground: with its line)."""
    box = rectangle(0, 0, width, height)
    edge = Line((*box, box[0]), 0.35, role="face")
    match family:
        case "timber":
            return (*_two_pieces(width, height), edge)
        case "ground":
            line = Line(((0, height), (width, height)), 1.0, role="ground")
            return (*hatch(family, box, seed="swatch"), line)
        case "concrete":
            return (*massive.concrete(piece_of(box, 0.0, "swatch", 0, False), finer=1.5), edge)
        case "membrane":
            return (edge, Line(((0, height / 2), (width, height / 2)), 1.0, role="membrane"))
        case "metal":
            sheet = Line(((0, 0.75 * height), (width, 0.75 * height)), 0.7, role="metal")
            low = rectangle(0, 0, width, height / 2)
            return (*hatch("metal", low, seed="swatch"), Line(low[2:], 0.35, role="face"), sheet, edge)
        case "air":
            middle = width / 2, height / 2
            return (edge, Circle(middle, 1.0, 0.25, role="air"), Circle(middle, 0.32, fill="black", role="air"))
        case _:
            return (*hatch(family, box, seed="swatch"), edge)


def _two_pieces(width: float, height: float) -> tuple[Mark, ...]:
    """Two pieces of timber side by side, so that the sample shows the rings' turn."""
    left, right = rectangle(0, 0, width / 2, height), rectangle(width / 2, 0, width, height)
    joint = Line(((width / 2, 0), (width / 2, height)), 0.5, role="outline")
    return (*hatch("timber", left, seed="swatch", piece=0), *hatch("timber", right, seed="swatch", piece=2), joint)
