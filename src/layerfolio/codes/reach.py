"""What else decides how a set applies: the climate zone, and the reach of a section that has its own."""

from typing import Any

from layerfolio.codes.applies import Answer, about_set, building, building_area
from layerfolio.codes.climate_zones import bounds, either, expanded, zone_words
from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Verdict
from layerfolio.codes.making import MEMORY_LIMIT
from layerfolio.codes.site_figures import area, degree_days, degree_days_span, in_system, temperature
from layerfolio.codes.wording import listed


def judge_zone(context: Context) -> Finding | None:
    """The stated zone against the degree-days. None for a set without zones."""
    rule = context.edition.content.get("zones")
    if rule is None:
        return None
    verdict, reason, step = _zone_verdict(context, rule, tuple(str(row["zone"]) for row in rule["rows"]))
    given = f"zone {context.zone or 'not given'}, {_degree_days(context, rule)}"
    return about_set(
        context, "zone", rule, "Climate zone", verdict, asked=_zone_asked(context, rule), given=given, reason=reason,
        next_step=step,
    )  # fmt: skip


def _zone_asked(context: Context, rule: dict[str, Any]) -> str:
    """The limits of the zones that are named, where the set's list of zones carries them; else what decides."""
    base = rule.get("base")
    named = [one for one in context.named_zones if one in {str(row["zone"]) for row in rule["rows"]}]
    if base is None or not named:
        return f"by {in_system(rule['by'], context.customary)}"
    below = f"below {temperature(base, context.customary)}"
    return "; ".join(f"zone {one}: {_span(*bounds(rule['rows'], one), context.customary)} {below}" for one in named)


def _span(low: float | None, high: float | None, customary: bool) -> str:
    """Degree-days of a zone in words."""
    if low is None:
        return f"fewer than {degree_days(high + 1, customary)}"
    if high is None:
        return f"{degree_days(low, customary)} or more"
    return degree_days_span(low, high, customary)


def _degree_days(context: Context, rule: dict[str, Any]) -> str:
    days, cooling = context.degree_days, context.cooling_degree_days
    said = [degree_days(days, context.customary) if days is not None else "degree-days not given"]
    if "by_degree_days" in rule:
        shown = "cooling degree-days not given" if cooling is None else f"cooling {degree_days(cooling, context.customary)}"
        said.append(shown)
    return ", ".join(said)


def _zone_verdict(context: Context, rule: dict[str, Any], names: tuple[str, ...]) -> tuple[Verdict, str, str]:
    stated, derived = context.zone, context.zone_by_degree_days
    missing = "climate.heating_degree_days"
    if "by_degree_days" in rule:
        missing += " and climate.cooling_degree_days"
    if stated and stated not in names:
        return Verdict.NEEDS_JUDGEMENT, f"the set has no zone {stated}; it has {listed(names)}", (
            "ask the authority: which of them holds for the place?"
        )  # fmt: skip
    letters = _letters(context, stated or derived)
    if context.listed_zone:
        other = f"; the degree-days give zone {derived}" if derived else ""
        return (Verdict.NEEDS_JUDGEMENT if letters else Verdict.MEETS), f"by {context.zone_source}{other}", letters
    if rule.get("listed"):
        return Verdict.NEEDS_JUDGEMENT, f"the zone goes by {rule['by']}, which is not carried here", (
            "state code.zone, and in code.zone_source the list or letter that gives it"
        )  # fmt: skip
    if not derived and (printed := zone_words(context.edition, context.degree_days, context.cooling_degree_days)):
        return Verdict.NEEDS_JUDGEMENT, f"the degree-days given do not settle the zone: {printed}", (
            "ask the authority which zone holds for the place, and state it with its source (code.zone, code.zone_source)"
        )  # fmt: skip
    if not stated and not derived:
        reason = "neither is given" if context.degree_days is None else "the degree-days given do not settle it"
        return Verdict.NEEDS_JUDGEMENT, reason, f"state code.zone or {_not_given(context, missing)}"
    if not derived:
        reason = "the stated zone cannot be checked without degree-days"
        if context.degree_days is not None:
            reason = "the degree-days given do not settle the zone"
        return Verdict.NEEDS_JUDGEMENT, reason, f"state {_not_given(context, missing)} with its source"
    if len(context.named_zones) > 1:
        decides = "the more demanding of both decides"
        if "by_degree_days" in rule:
            decides = "the list comes first; until it is shown, both are judged"
        return Verdict.NEEDS_JUDGEMENT, f"the degree-days give zone {derived}; {decides}", (
            "ask the authority: which zone and which degree-days hold for the place?"
        )  # fmt: skip
    return (Verdict.NEEDS_JUDGEMENT if letters else Verdict.MEETS), f"the degree-days give zone {derived}", letters


