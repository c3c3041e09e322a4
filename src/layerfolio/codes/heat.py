"""Judging resistance and transmittance: the study's result, by the method the set asks for, against its limit."""

from dataclasses import dataclass

from layerfolio.codes import judges
from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Measured, Verdict
from layerfolio.codes.inputs import Weak, turned, weak
from layerfolio.codes.limits import Limit, Resolved, resolve
from layerfolio.codes.making import MEMORY_LIMIT, finding
from layerfolio.codes.naming import by_name, called
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.wording import figure, listed, pair
from layerfolio.studies.types import ThermalStudy

METAL = {
    "isothermal-planes": "the set weighs two methods for it",
    "parallel-path": "parallel paths do not hold for it, a zone or a correction is asked",
}


@dataclass(frozen=True, slots=True)
class Case:
    """One requirement asked of one assembly."""

    requirement: Requirement
    study: ThermalStudy
    context: Context
    resolved: Resolved

    @property
    def value(self) -> float | None:
        """What the study gives in the requirement's quantity; None without a result."""
        return measured(self.requirement, self.study)

    @property
    def without_framing(self) -> bool:
        """Whether the set asks for the resistance through the insulation, framing left out."""
        return self.requirement.rule.get("measured") == "without framing"

    def passes(self, value: float, limit: float) -> bool:
        return getattr(judges, self.requirement.judge)(value, limit, self.context.decimals)


def measured(requirement: Requirement, study: ThermalStudy) -> float | None:
    """What the study gives in the requirement's quantity, SI; None without a result."""
    final = study.final
    if final is None:
        return None
    if requirement.rule.get("measured") == "without framing":
        return without_framing(study)
    return final.transmittance if requirement.quantity == "U" else final.resistance


def without_framing(study: ThermalStudy) -> float:
    """Films and main materials in series, m2.K/W: the sum through the insulation, what frames it left out."""
    assembly = study.assembly
    layers = sum(one.resistance for one in study.layers if one.resistance is not None)
    return assembly.inside_film.value + layers + assembly.outside_film.value


def judge_heat(requirement: Requirement, study: ThermalStudy, context: Context) -> Finding:
    """The finding on a resistance or a transmittance. `requirement.judge` is at_least or at_most."""
    case = Case(requirement, study, context, resolve(requirement, study.assembly, context))
    verdict, reason, next_step = _verdict(case)
    limit, value, quantity = case.resolved.limit, case.value, requirement.quantity
    asked, given = _words(case)
    return finding(
        requirement, context, verdict,
        assembly=study.assembly.name, asked=asked, given=given, reason=reason, next_step=next_step,
        provided=None if value is None else Measured(quantity, value, context.decimals),
        limit=None if limit.value is None or case.resolved.question else Measured(quantity, limit.value, context.decimals),
        place=limit.place, amended=case.resolved.amended, step=f"{study.assembly.name}-T",
    )  # fmt: skip


def _verdict(case: Case) -> tuple[Verdict, str, str]:
    """Verdict, reason and next step; the first that holds, from what is missing to the comparison itself."""
    study, resolved = case.study, case.resolved
    limit = resolved.limit
    if case.value is None:
        missing = listed(by_name(study.assembly, study.missing))
        return Verdict.NEEDS_EVIDENCE, f"no thermal figure for {missing}", f"supply a sourced figure for {missing}"
    if (hindrance := _method_fails(case)) is not None:
        return hindrance
    if resolved.question:
        return Verdict.NEEDS_JUDGEMENT, _which_limits(case), f"answer: {resolved.question}?"
    if not limit.has_value:
        return Verdict.NEEDS_JUDGEMENT, limit.note, "ask the authority: what is asked of this assembly?"
    if limit.value is None:
        return Verdict.NOT_ASKED, limit.note, ""
    if case.requirement.mark == "memory" and not resolved.amended:
        return Verdict.NEEDS_JUDGEMENT, f"the limit {MEMORY_LIMIT}", f"confirm {case.requirement.clause}"
    return _compared(case, limit)


def _method_fails(case: Case) -> tuple[Verdict, str, str] | None:
    """Where the method of the set does not reach: limits too far apart, or metal framing."""
    study = case.study
    if study.method == "combined" and not study.asked.within_limits:
        reason = "upper and lower limit lie too far apart; the combined method decides nothing here"
        return Verdict.NEEDS_JUDGEMENT, reason, "supply a numerical calculation or a test of the assembly"
    metal = [called(x.layer) for x in study.layers if x.layer.member and x.layer.member.is_metal]
    if metal and study.method in METAL and not case.without_framing:
        reason = f"{listed(metal)} has metal framing; {METAL[study.method]}, which is not calculated here"
        return Verdict.NEEDS_JUDGEMENT, reason, "supply the calculation for metal framing, or a test of the assembly"
    return None


