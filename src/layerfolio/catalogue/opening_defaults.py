"""A set's own default figures for openings that carry no rating: method/openings.yaml of the codes that have such tables."""

from dataclasses import dataclass
from functools import cache
from typing import Any

from layerfolio.catalogue.code_sets import code_folder
from layerfolio.catalogue.datum import Datum, Origin
from layerfolio.catalogue.files import load, origin
from layerfolio.units.show import in_units

GLAZED = ("window", "skylight")


@dataclass(frozen=True, slots=True)
class OpeningDefaults:
    """Transmittance, W/(m2.K), and solar factor; None where the table has no row. `lacking`: keys that would tell the row."""

    transmittance: Datum | None = None
    solar_factor: Datum | None = None
    lacking: tuple[str, ...] = ()


@cache
def _tables(set_id: str) -> tuple[dict[str, Any] | None, Any]:
    path = code_folder(set_id) / "method" / "openings.yaml"
    return (load(path) if path.is_file() else None), path


def has_defaults(set_id: str) -> bool:
    """Whether the code of that set prints defaults for openings."""
    return _tables(set_id)[0] is not None


def opening_defaults(
    set_id: str, kind: str, *, frame: str | None = None, panes: int | None = None, tint: str | None = None
) -> OpeningDefaults | None:
    """The set's figures for an opening of that kind; `frame` is its material. None where the set has no table for it."""
    tables, _ = _tables(set_id)
    if tables is None:
        return None
    if kind == "glass-block":
        row = tables["glass_block"]
        u, factor = (_figure(set_id, row, row[key], key) for key in ("transmittance", "solar_factor"))
        return OpeningDefaults(u, factor)
    if kind == "door":
        row = tables["door"]
        return OpeningDefaults(_figure(set_id, row, row["transmittance"], "transmittance")) if frame in row["frame"] else None
    return _glazed(set_id, kind, frame, panes, tint) if kind in GLAZED else None


def _glazed(set_id: str, kind: str, frame: str | None, panes: int | None, tint: str | None) -> OpeningDefaults:
    """By frame and panes; clear glass where no tint is stated."""
    lacking = tuple(key for key, value in (("frame.material", frame), ("glass.panes", panes)) if value is None)
    if lacking:
        return OpeningDefaults(lacking=lacking)
    tables, _ = _tables(set_id)
    glass = "single" if panes == 1 else "double"
    row = next((one for one in tables["glazing"]["rows"] if frame in one["frame"]), None)
    column = f"skylight_{glass}" if kind == "skylight" else glass
    u = _figure(set_id, tables["glazing"], row[column], "transmittance") if row else None
    factor = tables["solar_factor"]
    return OpeningDefaults(u, _figure(set_id, factor, factor[glass][tint or "clear"], "solar_factor"))


def _figure(set_id: str, row: dict[str, Any], value: float, key: str) -> Datum:
    """A figure of the tables in SI with its origin; U stands there in customary units."""
    tables, path = _tables(set_id)
    where = origin({**{k: tables[k] for k in ("source", "via", "mark")}, "place": row["place"]}, path)
    chosen = Origin("code", where.source, where.place, where.mark, via=where.via)
    return Datum(value / in_units(1.0, "Btu/(h.ft2.F)") if key == "transmittance" else value, chosen)
