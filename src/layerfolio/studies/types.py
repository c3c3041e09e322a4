"""What a study gives: typed results and the trace that a reader can follow with a pocket calculator."""

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from layerfolio.assembly.types import Assembly, Layer
from layerfolio.steps.trace import Trace

if TYPE_CHECKING:
    from layerfolio.studies.corrections import Corrections


@dataclass(frozen=True, slots=True)
class MethodResult:
    """Resistance surface to surface with films, m2.K/W, and its reciprocal; limits only where the method has them."""

    resistance: float
    transmittance: float
    upper_limit: float | None = None
    lower_limit: float | None = None
    within_limits: bool = True


@dataclass(frozen=True, slots=True)
class LayerHeat:
    """Resistance of one layer: of its main material and with its framing by parallel paths; None where it does not count."""

    layer: Layer
    resistance: float | None
    member_resistance: float | None
    with_framing: float | None


@dataclass(frozen=True, slots=True)
class Interface:
    """Temperature at a face, degC: through the insulation and, where it is framed, along the path of least resistance.

    `between` names the two neighbours from the outside in, "outside air" and "room air" at the ends.
    """

    between: tuple[str, str]
    temperature: float
    through_framing: float | None


@dataclass(frozen=True, slots=True)
class ThermalStudy:
    assembly: Assembly
    layers: tuple[LayerHeat, ...]  # those that count, from the outside in
    by_method: dict[str, MethodResult]  # isothermal-planes, parallel-path, combined
    framing_share_of_heat: float | None
    interfaces: tuple[Interface, ...]  # empty without a design temperature
    missing: tuple[str, ...]  # names of layers without a thermal figure; then by_method is empty
    trace: Trace
    corrections: "Corrections | None" = None  # None: nothing is stated that the set would count

    @property
    def method(self) -> str:
        return self.assembly.method

    @property
    def asked(self) -> MethodResult | None:
        """The result by the method the set asks for; None when a figure is missing."""
        return self.by_method.get(self.method)

    @property
    def final(self) -> MethodResult | None:
        """What is judged and summed up: the result that is asked, with its corrections where they count."""
        asked, found = self.asked, self.corrections
        if asked is None or found is None or not found.counted:
            return asked
        return replace(asked, resistance=1 / found.corrected_transmittance, transmittance=found.corrected_transmittance)


@dataclass(frozen=True, slots=True)
class LayerVapour:
    """Equivalent air layer thickness (m) and permeance (kg/(m2.s.Pa)) of one layer, dry and wet cup; None: no data."""

    layer: Layer
    s_d_dry: float | None
    s_d_wet: float | None
    permeance_dry: float | None
    permeance_wet: float | None


@dataclass(frozen=True, slots=True)
class VapourStudy:
    """What the layers let through; `ratio` is a rule of thumb (common practice, no source), never a verdict."""

    assembly: Assembly
    layers: tuple[LayerVapour, ...]  # those inside the ventilated cavity, from the outside in
    control_layer: str | None
    control: LayerVapour | None
    main_insulation: str | None
    inside_s_d: float | None
    outside_s_d: float | None
    ratio: float | None
    missing: tuple[str, ...]
    trace: Trace
