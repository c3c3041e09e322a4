"""All control lines of a detail: their white under the outlines, lines and letters over them."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from itertools import pairwise

from layerfolio.drawing.detail.body import is_small_member
from layerfolio.drawing.detail.control_legs import Leg, legs_of, moved_clear
from layerfolio.drawing.detail.control_letters import Placed, Taken, letters_of
from layerfolio.drawing.detail.control_marks import cross_strokes, letter_fields, letter_texts, lines, whites
from layerfolio.drawing.detail.model import Detail, Trace
from layerfolio.drawing.marks import Line, Mark


@dataclass(slots=True)
class Controls:
    """Marks in the order of painting; `letters` stand outside the clip."""

    whites: list[Mark] = field(default_factory=list)
    lines: list[Mark] = field(default_factory=list)
    letters: list[Mark] = field(default_factory=list)


def cleared(detail: Detail) -> tuple[Trace, ...]:
    """The traces of a detail on paper, clear of the membranes they follow."""
    return tuple(
        Trace(one.letters, moved_clear(one, detail.sheets), one.gaps) for one in detail.traces if one.letters and one.runs
    )


def legs_in(detail: Detail) -> list[Leg]:
    """The straight legs of all traces."""
    return [leg for one in detail.traces for run in one.runs for leg in legs_of(run)]


def controls_of(detail: Detail, outlines: Iterable[Mark], taken: Taken) -> Controls:
    """`taken` knows leaders, arrows and texts; outlines and heavy lines are added to it here."""
    found = Controls()
    taken.faces += [ends for one in outlines if isinstance(one, Line) for ends in pairwise(one.points)]
    taken.faces += [ends for one in detail.sheets for ends in pairwise(one.points)]
    members = [one.outline for one in detail.pieces if is_small_member(one)]
    taken.members += members
    legs = [[leg for run in one.runs for leg in legs_of(run)] for one in detail.traces]
    taken.legs = [(number, leg) for number, group in enumerate(legs) for leg in group]
    placed: list[list[Placed]] = []
    for number, (trace, group) in enumerate(zip(detail.traces, legs, strict=True)):
        placed.append(letters_of(number, trace.letters, group, taken))
    for trace, group, letters in zip(detail.traces, legs, placed, strict=True):
        found.whites += whites(group, members)
        found.lines += [*letter_fields(letters), *lines(trace.letters, group, letters), *cross_strokes(trace.gaps, trace.runs)]
        found.letters += letter_texts(letters)
    return found


def letters_used(detail: Detail) -> str:
    """In the order of the key."""
    used = "".join(one.letters for one in detail.traces)
    return "".join(one for one in "WAVT" if one in used)
