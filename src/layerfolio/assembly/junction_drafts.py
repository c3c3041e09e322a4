"""A junction before its lengths and control layers are known, and which parts of a project may meet."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from layerfolio.assembly.junction_types import JunctionKind
from layerfolio.assembly.types import Assembly, Choice

FLOORS, ROOFS = ("slab", "floor"), ("roof", "ceiling")
SLOPED, STEEPEST = 2.0, 60.0  # degrees from which a roof has a ridge; up to which it meets a wall as a roof
PARTNERS = {
    "sill": ("wall", FLOORS), "rim": ("wall", ("floor",)), "eave": ("wall", ROOFS), "verge": ("wall", ("roof",)),
    "ridge": ("roof", ()), "outside corner": ("wall", ("wall",)), "inside corner": ("wall", ("wall",)),
    "penetration": ("wall", ()),
}  # fmt: skip
"""What meets: the kind that is drawn first, and the kinds that it meets."""


@dataclass(frozen=True, slots=True)
class Draft:
    """`of`: assemblies, the one drawn first first, then the opening. `join`: what the project file states, or None."""

    kind: JunctionKind
    of: tuple[str, ...]
    choices: tuple[Choice, ...] = ()
    opening: str = ""
    join: Any = None
    cannot: str = ""
    path: str = ""

    @property
    def stated(self) -> bool:
        return self.join is not None


def insulated(assembly: Assembly) -> bool:
    """Whether a layer of it belongs to the thermal line."""
    return any(one.insulating and one.counts for one in assembly.layers)


def of_kind(assemblies: Mapping[str, Assembly], *kinds: str) -> Iterator[Assembly]:
    """In the order of the project file."""
    return (one for one in assemblies.values() if one.kind in kinds)


def main_wall(assemblies: Mapping[str, Assembly]) -> Assembly | None:
    """The wall to outside air of the greatest area; the first where none states an area."""
    walls = list(of_kind(assemblies, "wall"))
    outside = [one for one in walls if one.faces == "outside air"] or walls
    return max(outside, key=lambda one: one.area.value if one.area else 0.0, default=None)


def main_floor(assemblies: Mapping[str, Assembly]) -> Assembly | None:
    """What walls stand on: the first slab or floor that is insulated or lies on the ground, but for a floor below a basement."""
    found = [one for one in of_kind(assemblies, *FLOORS) if not (one.ground.get("depth") or 0.0) > 0.0]
    return next((one for one in found if insulated(one) or one.faces == "ground"), found[0] if found else None)


def main_roof(assemblies: Mapping[str, Assembly]) -> Assembly | None:
    """What closes the building above: the first roof or ceiling that is insulated."""
    found = list(of_kind(assemblies, *ROOFS))
    return next((one for one in found if insulated(one)), found[0] if found else None)
