"""Reading the data files of the catalogue: one place that knows the loader and the exception."""

from functools import cache
from pathlib import Path
from typing import Any

from layerfolio.catalogue.datum import Mark, Origin
from layerfolio.home import folder

MARKS: tuple[Mark, ...] = ("found", "memory", "derived")  # "given" belongs to project files alone


class CatalogueError(Exception):
    """A data file of the catalogue breaks its own rules; the text names the file, below `shared`."""


def load(path: Path) -> Any:
    """The YAML content of one data file; CatalogueError when it is not readable YAML."""
    import yaml

    try:
        return yaml.load(path.read_text(encoding="utf-8"), Loader=yaml.CSafeLoader)
    except yaml.YAMLError as error:
        raise CatalogueError(f"{shown(path)}: not readable as YAML: {' '.join(str(error).split())}") from error


def shown(path: Path) -> str:
    """The path as an error message names it: below `shared`, with forward slashes."""
    shared = folder("shared")
    return path.relative_to(shared).as_posix() if path.is_relative_to(shared) else path.name


def origin(row: dict[str, Any], path: Path) -> Origin:
    """Source, place and mark of a row of figures; CatalogueError when the row does not say where it comes from."""
    source, mark = row.get("source"), row.get("mark")
    if not source or not isinstance(source, str):
        raise CatalogueError(f"{shown(path)}: a figure has no source: {sorted(map(str, row))}")
    if mark not in MARKS:
        raise CatalogueError(f"{shown(path)}: a figure from {source} has no mark: it needs one of {', '.join(MARKS)}")
    return Origin("catalogue", source, str(row.get("place", "")), mark, via=str(row.get("via", "")))


@cache
def index(name: str) -> dict[str, Path]:
    """File stem to path for every YAML file one level below `shared/<name>`, sorted by stem."""
    found: dict[str, Path] = {}
    for path in sorted((folder("shared") / name).glob("*/*.yaml")):
        if path.stem in found:
            raise CatalogueError(f"{shown(path)}: {path.stem} exists already as {shown(found[path.stem])}")
        found[path.stem] = path
    return dict(sorted(found.items()))
