"""Air leakage under the American energy chapter: what is aimed at, and what a test has measured, against the limit."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

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


@dataclass(frozen=True, slots=True)
class Leakage:
    """Air changes per hour at 50 Pa, None where they are not stated."""

    aim: float | None
    measured: float | None

    @property
    def counts(self) -> float | None:
        """What is compared: the measured figure before the aim."""
        return self.aim if self.measured is None else self.measured

    @property
    def words(self) -> str:
        said = [f"{words} {one:g}" for words, one in (("aimed at", self.aim), ("measured", self.measured)) if one is not None]
        return ", ".join(said) or "not stated"


def judge_air_leakage(requirement: Requirement, about: Context) -> Finding:
    """Air changes at 50 Pa: over the limit does not meet, within it a measured figure with its report decides."""
    own = Leakage(about.answer("air_changes_at_50_pa"), about.answer("measured_air_changes_at_50_pa"))
    limits = {zone: cell(requirement.figures["by_zone"], zone) for zone in about.zones}
    found = by_zone({zone: _outcome(requirement, own, limit, about) for zone, limit in limits.items()})
    shown = grouped({zone: f"{limit:.1f}" for zone, limit in limits.items()})
    where = f", zone {about.zone_words}" if about.zone_words else ""
    other = requirement.figures.get("any_path")
    return finding(
        requirement, about, found.verdict, reason=found.reason, next_step=found.next_step, given=own.words,
        asked=f"{shown} air changes an hour at 50 Pa or less{where}" + (f"; by every other path {other}" if other else ""),
    )  # fmt: skip


def _outcome(requirement: Requirement, own: Leakage, limit: float, about: Context) -> Outcome:
    report = f"supply the signed report of the test to {requirement.rule['tests']}"
    if own.counts is None:
        return Outcome(Verdict.NEEDS_EVIDENCE, "no aim is stated and no test is given", f"state air_changes_at_50_pa; {report}")
    if not judges.at_most(own.counts, limit):
        return _over(requirement, own, about)
    papers = documents_for(about, CLAIM, None)
    attached = [one for one in papers if getattr(one, "file", None)]
    if own.measured is None:
        return _aimed(attached or papers, report)
    if attached:
        return Outcome(Verdict.MEETS, f"the measured figure is within the limit, by {title_of(attached[0])}, which is attached")
    if papers:
        words = f"the measured figure is within the limit; {title_of(papers[0])} is named, not attached"
        return Outcome(Verdict.NEEDS_EVIDENCE, words, f"{report}, and name its file under documents")
    return Outcome(Verdict.NEEDS_EVIDENCE, "the measured figure is within the limit; no report of it is named", report)


def _aimed(papers: Sequence[Any], report: str) -> Outcome:
    """An aim decides nothing; a document without a figure that was measured may say anything."""
    if not papers:
        return Outcome(Verdict.NEEDS_EVIDENCE, "the aim is within the limit; the test decides when the house is built", report)
    words = f"the aim is within the limit; what {title_of(papers[0])} says was measured is not stated"
    return Outcome(Verdict.NEEDS_EVIDENCE, words, f"state measured_air_changes_at_50_pa; {report}")


def _over(requirement: Requirement, own: Leakage, about: Context) -> Outcome:
    what = "the aim" if own.measured is None else "the measured figure"
    small = requirement.figures.get("small")
    if small and about.floor_area is not None and judges.at_most(about.floor_area, small["area"]):
        shown = square_metres(small["area"], about.customary)
        return Outcome(
            Verdict.NEEDS_JUDGEMENT, f"over the limit; a dwelling of {shown} or less may be tested by {small['words']} instead",
            "state the leakage by the area of the enclosure, or a tighter envelope",
        )  # fmt: skip
    return Outcome(Verdict.DOES_NOT_MEET, f"{what} is over the limit", "a tighter envelope, or the performance path")
