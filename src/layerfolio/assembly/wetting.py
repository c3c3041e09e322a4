"""How a layer takes water: whether it absorbs condensate, and whether it is wood."""

from typing import Any

from layerfolio.catalogue.types import Material

TIMBER_FAMILIES = ("timber", "timber-board", "plywood", "strand-board", "particle-board", "wood-fibre")
"""Hatch families that are wood or wood-based panels, for materials of the project's own."""


def absorbent(own: Any, catalogue: Material | None, kind: str) -> bool:
    """Whether condensate is drawn in: as the project's material says, else as the catalogue groups it.

    Membranes and air spaces absorb nothing (water runs off them) unless the project says otherwise.
    """
    stated = getattr(own, "absorbent", None)
    if stated is not None:
        return stated
    if kind in ("membrane", "cavity"):
        return False
    return catalogue.absorbent if catalogue else True


def timber(family: str, catalogue: Material | None) -> bool:
    """Whether a layer is wood or a wood-based panel, by the catalogue or by its hatch family."""
    return bool(catalogue and catalogue.timber) or family in TIMBER_FAMILIES
