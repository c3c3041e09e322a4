"""Walls and slabs against the ground under the American tables (IRC N1102.1.2, N1102.1.3)."""

from dataclasses import replace
from typing import NamedTuple

from layerfolio.codes import judges
from layerfolio.codes.climate_zones import cell
from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Measured, Verdict
from layerfolio.codes.heat import judge_heat
from layerfolio.codes.making import finding
from layerfolio.codes.outcomes import Outcome, by_zone, worst
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.stated import metres
from layerfolio.codes.us_insulation_rows import RSI, insulation_of
from layerfolio.codes.wording import figure
from layerfolio.studies.types import ThermalStudy, VapourStudy
from layerfolio.units.table import unit_factor

FOOT = unit_factor("ft", "length")
BTU = unit_factor("Btu/(h.ft2.F)", "transmittance")


def judge_foundation_wall(requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, about: Context) -> Finding:
    """Transmittance of a basement or crawl-space wall, judged without the ground in front; what the ground adds is a question."""
    plain = judge_heat(replace(requirement, judge="at_most"), thermal, about)
    if plain.verdict is not Verdict.DOES_NOT_MEET or plain.provided is None:
        return plain
    eased = _milder(requirement, thermal, plain.provided.value, plain.limit.value, about)
    if not eased:
        return plain
    return replace(
        plain, verdict=Verdict.NEEDS_JUDGEMENT, reason="the limit is missed as the layers stand, but one answer would turn it",
        next_step=f"answer: {' or '.join(f'{one}?' for one in eased)}",
    )  # fmt: skip


def _milder(requirement: Requirement, thermal: ThermalStudy, value: float, limit: float, about: Context) -> list[str]:
    """The questions that would turn a figure over the limit into one within."""
    found, tables = [], requirement.figures["tables"]
    crawl = [cell(table["crawl"], zone) * BTU for table in tables for zone in about.zones]
    amended = requirement.id in about.amended
    if not amended and judges.at_most(value, min(crawl)):
        found.append("is it the wall of an unvented crawl space")
    humid = requirement.rule["warm_humid"]
    named = all(one.startswith(humid["zone"]) and one != "3C" for one in about.zones)
    if not amended and named and judges.at_most(value, humid["at_most"] * BTU):
        found.append("is the place warm-humid by the list of counties")
    ground = about.envelope.ground.get(thermal.assembly.name)
    through = None if ground is None else ground.transmittance
    if through is None:
        found.append("what is the transmittance with the ground (ground.conductivity, ground.depth), and does the table count it")
    elif judges.at_most(through, limit):
        with_ground = figure("U", through, customary=about.customary, both=about.both)
        found.append(f"does the table count the ground ({with_ground} with it, by ISO 13370)")
    return found


class _Slab(NamedTuple):
    """What is known of a slab; None where the project file does not say. R in h.ft2.F/Btu, lengths in m."""

    heated: bool | None
    depth: float | None
    edge: float | None
    extent: float | None
    direction: str
    under: float


def _slab(thermal: ThermalStudy) -> _Slab:
    ground = thermal.assembly.ground
    edge = ground.get("edge_insulation") or {}
    resistance, found = edge.get("resistance"), insulation_of(thermal)
    return _Slab(
        ground.get("heated"), ground.get("depth"), None if resistance is None else resistance / RSI, edge.get("width"),
        edge.get("direction", ""), found.continuous,
    )  # fmt: skip


def judge_slab_insulation(requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, about: Context) -> Finding:
    """Insulation along the edge of a slab, and under a heated one; where an answer is missing and would matter, a question."""
    slab = _slab(thermal)
    amended = about.amended.get(requirement.id)
    found = by_zone({zone: _in_zone(requirement, slab, zone, about) for zone in about.zones})
    rows = {zone: _row(requirement, zone, slab.heated, amended) for zone in about.zones}
    return finding(
        requirement, about, found.verdict, assembly=thermal.assembly.name, reason=found.reason, next_step=found.next_step,
        amended=amended.source if amended else "", asked=_asked(requirement, rows, slab, about), given=_given(slab, about),
        provided=None if slab.edge is None else Measured("R", slab.edge * RSI),
        limit=Measured("R", R * RSI) if len(set(rows.values())) == 1 and (R := next(iter(rows.values()))[0]) else None,
    )  # fmt: skip


def _in_zone(requirement: Requirement, slab: _Slab, zone: str, about: Context) -> Outcome:
    """The outcome, or the question that is left when one of two answers would change it."""
    amended = about.amended.get(requirement.id)
    found = {}
    for heated in (False, True) if slab.heated is None else (slab.heated,):
        row = _row(requirement, zone, heated, amended)
        found[heated] = _outcome(requirement, slab._replace(heated=heated), *row, about)
    if len({one.verdict for one in found.values()}) > 1:
        least = requirement.rule["under_heated"]
        return Outcome(Verdict.NEEDS_JUDGEMENT, f"a heated slab needs R-{least} under all of it", "state ground.heated")
    return next(iter(found.values()))


