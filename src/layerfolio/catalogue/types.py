"""What a material of the catalogue is: the room's door."""

from dataclasses import dataclass

from layerfolio.catalogue.datum import Datum
from layerfolio.catalogue.figures import Basis


@dataclass(frozen=True, slots=True)
class Vapour:
    """What is published of a material's resistance to vapour, dry and wet cup; a missing cup is None.

    `basis`: `mu` vapour resistance factor (1); `s_d` equivalent air layer (m) and `permeance` (kg/(m2.s.Pa)) of the
    product as built. `single`: one number serves both cups. `at_thickness` (m): the figure holds for that one only.
    """

    basis: Basis
    dry: Datum | None
    wet: Datum | None
    single: bool = False
    at_thickness: float | None = None


@dataclass(frozen=True, slots=True)
class Published:
    """Another published figure, not chosen. `quantity` and `cup` as in Figure; `what` says in words what it is."""

    what: str
    quantity: str
    cup: str
    datum: Datum
    at_thickness: float | None = None


@dataclass(frozen=True, slots=True)
class Material:
    """A catalogue material; SI figures, None where none is published. Exactly what its file says.

    `family`: a key of shared/hatches.yaml. `resistance` (m2.K/W) is of the product as built, `resistance_at` (m) thick
    where that is set. `insulating`: belongs to the thermal control line. `timber`: wood or a wood-based panel.
    `absorbent`: False for foams, metals, foils, mineral wool, dense concrete (din-4108-3-2018 groups them so).
    `decided_by_report`: quantities for which published values straddle code limits, so that only the product's own test
    report decides. `needs`: what a declared value must still supply.
    """

    name: str
    title: str
    family: str
    conductivity: Datum | None
    density: Datum | None
    specific_heat: Datum | None
    resistance: Datum | None
    resistance_at: float | None
    vapour: Vapour | None
    also_published: tuple[Published, ...] = ()
    insulating: bool = False
    metal: bool = False
    timber: bool = False
    membrane: bool = False
    absorbent: bool = True
    cladding: bool = False
    decided_by_report: tuple[str, ...] = ()
    needs: tuple[str, ...] = ()
    note: str = ""

    def disagreeing(self) -> tuple[Published, ...]:
        """The other published heat and vapour figures that differ from the chosen ones, in file order."""
        vapour = self.vapour
        chosen = {("conductivity", self.conductivity.value)} if self.conductivity else set()
        if vapour:
            chosen |= {(vapour.basis, datum.value) for datum in (vapour.dry, vapour.wet) if datum}
        skipped = ("density", "specific_heat")
        return tuple(
            one
            for one in self.also_published
            if one.quantity not in skipped and (one.quantity, one.datum.value) not in chosen
        )
