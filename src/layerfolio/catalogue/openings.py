"""Figures for openings where the project file states none, and of the air: shared/openings.yaml."""

from functools import cache
from typing import Any

from layerfolio.catalogue.datum import Datum, Origin
from layerfolio.catalogue.files import load, origin
from layerfolio.home import folder


@cache
def _content() -> tuple[Any, Any]:
    path = folder("shared") / "openings.yaml"
    return load(path), path


def edge_transmittance(frame: str, spacer: str, coating: bool) -> Datum | None:
    """Default linear transmittance of a glass edge, W/(m.K), by material of the frame, spacer and low-e coating.

    None where the table has no such row. All figures of the table are from memory and marked so.
    """
    content, path = _content()
    edges = content["edges"]
    for row in edges["rows"]:
        if frame in row["frame"] and (row["spacer"], row["coating"]) == (spacer, coating):
            glass = "low-e glass" if coating else "uncoated glass"
            where = origin(edges, path)
            chosen = Origin("default", where.source, where.place, where.mark)
            return Datum(row["psi"], chosen, f"frame of {frame}, {spacer} spacer, {glass}")
    return None


def air() -> tuple[Datum, Datum]:
    """Density, kg/m3, and specific heat, J/(kg.K), of air."""
    content, path = _content()
    row = content["air"]
    where = origin(row, path)
    chosen = Origin("default", where.source, where.place, where.mark, via=where.via)
    return Datum(row["density"], chosen), Datum(row["specific_heat"], chosen)
