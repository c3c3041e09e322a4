"""The repeated tiles of dots and flecks: 24 x 24 mm, wrapped at their edges, one per kind."""

from layerfolio.drawing.marks import Mark

SIDE = 24.0
NAMES: tuple[str, ...] = ()


def tile(name: str) -> tuple[Mark, ...]:
    """The marks of a tile, in 0..24; those that cross an edge stand at both edges. KeyError for an unknown name."""
    raise KeyError(name)
