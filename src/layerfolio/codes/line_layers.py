"""Layers of a wall as its bracing sees them: what lies on the studs, and whether a layer is what a line grades its panels as."""

from layerfolio.assembly.types import Assembly, Layer

NO_PANEL = ("gypsum", "wood-fibre", "mineral", "foam", "batt", "cork", "straw", "plaster", "clay")
"""Beginnings of the hatch families that are no wood panel."""
GRADED = {
    "gypsum board": ("gypsum",), "fibreboard": ("wood-fibre", "particle-board"), "particleboard": ("particle-board",),
}  # fmt: skip
"""Families of layers that a grade other than wood panels may be."""
NAMED = (
    "batt", "concrete", "cork", "earth", "foam", "glass", "gypsum", "loose-fill", "masonry", "metal", "mineral-board",
    "particle-board", "plaster", "plywood", "strand-board", "straw", "tile", "timber", "timber-board", "wood-fibre",
)  # fmt: skip
"""Families that say what a layer is of; a board of the project's own may name none."""
HALF_INCH = 0.0125  # m, as the board is sold in either system


def plainly_other(layer: Layer, grade: str) -> bool:
    """Whether a layer is plainly not what panels of that grade are; a layer of unknown make is not."""
    own = GRADED.get(grade)
    other = layer.family.startswith(NO_PANEL) if own is None else layer.family in NAMED and layer.family not in own
    return layer.insulating or other


def on_the_studs(assembly: Assembly | None) -> tuple[Layer | None, Layer | None]:
    """The layers that lie on the outer and on the inner face of the studs, membranes left out; None for a bare face."""
    best = framed_layer(assembly)
    if best is None:
        return None, None
    solid = [one for one in assembly.layers if one.kind != "membrane"]
    outer = next((one for one in reversed(solid) if one.number < best.number), None)
    inner = next((one for one in solid if one.number > best.number), None)
    return outer, inner


def framed_layer(assembly: Assembly | None) -> Layer | None:
    """The layer between the studs: the thickest that is framed."""
    framed = [one for one in assembly.layers if one.member and one.kind == "solid"] if assembly else []
    return max(framed, key=lambda one: one.thickness.value if one.thickness else 0.0, default=None)


def is_gypsum_board(layer: Layer, least: float = 0.0) -> bool:
    """Half an inch of it, as it is sold in either system or as thick as `least` asks; plasters and blocks of gypsum are none."""
    thick = layer.thickness is not None and layer.thickness.value >= (least or HALF_INCH)
    return layer.family == "gypsum" and thick and not any(word in layer.material for word in ("plaster", "block"))
