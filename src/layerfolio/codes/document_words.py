"""What a document may say it is for: a name of the project file, a claim, or a usual paper beside the package."""

import re
from collections.abc import Iterator
from typing import Any

from layerfolio.problems import Caution

USUAL = (
    ("Site plan: boundaries, other buildings, grades", ("site plan", "site")),
    ("Floor plans, elevations, sections of the building", ("plans", "floor plans", "elevations")),
    ("Structural design: frame, bracing, fixings, foundations", ("structure", "bracing", "foundation")),
    ("Heating and ventilation: equipment, sizes, efficiencies, ducts", ("heating", "ventilation", "heat recovery")),
    ("Plumbing and electrical design", ("plumbing", "electrical")),
)
"""Papers that offices ask for and that this package does not hold, each with the words of `documents` that name it."""
PLAIN = ("airtightness", "heat recovery", "bracing", "structure", "flame spread", "soil gas", "ventilation", "fire")
"""Claim words that the project file's own description lists: where no other is used, no data is read for them."""
JUDGED = ("water-resistive barrier",)
PAPERS = (
    "details", "junctions", "photographs", "foundations", "spans", "alternative solution", "additional efficiency",
    "certificate", "heat loss",
)  # fmt: skip
"""Words by which requirements know their papers (`papers`) beside those above and the claims."""
NEAR = 0.75
"""How alike a word must be to be suggested: penetrations are no elevations (0.73)."""
_LIKE_A_NAME = re.compile(r"[A-Za-z]{1,2}[0-9]{1,3}")


def word_cautions(project: Any) -> Iterator[Caution]:
    """A document for a word that names nothing speaks for nothing. A word like an assembly's name (W9) has its caution from
    the reading of the file.
    """
    layers = [one for assembly in project.assemblies.values() for one in assembly.layers]
    subjects = [*project.assemblies, *project.openings, *project.wall_lines, *project.materials]
    subjects += dict.fromkeys(name for one in layers for name in (one.material, one.membrane, one.name) if name)
    for number, document in enumerate(project.documents):
        for word in document.for_:
            if word in subjects or word.lower() in PLAIN or _LIKE_A_NAME.fullmatch(word):
                continue
            known = [*dict.fromkeys((*known_words(), *subjects))]
            if word.lower() not in {one.lower() for one in known}:
                yield Caution(f"documents[{number}].for", _message(word, known))


def known_words() -> tuple[str, ...]:
    """Every word for which a document may be, names of the project file aside."""
    return tuple(dict.fromkeys(_claim_words()))


def _claim_words() -> Iterator[str]:
    from layerfolio.catalogue.expected_documents import claims

    yield from PLAIN
    yield from (word for one in claims() for word in one.words)
    yield from (word for _, words in USUAL for word in words)
    yield from JUDGED
    yield from PAPERS


def _message(word: str, known: list[str]) -> str:
    from difflib import get_close_matches

    from layerfolio.reading.report import quoted

    by_lower = {one.lower(): one for one in known}
    near = get_close_matches(word[:100].lower(), by_lower, 1, NEAR)
    meant = f": did you mean {quoted(by_lower[near[0]])}?" if near else "."
    return f"nothing is called {quoted(word)} and no word of documents is{meant} Words are {', '.join(known_words())}"
