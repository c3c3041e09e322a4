"""Which layers turn their slanted lines the other way, because a neighbour of the same kind lies beside them."""

from collections.abc import Sequence
from itertools import combinations

from layerfolio.drawing.detail.model import Piece
from layerfolio.drawing.geometry import bounds

SLANTED = ("wood-fibre", "masonry", "metal")
TOUCH = 0.1  # mm


def alternates(pieces: Sequence[Piece]) -> set[str]:
    """Names of the layers whose hatch leans the other way: asked by name, never listed."""
    slanted = [one for one in pieces if one.family in SLANTED]
    beside: dict[str, list[str]] = {one.layer: [] for one in slanted}
    for one, other in combinations(slanted, 2):
        if one.family == other.family and one.layer != other.layer and _touch(one, other):
            beside[one.layer].append(other.layer)
            beside[other.layer].append(one.layer)
    turned: dict[str, bool] = {}
    for name in beside:
        near = [turned[other] for other in beside[name] if other in turned]
        turned[name] = bool(near) and near.count(False) > near.count(True)
    return {name for name, is_turned in turned.items() if is_turned}


def _touch(one: Piece, other: Piece) -> bool:
    a, b = bounds(one.outline), bounds(other.outline)
    return all(a[at] < b[at + 2] + TOUCH and b[at] < a[at + 2] + TOUCH for at in (0, 1))
