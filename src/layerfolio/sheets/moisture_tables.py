"""The tables of the moisture sheet."""

from layerfolio.catalogue.sources import printed
from layerfolio.codes.findings import Finding, Verdict
from layerfolio.sheets import moisture_words as words
from layerfolio.sheets.blocks import Cell, Column, Row, Table, VerdictCell
from layerfolio.sheets.desk import Desk
from layerfolio.sheets.figures import NONE, in_system, unit_of
from layerfolio.sheets.markup import plain
from layerfolio.sheets.source_book import NOT_REREAD
from layerfolio.studies.condensation.types import Check, CondensationStudy, LayerValue, Need, Period
from layerfolio.units.show import fixed, significant

CUPS = {"dry": "dry cup", "wet": "wet cup", "single": "one value"}
OUTCOMES = {"none": "no condensation", "clears": "dries again", "does not clear": "does not dry"}


def verdicts(desk: Desk, name: str) -> Table:
    """What was found on condensation, mould and drying reserve, each with its verdict and its line in the record."""
    study = desk.dossier.condensation[name]
    columns = (Column("Question", width=37), Column("Found", width=84), Column("Verdict"))
    rows = [
        Row((f"**{plain(found.question)}**", _found(study, found), _verdict(desk, found)))
        for found in words.moisture_findings(desk, name) if words.question_of(found) in words.MAIN
    ]  # fmt: skip
    return Table(columns, tuple(rows))


def _found(study: CondensationStudy, finding: Finding) -> str:
    question = words.question_of(finding)
    if question == "condensation" and study.evaluated:
        return words.balance_words(study)
    asked = f"{plain(finding.asked)}. " if finding.asked and question != "condensation" else ""
    return f"{_capital(asked)}Calculated: {plain(finding.given)}." if asked else f"{_capital(plain(finding.given))}."


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _verdict(desk: Desk, finding: Finding) -> VerdictCell:
    text = finding.what_follows
    return VerdictCell(finding.verdict, "; ".join(filter(None, (plain(text), words.line_of(desk, finding)))))


def values(desk: Desk, study: CondensationStudy) -> Table | None:
    """Permeance and s_d of both cups, and the s_d that each run takes; None where a figure is missing."""
    if not study.basis.expected:
        return None
    system = desk.system
    columns = (
        Column("No.", width=8), Column("Layer, from outside", width=54), Column("dry cup {W}", unit_of("W", system), 27, "decimal"),
        Column("wet cup {W}", unit_of("W", system), 27, "decimal"), Column("As expected", "{s_d}, " + unit_of("s_d", system), 25, "right"),
        Column("Less favourable", "{s_d}, " + unit_of("s_d", system), 27, "right"), Column("Src"),
    )  # fmt: skip
    cups = {one.layer.number: one for one in desk.dossier.vapour[study.assembly.name].layers}
    rows = []
    for expected, less in zip(study.basis.expected, study.basis.less_favourable, strict=True):
        layer, known = expected.layer, cups[expected.layer.number]
        figures = (layer.vapour.dry, layer.vapour.wet) if layer.vapour else ()
        rows.append(Row((
            str(layer.number), plain(layer.title), _permeance(known.permeance_dry, system), _permeance(known.permeance_wet, system),
            _taken(expected, system), _taken(less, system), desk.book.marks(*figures) or NONE,
        )))  # fmt: skip
    return Table(columns, tuple(rows))


def _permeance(value: float | None, system: str) -> str:
    return NONE if value is None else significant(in_system(value, "W", system), 3)


def _taken(value: LayerValue, system: str) -> str:
    fixed_words = ", fixed" if value.fixed else ""
    return f"{significant(in_system(value.s_d, 's_d', system), 3)} {value.cup}{fixed_words}"


def surface(study: CondensationStudy) -> Table | None:
    """Factor asked against mould and corrosion beside the one provided."""
    found = study.surface
    if found is None:
        return None
    columns = (
        Column("Against", width=50), Column("Asked {f_Rsi}", width=24, align="decimal"), Column("Critical month", width=34),
        Column("Provided", width=24, align="decimal"), Column("Reads"),
    )  # fmt: skip
    rows = (_need("mould", found.mould, found.provided), _need("corrosion", found.corrosion, found.provided))
    parts = [f"through insulation {fixed(found.through_insulation, 3)}"]
    if found.through_framing is not None:
        parts.append(f"through framing {fixed(found.through_framing, 3)}")
    last = Row(("Provided in full", NONE, NONE, fixed(found.provided, 3), ", ".join(parts)))
    return Table(columns, (*rows, last))


