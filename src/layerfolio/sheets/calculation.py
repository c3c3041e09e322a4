"""A trace as numbered steps of a calculation sheet: symbols, numbers put in, result; repeated formulas fold into a table."""

from itertools import groupby

from layerfolio.catalogue.datum import Datum
from layerfolio.catalogue.sources import printed
from layerfolio.glossary import term
from layerfolio.sheets.blocks import CalcStep, Calculation, Column, Equation, Paragraph, Row, Table
from layerfolio.sheets.figures import in_system, unit_of, with_unit
from layerfolio.sheets.markup import plain
from layerfolio.sheets.source_book import SourceBook
from layerfolio.steps.spelling import Spelled, customary_values, shown, spell
from layerfolio.steps.trace import Choice, Entry, Given, Section, Step, Trace
from layerfolio.units.pretty import pretty_unit

ONE_LINE = 68
"""Characters of mark-up that an equation of one line may hold."""

LONGEST_CELL = 62
"""Characters of a substituted expression that still fit a table cell; longer ones stand as equations of their own."""


def source_words(text: str) -> str:
    """The source of a formula or a given figure, printed: "key, place" becomes "ISO 6946:2017, place"."""
    key, _, place = text.partition(", ")
    return plain(printed(key, place))


def calculation(trace: Trace, system: str, book: SourceBook, *, total: str = "R") -> Calculation:
    """All sections of the trace as steps, numbered from 1; given figures carry the marks of the source book."""
    steps = []
    for number, (section, entries) in enumerate(_sections(trace), 1):
        here = section_system(entries, system)
        body = tuple(block for group in _runs(entries) for block in _body(group, here, book, system))
        if here != system:
            body = (Paragraph("_In SI units: a formula of this step does not hold in others._"), *body)
        steps.append(CalcStep(str(number), plain(section.title), _sources(section, entries), body))
    unit = term(total).customary if system == "customary" else term(total).si
    return Calculation("Running total", f"{{{total}}}, {pretty_unit(unit)}", tuple(steps))


def section_system(entries: list[Entry], system: str) -> str:
    """A step prints in customary units only where each of its formulas holds in them, so that no unit changes on the way."""
    steps = [entry for entry in entries if isinstance(entry, Step)]
    return system if system == "metric" or all(map(customary_values, steps)) else "metric"


def _sections(trace: Trace) -> list[tuple[Section, list[Entry]]]:
    found: list[tuple[Section, list[Entry]]] = []
    for entry in trace.entries:
        if isinstance(entry, Section):
            found.append((entry, []))
        else:
            if not found:
                found.append((Section("Result"), []))
            found[-1][1].append(entry)
    return found


def _sources(section: Section, entries: list[Entry]) -> str:
    names = [section.source] if section.source else []
    names += [entry.formula.source for entry in entries if isinstance(entry, Step)]
    names += [entry.source for entry in entries if isinstance(entry, Choice) and entry.source]
    return "; ".join(dict.fromkeys(map(source_words, names)))


def _runs(entries: list[Entry]) -> list[list[Entry]]:
    """Consecutive entries of one kind: given figures together, steps of one formula together."""

    def kind(entry: Entry) -> object:
        return entry.formula.name if isinstance(entry, Step) else type(entry).__name__

    return [list(group) for _, group in groupby(entries, key=kind)]


def _body(run: list[Entry], system: str, book: SourceBook, of_totals: str) -> list[Equation | Table | Paragraph]:
    first = run[0]
    if isinstance(first, Choice):
        return [Paragraph(plain(f"{one.text}: {one.because}.")) for one in run]  # type: ignore[union-attr]
    if isinstance(first, Given):
        return [_given_words(run, system, book)]  # type: ignore[arg-type]
    steps: list[Step] = run  # type: ignore[assignment]
    spelled = [spell(step, system) for step in steps]
    if len(run) > 1 and _foldable(spelled):
        return [Paragraph(_formula_line(spelled[0]) + _constant_words(spelled)), _folded(steps, spelled)]
    return [_equation(step, words, system, of_totals) for step, words in zip(steps, spelled, strict=True)]


def _foldable(spelled: list[Spelled]) -> bool:
    return all(len(words.numbers) <= LONGEST_CELL for words in spelled)


