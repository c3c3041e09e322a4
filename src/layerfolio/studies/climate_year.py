"""A year of monthly means outside and inside, as the moisture balance takes it from the project file."""

from dataclasses import dataclass, replace
from typing import Any, NamedTuple

from layerfolio.formulas.moisture import saturation_pressure

MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November",
    "December",
)  # fmt: skip
DAYS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
SECONDS = tuple(days * 86400.0 for days in DAYS)

Months = tuple[float, ...]


class HumidityRule(NamedTuple):
    """How the room's humidity is found: `kind` is class, constant, monthly or continental.

    `number` the class, `low` and `high` the chart's ends (constant: both the one value). `words` prints; `mark` of the
    rule's own figures ("given" where the project states the humidity itself).
    """

    kind: str
    words: str
    number: int = 0
    low: float = 0.0
    high: float = 0.0
    mark: str = "given"


@dataclass(frozen=True, slots=True)
class Year:
    """Twelve monthly means, January first: temperatures degC, relative humidities as shares, pressures Pa.

    Raises ValueError for another number of months, and for a humidity that is not above 0 and up to 1.
    """

    outdoor_temperature: Months
    outdoor_humidity: Months
    indoor_temperature: Months
    indoor_pressure: Months
    rule: HumidityRule

    def __post_init__(self) -> None:
        for values in (self.outdoor_temperature, self.outdoor_humidity, self.indoor_temperature, self.indoor_pressure):
            if len(values) != 12:
                raise ValueError(f"a year has 12 months, not {len(values)}")
        if not all(0 < one <= 1 for one in self.outdoor_humidity):
            raise ValueError("a relative humidity is above 0 and not over 100 %")
        if not all(one > 0 for one in self.indoor_pressure):
            raise ValueError("the vapour pressure of the room is above 0")

    @property
    def outdoor_pressure(self) -> Months:
        pairs = zip(self.outdoor_humidity, self.outdoor_temperature, strict=True)
        return tuple(phi * saturation_pressure(theta) for phi, theta in pairs)

    @property
    def indoor_humidity(self) -> Months:
        """Relative humidity of the room; over 1 where the room air would be more than saturated."""
        pairs = zip(self.indoor_pressure, self.indoor_temperature, strict=True)
        return tuple(p / saturation_pressure(theta) for p, theta in pairs)

    def with_points(self, points: float, words: str) -> "Year":
        """The same year with the room's relative humidity so much higher (0.10: ten points)."""
        pairs = zip(self.indoor_pressure, self.indoor_temperature, strict=True)
        wetter = tuple(p + points * saturation_pressure(theta) for p, theta in pairs)
        return replace(self, indoor_pressure=wetter, rule=self.rule._replace(words=words))

    def with_excess_times(self, factor: float, words: str) -> "Year":
        """The same year with the room's excess over the outside vapour pressure multiplied."""
        pairs = zip(self.outdoor_pressure, self.indoor_pressure, strict=True)
        wetter = tuple(outside + factor * (inside - outside) for outside, inside in pairs)
        return replace(self, indoor_pressure=wetter, rule=self.rule._replace(words=words))


class Outside(NamedTuple):
    """What lies outside one assembly, month by month: temperature degC and vapour pressure Pa, and where from."""

    temperature: Months
    pressure: Months
    words: str
    source: str


def outside_of(faces: str, year: Year) -> Outside:
    """The outside air; beside the ground its yearly mean temperature and saturation all year."""
    if faces != "ground":
        words = "outside air" if faces == "outside air" else f"{faces}, taken as outside air"
        return Outside(year.outdoor_temperature, year.outdoor_pressure, words, "project file, climate")
    mean = sum(year.outdoor_temperature) / 12
    words = "ground: yearly mean of the outside air, saturated"
    return Outside((mean,) * 12, (saturation_pressure(mean),) * 12, words, "iso-13788-2012, ground (from memory)")


def climate_year(project: Any) -> tuple[Year | None, tuple[str, ...]]:
    """The year of a project (attributes named as the keys of its file), or None and the keys that are missing."""
    from layerfolio.studies import indoor_air

    monthly = getattr(getattr(project, "climate", None), "monthly", None)
    indoor = getattr(project, "indoor", None)
    stated = {
        "climate.monthly.temperature": getattr(monthly, "temperature", None),
        "climate.monthly.relative_humidity": getattr(monthly, "relative_humidity", None),
        "indoor.temperature": getattr(indoor, "temperature", None),
        "indoor.humidity": getattr(indoor, "humidity", None),
    }
    inside = stated["indoor.humidity"]
    if getattr(inside, "continental", None):
        del stated["indoor.temperature"]
    missing = tuple(key for key, value in stated.items() if value is None)
    if missing:
        return None, missing
    temperature, humidity = (tuple(map(_number, _series(stated[f"climate.monthly.{key}"])))
                             for key in ("temperature", "relative_humidity"))  # fmt: skip
    if getattr(inside, "continental", None):
        return indoor_air.year_by_chart(temperature, humidity, inside.continental), ()
    return _by_statement(temperature, humidity, _number(stated["indoor.temperature"]), inside)


def _by_statement(
    temperature: Months, humidity: Months, indoor: float, inside: Any
) -> tuple[Year | None, tuple[str, ...]]:
    from layerfolio.studies import indoor_air

    number = getattr(inside, "class_", None)
    if number is not None:
        if number not in indoor_air.CLASS_EXCESS:
            return None, (f"indoor.humidity as a relative humidity (class {number} has no upper limit)",)
        return indoor_air.year_by_class(temperature, humidity, indoor, number), ()
    one = getattr(inside, "relative_humidity", None)
    if one is not None:
        return indoor_air.year_by_humidity(temperature, humidity, indoor, _number(one)), ()
    twelve = getattr(inside, "monthly", None) or getattr(inside, "values", None)
    if twelve is None:
        return None, ("indoor.humidity",)
    return indoor_air.year_by_humidity(temperature, humidity, indoor, tuple(map(_number, _series(twelve)))), ()


def _series(stated: Any) -> tuple:
    return tuple(getattr(stated, "values", stated))


def _number(stated: Any) -> float:
    return float(getattr(stated, "value", stated))
