"""The `condensation` part of the results file: amounts in kg/m2, unknown is null, keys beyond the contract beside."""

from typing import Any

from layerfolio.studies.condensation.types import (
    Check,
    CondensationStudy,
    Month,
    Period,
    SurfaceStudy,
    TwoPeriodStudy,
)


def results_part(study: CondensationStudy) -> dict[str, Any]:
    """One assembly's moisture results as plain data, in a stable order. What only sheets print is left to them."""
    run = study.expected
    return {
        "method": study.method,
        "months": [_month(month) for month in study.months] if study.evaluated else None,
        "greatest_accumulation": _amount(study.greatest_accumulation),
        "greatest_month": (run.greatest_month or None) if run and study.method == "monthly" else None,
        "clears": study.clears,
        "outcome": run.outcome if run and study.method == "monthly" else None,
        "years": run.years if run and study.method == "monthly" else None,
        "less_favourable": {
            "greatest_accumulation": _amount(study.greatest_less_favourable),
            "clears": study.clears_less_favourable,
        },
        "surface_factor": _surface(study.surface),
        "two_period": _two_period(study.two_period),
        "indoor": study.year.rule.words if study.year else None,
        "cautions": list(study.cautions),
        "missing": [*study.missing_layers, *study.missing_inputs],
    }


def _amount(value: float | None) -> dict[str, Any] | None:
    return None if value is None else {"value": value, "unit": "kg/m2"}


def _month(month: Month) -> dict[str, Any]:
    planes = [
        {"between": list(plane.between), "flow": _amount(plane.flow), "accumulated": _amount(plane.accumulated)}
        for plane in month.planes
    ]
    return {"month": month.name, "planes": planes}


def _surface(study: SurfaceStudy | None) -> dict[str, Any] | None:
    """Against mould; without a month that asks anything `required` is null."""
    if study is None:
        return None
    return {
        "provided": study.provided,
        "required": study.mould.required,
        "critical_month": study.mould.critical_month or None,
        "through_insulation": study.through_insulation,
        "through_framing": study.through_framing,
        "required_against_corrosion": study.corrosion.required,
        "room_air_over_the_limit": list(study.mould.beyond),
    }


def _two_period(study: TwoPeriodStudy | None) -> dict[str, Any] | None:
    if study is None:
        return None
    return {
        **_period(study.expected),
        "limit": _amount(study.limit),
        "reserve_limit": _amount(study.reserve_limit),
        "verdict": study.verdict,
        "less_favourable": _period(study.less_favourable),
        "checks": [_check(check) for check in study.expected.checks],
        "outside_method": list(study.outside),
    }


def _period(period: Period) -> dict[str, Any]:
    return {
        "condensed": _amount(period.condensed),
        "evaporated": _amount(period.evaporated),
        "reserve": _amount(period.reserve),
    }


def _check(check: Check) -> dict[str, Any]:
    return {
        "name": check.name, "value": check.value, "limit": check.limit, "verdict": check.verdict, "mark": check.mark,
        "source": check.source, "reason": check.reason,
    }  # fmt: skip
