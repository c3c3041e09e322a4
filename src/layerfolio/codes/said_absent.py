"""What the project file says there is none of: such a line is not asked, and the statement stands in it."""

from dataclasses import replace

from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Verdict
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.stated import of_assembly

STATED = "as stated in the project file"


def absent(about: Context, word: str) -> bool:
    """Whether the project file lists it under building.absent."""
    return word in (about.answer("building.absent") or ())


def with_absence(found: Finding, requirement: Requirement, about: Context) -> Finding:
    """The finding, not asked where the file says that there is none of what it asks about; else with the key that says so.

    `absent` of a requirement is its word of building.absent, `unless_false` a flag of the assembly.
    """
    word, flag = requirement.rule.get("absent"), requirement.rule.get("unless_false")
    if word and absent(about, word):
        return _none(found, f"building.absent: {word}")
    if flag and found.assembly and of_assembly(about, found.assembly, flag) is False:
        return _none(found, f"{flag}: false")
    if found.verdict is not Verdict.NEEDS_EVIDENCE or not (word or flag):
        return found
    step = f"; where there is none, state building.absent: [{word}]" if word else f", or {flag}: false where there is none"
    return replace(found, next_step=f"{found.next_step}{step}")


def _none(found: Finding, key: str) -> Finding:
    return replace(
        found, verdict=Verdict.NOT_ASKED, given=f"none, {STATED}", provided=None, reason=f"none, {STATED} ({key})", next_step="",
    )  # fmt: skip
