"""Figures of the local authority that replace the set's own, as the project file states them."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from layerfolio.problems import Problem

KIND = {"R_eff": "resistance", "U": "transmittance", "W": "permeance", "date": "date"}
EXAMPLES = {
    "resistance": "3.5 m2.K/W", "transmittance": "0.25 W/(m2.K)", "permeance": "60 ng/(Pa.s.m2)", "date": "2025-04-01",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Amendment:
    """`value` in SI, or an ISO date; `source` in the person's words."""

    requirement: str
    value: float | str
    source: str


def amendments(project: Any) -> Mapping[str, Amendment]:
    """The project's amendments by requirement id; a later one of the same id replaces the earlier."""
    found = {}
    for row in getattr(project.code, "amendments", None) or ():
        given = getattr(row.value, "value", row.value)
        number = isinstance(given, int | float) and not isinstance(given, bool)
        found[row.requirement] = Amendment(row.requirement, float(given) if number else str(given), row.source)
    return found


def amendment_problems(project: Any, file: str = "") -> tuple[Problem, ...]:
    """What is wrong with the project's amendments: an id that the set does not know, or a figure of the wrong kind.

    The line is 0: the reading room knows the place of `path`.
    """
    from layerfolio.codes.judging import amendable

    known = amendable(project.code.set)
    found = []
    for number, row in enumerate(getattr(project.code, "amendments", None) or ()):
        path = f"code.amendments[{number}]"
        quantity = known.get(row.requirement)
        if quantity is None:
            found.append(_unknown(row.requirement, known, file, path))
        elif not _of_kind(row.value, KIND[quantity]):
            kind = KIND[quantity]
            message = f"{row.requirement} is amended by a {kind}, not by {getattr(row.value, 'text', row.value)}"
            found.append(Problem(file, 0, 0, f"{path}.value", message, EXAMPLES[kind]))
    return tuple(found)


def _unknown(asked: str, known: Mapping[str, str], file: str, path: str) -> Problem:
    from difflib import get_close_matches

    near = get_close_matches(asked, known, 1) or list(known)[:1]
    meant = f"; did you mean {near[0]}?" if near else ""
    message = f"the set has no figure under {asked!r} that could be amended{meant}"
    return Problem(file, 0, 0, f"{path}.requirement", message, near[0] if near else "")


def _of_kind(given: Any, kind: str) -> bool:
    if kind == "date":
        text = str(getattr(given, "text", given))
        return len(text) == 10 and text[4] == text[7] == "-" and text.replace("-", "").isdigit()
    found = getattr(given, "kind", None)
    return found == kind if found else isinstance(getattr(given, "value", given), int | float)
