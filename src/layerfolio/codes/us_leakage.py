"""Air leakage under the American energy chapter: the aim of the project against the limit, and the report of the test."""

from layerfolio.codes import judges
from layerfolio.codes.climate_zones import cell
from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Verdict
from layerfolio.codes.given_papers import title_of
from layerfolio.codes.making import finding
from layerfolio.codes.outcomes import Outcome, by_zone, grouped
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.stated import documents_for, square_metres

CLAIM = "airtightness"


def judge_air_leakage(requirement: Requirement, about: Context) -> Finding:
    """Air changes at 50 Pa: over the limit does not meet, within it the test decides."""
    aim = about.answer("air_changes_at_50_pa")
    limits = {zone: cell(requirement.figures["by_zone"], zone) for zone in about.zones}
    found = by_zone({zone: _outcome(requirement, aim, limit, about) for zone, limit in limits.items()})
    shown = grouped({zone: f"{limit:.1f}" for zone, limit in limits.items()})
    where = f", zone {about.zone_words}" if about.zone_words else ""
    other = requirement.figures.get("any_path")
    return finding(
        requirement, about, found.verdict, reason=found.reason, next_step=found.next_step,
        asked=f"{shown} air changes an hour at 50 Pa or less{where}" + (f"; by every other path {other}" if other else ""),
        given="not stated" if aim is None else f"aimed at {aim:g}",
    )  # fmt: skip


def _outcome(requirement: Requirement, aim: float | None, limit: float, about: Context) -> Outcome:
    report = f"supply the signed report of the test to {requirement.rule['tests']}"
    if aim is None:
        return Outcome(Verdict.NEEDS_EVIDENCE, "no aim is stated and no test is given", f"state air_changes_at_50_pa; {report}")
    if not judges.at_most(aim, limit):
        return _over(requirement, about)
    papers = documents_for(about, CLAIM, None)
    if any(getattr(one, "file", None) for one in papers):
        return Outcome(Verdict.MEETS, "the aim is within the limit, and a report is attached")
    if papers:
        words = f"the aim is within the limit; {title_of(papers[0])} is named, not attached"
        return Outcome(Verdict.NEEDS_EVIDENCE, words, f"{report}, and name its file under documents")
    return Outcome(Verdict.NEEDS_EVIDENCE, "the aim is within the limit; the test decides when the house is built", report)


def _over(requirement: Requirement, about: Context) -> Outcome:
    small = requirement.figures.get("small")
    if small and about.floor_area is not None and judges.at_most(about.floor_area, small["area"]):
        shown = square_metres(small["area"], about.customary)
        return Outcome(
            Verdict.NEEDS_JUDGEMENT, f"over the limit; a dwelling of {shown} or less may be tested by {small['words']} instead",
            "state the leakage by the area of the enclosure, or a tighter envelope",
        )  # fmt: skip
    return Outcome(Verdict.DOES_NOT_MEET, "the aim is over the limit", "a tighter envelope, or the performance path")
