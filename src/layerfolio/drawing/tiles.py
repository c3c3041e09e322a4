"""The repeated tiles of scattered hatches: 24 x 24 mm, wrapped at their edges, one per kind.

A tile is written once in a file and placed many times: loose dots make a package long and slow to write.
"""

from functools import cache

from layerfolio.drawing.geometry import bounds, moved
from layerfolio.drawing.hatches.light import SUFFIX
from layerfolio.drawing.hatches.scatter import RECIPES, fill
from layerfolio.drawing.hatches.strokes import merged
from layerfolio.drawing.marks import Circle, Mark
from layerfolio.drawing.seeds import generator

SIDE = 24.0
OVERHANG = 4.0  # no mark of a tile reaches further over its edge
NAMES: tuple[str, ...] = tuple(RECIPES)
LIGHTER = 0.7  # lattice of a light tile: half as many places


@cache
def tile(name: str, wrapped: bool = True) -> tuple[Mark, ...]:
    """The marks of a tile, centred in 0..24; "gravel-light" is the sparse one. KeyError for an unknown name.

    `wrapped`: a mark that crosses an edge stands at both edges, for writers that cut each tile off there. Otherwise it
    stands once and hangs over, which leaves no seam where tiles are only placed side by side.
    """
    finer = LIGHTER if name.endswith(SUFFIX) else 1.0
    marks = fill(name.removesuffix(SUFFIX), generator("tile", name), (0, 0, SIDE, SIDE), wrap=True, finer=finer)
    if wrapped:
        marks = [copy for mark in marks for copy in _copies(mark)]
    return merged(marks)


def _copies(mark: Mark) -> list[Mark]:
    x0, y0, x1, y1 = extent(mark)
    across = [shift for shift in (-SIDE, 0.0, SIDE) if x1 + shift > 0 and x0 + shift < SIDE]
    upward = [shift for shift in (-SIDE, 0.0, SIDE) if y1 + shift > 0 and y0 + shift < SIDE]
    return [moved(mark, by=(dx, dy)) for dx in across for dy in upward]


def extent(mark: Mark) -> tuple[float, float, float, float]:
    """Least x, least y, greatest x, greatest y of a circle or curve with its line; a curve counts with its handles."""
    if isinstance(mark, Circle):
        (x, y), reach = mark.centre, mark.radius + mark.width / 2
        return x - reach, y - reach, x + reach, y + reach
    flat = [value for command in mark.commands for value in command[1:]]
    x0, y0, x1, y1 = bounds(list(zip(flat[::2], flat[1::2], strict=True)))
    half = mark.width / 2
    return x0 - half, y0 - half, x1 + half, y1 + half
