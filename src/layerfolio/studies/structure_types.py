"""What the structural studies give: loads of an assembly, a cladding's attachment, a line of bracing. SI floats."""

from dataclasses import dataclass

from layerfolio.steps.trace import Trace


@dataclass(frozen=True, slots=True)
class LayerLoad:
    """Weight of one layer per area of assembly, Pa; None where its density or thickness is not known."""

    name: str
    title: str
    load: float | None
    of_members: float | None  # what its framing adds, Pa
    source: str
    mark: str


@dataclass(frozen=True, slots=True)
class DeadLoad:
    """Dead load per area measured in the plane of the assembly, Pa; None while a layer's figure is missing."""

    assembly: str
    layers: tuple[LayerLoad, ...]
    total: float | None
    on_fasteners: float | None  # what hangs outside the insulation that the fasteners cross, Pa
    missing: tuple[str, ...]
    trace: Trace
    on_plan: float | None = None  # per area of plan, Pa: more than the total where the part is sloped; None for walls


@dataclass(frozen=True, slots=True)
class YieldMode:
    """One mode of the dowel yield equations: its name (Im, Is, II, IIIm, IIIs, IV) and reference capacity, N."""

    name: str
    capacity: float


@dataclass(frozen=True, slots=True)
class Attachment:
    """Furring or cladding fastened through insulation into framing. Forces in N per fastener, lengths in m.

    `gap` is the depth of what carries no bearing between side member and framing. `insulating_foam`: whether the published
    table for foam plastics speaks of it. `missing` names what the project file would have to state; then no capacities stand.
    """

    assembly: str
    layer: str  # the layer that carries the fasteners
    gap: float | None
    side_thickness: float | None
    penetration: float | None
    modes: tuple[YieldMode, ...]
    governing_mode: str
    capacity_lateral: float | None
    demand: float | None
    withdrawal_capacity: float | None
    withdrawal_demand: float | None
    insulating_foam: bool
    missing: tuple[str, ...]
    trace: Trace
    refused: tuple[str, ...] = ()  # limits of the method that are passed: to be designed by a licensed professional
    fastener: str = ""  # in the project file's words
    kind: str = ""  # nail | screw | lag, empty while it is not known
    diameter: float | None = None  # outer
    length: float | None = None
    spacing: float | None = None  # along the furring
    rows: float | None = None  # from furring to furring
    weight: float | None = None  # of what hangs outside the insulation, Pa
    insulation_depth: float | None = None
    side: str = ""  # number and title of the layer under the fastener's head
    main: str = ""  # number and title of the framing


@dataclass(frozen=True, slots=True)
class UnitShear:
    """Unit shear of a line's panels by the published table, N/m: information for the engineer, never a verdict.

    `wind` and `seismic` are nominal; `design_*` those of allowable stress design, by the edition that `edition` names, with
    the species factor and without that of narrow panels, which `aspect` gives for the narrowest (None: beyond the limit).
    """

    row: str  # panel, nail and spacing in words
    wind: float
    seismic: float
    design_wind: float
    design_seismic: float
    edition: str
    gravity: float
    species: float
    aspect: float | None
    marks: tuple[str, ...]  # every figure that is not read in a source, in words
    source: str


@dataclass(frozen=True, slots=True)
class WallLineStudy:
    """Geometry of a line of bracing: lengths in m. `shares` is panel length over line length, `gaps` clear distances."""

    name: str
    assembly: str
    length: float
    height: float
    panels: tuple[tuple[float, float], ...]  # (start, length) in order; start may be assumed, then `laid_out` is False
    laid_out: bool
    total_panels: float
    share: float
    greatest_gap: float | None
    end_distance: float | None
    missing: tuple[str, ...]
    trace: Trace
    stated: object = None  # the project file's own record
    unit_shear: float | None = None  # for wind, allowable stress design, N/m; information
    shear: UnitShear | None = None
    aspect_ratios: tuple[float, ...] = ()  # height over length, panel by panel
    gaps: tuple[float, ...] = ()  # clear distances between panels, in order; empty while places are not stated
    ends: tuple[float, float] | None = None  # from the start to the first panel, from the last to the end
