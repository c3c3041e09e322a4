"""Continuous insulation in place of an interior retarder (IRC 2024, Table R702.7(5))."""

from layerfolio.codes.context import Context
from layerfolio.codes.findings import Verdict
from layerfolio.codes.frame_wall import RSI, FrameWall, enough_outside, has_row, resistance_words, total
from layerfolio.codes.judges import at_most
from layerfolio.codes.outcomes import Outcome, worst
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.retarder_class import PERM
from layerfolio.studies.types import VapourStudy


def without_retarder(
    requirement: Requirement | None, wall: FrameWall, vapour: VapourStudy, zone: str, context: Context
) -> Outcome | None:
    """What the table makes of a wall without a retarder; None where edition, zone or wall have no such way."""
    if requirement is None or not wall.outside or not has_row(requirement.figures["insulation"], zone):
        return None
    enough = enough_outside(requirement, zone, wall, context)
    if enough.verdict is Verdict.DOES_NOT_MEET:
        return enough
    return worst((enough, _little_inside(requirement, wall, context), _tight_outside(requirement, wall, vapour)))


def _little_inside(requirement: Requirement, wall: FrameWall, context: Context) -> Outcome:
    value, _ = total(wall.inside)
    limit = requirement.figures["inside_at_most"] * RSI
    value_words, limit_words = (resistance_words(one, context) for one in (value, limit))
    shown = f"{value_words} inside the continuous insulation, {limit_words} at most"
    if at_most(value, limit):
        return Outcome(Verdict.MEETS, shown)
    step = "ask the authority for an accepted design with so much insulation between the framing"
    return Outcome(Verdict.NEEDS_JUDGEMENT, f"{shown} without a design that the authority accepts", step)


def _tight_outside(requirement: Requirement, wall: FrameWall, vapour: VapourStudy) -> Outcome:
    """A layer of 1 perm at most outside the framing and inside the continuous insulation, or that insulation itself."""
    edge = min((one.layer.number for one in wall.framed), default=max(one.layer.number for one in wall.outside) + 1)
    first = min(one.layer.number for one in wall.outside)
    rows = [row for row in vapour.layers if first <= row.layer.number < edge]
    limit = requirement.figures["layer_at_most"] * PERM
    tight = [row.layer.name for row in rows if row.permeance_dry is not None and at_most(row.permeance_dry, limit)]
    if tight:
        return Outcome(Verdict.MEETS, f"{tight[0]} is a layer of 1.0 US perm at most there")
    if any(row.permeance_dry is None for row in rows):
        step = "supply the dry-cup permeance of the layers outside the framing"
        return Outcome(Verdict.NEEDS_EVIDENCE, "not every permeance outside the framing is known", step)
    reason = "no layer of 1.0 US perm at most lies outside the framing"
    return Outcome(Verdict.DOES_NOT_MEET, reason, "add such a layer, or a retarder inside")