def _formula_line(words: Spelled) -> str:
    return f"{words.left} = {words.symbols}"


def _folded(steps: list[Step], spelled: list[Spelled]) -> Table:
    """Repeated steps as rows: a column for each quantity, or the numbers put in where a quantity is a list."""
    first = spelled[0]
    subject = Column("Layer" if first.arguments[0][0] == "d" else "For", width=0)
    result = Column(first.left, pretty_unit(first.unit), 24, "decimal")
    if any(isinstance(shown, tuple) for words in spelled for _, shown, _ in words.arguments):
        longest = max(len(words.numbers) for words in spelled)
        columns = (subject, Column("numbers put in", width=min(85, max(30, 4 + 1.75 * longest))), result)
        cells = [(words.numbers,) for words in spelled]
    else:
        vary = _varying(spelled)
        width = max(24 if len(vary) < 4 else 18, *(4 + 1.5 * len(pretty_unit(unit)) for _, _, unit in first.arguments))
        columns = (
            subject,
            *(
                Column(f"{{{name}}}", pretty_unit(unit), width, "decimal")
                for name, _, unit in first.arguments
                if name in vary
            ),
            result,
        )
        cells = [tuple(shown for name, shown, _ in words.arguments if name in vary) for words in spelled]
    rows = (
        Row((plain(step.about), *row, words.result)) for step, row, words in zip(steps, cells, spelled, strict=True)
    )
    return Table(columns, tuple(rows))


def _varying(spelled: list[Spelled]) -> set[str]:
    """Names of the quantities that are not the same in every row; the first one stays in any case."""
    first = spelled[0].arguments
    vary = {name for i, (name, _, _) in enumerate(first) if len({words.arguments[i][1] for words in spelled}) > 1}
    return vary or {first[0][0]}


def _constant_words(spelled: list[Spelled]) -> str:
    """What stands above a folded table for all its rows: ", with R_T = 6.551 m²·K/W"."""
    vary = _varying(spelled)
    parts = [
        f"{{{name}}} = {shown}" + (f"\u00a0{pretty_unit(unit)}" if pretty_unit(unit) else "")
        for name, shown, unit in spelled[0].arguments
        if name not in vary and not isinstance(shown, tuple)
    ]
    return ", with " + ", ".join(parts) if parts else ""


def _given_words(given: list[Given], system: str, book: SourceBook) -> Paragraph:
    """The given figures in one paragraph, each with its source mark, or its source where it has no mark."""
    parts = []
    for one in given:
        origin = book.mark(one.figure) if isinstance(one.figure, Datum) else source_words(one.source)
        parts.append(
            f"{plain(one.about)} {{{one.quantity}}} = {with_unit(one.value, one.quantity, system, 4)} ({origin})"
        )
    return Paragraph("Given: " + "; ".join(parts) + ".")


def _equation(step: Step, words: Spelled, system: str, of_totals: str) -> Equation:
    """One line where everything fits it, else symbols with numbers, then the result; the running total in its own system."""
    result = _bold(words.result, words.unit)
    if system == "customary" and words.unit != term(step.formula.result).si:
        result += f" ({with_unit(step.value, step.formula.result, 'metric', 4)})"
    about = f"   _{plain(step.about)}_" if step.about else ""
    total = words.result if step.running_total else ""
    if total and system != of_totals:
        total = shown(in_system(step.value, step.formula.result, of_totals))
        result += f" ({_joined(total, unit_of(step.formula.result, of_totals))})"
    length = len(words.symbols) + len(words.numbers)
    if length + len(result) <= ONE_LINE and not about:
        return Equation(words.left, (f"{words.symbols} = {words.numbers} = {result}",), total)
    if length <= ONE_LINE:
        return Equation(words.left, (f"{words.symbols} = {words.numbers}{about}", result), total)
    return Equation(words.left, (words.symbols + about, words.numbers, result), total)


def _bold(figure: str, unit: str) -> str:
    return f"**{_joined(figure, pretty_unit(unit))}**"


def _joined(figure: str, unit: str) -> str:
    return f"{figure}\u00a0{unit}" if unit else figure
