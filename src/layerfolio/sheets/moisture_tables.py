"""The tables of the moisture sheet."""

from layerfolio.assembly.types import Assembly
from layerfolio.codes.findings import Verdict
from layerfolio.sheets import moisture_words as words
from layerfolio.sheets.blocks import Cell, Column, Row, Table, VerdictCell
from layerfolio.sheets.change_words import change_words
from layerfolio.sheets.desk import Desk
from layerfolio.sheets.figures import NONE, in_system, unit_of
from layerfolio.sheets.markup import plain
from layerfolio.sheets.source_book import NOT_REREAD
from layerfolio.studies.condensation.limits import RESERVE
from layerfolio.studies.condensation.types import Check, CondensationStudy, LayerValue, Need, Period
from layerfolio.units.show import fixed, significant

TITLES = {
    "condensation": "Condensation", "two-period": "Condensation", "surface": "Mould at surface",
    "drying-reserve": "Drying reserve",
}  # fmt: skip
DRIES = "condensate dries in summer"
OUTCOMES = {"none": "no condensation", "clears": "dries again", "does not clear": "does not dry"}


def verdicts(desk: Desk, name: str) -> Table:
    """What was found on condensation, mould and drying reserve, each with its verdict and its line in the record."""
    study = desk.dossier.condensation[name]
    columns = (Column("Question", width=31), Column("Found", width=93), Column("Verdict"))
    rows = []
    for found in words.moisture_findings(desk, name):
        question = words.question_of(found)
        if question in words.MAIN:
            title = f"**{TITLES[question]}**\n{words.line_of(desk, found)}"
            rows.append(Row((title, words.found(study, found), VerdictCell(found.verdict, words.next_step(study, found)))))
    return Table(columns, tuple(rows), extra=0.3)


def values(desk: Desk, study: CondensationStudy) -> Table | None:
    """Permeance and s_d of both cups, and the s_d that each run takes; None where a figure is missing."""
    if not study.basis.expected:
        return None
    system = desk.system
    unit = unit_of("W", system) if system == "customary" else "ng/(Pa·s·m²)"
    columns = (
        Column("No.", width=8), Column("Layer, from outside", width=50),
        Column("{W} dry cup", unit, 27, "decimal"), Column("{W} wet cup", unit, 27, "decimal"),
        Column("As expected", "{s_d}, " + unit_of("s_d", system), 25, "right"),
        Column("Less favourable", "{s_d}, " + unit_of("s_d", system), 30, "right"), Column("Src"),
    )  # fmt: skip
    cups = {one.layer.number: one for one in desk.dossier.vapour[study.assembly.name].layers}
    rows = []
    for expected, less in zip(study.basis.expected, study.basis.less_favourable, strict=True):
        layer, known = expected.layer, cups[expected.layer.number]
        figures = (layer.vapour.dry, layer.vapour.wet) if layer.vapour else ()
        rows.append(Row((
            str(layer.number), plain(layer.title), _permeance(known.permeance_dry, system),
            _permeance(known.permeance_wet, system),
            _taken(expected, system), _taken(less, system), desk.book.marks(*figures) or NONE,
        )))  # fmt: skip
    return Table(columns, tuple(rows))


def _permeance(value: float | None, system: str) -> str:
    """In US perm, or in ng/(Pa.s.m2)."""
    if value is None:
        return NONE
    return _short(in_system(value, "W", system) if system == "customary" else value * 1e12)


def _taken(value: LayerValue, system: str) -> str:
    fixed_words = ", fixed" if value.fixed else ""
    cup = "" if value.cup == "single" else f" {value.cup}"
    return f"{_short(in_system(value.s_d, 's_d', system))}{cup}{fixed_words}"


def _short(value: float) -> str:
    """Up to three significant digits, without zeros at the end."""
    shown = significant(value, 3)
    return shown.rstrip("0").rstrip(".") if "." in shown and "·" not in shown else shown


def surface(study: CondensationStudy) -> Table | None:
    """Factor asked against mould and corrosion beside the one provided."""
    found = study.surface
    if found is None:
        return None
    columns = (
        Column("Against", width=46), Column("Asked {f_Rsi}", width=20, align="decimal"),
        Column("Critical month", width=27), Column("Provided", width=20, align="decimal"), Column("Provided is"),
    )  # fmt: skip
    rows = [_need("mould", found.mould, found.provided)]
    if _has_metal(study.assembly):
        rows.append(_need("corrosion", found.corrosion, found.provided, "; for metal only; no verdict"))
    return Table(columns, tuple(rows))


