"""What looks turned round or forgotten in an assembly; it stops nothing."""

from layerfolio.assembly.types import Assembly, Layer
from layerfolio.problems import Caution

GROUND_KINDS = ("slab", "foundation-wall")
LOOSE = ("gravel", "ground", "loose-fill")
"""Hatch families that are no floor to walk on: as a slab's last layer they say that it was listed from the room out."""


def cautions(assembly: Assembly) -> list[Caution]:
    """Every caution on one assembly, in the order of its layers."""
    found = [
        Caution(
            one.path,
            f"layer {one.number} ({one.title}) lies on the room side: layers are listed from the outside in",
        )
        for one in turned_round(assembly)
    ]
    if assembly.completions is not None:
        found += [
            Caution(one.path, f"the fasteners of layer {one.number} ({one.title}) are not counted: {'; '.join(lacking)} missing")
            for one in assembly.layers
            if one.counts and one.fasteners and (lacking := one.fasteners.lacking)
        ]
    if assembly.kind not in GROUND_KINDS and not any("vapour control" in x.serves for x in assembly.layers):
        found.append(Caution(assembly.path, f"{assembly.name}: no layer serves vapour control"))
    return found


def turned_round(assembly: Assembly) -> list[Layer]:
    """Cladding and ventilated cavities on the room side of the main insulation."""
    if assembly.kind == "slab":
        return [one for one in assembly.layers[-1:] if one.family in LOOSE and len(assembly.layers) > 1]
    insulation = [one for one in assembly.layers if one.insulating]
    if not insulation:
        return []
    main = max(insulation, key=lambda one: one.thickness.value if one.thickness else 0.0)
    return [
        one
        for one in assembly.layers
        if one.number > main.number and ("weather face" in one.serves or one.cavity == "ventilated" or one.is_cladding)
    ]
