"""Rows of a code's method tables, read from shared/codes/<code>/method."""

from dataclasses import dataclass
from pathlib import Path
from typing import Any, Literal

from layerfolio.catalogue.code_sets import code_origin
from layerfolio.catalogue.datum import Datum, Origin
from layerfolio.catalogue.files import CatalogueError, load, shown


@dataclass(frozen=True, slots=True)
class Row:
    """A figure at a thickness or spacing, m."""

    at: float
    datum: Datum


@dataclass(frozen=True, slots=True)
class Film:
    """An air film, m2.K/W. `direction` may be `any`; `faces` is empty where the film holds for whatever is outside."""

    side: str
    direction: str
    faces: str
    datum: Datum


@dataclass(frozen=True, slots=True)
class Framing:
    """Shares of one frame by spacing."""

    frame: str
    members: tuple[str, ...]
    title: str
    rows: tuple[Row, ...]


@dataclass(frozen=True, slots=True)
class Prescribed:
    """What a code prints for a material: `per_metre` (m.K/W), `listed` resistances by thickness, or one `as_built`."""

    name: str
    materials: tuple[str, ...]
    per_metre: Datum | None
    listed: tuple[Row, ...]
    as_built: Datum | None


@dataclass(frozen=True, slots=True)
class Chosen:
    """A decision that the set's data takes, in words, for the list of choices."""

    text: str
    because: str
    source: str


@dataclass(frozen=True, slots=True)
class Ventilation:
    """How a cavity with openings counts, and the limits of opening (mm2/m) between which the set interpolates."""

    counts_as: Literal["unventilated", "slightly ventilated", "ventilated"]
    still_up_to: float
    ventilated_from: float
    because: str
    origin: Origin


@dataclass(frozen=True, slots=True)
class CodeFigure:
    """What the code prints for a material: its resistance (m2.K/W) or, per metre, its resistivity (m.K/W)."""

    resistance: Datum | None = None
    resistivity: Datum | None = None


def read(path: Path) -> dict[str, Any]:
    """The content of a table file; empty when the code has no such table."""
    return load(path) if path.is_file() else {}


def figure(
    row: dict[str, Any], above: dict[str, Any], path: Path, *, key: str = "value", scale: float = 1.0, note: str = ""
) -> Datum:
    """The figure of a row, times `scale`; CatalogueError when it is no number or has no source, place and mark."""
    value = row.get(key)
    if isinstance(value, bool) or not isinstance(value, int | float) or value < 0:
        raise CatalogueError(f"{shown(path)}: {key} is {value!r}, a number is needed")
    return Datum(round(value * scale, 12), code_origin(row, above, path), note)


def rows(given: list[dict[str, Any]], above: dict[str, Any], path: Path, **how: Any) -> tuple[Row, ...]:
    """Figures by millimetres, from small to large."""
    found = tuple(Row(row["mm"] / 1000, figure(row, above, path, **how)) for row in given)
    if [row.at for row in found] != sorted({row.at for row in found}):
        raise CatalogueError(f"{shown(path)}: rows must rise by mm, each once")
    return found


def films(path: Path) -> tuple[Film, ...]:
    """The air films of a code."""
    given = read(path)["films"]
    return tuple(Film(x["side"], x["direction"], x.get("faces", ""), figure(x, {}, path)) for x in given)


def air_spaces(path: Path) -> dict[str, tuple[Row, ...]]:
    """The still air spaces of a code by direction of heat flow."""
    content = read(path)
    return {direction: rows(given, content, path) for direction, given in content["rows"].items()}


def framings(path: Path) -> tuple[Framing, ...]:
    """The framing shares of a code."""
    content = read(path)
    return tuple(
        Framing(
            one["frame"], tuple(one["members"]), one["title"],
            rows(one["spacings"], content | one, path, key="per_cent", scale=0.01, note=one["title"]),
        )
        for one in content.get("rows", ())
    )  # fmt: skip


def prescribed(path: Path) -> tuple[Prescribed, ...]:
    """The materials of a code's own table."""
    content = read(path)
    found = []
    for one in content.get("rows", ()):
        name = one["name"]
        per_mm, as_built = one.get("per_mm"), one.get("as_built")
        if not (per_mm or as_built or one.get("listed")):
            raise CatalogueError(f"{shown(path)}: {name} has no figure")
        found.append(Prescribed(
            name, tuple(one.get("for", ())),
            figure(per_mm, content, path, scale=1000, note=name) if per_mm else None,
            rows(one.get("listed", []), content, path, note=name),
            figure(as_built, content, path, note=name) if as_built else None,
        ))  # fmt: skip
    return tuple(found)
