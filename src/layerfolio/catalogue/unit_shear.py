"""Nominal unit shear of walls with wood panels, from shared/structure/unit-shear.yaml. SI figures."""

from dataclasses import dataclass
from functools import cache
from typing import Any

from layerfolio.catalogue.datum import Origin
from layerfolio.catalogue.files import load, origin
from layerfolio.home import folder
from layerfolio.units.table import unit_factor

INCH = unit_factor("in", "length")
PLF = unit_factor("lbf/ft", "line_load")
SLACK = 1.2e-4
"""Metres: 11 mm is sold as 7/16 in, 11.1 mm; a figure printed in inches is met within a tenth of a millimetre."""
DIAMETER = 0.03
"""Part by which a metric nail may be thinner than the common nail it stands for: 3.25 mm for 0.131 in."""


@dataclass(frozen=True, slots=True)
class ShearRow:
    """One panel with one nail: nominal figures N/m by edge spacing (m), the widest first."""

    grade: str
    thickness: float
    nail: str
    spacings: tuple[float, ...]
    seismic: tuple[float, ...]
    wind: tuple[float, ...]
    origin: Origin

    def at(self, spacing: float) -> int | None:
        """Number of the widest spacing that is at least the stated one; None where it is wider than all of them."""
        return next((n for n in reversed(range(len(self.spacings))) if self.spacings[n] >= spacing - SLACK), None)


@dataclass(frozen=True, slots=True)
class Nail:
    name: str
    penetration: float
    length: float
    diameter: float


@dataclass(frozen=True, slots=True)
class ShearTable:
    rows: tuple[ShearRow, ...]
    nails: tuple[Nail, ...]  # thin ones first
    field: float
    content: dict[str, Any]

    def nail(self, length: float, diameter: float, thickness: float) -> Nail | None:
        """The thickest common nail that it stands for: as thick within `DIAMETER`, deep enough in the framing."""
        fits = [
            one for one in self.nails
            if diameter >= one.diameter * (1 - DIAMETER) and length - thickness >= one.penetration - SLACK
        ]  # fmt: skip
        return fits[-1] if fits else None

    def row(self, grade: str, thickness: float, nail: Nail) -> ShearRow | None:
        """The thickest row that the panel covers with that nail, or with a thinner one; None without a row."""
        names = [one.name for one in self.nails if one.diameter <= nail.diameter]
        fits = [one for one in self.rows if one.grade == grade and one.nail in names and one.thickness <= thickness + SLACK]
        return max(fits, key=lambda one: one.wind[0], default=None)


@cache
def unit_shear_table() -> ShearTable:
    """The whole table; CatalogueError for a row without source or mark."""
    path = folder("shared") / "structure" / "unit-shear.yaml"
    content = load(path)
    apart = tuple(one * INCH for one in content["spacings"])
    rows = []
    for row in content["rows"]:
        wind, seismic = (tuple(one * PLF for one in row[word]) for word in ("wind", "seismic"))
        where = origin({**content["shared"], **row}, path)
        rows.append(ShearRow(row["grade"], row["thickness"] * INCH, row["nail"], apart, seismic, wind, where))
    rules = [content[word] for word in ("species", "aspect", "ten_penny_2021")]
    for row in (*content["designs"], *rules, *content["nails"].values()):
        origin(row, path)
    sizes = ("penetration", "length", "diameter")
    nails = tuple(Nail(name, *(row[word] * INCH for word in sizes)) for name, row in content["nails"].items())
    return ShearTable(tuple(rows), nails, content["field"] * INCH, content)
