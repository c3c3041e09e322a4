"""The table of insulation R-values (IRC N1102.1.3): cavity and continuous insulation against the ways that a zone leaves open."""

from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Measured, Verdict
from layerfolio.codes.inputs import FIGURE, Weak, turned, weak
from layerfolio.codes.making import finding
from layerfolio.codes.naming import by_name, called
from layerfolio.codes.outcomes import Outcome, by_zone, grouped
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.us_insulation_rows import Insulation, Row, insulation_of, rows
from layerfolio.codes.wording import figure, listed
from layerfolio.studies.types import ThermalStudy, VapourStudy
from layerfolio.units.table import unit_factor

RSI = unit_factor("h.ft2.F/Btu", "resistance")


def judge_insulation(requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, about: Context) -> Finding:
    """The insulation of a part against the row of its zone; an amended figure stands for the whole row."""
    found = insulation_of(thermal)
    by = {zone: rows(requirement, thermal, about, zone) for zone in about.zones}
    amended = about.amended.get(requirement.id)
    outcome = _hindered(thermal) or by_zone({zone: _outcome(thermal, found, by[zone], about) for zone in by})
    limits = {one[0].least for one in by.values()}
    limit = limits.pop() if len(limits) == 1 else None
    return finding(
        requirement, about, outcome.verdict, assembly=thermal.assembly.name, reason=outcome.reason,
        next_step=outcome.next_step, step=f"{thermal.assembly.name}-T", amended=amended.source if amended else "",
        asked=f"{_asked(by, about, bool(amended))}; this table or {requirement.figures['other_table']}, one of the two",
        given=_given(found, about), provided=Measured("R", (found.cavity + found.continuous) * RSI),
        limit=Measured("R", limit * RSI) if limit else None,
    )  # fmt: skip


def _hindered(thermal: ThermalStudy) -> Outcome | None:
    """What keeps the table from being read: a figure that is missing, framing of steel."""
    missing = by_name(thermal.assembly, insulation_of(thermal).missing)
    if missing:
        return Outcome(
            Verdict.NEEDS_EVIDENCE, f"no thermal figure for {listed(missing)}", f"supply a sourced figure for {listed(missing)}"
        )
    metal = [called(one) for one in thermal.assembly.layers if one.counts and one.member and one.member.is_metal]
    if metal:
        return Outcome(
            Verdict.NEEDS_JUDGEMENT, f"{listed(metal)} has steel framing, for which this table does not hold",
            "show it by the transmittance with steel framing, calculated or tested",
        )  # fmt: skip
    return None


def _outcome(thermal: ThermalStudy, found: Insulation, options: list[Row], about: Context) -> Outcome:
    sure = [one for one in options if not one.question]
    if any(one.asks_nothing for one in sure):
        return Outcome(Verdict.MEETS, "the table asks for no insulation here")
    if any(one.holds(found) for one in sure):
        turning = _turning(thermal, sure, about)
        if turning:
            return Outcome(Verdict.NEEDS_EVIDENCE, *turned(turning, lambda names: listed(by_name(thermal.assembly, names))))
        return Outcome(Verdict.MEETS, "the insulation reaches the table")
    open_ = [one for one in options if one.question and one.holds(found)]
    if open_:
        words = " or ".join(one.words for one in open_)
        return Outcome(
            Verdict.NEEDS_JUDGEMENT, f"{words} would be asked if one question is answered with yes",
            "answer: " + " or ".join(f"{one.question}?" for one in open_),
        )  # fmt: skip
    return Outcome(
        Verdict.DOES_NOT_MEET, "the insulation does not reach the table", "more insulation, or show it by the total UA"
    )


def _turning(thermal: ThermalStudy, sure: list[Row], about: Context) -> list[Weak]:
    """Insulation by memory or by an expired document, without which no row is reached."""
    layers = {one.name for one in thermal.assembly.layers}
    found = [one for one in weak(thermal, about) if one.name in layers and FIGURE in one.of]
    return [x for x in found if not any(one.holds(insulation_of(thermal, without=x.name)) for one in sure)]


def _asked(by: dict[str, list[Row]], about: Context, amended: bool) -> str:
    shown = grouped({zone: " or ".join(one.words for one in some if not one.question) for zone, some in by.items()})
    where = f", zone {about.zone_words}" if about.zone_words and not amended else ""
    return f"{shown}{where}"


def _given(found: Insulation, about: Context) -> str:
    def shown(value: float) -> str:
        return figure("R", value * RSI, customary=about.customary, both=about.both)

    parts = [f"{name} {shown(value)}" for name, value in (("cavity", found.cavity), ("continuous", found.continuous)) if value]
    return ", ".join(parts) or "no insulation"
