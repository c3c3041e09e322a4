"""The steps of the moisture sheet: layers first, then the balance, set close because there are many."""

import re
from collections.abc import Iterable
from dataclasses import replace
from itertools import pairwise

from layerfolio.sheets.blocks import CalcStep, Calculation, Equation, Paragraph, Table
from layerfolio.sheets.calculation import calculation
from layerfolio.sheets.measuring import width_of
from layerfolio.sheets.source_book import SourceBook
from layerfolio.steps.trace import Choice, Entry, Section, Step, Trace
from layerfolio.studies.condensation.types import CondensationStudy
from layerfolio.studies.condensation.walk import plane_words
from layerfolio.studies.types import VapourStudy

_PLANE = re.compile(r"plane \d+\|\d+|\blayer \d+")

Block = Equation | Table | Paragraph
LINE = 101.0  # mm that the right side of an equation may take
IN_TABLE = "cups"
"""Section whose given figures stand in the sheet's own table of vapour values."""

_PATH = re.compile(r"(?:through )?\b(\d+a?)(?: [a-z]+)?\b(?= \+|$)")
"""A path through layers by their numbers, without the words for its members."""


def moisture_steps(vapour: VapourStudy, study: CondensationStudy, system: str, book: SourceBook) -> Calculation:
    """Both traces, numbered through; planes by the numbers of their layers."""
    planes = _planes(study)
    entries = [*vapour.trace.entries, *(_renamed(entry, planes) for entry in _without(study.trace.entries, IN_TABLE))]
    made = calculation(Trace(tuple(_gathered(_in_its_section(entries)))), system, book)
    return Calculation("", "", tuple(map(_close, made.steps)))


def _without(entries: Iterable[Entry], key: str) -> Iterable[Entry]:
    """All entries but those of one section."""
    inside = False
    for entry in entries:
        if isinstance(entry, Section):
            inside = entry.key == key
        if not inside:
            yield entry


def _planes(study: CondensationStudy) -> list[tuple[str, str]]:
    """Words that name a plane by its layers, and the short name that the picture uses; long ones first."""
    counted = [layer for layer in study.assembly.layers if layer.counts]
    found = [(plane_words((a.name, b.name)), f"plane {a.number}|{b.number}") for a, b in pairwise(counted)]
    found += [(plane_words((one.name, one.name)), f"layer {one.number}") for one in counted]
    return sorted(found, key=lambda pair: -len(pair[0]))


def _renamed(entry: Entry, planes: list[tuple[str, str]]) -> Entry:
    if isinstance(entry, Section):
        return replace(entry, title=_short(entry.title, planes))
    if isinstance(entry, Choice):
        return replace(entry, text=_short(entry.text, planes), because=_short(entry.because, planes))
    return replace(entry, about=_PATH.sub(r"\1", _short(entry.about, planes)))


def _in_its_section(entries: Iterable[Entry]) -> Iterable[Entry]:
    """A section whose steps are all about one plane names it in its title, and its steps do not name it again."""
    for section, inside in _by_section(entries):
        names = dict.fromkeys(name for one in inside if isinstance(one, Step) for name in _PLANE.findall(one.about))
        if section is None or section.key not in ("plane", "two-period") or len(names) != 1:
            yield from filter(None, (section, *inside))
            continue
        name = next(iter(names))
        yield section if name in section.title else replace(section, title=f"{section.title}, {name}")
        for one in inside:
            yield replace(one, about=_unnamed(one.about, name)) if isinstance(one, Step) else one


def _by_section(entries: Iterable[Entry]) -> list[tuple[Section | None, list[Entry]]]:
    found: list[tuple[Section | None, list[Entry]]] = [(None, [])]
    for entry in entries:
        if isinstance(entry, Section):
            found.append((entry, []))
        else:
            found[-1][1].append(entry)
    return found


def _unnamed(about: str, name: str) -> str:
    """`to room` for `plane 4|5 to room`, `room to plane` for `room to plane 4|5`."""
    if about == name:
        return ""
    return about.removeprefix(f"{name} ").replace(name, name.partition(" ")[0])


