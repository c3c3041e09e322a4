"""What a section through the building is made of, and the heights in it, mm."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from layerfolio.assembly.courses import courses
from layerfolio.assembly.junction_types import Junction
from layerfolio.assembly.types import Assembly
from layerfolio.drawing.detail.arm import Arm
from layerfolio.drawing.detail.sill_place import SillPlace

STOREY, SILL_HEIGHT = 2400.0, 900.0  # as drawn where nothing is stated
SPAN = 2600.0  # of roof inside the frame, where nobody says how far the ridge is
PLATES, LEAST = 100.0, 30.0  # of plates over a window; of wall between both, below which the window is left out
ROUND = 240.0  # of wall that belongs to an edge of the window


@dataclass(frozen=True)
class BuildingCut:
    """What a section is made of: the first junction of each kind, storeys from the ground up in m, `span` in m from the wall's
    frame to the ridge, None where nobody says; `shown`: mm of it that are drawn, where the whole does not fit."""

    junctions: Sequence[Junction]
    assemblies: Mapping[str, Assembly]
    storeys: Sequence[float]
    span: float | None
    scale: float
    shown: float | None = None

    def first(self, kind: str) -> Junction | None:
        return next((one for one in self.junctions if one.kind == kind and not one.cannot), None)

    @cached_property
    def wall(self) -> Assembly | None:
        lead = self.first("sill") or self.first("eave")
        return self.assemblies[lead.of[0]] if lead else None

    @cached_property
    def levels(self) -> tuple[float, ...]:
        """y of the deck of each storey, then of the top of the plates."""
        found = [0.0]
        for one in self.storeys or (STOREY / 1000,):
            found.append(found[-1] + one * 1000)
        return tuple(found)

    @property
    def right(self) -> float:
        whole = self.span * 1000 if self.span else SPAN
        return min(whole, self.shown) if self.shown else whole

    @cached_property
    def window(self) -> tuple[float, float] | None:
        """y of the lower and upper edge of the window in the lowest storey."""
        head = self.first("window head")
        if head is None or self.wall is None or head.of[0] != self.wall.name or not head.opening_size:
            return None
        low = self.finish + (SILL_HEIGHT if head.sill_height is None else head.sill_height * 1000)
        high = low + head.opening_size[1] * 1000
        fits = low >= max(self.finish, 0.0) + ROUND + 60.0 and self._over(high) >= LEAST
        return (low, high) if fits else None

    @property
    def over_window(self) -> float:
        """mm of wall over the window that are drawn with its head."""
        return min(ROUND, self._over(self.window[1])) if self.window else 0.0

    def _over(self, high: float) -> float:
        """From the head of the window up to the plates."""
        return self.levels[1] - self._floor_above - PLATES - high

    @property
    def _floor_above(self) -> float:
        """Depth of the floor between the storeys below its deck, or of what hangs below the roof's frame."""
        if len(self.levels) == 2:
            eave = self.first("eave")
            hung = courses(self.assemblies[eave.of[1]]) if eave else ()
            return sum(one.depth for one in hung if one.zone == "inner")
        rim = self.first("rim")
        if rim is None:
            return 0.0
        place = SillPlace(rim, Arm(self.wall), self.assemblies[rim.of[1]], self.scale)
        return max(0.0, -place.whole)

    @cached_property
    def finish(self) -> float:
        """y of the lowest finished floor."""
        sill = self.first("sill")
        return SillPlace(sill, Arm(self.wall), self.assemblies[sill.of[1]], self.scale).finish if sill else 0.0
