"""Notices: the short texts that say what a sheet is not, what limits it and who decides."""

from dataclasses import dataclass
from functools import cache

from layerfolio.catalogue.files import CatalogueError, load, shown
from layerfolio.home import folder


@dataclass(frozen=True, slots=True)
class Notice:
    """`prints_on` says in words where it stands; `paragraphs` are plain text."""

    id: str
    title: str
    prints_on: str
    paragraphs: tuple[str, ...]

    @property
    def text(self) -> str:
        """All paragraphs in one."""
        return " ".join(self.paragraphs)


@cache
def notice(id: str) -> Notice:
    """The notice of that id (the stem of its file); KeyError when there is none."""
    path = folder("shared") / "notices" / f"{id}.yaml"
    if id not in notice_ids():
        raise KeyError(id)
    row = load(path)
    if not isinstance(row, dict) or row.keys() != {"title", "prints_on", "paragraphs"}:
        raise CatalogueError(f"{shown(path)}: a notice has title, prints_on and paragraphs")
    return Notice(id, row["title"], row["prints_on"], tuple(row["paragraphs"]))


@cache
def notice_ids() -> tuple[str, ...]:
    """The ids of all notices, in alphabetical order."""
    return tuple(sorted(path.stem for path in (folder("shared") / "notices").glob("*.yaml")))


def all_notices() -> tuple[Notice, ...]:
    """Every notice, by id."""
    return tuple(notice(id) for id in notice_ids())
