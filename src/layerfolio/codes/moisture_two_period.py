"""The two periods of DIN 4108-3 as findings: condensate against what can evaporate, and the drying reserve of timber."""

from layerfolio.assembly.types import Assembly
from layerfolio.codes.findings import Finding, Verdict
from layerfolio.codes.moisture_making import ADD, RESERVE, TWO_PERIODS, moisture_finding
from layerfolio.codes.naming import by_name
from layerfolio.studies.condensation.types import CondensationStudy, Period, TwoPeriodStudy
from layerfolio.units.show import significant


def two_period(name: str, study: CondensationStudy) -> Finding:
    found = study.two_period
    clause, title = "DIN 4108-3, two periods", "Condensation within"
    if found is None:
        layers = by_name(study.assembly, study.missing_layers)
        missing = ", ".join((*layers, *study.missing_inputs)) or "an assembly that faces air"
        return moisture_finding(
            name, "two-period", clause, title, Verdict.NEEDS_EVIDENCE, source=TWO_PERIODS, given="not evaluated",
            asked="what condenses dries in summer", reason=f"missing: {missing}", next_step=ADD + missing,
        )  # fmt: skip
    return moisture_finding(
        name, "two-period", clause, title, Verdict(found.verdict), source=TWO_PERIODS,
        asked=f"{significant(found.limit, 3)} kg/m² of condensate or less, and less than can evaporate",
        given=f"as expected {_period(found.expected)}; less favourable {_period(found.less_favourable)}",
        reason="; ".join(found.outside) or "every check of both readings",
        next_step="" if found.verdict == "meets" else "see the checks on the sheet",
    )  # fmt: skip


def _period(period: Period) -> str:
    condensed, evaporated = significant(period.condensed, 3), significant(period.evaporated, 3)
    return f"{condensed} kg/m² condenses, {evaporated} kg/m² can evaporate"


def reserve(name: str, study: CondensationStudy) -> Finding | None:
    """Only where timber is enclosed and the two-period method reaches the assembly."""
    found = study.two_period
    return drying_reserve(name, study.assembly, found) if found and found.reserve_limit is not None else None


def drying_reserve(name: str, assembly: Assembly, found: TwoPeriodStudy) -> Finding:
    """The reserve of both readings (kg/m2) against the figure that was read; the lower one decides nothing."""
    from layerfolio.studies.condensation.limits import RESERVE as LIMIT
    from layerfolio.studies.condensation.limits import overall

    checks = [one for period in (found.expected, found.less_favourable) for one in period.checks if one.name == "drying reserve"]
    verdict = Verdict(overall([one.verdict for one in checks])) if not found.outside else Verdict.NEEDS_JUDGEMENT
    open_by_memory = any(one.verdict == "needs judgement" for one in checks)
    reason = "; ".join(found.outside) or "; ".join(dict.fromkeys(one.reason for one in checks if one.reason))
    lower = ""
    if found.reserve_limit < LIMIT:
        lower = f" (for {assembly.kind}s {significant(found.reserve_limit, 3)}, from memory)"
    return moisture_finding(
        name, "drying-reserve", "DIN 68800-2, drying reserve", "Drying reserve of enclosed timber", verdict,
        source=RESERVE, asked=f"{significant(LIMIT, 3)} kg/m² or more{lower}",
        mark="memory" if open_by_memory else "found",
        given=f"as expected {significant(found.expected.reserve, 3)} kg/m²; "
              f"less favourable {significant(found.less_favourable.reserve, 3)} kg/m²",
        reason=reason, next_step="" if verdict is Verdict.MEETS else "confirm the limit, or add drying capacity",
    )  # fmt: skip
