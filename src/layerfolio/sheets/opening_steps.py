"""The steps of computed openings: alike ones together, so that their areas fold into tables."""

from collections.abc import Iterable
from dataclasses import replace

from layerfolio.sheets.blocks import Calculation
from layerfolio.sheets.calculation import calculation
from layerfolio.sheets.close_steps import close
from layerfolio.sheets.source_book import SourceBook
from layerfolio.steps.trace import Choice, Entry, Given, Section, Step, Trace
from layerfolio.studies.envelope_types import OpeningStudy

ALIKE = ("U_g", "U_f", "psi_g")
"""Openings are alike that have these figures in common; areas and lengths may differ."""


def opening_steps(studies: Iterable[OpeningStudy], system: str, book: SourceBook) -> Calculation | None:
    """One step for each sort of frame, glass and edge; None where nothing was computed."""
    sorts: dict[tuple, list[OpeningStudy]] = {}
    for one in studies:
        if one.how == "computed":
            sorts.setdefault(_sort(one), []).append(one)
    if not sorts:
        return None
    entries = [entry for same in sorts.values() for entry in _entries(same)]
    made = calculation(Trace(tuple(entries)), system, book)
    return Calculation("", "", tuple(map(close, made.steps)))


def _sort(one: OpeningStudy) -> tuple:
    """What alike openings share: figures with their sources."""
    given = [entry for entry in one.trace.entries if isinstance(entry, Given) and entry.quantity in ALIKE]
    return tuple((entry.quantity, entry.value, entry.source, entry.about) for entry in given)


def _entries(same: list[OpeningStudy]) -> list[Entry]:
    """Title, figures in common once, choices once, then the steps formula by formula."""
    every = [entry for one in same for entry in one.trace.entries]
    title = ", ".join(one.name for one in same)
    common = list(dict.fromkeys(entry for entry in every if isinstance(entry, Given) and entry.quantity in ALIKE))
    own = [entry for entry in every if isinstance(entry, Given) and entry.quantity not in ALIKE]
    choices = list(dict.fromkeys(entry for entry in every if isinstance(entry, Choice)))
    steps = [entry for entry in every if isinstance(entry, Step)]
    order = list(dict.fromkeys(step.formula.name for step in steps))
    last = [name for name in order if name.startswith("window")]
    order = [name for name in order if name not in last] + last
    ordered = sorted(steps, key=lambda step: order.index(step.formula.name))
    if len(same) == 1:  # its name stands in the title
        ordered = [replace(step, about="") for step in ordered]
    return [Section(f"Frame, glass and edge of {title}"), *_once(common), *own, *choices, *ordered]


def _once(given: list[Given]) -> list[Given]:
    """Each quantity once: alike openings name the same figure."""
    return list({one.quantity: one for one in given}.values())