def _short(text: str, planes: list[tuple[str, str]]) -> str:
    for words, name in planes:
        for before in ("the plane ", ""):
            if before + words in text:
                return text.replace(before + words, name)
    return text


def _gathered(entries: Iterable[Entry]) -> Iterable[Entry]:
    """Steps that follow each other, those of one formula together, so that repeated ones fold into one table.

    Only in the surface check, whose paths stand beside each other: no step there needs one of another path. What is
    provided and what is asked are two steps of the sheet.
    """
    kept: list[Step] = []
    key, asked = "", False
    for entry in entries:
        if isinstance(entry, Step) and key == "surface":
            kept.append(entry)
            continue
        yield from _by_formula(kept)
        kept = []
        if isinstance(entry, Section):
            key, asked = entry.key, False
            entry = replace(entry, title=f"{entry.title}: provided") if key == "surface" else entry
        elif key == "surface" and isinstance(entry, Choice) and not asked:
            asked = True
            yield Section("Inside surface against mould: asked")
        yield entry
    yield from _by_formula(kept)


def _by_formula(steps: list[Step]) -> list[Step]:
    names = list(dict.fromkeys(step.formula.name for step in steps))
    return sorted(steps, key=lambda step: names.index(step.formula.name))


def _close(step: CalcStep) -> CalcStep:
    body = [_joined(block) if isinstance(block, Equation) else block for block in step.body]
    return replace(step, body=tuple(_chained(body)), source=_sources(step.source))


def _chained(body: list[Block]) -> list[Block]:
    """Two tables become one where the second goes on, row by row, with what the first ends with."""
    done: list[Block] = []
    for block in body:
        match [*done[-3:], block]:
            case [Paragraph() as first, Table() as upper, Paragraph() as second, Table() as lower] if _goes_on(upper, lower):
                rows = (
                    replace(row, cells=(*row.cells, last.cells[-1])) for row, last in zip(upper.rows, lower.rows, strict=True)
                )
                columns = tuple(
                    replace(column, width=width)
                    for column, width in zip((*upper.columns, lower.columns[-1]), (14, 0, 15, 14), strict=True)
                )
                done[-3:] = [Paragraph(f"{first.text}; {second.text}"), replace(upper, columns=columns, rows=tuple(rows))]
            case _:
                done.append(block)
    return done


def _goes_on(upper: Table, lower: Table) -> bool:
    if len(upper.columns) != 3 or len(lower.columns) != 3 or len(upper.rows) != len(lower.rows):
        return False
    pairs = zip(upper.rows, lower.rows, strict=True)
    return all((one.cells[0], one.cells[-1]) == (other.cells[0], other.cells[1]) for one, other in pairs)


def _joined(equation: Equation) -> Equation:
    """As few lines as hold it: formula, numbers and result on one, with what it is about behind."""
    first, about = _about(equation.rights[0])
    rights = [first, *equation.rights[1:]]
    lines: list[str] = [rights[0]]
    for right in rights[1:]:
        joined = f"{lines[-1]} = {right}"
        if width_of(joined) <= LINE:
            lines[-1] = joined
        else:
            lines.append(right)
    if about:
        place = next((k for k in (len(lines) - 1, 0) if width_of(lines[k] + about) <= LINE), 0)
        lines[place] += about
    return replace(equation, rights=tuple(lines))


def _about(text: str) -> tuple[str, str]:
    """An equation's first line and what it is about."""
    head, mark, about = text.partition("   _")
    return (head, mark + about) if mark else (text, "")


def _sources(text: str) -> str:
    """Places of one publication behind its name, which stands once."""
    places: dict[str, list[str]] = {}
    for one in text.split("; "):
        head, _, place = one.partition(", ")
        places.setdefault(head, []).append(place)
    return "; ".join(
        ", ".join([head, *filter(None, dict.fromkeys(found))]) for head, found in places.items()
    )  # fmt: skip
