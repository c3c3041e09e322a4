"""What else decides how a set applies: the climate zone, and the reach of a section that has its own."""

from typing import Any

from layerfolio.codes.applies import Answer, about_set, building
from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Verdict
from layerfolio.codes.wording import figure, listed


def judge_zone(context: Context) -> Finding | None:
    """The stated zone against the degree-days. None for a set without zones."""
    rule = context.edition.content.get("zones")
    if rule is None:
        return None
    stated, derived, days = context.zone, context.zone_by_degree_days, context.degree_days
    names = tuple(str(row["zone"]) for row in rule["rows"])
    given = f"zone {stated or 'not given'}, {f'{days:g} degree-days' if days is not None else 'degree-days not given'}"
    verdict, reason, step = Verdict.MEETS, f"the degree-days give zone {derived}", ""
    if stated and stated not in names:
        verdict, reason = Verdict.NEEDS_JUDGEMENT, f"the set has no zone {stated}; it has {listed(names)}"
        step = "state a zone of the set, or the degree-days"
    elif not stated and not derived:
        verdict, reason = Verdict.NEEDS_JUDGEMENT, "neither is given"
        step = "state code.zone or climate.heating_degree_days"
    elif not derived:
        verdict, reason = Verdict.NEEDS_JUDGEMENT, "the stated zone cannot be checked without degree-days"
        step = "state climate.heating_degree_days with its source"
    elif stated and stated != derived:
        verdict = Verdict.NEEDS_JUDGEMENT
        reason = f"the degree-days give zone {derived}; the more demanding of both decides"
        step = "ask the authority: which zone and which degree-days hold for the place?"
    return about_set(
        context, "zone", rule, "Climate zone", verdict, asked=f"by {rule['by']}", given=given, reason=reason,
        next_step=step,
    )  # fmt: skip


def judge_scope(context: Context, name: str) -> tuple[Finding, Answer]:
    """Whether a section of the set with its own reach applies; `name` is a key of the code's `scopes`."""
    rule = context.edition.content["scopes"][name]
    answer, reason = _reach(context, rule)
    verdict = Verdict.MEETS if answer == "yes" else Verdict.NEEDS_JUDGEMENT
    step = {
        "yes": "", "no": f"show it by {rule['instead']}, which is not carried here",
        "unknown": "state the total floor area of the occupancy, and its hazard where it is industrial",
    }[answer]  # fmt: skip
    most = figure("area", rule["floor_area"])
    return about_set(
        context, f"{name}-scope", rule, rule["question"], verdict,
        asked=f"residential; or office, shop and low-hazard industry of {most} floor area at most",
        given=building(context), reason=reason, next_step=step,
    ), answer  # fmt: skip


def _reach(context: Context, rule: dict[str, Any]) -> tuple[Answer, str]:
    occupancy = context.occupancy
    if occupancy in rule["residential"]:
        return "yes", "a residential occupancy"
    if occupancy in rule["industrial"] and context.hazard in ("medium", "high"):
        return "no", f"a {context.hazard}-hazard industrial occupancy follows {rule['instead']}"
    if occupancy not in rule["limited"] and not (occupancy in rule["industrial"] and context.hazard == "low"):
        return "unknown", "the occupancy does not say it"
    most = rule["floor_area"]
    if context.floor_area is not None and context.floor_area > most:
        return "no", f"more than {figure('area', most)} of floor area follows {rule['instead']}"
    if context.building_area is not None and context.storeys is not None:
        total = context.building_area * context.storeys
        if total <= most:
            return "yes", f"building area times storeys is {figure('area', total)}, so the floor area is no more"
    return "unknown", f"whether the floor area stays within {figure('area', most)} is not given"
