"""What the moisture sheet says in sentences, in the mark-up of sheet texts."""

from layerfolio.catalogue.sources import printed
from layerfolio.codes.findings import Finding, Verdict
from layerfolio.sheets.desk import RECORD, Desk
from layerfolio.sheets.figures import permeance_text, with_unit
from layerfolio.sheets.markup import plain
from layerfolio.sheets.source_book import NOT_REREAD
from layerfolio.studies.condensation.limits import RESERVE
from layerfolio.studies.condensation.types import TWO_PERIOD, CondensationStudy, Run, SurfaceStudy, TwoPeriodStudy
from layerfolio.studies.types import VapourStudy
from layerfolio.units.show import fixed, significant

BALANCE = ("condensation", "two-period")
MAIN = (*BALANCE, "surface", "drying-reserve")
"""Last parts of the ids of findings that stand in the table of verdicts; the others are cautions."""

VARIANTS = (
    f"Published variants ask 5 : 1 (timber-frame practice{NOT_REREAD}), 6 : 1 (roof table of DIN 4108-3), 7 : 1 and "
    "10 : 1 (trade pages)."
)


def question_of(finding: Finding) -> str:
    """The last part of a finding's id."""
    return finding.id.rpartition("/")[2]


def moisture_findings(desk: Desk, name: str) -> list[Finding]:
    """The findings that rest on this sheet's balance, in the order of the record."""
    return [f for f in desk.dossier.findings_of(name) if f.step == f"{name}-V" and f.path == "performance"]


def line_of(desk: Desk, finding: Finding) -> str:
    return f"{RECORD}, line {desk.line(finding)}"


def amount(value: float) -> str:
    """An amount of water, kg/m2."""
    return f"{significant(value, 3)}\u00a0kg/m²"


def marked(text: str) -> str:
    """Words of a study, escaped, with the symbol of equivalent air layers set as one."""
    return plain(text).replace("s\\_d", "{s_d}")


def run_words(run: Run) -> str:
    """Greatest amount, its month, and when it is gone."""
    if run.outcome == "none":
        return "no month with condensation"
    most = f"{amount(run.greatest_accumulation)} in {run.greatest_month}"
    if run.outcome == "does not clear":
        left = run.months[-1].accumulated
        return f"{most}, {amount(left)} left after the year" + (", the second" if run.years > 1 else "")
    dry = dry_month(run)
    return f"{most}, " + (f"dry in {dry}" if dry else "each plane dry in some month")


def dry_month(run: Run) -> str:
    """The first month after the greatest amount at whose end nothing is left; empty where there is none."""
    names = [month.name for month in run.months]
    at = names.index(run.greatest_month)
    order = [*run.months[at:], *run.months[:at]]
    return next((month.name for month in order if month.accumulated == 0), "")


def found(study: CondensationStudy, finding: Finding) -> str:
    """What stands beside a verdict: the study's figures in short, and why where it does not meet."""
    question = question_of(finding)
    if question in BALANCE and not study.evaluated:
        return "Not evaluated; what is missing stands below."
    if question == "condensation" and study.expected and study.less_favourable:
        why = "" if finding.verdict is Verdict.MEETS else f" {_capital(plain(finding.reason))}."
        return balance_words(study.expected, study.less_favourable) + why
    if question == "surface" and study.surface:
        return _surface(study.surface)
    if question == "drying-reserve" and study.two_period and study.two_period.reserve_limit is not None:
        return _reserve(study.two_period, study.assembly.kind)
    return _capital(plain("; ".join(filter(None, (finding.given, finding.reason))))) + "."


def next_step(study: CondensationStudy, finding: Finding) -> str:
    """What follows from a verdict, empty where it meets."""
    if question_of(finding) in BALANCE and not study.evaluated:
        return "add to the project file what stands below"
    return "" if finding.verdict is Verdict.MEETS else plain(finding.next_step or finding.reason)


def balance_words(expected: Run, less: Run) -> str:
    """Both runs of the monthly balance."""
    first, second = run_words(expected), run_words(less)
    if [one.s_d for one in expected.values] == [one.s_d for one in less.values]:
        return f"{_capital(first)}; one vapour value of each layer is known: there is no second reading."
    if first == second:
        return f"As expected and less favourable: {first}."
    return f"As expected: {first}. Less favourable: {second}."


