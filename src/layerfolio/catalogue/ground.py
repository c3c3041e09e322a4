"""What ISO 13370 needs beside the project file: kinds of ground, films, shielding. Read only where it is asked for."""

from dataclasses import dataclass
from functools import cache

from layerfolio.catalogue.datum import Datum, Origin
from layerfolio.catalogue.files import load, origin
from layerfolio.home import folder


@dataclass(frozen=True, slots=True)
class GroundData:
    """SI figures: conductivities by kind of ground, films m2.K/W, wall thickness m, shielding factors by word."""

    kinds: tuple[tuple[str, Datum], ...]
    floor_film: Datum
    wall_film: Datum
    outside_film: Datum
    wall_thickness: Datum
    shielding: dict[str, Datum]


@cache
def ground_data() -> GroundData:
    """The figures of shared/ground.yaml; CatalogueError for one without source or mark."""
    path = folder("shared") / "ground.yaml"
    content = load(path)

    def figure(row: dict) -> Datum:
        where = origin(row, path)
        return Datum(float(row["value"]), Origin("default", where.source, where.place, where.mark, via=where.via))

    films = content["films"]
    return GroundData(
        tuple((row["title"], figure(row)) for row in content["kinds"]),
        figure(films["floor"]),
        figure(films["wall"]),
        figure(films["outside"]),
        figure(content["wall_thickness"]),
        {word: figure(row) for word, row in content["shielding"].items()},
    )
