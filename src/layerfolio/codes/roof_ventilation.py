"""Ventilation of roofs and attics (IRC R806.1 to R806.3): the net free area of the vents, and the air above the insulation."""

from layerfolio.codes import judges
from layerfolio.codes.climate_zones import named
from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Verdict
from layerfolio.codes.making import finding
from layerfolio.codes.naming import called
from layerfolio.codes.outcomes import Outcome, by_zone, worst
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.roof_parts import RoofParts, roof_parts
from layerfolio.codes.roof_questions import TEST, class_of_row
from layerfolio.codes.stated import metres, square_metres
from layerfolio.codes.vents import Vents, vents_of
from layerfolio.codes.wording import listed
from layerfolio.studies.types import ThermalStudy, VapourStudy


def judge_roof_ventilation(
    requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, context: Context
) -> Finding | None:
    """The stated vents against the shares, and the air seen in the layers. None for an unvented roof."""
    parts, assembly = roof_parts(requirement, thermal), vapour.assembly
    attic = assembly.kind == "ceiling"
    if not attic and not parts.vented:
        return None
    vents = vents_of(assembly, context)
    if vents.missing:
        step = requirement.rule["next_step"]
        areas = Outcome(Verdict.NEEDS_EVIDENCE, f"{listed(vents.missing)} not given", step)
    else:
        areas = by_zone({zone: _enough(requirement, vents, vapour, zone, context) for zone in context.zones})
    air = _air(requirement, parts, attic)
    found = worst([areas, air])
    if areas.verdict is Verdict.MEETS and found.verdict is not Verdict.MEETS:
        found = Outcome(found.verdict, f"{areas.reason}; {found.reason}", found.next_step)
    return finding(
        requirement, context, found.verdict, assembly=assembly.name, asked=_asked(requirement, vents, context),
        given=_given(parts, attic, vents, context), reason=found.reason, next_step=found.next_step,
    )  # fmt: skip


def _asked(requirement: Requirement, vents: Vents, context: Context) -> str:
    rule = requirement.rule
    least, most = (f"{one * 100:.0f}" for one in rule["high"])
    usual, milder = (
        f"1/{rule[key]}" + (f" ({square_metres(vents.served / rule[key], context.customary)})" if vents.served else "")
        for key in ("usual", "milder")
    )
    return (
        f"openings of {usual} of the area; or of {milder} where {least} to {most} % of that lie within "
        f"{metres(0.9144, context.customary)} of the ridge, and in zones 6 to 8 a Class I or II retarder on the warm side; "
        f"{metres(0.0254, context.customary)} of air between insulation and sheathing"
    )


def _given(parts: RoofParts, attic: bool, vents: Vents, context: Context) -> str:
    depth = parts.air.thickness.value if parts.air and parts.air.thickness else None
    deep = f", {round(depth * 1000, 1):g} mm" if depth is not None else ""
    first = "a vented attic above" if attic else called(parts.air) + deep
    areas = [
        f"{word} {square_metres(one, context.customary)}"
        for word, one in (("low", vents.low), ("high", vents.high)) if one is not None
    ]  # fmt: skip
    served = f" for {square_metres(vents.served, context.customary)}" if areas and vents.served else ""
    return "; ".join(filter(None, (first, ", ".join(areas) + served)))


def _air(requirement: Requirement, parts: RoofParts, attic: bool) -> Outcome:
    """The inch of air over the insulation: drawn in a roof, seen at the eave in an attic."""
    if attic:
        step = "supply the detail at the eave, with baffles that leave 1 in of air (25 mm) where insulation meets the roof"
        return Outcome(Verdict.NEEDS_EVIDENCE, "the air over the insulation is seen at the eave", step)
    depth = parts.air.thickness.value if parts.air and parts.air.thickness else None
    if depth is None:
        return Outcome(Verdict.NEEDS_EVIDENCE, f"{called(parts.air)} states no depth", f"state the depth of {called(parts.air)}")
    if depth < requirement.figures["airspace"] - 1e-9:
        return Outcome(
            Verdict.DOES_NOT_MEET, "less than 25 mm of air lies between insulation and sheathing", "a deeper air space"
        )
    return Outcome(Verdict.MEETS, "")


def _enough(requirement: Requirement, vents: Vents, vapour: VapourStudy, zone: str, context: Context) -> Outcome:
    rule, total = requirement.rule, vents.low + vents.high
    if judges.at_least(total, vents.served / rule["usual"]):
        words = f"the stated areas reach 1/{rule['usual']}; that the space is open behind them is seen on site"
        return Outcome(Verdict.MEETS, words)
    needed = vents.served / rule["milder"]
    if not judges.at_least(total, needed):
        return Outcome(Verdict.DOES_NOT_MEET, f"the stated areas are less than 1/{rule['milder']}", "larger vents")
    if not judges.between(vents.high / needed, *rule["high"]):
        least, most = (f"{one * 100:.0f}" for one in rule["high"])
        words = f"less than 1/{rule['usual']}, and the high vents are not {least} to {most} % of 1/{rule['milder']}"
        return Outcome(Verdict.DOES_NOT_MEET, words, "larger vents, or another share of them high up")
    if not named(zone, rule["zones"]):
        return Outcome(Verdict.MEETS, f"the stated areas reach 1/{rule['milder']}, with their share high up")
    return _retarder(requirement, vapour, context)


def _retarder(requirement: Requirement, vapour: VapourStudy, context: Context) -> Outcome:
    """Whether a Class I or II retarder lies inside the insulation, as the milder share asks in cold zones."""
    last = max((one.number for one in vapour.assembly.layers if one.insulating and one.counts), default=0)
    found = [class_of_row(row, context) for row in vapour.layers if row.layer.number > last and row.layer.kind != "cavity"]
    if any(set(one.classes) <= {"I", "II"} for one in found):
        words = f"the stated areas reach 1/{requirement.rule['milder']}, and a Class I or II retarder lies on the warm side"
        return Outcome(Verdict.MEETS, words)
    if any({"I", "II"} & set(one.classes) for one in found):
        words = "whether the retarder on the warm side is Class I or II is not proved"
        return Outcome(Verdict.NEEDS_EVIDENCE, words, f"supply {TEST}")
    words = f"less than 1/{requirement.rule['usual']}, and no Class I or II retarder lies on the warm side"
    return Outcome(Verdict.DOES_NOT_MEET, words, "larger vents, or a retarder of Class I or II")
