"""Requirements as data: one file a question, its figures by edition with clause, source, place and mark."""

from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path
from typing import Any

from layerfolio.assembly.types import Assembly
from layerfolio.catalogue.code_sets import CodeSet, code_set
from layerfolio.catalogue.files import MARKS, CatalogueError, load, shown

KEYS = frozenset({"question", "article", "topic", "order", "title", "judge", "subject", "editions"})
FIGURES = frozenset({"clause", "source", "mark"})
WHOLE_BUILDING = "building"


@dataclass(frozen=True, slots=True)
class Requirement:
    """One question of a set. `rule` is the file without its editions; `figures` the row of this edition."""

    id: str
    question: str
    title: str
    topic: str
    judge: str
    order: int
    quantity: str
    clause: str
    source: str
    place: str
    mark: str
    rule: dict[str, Any]
    figures: dict[str, Any]

    @property
    def of_building(self) -> bool:
        return self.rule["subject"] == WHOLE_BUILDING

    @property
    def of_openings(self) -> tuple[str, ...]:
        """The kinds of opening it asks; empty for a requirement on assemblies or on the building."""
        subject = self.rule["subject"]
        return tuple(subject["openings"]) if isinstance(subject, dict) else ()

    def asks(self, assembly: Assembly) -> bool:
        """Whether one of the subject's rows describes the assembly."""
        subject = self.rule["subject"]
        return isinstance(subject, list) and any(_fits(row, assembly) for row in subject)


def _fits(row: dict[str, Any], assembly: Assembly) -> bool:
    if assembly.kind not in row["kinds"] or assembly.faces not in row.get("faces", (assembly.faces,)):
        return False
    if row.get("insulated") and not any(layer.insulating and layer.counts for layer in assembly.layers):
        return False
    if row.get("hung") and not _hangs(assembly):
        return False
    if "family" in row and not any(layer.family == row["family"] for layer in assembly.layers):
        return False
    together = set(row.get("serves", ()))
    if together and not any(together <= set(layer.serves) for layer in assembly.layers):
        return False
    return row.get("slope_from", 0) <= assembly.slope < row.get("slope_below", 181)


def _hangs(assembly: Assembly) -> bool:
    """Whether cladding hangs outside insulation."""
    from layerfolio.studies.joint import joint

    return joint(assembly) is not None


@cache
def requirements(set_id: str) -> tuple[Requirement, ...]:
    """All requirements of a set, in their printed order. CatalogueError for one without clause, source or mark."""
    found = code_set(set_id)
    own = _in_folder(found.overlay or found.folder, found)
    if found.overlay:
        replaced, articles = {one.question for one in own}, tuple(found.content.get("replaces_articles", ()))
        kept = (one for one in requirements(found.base) if one.question not in replaced)
        own += [_as_overlaid(one, found) for one in kept if not one.rule["article"].startswith(articles or ("-",))]
    return tuple(sorted(own, key=lambda one: (one.order, one.id)))


def _in_folder(folder: Path, edition: CodeSet) -> list[Requirement]:
    paths = [path for path in sorted(folder.glob("*/*.yaml")) if _asks(path)]
    read = (requirement(one, path, edition) for path in paths for one in _each(load(path), path))
    return [one for one in read if one]


def _as_overlaid(one: Requirement, edition: CodeSet) -> Requirement:
    """A requirement of the set below an overlay, under the id of the overlay."""
    return replace(one, id=f"{edition.set_id}/{one.id.partition('/')[2]}")


def _asks(path: Path) -> bool:
    return path.parent.name != "method"


def _each(content: Any, path: Path) -> list[Any]:
    """The requirements of a file: itself, or each of its list with what it shares with the others."""
    if not isinstance(content, dict) or "requirements" not in content:
        return [content]
    if content.keys() - {"shared", "requirements"}:
        raise CatalogueError(f"{shown(path)}: beside `requirements` stands `shared` alone")
    return [_merged(content.get("shared", {}), one) for one in content["requirements"]]


def _merged(shared: dict[str, Any], own: dict[str, Any]) -> dict[str, Any]:
    """One requirement of a list; figures by edition are put together edition by edition, `figures` hold for all of them."""
    common, said, always = shared.get("editions", {}), own.get("editions", {}), own.get("figures", {})
    names = said if own.get("only_these_editions") else common | said
    editions = {name: common.get(name, {}) | always | (said.get(name) or {}) for name in names}
    return shared | own | {"editions": editions}


def requirement(content: Any, path: Path, edition: CodeSet) -> Requirement | None:
    """One file as a requirement of that edition; None when the edition does not ask it."""
    if not isinstance(content, dict) or not content.keys() >= KEYS:
        missing = sorted(KEYS - set(content or ()))
        raise CatalogueError(f"{shown(path)}: a requirement needs {', '.join(missing)}")
    figures = content["editions"].get(edition.set_id)
    if figures is None:
        return None
    for row in (figures, *([content["reduction"]] if "reduction" in content else [])):
        if not all(row.get(key) for key in FIGURES) or row["mark"] not in MARKS:
            raise CatalogueError(f"{shown(path)}: figures need clause, source and a mark, one of {', '.join(MARKS)}")
    if not figures.get("place") and not all(table.get("place") for table in figures.get("tables", [{}])):
        raise CatalogueError(f"{shown(path)}: figures need the place where they stand")
    rule = {key: value for key, value in content.items() if key != "editions"}
    article = figures.get("article", content["article"])  # a later edition may have renumbered it
    return Requirement(
        f"{edition.set_id}/{article}/{content['question']}", content["question"], content["title"],
        content["topic"], content["judge"], content["order"], content.get("quantity", ""), figures["clause"],
        figures["source"], figures.get("place", ""), figures["mark"], rule, figures,
    )  # fmt: skip
