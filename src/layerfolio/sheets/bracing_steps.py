"""The steps of all lines of bracing together: equal sections become one, each step names its lines, equal formulas fold."""

from dataclasses import replace

from layerfolio.sheets.blocks import Calculation
from layerfolio.sheets.desk import Desk
from layerfolio.sheets.structure_parts import steps_of
from layerfolio.steps.trace import Entry, Section, Step, Trace

LINES = "lines"


def bracing_steps(desk: Desk, traces: dict[str, Trace]) -> Calculation | None:
    """None without a step."""
    return steps_of(desk, {LINES: together(traces)}, "R")


def together(traces: dict[str, Trace]) -> Trace:
    """Sections of one title once, in order of appearance; what several lines have alike stands once with all their names."""
    sections: dict[Section, dict[Entry, list[str]]] = {}
    for name, trace in traces.items():
        found: dict[Entry, list[str]] = {}
        for entry in trace.entries:
            if isinstance(entry, Section):
                found = sections.setdefault(entry, {})
            elif name not in (names := found.setdefault(entry, [])):
                names.append(name)
    done: list[Entry] = []
    for section, entries in sections.items():
        done += [section, *_ordered(_all_named(entries, len(traces)))]
    return Trace(tuple(done))


def _all_named(entries: dict[Entry, list[str]], of: int) -> list[Entry]:
    """With the lines that they belong to; what belongs to all stays without where no line has more of that formula."""
    apart = {one.formula.name for one, names in entries.items() if isinstance(one, Step) and len(names) < of}
    named = []
    for entry, names in entries.items():
        alone = len(names) < of or (isinstance(entry, Step) and entry.about and entry.formula.name in apart)
        named.append(_named(entry, names) if alone else entry)
    return named


def _named(entry: Entry, names: list[str]) -> Entry:
    """With the lines that it belongs to."""
    if not hasattr(entry, "about"):
        return entry
    words = ", ".join(names)
    return replace(entry, about=f"{words}: {entry.about}" if entry.about else words)


def _ordered(entries: list[Entry]) -> list[Entry]:
    """What is given and chosen first, then the steps formula by formula in the order in which these appear."""
    formulas = list(dict.fromkeys(one.formula.name for one in entries if isinstance(one, Step)))
    return sorted(entries, key=lambda one: formulas.index(one.formula.name) + 1 if isinstance(one, Step) else 0)
