"""Dead load of an assembly from its layers: density, thickness, what framing and battens take of the area."""

from math import cos, radians

from layerfolio.assembly.types import Assembly, Layer
from layerfolio.catalogue.datum import Datum
from layerfolio.formulas import loads as f
from layerfolio.steps.trace import Recorder
from layerfolio.studies.joint import joint
from layerfolio.studies.layer_heat import source_words, subject
from layerfolio.studies.structure_types import DeadLoad, LayerLoad
from layerfolio.units.symbols import GRAVITY

STEEPEST = 80.0  # degrees up to which a part has a weight per area of plan


def dead_load(assembly: Assembly) -> DeadLoad:
    """Weight of each layer per area in the plane of the assembly, Pa; membranes and air weigh nothing here."""
    record = Recorder()
    record.section("Weight of the layers", key="weights")
    record.given("g_n", GRAVITY, "weight of a unit of mass", "common-practice, standard gravity")
    found = tuple(_layer(one, GRAVITY, record) for one in assembly.layers)
    missing = tuple(one.name for one in found if one.load is None)
    if any(one.kind == "membrane" and not _figures(one) for one in assembly.layers):
        record.choice("Membranes are not counted", "none that is stated here has a density and a thickness; they weigh little")
    total = _sum(found, "all layers", record) if not missing else None
    plan = _on_plan(assembly, total, record)
    return DeadLoad(assembly.name, found, total, _hung(assembly, found, total, record), missing, record.done(), plan)


def _sum(loads: tuple[LayerLoad, ...], about: str, record: Recorder) -> float:
    parts = tuple(one.load for one in loads if one.load)
    return record.step(f.dead_load_sum, about=about, p_l=parts) if parts else 0.0


def _on_plan(assembly: Assembly, total: float | None, record: Recorder) -> float | None:
    """The weight per area of plan; None for walls, for what is as steep as one, and while the total is not known."""
    if total is None or assembly.kind == "wall" or assembly.slope > STEEPEST:
        return None
    if not assembly.slope:
        return total
    cosine = record.given("c_s", cos(radians(assembly.slope)), f"slope of {assembly.slope:g}°", "project file, slope")
    return record.step(f.load_on_plan, p_D=total, c_s=cosine)


def _hung(assembly: Assembly, loads: tuple[LayerLoad, ...], total: float | None, record: Recorder) -> float | None:
    """What hangs outside the insulation that fasteners cross; None without such a joint, or while a figure is missing."""
    found = joint(assembly)
    if found is None:
        return None
    names = [one.name for one in found.hung]
    hung = tuple(one for one in loads if one.name in names)
    if any(one.load is None for one in hung):
        return None
    record.section("Weight outside the insulation", key="hung")
    return _sum(hung, "layers outside the insulation", record)


def _figures(layer: Layer) -> bool:
    return bool(layer.density and layer.thickness)


def _layer(layer: Layer, gravity: float, record: Recorder) -> LayerLoad:
    """One layer: its main material between its members, and the members."""
    about, datum = subject(layer), layer.density
    source, mark = (source_words(datum), datum.origin.mark) if datum else ("", "")
    if layer.kind == "membrane" and not _figures(layer):
        return LayerLoad(layer.name, layer.title, 0.0, None, "not counted", "")
    share = layer.member.share.value if layer.member else 0.0
    members = _members(layer, share, gravity, record)
    if layer.kind == "cavity":
        wood = layer.member.density if layer.member else None
        source, mark = (source_words(wood), wood.origin.mark) if wood else ("air", "")
        return LayerLoad(layer.name, layer.title, members, members or None, source, mark)
    if not _figures(layer) or members is None:
        return LayerLoad(layer.name, layer.title, None, members or None, source, mark)
    own = _own(layer, datum, share, gravity, about, record)
    return LayerLoad(layer.name, layer.title, own + members, members or None, source, mark)


def _own(layer: Layer, density: Datum, share: float, gravity: float, about: str, record: Recorder) -> float:
    figures = {"rho": density.value, "g_n": gravity, "d_l": layer.thickness.value}
    if not share:
        return record.step(f.layer_weight, about=about, **figures)
    between = record.step(f.share_between, about=about, f_fr=share)
    return record.step(f.part_weight, about=about, f=between, **figures)


def _members(layer: Layer, share: float, gravity: float, record: Recorder) -> float | None:
    """Weight of framing or battens, 0 without any; None where their density or the layer's thickness is missing."""
    member = layer.member
    if member is None or not share:
        return 0.0
    if member.density is None or layer.thickness is None:
        return None
    return record.step(
        f.part_weight, about=subject(layer, member), f=share, rho=member.density.value, g_n=gravity, d_l=layer.thickness.value
    )  # fmt: skip