def _need(name: str, need: Need, provided: float) -> Row:
    title = f"{name}, {need.limit * 100:g} % at the surface{NOT_REREAD}"
    if need.required is None:
        return Row((title, NONE, "none", fixed(provided, 3), "nothing is asked"))
    above = "the factor is above the asked one" if provided >= need.required else "the factor is below the asked one"
    return Row((title, fixed(need.required, 3), need.critical_month, fixed(provided, 3), above))


def periods(study: CondensationStudy) -> Table | None:
    """Every check of the two-period balance for both readings of the vapour values."""
    found = study.two_period
    if found is None:
        return None
    columns = (
        Column("Check", width=62), Column("As expected", width=26, align="decimal"), Column("Less favourable", width=28, align="decimal"),
        Column("Limit", width=22), Column("Verdict"),
    )  # fmt: skip
    rows = [
        _amounts("condensed in winter, kg/m²", found.expected.condensed, found.less_favourable.condensed),
        _amounts("can evaporate in summer, kg/m²", found.expected.evaporated, found.less_favourable.evaporated),
    ]
    for name in dict.fromkeys(check.name for period in (found.expected, found.less_favourable) for check in period.checks):
        if name != "condensate dries in summer":
            rows.append(_check(name, found.expected, found.less_favourable))
    verdict = VerdictCell(Verdict(found.verdict))
    return Table(columns, (*rows, Row(("Together, with condensate less than can evaporate", "", "", "", verdict), total=True)))


def _amounts(title: str, expected: float, less: float) -> Row:
    return Row((title, significant(expected, 3) if expected else "0", significant(less, 3) if less else "0", NONE, NONE))


def _check(name: str, expected: Period, less: Period) -> Row:
    one, other = (next((check for check in period.checks if check.name == name), None) for period in (expected, less))
    known = one or other
    share = known.limit < 0.06 and "mass" in name
    unit = " %" if share else " kg/m²"
    mark = NOT_REREAD if known.mark == "memory" else ""
    limit = f"{'≥' if 'reserve' in name else '≤'} {known.limit * (100 if share else 1):.3g}{unit}{mark}"
    cells = tuple(_value(check, share) for check in (one, other))
    found = [check.verdict for check in (one, other) if check]
    verdict: Cell = VerdictCell(Verdict(found[0])) if len(set(found)) == 1 else " / ".join(found)
    return Row((plain(name), *cells, limit, verdict))


def _value(check: Check | None, share: bool) -> str:
    if check is None:
        return NONE
    if check.value is None:
        return "not given"
    return significant(check.value * (100 if share else 1), 3) if check.value else "0"


def sensitivity(study: CondensationStudy) -> Table | None:
    """Each change, what it comes to, whether it turns the verdict."""
    if not study.sensitivity:
        return None
    columns = (
        Column("Change", width=88), Column("Result", width=36), Column("Greatest", "kg/m²", 22, "decimal"), Column("Turns it")
    )  # fmt: skip
    rows = []
    for change in study.sensitivity:
        if change.outcome is None:
            rows.append(Row((plain(change.words), f"not run: {plain(change.why)}", NONE, NONE)))
            continue
        most = significant(change.greatest_accumulation, 3) if change.greatest_accumulation else "0"
        month = f", {change.greatest_month}" if change.greatest_month else ""
        rows.append(Row((
            plain(change.words), OUTCOMES[change.outcome] + month, most, "**turns it**" if change.turns else "no"
        )))  # fmt: skip
    return Table(columns, tuple(rows))


def construction(study: CondensationStudy) -> Table | None:
    """Condition by condition of the row for this kind of assembly."""
    found = study.construction
    if found is None:
        return None
    columns = (Column(plain(found.title[:1].upper() + found.title[1:]), width=150), Column("Holds"))
    return Table(columns, tuple(Row((plain(one.words), "yes" if one.holds else "**no**")) for one in found.conditions))


__all__ = ["construction", "periods", "printed", "sensitivity", "surface", "values", "verdicts"]
