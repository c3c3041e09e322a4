"""Whether the basis of an opening's figure names a rating that the set takes, however a person writes it."""

import re
from collections.abc import Iterator, Sequence
from typing import Any

from layerfolio.problems import Caution

_RATED = r"(?:rated|rating|labelled|labeled|label|certified)(?: (?:to|by|per))?"
_AFTER = r"(?: (?:rated|rating|labelled|labeled|label|certified))*"
_EDITION = r"(?: ?:? ?(?:19|20)?\d\d)?"
_ALONE = {"nfrc": "NFRC 100"}
"""Bodies that rate windows and doors only: the name alone tells the standard of the transmittance."""
_JUDGES = ("fenestration", "rated_opening")
_OTHER = re.compile(r"\b(?:en|iso)(?: iso)? ?\d", re.IGNORECASE)


def rated_to(basis: str, standards: Sequence[str]) -> str:
    """The standard of `standards` that a basis is rated to; empty for every other basis.

    Case, spaces, hyphens and the words "rated to", "to", "label" make no difference; another number does: `NFRC 1001`.
    """
    plain = _plain(basis)
    for name in standards:
        one = rf"{_pattern(name)}(?![\w.]*\d)"
        if re.match(rf"{_RATED} {one}(?!\w)", plain) or re.fullmatch(rf"(?:to |by |per )?{one}{_EDITION}{_AFTER}", plain):
            return name
    for body, name in _ALONE.items():
        if name in standards and re.fullmatch(rf"(?:{_RATED} )?{body}{_AFTER}", plain) and plain != body:
            return name
    return ""


def _plain(text: str) -> str:
    return re.sub(r"[\s\-_]+", " ", text).strip().lower()


def _pattern(name: str) -> str:
    """The words of a standard; the spaces between them may be left out."""
    return " ?".join(map(re.escape, _plain(name).split()))


def understood(set_id: str, kind: str) -> tuple[str, ...]:
    """The ratings of a transmittance that a set takes for that kind of opening."""
    from layerfolio.codes.requirements import requirements

    rules = [one.rule for one in requirements(set_id) if kind in one.of_openings and one.judge in _JUDGES]
    return tuple(dict.fromkeys(name for rule in rules for name in rule.get("rated_of", {}).get(kind, rule["rated"])))


def basis_cautions(project: Any) -> Iterator[Caution]:
    """A stated basis that names no rating of the chosen set, and no standard of declared values either."""
    if project.code is None or project.code.set is None:
        return
    for name, opening in project.openings.items():
        if not opening.basis or opening.transmittance is None or _OTHER.search(opening.basis):
            continue
        standards = understood(project.code.set, opening.kind)
        if standards and not rated_to(opening.basis, standards):
            yield Caution(f"openings.{name}.basis", _message(opening.basis, standards, project.code.set))


def _message(basis: str, standards: Sequence[str], set_id: str) -> str:
    from difflib import get_close_matches

    shown = "".join(one if one.isprintable() else "?" for one in basis[:60])
    written = {f"rated to {one}".lower(): f"rated to {one}" for one in standards}
    named = [one for one in standards if set(_plain(one).split()) & set(_plain(basis).split())]
    near = [f"rated to {one}" for one in named] or [written[one] for one in get_close_matches(_plain(basis), written, 1, 0.6)]
    meant = f': did you mean "{near[0]}"?' if near else ";"
    listed = " or ".join(f'"rated to {one}"' for one in standards)
    return f'the basis "{shown}" names no rating that {set_id} takes{meant} it understands {listed}'
