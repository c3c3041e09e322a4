"""Materials of the catalogue: one file each, so that only the files a project names are read."""

from functools import cache
from pathlib import Path
from typing import Any

from layerfolio.catalogue.datum import Datum
from layerfolio.catalogue.figures import Figure, read_row
from layerfolio.catalogue.files import CatalogueError, index, load, shown
from layerfolio.catalogue.types import Material, Published, Vapour

__all__ = ["Material", "Published", "Vapour", "material", "names", "nearest", "read"]

FLAGS = ("insulating", "metal", "timber", "membrane")
LISTS = ("figures", "also_published", "decided_by_report", "needs")
KEYS = frozenset({"title", "family", "absorbent", "note", *LISTS, *FLAGS})


def names() -> tuple[str, ...]:
    """The names of all materials, in alphabetical order."""
    return tuple(index("materials"))


@cache
def material(name: str) -> Material:
    """The material of that name (the stem of its file). KeyError for an unknown name, CatalogueError for a bad file."""
    return read(index("materials")[name])


def read(path: Path) -> Material:
    """One material file."""
    content = load(path)
    if not isinstance(content, dict) or not content.get("title") or not content.get("family"):
        raise CatalogueError(f"{shown(path)}: a material needs a title and a hatch family")
    if unknown := sorted(set(map(str, content)) - KEYS):
        raise CatalogueError(f"{shown(path)}: unknown key {', '.join(unknown)}")
    figures = [figure for row in content.get("figures") or () for figure in read_row(row, path)]
    if not figures and not content.get("needs"):
        raise CatalogueError(f"{shown(path)}: no figure, and nothing said about what is needed")
    resistance = _only("resistance", figures, path)
    return Material(
        name=path.stem,
        title=content["title"],
        family=content["family"],
        conductivity=_datum("conductivity", figures, path),
        density=_datum("density", figures, path),
        specific_heat=_datum("specific_heat", figures, path),
        resistance=resistance and resistance.datum,
        resistance_at=resistance and resistance.at_thickness,
        vapour=_vapour(figures, path),
        also_published=tuple(_published(content.get("also_published") or (), path)),
        absorbent=content.get("absorbent", True),
        decided_by_report=tuple(content.get("decided_by_report") or ()),
        needs=tuple(content.get("needs") or ()),
        cladding=path.parent.name == "claddings",
        note=content.get("note", ""),
        **{flag: content.get(flag, False) for flag in FLAGS},
    )


def _only(quantity: str, figures: list[Figure], path: Path) -> Figure | None:
    found = [one for one in figures if one.quantity == quantity]
    if len(found) > 1:
        raise CatalogueError(f"{shown(path)}: {quantity} stands twice; the second belongs under also_published")
    return found[0] if found else None


def _datum(quantity: str, figures: list[Figure], path: Path) -> Datum | None:
    found = _only(quantity, figures, path)
    return found.datum if found else None


def _vapour(figures: list[Figure], path: Path) -> Vapour | None:
    cups: dict[str, Figure] = {}
    for one in figures:
        if one.quantity in ("mu", "s_d", "permeance"):
            if one.cup in cups:
                raise CatalogueError(f"{shown(path)}: two vapour figures for one cup; one belongs under also_published")
            cups[one.cup] = one
    if not cups:
        return None
    first = next(iter(cups.values()))
    if any((one.quantity, one.at_thickness) != (first.quantity, first.at_thickness) for one in cups.values()):
        raise CatalogueError(f"{shown(path)}: dry and wet vapour figures must be of one kind and one thickness")
    if "" in cups:
        if len(cups) > 1:
            raise CatalogueError(f"{shown(path)}: a vapour figure without a cup serves both, none may stand beside it")
        return Vapour(first.quantity, first.datum, first.datum, True, first.at_thickness)
    dry, wet = (cups[cup].datum if cup in cups else None for cup in ("dry", "wet"))
    return Vapour(first.quantity, dry, wet, False, first.at_thickness)


def _published(rows: Any, path: Path) -> list[Published]:
    found = []
    for row in rows:
        for one in read_row(row, path):
            if not one.what:
                raise CatalogueError(f"{shown(path)}: a figure under also_published must say what it is")
            what = f"{one.what}, {one.datum.note}" if one.datum.note.endswith("published") else one.what
            found.append(Published(what, one.quantity, one.cup, one.datum, one.at_thickness))
    return found


def nearest(name: str, count: int = 3) -> tuple[str, ...]:
    """Names a person may have meant, the likeliest first; empty when nothing comes near."""
    from difflib import get_close_matches

    asked = "-".join(name.strip().casefold().replace("_", " ").split())
    words = [word for word in asked.split("-") if word]
    close = get_close_matches(asked, names(), count, 0.65)
    holding = [one for one in names() if words and all(word in one.split("-") for word in words)]
    parts = [one for one in names() if len(words) > 1 and sum(word in one.split("-") for word in words) > 1]
    found = tuple(dict.fromkeys((*close, *holding, *parts)))[:count]
    return found or _by_title(words)[:count]


def _by_title(words: list[str]) -> tuple[str, ...]:
    """Names of the materials whose title holds every one of the words."""
    if not words:
        return ()
    titles = {name: material(name).title.casefold() for name in names()}
    return tuple(name for name, title in titles.items() if all(word in title for word in words))
