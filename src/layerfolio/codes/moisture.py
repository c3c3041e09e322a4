"""The moisture studies as findings: the monthly balance, the surface, the drying reserve, and what the method leaves out.

They belong to the standards they follow, not to a code set, and say so: which of them an authority asks for is its own
decision.
"""

from collections.abc import Mapping
from typing import Any

from layerfolio.codes.findings import Finding, Measured, Verdict
from layerfolio.codes.moisture_cautions import Caution, cautions
from layerfolio.codes.moisture_making import ADD, moisture_finding
from layerfolio.codes.moisture_two_period import reserve, two_period
from layerfolio.codes.naming import by_name
from layerfolio.studies.condensation.types import TWO_PERIOD, CondensationStudy
from layerfolio.units.show import significant


def judge_moisture(project: Any, studies: Mapping[str, CondensationStudy]) -> tuple[Finding, ...]:
    """Findings on every assembly that faces air, in the order of the project file; assemblies in the ground have none."""
    found: list[Finding] = []
    for name, study in studies.items():
        if study.assembly.faces == "ground":
            continue
        found.append(_balance(name, study))
        found += filter(None, (_surface(name, study), reserve(name, study)))
        found += [_caution(name, one) for one in cautions(project, study)]
    return tuple(found)


def _balance(name: str, study: CondensationStudy) -> Finding:
    """Meets where it clears with both readings of the vapour values; a difference needs judgement."""
    if study.method == TWO_PERIOD:
        return two_period(name, study)
    said = {"asked": "what condenses in winter dries within the year, with both readings of the vapour values"}
    clause, title = "ISO 13788, monthly balance", "Condensation within"
    if not study.evaluated:
        missing = ", ".join((*by_name(study.assembly, study.missing_layers), *study.missing_inputs))
        what = "figures of " if study.missing_layers else ""
        return moisture_finding(
            name, "condensation", clause, title, Verdict.NEEDS_EVIDENCE, given="not evaluated",
            reason=f"missing: {missing}", next_step=f"{ADD}{what}{missing}", **said,
        )  # fmt: skip
    verdict, reason = _balance_verdict(study)
    return moisture_finding(
        name, "condensation", clause, title, verdict, given=_amounts(study), reason=reason, next_step=NEXT[verdict], **said
    )


ONE_VALUE = "one vapour value of each layer is known, so there is no second reading"
NEXT = {
    Verdict.MEETS: "",
    Verdict.NEEDS_JUDGEMENT: "have a specialist study it by EN 15026, or change the layers",
    Verdict.DOES_NOT_MEET: "change the layers, or have a specialist study it by EN 15026",
}


def _balance_verdict(study: CondensationStudy) -> tuple[Verdict, str]:
    """Both runs clear and little gathers; a difference, or more than DIN 4108-3 allows, is for somebody to judge."""
    outcomes = (study.clears, study.clears_less_favourable)
    if not any(outcomes):
        return Verdict.DOES_NOT_MEET, "moisture stays from year to year"
    if not all(outcomes):
        return Verdict.NEEDS_JUDGEMENT, "the two readings of the vapour values differ"
    most = max(study.greatest_accumulation or 0.0, study.greatest_less_favourable or 0.0)
    if study.two_period and most > study.two_period.limit:
        limit = significant(study.two_period.limit, 3)
        return Verdict.NEEDS_JUDGEMENT, f"it dries again, but more gathers than the {limit} kg/m² that DIN 4108-3 allows"
    return Verdict.MEETS, "clears in the one reading there is" if study.one_reading else "clears in both runs"


def _amounts(study: CondensationStudy) -> str:
    """Greatest amounts of both runs in words."""
    rows = (
        ("as expected", study.greatest_accumulation, study.clears, study.expected),
        ("less favourable", study.greatest_less_favourable, study.clears_less_favourable, study.less_favourable),
    )
    if study.one_reading:
        return f"{_amount(*rows[0][1:])}; {ONE_VALUE}"
    return "; ".join(f"{words}: {_amount(most, clears, run)}" for words, most, clears, run in rows)


def _amount(most: float | None, clears: bool | None, run: Any) -> str:
    if not most:
        return "none in any month"
    month = f" in {run.greatest_month}" if run and run.greatest_month else ""
    return f"{significant(most, 3)} kg/m²{month}, {'dries again' if clears else 'does not dry'}"


def _surface(name: str, study: CondensationStudy) -> Finding | None:
    """The limit on surface humidity was not re-read: it decides nothing, the figures print."""
    surface = study.surface
    if surface is None:
        return None
    need = surface.mould
    asked = f"temperature factor {need.required:.3f} or more" if need.required is not None else "nothing in any month"
    month = f", {need.critical_month}" if need.critical_month else ""
    framed = f", through framing {surface.through_framing:.3f}" if surface.through_framing is not None else ""
    ok = surface.keeps_dry
    return moisture_finding(
        name, "surface", "ISO 13788, surface humidity", "Mould at the inside surface", Verdict.NEEDS_JUDGEMENT,
        asked=f"{asked} ({need.limit * 100:g} % humidity at the surface{month})",
        given=f"{surface.provided:.3f} (through insulation {surface.through_insulation:.3f}{framed})",
        mark="memory", limit=Measured("f_Rsi", need.required) if need.required is not None else None,
        provided=Measured("f_Rsi", surface.provided),
        reason=f"the calculated factor is {'above' if ok else 'below'} the asked one; the limit rests on memory",
        next_step="confirm the limit of surface humidity" if ok else "warm the surface or lower the room humidity",
    )  # fmt: skip


def _caution(name: str, one: Caution) -> Finding:
    return moisture_finding(
        name, one.key, "limits of the method", one.title, Verdict.NEEDS_JUDGEMENT, asked=one.asked, given=one.given,
        reason=one.reason, next_step=one.next_step, practice=True,
    )  # fmt: skip
