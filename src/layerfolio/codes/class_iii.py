"""When a Class III retarder is enough: vented cladding over a listed sheathing, or insulation outside (IRC R702.7)."""

from layerfolio.assembly.types import Assembly, Layer
from layerfolio.codes.climate_zones import cell
from layerfolio.codes.context import Context
from layerfolio.codes.findings import Verdict
from layerfolio.codes.frame_wall import FrameWall, enough_outside
from layerfolio.codes.judges import at_most
from layerfolio.codes.naming import called as layer_called
from layerfolio.codes.outcomes import Outcome, best
from layerfolio.codes.permeances import own, report
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.retarder_class import PERM
from layerfolio.codes.wording import listed
from layerfolio.studies.types import LayerHeat, LayerVapour, VapourStudy


def class_iii(requirement: Requirement, wall: FrameWall, vapour: VapourStudy, zone: str, context: Context) -> Outcome:
    """The best of the two ways; where neither is open, what each of them lacks."""
    ways = (vented_cladding(requirement, vapour.assembly, zone), _insulation(requirement, wall, vapour, zone, context))
    found = best(ways)
    table = requirement.figures["table"]
    if found.verdict is Verdict.MEETS:
        return Outcome(Verdict.MEETS, f"Class III is permitted under {table}: {found.reason}")
    reasons = "; ".join(one.reason for one in ways if one.reason)
    return Outcome(found.verdict, f"Class III is permitted only under {table}: {reasons}", found.next_step)


def vented_cladding(requirement: Requirement, assembly: Assembly, zone: str) -> Outcome:
    """Cladding with air behind it that the list names, over a sheathing that the table names for the zone."""
    over = cell(requirement.figures["vented_over"], zone)
    if not over:
        return Outcome(Verdict.DOES_NOT_MEET, "vented cladding is no way in this zone")
    cladding, sheathing = _cladding(assembly, requirement)
    if cladding is None:
        return Outcome(Verdict.DOES_NOT_MEET, "the cladding is not vented")
    called = _sheathing(sheathing, requirement)
    if called not in over:
        what = f"{layer_called(sheathing)} is none of them" if sheathing and not called else f"{called or 'nothing'} lies there"
        asked = f"vented cladding lies over {' or '.join(over)} in this zone; {what}"
        return Outcome(Verdict.DOES_NOT_MEET, asked, "another sheathing under the vented cladding")
    kind = _listed(cladding, assembly, requirement)
    words = f"vented cladding over {called} ({layer_called(sheathing)})"
    if kind:
        return Outcome(Verdict.MEETS, f"{words}: {kind}")
    reason = f"{words}; {layer_called(cladding)} on a ventilated cavity is not in the printed list of vented claddings"
    return Outcome(Verdict.NEEDS_JUDGEMENT, reason, "ask the authority: is this cladding accepted as vented?")


def _cladding(assembly: Assembly, requirement: Requirement) -> tuple[Layer | None, Layer | None]:
    """The vented cladding and the first solid layer behind it; (None, None) where no air is behind the cladding."""
    layers = assembly.layers
    last = max((i for i, one in enumerate(layers) if not one.counts or one.cavity == "ventilated"), default=-1)
    outer = [one for one in layers[: last + 1] if one.kind == "solid"]
    if last < 0 and layers:
        first, second = layers[0], layers[1] if len(layers) > 1 else None
        if first.material in requirement.rule["vented_claddings"]["materials"]:
            last, outer = 0, [first]
        elif second is not None and second.kind == "cavity" and _is_brick(first, second, requirement):
            last, outer = 1, [first]
    if not outer:
        return None, None
    behind = next((one for one in layers[last + 1 :] if one.kind == "solid"), None)
    return outer[-1], behind


def _is_brick(layer: Layer, cavity: Layer, requirement: Requirement) -> bool:
    rule = requirement.rule["brick"]
    clear = cavity.thickness is not None and cavity.thickness.value >= rule["airspace"] - 1e-9
    return layer.family in rule["families"] and clear


def _listed(cladding: Layer, assembly: Assembly, requirement: Requirement) -> str:
    """Under which words the list names this cladding; empty where it does not."""
    rule = requirement.rule
    if cladding.material in rule["vented_claddings"]["materials"]:
        return rule["vented_claddings"]["words"]
    cavity = next((one for one in assembly.layers[cladding.number :] if one.kind == "cavity"), None)
    if cavity is not None and _is_brick(cladding, cavity, requirement):
        return rule["brick"]["words"]
    return "a rainscreen system, as a ventilated cavity is read here" if requirement.figures["rainscreen"] else ""


def _sheathing(layer: Layer | None, requirement: Requirement) -> str:
    rows = requirement.rule["sheathings"].items()
    return next((name for name, families in rows if layer is not None and layer.family in families), "")


def _insulation(requirement: Requirement, wall: FrameWall, vapour: VapourStudy, zone: str, context: Context) -> Outcome:
    """Insulation boards outside, or with them spray foam on the inside of the sheathing."""
    plain = enough_outside(requirement, zone, wall, context)
    foam, doubt = spray_foam(requirement, wall, vapour, context)
    if not foam or plain.verdict is Verdict.MEETS:
        return plain
    counted = (*wall.outside, *foam) if requirement.figures["foam_adds"] else foam
    found = enough_outside(requirement, zone, wall, context, counted)
    if found.verdict is Verdict.DOES_NOT_MEET:
        return best((plain, found))
    reason = f"{found.reason}, spray foam of 1.5 US perm at most counted ({listed([layer_called(one.layer) for one in foam])})"
    if doubt:
        return Outcome(Verdict.NEEDS_EVIDENCE, f"{reason}; {doubt}", "supply the permeance of the foam with its report")
    return Outcome(found.verdict, reason, found.next_step)


def spray_foam(
    requirement: Requirement, wall: FrameWall, vapour: VapourStudy, context: Context
) -> tuple[tuple[LayerHeat, ...], str]:
    """Foam between the framing, against the inside of a sheathing, and tight enough; why its figure may not decide."""
    rule = requirement.rule["spray_foam"]
    rows = {row.layer.number: row for row in vapour.layers if row.permeance_dry is not None}
    for one in wall.framed:
        row, behind = rows.get(one.layer.number), _next_outer(one.layer, vapour.assembly)
        against = behind is not None and bool(_sheathing(behind, requirement) or behind.insulating)
        of_foam = one.layer.family in rule["families"] and against and row is not None
        if of_foam and at_most(row.permeance_dry, rule["permeance"] * PERM):
            return (one,), _foam_doubt(row, context)
    return (), ""


def _foam_doubt(row: LayerVapour, context: Context) -> str:
    datum = row.layer.vapour.dry
    if report(row.layer, datum, context.date)[0] is not None:
        return ""
    if own(datum.origin):
        return f"the permeance of {layer_called(row.layer)} is the project's own and no report is listed that proves it"
    return f"the permeance of {layer_called(row.layer)} rests on memory" if datum.origin.mark == "memory" else ""


def _next_outer(layer: Layer, assembly: Assembly) -> Layer | None:
    return next((one for one in reversed(assembly.layers[: layer.number - 1]) if one.kind == "solid"), None)
