"""Published climate design data: rows a person may copy into a project file, never a silent default."""

from dataclasses import dataclass, fields
from functools import cache

from layerfolio.catalogue.datum import Origin
from layerfolio.catalogue.files import CatalogueError, load, origin, shown
from layerfolio.home import folder


@dataclass(frozen=True, slots=True)
class Climate:
    """One row of a code's climatic table, in the units of that table.

    elevation m; heating_degree_days K.d below 18 degC; january_2_5 and january_1 design temperatures degC; july_dry and
    july_wet bulb temperatures degC; moisture_index 1; driving_rain_pressure Pa (1 in 5 years); snow, rain kPa (1 in 50
    years); wind_1_10, wind_1_50 hourly pressures kPa.
    """

    place: str
    region: str
    elevation: float
    heating_degree_days: float
    january_2_5: float
    january_1: float
    july_dry: float
    july_wet: float
    moisture_index: float
    driving_rain_pressure: float
    snow: float
    rain: float
    wind_1_10: float
    wind_1_50: float
    origin: Origin


COLUMNS = tuple(one.name for one in fields(Climate))[2:-1]


@cache
def climates() -> tuple[Climate, ...]:
    """Every row of every file under shared/climates, sorted by region and place."""
    found: list[Climate] = []
    for path in sorted((folder("shared") / "climates").glob("*.yaml")):
        content = load(path)
        where = origin(content, path)
        if tuple(content["columns"]) != COLUMNS:
            raise CatalogueError(f"{shown(path)}: the columns must be {', '.join(COLUMNS)}")
        for place, row in content["places"].items():
            if len(row) != len(COLUMNS):
                raise CatalogueError(f"{shown(path)}: {place} has {len(row)} figures, {len(COLUMNS)} are needed")
            found.append(Climate(place, content["region"], *map(float, row), where))
    return tuple(sorted(found, key=lambda one: (one.region, one.place)))


def climate(place: str) -> Climate:
    """The row of that place; KeyError when there is none."""
    for one in climates():
        if one.place == place:
            return one
    raise KeyError(place)
