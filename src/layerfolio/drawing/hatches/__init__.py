"""Hatches: what a piece of material looks like when it is cut."""

from layerfolio.drawing.marks import Mark, Point

FAMILIES = (
    "timber", "timber-board", "plywood", "strand-board", "particle-board", "wood-fibre", "mineral-board", "batt",
    "loose-fill", "straw", "cork", "foam", "gypsum", "masonry", "concrete", "gravel", "ground", "earth", "plaster",
    "metal", "membrane", "glass", "tile", "air", "plain",
)


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
    """The hatch of one piece of material, clipped to `outline` (paper mm, any simple polygon, without its edge line).

    `turn` is the direction of the layer's length in degrees, `seed` the layer's stable name, `piece` the number of the piece
    in it (for timber cut across add the layer number: it chooses the turn of the rings). `alternate` turns 45° lines to 135°
    for the second of two adjacent layers of one kind. A piece thinner than 1.2 mm across the layer gets nothing. `scale` is
    the drawing's denominator. KeyError for an unknown family.
    """
    if family not in FAMILIES:
        raise KeyError(family)
    return ()


def timber_beyond(outline: tuple[Point, ...], *, turn: float = 0.0, seed: str) -> tuple[Mark, ...]:
    """Timber seen beyond the cut: wider lines along the grain and its outline of 0.25."""
    return ()


def swatch(family: str, width: float, height: float) -> tuple[Mark, ...]:
    """A sample for the legend, lower left corner at (0, 0), with its outline of 0.35 (ground: its line)."""
    return ()
