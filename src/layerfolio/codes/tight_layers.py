"""Sheets and panels that hold vapour back: on the warm face, behind vented air, or with enough insulation outside."""

from dataclasses import dataclass
from functools import partial

from layerfolio.assembly.types import Assembly, Layer
from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Verdict
from layerfolio.codes.inputs import FROM_MEMORY, heat_figures
from layerfolio.codes.judges import ratio_at_least
from layerfolio.codes.making import finding
from layerfolio.codes.naming import called
from layerfolio.codes.outer_layers import dry_permeance, outside_the_cavity, ventilated_cavity
from layerfolio.codes.permeances import own, published, report
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.wording import figure, listed
from layerfolio.studies.types import LayerVapour, ThermalStudy, VapourStudy
from layerfolio.units.show import fixed

SEVERITY = (Verdict.MEETS, Verdict.NEEDS_JUDGEMENT, Verdict.NEEDS_EVIDENCE, Verdict.DOES_NOT_MEET)


@dataclass(frozen=True, slots=True)
class Place:
    """One tight layer, where it lies, and what that makes of it. `step`: what is to do, where it is not the usual."""

    name: str
    where: str
    verdict: Verdict
    reason: str
    step: str = ""


def judge_tight_layers(requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, context: Context) -> Finding:
    """The worst place of all tight layers of an assembly."""
    sheets = [row for row in vapour.layers if _is_sheet(row.layer, requirement)]
    below = requirement.figures["below"]
    tight = [row for row in sheets if (lowest := _lowest(row, context)) is not None and lowest < below]
    unknown = [called(row.layer) for row in sheets if _lowest(row, context) is None and not _warm_face(row, vapour)]
    places = [_place(row, requirement, thermal, vapour, context) for row in tight]
    places = [*_outside(requirement, vapour.assembly), *places]
    verdict, reason, next_step = _worst(places, unknown)
    if not places and not unknown:
        verdict, reason = Verdict.NOT_ASKED, "no sheet or panel of the assembly is that tight"
    given = "; ".join(f"{one.name}, {one.where}" for one in places) or "no tight sheet or panel"
    return finding(
        requirement, context, verdict, assembly=vapour.assembly.name,
        asked="on the warm face, outside a vented air space, or with enough resistance outside", given=given,
        reason=reason, next_step=next_step, step=f"{vapour.assembly.name}-V",
    )  # fmt: skip


def _worst(places: list[Place], unknown: list[str]) -> tuple[Verdict, str, str]:
    steps = {
        Verdict.NEEDS_JUDGEMENT: "state heating degree-days and thermal figures, so that the ratio can be formed",
        Verdict.NEEDS_EVIDENCE: "supply the dry-cup permeance and its report",
        Verdict.DOES_NOT_MEET: "more resistance outside it, an opener layer, or its place changed",
    }
    worst = max((one.verdict for one in places), key=SEVERITY.index, default=Verdict.MEETS)
    reasons = [one.reason for one in places if one.verdict == worst]
    if unknown and worst != Verdict.DOES_NOT_MEET:
        worst, reasons = Verdict.NEEDS_EVIDENCE, [f"the permeance of {listed(unknown)} is not known"]
    found = dict.fromkeys(one.step or steps.get(worst, "") for one in places if one.verdict == worst)
    return worst, "; ".join(dict.fromkeys(reasons)), "; ".join(found) or steps.get(worst, "")


def _outside(requirement: Requirement, assembly: Assembly) -> list[Place]:
    """Tight layers outside the ventilated cavity: there they may stand, a wall's air space being deep enough."""
    rule, cavity = requirement.figures["air_space"], ventilated_cavity(assembly)
    found = []
    for layer in outside_the_cavity(assembly):
        permeance = dry_permeance(layer)
        if not _is_sheet(layer, requirement) or permeance is None or permeance >= requirement.figures["below"]:
            continue
        name, where = called(layer), "outside the ventilated cavity"
        depth = cavity.thickness.value if cavity.thickness else 0.0
        if assembly.kind == "wall" and depth < rule["depth"] - 1e-9:
            reason = f"the air space behind {name} is not stated to be {rule['depth'] * 1000:g} mm deep"
            step = f"ask the authority: is it the drained and vented air space of {rule['clause']}?"
            found.append(Place(name, where, Verdict.NEEDS_JUDGEMENT, reason, step))
        else:
            found.append(Place(name, where, Verdict.MEETS, f"{name} lies {where}"))
    return found


def _is_sheet(layer: Layer, requirement: Requirement) -> bool:
    return layer.kind != "cavity" and layer.family not in requirement.rule["not_sheets"]


