"""Requirements that are made for some occupancies alone: another one is told what holds for it instead."""

from dataclasses import replace

from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Verdict
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.wording import listed

UNKNOWN = ("", "other")
WORDS = {"house": "houses", "dwelling-unit": "dwelling units"}


def within_occupancy(found: Finding, requirement: Requirement, about: Context) -> Finding:
    """The finding as it stands, or what an occupancy outside the requirement's `occupancies` is told."""
    named = requirement.rule.get("occupancies")
    if named is None or about.occupancy in named:
        return found
    if about.occupancy in UNKNOWN:
        if found.verdict in (Verdict.NEEDS_JUDGEMENT, Verdict.NOT_ASKED):
            return found
        reason = "; ".join(filter(None, (found.reason, "whether it is asked of this occupancy is open")))
        step = f"state the occupancy (building.occupancy): is it one of {listed(named)}"
        return replace(found, verdict=Verdict.NEEDS_JUDGEMENT, reason=reason, next_step=step)
    other = requirement.rule["otherwise"]
    asked = other.get("asked", f"of {listed([WORDS.get(one, one) for one in named])} only")
    return replace(
        found, verdict=Verdict(other["verdict"]), reason=other["reason"], next_step=other.get("next_step", ""), limit=None,
        provided=None, asked=asked, given=f"occupancy: {about.occupancy}",
        performance=other.get("performance", found.performance),
    )  # fmt: skip
