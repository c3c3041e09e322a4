"""What a joint through insulation must state to be calculated, and where the method ends."""

from dataclasses import dataclass, field

from layerfolio.assembly.types import Layer
from layerfolio.catalogue.datum import Datum
from layerfolio.catalogue.fastening import fastener_data
from layerfolio.studies.fastener_kinds import kind_of
from layerfolio.studies.joint import Joint
from layerfolio.studies.layer_heat import subject
from layerfolio.studies.structure_types import DeadLoad
from layerfolio.units.quantity import Quantity


@dataclass(slots=True)
class Inputs:
    """Figures of a joint, None while unknown; `missing` keys of the project file, `refused` limits that are passed.

    `taken`: woods whose stamp is not named, each with the group it is taken as; only a calculation may lean on them.
    """

    joint: Joint
    kind: str = ""
    bending_yield: Datum | None = None
    side_gravity: Datum | None = None
    main_gravity: Datum | None = None
    rows: float | None = None
    weight: float | None = None
    missing: list[str] = field(default_factory=list)
    refused: list[str] = field(default_factory=list)
    taken: list[str] = field(default_factory=list)
    not_wood: str = ""  # why the side member cannot be calculated; a published table may still speak of it


def inputs(joint: Joint, load: DeadLoad) -> Inputs:
    """Everything that the calculation takes, with what is missing and what is refused."""
    found = Inputs(joint, weight=load.on_fasteners)
    _fastener(found)
    _members(found)
    _spacing(found)
    if not joint.clad:
        found.missing.append(f"the cladding outside layer {subject(joint.side)}")
    found.missing += [f"density of layer {subject(one)}" for one in joint.hung if one.name in load.missing]
    if joint.assembly.kind != "wall" or joint.assembly.slope < 60:
        found.refused.append(f"only walls are calculated, not a {joint.assembly.kind} at {joint.assembly.slope:g}°")
    return found


def _fastener(found: Inputs) -> None:
    pins = found.joint.fasteners
    if pins is None:
        found.missing.append(f"fasteners of layer {subject(found.joint.side)}")
        return
    found.kind = kind_of(pins.kind)
    if not pins.kind:
        found.missing.append("fasteners.kind (nail, wood screw or lag screw)")
    elif not found.kind:
        found.refused.append(f"only nails, wood screws and lag screws are calculated, not {pins.kind}")
    found.missing += [f"fasteners.{key}" for key, value in (("length", pins.length), ("diameter", pins.outer)) if value is None]
    if found.kind in ("screw", "lag") and pins.root is None:
        found.missing.append("fasteners.root_diameter")
    _steel(found)


def _steel(found: Inputs) -> None:
    """Bending yield strength: the fastener's own report, else the table by outer diameter."""
    pins, data = found.joint.fasteners, fastener_data()
    found.bending_yield = pins.bending_yield or (data.steel(pins.outer) if pins.outer else None)
    if pins.outer and found.bending_yield is None:
        low, high = data.figures["steel.least"].value * 1000, data.steels[-1][0] * 1000
        needed = "the fastener's own report is needed (fasteners.bending_yield_strength)"
        said = f"a diameter of {round(pins.outer * 1000, 2):g} mm is outside the table of steels"
        found.refused.append(f"{said}, {low:.3g} mm to {high:.3g} mm: {needed}")


def _members(found: Inputs) -> None:
    joint = found.joint
    if joint.main is None or joint.main.member is None:
        found.missing.append("framing of the layer that the fasteners are driven into")
    else:
        member = joint.main.member
        found.main_gravity = _gravity(found, member.material, member.specific_gravity, member.title)
        if member.is_metal:
            found.refused.append("members of metal are not calculated")
    if joint.direct:
        wood = joint.side.timber
        found.side_gravity = _gravity(found, joint.side.material, joint.side.specific_gravity, joint.side.title) if wood else None
        if not wood:
            found.not_wood = f"cladding that is not wood is not calculated as a side member ({joint.side.title})"
    else:
        batten = joint.battens
        found.side_gravity = _gravity(found, batten.material, batten.specific_gravity, batten.title)
    found.missing += [f"thickness of layer {subject(one)}" for one in (joint.side, *joint.crossed) if _without(one)]


def _without(layer: Layer) -> bool:
    return layer.kind != "membrane" and layer.thickness is None


def _gravity(found: Inputs, material: str, stated: Datum | None, title: str) -> Datum | None:
    """Specific gravity as stated, else of the species group that the name says or is taken as."""
    data = fastener_data()
    if stated is None:
        group, sure = data.gravity(material)
        if group is None:
            found.missing.append(f"specific_gravity of {title}")
            return None
        if not sure:
            found.taken.append(f"{title} taken as {group.title}, G {group.gravity.value:g}: its stamp is not named")
        return group.gravity
    low, high = (data.figures[f"gravity.{end}"].value for end in ("least", "most"))
    if not low <= stated.value <= high:
        found.refused.append(f"a specific gravity of {stated.value:g} ({title}) is outside {low:g} to {high:g}")
    return stated


def _spacing(found: Inputs) -> None:
    """Distance of the rows: of the furring or as stated, the larger; vertical furring has to lie over the studs."""
    joint, pins = found.joint, found.joint.fasteners
    laths = joint.battens.spacing if joint.battens else None
    batten = laths.value if laths else None
    studs = joint.main.member.spacing if joint.main and joint.main.member else None
    stated = pins.rows if pins else None
    found.rows = max((one for one in (batten, stated, studs.value if joint.direct and studs else None) if one), default=None)
    if pins is not None and pins.spacing is None and not pins.per_area:
        found.missing.append("fasteners.spacing")
    if found.rows is None and not (pins and pins.per_area):
        found.missing.append("fasteners.rows_at, or the spacing of the battens")
    if joint.battens and joint.battens.direction == "vertical" and joint.main and joint.main.member:
        _over(found, laths or stated, studs)


def _over(found: Inputs, apart: Quantity | float | None, studs: Quantity | None) -> None:
    """Vertical furring lies over the studs: their spacing has to be known."""
    if studs is None:
        found.missing.append(f"spacing of {found.joint.main.member.title}")
        return
    value = apart.value if isinstance(apart, Quantity) else apart
    if value and not over_studs(value, studs.value):
        said = apart.text if isinstance(apart, Quantity) else f"{value * 1000:.4g} mm"
        found.refused.append(f"vertical furring at {said} does not lie over studs at {studs.text}")


def over_studs(furring: float, studs: float) -> bool:
    """Whether furring of that spacing (m) can lie over studs of that spacing throughout."""
    times = furring / studs
    return round(times) >= 1 and abs(times - round(times)) < 0.02

