"""Whether a set applies to the building, by occupancy, size and date, and whether its edition is in force."""

from typing import Any, Literal

from layerfolio.codes.amendments import in_force_id
from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Verdict
from layerfolio.codes.making import MEMORY_LIMIT
from layerfolio.codes.site_figures import area
from layerfolio.codes.wording import listed

Answer = Literal["yes", "no", "unknown"]
HAZARDS = ("low", "medium", "high")


def about_set(context: Context, name: str, row: dict[str, Any], title: str, verdict: Verdict, **said: Any) -> Finding:
    """A finding on the set itself; `row` gives article, clause, source, place and mark."""
    usual = {"provided": None, "limit": None, "topic": "applicability"}
    return Finding(
        id=f"{context.edition.set_id}/{row['article']}/{name}", assembly=None, edition=context.edition.title,
        clause=row["clause"], question=title, path="prescriptive", verdict=verdict, source=row["source"],
        place=row["place"], mark=row["mark"], **usual | said,
    )  # fmt: skip


def judge_applies(context: Context) -> tuple[Finding, Answer]:
    """The first finding of a set: does it apply to this building, on this date?"""
    rule = context.edition.content["applies"]
    against, open_questions = _date(context), _undated(context)
    by_memory = rule["mark"] == "memory" and not against
    if "any" in rule:
        asked, given = rule["any"], "plane assemblies"
    else:
        most = f" and {area(rule['building_area'], context.customary)}" if "building_area" in rule else ""
        asked, given = f"{rule['storeys']} storeys{most} at most; {rule['named']}", building(context)
        _size(context, rule, against, open_questions)
        _occupancy(context, rule, against, open_questions)
    answer: Answer = "no" if against else "unknown" if open_questions else "yes"
    if by_memory and answer != "unknown":
        answer, open_questions = "unknown", [f"each limit {MEMORY_LIMIT}"]
    verdict = {"no": Verdict.DOES_NOT_MEET, "unknown": Verdict.NEEDS_JUDGEMENT, "yes": Verdict.MEETS}[answer]
    reason = {
        "no": "; ".join(against), "unknown": f"it is not known: {'; '.join(open_questions)}",
        "yes": "; ".join(("occupancy, size and date are within the set", *_taken(context, rule))),
    }[answer]  # fmt: skip
    missing = f"confirm {rule['clause']}" if by_memory else f"state {listed(open_questions)}"
    step = {"no": "choose the set that applies, with the authority", "unknown": missing, "yes": ""}
    return about_set(
        context, "applies", rule, "Does the set apply?", verdict, asked=asked, given=given, reason=reason,
        next_step=step[answer],
    ), answer  # fmt: skip


def _date(context: Context) -> list[str]:
    """Why the date speaks against the edition. Dates are ISO texts, the edition's own perhaps to the year or month."""
    dated, published = context.date, context.edition.edition["published"]
    if dated and published["mark"] != "memory" and dated[: len(published["date"])] < published["date"]:
        return [f"the project's date is {dated}; the edition was published in {published['date']}"]
    force = context.amended.get(in_force_id(context.edition.set_id))
    if force is not None and dated and dated < str(force.value):
        return [f"the project's date is {dated}; the edition is in force here from {force.value}, by {force.source}"]
    return []


def _undated(context: Context) -> list[str]:
    """What is open about the date: it is missing, or lies before a publication that is known from memory alone."""
    published = context.edition.edition["published"]
    if not context.date:
        return ["the date of the project"]
    if published["mark"] == "memory" and context.date[: len(published["date"])] < published["date"]:
        return [f"whether the edition was out on {context.date}; from memory it was published in {published['date']}"]
    return []


def _taken(context: Context, rule: dict[str, Any]) -> tuple[str, ...]:
    """What was taken for granted about the occupancy, in words, or what the project file states of it."""
    row = rule.get("occupancies", {}).get(context.occupancy, {})
    said = row.get("taken") or row.get("taken_so")
    return (said,) if said else ()


def building(context: Context, area_words: str = "") -> str:
    """Storeys, area and occupancy in one line; `area_words`, or the building area where they are empty."""
    number = context.storeys
    storeys = "storeys not given" if number is None else f"{number} storey{'s' * (number != 1)}"
    return ", ".join((storeys, area_words or building_area(context), context.occupancy or "occupancy not given"))


def building_area(context: Context) -> str:
    """The building area, named as such."""
    value = context.building_area
    return "building area not given" if value is None else f"building area {area(value, context.customary)}"


def _size(context: Context, rule: dict[str, Any], against: list[str], open_questions: list[str]) -> None:
    if context.storeys is None:
        open_questions.append("the number of storeys (building.storeys)")
    elif context.storeys > rule["storeys"]:
        against.append(f"{context.storeys} storeys are more than {rule['storeys']}")
    if "building_area" not in rule:
        return
    if context.building_area is None:
        open_questions.append("the building area (building.building_area)")
    elif context.building_area > rule["building_area"]:
        found, most = (area(one, context.customary) for one in (context.building_area, rule["building_area"]))
        against.append(f"a building area of {found} is more than {most}")


def _occupancy(context: Context, rule: dict[str, Any], against: list[str], open_questions: list[str]) -> None:
    row = rule["occupancies"].get(context.occupancy)
    if row is None or row["applies"] == "unknown":
        usual = "the occupancy, by its group in the code (building.occupancy)"
        open_questions.append((row or {}).get("ask", usual))
    elif row["applies"] == "no":
        against.append(f"the occupancy is of group {row['group']}, for which {row['instead']} is made")
    elif row["applies"] == "accessory":
        belongs = context.answer("building.accessory")
        if belongs is None:
            open_questions.append(row["ask"])
        elif not belongs:
            against.append(f"it is no accessory structure of a dwelling, as the project file states; {row['instead']} is for it")
    elif row["applies"] == "hazard":
        if context.hazard == "high":
            against.append("a high-hazard industrial occupancy is outside it")
        elif context.hazard not in HAZARDS:
            open_questions.append("whether the industrial occupancy is of low, medium or high hazard (building.hazard)")


def judge_in_force(context: Context) -> Finding | None:
    """Whether the edition is in force at the place: the authority says it, or it is asked. None for a method."""
    edition = context.edition.edition
    if "adopted" not in edition:
        return None
    said = context.edition.content["adoption"]
    row = edition["published"] | {"article": "edition", "clause": said["clause"]}
    known = "; ".join(f"{one['by']} from {one['from']}" for one in edition["adopted"]) or "none is recorded here"
    given = f"project of {context.date or 'no date'}"
    force = context.amended.get(in_force_id(context.edition.set_id))
    title = "Is this edition in force here?"
    if force is not None:
        early = not context.date or context.date < str(force.value)
        verdict = Verdict.DOES_NOT_MEET if early else Verdict.MEETS
        return about_set(
            context, "in-force", row | {"mark": "given"}, title, verdict,
            asked=f"in force from {force.value}", given=given, reason=f"by {force.source}", amended=force.source,
            next_step="choose the edition that was in force" if early else "",
        )  # fmt: skip
    first = min((one["from"] for one in edition["adopted"]), default="")
    early = f"; before {first} no adoption is known here" if context.date and context.date < first else ""
    return about_set(
        context, "in-force", row, title, Verdict.NEEDS_JUDGEMENT,
        asked=said["asked"], given=given,
        reason=f"{said.get('why', 'a model code has force only where it is adopted')}; known: {known}{early}",
        next_step="ask the authority: is this edition in force on the date of the application, and with which changes?",
    )  # fmt: skip
