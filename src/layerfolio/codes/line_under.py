"""What the bottom plate of a line stands on, as far as the project says it: wood, or the concrete of a slab."""

from dataclasses import dataclass

from layerfolio.codes.line_facts import Facts


@dataclass(frozen=True, slots=True)
class Under:
    """`concrete`: whether the plate stands on it; `sole_plate`: whether the project states wood below; `words`: by what."""

    concrete: bool
    sole_plate: bool = False
    words: str = ""


def stands_on(known: Facts) -> Under:
    """As the line states it, else by the sills of its wall or those of the others, else by what the building has as its floor."""
    stated = known.line.plate_on
    if stated:
        return Under(stated == "concrete", stated == "wood", "concrete, as stated")
    if _upper(known):
        return Under(False)
    slab = _slab(known)
    return Under(bool(slab), words=f"slab {slab}" if slab else "")


def _upper(known: Facts) -> bool:
    """Whether the line is known to stand in a storey above the lowest."""
    storeys = known.about.storeys
    return storeys is not None and known.floors is not None and known.floors < storeys - 1


def _slab(known: Facts) -> str:
    """The slab on which the wall stands, by its name; empty where it stands on a floor, or on nothing that is known."""
    around = [one.assembly for one in known.about.envelope.thermal.values()]
    kinds = {one.name: one.kind for one in around if not (one.ground.get("depth") or 0.0) > 0.0}
    every = [one.of for one in known.about.envelope.junctions if one.kind == "sill"]
    sills = [of for of in every if of[0] == known.study.assembly] or every
    below = [name for of in sills for name in of[1:]] or list(kinds)
    slabs = [name for name in below if kinds.get(name) == "slab"]
    floors = [name for name in below if kinds.get(name) == "floor"]
    return slabs[0] if slabs and (sills or not floors) else ""