def _reserve(study: TwoPeriodStudy, kind: str) -> str:
    """Both reserves beside the figure that was read and decides; the lower one of its kind prints as not re-read."""
    said = f"{kind}s {amount(study.reserve_limit)}{NOT_REREAD}, which decides nothing"
    lower = f" ({said})" if study.reserve_limit < RESERVE else ""
    expected, less = study.expected, study.less_favourable
    why = ", for its wet cups let more evaporate in summer" if less.evaporated - expected.evaporated > 0 else ""
    why = why if less.reserve > expected.reserve else ""
    shown = f"As expected {significant(expected.reserve, 3)}, less favourable {amount(less.reserve)}{why}"
    if abs(less.reserve - expected.reserve) < 1e-9:
        shown = f"As expected {amount(expected.reserve)}, and no other with less favourable values"
    return f"{shown}; asked {amount(RESERVE)}{lower}."


def _surface(study: SurfaceStudy) -> str:
    """The factor provided, the one asked and its month."""
    need = study.mould
    framed = " (through framing)" if study.through_framing is not None and study.provided < study.through_insulation else ""
    asked = f"asked {fixed(need.required, 3)} in {need.critical_month}" if need.required is not None else "nothing is asked"
    limit = f"{need.limit * 100:g}\u00a0% at the surface{NOT_REREAD}"
    return f"Temperature factor {fixed(study.provided, 3)}{framed}, {asked} ({limit})."


def control(desk: Desk, name: str) -> str:
    """The layer that controls vapour; with both cups where the table of values cannot stand."""
    found = desk.dossier.vapour[name].control
    if found is None:
        return "**No layer of this assembly is named as vapour control.**"
    title = f"Vapour control layer: {found.layer.number} {plain(found.layer.title)}"
    if desk.dossier.condensation[name].basis.expected:
        return f"**{title}.**"
    cups = [
        f"{permeance_text(value, desk.system)} {cup} cup"
        for value, cup in ((found.permeance_dry, "dry"), (found.permeance_wet, "wet")) if value
    ]  # fmt: skip
    figures = ", ".join(cups) or "no figure"
    return f"**{title}**, permeance {figures}."


def ratio(study: VapourStudy, system: str) -> str:
    """The openness ratio beside its published variants; a rule of thumb gives no verdict."""
    if not study.ratio:
        return f"Inside to outside {{s_d}}: no figure here. {VARIANTS} A rule of thumb gives no verdict."
    inside, outside = (with_unit(value, "s_d", system) for value in (study.inside_s_d, study.outside_s_d))
    return (
        f"Inside to outside {{s_d}}: {inside} over {outside} = **{significant(study.ratio, 3)} : 1**, the main "
        f"insulation left out, values as expected. {VARIANTS} A rule of thumb that has misled where the outside is "
        "tight: it gives no verdict; below 5 : 1 the record asks a question."
    )


def periods_note(study: CondensationStudy) -> str:
    """Where the two-period balance stands, and why it may not reach this assembly."""
    found = study.two_period
    if found is None:
        return ""
    decides = "It decides here." if study.method == TWO_PERIOD else "Printed beside the monthly balance."
    outside = f" Outside the limits of this method: {plain('; '.join(found.outside))}." if found.outside else ""
    source = plain(printed("din-4108-3-2018"))
    return f"{source}, with a climate of its own (last step). {decides}{outside}"


def construction(study: CondensationStudy) -> str:
    """Condition by condition of the row for this kind of assembly; empty without one."""
    found = study.construction
    if found is None:
        return ""
    key, _, place = found.source.partition(", ")
    said = "; ".join(f"{marked(one.words)}: {'yes' if one.holds else '**no**'}" for one in found.conditions)
    verdict = "**This assembly is one.**" if found.fits else "**This assembly is none**: the balance decides."
    title = f"{_capital(plain(found.title))}, {plain(printed(key, place))}, values less favourable"
    return f"{title}: {said}. {verdict}"


def cautions(desk: Desk, name: str) -> list[str]:
    """What the balance cannot judge: cautions of the run, then those that are findings, with what to do."""
    study = desk.dossier.condensation[name]
    lines = [_capital(marked(text)) + "." for text in study.cautions]
    for finding in moisture_findings(desk, name):
        if question_of(finding) not in MAIN:
            said = "; ".join(filter(None, (finding.given, finding.reason)))
            next_step = f" Do: {plain(finding.next_step)}." if finding.next_step else ""
            lines.append(f"**{plain(finding.question)}**: {plain(said)}.{next_step} ({line_of(desk, finding)})")
    return lines


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