def _row(requirement: Requirement, zone: str, heated: bool | None, amended: object) -> tuple[float, float]:
    """R at the edge and its extent, m."""
    own = requirement.figures.get("heated", {})
    key = zone.rstrip("ABC")
    R, feet = own[key] if heated and key in own else cell(requirement.figures["edge"], zone)
    return (round(amended.value / RSI, 6) if amended else R), feet * FOOT


def _outcome(requirement: Requirement, slab: _Slab, R: float, extent: float, about: Context) -> Outcome:
    near = requirement.figures["near"]
    if slab.depth is not None and not _near(slab.depth, near):
        return Outcome(Verdict.NOT_ASKED, f"the rule is for floors {near['words']}")
    if not R and slab.heated is False:
        return Outcome(Verdict.NOT_ASKED, "the table asks for none at the edge of an unheated slab")
    parts = [_under(requirement, slab)]
    if R:
        parts.append(_edge(requirement, slab, R, extent, about))
    found = worst(parts)
    if slab.depth is None and found.verdict is Verdict.DOES_NOT_MEET:
        return Outcome(Verdict.NEEDS_JUDGEMENT, f"{found.reason}; the rule is for floors {near['words']}", "state ground.depth")
    return found


def _near(depth: float, near: dict) -> bool:
    """Whether the floor lies as near to the ground as the rule asks; 12 in are one foot, whatever units leave behind."""
    if near.get("included"):
        return judges.at_most(depth, near["below"])
    return not judges.at_least(depth, near["below"])


def _under(requirement: Requirement, slab: _Slab) -> Outcome:
    least = requirement.rule["under_heated"]
    if not slab.heated or judges.at_least(slab.under, least):
        return Outcome(Verdict.MEETS, "nothing more is asked under the slab")
    return Outcome(Verdict.DOES_NOT_MEET, f"a heated slab needs R-{least} under all of it", "insulation under all of the slab")


def _edge(requirement: Requirement, slab: _Slab, R: float, extent: float, about: Context) -> Outcome:
    if slab.edge is None:
        return Outcome(
            Verdict.NEEDS_EVIDENCE, "the insulation at the edge of the slab is not given", "state ground.edge_insulation"
        )
    remedy = "more of it at the edge, or show that the place is designated for very heavy termite infestation"
    if not judges.at_least(slab.edge, R):
        return Outcome(Verdict.DOES_NOT_MEET, f"the insulation at the edge is less than R-{R:g}", remedy)
    if slab.direction == "horizontal" and (requirement.figures.get("vertical_only") or judges.at_least(slab.extent, extent)):
        return Outcome(
            Verdict.NEEDS_JUDGEMENT, "the insulation lies flat, and the rule begins at the top of the slab",
            "answer: is the edge of the slab insulated from its top down?",
        )  # fmt: skip
    if judges.at_least(slab.extent, extent) or (slab.heated and "heated" not in requirement.figures):
        return Outcome(Verdict.MEETS, "the insulation at the edge reaches the table")
    short = f"the insulation goes {metres(slab.extent, about.customary)}, {metres(extent, about.customary)} is asked"
    if requirement.figures.get("vertical_only"):
        return Outcome(Verdict.NEEDS_JUDGEMENT, short, "answer: does it go down to the depth of the footing, where it may end?")
    return Outcome(Verdict.DOES_NOT_MEET, short, "take it further down, under the slab or out from the building")


def _asked(requirement: Requirement, rows: dict, slab: _Slab, about: Context) -> str:
    shown = []
    for R, extent in dict.fromkeys(rows.values()):
        far = f" over {metres(extent, about.customary)}" if extent else ""
        shown.append(f"R-{R:g} at the edge{far}" if R else "none at the edge")
    under = "" if slab.heated is False else f"; R-{requirement.rule['under_heated']} under all of a heated slab"
    where = f", zone {about.zone_words}" if about.zone_words and requirement.id not in about.amended else ""
    return " or ".join(shown) + under + where


def _given(slab: _Slab, about: Context) -> str:
    def shown(value: float) -> str:
        return figure("R", value * RSI, customary=about.customary, both=about.both)

    edge = "edge not given"
    if slab.edge is not None:
        edge = f"edge {shown(slab.edge)}, {slab.direction} {metres(slab.extent, about.customary)}"
    heated = {True: "heated", False: "not heated", None: "heated or not is not given"}[slab.heated]
    return f"{edge}; under it {shown(slab.under) if slab.under else 'none'}; {heated}"