def _has_metal(assembly: Assembly) -> bool:
    """Whether a layer or a member that counts is of metal: nothing else at a surface corrodes."""
    return any(one.family == "metal" or (one.member and one.member.is_metal) for one in assembly.layers if one.counts)


def _need(name: str, need: Need, provided: float, words: str = "") -> Row:
    title = f"{name}, {need.limit * 100:g} % at the surface{NOT_REREAD}"
    beyond = f"; room air over it in {', '.join(one[:3] for one in need.beyond)}" if need.beyond else ""
    if need.required is None:
        return Row((title, NONE, "none", fixed(provided, 3), "nothing is asked" + beyond + words))
    reads = "above" if provided >= need.required else "below"
    return Row((title, fixed(need.required, 3), need.critical_month, fixed(provided, 3), reads + beyond + words))


def periods(study: CondensationStudy) -> Table | None:
    """Every check of the two-period balance for both readings of the vapour values."""
    found = study.two_period
    if found is None:
        return None
    columns = (
        Column("Check", width=64), Column("As expected", width=23, align="decimal"),
        Column("Less favourable", width=29, align="decimal"), Column("Limit", width=24), Column("Verdict"),
    )  # fmt: skip
    both = (found.expected, found.less_favourable)
    rows = [_evaporates(*both)]
    for name in dict.fromkeys(check.name for period in both for check in period.checks):
        if name != DRIES:
            rows.append(_check(name, *both, study.assembly.kind))
    return Table(columns, (*rows, Row(("Together", "", "", "", VerdictCell(Verdict(found.verdict))), total=True)))


def _evaporates(expected: Period, less: Period) -> Row:
    """What can evaporate, which is to be no less than what condenses."""
    shown = (significant(period.evaporated, 3) if period.evaporated else "0" for period in (expected, less))
    found = [check.verdict for period in (expected, less) for check in period.checks if check.name == DRIES]
    return Row(("can evaporate in summer, kg/m²", *shown, "≥ condensate", _verdict_of(found)))


def _verdict_of(found: list[str]) -> Cell:
    """One verdict where both readings agree, else both in words."""
    return VerdictCell(Verdict(found[0])) if len(set(found)) == 1 else " / ".join(found)


def _check(name: str, expected: Period, less: Period, kind: str) -> Row:
    one, other = (next((check for check in period.checks if check.name == name), None) for period in (expected, less))
    known = one or other
    share = known.limit < 0.06 and "mass" in name
    unit = "\u00a0%" if share else ""
    lower = known.limit if "reserve" in name and known.mark == "memory" else None
    limit = f"{'≥' if 'reserve' in name else '≤'} {(RESERVE if lower else known.limit) * (100 if share else 1):.3g}{unit}"
    cells = tuple(_value(check, share) for check in (one, other))
    title = name if share else f"{name}, kg/m²"
    if lower is not None:
        title += f"; the {lower:.3g}{NOT_REREAD} said of {kind}s is not used"
    return Row((plain(title), *cells, limit, _verdict_of([check.verdict for check in (one, other) if check])))


def _value(check: Check | None, share: bool) -> str:
    if check is None:
        return NONE
    if check.value is None:
        return "not given"
    return significant(check.value * (100 if share else 1), 3) if check.value else "0"


def sensitivity(study: CondensationStudy, system: str) -> Table | None:
    """Each change, what it comes to, whether it turns the verdict."""
    if not study.sensitivity:
        return None
    columns = (
        Column("Change", width=103), Column("Result", width=34), Column("Most, kg/m²", width=25, align="decimal"),
        Column("Turns it"),
    )  # fmt: skip
    rows = []
    for change in study.sensitivity:
        if change.outcome is None:
            rows.append(Row((change_words(change.words, system), f"not run: {plain(change.why)}", NONE, NONE)))
            continue
        most = significant(change.greatest_accumulation, 3) if change.greatest_accumulation else "0"
        month = f", {change.greatest_month}" if change.greatest_month else ""
        rows.append(Row((
            change_words(change.words, system), OUTCOMES[change.outcome] + month, most, "**turns it**" if change.turns else "no"
        )))  # fmt: skip
    return Table(columns, tuple(rows))
