"""Cladding that hangs outside insulation: what is asked of its fastening. What calculates loads where fasteners are stated."""

from layerfolio.codes import judges
from layerfolio.codes.context import Context, value
from layerfolio.codes.findings import Finding, Measured, Verdict
from layerfolio.codes.making import finding
from layerfolio.codes.naming import called
from layerfolio.codes.outcomes import Outcome
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.site_figures import pressure
from layerfolio.codes.wording import listed
from layerfolio.studies.joint import DESIGN, Joint, joint
from layerfolio.studies.types import ThermalStudy, VapourStudy

FASTENERS = "kind, diameter and root diameter, length, spacing, distance of their rows"


def judge_furring_over_foam(
    requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, about: Context
) -> Finding | None:
    """Furring over boards against the table; None for a wall without such a joint."""
    one = joint(thermal.assembly)
    return None if one is None or one.direct else _tabled(requirement, one, about)


def judge_cladding_through_foam(
    requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, about: Context
) -> Finding | None:
    """Cladding nailed straight through boards against its table; never *meets*: its least penetration was not read."""
    one = joint(thermal.assembly)
    return None if one is None or not one.direct else _tabled(requirement, one, about)


def judge_furring_by_calculation(
    requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, about: Context
) -> Finding | None:
    """Where the set has no table: the calculation, never a verdict on it."""
    one = joint(thermal.assembly)
    if one is None:
        return None
    from layerfolio.codes.attachment_judging import by_calculation

    return _named(by_calculation(requirement, one, about), requirement, one, about)


def _tabled(requirement: Requirement, one: Joint, about: Context) -> Finding:
    from layerfolio.codes.attachment_judging import by_table

    return _named(by_table(requirement, one, about), requirement, one, about)


def _named(found: Finding, requirement: Requirement, one: Joint, about: Context) -> Finding:
    """The finding; where only the fasteners are missing, what to state of them. What no fastener could mend stands."""
    waits = one.carrier is None and found.verdict is Verdict.NEEDS_EVIDENCE
    return _unstated(requirement, one, about) if waits else found


def _unstated(requirement: Requirement, one: Joint, about: Context) -> Finding:
    """Nothing is calculated while the fasteners are not stated."""
    return finding(
        requirement, about, Verdict.NEEDS_EVIDENCE, assembly=one.assembly.name, asked=requirement.rule["asked"],
        given=f"{listed([called(board) for board in one.insulation])} under {_side(one)}; fasteners not stated",
        reason=f"what fastens {_side(one)} through the insulation is not stated",
        next_step=f"state the fasteners of {_side(one)} ({FASTENERS})",
        performance=requirement.rule.get("performance", ""),
    )  # fmt: skip


def _side(one: Joint) -> str:
    """The side member: battens by their own name, else the layer."""
    return f"{one.battens.title} (layer {one.side.number})" if one.battens else called(one.side)


def judge_wind_on_cladding(
    requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, about: Context
) -> Finding | None:
    """Whether wind asks for a design: beyond the limit it does; within it the height of the roof is still open."""
    one = joint(thermal.assembly)
    if one is None:
        return None
    limit = requirement.figures["at_most"]
    suction = value(about.answer("site_loads.wind_suction"))
    found = _wind(suction, limit, about)
    given = "wind pressure not given" if suction is None else f"wind pressure {pressure(suction, about.customary)}"
    return finding(
        requirement, about, found.verdict, assembly=one.assembly.name, asked=requirement.rule["asked"], given=given,
        reason=found.reason, next_step=found.next_step, limit=Measured("p_w", limit),
        provided=None if suction is None else Measured("p_w", suction),
    )  # fmt: skip


def _wind(suction: float | None, limit: float, about: Context) -> Outcome:
    if suction is None:
        names = (("wind speed", "wind_speed"), ("exposure", "exposure"))
        open_ = [word for word, key in names if about.answer(f"site_loads.{key}") is None]
        step = f"supply {listed(['the design wind pressure on the cladding', *open_, 'mean roof height'])}"
        return Outcome(Verdict.NEEDS_EVIDENCE, "the design wind pressure on the cladding is not given", step)
    if not judges.at_most(suction, limit):
        reason = f"beyond {pressure(limit, about.customary)} the cladding is {DESIGN}"
        return Outcome(Verdict.NEEDS_JUDGEMENT, reason, f"the cladding is {DESIGN}")
    return Outcome(
        Verdict.NEEDS_JUDGEMENT, "the pressure is within the limit; the mean roof height is not judged here",
        "ask the authority: is the mean roof height within the clause for this wind speed and exposure?",
    )  # fmt: skip
