"""Rows of a material file become figures with their origin. The keys and their units are listed once, here.

A row is one reading: the figures that one place of one source gives, with `source`, `place`, `mark` and, where it was
read in another publication, `via` and the `row` it has there. Figures stand in SI, save that permeances are in
ng/(Pa.s.m2) and thicknesses in millimetres, as every source prints them.
"""

from dataclasses import dataclass
from pathlib import Path
from typing import Any, Literal

from layerfolio.catalogue.datum import Datum
from layerfolio.catalogue.files import CatalogueError, origin, shown

Basis = Literal["mu", "permeance", "s_d"]

HEAT = {"conductivity": "W/(m.K)", "density": "kg/m3", "specific_heat": "J/(kg.K)", "resistance": "m2.K/W"}
# key without its cup: basis, divisor that brings it to SI
VAPOUR = {"mu{}": ("mu", 1.0), "s_d{}": ("s_d", 1.0), "permeance{}_ng": ("permeance", 1e12)}
CUPS = ("", "_dry", "_wet")
VAPOUR_KEYS = {key.format(cup): (basis, divisor, cup[1:]) for key, (basis, divisor) in VAPOUR.items() for cup in CUPS}
SIDE_KEYS = frozenset({"source", "place", "mark", "via", "row", "what", "at_mm"})
TIGHT = 1_000_000.0  # stands for a vapour resistance factor that the source prints as infinite


@dataclass(frozen=True, slots=True)
class Figure:
    """One figure of one row.

    `quantity` is conductivity, density, specific_heat, resistance, or the basis of a vapour figure (mu, s_d,
    permeance); `cup` is dry, wet or empty; `at_thickness` (m) is set where the figure holds for that thickness only.
    """

    quantity: str
    cup: str
    datum: Datum
    at_thickness: float | None
    what: str


def read_row(row: dict[str, Any], path: Path) -> list[Figure]:
    """Every figure of one row; CatalogueError for a missing source or mark, an unknown key or a value that is none."""
    if not isinstance(row, dict):
        raise CatalogueError(f"{shown(path)}: a row of figures must be a map, not {row!r}")
    where = origin(row, path)
    thickness = row["at_mm"] / 1000 if "at_mm" in row else None
    found = []
    for key, value in row.items():
        if key in SIDE_KEYS:
            continue
        if key in HEAT:
            quantity, divisor, cup = key, 1.0, ""
        elif key in VAPOUR_KEYS:
            quantity, divisor, cup = VAPOUR_KEYS[key]
        else:
            raise CatalogueError(f"{shown(path)}: unknown key {key!r} in a row from {where.source}")
        for number, note in _numbers(value, key, path):
            datum = Datum(number / divisor, where, note)
            found.append(Figure(quantity, cup, datum, thickness, str(row.get("what", ""))))
    if not found:
        raise CatalogueError(f"{shown(path)}: a row from {where.source} holds no figure")
    return found


def _numbers(value: Any, key: str, path: Path) -> list[tuple[float, str]]:
    """A number, `infinite`, or [lowest, highest] as it is published, each with the words that go with it."""
    if value == "infinite" and key.startswith("mu"):
        return [(TIGHT, "printed as infinite; one million stands for it")]
    if isinstance(value, list) and len(value) == 2:
        (low, _), (high, _) = (_numbers(one, key, path)[0] for one in value)
        return [(low, "lowest published"), (high, "highest published")]
    if isinstance(value, bool) or not isinstance(value, int | float) or not 0 < value < TIGHT:
        raise CatalogueError(f"{shown(path)}: {key} is {value!r}, a positive number is needed")
    return [(float(value), "")]
