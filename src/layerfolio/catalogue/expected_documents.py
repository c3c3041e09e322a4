"""Which document is expected of a material, an opening or a claim in the country of a code set, and what it has to show."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any, Literal

from layerfolio.catalogue.datum import Origin
from layerfolio.catalogue.files import CatalogueError, load, origin, shown
from layerfolio.home import folder

Kind = Literal["material", "opening", "claim"]
KIND_OF_FILE: dict[str, Kind] = {"openings": "opening", "claims": "claim"}  # every other file is about materials
LISTS = ("materials", "families", "members", "openings", "words", "asked_by")
KEYS = frozenset({"name", "title", "shows", "expected", "gathers", *LISTS})


@dataclass(frozen=True, slots=True)
class Standard:
    """A standard as a label or report names it, and where it was read that this country expects it."""

    text: str
    origin: Origin


@dataclass(frozen=True, slots=True)
class Region:
    """A country, or a group of them, and the codes (folders of shared/codes) whose documents are expected there."""

    name: str
    title: str
    codes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ExpectedDocument:
    """What stands on the paper of one family of material, kind of opening or claim.

    `materials` are names of the catalogue, `families` hatch families, `members` names of framing, `openings` kinds of
    opening; `words` name a claim in a document's `for` and `proves`, `asked_by` in a finding. `gathers`: a claim that stands
    for all rows of openings or insulation.
    """

    name: str
    kind: Kind
    title: str
    shows: str
    standards: dict[str, tuple[Standard, ...]]  # by name of the region
    materials: tuple[str, ...] = ()
    families: tuple[str, ...] = ()
    members: tuple[str, ...] = ()
    openings: tuple[str, ...] = ()
    words: tuple[str, ...] = ()
    asked_by: tuple[str, ...] = ()
    gathers: str = ""

    def expected_in(self, region: Region | None) -> tuple[Standard, ...]:
        """The standards that region expects; empty where none is recorded."""
        return self.standards.get(region.name, ()) if region else ()


@cache
def regions() -> tuple[Region, ...]:
    """All regions, in file order."""
    path = folder("shared") / "evidence" / "regions.yaml"
    return tuple(Region(name, row["title"], tuple(row["codes"])) for name, row in load(path).items())


def region_of(set_id: str) -> Region | None:
    """The region of a code set, by the part before its hyphen; None for a code that no region lists."""
    code = set_id.partition("-")[0]
    return next((one for one in regions() if code in one.codes), None)


@cache
def expected_documents() -> tuple[ExpectedDocument, ...]:
    """Everything that is recorded, file by file in alphabetical order."""
    paths = sorted((folder("shared") / "evidence").glob("*.yaml"))
    found = [one for path in paths if path.stem != "regions" for one in read(path)]
    _each_once(found)
    return tuple(found)


def read(path: Path) -> tuple[ExpectedDocument, ...]:
    """The entries of one file; CatalogueError when one lacks what it must say, or a standard its source or mark."""
    return tuple(_entry(row, KIND_OF_FILE.get(path.stem, "material"), path) for row in load(path) or ())


def _entry(row: Any, kind: Kind, path: Path) -> ExpectedDocument:
    if not isinstance(row, dict) or not all(row.get(key) for key in ("name", "title", "shows")):
        raise CatalogueError(f"{shown(path)}: an entry needs name, title and what the document shows")
    if unknown := sorted(set(map(str, row)) - KEYS):
        raise CatalogueError(f"{shown(path)}: unknown key {', '.join(unknown)} in {row['name']}")
    given = row.get("expected") or {}
    known = {one.name for one in regions()}
    if strange := sorted(set(given) - known):
        raise CatalogueError(f"{shown(path)}: {row['name']} names the region {', '.join(strange)}, which is not described")
    standards = {name: tuple(_standard(one, path) for one in rows) for name, rows in given.items()}
    lists = {key: tuple(row.get(key) or ()) for key in LISTS}
    return ExpectedDocument(
        row["name"], kind, row["title"], row["shows"], standards,
        gathers=row.get("gathers", ""), **lists,
    )  # fmt: skip


def _standard(row: Any, path: Path) -> Standard:
    if not isinstance(row, dict) or not row.get("standard") or not row.get("place"):
        raise CatalogueError(f"{shown(path)}: a standard needs its name and the place where it was read")
    if unknown := sorted(set(map(str, row)) - {"standard", "source", "place", "mark", "via"}):
        raise CatalogueError(f"{shown(path)}: unknown key {', '.join(unknown)} beside {row['standard']}")
    return Standard(row["standard"], origin(row, path))


def _each_once(found: Iterable[ExpectedDocument]) -> None:
    """No name, material, family, member or opening has two entries: nobody could tell which rules."""
    seen: set[tuple[str, str]] = set()
    for one in found:
        lists = {key: getattr(one, key) for key in ("materials", "families", "members", "openings")}
        for mark in [(key, name) for key, names in {"name": (one.name,), **lists}.items() for name in names]:
            if mark in seen:
                raise CatalogueError(f"evidence: {' '.join(mark)} is described twice, again in {one.name}")
            seen.add(mark)


def for_material(name: str, family: str) -> ExpectedDocument:
    """What is expected of a material of the catalogue, else of its hatch family, else of any other material."""
    found = expected_documents()
    by_name = next((one for one in found if name in one.materials), None)
    return by_name or next((one for one in found if family in one.families), None) or named("other")


def for_member(member: str) -> ExpectedDocument | None:
    """What is expected of framing that is a product of its own (a web, a flange); None for plain members."""
    return next((one for one in expected_documents() if member.lower() in one.members), None)


def for_opening(kind: str) -> ExpectedDocument:
    """What is expected of a kind of opening, or of a `join`."""
    found = next((one for one in expected_documents() if kind in one.openings), None)
    return found or named("window")


def claims() -> tuple[ExpectedDocument, ...]:
    """The claims of a whole building, in the order of the register."""
    return tuple(one for one in expected_documents() if one.kind == "claim")


def named(name: str) -> ExpectedDocument:
    """The entry of that name; KeyError when there is none."""
    for one in expected_documents():
        if one.name == name:
            return one
    raise KeyError(name)
