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
        loader = yaml.CSafeLoader(path.read_text(encoding="utf-8"))
        return _plain(loader.get_single_node(), loader)
    except yaml.YAMLError as error:
        raise CatalogueError(f"{shown(path)}: not readable as YAML: {' '.join(str(error).split())}") from error


def _plain(node: Any, loader: Any) -> Any:
    """What the loader's own constructor would give; maps, lists and texts in half its time, all else by the loader."""
    if node is None:
        return None
    tag = node.tag.rpartition(":")[2]
    if tag == "str":
        return node.value
    if tag == "seq":
        return [_plain(one, loader) for one in node.value]
    if tag != "map":
        return loader.construct_object(node, deep=True)
    if any(key.tag.endswith(":merge") for key, _ in node.value):
        loader.flatten_mapping(node)
    return {_plain(key, loader): _plain(value, loader) for key, value in node.value}


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
