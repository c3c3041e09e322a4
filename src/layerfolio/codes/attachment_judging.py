"""Cladding hung through insulation by stated fasteners. Only the published table for furring over foam plastics comes to *meets*;
for all else the calculation is printed and a licensed professional designs.
"""

from typing import Any

from layerfolio.codes.attachment_words import given_words, numbers
from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Measured, Verdict
from layerfolio.codes.furring_table import Cell, Conditions, cell
from layerfolio.codes.making import finding
from layerfolio.codes.naming import called
from layerfolio.codes.outcomes import Outcome, worst
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.stated import metres
from layerfolio.studies.attachment import attachment
from layerfolio.studies.joint import DESIGN, Joint
from layerfolio.studies.structure_types import Attachment

ROUNDED = 2.5e-4
"""What a size in whole millimetres may lack of one in inches, m."""


def by_calculation(requirement: Requirement, one: Joint, about: Context) -> Finding:
    """Where the set has no table: always judgement, with the numbers; evidence while a figure is missing."""
    study = attachment(one.assembly, about.project)
    found = too_short(one, about) or (None if study.refused else borrowed(one) or _missing(study))
    found = found or _calculated("the set has no table for furring through insulation", study, about)
    capacity = None if study.capacity_lateral is None else Measured("Z_y", study.capacity_lateral)
    return _finding(requirement, one, study, found, about, provided=capacity)


def by_table(requirement: Requirement, one: Joint, about: Context) -> Finding:
    """Against the set's table for foam plastics; other boards and joints beyond it are left to a design."""
    study = attachment(one.assembly, about.project)
    conditions = Conditions(requirement, one, study, about)
    found, reached = too_short(one, about) or _outcome(conditions, study, about), None
    if isinstance(found, Cell):
        reached, found = found, _against(found, conditions, about)
    depth = one.insulation_depth
    return _finding(
        requirement, one, study, found, about, foam=conditions.foam, provided=None if depth is None else Measured("d", depth),
        limit=Measured("d", reached.depth) if reached and reached.depth else None,
    )  # fmt: skip


def _outcome(conditions: Conditions, study: Attachment, about: Context) -> "Outcome | Cell":
    """What stands before the table, or the cell that is meant. What no fastener could mend comes first."""
    if not conditions.foam:
        return _calculated("the published table is for boards of foam plastics alone", study, about)
    if conditions.inputs.refused:
        return _designed(conditions.inputs.refused, study, about)
    if missing := borrowed(conditions.joint) or conditions.missing():
        return missing
    if outside := conditions.outside():
        return _designed(outside, study, about)
    found = cell(conditions)
    return _designed([found], study, about) if isinstance(found, str) else found


def _against(found: Cell, conditions: Conditions, about: Context) -> Outcome:
    """The depth of foam, and the penetration, against the cell; then what has to be proved."""
    depth, penetration = conditions.joint.insulation_depth, conditions.penetration
    if found.depth is None:
        reason = f"the table asks for a design at this weight and spacing ({found.words})"
        return Outcome(Verdict.NEEDS_JUDGEMENT, reason, DESIGN)
    if depth > found.depth + ROUNDED:
        reason = f"more foam than {metres(found.depth, about.customary)} ({found.words})"
        step = f"more or thicker fasteners or less foam by the table, or the fastening is {DESIGN}"
        return Outcome(Verdict.DOES_NOT_MEET, reason, step)
    if found.penetration is None:
        step = "ask the authority: is the penetration of the nails as the clause has it?"
        reason = f"within the table's depth ({found.words}); its least penetration was not read"
        return Outcome(Verdict.NEEDS_JUDGEMENT, reason, step)
    if penetration < found.penetration - ROUNDED:
        own, least = (metres(one, about.customary) for one in (penetration, found.penetration))
        reason = f"a penetration of {own} is less than {least}"
        return Outcome(Verdict.DOES_NOT_MEET, reason, f"longer fasteners, or the fastening is {DESIGN}")
    return worst([*conditions.proofs(), Outcome(Verdict.MEETS, f"within {metres(found.depth, about.customary)} ({found.words})")])


def _missing(study: Attachment) -> Outcome | None:
    if not study.missing:
        return None
    return Outcome(Verdict.NEEDS_EVIDENCE, f"not stated: {'; '.join(study.missing)}", f"state {'; '.join(study.missing)}")


def _calculated(why: str, study: Attachment, about: Context) -> Outcome:
    if study.refused:
        return _designed([f"{why}; {'; '.join(study.refused)}"], study, about)
    if study.missing:
        step = f"the fastening is {DESIGN}; for a calculation beside it state {'; '.join(study.missing)}"
        return Outcome(Verdict.NEEDS_JUDGEMENT, f"{why}; not stated: {'; '.join(study.missing)}", step)
    said = f"{why}; {numbers(study, about)}: information for the engineer"
    suction = "; state site_loads.wind_suction, the design suction on the cladding" if _no_suction(study) else ""
    return Outcome(Verdict.NEEDS_JUDGEMENT, said, f"the fastening is {DESIGN}; put the calculation to the authority{suction}")


def _no_suction(study: Attachment) -> bool:
    """Whether withdrawal is calculated and nothing is known to set beside it."""
    return study.withdrawal_capacity is not None and study.withdrawal_demand is None


def _designed(reasons: list[str], study: Attachment, about: Context) -> Outcome:
    return Outcome(Verdict.NEEDS_JUDGEMENT, "; ".join(reasons), f"the fastening is {DESIGN}")


def too_short(one: Joint, about: Context) -> Outcome | None:
    """Fasteners that end before the framing hold nothing, whatever else is known of the joint; None where they reach it.

    Those of a board may hold the board alone: then the fasteners of what hangs outside it are still to be stated.
    """
    pins = one.fasteners
    if pins is None or one.penetration != 0 or one.main is None:
        return None
    length, way = (metres(size, about.customary) for size in (pins.length, one.side_thickness + one.gap))
    reason = f"fasteners of {length} end before the framing, which lies {way} in"
    if one.carrier is not one.side:
        step = f"state the fasteners of what hangs outside {called(one.carrier)}"
        return Outcome(Verdict.NEEDS_EVIDENCE, f"{reason}: they hold {called(one.carrier)} alone", step)
    return Outcome(Verdict.DOES_NOT_MEET, f"{reason}: they hold nothing", f"fasteners longer than {way}, or {DESIGN}")


def borrowed(one: Joint) -> Outcome | None:
    """Fasteners that reach the framing and are stated of a board alone: whether they hold what hangs is not said."""
    if not one.borrowed:
        return None
    reason = f"the fasteners are those of {called(one.carrier)}; what holds that which hangs outside it is not stated"
    return Outcome(Verdict.NEEDS_EVIDENCE, reason, f"state the fasteners of what hangs outside {called(one.carrier)}")


def _finding(
    requirement: Requirement, one: Joint, study: Attachment, found: Outcome, about: Context, **figures: Any
) -> Finding:
    table = "table" not in requirement.rule or figures.pop("foam", True)
    asked = requirement.rule["asked" if table else "asked_of_others"]
    return finding(
        requirement, about, found.verdict, assembly=one.assembly.name, asked=asked,
        given=given_words(one, study, about),
        reason=found.reason, next_step=found.next_step, performance=requirement.rule.get("performance", ""), **figures,
    )  # fmt: skip