def _lowest(row: LayerVapour, context: Context) -> float | None:
    """The lowest dry-cup permeance that is published or proved for a layer; a proved one stands alone."""
    note = published(row.layer, context.edition.set_id)
    dry = row.permeance_dry
    if dry is not None and (own(row.layer.vapour.dry.origin) or note is None):
        return dry
    return min((one for one in (dry, note.lowest if note else None) if one is not None), default=None)


def _warm_face(row: LayerVapour, vapour: VapourStudy) -> bool:
    """No insulation on its room side."""
    return not any(
        one.counts and one.number > row.layer.number and (one.insulating or one.name == vapour.main_insulation)
        for one in vapour.assembly.layers
    )


def _place(row: LayerVapour, requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, context: Context) -> Place:
    name, where = called(row.layer), _where(row, vapour)
    if _warm_face(row, vapour):
        return Place(name, where, Verdict.MEETS, f"{name} lies on the warm face")
    if exempt := _exempt(row, requirement, thermal, context):
        return Place(name, where, Verdict.MEETS, f"{name} is exempt: {exempt}")
    if context.degree_days is None or thermal.missing:
        return Place(name, where, Verdict.NEEDS_JUDGEMENT, f"no ratio can be formed for {name}")
    days = context.degree_days
    limit = next(x["ratio"] for x in requirement.figures["ratios"] if days <= x.get("to", days))
    outside, inside, doubtful = _resistances(row, thermal)
    ratio = fixed(outside / inside, 2)
    outer, inner = (figure("R", one, customary=context.customary) for one in (outside, inside))
    shown = f"{outer} outside, {inner} inside, ratio {ratio}; {limit:g} asked"
    if not ratio_at_least(outside, inside, limit):
        verdict = Verdict.DOES_NOT_MEET if _settled(row, requirement, context) else Verdict.NEEDS_EVIDENCE
        doubt = "" if verdict == Verdict.DOES_NOT_MEET else "; whether it is that tight is not proved"
        return Place(name, where, verdict, f"{name}: {shown}{doubt}")
    if not ratio_at_least(outside - doubtful, inside, limit):
        return Place(name, where, Verdict.NEEDS_EVIDENCE, f"{name}: {shown}, with figures from memory outside it")
    return Place(name, where, Verdict.MEETS, f"{name}: {shown}")


def _where(row: LayerVapour, vapour: VapourStudy) -> str:
    """The layer's place in words, against the insulation."""
    if _warm_face(row, vapour):
        return "inside the insulation"
    outer = any(one.counts and one.insulating and one.number < row.layer.number for one in vapour.assembly.layers)
    return "between insulation" if outer else "outside the insulation"


def _exempt(row: LayerVapour, requirement: Requirement, thermal: ThermalStudy, context: Context) -> str:
    """The code's two exemptions: thin wood sheathing, and insulation that is not quite tight in a milder place."""
    layer, figures = row.layer, requirement.figures
    thin = layer.thickness is not None and layer.thickness.value <= figures["wood_sheathing_up_to"] + 1e-9
    if layer.family in requirement.rule["wood_sheathing"] and thin:
        return "wood sheathing of 12.5 mm at most, 9.25.5.1.(3)"
    rule, lowest = figures["exempt"], _lowest(row, context)
    resistance = next((one.resistance for one in thermal.layers if one.layer.number == layer.number), None) or 0.0
    mild = context.degree_days is not None and context.degree_days < rule["degree_days_below"]
    if lowest >= rule["permeance"] * (1 - 1e-9) and resistance >= rule["resistance"] - 1e-9 and mild:
        how = partial(figure, customary=context.customary)
        return f"{how('W', lowest)}, {how('R', resistance)}, fewer than 6000 degree-days, 9.25.5.1.(4)"
    return ""


def _resistances(row: LayerVapour, thermal: ThermalStudy) -> tuple[float, float, float]:
    """Resistance outside the inner face, inside it, and of the outer part what rests on memory, m2.K/W."""
    number = row.layer.number
    outer = [one for one in thermal.layers if one.layer.number <= number]
    memory = [one for one in outer if any(x.origin.mark == FROM_MEMORY for x in heat_figures(one.layer))]
    total = sum(one.resistance or 0.0 for one in thermal.layers)
    outside = sum(one.resistance or 0.0 for one in outer)
    return outside, total - outside, sum(one.resistance or 0.0 for one in memory)


def _settled(row: LayerVapour, requirement: Requirement, context: Context) -> bool:
    """Whether all that is known of the layer's permeance says it is tight."""
    layer, note = row.layer, published(row.layer, context.edition.set_id)
    below = requirement.figures["below"]
    datum = layer.vapour.dry if layer.vapour else None
    if datum is not None and report(layer, datum, context.date)[0] is not None:
        return True
    if note is not None:
        return note.highest < below and not note.report_decides and (row.permeance_dry or 0.0) < below
    return datum is not None and datum.origin.mark != FROM_MEMORY and not own(datum.origin)