def _not_given(context: Context, missing: str) -> str:
    """Of the degree-days that a zone needs, those that are not stated yet."""
    return missing.rpartition(" and ")[2] if context.degree_days is not None else missing


def _letters(context: Context, zone: str) -> str:
    """What to write where a zone stands without its letter, and one of those that it may stand for is marine."""
    of = expanded(context.edition, zone) if zone else ()
    if not any(one.endswith("C") for one in of) or zone in of:
        return ""
    return f"write {either(of)} in code.zone, as the list of counties has it"


def judge_scope(context: Context, name: str) -> tuple[Finding, Answer]:
    """Whether a section of the set with its own reach applies; `name` is a key of the code's `scopes`."""
    rule = context.edition.content["scopes"][name]
    answer, reason = _reach(context, rule)
    by_memory = rule["mark"] == "memory"
    if by_memory:
        answer, reason = "unknown", f"each limit {MEMORY_LIMIT}; by it: {reason}"
    verdict = Verdict.MEETS if answer == "yes" else Verdict.NEEDS_JUDGEMENT
    step = {
        "yes": "", "no": f"show it by {rule['instead']}, which is not carried here",
        "unknown": _reach_step(context, rule),
    }[answer]  # fmt: skip
    step = f"confirm {rule['clause']}" if by_memory else step
    most = area(rule["floor_area"], context.customary)
    return about_set(
        context, f"{name}-scope", rule, rule["question"], verdict,
        asked=rule.get("asked", f"residential; or office, shop and low-hazard industry of {most} floor area at most"),
        given=building(context, _floor_area(context)), reason=reason, next_step=step,
    ), answer  # fmt: skip


def _reach_step(context: Context, rule: dict[str, Any]) -> str:
    """The keys that are missing, and no other."""
    if context.occupancy in rule["industrial"] and context.hazard != "low":
        return "state building.hazard (low, medium or high)"
    if context.occupancy not in (*rule["limited"], *rule["industrial"]):
        return "state building.occupancy, by its group in the code"
    missing = [key for key, one in (("building_area", context.building_area), ("storeys", context.storeys)) if one is None]
    if missing:
        return f"state {listed([f'building.{key}' for key in missing])}"
    return "show the total floor area of the occupancy to the authority: building area times storeys is more than the limit"


def _floor_area(context: Context) -> str:
    """The conditioned floor area, beside it the building area that bounds the floor area from above."""
    floor = context.floor_area
    if floor is not None:
        return f"conditioned floor area {area(floor, context.customary)}, {building_area(context)}"
    if context.building_area is None:
        return "floor area not given"
    return f"{building_area(context)} (conditioned floor area not given)"


def _reach(context: Context, rule: dict[str, Any]) -> tuple[Answer, str]:
    occupancy = context.occupancy
    if occupancy in rule["residential"]:
        return "yes", "a residential occupancy"
    if occupancy in rule["industrial"] and context.hazard in ("medium", "high"):
        return "no", f"a {context.hazard}-hazard industrial occupancy follows {rule['instead']}"
    if occupancy not in rule["limited"] and not (occupancy in rule["industrial"] and context.hazard == "low"):
        if occupancy in rule["industrial"]:
            return "unknown", "an industrial occupancy of low hazard is within it, and the hazard is not given"
        return "unknown", "the occupancy does not say it"
    most = rule["floor_area"]
    limit = area(most, context.customary)
    if context.floor_area is not None and context.floor_area > most:
        return "no", f"more than {limit} of floor area follows {rule['instead']}"
    if context.building_area is not None and context.storeys is not None:
        total = context.building_area * context.storeys
        if total <= most:
            return "yes", f"building area times storeys is {area(total, context.customary)}, so the floor area is no more"
    return "unknown", f"whether the floor area stays within {limit} is not given"
