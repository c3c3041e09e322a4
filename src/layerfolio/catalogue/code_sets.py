"""The codes of shared/codes: their editions, and the file that says what a code applies to."""

import re
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from layerfolio.catalogue.datum import Origin
from layerfolio.catalogue.files import MARKS, CatalogueError, load, shown
from layerfolio.home import folder


@dataclass(frozen=True, slots=True)
class CodeSet:
    """One edition of a code. `content` is the code's own file, `edition` the edition's row in it.

    A variant of a state or province names the set that it stands over (`overlay_of`): then `base` is that set's id, `folder`
    that set's folder, and `overlay` the folder of the variant, whose requirements replace those of the same question.
    """

    set_id: str
    title: str
    short: str
    folder: Path
    content: dict[str, Any]
    edition: dict[str, Any]
    base: str = ""
    overlay: Path | None = None


def code_folder(set_id: str) -> Path:
    """The folder of a set's tables: shared/codes/<what stands before the hyphen>, or that of the set below an overlay."""
    own = _own_folder(set_id)
    below = _content(own / "code.yaml").get("overlay_of", "") if (own / "code.yaml").is_file() else ""
    return _own_folder(below) if below else own


def _own_folder(set_id: str) -> Path:
    return folder("shared") / "codes" / set_id.partition("-")[0]


@cache
def _content(path: Path) -> dict[str, Any]:
    content = load(path)
    if isinstance(content, dict) and "overlay_of" in content:
        below = _content(_own_folder(content["overlay_of"]) / "code.yaml")
        content = {key: row for key, row in below.items() if key not in content.get("leaves_out", ())} | content
    wanted = {"code", "title", "short", "jurisdiction", "publisher", "method", "editions", "applies"}
    if not isinstance(content, dict) or not wanted <= content.keys():
        raise CatalogueError(f"{shown(path)}: a code needs {', '.join(sorted(wanted))}")
    return content


_CARRIED = re.compile(r"^  - id: (\S+)\n    title: .+\n    carried: true$", re.MULTILINE)


@cache
def set_ids() -> tuple[str, ...]:
    """Every set whose figures are carried, in alphabetical order.

    Asked by every command, so the ids are picked out of the text: reading all codes to find one would cost more than judging it.
    """
    paths = (folder("shared") / "codes").glob("*/code.yaml")
    return tuple(sorted(name for path in paths for name in _CARRIED.findall(path.read_text(encoding="utf-8"))))


@cache
def code_set(set_id: str) -> CodeSet:
    """The set of that id; KeyError when it is unknown or not carried."""
    if set_id not in set_ids():
        raise KeyError(set_id)
    own = _own_folder(set_id)
    content = _content(own / "code.yaml")
    edition = next(one for one in content["editions"] if one["id"] == set_id)
    below = content.get("overlay_of", "")
    return CodeSet(
        set_id, edition["title"], content["short"], code_folder(set_id), _as_sure(content, edition), edition, below,
        own if below else None,
    )  # fmt: skip


def _as_sure(content: dict[str, Any], edition: dict[str, Any]) -> dict[str, Any]:
    """The code's own file with the parts that were not read for this edition marked so."""

    def unread(row: dict[str, Any]) -> dict[str, Any]:
        return {key: value for key, value in row.items() if key != "via"} | {"mark": "memory", "source": edition["id"]}

    parts = {}
    for key in edition.get("from_memory", ()):
        part = content[key]
        nested = all(isinstance(row, dict) for row in part.values())
        parts[key] = {name: unread(row) for name, row in part.items()} if nested else unread(part)
    return content | parts


def zones(set_id: str) -> tuple[str, ...]:
    """The names of the set's climate zones, from mild to cold; empty when it has none."""
    rows = code_set(set_id).content.get("zones", {}).get("rows", ())
    return tuple(str(row["zone"]) for row in rows)


def code_origin(row: dict[str, Any], above: dict[str, Any], path: Path) -> Origin:
    """Source, place and mark of a figure, its row first, then what stands above it in the file.

    CatalogueError when one of the three is missing: such a figure does not load.
    """
    said = {key: row.get(key, above.get(key)) for key in ("source", "place", "mark")}
    for key, value in said.items():
        if not value:
            raise CatalogueError(f"{shown(path)}: a figure has no {key}: {row}")
    if said["mark"] not in MARKS:
        raise CatalogueError(f"{shown(path)}: {said['mark']!r} is no mark; it is one of {', '.join(MARKS)}")
    return Origin("code", said["source"], str(said["place"]), said["mark"], via=str(row.get("via", "")))
