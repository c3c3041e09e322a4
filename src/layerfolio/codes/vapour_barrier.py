"""The vapour barrier: its dry-cup permeance against the limit, and its place on the warm side of the insulation."""

from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Measured, Verdict
from layerfolio.codes.judges import at_most
from layerfolio.codes.limits import resolve
from layerfolio.codes.making import MEMORY_LIMIT, finding
from layerfolio.codes.naming import called
from layerfolio.codes.permeances import cups, own, published, report
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.retarder_class import unit_trap
from layerfolio.codes.wording import figure, listed, pair
from layerfolio.studies.types import LayerVapour, ThermalStudy, VapourStudy

TEST = "the test report of the product, dry cup, with its number and date"


def judge_vapour_barrier(requirement: Requirement, vapour: VapourStudy, context: Context) -> Finding:
    """The permeance of the layer that serves vapour control."""
    resolved = resolve(requirement, vapour.assembly, context)
    limit, customary = resolved.limit.value, context.customary
    control = vapour.control
    value = control.permeance_dry if control else None
    asked = given = figure("W", limit, customary=customary)
    if control is None:
        verdict, reason, next_step = _no_layer(vapour, limit)
        given = "no layer is stated to serve vapour control"
    elif value is None:
        verdict, reason, next_step = Verdict.NEEDS_EVIDENCE, "no dry-cup permeance is given for it", f"supply {TEST}"
        given = f"{called(control.layer)}, permeance not given"
    else:
        verdict, reason, next_step = _compared(requirement, control, limit, context, bool(resolved.amended))
        shown, asked = pair("W", value, limit, None, customary=customary)
        both_cups = cups(control, customary, dry=shown)
        given = "; ".join(filter(None, (both_cups, unit_trap(value), called(control.layer))))
    return finding(
        requirement, context, verdict, assembly=vapour.assembly.name, asked=f"{asked} or less, dry cup", given=given,
        provided=None if value is None else Measured("W", value), limit=Measured("W", limit), reason=reason,
        next_step=next_step, amended=resolved.amended, place=resolved.limit.place, step=f"{vapour.assembly.name}-V",
    )  # fmt: skip


def _no_layer(vapour: VapourStudy, limit: float) -> tuple[Verdict, str, str]:
    """Without a named control layer: one that would do by its figure is a question, none is a plain no."""
    main = vapour.main_insulation
    start = vapour.assembly.layer(main).number if main else 0
    inside = [row for row in vapour.layers if row.layer.number >= start]
    tight = [called(row.layer) for row in inside if row.permeance_dry is not None and at_most(row.permeance_dry, limit)]
    if tight:
        reason = f"no layer serves vapour control; by its figure {listed(tight)} could"
        return Verdict.NEEDS_JUDGEMENT, reason, "name the vapour barrier (serves: [vapour control])"
    if any(row.permeance_dry is None for row in inside):
        reason = "no layer serves vapour control, and not every permeance is known"
        return Verdict.NEEDS_EVIDENCE, reason, f"supply {TEST}"
    reason = "no layer serves vapour control, and none inside the insulation is tight enough by its figure"
    return Verdict.DOES_NOT_MEET, reason, "add a vapour barrier, or propose an alternative solution"


def _compared(
    requirement: Requirement, control: LayerVapour, limit: float, context: Context, amended: bool
) -> tuple[Verdict, str, str]:
    """Verdict on a known permeance: first whether the figure may decide, then whether it is within the limit."""
    if requirement.mark == "memory" and not amended:
        return Verdict.NEEDS_JUDGEMENT, f"the limit {MEMORY_LIMIT}", f"confirm {requirement.clause}"
    within = at_most(control.permeance_dry, limit)
    doubt, backing = _doubt(control, limit, context)
    if doubt:
        return Verdict.NEEDS_EVIDENCE, doubt, f"supply {TEST}"
    if within:
        return Verdict.MEETS, f"the permeance is within the limit, {backing}", ""
    return Verdict.DOES_NOT_MEET, f"the permeance is above the limit, {backing}", "a tighter layer, or another path"


def _doubt(control: LayerVapour, limit: float, context: Context) -> tuple[str, str]:
    """Why the figure may not decide, or else what backs it.

    The project's own figure needs its report. A published one decides unless published values lie on both sides of the
    limit, a report alone settles that material, or the figure would turn the verdict and was never re-read.
    """
    layer, datum, value = control.layer, control.layer.vapour.dry, control.permeance_dry
    note = published(layer, context.edition.set_id)
    others = note.shown(context.customary) if note else ""
    proof, why = report(layer, datum, context.date)
    if proof is not None:
        return "", f"by {proof.number or proof.file or 'its report'}"
    if own(datum.origin):
        beside = f"; published: {others}" if others else ""
        return f"the figure is the project's own and {why}{beside}", ""
    shown = f"{figure('W', value, customary=context.customary)} by {datum.origin.source}"
    sides = {at_most(one, limit) for one in (value, *((note.lowest, note.highest) if note else ()))}
    if len(sides) == 2 or (note and note.report_decides):
        return f"published values differ: {shown}; {others}; only the product's own report decides", ""
    if datum.origin.mark == "memory" and note is None and at_most(value, limit):
        return f"{shown} rests on memory, and without this layer the verdict would turn", ""
    return "", f"by {others or datum.origin.source}"


def judge_position(requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, context: Context) -> Finding | None:
    """The barrier's place. None without a control layer: then the finding on the permeance says it."""
    if vapour.control is None:
        return None
    layer, assembly = vapour.control.layer, vapour.assembly
    insulation = [x for x in assembly.layers if x.counts and (x.insulating or x.name == vapour.main_insulation)]
    inside = [called(one) for one in insulation if one.number > layer.number]
    outside = [called(one) for one in insulation if one.number <= layer.number]
    verdict, reason, next_step = Verdict.MEETS, "all insulation lies outside it", ""
    if not outside:
        verdict, reason = Verdict.DOES_NOT_MEET, "all insulation lies on its room side"
        next_step = "place the vapour barrier on the room side of the insulation, or propose an alternative solution"
    elif inside:
        verdict = Verdict.NEEDS_JUDGEMENT
        reason = f"insulation lies on its room side too ({listed(inside)}); the code gives no share"
        reason += _shares(thermal, layer.number, context.customary)
        next_step = "show that no condensation forms on it at design conditions (9.25.4.3.(2)), and ask whether that is accepted"
    return finding(
        requirement, context, verdict, assembly=assembly.name, asked="on the warm side of the insulation",
        given=f"{called(layer)}, inside {listed(outside)}" if outside else called(layer),
        reason=reason, next_step=next_step, step=f"{assembly.name}-V",
    )  # fmt: skip


def _shares(thermal: ThermalStudy, number: int, customary: bool) -> str:
    """ "; outside it 4.20, inside it 1.10 m2.K/W" where the study has the figures."""
    if thermal.missing:
        return ""
    outside = sum(one.resistance or 0 for one in thermal.layers if one.layer.number <= number)
    inside = sum(one.resistance or 0 for one in thermal.layers if one.layer.number > number)
    outer, inner = (figure("R", one, customary=customary) for one in (outside, inside))
    return f"; outside its inner face {outer}, inside it {inner}"
