"""What the American energy chapter lets pass of openings over their limit: mean of all, small areas, one door, high places."""

from typing import Any

from layerfolio.codes import judges
from layerfolio.codes.findings import Verdict
from layerfolio.codes.limits import to_si
from layerfolio.codes.outcomes import Outcome
from layerfolio.codes.requirements import requirements
from layerfolio.codes.stated import metres, square_metres
from layerfolio.codes.us_openings import Case, case_of
from layerfolio.codes.wording import listed

GLAZED = ("window", "glass-block", "skylight")
SIDE_HUNG = ("side-hung", "swinging")
HIGH = 1219.2
"""4000 ft, above which a window may have a little more, m."""


def exempt(case: Case) -> Outcome | None:
    """Zones without a figure in the table of R-values, one door, a small area of glazing: the sum of all parts counts them."""
    figures, opening, about = case.requirement.figures, case.opening, case.about
    if case.resolved.amended:
        return None
    if all(zone.rstrip("ABC") in figures.get("no_row", ()) for zone in about.zones):
        return Outcome(Verdict.NOT_ASKED, "the table of R-values has no figure in this zone")
    most = case.requirement.rule["exempt"]
    if opening.kind == "door" and judges.at_most(opening.area, most["door"]) and _over(case, ("door",))[1] == 1:
        return _door(case, most["door"])
    if opening.kind in GLAZED and judges.at_most(_over(case, GLAZED)[0], most["glazed"]):
        shown = square_metres(most["glazed"], about.customary)
        return Outcome(Verdict.NOT_ASKED, f"{shown} of glazing are left out ({figures['glazed']}), though not in the total UA")
    return None


def _door(case: Case, most: float) -> Outcome:
    stated, clause = case.opening.stated, case.requirement.figures["door"]
    shown = square_metres(most, case.about.customary)
    if getattr(stated, "operation", None) in SIDE_HUNG and getattr(stated, "glass", None) is None:
        return Outcome(
            Verdict.NOT_ASKED, f"one side-hung opaque door of up to {shown} is left out ({clause}), though not in the total UA; "
            "the project file states no glass in it",
        )  # fmt: skip
    return Outcome(
        Verdict.NEEDS_JUDGEMENT, f"{clause} leaves out one side-hung opaque door of up to {shown}", "answer: is it such a door?"
    )


def _over(case: Case, kinds: tuple[str, ...]) -> tuple[float, int]:
    """Area and number of the openings of these kinds that are over their limit or have no value."""
    about, area, count = case.about, 0.0, 0
    for one in requirements(about.edition.set_id):
        if one.judge == "fenestration":
            for opening in about.envelope.openings.values():
                if opening.kind in one.of_openings and opening.kind in kinds and not case_of(one, opening, about).within:
                    area, count = area + opening.total_area, count + opening.count
    return area, count


def by_mean(case: Case) -> Outcome | None:
    """The mean by area of all that the requirement asks about; None where it does not help."""
    kinds = case.requirement.of_openings
    some = [case_of(case.requirement, x, case.about) for x in case.about.envelope.openings.values() if x.kind in kinds]
    if len(some) < 2 or any(one.value is None for one in some) or case.resolved.question:
        return None
    mean = sum(one.value * one.opening.total_area for one in some) / sum(one.opening.total_area for one in some)
    if not judges.at_most(mean, case.limit):
        return None
    clause = case.requirement.figures["average"]
    words = f"the mean of all by area, {case.shown(mean)}, is within the limit ({clause})"
    lacking = [one.opening.name for one in some if not one.shows]
    if lacking:
        return Outcome(
            Verdict.NEEDS_EVIDENCE, f"{words}, but not every value in it is a rated one with its document",
            f"supply the rating of {listed(lacking)}",
        )  # fmt: skip
    return Outcome(Verdict.MEETS, words)


def higher(case: Case) -> Outcome | None:
    """What is allowed in high places and where debris may fly."""
    rule = case.requirement.figures.get("high")
    if rule is None or case.resolved.amended or case.opening.kind == "skylight":
        return None
    zones = [zone for zone in case.about.zones if zone in rule["zones"] or _number(zone, rule["zones"])]
    most = rule["at_most"] * to_si(case.requirement)
    if len(zones) < len(case.about.zones) or not judges.at_most(case.value, most):
        return None
    alone = all(zone in rule.get("only_by_insulation", ()) or _number(zone, rule.get("only_by_insulation", ())) for zone in zones)
    return Outcome(
        Verdict.NEEDS_JUDGEMENT, f"{case.shown(most)} is allowed in two kinds of place"
        + (", here by the note of the table of R-values alone" if alone else ""),
        f"answer: does the building stand above {metres(HIGH, case.about.customary)}, or where windborne "
        "debris makes the code ask for protected openings?",
    )  # fmt: skip


def _number(zone: str, zones: Any) -> bool:
    """Whether the zone's number is meant; marine 4 stands for itself."""
    return zone != "4C" and zone.rstrip("ABC") in zones
