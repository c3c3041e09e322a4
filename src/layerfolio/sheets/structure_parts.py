"""What the structural sheets share: the caution, which finding stands on which of them, loads and lengths as they print."""


from layerfolio.catalogue.notices import notice
from layerfolio.codes.findings import Finding
from layerfolio.sheets.blocks import Bullets, CalcStep, Calculation, Column, Framed, Paragraph, Row, Table, VerdictCell
from layerfolio.sheets.calculation import calculation
from layerfolio.sheets.close_steps import close
from layerfolio.sheets.desk import BRACING, FASTENING, LOADS, RECORD, STRUCTURE, Desk
from layerfolio.sheets.figures import NOT_GIVEN
from layerfolio.sheets.markup import plain
from layerfolio.sheets.templates import Marked
from layerfolio.steps.trace import Entry, Section, Step, Trace
from layerfolio.units.quantity import Quantity
from layerfolio.units.show import fixed, in_units, length_figure

ON_LOADS = ("dead-load",)
LEFT_OUT = ("foundations", "framing")
ON_FASTENING = ("attachment", "furring", "nailing", "cladding", "suction")
"""Parts of a question's name, by which its finding is printed on a sheet of its own."""


def caution() -> Framed:
    """Stands first on every structural sheet."""
    found = notice("structure-caution")
    return Framed(found.title, tuple(Paragraph(plain(one)) for one in found.paragraphs))


def stop(desk: Desk) -> Framed:
    """What the tool leaves to others, with the lines of the record that ask for it."""
    found = notice("structure-outside")
    lines = [str(desk.line(one)) for one in desk.dossier.findings if _question(one) in LEFT_OUT and one.topic == "structure"]
    asked = f"{RECORD}, line{'s' if len(lines) > 1 else ''} {' and '.join(lines)}, asks for the papers on them." if lines else ""
    blocks = (Bullets(tuple(map(plain, found.paragraphs)), columns=2), *((Paragraph(asked),) if asked else ()))
    return Framed(found.title, blocks)


def findings_on(desk: Desk, sheet: str) -> list[Finding]:
    """The findings of topic structure that a sheet prints; each stands on one sheet."""
    return [one for one in desk.dossier.findings if one.topic == "structure" and _sheet_of(one, desk) == sheet]


def sheet_to_see(finding: Finding, desk: Desk) -> str:
    """The structural sheet that shows what a finding is about; empty for one that none shows."""
    if finding.topic != "structure" or not desk.dossier.dead_loads:
        return ""
    found = _sheet_of(finding, desk)
    return "" if found == RECORD or found not in desk.structural else found


def _sheet_of(finding: Finding, desk: Desk) -> str:
    question = _question(finding)
    if question in LEFT_OUT:
        return RECORD
    if any(part in question for part in ON_LOADS):
        return LOADS
    if any(part in question for part in ON_FASTENING):
        return FASTENING
    return BRACING if finding.assembly in desk.dossier.wall_lines else STRUCTURE


def _question(finding: Finding) -> str:
    return finding.id.rpartition("/")[2]


def verdicts(desk: Desk, findings: list[Finding]) -> Table | None:
    """Question and clause, asked and provided, the verdict with its line in the record; below each what follows.

    What is alike for several subjects stands once, with the names of all.
    """
    alike: dict[tuple, list[Finding]] = {}
    for one in findings:
        alike.setdefault((one.id, one.clause, one.asked, one.given, one.verdict, one.what_follows), []).append(one)
    if not alike:
        return None
    columns = (Column("Question", "clause", 52), Column("Asked and provided", "", 80), Column("Verdict", f"line of {RECORD}"))
    return Table(columns, tuple(_verdict(desk, same) for same in alike.values()))


def _verdict(desk: Desk, same: list[Finding]) -> Row:
    one, names = same[0], ", ".join(found.assembly for found in same if found.assembly)
    numbers = ", ".join(str(desk.line(found)) for found in same)
    asked = f"_asked_ {plain(one.asked.removeprefix('asked '))}" if one.asked else ""
    given = f"_provided_ {plain(one.given)}" if one.given else ""
    cells = (
        f"**{plain(', '.join(filter(None, (one.question, names))))}**\n{plain(one.clause)}",
        "\n".join(filter(None, (asked, given))),
        VerdictCell(one.verdict, f"{RECORD}, line{'s' if len(same) > 1 else ''} {numbers}"),
    )
    return Row(cells, after=plain(_sentence(one.what_follows)) or None)


def _sentence(words: str) -> str:
    return words[:1].upper() + words[1:] if words else ""


def load(value: float | None, system: str, places: int = 3) -> str:
    """Pascals as kPa, or as psf with kPa in brackets; no unit."""
    if value is None:
        return NOT_GIVEN
    metric = fixed(value / 1000, places)
    return f"{fixed(in_units(value, 'psf'), 2)} ({metric})" if system == "customary" else metric


def load_unit(system: str) -> str:
    return "psf (kPa)" if system == "customary" else "kPa"


def long(value: Quantity | float | None, system: str, stacked: bool = False) -> str:
    """A length in a column headed `length_unit`: mm, or feet and inches with mm in brackets (`stacked`: below)."""
    if value is None:
        return NOT_GIVEN
    metric = length_figure(value, "metric", as_written=False)
    between = "\n" if stacked else " "
    return f"{length_figure(value, 'customary')}{between}({metric})" if system == "customary" else metric


def thick(value: Quantity | float | None, system: str) -> str:
    """A diameter: millimetres, or inches as written, else to the thousandth, with millimetres in brackets."""
    if value is None:
        return NOT_GIVEN
    metres = value.value if isinstance(value, Quantity) else value
    metric = fixed(metres * 1000, 2).rstrip("0").rstrip(".")
    if system == "metric":
        return metric
    inches = (
        length_figure(value, system) if isinstance(value, Quantity) and "in" in value.text else f'{fixed(metres / 0.0254, 3)}"'
    )
    return f"{inches} ({metric})"


def length_unit(system: str) -> str:
    return "(mm)" if system == "customary" else "mm"


def steps_of(desk: Desk, traces: dict[str, Trace], total: str) -> Calculation | None:
    """The traces of several subjects, numbered through, each step titled with its subject; None without a step."""
    steps: list[CalcStep] = []
    for name, trace in traces.items():
        before = len(steps)
        for number, step in enumerate(calculation(trace, desk.system, desk.book, total=total).steps, 1):
            title = f"{plain(name)}: {step.title}" if len(traces) > 1 else step.title
            steps.append(CalcStep(str(before + number), title, step.source, step.body))
    return Calculation("", "", tuple(map(close, steps))) if steps else None


def in_order(trace: Trace, last: tuple[str, ...]) -> Trace:
    """In each section the formulas named come last, in the order named, so that equal ones fold into a table."""
    done: list[Entry] = []
    section: list[Entry] = []
    for entry in (*trace.entries, Section("")):
        if isinstance(entry, Section):
            done += [*sorted(section, key=lambda one: _rank(one, last)), entry]
            section = []
        else:
            section.append(entry)
    return Trace(tuple(done[:-1]))


def _rank(entry: Entry, last: tuple[str, ...]) -> int:
    name = entry.formula.name if isinstance(entry, Step) else ""
    return last.index(name) + 1 if name in last else 0


def listed_missing(name: str, words: tuple[str, ...]) -> Marked:
    """A bullet of what a study lacks."""
    return Marked(f"**{plain(name)}**: {plain(', '.join(words))}")
