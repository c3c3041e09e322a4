"""The method tables of a code set: air films, air spaces, framing shares, the code's own materials, rounding."""

from dataclasses import dataclass, replace
from functools import cache
from typing import Any, Literal

from layerfolio.catalogue import code_rows
from layerfolio.catalogue.code_rows import Chosen, CodeFigure, Film, Framing, Prescribed, Row, Ventilation
from layerfolio.catalogue.code_sets import code_origin, code_set
from layerfolio.catalogue.datum import Datum
from layerfolio.catalogue.files import CatalogueError

Side = Literal["inside", "outside"]
Direction = Literal["up", "horizontal", "down"]

WEAKEST_FIRST = ("memory", "derived", "found")

LISTED_WITHIN = 0.00025
"""A listed thickness holds for layers that differ from it by no more than this, m: inches and millimetres round."""


@dataclass(frozen=True, slots=True)
class CodeTables:
    """The method tables of one set. Lookups give None where the code has no figure; SI throughout."""

    set_id: str
    method: str
    decimals: int | None  # to which the final resistance is rounded before it is compared; None: not at all
    _films: tuple[Film, ...]
    _film_rules: dict[str, Any]
    _spaces: dict[str, Any]
    _space_rows: dict[str, tuple[Row, ...]]
    _framings: tuple[Framing, ...]
    _spacing_within: float
    _materials: tuple[Prescribed, ...]

    def film(self, side: Side, direction: Direction, faces: str = "outside air", ventilated: bool = False) -> Datum:
        """Resistance of the air film, m2.K/W. `ventilated`: the assembly has a ventilated cavity."""
        if side == "outside" and self._as_inside(faces, ventilated):
            origin = code_origin(self._film_rules["as_inside"], {}, self._path("films"))
            return replace(self.film("inside", direction), origin=origin, note="as the film of an inner surface")
        fitting = [one for one in self._films if one.side == side and one.direction in (direction, "any")]
        found = [one for one in fitting if one.faces == faces] or [one for one in fitting if not one.faces]
        if not found:
            raise CatalogueError(f"{self.set_id}: no {side} film for heat flowing {direction}")
        return found[0].datum

    def film_choice(
        self, side: Side, direction: Direction, faces: str = "outside air", ventilated: bool = False
    ) -> Chosen | None:
        """The words for an outside film that the set's data chose; None where the code's table says it plainly."""
        if side == "inside":
            return None
        value = f"{self.film(side, direction, faces, ventilated).value:g} m²·K/W"
        for row in self._film_rules.get("choices", ()):
            when = row["when"]
            if when.get("ventilated", ventilated) == ventilated and when.get("faces", faces) == faces:
                return Chosen(row["text"].format(value=value), row["because"], row["source"])
        return None

    def _as_inside(self, faces: str, ventilated: bool) -> bool:
        rule = self._film_rules.get("as_inside")
        return bool(rule) and faces != "ground" and ((ventilated and rule["ventilated"]) or faces in rule["faces"])

    def air_space(self, thickness: float, direction: Direction) -> Datum | None:
        """Resistance of a still air space (m), straight between two rows; beyond the last row the last row's."""
        rows = self._space_rows[direction]
        if thickness < rows[0].at - 1e-9:
            return None
        below = max((row for row in rows if row.at <= thickness + 1e-9), key=lambda row: row.at)
        above = min((row for row in rows if row.at >= thickness - 1e-9), key=lambda row: row.at, default=below)
        if above.at <= below.at:
            past = thickness > below.at + 1e-9
            return replace(below.datum, note=f"as the last row, {_mm(below)}") if past else below.datum
        part = (thickness - below.at) / (above.at - below.at)
        value = below.datum.value + part * (above.datum.value - below.datum.value)
        weaker = min(below.datum, above.datum, key=lambda one: WEAKEST_FIRST.index(one.origin.mark))
        ends = " and ".join(f"{_mm(row)} ({row.datum.value:g} m²·K/W)" for row in (below, above))
        return Datum(value, weaker.origin, f"between {ends}")

    def air_space_missing(self, direction: Direction) -> str:
        """Why `air_space` gave None."""
        return self._spaces["thinner"].format(first=_mm(self._space_rows[direction][0]))

    def slightly_ventilated(self, openings: float) -> Ventilation:
        """How a cavity counts whose openings to the outside are `openings`, mm2/m."""
        rule = self._spaces["ventilation"]
        still, ventilated = rule["still_up_to"], rule["ventilated_from"]
        counts: Literal["unventilated", "slightly ventilated", "ventilated"] = "slightly ventilated"
        if openings >= ventilated:
            counts = "ventilated"
        elif openings <= still:
            counts = "unventilated"
        origin = code_origin(rule, {}, self._path("air-spaces"))
        return Ventilation(counts, still, ventilated, rule["because"], origin)

    def framing_share(self, frame: str, member: str, spacing: float) -> Datum | None:
        """Share of the area that framing takes by the set's own table; None without a row for frame and spacing (m)."""
        for one in self._framings:
            if one.frame == frame and member in one.members:
                near = [row for row in one.rows if abs(row.at - spacing) <= self._spacing_within + 1e-9]
                if near:
                    row = min(near, key=lambda row: abs(row.at - spacing))
                    return replace(row.datum, note=f"{one.title}, framing {_mm(row)} on centre")
        return None

    def material(self, name: str, thickness: float | None) -> CodeFigure | None:
        """What the code prints for a catalogue material of that thickness (m); None where it prints nothing."""
        return next((_of_thickness(one, thickness) for one in self._materials if name in one.materials), None)

    def listed(self, name: str, thickness: float | None = None) -> CodeFigure:
        """A row of the material table by its own name, as worked examples use it; KeyError without such a row."""
        found = next((one for one in self._materials if one.name == name), None)
        figure = _of_thickness(found, thickness) if found else None
        if figure is None:
            raise KeyError(name)
        return figure

    def material_names(self) -> tuple[str, ...]:
        """Names of catalogue materials that the code's table speaks of, in its order."""
        return tuple(name for one in self._materials for name in one.materials)

    def _path(self, table: str):
        return code_set(self.set_id).folder / "method" / f"{table}.yaml"


def _of_thickness(one: Prescribed, thickness: float | None) -> CodeFigure | None:
    if one.as_built:
        return CodeFigure(resistance=one.as_built)
    if thickness is None:
        return None
    near = [row for row in one.listed if abs(row.at - thickness) <= LISTED_WITHIN]
    if near:
        return CodeFigure(resistance=min(near, key=lambda row: abs(row.at - thickness)).datum)
    return CodeFigure(resistivity=one.per_metre) if one.per_metre else None


def _mm(row: Row) -> str:
    return f"{row.at * 1000:g} mm"


@cache
def load(set_id: str) -> CodeTables:
    """The tables of a set; KeyError for an unknown set, CatalogueError for a figure without source, place or mark."""
    found = code_set(set_id)
    method = found.folder / "method"
    films = code_rows.read(method / "films.yaml")
    spaces = code_rows.read(method / "air-spaces.yaml")
    framing = code_rows.read(method / "framing.yaml")
    return CodeTables(
        set_id, found.content["method"], found.content.get("rounding", {}).get("decimals"),
        code_rows.films(method / "films.yaml"), films, spaces, code_rows.air_spaces(method / "air-spaces.yaml"),
        code_rows.framings(method / "framing.yaml"), framing.get("within", 0) / 1000,
        code_rows.prescribed(method / "materials.yaml"),
    )  # fmt: skip
