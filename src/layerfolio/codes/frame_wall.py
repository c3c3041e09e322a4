"""A frame wall as the American tables see it: the depth of its framing, and the continuous insulation outside it."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from layerfolio.codes.climate_zones import cell
from layerfolio.codes.context import Context
from layerfolio.codes.findings import Verdict
from layerfolio.codes.inputs import FROM_MEMORY, counted, heat_figures
from layerfolio.codes.judges import at_least
from layerfolio.codes.making import MEMORY_LIMIT
from layerfolio.codes.outcomes import Outcome
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.wording import figure, listed, pair
from layerfolio.studies.types import LayerHeat, ThermalStudy
from layerfolio.units.table import unit_factor

RSI = unit_factor("h.ft2.F/Btu", "resistance")
"""One ft2.h.F/Btu, m2.K/W."""

FRAMES = (("2x4", 0.089), ("2x6", 0.140))
"""Nominal frames of the tables and the depth of their studs, m; a frame within 3 mm of a row is that row."""


@dataclass(frozen=True, slots=True)
class FrameWall:
    """`framed`: the solid layers with members; `outside`: insulation without members that lies outside them.

    Without any framing stated, the insulation outside the main one counts as outside.
    """

    framed: tuple[LayerHeat, ...]
    outside: tuple[LayerHeat, ...]
    inside: tuple[LayerHeat, ...]  # all else that counts and lies inside the continuous insulation

    @property
    def depth(self) -> float | None:
        """Depth of the framed layers together, m; None where no framing or no thickness is stated."""
        depths = [one.layer.thickness.value for one in self.framed if one.layer.thickness]
        return sum(depths) if depths and len(depths) == len(self.framed) else None

    @property
    def frame(self) -> str:
        """The row of the tables: 2x4, 2x6 (also for depths between), "deeper", or empty when it is not known."""
        if self.depth is None:
            return ""
        return next((name for name, depth in FRAMES if self.depth <= depth + 0.003), "deeper")


def frame_wall(thermal: ThermalStudy) -> FrameWall:
    """The parts of a wall, from its thermal study."""
    layers = counted(thermal)
    framed = tuple(one for one in layers if one.layer.member and one.layer.kind == "solid")
    insulation = [one for one in layers if one.layer.insulating]
    main = max(insulation, key=lambda one: one.resistance or 0.0, default=None)
    edge = min((one.layer.number for one in framed), default=main.layer.number if main else 0)
    outside = tuple(one for one in insulation if one.layer.number < edge and one.layer.member is None)
    last = max((one.layer.number for one in outside), default=0)
    return FrameWall(framed, outside, tuple(one for one in layers if one.layer.number > last))


def total(layers: tuple[LayerHeat, ...]) -> tuple[float, float]:
    """Resistance of the main materials of layers together, and of it what rests on memory, m2.K/W."""
    doubtful = [one for one in layers if any(x.origin.mark == FROM_MEMORY for x in heat_figures(one.layer))]
    return sum(one.resistance or 0.0 for one in layers), sum(one.resistance or 0.0 for one in doubtful)


def enough_outside(
    requirement: Requirement, zone: str, wall: FrameWall, context: Context, layers: tuple[LayerHeat, ...] | None = None
) -> Outcome:
    """Continuous insulation (or `layers` that count as such) against the cell of the zone and of the frame."""
    layers = wall.outside if layers is None else layers
    value, doubtful = total(layers)
    short, limit = asked_outside(requirement, zone, wall, context)
    over = f" over {'2x4' if wall.frame == '2x4' else '2x6'} framing"
    shown, asked = pair("R_eff", value, limit, None, customary=context.customary, both=context.both)
    words = f"continuous insulation {shown} outside, {asked} asked{over}, {requirement.clause}"
    unknown = [one.layer.name for one in layers if one.resistance is None]
    if requirement.mark == FROM_MEMORY and requirement.id not in context.amended:
        return Outcome(Verdict.NEEDS_JUDGEMENT, f"{words}; the table {MEMORY_LIMIT}", f"confirm {requirement.clause}")
    if not at_least(value, limit):
        if unknown:
            step = f"supply a sourced thermal figure for {listed(unknown)}"
            return Outcome(Verdict.NEEDS_EVIDENCE, f"no thermal figure for {listed(unknown)}", step)
        if short != limit and not wall.frame and at_least(value, short):
            reason = f"{words}; the depth of the framing is not stated"
            return Outcome(Verdict.NEEDS_JUDGEMENT, reason, "state the framing with its depth")
        return Outcome(Verdict.DOES_NOT_MEET, words, "more continuous insulation outside")
    if short != limit and wall.frame == "deeper":
        reason = f"{words}: the table has no row for framing deeper than 2x6"
        return Outcome(Verdict.NEEDS_JUDGEMENT, reason, "ask the authority: what is asked over this framing?")
    if not at_least(value - doubtful, limit):
        reason = f"{words}, with figures that rest on memory"
        return Outcome(Verdict.NEEDS_EVIDENCE, reason, "supply the resistance of the outer insulation with its source")
    return Outcome(Verdict.MEETS, words)


def asked_outside(requirement: Requirement, zone: str, wall: FrameWall, context: Context) -> tuple[float, float]:
    """The least that the cell asks of any framing, and what it asks of this one (2x6 where it is not known), m2.K/W."""
    limits = _limits(requirement, zone, context)
    return limits[0], limits[0] if wall.frame == "2x4" else limits[-1]


def _limits(requirement: Requirement, zone: str, context: Context) -> tuple[float, ...]:
    """The cell of a zone over 2x4 and 2x6 framing, or one figure for all; an amended figure stands for both."""
    amended = context.amended.get(requirement.id)
    if amended is not None and isinstance(amended.value, float):
        return (amended.value,)
    found = cell(requirement.figures["insulation"], zone)
    return tuple(one * RSI for one in (found if isinstance(found, list) else [found]))


def has_row(table: Mapping[str, Any], zone: str) -> bool:
    """Whether a table by zone says anything of this one."""
    return zone in table or zone.rstrip("ABC") in table


def resistance_words(value: float, context: Context) -> str:
    """A resistance as findings of this context print it."""
    return figure("R_eff", value, customary=context.customary, both=context.both)
