"""Whole-house ventilation by floor area and bedrooms (IRC M1505.4.3): a table, or an equation instead of it."""

from bisect import bisect_left
from typing import NamedTuple

from layerfolio.codes import judges
from layerfolio.codes.context import Context, value
from layerfolio.codes.findings import Finding, Measured, Verdict
from layerfolio.codes.making import finding
from layerfolio.codes.outcomes import Outcome
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.wording import listed
from layerfolio.units.show import fixed, in_units
from layerfolio.units.table import unit_factor

CFM = unit_factor("cfm", "airflow")

BALANCED = "answer: is the system balanced, with ducts to each bedroom and to the living room, dining room or kitchen?"


class Rates(NamedTuple):
    """Continuous flows, cfm."""

    table: float
    equation: float


def rates(requirement: Requirement, area: float, bedrooms: int) -> Rates:
    """By the table and by the equation; `area` of the floor in ft2. Areas between two rows belong to the larger."""
    rule = requirement.rule
    row = next((cells for most, cells in rule["table"].items() if most == "over" or judges.at_most(area, most)))
    equation = rule["equation"]
    return Rates(
        row[bisect_left(rule["bedrooms_to"], bedrooms)],
        round(equation["per_area"] * area + equation["per_bedroom"] * (bedrooms + 1), 6),  # what units leave behind
    )  # fmt: skip


def judge_whole_house_ventilation(requirement: Requirement, about: Context) -> Finding:
    """The stated flow. Where the equation was not read in the edition it decides nothing."""
    bedrooms, flow = about.answer("building.bedrooms"), value(about.answer("building.ventilation.flow"))
    names = ("conditioned_floor_area", "bedrooms", "ventilation.flow")
    known = zip(names, (about.floor_area, bedrooms, flow), strict=True)
    missing = [f"building.{name}" for name, one in known if one is None]
    asked, given = "by floor area and number of bedrooms", "not given"
    if about.floor_area is not None and bedrooms is not None:
        least = rates(requirement, in_units(about.floor_area, "ft2"), bedrooms)
        mark = "" if requirement.figures["equation_mark"] == "found" else ", from memory"
        asked = f"{_flow(least.table, about)} by the table, or {_flow(least.equation, about)} by Equation 15-1{mark}"
        if credit := requirement.figures.get("credit"):
            asked += f", or {credit * 100:.0f} % of either where a balanced system has ducts to each bedroom (exception 1)"
    if flow is not None:
        given = _flow(flow / CFM, about)
    if missing:
        found = Outcome(Verdict.NEEDS_EVIDENCE, f"{listed(missing)} not given", f"state {listed(missing)}")
    else:
        found = _against(requirement, least, flow / CFM, about)
    return finding(
        requirement, about, found.verdict, reason=found.reason, next_step=found.next_step, asked=asked, given=given,
        provided=None if flow is None else Measured("q_V", flow),
    )  # fmt: skip


def _flow(cfm: float, about: Context) -> str:
    metric, other = f"{fixed(cfm * CFM * 1000, 1)} L/s", fixed(cfm, 1).removesuffix(".0") + " cfm"
    return f"{other} ({metric})" if about.customary else f"{metric} ({other})"


def _against(requirement: Requirement, least: Rates, flow: float, about: Context) -> Outcome:
    sure = requirement.figures["equation_mark"] == "found"
    credit, both = requirement.figures.get("credit"), min(least)
    if judges.at_least(flow, min(least) if sure else least.table):
        return Outcome(Verdict.MEETS, "the stated flow reaches it")
    if judges.at_least(flow, both):
        step = f"confirm Equation 15-1 of {requirement.clause} in the adopted text"
        if credit and judges.at_least(flow, credit * least.table):
            step += f"; or {BALANCED}"
        return Outcome(Verdict.NEEDS_JUDGEMENT, "less than the table, enough by the equation, which rests on memory", step)
    if credit and judges.at_least(flow, credit * both):
        words = f"enough only with the credit of {100 - credit * 100:.0f} %, which the project file cannot say"
        return Outcome(Verdict.NEEDS_JUDGEMENT, words, BALANCED)
    if sure:
        return Outcome(Verdict.DOES_NOT_MEET, "the stated flow is less than either", "a larger flow")
    step = f"a larger flow, or confirm Equation 15-1 of {requirement.clause} in the adopted text"
    return Outcome(Verdict.NEEDS_JUDGEMENT, "less than the table, and less than the equation, which rests on memory", step)
