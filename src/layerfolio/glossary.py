"""Quantities by name: symbol, units, meaning, from shared/glossary.yaml."""

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

    text = (folder("shared") / "glossary.yaml").read_text(encoding="utf-8")
    rows = yaml.load(text, Loader=yaml.CSafeLoader)
    return {
        name: Term(name, row["symbol"][0], str(row["symbol"][1]), row["si"], row["customary"], row["meaning"])
        for name, row in rows.items()
    }


def term(name: str) -> Term:
    """The term of that name; KeyError when the glossary lacks it."""
    return terms()[name]


def symbol(name: str) -> tuple[str, str]:
    """(base, index) of a quantity."""
    found = term(name)
    return found.base, found.index
