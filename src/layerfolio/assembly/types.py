"""The resolved assembly: after this door nobody looks anything up. SI floats throughout; every figure is a Datum."""

from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Literal

from layerfolio.catalogue.datum import Datum, Document
from layerfolio.units.quantity import Quantity

if TYPE_CHECKING:
    from layerfolio.assembly.beside import Fasteners, InvertedRoof, UnheatedSpace
    from layerfolio.catalogue.completions import Completions

Kind = Literal["wall", "roof", "ceiling", "floor", "slab", "foundation-wall"]
Direction = Literal["up", "horizontal", "down"]
HatchFamily = (
    str  # a key of shared/hatches.yaml: timber, strand board, plywood, batt, wood fibre, mineral board, gypsum, ...
)


@dataclass(frozen=True, slots=True)
class Choice:
    """A decision the tool made where the project file left it open; printed on the sheet."""

    text: str
    because: str
    source: str = ""


@dataclass(frozen=True, slots=True)
class VapourFigures:
    """What is known of a layer's resistance to vapour, dry and wet cup; a missing cup is None.

    `basis` tells the quantity: `mu` vapour resistance factor (1), `permeability` kg/(m.s.Pa), `permeance` kg/(m2.s.Pa) of
    the layer as built, `s_d` equivalent air layer of the layer as built, m.
    """

    basis: Literal["mu", "permeability", "permeance", "s_d"]
    dry: Datum | None
    wet: Datum | None
    single: bool = False  # one number was given and serves both cups


@dataclass(frozen=True, slots=True)
class Member:
    """Framing inside a layer, or the battens of a cavity."""

    name: str  # stud, rafter, joist, batten, web ...
    material: str  # catalogue or project name, empty when only a resistance was given
    title: str  # as printed
    family: HatchFamily
    share: Datum  # of the layer's area, 1
    width: Quantity | None
    spacing: Quantity | None
    direction: str  # vertical | horizontal | up the slope | across the slope | "" unknown
    member_id: str  # members of one id overlap: the smaller share lies wholly inside the larger
    conductivity: Datum | None
    resistivity: Datum | None  # m.K/W, as the NBC prints it per millimetre
    resistance: Datum | None  # of the member through the layer, as given, m2.K/W
    is_metal: bool = False
    density: Datum | None = None
    specific_gravity: Datum | None = None  # of its wood, as the project states it
    staggered: bool = False  # its members stand half a spacing beside those of the other framing


@dataclass(frozen=True, slots=True)
class Layer:
    """One layer, numbered from the outside. At most one of resistance, resistivity, conductivity decides heat (in that order)."""

    number: int
    name: str  # unique in the assembly; what results and findings use
    title: str  # as printed, capital first
    kind: Literal["solid", "membrane", "cavity"]
    material: str  # catalogue or project name; empty for cavities and free-standing layers
    family: HatchFamily
    thickness: Quantity | None  # None: a membrane, or a layer given by resistance alone
    conductivity: Datum | None
    resistivity: Datum | None
    resistance: Datum | None
    vapour: VapourFigures | None
    density: Datum | None
    specific_heat: Datum | None
    member: Member | None
    cavity: Literal["", "unventilated", "slightly ventilated", "ventilated"]
    cavity_openings: Quantity | None
    serves: tuple[str, ...]
    seams: str
    counts: bool  # False: a ventilated cavity, or outside one
    insulating: bool  # belongs to the thermal control line
    documents: tuple[Document, ...] = ()
    is_cladding: bool = False  # of the catalogue's claddings
    also_published: tuple[
        tuple[str, str, Datum], ...
    ] = ()  # other published figures that disagree: what, glossary name, figure
    path: str = ""  # in the project file, for warnings
    absorbent: bool = True  # False: condensate runs off (foils, foams, metals, mineral wool, air spaces)
    timber: bool = False  # wood or a wood-based panel
    fasteners: "Fasteners | None" = None
    air_voids: int | None = None  # level 0, 1 or 2 of ISO 6946; None: not stated
    flame_spread: Datum | None = None  # rating, of the layer's own or its material's statement
    smoke_developed: Datum | None = None
    specific_gravity: Datum | None = None  # of its wood, as the project states it
    compressive_strength: Datum | None = None  # of a board, Pa, as the project states it


@dataclass(frozen=True, slots=True)
class Assembly:
    """One wall, roof, ceiling, floor, slab or foundation wall, resolved under one code set."""

    name: str
    kind: Kind
    title: str
    area: Quantity | None
    faces: str  # outside air | vented space | unheated space | ground
    slope: float  # degrees from horizontal
    heat_direction: Direction
    set_id: str
    method: str  # what the set asks for: isothermal-planes | parallel-path | combined
    inside_film: Datum
    outside_film: Datum
    layers: tuple[Layer, ...]  # from the outside in
    choices: tuple[Choice, ...]
    ground: dict = field(default_factory=dict)  # answers of the project file about the ground, SI values
    path: str = ""
    still: "Assembly | None" = None  # the same with its slightly ventilated cavity as a still one, where the set weighs the two
    openings: float | None = None  # of that cavity, mm2/m
    roof_space: Datum | None = None  # resistance of the unheated space over it, m2.K/W, where the set counts it
    unheated_space: "UnheatedSpace | None" = None  # where the set counts it
    inverted_roof: "InvertedRoof | None" = None  # where the set counts it
    completions: "Completions | None" = None  # the set's data for corrections, where it counts them and one is stated

    def layer(self, name: str) -> Layer:
        """The layer of that name; KeyError when there is none."""
        for one in self.layers:
            if one.name == name:
                return one
        raise KeyError(name)
