"""Published sources by key: where a figure or a formula can be looked up."""

from dataclasses import dataclass, fields
from functools import cache

from layerfolio.catalogue.files import CatalogueError, load, shown
from layerfolio.home import folder


@dataclass(frozen=True, slots=True)
class Source:
    """A publication. `short` is how tables and steps print it; `read` says what of it was read, and how."""

    key: str
    short: str
    title: str
    publisher: str
    year: int | None
    what: str
    read: str
    address: str = ""
    licence: str = ""


@cache
def all_sources() -> dict[str, Source]:
    """Every source by key, sorted: shared/sources.yaml and the sources.yaml of each code; a key stands once."""
    shared = folder("shared")
    found: dict[str, Source] = {}
    for path in (shared / "sources.yaml", *sorted(shared.glob("codes/*/sources.yaml"))):
        for key, row in (load(path) or {}).items():
            if key in found:
                raise CatalogueError(f"{shown(path)}: the source {key} is described twice")
            found[key] = _source(key, row, shown(path))
    return dict(sorted(found.items()))


def _source(key: str, row: dict, file: str) -> Source:
    known = {one.name for one in fields(Source)} - {"key"}
    wanted = {"short", "title", "publisher", "year", "what", "read"}
    if not isinstance(row, dict) or not wanted <= row.keys() <= known:
        raise CatalogueError(f"{file}: {key} needs {', '.join(sorted(wanted))} and may have address and licence")
    return Source(key, **row)


def source(key: str) -> Source:
    """The source of that key; KeyError when it is not described."""
    return all_sources()[key]


def printed(key: str, place: str = "") -> str:
    """How a source and a place in it print: "ISO 6946:2017, 6.7.2". A person's own words print as they are."""
    found = all_sources().get(key)
    return ", ".join(part for part in (found.short if found else key, place) if part)
