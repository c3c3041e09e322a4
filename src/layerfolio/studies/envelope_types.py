"""What the studies of openings, of the ground and of the whole envelope give. SI floats; None: a figure is missing."""

from dataclasses import dataclass
from typing import Literal

from layerfolio.catalogue.datum import Datum
from layerfolio.steps.trace import Trace

Part = Literal["assembly", "opening", "join"]


@dataclass(frozen=True, slots=True)
class OpeningStudy:
    """A window, door, skylight or hatch: `count` of one size. `area` is of one, m2; transmittance in W/(m2.K).

    `how` tells where the transmittance comes from: computed (ISO 10077-1), stated (in `basis`, the person's words) or
    missing. `figure` carries value and origin for the source mark. `missing` names what a computed value lacks.
    """

    name: str
    kind: str  # window | door | skylight | hatch | glass-block | vehicle-door
    title: str
    wall: str  # the assembly it is in
    orientation: str
    count: int
    width: float
    height: float
    area: float
    transmittance: float | None
    how: Literal["computed", "stated", "missing"]
    basis: str
    solar_factor: float | None
    figure: Datum | None
    missing: tuple[str, ...]
    trace: Trace
    stated: object = None  # the project file's own record (reading Opening): sizes, egress, evidence as written

    @property
    def total_area(self) -> float:
        return self.area * self.count


@dataclass(frozen=True, slots=True)
class GroundStudy:
    """An assembly against the ground by ISO 13370. `kind`: slab on ground, suspended floor, basement floor, basement wall."""

    assembly: str
    kind: str
    transmittance: float | None  # with edge insulation where there is any, W/(m2.K)
    characteristic_dimension: float | None  # B, m
    equivalent_thickness: float | None  # d_f or d_w, m
    missing: tuple[str, ...]  # keys of the project file that are wanted
    trace: Trace


@dataclass(frozen=True, slots=True)
class EnvelopePart:
    """One line of the heat-loss sum: an assembly (net of its openings), openings, or a join.

    `size` is m2 (m for a join), `figure` W/(m2.K) (W/(m.K)), `conductance` W/K; None where `lacking` says what is missing.
    `step` is the sheet where the figure was calculated ("W1-T", "C4"), empty where it is a stated one.
    """

    kind: Part
    name: str
    title: str
    size: float | None
    figure: float | None
    conductance: float | None
    step: str = ""
    lacking: str = ""
    datum: Datum | None = None
    group: str = ""  # wall | roof | ceiling | floor | slab | foundation-wall | window | door | skylight | join ...


@dataclass(frozen=True, slots=True)
class HeatLoss:
    """Design heat loss in winter, W: of each part in the order of `parts`, of the air, of all together."""

    indoor: float
    outdoor: float
    by_part: tuple[tuple[str, float], ...]
    transmission: float
    air: float | None
    total: float | None
    air_changes: float | None  # per hour, in use
    lacking: str = ""


@dataclass(frozen=True, slots=True)
class BuildingStudy:
    """The whole envelope. `conductance` is the sum over all parts, W/K; None while a part lacks a figure or a size."""

    parts: tuple[EnvelopePart, ...]
    conductance: float | None
    heat_loss: HeatLoss | None
    trace: Trace
    lacking: tuple[str, ...] = ()