def _which_limits(case: Case) -> str:
    return f"the answer decides what is asked: {_possible(case)}"


def _possible(case: Case) -> str:
    """What the possible limits are, in words."""
    values = sorted({one.value for one in case.resolved.limits if one.value is not None})
    shown = [_shown(case, one) for one in values]
    if any(one.value is None and one.has_value for one in case.resolved.limits):
        shown.insert(0, "nothing")
    if any(not one.has_value for one in case.resolved.limits):
        shown.append("a figure that the table does not give")
    return " or ".join(shown)


def _compared(case: Case, limit: Limit) -> tuple[Verdict, str, str]:
    value = case.value
    remark = f"; {case.resolved.remark}" if case.resolved.remark else ""
    if not case.passes(value, limit.value):
        if _passes_uncorrected(case, limit):
            reason = "the limit is missed by the corrections alone, whose coefficients were not read in the standard"
            return Verdict.NEEDS_EVIDENCE, reason, "supply the correction from the adopted standard, or a test of the assembly"
        eased = case.resolved.eased
        if eased is not None and case.passes(value, eased):
            reason = f"the limit would be {_shown(case, eased)} if one question is answered with yes"
            return Verdict.NEEDS_JUDGEMENT, reason, f"answer: {case.resolved.eased_question}"
        return Verdict.DOES_NOT_MEET, f"the limit is missed by {_margin(case, limit)}{remark}", _remedy(case)
    turning = _turning(case, limit)
    if turning:
        return Verdict.NEEDS_EVIDENCE, *turned(turning, lambda names: listed(by_name(case.study.assembly, names)))
    return Verdict.MEETS, f"the calculated figure reaches the limit{remark}", ""


def _passes_uncorrected(case: Case, limit: Limit) -> bool:
    """Whether the figure would pass without the corrections of its transmittance."""
    plain, final = case.study.asked, case.study.final
    if plain == final:
        return False
    return case.passes(plain.transmittance if case.requirement.quantity == "U" else plain.resistance, limit.value)


def _turning(case: Case, limit: Limit) -> tuple[Weak, ...]:
    """What rests on memory or on an expired document and would turn the verdict if it counted as nothing."""
    resistance = case.value if case.without_framing else case.study.final.resistance
    found = []
    for one in weak(case.study, case.context):
        left = resistance - one.amount
        value = left if case.requirement.quantity != "U" else (1 / left if left > 0 else float("inf"))
        if value == float("inf") or not case.passes(value, limit.value):
            found.append(one)
    return tuple(found)


def _margin(case: Case, limit: Limit) -> str:
    """By how much the compared figure misses the limit, with enough digits that it is not nothing."""
    off = abs(judges.rounded(case.value, case.context.decimals) - limit.value)
    digits = case.context.decimals if case.context.decimals is not None else 2
    while digits < 9 and round(off, digits) == 0:
        digits += 1
    return _shown(case, off, digits)


def _shown(case: Case, value: float, digits: int | None = None) -> str:
    context = case.context
    return figure(case.requirement.quantity, value, customary=context.customary, both=context.both, digits=digits)


def _remedy(case: Case) -> str:
    energy = "or show it by the trade-off or performance path" if case.requirement.rule.get("scope") == "energy" else ""
    path = case.requirement.rule.get("or_else", energy)
    return f"more insulation, {path}" if path else "more insulation"


def _words(case: Case) -> tuple[str, str]:
    """What is asked and what is provided, as short sentences."""
    value, limit, decimals = case.value, case.resolved.limit, case.context.decimals
    edge = "or more" if case.requirement.judge == "at_least" else "or less"
    given = "not calculated" if value is None else _shown(case, value, decimals)
    if case.resolved.question:
        return f"depends on an answer that is missing: {_possible(case)}", given
    if limit.value is None:
        return limit.note or "nothing", given
    asked = _shown(case, limit.value, decimals)
    if value is not None:
        how = {"customary": case.context.customary, "both": case.context.both}
        given, asked = pair(case.requirement.quantity, value, limit.value, decimals, **how)
    by_zone = "tables" in case.requirement.figures and not case.resolved.amended
    where = f", zone {case.context.zone_words}" if by_zone and case.context.zone_words else ""
    note = f"; {limit.note}" if limit.note else ""
    return f"{asked} {edge}{where}{note}", given
