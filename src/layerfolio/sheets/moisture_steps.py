"""The steps of the moisture sheet: layers first, then the balance, planes named as the picture names them."""

import re
from collections.abc import Iterable
from dataclasses import replace
from itertools import pairwise

from layerfolio.sheets.blocks import Calculation
from layerfolio.sheets.calculation import calculation
from layerfolio.sheets.close_steps import close
from layerfolio.sheets.source_book import SourceBook
from layerfolio.steps.trace import Choice, Entry, Section, Step, Trace
from layerfolio.studies.condensation.types import CondensationStudy
from layerfolio.studies.condensation.walk import plane_words
from layerfolio.studies.types import VapourStudy

IN_TABLE = "cups"
"""Section whose given figures stand in the sheet's own table of vapour values."""
_MEMBER = re.compile(r"(\d+a) [a-z ]+(?= \+|$)")
"""A member in the name of a path; its number says enough beside the layer table."""
_PLANE = re.compile(r"plane \d+\|\d+|\blayer \d+")


def moisture_steps(vapour: VapourStudy, study: CondensationStudy, system: str, book: SourceBook) -> Calculation:
    """Both traces, numbered through; planes by the numbers of their layers."""
    planes = _planes(study)
    entries = [*vapour.trace.entries, *(_renamed(entry, planes) for entry in _without(study.trace.entries, IN_TABLE))]
    made = calculation(Trace(tuple(_gathered(_in_its_section(entries)))), system, book)
    return Calculation("", "", tuple(map(close, made.steps)))


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
    return replace(entry, about=_path(_short(entry.about, planes)))


def _path(about: str) -> str:
    """`5a + 7` for `through 5a stud + 7`."""
    path = about.removeprefix("through ")
    return _MEMBER.sub(r"\1", path) if path != about and path[:1].isdigit() else about


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
