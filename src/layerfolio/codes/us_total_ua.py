"""The sum of the whole envelope under the American energy chapter (IRC N1102.1.5): parts against the table."""

from collections.abc import Sequence
from typing import NamedTuple

from layerfolio.codes import judges
from layerfolio.codes.climate_zones import cell
from layerfolio.codes.context import Context
from layerfolio.codes.envelope import EnvelopeRow, lacking, limit_of, limiting, parts, total
from layerfolio.codes.findings import Finding, Measured, Verdict
from layerfolio.codes.making import finding
from layerfolio.codes.outcomes import BEST, Outcome, worst
from layerfolio.codes.requirements import Requirement, requirements
from layerfolio.codes.us_maxima import asked_words, given_words, maxima
from layerfolio.codes.us_solar_gain import limit_in
from layerfolio.codes.wording import conductances, listed
from layerfolio.units.table import unit_factor

STEP = "C3"
BTU = unit_factor("Btu/(h.ft2.F)", "transmittance")
OPEN = (Verdict.NEEDS_JUDGEMENT, Verdict.NEEDS_EVIDENCE)
NOT_NEEDED = "every part reaches its own figure, nothing has to be traded"


class _Sum(NamedTuple):
    """The parts that a figure limits, W/K; `short` are those that miss their own figure and do not meet the other table,
    `open` the findings on those of which that is not known.
    """

    rows: tuple[EnvelopeRow, ...]
    designed: float | None
    limit: float | None
    short: tuple[str, ...]
    open: tuple[Finding, ...] = ()


def _sum(about: Context, findings: Sequence[Finding]) -> _Sum:
    rows = tuple(row for row in parts(about) if row.asked is not None and row.quantity == "U")
    designed, limit = (total([getattr(row, key) for row in rows]) for key in ("provided_conductance", "asked_conductance"))
    served = _served(about, findings)
    said = [one for row in rows if (one := _said(row, findings)) and (one.id, row.name) not in served]
    short = tuple(one.assembly for one in said if one.verdict is Verdict.DOES_NOT_MEET)
    return _Sum(rows, designed, limit, short, tuple(one for one in said if one.verdict in OPEN))


def _said(row: EnvelopeRow, findings: Sequence[Finding]) -> Finding | None:
    return next((one for one in findings if one.id == row.requirement and one.assembly == row.name), None)


def _served(about: Context, findings: Sequence[Finding]) -> set[tuple[str, str]]:
    """Findings on transmittances whose other table is met: id and subject."""
    ids = {one.question: one.id for one in requirements(about.edition.set_id)}
    pairs = {one.id: ids[one.rule["either"]] for one in requirements(about.edition.set_id) if "either" in one.rule}
    return {(pairs[one.id], one.assembly) for one in findings if one.id in pairs and one.verdict is Verdict.MEETS}


def judge_total_ua(requirement: Requirement, about: Context, findings: Sequence[Finding]) -> Finding:
    """Whether all parts together lose no more than by the table; not asked where each reaches its own figure."""
    found = _sum(about, findings)
    outcome = _outcome(found, requirement, about, findings)
    known = [one for one in (found.limit, found.designed) if one is not None]
    words = dict(zip(known, conductances(*known, customary=about.customary, both=about.both), strict=True))
    return finding(
        requirement, about, outcome.verdict, path="performance", reason=outcome.reason, next_step=outcome.next_step, step=STEP,
        asked=f"{words.get(found.limit, 'not summed')} or less: the areas of the design with the transmittances of the table",
        given=words.get(found.designed, "not summed"),
        provided=None if found.designed is None else Measured("H_x", found.designed),
        limit=None if found.limit is None else Measured("H_x", found.limit),
    )  # fmt: skip


def _outcome(found: _Sum, requirement: Requirement, about: Context, findings: Sequence[Finding]) -> Outcome:
    if not found.rows:
        return Outcome(Verdict.NOT_ASKED, "no part has a figure that could be summed")
    if not found.short:
        return _not_known(found.open) if found.open else Outcome(Verdict.NOT_ASKED, NOT_NEEDED)
    missing = lacking(found.rows)
    if missing:
        return Outcome(Verdict.NEEDS_EVIDENCE, f"not summed without {listed(missing)}", f"supply {listed(missing)}")
    parts_of_it = [_compared(found, about), *_open_parts(found, about, findings), *_slabs(requirement, findings)]
    parts_of_it += _solar(requirement, about, findings)
    parts_of_it += [maxima(_rule(requirement.rule["maxima"], about), about)]
    return worst(parts_of_it)


def _not_known(some: tuple[Finding, ...]) -> Outcome:
    """No part misses its figure for sure, and some are open: whether a sum is needed turns on them."""
    names = listed(list(dict.fromkeys(one.assembly for one in some)))
    are, it = ("are", "them") if " " in names else ("is", "it")
    return Outcome(
        max((one.verdict for one in some), key=BEST.index),
        f"{names} {are} open; whether anything has to be traded turns on {it}", f"settle the lines on {names}",
    )  # fmt: skip


