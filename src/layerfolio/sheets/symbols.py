"""Symbols, formulas, units and hatches used in the package."""

from layerfolio import __version__
from layerfolio.drawing.legend import legend
from layerfolio.glossary import term, terms
from layerfolio.sheets.assembly_sheets import has_vapour_sheet
from layerfolio.sheets.blocks import Column, Figure, Head, Row, Sheet, Table
from layerfolio.sheets.bracing_demand import line_traces
from layerfolio.sheets.calculation import source_words
from layerfolio.sheets.desk import SYMBOLS, Desk
from layerfolio.sheets.markup import plain
from layerfolio.sheets.templates import Marked
from layerfolio.steps.formula import Formula
from layerfolio.steps.spelling import spell
from layerfolio.steps.trace import Given, Step
from layerfolio.units.pretty import pretty_unit


def symbols(desk: Desk, families: tuple[str, ...]) -> Sheet:
    used = _steps(desk)
    rounding = (
        "The set asks to round the final effective resistance only, to two decimals, and then to compare."
        if any(f.provided and f.provided.decimals is not None for f in desk.dossier.findings)
        else "The set states no rounding rule: figures are judged unrounded."
    )
    digest = f"Checksum of the project file, SHA-256: `{desk.dossier.input_sha256}`. Tool version {__version__}."
    return Sheet(
        SYMBOLS,
        "Symbols, formulas, hatches",
        "—",
        desk.templates.blocks(
            "symbols",
            head=Head("", "Symbols, formulas, hatches"),
            symbols=_symbol_table(desk, used),
            formulas=_formula_table(used),
            rounding=rounding,
            hatches=Figure(legend(families, 180.0)),
            input=Marked(digest),
        ),
    )


def _entries(desk: Desk) -> list:
    found = desk.dossier
    moisture = [one for name, one in found.condensation.items() if has_vapour_sheet(found.assemblies[name])]
    envelope = [*found.ground.values(), *found.openings.values(), *((found.building,) if found.building else ())]
    structure = [*found.dead_loads.values(), *found.attachments.values()]
    studies = [*found.thermal.values(), *found.vapour.values(), *moisture, *envelope, *structure]
    traces = [*(one.trace for one in studies), *line_traces(desk).values()]
    return [entry for trace in traces for entry in trace.entries]


def _steps(desk: Desk) -> dict[Formula, Step]:
    """The first step of each formula used, in order of use."""
    found: dict[Formula, Step] = {}
    for entry in _entries(desk):
        if isinstance(entry, Step):
            found.setdefault(entry.formula, entry)
    return found


def _symbol_table(desk: Desk, used: dict[Formula, Step]) -> Table:
    names = {name for step in used.values() for name, _ in step.arguments} | {f.result for f in used}
    names |= {entry.quantity for entry in _entries(desk) if isinstance(entry, Given)}
    alike: dict[tuple[str, str, str], str] = {}
    for name in (one for one in terms() if one in names):
        alike.setdefault((term(name).plain, term(name).si, term(name).meaning), name)  # two names may print alike
    listed = list(alike.values())
    return _in_pairs(listed) if desk.system == "metric" else _with_both_units(listed)


def _cells(name: str) -> tuple[str, str, str]:
    meaning = plain(term(name).meaning).replace("s\\_d", "{s_d}")
    return f"{{{name}}}", pretty_unit(term(name).si) or "–", meaning


def _in_pairs(names: list[str]) -> Table:
    """Two symbols to a row, read across."""
    half = (Column("Symbol", width=15), Column("Unit", width=21), Column("Meaning", width=54))
    pairs = [names[at : at + 2] for at in range(0, len(names), 2)]
    rows = tuple(Row(tuple(cell for name in pair for cell in _cells(name)) + ("",) * (3 * (2 - len(pair)))) for pair in pairs)
    return Table((*half, *half), rows, upright_rules=(2,), extra=0.0)


def _with_both_units(names: list[str]) -> Table:
    columns = (Column("Symbol", width=22), Column("Unit", width=26), Column("Customary", width=34), Column("Meaning"))
    rows = []
    for name in names:
        symbol, unit, meaning = _cells(name)
        rows.append(Row((symbol, unit, pretty_unit(term(name).customary) or "–", meaning)))
    return Table(columns, tuple(rows), extra=0.0)


def _formula_table(used: dict[Formula, Step]) -> Table:
    columns = (Column("Formula", width=62), Column("What it gives", width=72), Column("Source"))
    rows = []
    for formula, step in used.items():
        words = spell(step)
        rows.append(Row((f"{words.left} = {words.symbols}", plain(formula.title), source_words(formula.source))))
    return Table(columns, tuple(rows), extra=0.0)


__all__ = ["symbols"]
