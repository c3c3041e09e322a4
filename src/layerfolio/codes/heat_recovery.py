"""The efficiency that is asked of heat-recovery equipment, by the cold of the place; the equipment's rating is evidence."""

from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Verdict
from layerfolio.codes.making import finding
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.site_figures import temperature
from layerfolio.codes.stated import documents_for
from layerfolio.codes.wording import listed

JANUARY = "January's 2.5 % temperature"


def judge_heat_recovery(requirement: Requirement, context: Context) -> Finding | None:
    """The rating that is to be supplied; None where no heat recovery is stated."""
    if not context.heat_recovery:
        return None
    design = context.design_temperature
    asked, ratings = _asked(requirement, context)
    used = "not given" if design is None else f"{temperature(design, context.customary)}, taken as January's 2.5 %"
    verdict, equipment = Verdict.NEEDS_EVIDENCE, "no equipment is named"
    step = f"supply the rating of the equipment {ratings}"
    papers = documents_for(context, "", None, "heat recovery")
    if papers:
        named = listed([one.number or one.title for one in papers])
        verdict, equipment = Verdict.NEEDS_JUDGEMENT, f"its document is {named}"
        step = f"read in {named}, with the authority: does the equipment reach the figures {ratings}?"
    return finding(
        requirement, context, verdict, asked=asked, reason=requirement.rule["reason"],
        given=f"heat recovery is stated; {equipment}; heating design temperature {used}", next_step=step,
    )  # fmt: skip


def _asked(requirement: Requirement, context: Context) -> tuple[str, str]:
    """What is asked at the design temperature, and at which temperatures the equipment is to be rated."""
    always, cold = requirement.figures["always"], requirement.figures["cold"]
    warm, frost, edge = (temperature(one, context.customary) for one in (always["at"], cold["at"], cold["below"]))
    first, second = (
        f"{always['efficiency'] * 100:.0f} % sensible recovery at {warm}",
        f"{cold['efficiency'] * 100:.0f} % at {frost}",
    )
    design = context.design_temperature
    if design is None:
        return f"{first}; where {JANUARY} is below {edge}, also {second}", "at both temperatures"
    if design < cold["below"]:
        return f"{first} and {second}, {JANUARY} being below {edge}", f"at {warm} and at {frost}"
    return f"{first}, {JANUARY} not being below {edge}", f"at {warm}"
