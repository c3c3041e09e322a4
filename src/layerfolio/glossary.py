"""Quantities by name: symbol, units, meaning, from shared/glossary.yaml."""

import re
from dataclasses import dataclass
from functools import cache

from layerfolio.home import folder


@dataclass(frozen=True, slots=True)
class Term:
    """One quantity. `base` prints oblique, `index` upright and lowered."""

    name: str
    base: str
    index: str
    si: str
    customary: str
    meaning: str

    @property
    def plain(self) -> str:
        """The symbol in one line of plain text."""
        return f"{self.base}_{self.index}" if self.index else self.base


@cache
def terms() -> dict[str, Term]:
    """Every term by its name in code, in file order."""
    import yaml

    return {name: _term(name, row) for name, row in yaml.load(_text(), Loader=yaml.CSafeLoader).items()}


@cache
def term(name: str) -> Term:
    """The term of that name; KeyError when the glossary lacks it.

    A term stands on one line, which is read alone: findings need a few units, not the whole glossary.
    """
    import yaml

    line = re.search(rf"^{re.escape(name)}: +({{.*}})$", _text(), re.MULTILINE)
    return _term(name, yaml.load(line[1], Loader=yaml.CSafeLoader)) if line else terms()[name]


@cache
def _text() -> str:
    return (folder("shared") / "glossary.yaml").read_text(encoding="utf-8")


def _term(name: str, row: dict) -> Term:
    return Term(name, row["symbol"][0], str(row["symbol"][1]), row["si"], row["customary"], row["meaning"])


def symbol(name: str) -> tuple[str, str]:
    """(base, index) of a quantity."""
    found = term(name)
    return found.base, found.index
