"""Where assemblies meet, resolved: which layer of one side joins which of the other, control by control. SI throughout."""

from dataclasses import dataclass
from typing import Literal

from layerfolio.assembly.types import Choice

JunctionKind = Literal[
    "sill", "rim", "eave", "verge", "ridge", "outside corner", "inside corner", "window head", "window sill", "window jamb",
    "penetration",
]  # fmt: skip
Letter = Literal["W", "A", "V", "T"]


@dataclass(frozen=True, slots=True)
class Link:
    """How one control passes a junction: from a layer of the first side to a layer of the second.

    `start` and `end` are (assembly, layer) names, None where that side has no layer for this control. `by` says what joins
    them, in words of the trade: tape, lap, gasket, sealant, turned up, same layer, in contact. `broken` is empty, or the
    reason why the control does not pass.
    """

    letter: Letter
    start: tuple[str, str] | None
    end: tuple[str, str] | None
    by: str = ""
    words: str = ""  # as printed: "panel-15 taped to the slab membrane"
    broken: str = ""


@dataclass(frozen=True, slots=True)
class Junction:
    """One place where parts meet. Lengths in m; what the project file does not say was derived and stands in `choices`."""

    number: int  # in the building section and the schedule, from 1
    kind: JunctionKind
    of: tuple[str, ...]  # assemblies, the one drawn first first; then the opening
    title: str  # "Sill: wall W1 on slab S1"
    links: tuple[Link, ...]
    stated: bool = False  # in `joins`; else derived
    opening: str = ""  # name of the opening that meets the wall
    overhang: float | None = None  # eave, verge: from the outer face of the wall's cladding
    ground_level: float | None = None  # sill: of the ground against the finished floor, below zero where lower
    clearance: float | None = None  # sill: foot of the cladding over the ground, where the project states one
    foundation: str = ""  # slab edge | wall | piers | piles | none
    frame_set: str = ""  # window: in the insulation | at the outside | in the framing
    frame_depth: float = 0.07
    frame_width: float = 0.11
    opening_size: tuple[float, float] | None = None  # width and height of the opening
    sill_height: float | None = None  # of the opening over the finished floor, where the project states it
    edge_insulation: tuple[float, float] | None = None  # sill on a slab: thickness and depth
    choices: tuple[Choice, ...] = ()
    cannot: str = ""  # why the two cannot be drawn meeting; empty where they can
    path: str = ""  # in the project file, for problems

    def link(self, letter: str) -> Link | None:
        """How one control passes; None where no side has a layer for it."""
        return next((one for one in self.links if one.letter == letter), None)

    @property
    def broken(self) -> tuple[Link, ...]:
        """The controls that do not pass."""
        return tuple(one for one in self.links if one.broken)
