"""What the yield equations take beside the project file: steels, coefficients, species. Read only where fasteners are studied."""

from dataclasses import dataclass
from functools import cache
from typing import Any

from layerfolio.catalogue.datum import Datum, Origin
from layerfolio.catalogue.files import load, origin
from layerfolio.home import folder
from layerfolio.units.table import unit_factor

UNITS = {"psi": "pressure", "ksi": "pressure", "in": "length"}


@dataclass(frozen=True, slots=True)
class PublishedRow:
    """A row of a published table with its own least penetration: outer diameter and penetration in m."""

    kind: str
    diameter: float
    penetration: float
    origin: Origin


@dataclass(frozen=True, slots=True)
class Species:
    """A species group of lumber; `names` are words of a project file that name its stamp."""

    title: str
    names: tuple[str, ...]
    gravity: Datum


@dataclass(frozen=True, slots=True)
class FastenerData:
    """SI figures. `figures` by dotted name ("bearing.small"); `steels`: (outer diameter up to, F_yb), rising; `taken_as`: title
    of the species group that a bare name of wood is taken as.
    """

    figures: dict[str, Datum]
    steels: tuple[tuple[float, Datum], ...]
    rows: tuple[PublishedRow, ...]
    species: tuple[Species, ...]
    taken_as: dict[str, str]

    def steel(self, diameter: float) -> Datum | None:
        """Bending yield strength by outer diameter, m; None outside the rows."""
        if diameter < self.figures["steel.least"].value * 0.999:
            return None
        return next((found for most, found in self.steels if diameter <= most * 1.001), None)

    def gravity(self, material: str) -> tuple[Species | None, bool]:
        """The species group of a material's name; second, whether the name says the stamp or the group is only taken."""
        sure = next((one for one in self.species if material in one.names), None)
        if sure is not None:
            return sure, True
        return next((one for one in self.species if one.title == self.taken_as.get(material)), None), False

    def row(self, kind: str, diameter: float) -> PublishedRow | None:
        """The published row of the thickest fastener of that kind which this one is not thinner than (to 1 %)."""
        fits = [one for one in self.rows if one.kind == kind and diameter >= one.diameter * 0.99]
        return max(fits, key=lambda one: one.diameter, default=None)


@cache
def fastener_data() -> FastenerData:
    """The figures of shared/structure/fastening.yaml; CatalogueError for one without source or mark."""
    path = folder("shared") / "structure" / "fastening.yaml"
    content = load(path)

    def figure(row: dict[str, Any]) -> Datum:
        where, unit = origin(row, path), row.get("unit", "1")
        factor = unit_factor(unit, UNITS[unit]) if unit != "1" else 1.0
        return Datum(float(row["value"]) * factor, Origin("default", where.source, where.place, where.mark, via=where.via))

    inch = unit_factor("in", "length")
    rows = (
        PublishedRow(one["kind"], one["diameter"] * inch, one["penetration"] * inch, origin(one, path))
        for one in content["published_rows"]
    )
    return FastenerData(
        dict(_flat(content, "", figure)),
        tuple((row["to"] * inch, figure(row)) for row in content["steel"]["rows"]),
        tuple(rows),
        tuple(Species(one["title"], tuple(one["names"]), figure(one)) for one in content["species"]),
        content["taken_as"],
    )


def _flat(content: dict[str, Any], name: str, figure: Any) -> Any:
    """Every single figure under its dotted name."""
    for key, row in content.items():
        if isinstance(row, dict):
            yield from [(f"{name}{key}", figure(row))] if "value" in row else _flat(row, f"{name}{key}.", figure)
