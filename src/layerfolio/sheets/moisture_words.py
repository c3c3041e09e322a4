"""What the moisture sheet says in sentences, in the mark-up of sheet texts."""

from layerfolio.catalogue.sources import printed
from layerfolio.codes.findings import Finding
from layerfolio.sheets.desk import RECORD, Desk
from layerfolio.sheets.figures import permeance_text, with_unit
from layerfolio.sheets.markup import plain
from layerfolio.sheets.source_book import NOT_REREAD
from layerfolio.studies.climate_year import MONTHS
from layerfolio.studies.condensation.types import TWO_PERIOD, CondensationStudy, Run
from layerfolio.studies.types import VapourStudy
from layerfolio.units.show import significant

MAIN = ("condensation", "two-period", "surface", "drying-reserve")
"""Last parts of the ids of findings that stand in the table of verdicts; the others are cautions."""

EXAMPLES = {
    "climate.monthly.temperature": "twelve monthly means of the outside air, January first: "
                                   "`temperature: {unit: degC, values: [-12, ...]}`",
    "climate.monthly.relative_humidity": "twelve monthly means of the outside air: "
                                         '`relative_humidity: {unit: "%", values: [80, ...]}`',
    "indoor.temperature": "temperature of the room: `temperature: 20 degC`",
    "indoor.humidity": "humidity of the room: `humidity: {class: 2}` or `humidity: {relative_humidity: 45 %}`",
}  # fmt: skip
LACKING = (
    "under `materials`, with its source: `conductivity` or `resistance`, and `vapour_resistance_factor`, `permeance` or "
    "`equivalent_air_layer`, dry and wet"
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


def balance_words(study: CondensationStudy) -> str:
    """Both runs of the monthly balance in one line."""
    if study.expected is None or study.less_favourable is None:
        return ""
    first, second = run_words(study.expected), run_words(study.less_favourable)
    if first == second:
        return f"As expected and less favourable: {first}."
    return f"As expected: {first}. Less favourable: {second}."


def missing(study: CondensationStudy) -> list[str]:
    """What to add to the project file, one line each."""
    lines = [f"`{plain(key)}`: {EXAMPLES[key]}" if key in EXAMPLES else plain(key) for key in study.missing_inputs]
    return [*lines, *(f"**{plain(_title(study, layer))}**: {LACKING}" for layer in study.missing_layers)]


def _title(study: CondensationStudy, name: str) -> str:
    layer = next((one for one in study.assembly.layers if one.name == name), None)
    return f"layer {layer.number}, {layer.title}" if layer else name


def control(desk: Desk, name: str) -> str:
    """The layer that controls vapour, with both cups."""
    found = desk.dossier.vapour[name].control
    if found is None:
        return "**No layer of this assembly is named as vapour control.**"
    cups = [
        f"{permeance_text(value, desk.system)} {cup} cup"
        for value, cup in ((found.permeance_dry, "dry"), (found.permeance_wet, "wet")) if value
    ]  # fmt: skip
    figures = ", ".join(cups) or "no figure"
    return f"**Vapour control layer: {found.layer.number} {plain(found.layer.title)}**, permeance {figures}."


def ratio(study: VapourStudy, system: str) -> str:
    """The openness ratio beside its published variants; a rule of thumb gives no verdict."""
    variants = (
        f"Published variants ask 5 : 1 (timber-frame practice{NOT_REREAD}), 6 : 1 (roof table of DIN 4108-3), 7 : 1 and "
        "10 : 1 (trade pages)."
    )
    if not study.ratio:
        return f"The ratio of inside to outside {{s_d}} has no figure here. {variants} A rule of thumb gives no verdict."
    inside, outside = (with_unit(value, "s_d", system) for value in (study.inside_s_d, study.outside_s_d))
    return (
        f"Inside to outside {{s_d}}: {inside} over {outside} = **{significant(study.ratio, 3)} : 1**, the main insulation "
        f"left out, values as expected. {variants} A rule of thumb, printed for information: it gives no verdict, and it "
        "has misled where the outside is tight."
    )


def surface_notes(study: CondensationStudy) -> list[str]:
    """Months in which the room air itself is over a limit."""
    if study.surface is None:
        return []
    found = []
    for name, need in (("mould", study.surface.mould), ("corrosion", study.surface.corrosion)):
        if need.beyond:
            months = ", ".join(one for one in MONTHS if one in need.beyond)
            found.append(f"In {months} the room air itself is over the limit for {name}: no section answers that.")
    return found


def periods_note(study: CondensationStudy) -> str:
    """Where the two-period balance stands, and why it may not reach this assembly."""
    found = study.two_period
    if found is None:
        return ""
    decides = "It decides here." if study.method == TWO_PERIOD else "Beside the monthly balance; it decides nothing here."
    outside = f" Outside the limits of this method: {plain('; '.join(found.outside))}." if found.outside else ""
    climate = "90 days at −5 °C and 80 % outside, 20 °C and 50 % inside; 90 days of drying"
    source = plain(printed("din-4108-3-2018"))
    return f"{source}: {climate}. {decides}{outside} {NOT_REREAD} not re-read in its source."


def construction_note(study: CondensationStudy) -> str:
    found = study.construction
    if found is None:
        return ""
    key, _, place = found.source.partition(", ")
    verdict = "**This assembly is one of them.**" if found.fits else "**This assembly is not one of them**: the balance decides."
    return f"{verdict} Values less favourable. Source: {plain(printed(key, place))}."


def cautions(desk: Desk, name: str) -> list[str]:
    """What the balance cannot judge: cautions of the run, then those that are findings, with what to do."""
    study = desk.dossier.condensation[name]
    lines = [_capital(plain(text)) + "." for text in study.cautions]
    for finding in moisture_findings(desk, name):
        if question_of(finding) not in MAIN:
            said = "; ".join(filter(None, (finding.given, finding.reason)))
            next_step = f" Do: {plain(finding.next_step)}." if finding.next_step else ""
            lines.append(f"**{plain(finding.question)}**: {plain(said)}.{next_step} ({line_of(desk, finding)})")
    return lines


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
