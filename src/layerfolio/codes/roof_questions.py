"""What else is asked of unvented roofs: the ceiling side, the foam and the shingles."""

from layerfolio.codes.climate_zones import named
from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Measured, Verdict
from layerfolio.codes.making import finding
from layerfolio.codes.outcomes import Outcome, by_zone
from layerfolio.codes.permeances import cups
from layerfolio.codes.requirements import Requirement, requirements
from layerfolio.codes.retarder_class import PERM, Classed, classed, unit_trap
from layerfolio.codes.roof_parts import roof_parts
from layerfolio.codes.wording import figure, listed
from layerfolio.studies.types import LayerVapour, ThermalStudy, VapourStudy

TEST = "the test report of the product, dry cup, with its number and date"


def class_of_row(row: LayerVapour, context: Context) -> Classed:
    """The class of a layer as the vapour-retarder requirement of the set tells it."""
    rule = next(x for x in requirements(context.edition.set_id) if x.question == "vapour-retarder")
    return classed(row, rule.rule, rule.figures, context)


def judge_ceiling_side(
    requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, context: Context
) -> Finding | None:
    """No Class I retarder inside the insulation of an unvented roof. None for a vented one."""
    parts = roof_parts(requirement, thermal)
    if parts.vented:
        return None
    last = max((one.layer.number for one in (*parts.above, *parts.below)), default=0)
    inside = [row for row in vapour.layers if row.layer.number > last and row.layer.kind != "cavity"]
    found = {row.layer.name: class_of_row(row, context) for row in inside}
    sure = [name for name, one in found.items() if one.classes == ("I",)]
    maybe = [name for name, one in found.items() if "I" in one.classes and name not in sure]
    outcome = Outcome(Verdict.MEETS, "no layer inside the insulation is Class I")
    if sure:
        outcome = Outcome(Verdict.DOES_NOT_MEET, f"{listed(sure)} is Class I", "a retarder of Class II or III instead")
    elif maybe:
        outcome = Outcome(Verdict.NEEDS_EVIDENCE, f"whether {listed(maybe)} is Class I is not proved", f"supply {TEST}")
    rows = [f"{row.layer.name} {cups(row, context.customary, context.both)}" for row in inside]
    limit = figure("W", requirement.figures["over"] * PERM, customary=context.customary, both=context.both)
    return finding(
        requirement, context, outcome.verdict, assembly=vapour.assembly.name,
        asked=f"no Class I retarder on the ceiling side: over {limit}, dry cup",
        given="; ".join(rows) or "no layer inside the insulation", reason=outcome.reason, next_step=outcome.next_step,
        step=f"{vapour.assembly.name}-V",
    )  # fmt: skip


def judge_roof_foam(
    requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, context: Context
) -> Finding | None:
    """Foam below the sheathing is Class II in cold zones, or covered by it. None for a vented roof."""
    parts = roof_parts(requirement, thermal)
    if parts.vented:
        return None
    numbers = [one.layer.number for one in parts.below if one.layer.family in requirement.rule["foam"]]
    rows = [row for row in vapour.layers if row.layer.number in numbers]
    covers = [row for row in vapour.layers if row.layer.number - 1 in numbers and row.layer.number not in numbers]
    outcome = by_zone({zone: _foam(requirement, rows, covers, zone, context) for zone in context.zones})
    given = [f"{row.layer.name} {cups(row, context.customary, context.both)}" for row in rows]
    limit = requirement.figures["at_most"] * PERM
    values = [row.permeance_dry for row in rows if row.permeance_dry is not None]
    traps = [unit_trap(value) for value in values]
    return finding(
        requirement, context, outcome.verdict, assembly=vapour.assembly.name,
        asked=f"{figure('W', limit, customary=context.customary, both=context.both)} or less, dry cup, zones 5 to 8",
        given="; ".join(filter(None, (*given, *traps))) or "no foam under the sheathing", limit=Measured("W", limit),
        provided=Measured("W", max(values)) if values else None, reason=outcome.reason, next_step=outcome.next_step,
        step=f"{vapour.assembly.name}-V",
    )  # fmt: skip


def _foam(
    requirement: Requirement, rows: list[LayerVapour], covers: list[LayerVapour], zone: str, context: Context
) -> Outcome:
    if not rows:
        return Outcome(Verdict.NOT_ASKED, "no foam lies under the sheathing")
    if not named(zone, requirement.rule["zones"]):
        return Outcome(Verdict.NOT_ASKED, "not asked in this zone")
    tight = [class_of_row(row, context) for row in (*covers, *rows)]
    if any(set(one.classes) <= {"I", "II"} for one in tight):
        return Outcome(Verdict.MEETS, "it is a Class II retarder, or is covered by one")
    if any({"I", "II"} & set(one.classes) for one in tight):
        reason = "; ".join(one.doubt for one in tight if {"I", "II"} & set(one.classes))
        return Outcome(Verdict.NEEDS_EVIDENCE, reason or "its class is not proved", f"supply {TEST}")
    step = "a Class II coating or covering on the underside of the foam"
    return Outcome(Verdict.DOES_NOT_MEET, "neither the foam nor what covers it is a Class II retarder", step)


def judge_shingles(
    requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, context: Context
) -> Finding | None:
    """Air under wood shingles of an unvented roof. None for a vented one."""
    if roof_parts(requirement, thermal).vented:
        return None
    layers = vapour.assembly.layers
    wood = [one for one in layers if one.material in requirement.rule["shingles"]]
    least = requirement.figures["airspace"]
    outcome = Outcome(Verdict.NOT_ASKED, "the covering is not of wood shingles")
    given = f"{layers[0].name} (layer 1)"
    if wood:
        air = [one for one in layers[wood[-1].number :] if one.cavity == "ventilated" and one.thickness]
        depth = max((one.thickness.value for one in air), default=0.0)
        given = f"{wood[-1].name}, {round(depth * 1000, 1):g} mm of ventilated air under it"
        outcome = Outcome(Verdict.MEETS, "there is so much air under the shingles")
        if depth < least - 1e-9:
            reason = "there is less air under the shingles"
            outcome = Outcome(Verdict.DOES_NOT_MEET, reason, "battens under the shingles")
    return finding(
        requirement, context, outcome.verdict, assembly=vapour.assembly.name,
        asked="6.4 mm (1/4 in) of ventilated air between wood shingles and the underlay", given=given,
        reason=outcome.reason, next_step=outcome.next_step,
    )  # fmt: skip
