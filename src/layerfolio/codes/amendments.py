"""Figures of the local authority that replace the set's own, as the project file states them."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from typing import Any

from layerfolio.catalogue.code_sets import code_set
from layerfolio.codes.requirements import requirements
from layerfolio.problems import Problem

DAY = "date"
KIND = {"R_eff": "resistance", "R": "resistance", "U": "transmittance", "W": "permeance", "d": "length", DAY: DAY}
"""Kind of quantity (a key of units.table.KINDS, or a date) by glossary name."""

TABLED = ("furring_over_foam", "cladding_through_foam", "roof_foam_class")
"""Judges that go by a table of many cells, or by a class: no single figure can stand in the place of it."""


@dataclass(frozen=True, slots=True)
class Amendment:
    """`value` in SI, or an ISO date; `source` in the person's words."""

    requirement: str
    value: float | str
    source: str


def in_force_id(set_id: str) -> str:
    """Id of the finding on an edition's force, which an authority settles by a date."""
    return f"{set_id}/edition/in-force"


def amendable(set_id: str) -> dict[str, str]:
    """Ids whose figure a local authority can replace, with the glossary name of that figure (or `date`)."""
    found = {one.id: one.quantity for one in requirements(set_id) if one.quantity in KIND and one.judge not in TABLED}
    if "adopted" in code_set(set_id).edition:
        found[in_force_id(set_id)] = DAY
    return found


def amendments(project: Any) -> Mapping[str, Amendment]:
    """The project's amendments by requirement id; of two with one id the later holds.

    ValueError for a figure that cannot be read: `amendment_problems` says so before it comes to that.
    """
    known, found = amendable(project.code.set), {}
    for row in project.code.amendments or ():
        if row.requirement in known:
            value = _value(str(row.value), KIND[known[row.requirement]])
            found[row.requirement] = Amendment(row.requirement, value, row.source)
    return found


def _value(text: str, kind: str) -> float | str:
    """The figure in SI, or the date as an ISO text; ValueError when it is neither."""
    if kind == DAY:
        return date.fromisoformat(text.strip()).isoformat()
    from layerfolio.units.grammar import parse

    return parse(text, kind).value


def amendment_problems(project: Any, file: str = "") -> tuple[Problem, ...]:
    """What is wrong with the project's amendments: an id that the set does not know, or a figure not of its kind.

    The line is 0: the reading room knows the place of `path`.
    """
    known, found = amendable(project.code.set), []
    for number, row in enumerate(project.code.amendments or ()):
        if row.requirement is None or row.value is None:
            continue  # a mistake of its own, told where the row was read
        path = f"code.amendments[{number}]"
        quantity = known.get(row.requirement)
        if quantity is None:
            found.append(_tabled(row.requirement, project, file, path) or _unknown(row.requirement, known, file, path))
        else:
            found += _unreadable(str(row.value), row.requirement, known, file, f"{path}.value")
    return tuple(found)


def _tabled(asked: str, project: Any, file: str, path: str) -> Problem | None:
    """A requirement of the set whose figures are a table or a class."""
    if not any(one.id == asked and one.judge in TABLED for one in requirements(project.code.set)):
        return None
    message = f"{asked} goes by a table or a class, which no single figure replaces"
    return Problem(file, 0, 0, f"{path}.requirement", f"{message}: leave it out, and put it to the authority", "amendments: []")


def _unknown(asked: str, known: Mapping[str, str], file: str, path: str) -> Problem:
    from difflib import get_close_matches

    near = get_close_matches(asked, known, 1)
    meant = f"; did you mean {near[0]}?" if near else f"; it has {', '.join(known)}"
    message = f"the set has no figure {asked!r} that can be amended{meant}"
    return Problem(file, 0, 0, f"{path}.requirement", message, near[0] if near else next(iter(known)))


def _unreadable(text: str, asked: str, known: Mapping[str, str], file: str, path: str) -> list[Problem]:
    kind = KIND[known[asked]]
    try:
        _value(text, kind)
    except ValueError as error:
        message = str(error) if kind != DAY else f"{text!r} is no date"
        example = getattr(error, "example", "2025-04-01")
        return [Problem(file, 0, 0, path, f"{message}{_other_kind(text, asked, known)}", example)]
    return []


def _other_kind(text: str, asked: str, known: Mapping[str, str]) -> str:
    """For a figure of another kind: what kind the requirement is, and the requirement on the same thing of that other kind."""
    other = next((kind for kind in dict.fromkeys(KIND.values()) if kind != KIND[known[asked]] and _fits(text, kind)), "")
    if not other:
        return ""
    from layerfolio.units.table import KINDS

    noun = {kind: KINDS[kind].noun if kind in KINDS else kind for kind in (other, KIND[known[asked]])}
    near = next((one for one in known if KIND[known[one]] == other and _thing(one) == _thing(asked)), "")
    meant = f"; the {noun[other]} of the same part is {near}" if near else ""
    return f": {asked} is a {noun[KIND[known[asked]]]}, and this is a {noun[other]}{meant}"


def _fits(text: str, kind: str) -> bool:
    try:
        _value(text, kind)
    except ValueError:
        return False
    return True


def _thing(requirement: str) -> frozenset[str]:
    """What a requirement is about: `walls` and `wall-insulation` are about the same."""
    words = requirement.rpartition("/")[2].split("-")
    return frozenset(word.removesuffix("s") for word in words) - {"insulation"}
