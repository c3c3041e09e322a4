"""What a set adds to the plain total, or leaves out: corrections and unheated spaces. Read only where a project states one."""

from dataclasses import dataclass
from functools import cache
from typing import Any

from layerfolio.catalogue.code_sets import code_origin, code_set
from layerfolio.catalogue.datum import Datum
from layerfolio.catalogue.files import load


@dataclass(frozen=True, slots=True)
class Rule:
    """Whether the set counts them; if not, why and where it says so."""

    counted: bool
    because: str
    source: str  # "key, place"


@dataclass(frozen=True, slots=True)
class Completions:
    """Of one set. Figures in SI, empty where the set does not count them."""

    corrections: Rule
    spaces: Rule
    dropped_below: Datum | None
    through: Datum | None
    poor_below: Datum | None
    drainage: Datum | None
    conductivities: dict[str, Datum]
    voids: dict[int, Datum]
    roof_spaces: dict[str, Datum]


@cache
def completions(set_id: str) -> Completions:
    """What the set of that id adds; CatalogueError for a figure without source, place or mark."""
    path = code_set(set_id).folder / "method" / "completions.yaml"
    content = load(path)

    def figure(row: dict[str, Any] | None) -> Datum | None:
        return None if row is None else Datum(float(row["value"]), code_origin(row, {}, path))

    def figures(rows: dict[Any, dict]) -> dict[Any, Datum]:
        return {word: figure(row) for word, row in rows.items()}  # type: ignore[misc]

    def rule(row: dict[str, Any]) -> Rule:
        source = ", ".join(part for part in (row.get("source"), row.get("place")) if part)
        return Rule(bool(row["counted"]), row.get("because", ""), source)

    corrections, spaces = content["corrections"], content["spaces"]
    return Completions(
        rule(corrections),
        rule(spaces),
        *(figure(corrections.get(key)) for key in ("dropped_below", "through", "poor_below", "drainage")),
        figures(corrections.get("conductivities", {})),
        figures(corrections.get("voids", {})),
        figures(spaces.get("roof_spaces", {})),
    )
