"""The covering of a sloped roof (NBC 9.26): the least slope of its kind, and protection of the eave against ice."""

from math import radians, tan
from typing import Any

from layerfolio.assembly.types import Assembly, Layer
from layerfolio.codes import judges
from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Verdict
from layerfolio.codes.making import finding
from layerfolio.codes.naming import called
from layerfolio.codes.outcomes import Outcome
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.site_figures import degree_days
from layerfolio.codes.stated import metres
from layerfolio.studies.types import ThermalStudy, VapourStudy

ASK = "ask the authority: which covering of the table is it, and is its slope accepted?"


def judge_roof_slope(requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, about: Context) -> Finding:
    """The slope against that of the covering's row; kinds without a row, or with several, are a question below the steepest."""
    assembly = thermal.assembly
    covering = covering_of(assembly)
    row = row_of(requirement, covering)
    found, asked = _slope(row, assembly.slope)
    return finding(
        requirement, about, found.verdict, assembly=assembly.name, asked=asked, reason=found.reason, next_step=found.next_step,
        given=f"{_named(covering)}, {_rise(assembly.slope)}",
    )  # fmt: skip


def judge_eave_protection(requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, about: Context) -> Finding:
    """Asked of shingles, shakes and tiles in the cold, on slopes that are not steep."""
    assembly, rule = thermal.assembly, requirement.rule
    covering = covering_of(assembly)
    found = _eave(rule, row_of(requirement, covering), assembly.slope, about)
    days = "degree-days not given" if about.degree_days is None else degree_days(about.degree_days, about.customary)
    return finding(
        requirement, about, found.verdict, assembly=assembly.name, asked=_asked(rule, about), reason=found.reason,
        next_step=found.next_step, given=f"{_named(covering)}, {_rise(assembly.slope)}, {days}",
    )  # fmt: skip


def _asked(rule: dict[str, Any], about: Context) -> str:
    sizes = {key: metres(rule[key], about.customary) for key in ("up", "inside")}
    return rule["asked"].format(days=degree_days(rule["degree_days_at_most"], about.customary), **sizes)


def covering_of(assembly: Assembly) -> Layer | None:
    """The layer that serves as weather face, else the outermost that is no cavity."""
    face = next((one for one in assembly.layers if "weather face" in one.serves), None)
    return face or next((one for one in assembly.layers if one.kind != "cavity"), None)


def row_of(requirement: Requirement, covering: Layer | None) -> dict[str, Any] | None:
    """The row of the slope table for a covering: by its material, else by its family; None where the table has none."""
    rows = requirement.rule["coverings"]
    if covering is None:
        return None
    by_name = next((row for row in rows if covering.material in row.get("materials", ())), None)
    return by_name or next((row for row in rows if covering.family in row.get("families", ())), None)


def _named(covering: Layer | None) -> str:
    return called(covering) if covering else "no covering stated"


def _rise(slope: float) -> str:
    """ "30°, 1 in 1.73"; flat roofs have no ratio."""
    rise = tan(radians(slope))
    return f"{slope:g}°, 1 in {1 / rise:.3g}" if rise > 0.005 else f"{slope:g}°"


def _slope(row: dict[str, Any] | None, slope: float) -> tuple[Outcome, str]:
    if row is None:
        return Outcome(Verdict.NEEDS_JUDGEMENT, "the table names no such covering", ASK), "the least slope of its row"
    asked = f"{row['words']}: 1 in {1 / row['least']:g} or steeper"
    if judges.at_least(tan(radians(slope)) + 1e-9, row["least"]):
        return Outcome(Verdict.MEETS, "the slope reaches that of its row"), asked
    if "low" in row:
        return Outcome(Verdict.NEEDS_JUDGEMENT, f"flatter than its row; {row['low']}", ASK), asked
    return Outcome(Verdict.DOES_NOT_MEET, "flatter than its covering may lie", "a steeper roof, or another covering"), asked


def _eave(rule: dict[str, Any], row: dict[str, Any] | None, slope: float, about: Context) -> Outcome:
    if row is None:
        step = "ask the authority: is eave protection asked of this covering?"
        return Outcome(Verdict.NEEDS_JUDGEMENT, "whether the covering is one of shingles, shakes or tiles is not known", step)
    if not row.get("eaves"):
        return Outcome(Verdict.NOT_ASKED, "the article asks it of shingles, shakes and tiles")
    if judges.at_least(tan(radians(slope)) + 1e-9, rule["steep"]):
        return Outcome(Verdict.NOT_ASKED, "the roof is as steep as 1 in 1.5")
    if about.degree_days is None:
        step = "state climate.heating_degree_days"
        return Outcome(Verdict.NEEDS_EVIDENCE, "it is asked by the degree-days of the place, which are not given", step)
    if judges.at_most(about.degree_days, rule["degree_days_at_most"]):
        most = degree_days(rule["degree_days_at_most"], about.customary)
        return Outcome(Verdict.NOT_ASKED, f"the place has no more than {most}")
    return Outcome(
        Verdict.NEEDS_EVIDENCE, "the eave is not in the project file",
        f"supply the detail of the eave: its protection, or an overhang of more than {metres(rule['up'], about.customary)} along "
        "the slope, which needs none",
    )  # fmt: skip
