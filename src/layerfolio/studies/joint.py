"""How cladding hangs through insulation: which layers the fasteners hold together, and what they cross on the way."""

from dataclasses import dataclass

from layerfolio.assembly.beside import Fasteners
from layerfolio.assembly.types import Assembly, Layer, Member

DESIGN = "to be designed by a licensed professional"
WOOD_PANELS = ("plywood", "strand-board")


@dataclass(frozen=True, slots=True)
class Joint:
    """From the outside in: what hangs, the side member under the fastener's head, what is crossed, the framing. Lengths in m.

    `side` carries battens, or is the cladding itself where it is nailed straight through (`direct`). `carrier` is the layer
    whose fasteners these are, None while none are stated.
    """

    assembly: Assembly
    side: Layer
    crossed: tuple[Layer, ...]
    main: Layer | None
    carrier: Layer | None

    @property
    def direct(self) -> bool:
        return self.side.kind != "cavity"

    @property
    def fasteners(self) -> Fasteners | None:
        return self.carrier.fasteners if self.carrier else None

    @property
    def battens(self) -> Member | None:
        return None if self.direct else self.side.member

    @property
    def hung(self) -> tuple[Layer, ...]:
        """What hangs outside the insulation, the side member with it."""
        return tuple(one for one in self.assembly.layers if one.number <= self.side.number)

    @property
    def clad(self) -> bool:
        """Whether something solid hangs on it; battens alone, or under a membrane, carry what the file does not state."""
        return self.direct or any(one.kind == "solid" for one in self.hung)

    @property
    def borrowed(self) -> bool:
        """Whether the fasteners are stated of what is crossed, of a board perhaps, and not of what hangs."""
        return self.carrier is not None and self.carrier is not self.side

    @property
    def outer_panels(self) -> tuple[Layer, ...]:
        """Wood panels outside insulation."""
        inmost = max((one.number for one in self.insulation), default=0)
        return tuple(one for one in self.crossed if one.family in WOOD_PANELS and one.number < inmost)

    @property
    def insulation(self) -> tuple[Layer, ...]:
        return tuple(one for one in self.crossed if one.insulating and one.kind == "solid")

    @property
    def side_thickness(self) -> float | None:
        return self.side.thickness.value if self.side.thickness else None

    @property
    def gap(self) -> float | None:
        """Depth of all that is crossed, sheathing too: none of it is counted as bearing. None where a thickness is missing."""
        return _depth(self.crossed)

    @property
    def insulation_depth(self) -> float | None:
        return _depth(self.insulation)

    @property
    def panel_depth(self) -> float:
        """Depth of the wood panels that lie straight on the framing."""
        found = 0.0
        for one in reversed([x for x in self.crossed if x.kind != "membrane"]):
            if one.family not in WOOD_PANELS or not one.thickness:
                break
            found += one.thickness.value
        return found

    @property
    def foam(self) -> bool:
        """Whether all insulation that is crossed is foam, with nothing but wood panels and membranes beside it."""
        rest = [one for one in self.crossed if one not in self.insulation and one.kind != "membrane"]
        plain = all(one.kind == "solid" and one.family in WOOD_PANELS for one in rest)
        return plain and all(one.family == "foam" for one in self.insulation)

    @property
    def penetration(self) -> float | None:
        """Length of the fastener in the framing, its head flush with the side member; 0 where it does not reach."""
        parts = (self.fasteners.length if self.fasteners else None, self.side_thickness, self.gap)
        if None in parts:
            return None
        length, side, gap = parts
        return max(0.0, length - side - gap)


def _depth(layers: tuple[Layer, ...]) -> float | None:
    solid = [one for one in layers if one.kind != "membrane"]
    if any(one.thickness is None for one in solid):
        return None
    return sum(one.thickness.value for one in solid)


def joint(assembly: Assembly) -> Joint | None:
    """The joint through the insulation outside the framing; None where no cladding hangs outside insulation."""
    main = next((one for one in assembly.layers if one.member and one.kind == "solid"), None)
    end = main.number if main else _end_of_fasteners(assembly)
    outer = [one for one in assembly.layers if one.number < end]
    boards = [one for one in outer if one.insulating and one.kind == "solid"]
    if not boards:
        return None
    outside = [one for one in outer if one.number < boards[0].number]
    side = next((one for one in reversed(outside) if one.kind == "cavity" and one.member), None)
    if side is None:
        side = next((one for one in reversed(outside) if one.kind == "solid"), None)
    if side is None:
        return None
    crossed = tuple(one for one in outer if one.number > side.number)
    return Joint(assembly, side, crossed, main, _carrier(side, crossed))


def _end_of_fasteners(assembly: Assembly) -> int:
    """Without framing the layer inside the innermost one with fasteners is what they are driven into."""
    numbers = [one.number for one in assembly.layers if one.fasteners]
    return max(numbers, default=-1) + 1


def _carrier(side: Layer, crossed: tuple[Layer, ...]) -> Layer | None:
    """Fasteners stated on the side member come first, then those on what they cross; battens hung outside have their own."""
    return next((one for one in (side, *crossed) if one.fasteners), None)