def _rule(question: str, about: Context) -> Requirement:
    return next(one for one in requirements(about.edition.set_id) if one.question == question)


def _compared(found: _Sum, about: Context) -> Outcome:
    if judges.at_most(found.designed, found.limit):
        return Outcome(Verdict.MEETS, "the parts together lose no more than by the table")
    (over,) = conductances(found.designed - found.limit, customary=about.customary, both=about.both)
    eased = _with_milder(found, about)
    if eased is not None and judges.at_most(found.designed, eased):
        return Outcome(
            Verdict.NEEDS_JUDGEMENT, f"{over} more than by the table, less where its milder rows hold",
            "answer the questions of the parts: mass wall, crawl space, insulation above the deck",
        )  # fmt: skip
    return Outcome(
        Verdict.DOES_NOT_MEET, f"{over} more than by the table", "more insulation in one of the parts, or the performance path"
    )


def _with_milder(found: _Sum, about: Context) -> float | None:
    """The sum of the table with the milder figure of every part that may have one."""
    sums, eased = 0.0, False
    for row in found.rows:
        study = about.envelope.thermal.get(row.name)
        rule = next(limiting(about, study.assembly), None) if study else None
        milder = limit_of(rule, study.assembly, about).eased if rule else None
        if rule and any("crawl" in one for one in rule.figures.get("tables", ())):
            milder = min(cell(one["crawl"], zone) * BTU for one in rule.figures["tables"] for zone in about.zones)
        eased = eased or milder is not None
        sums += row.area * (row.asked if milder is None else milder)
    return sums if eased else None


def _open_parts(found: _Sum, about: Context, findings: Sequence[Finding]) -> list[Outcome]:
    """Parts whose figure is not settled: the sum rests on it."""
    said = [(row, _said(row, findings)) for row in found.rows]
    return [
        Outcome(one.verdict, f"{row.name} is open: {one.reason}", one.next_step)
        for row, one in said
        if one is not None and one.verdict in OPEN and not _milder_alone(row, about)
    ]  # fmt: skip


def _milder_alone(row: EnvelopeRow, about: Context) -> bool:
    """Whether the part is open for a milder row alone; the sum takes the stricter one."""
    study = about.envelope.thermal.get(row.name)
    rule = next(limiting(about, study.assembly), None) if study else None
    if rule is None or row.provided is None:
        return False
    settled = limit_of(rule, study.assembly, about)
    return not settled.question and not judges.at_most(row.provided, row.asked)


def _slabs(requirement: Requirement, findings: Sequence[Finding]) -> list[Outcome]:
    """A slab with less than the table changes the sum by its perimeter, which is not calculated."""
    name = requirement.figures.get("slabs")
    settled = (Verdict.MEETS, Verdict.NOT_ASKED)
    return [
        Outcome(Verdict.NEEDS_JUDGEMENT, f"the edge of {one.assembly} enters the sum", f"supply the F of {one.assembly}")
        for one in findings
        if name and one.id.endswith(f"/{name}") and one.verdict not in settled
    ]  # fmt: skip


def _solar(requirement: Requirement, about: Context, findings: Sequence[Finding]) -> list[Outcome]:
    """The limits of solar heat gain stay as they are: those of the table of transmittances, whatever the other prints."""
    rule = _rule(requirement.rule["solar"], about)
    openings = about.envelope.openings
    limited = [name for name, one in openings.items() if any(limit_in(rule, one, zone) is not None for zone in about.zones)]
    some = [one for one in findings if one.id == rule.id and one.assembly in limited]
    bad = [one for one in some if one.verdict not in (Verdict.MEETS, Verdict.NOT_ASKED)]
    first = max(bad, key=lambda one: BEST.index(one.verdict), default=None)
    if first is None:
        return []
    return [Outcome(first.verdict, f"the solar heat gain of {first.assembly} is not traded: {first.reason}", first.next_step)]


def judge_fenestration_maxima(requirement: Requirement, about: Context, findings: Sequence[Finding]) -> Finding:
    """Means of vertical openings and of skylights that no trade may pass; not asked where nothing is traded."""
    model = about.answer("code.energy_path") == "performance"
    needed = model or _sum(about, findings).short
    found = maxima(requirement, about) if needed else Outcome(Verdict.NOT_ASKED, "nothing is traded so far")
    if model and any(zone.rstrip("ABC") in "123" for zone in about.zones) and about.envelope.openings:
        gain = Outcome(Verdict.NEEDS_EVIDENCE, "the mean solar heat gain of a simulated trade is not calculated", "supply it")
        found = worst([found, gain])
    return finding(
        requirement, about, found.verdict, reason=found.reason, next_step=found.next_step, step="C4",
        asked=asked_words(requirement, about), given=given_words(requirement, about),
    )  # fmt: skip
