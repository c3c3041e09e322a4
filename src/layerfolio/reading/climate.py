"""Climate outside and inside, as the project file states it."""

from __future__ import annotations

from typing import Any

from layerfolio.reading.definitions import Definitions
from layerfolio.reading.figures import Monthly, Series
from layerfolio.reading.groups import Nested
from layerfolio.reading.measures import Humidity, Measure
from layerfolio.reading.record import Reader, Record, key, null
from layerfolio.reading.report import Report
from layerfolio.reading.scalars import Line, Number, Pick
from layerfolio.reading.tree import Mapping, Node
from layerfolio.units.quantity import Quantity

AIR = Measure("temperature", least=-80.0, most=70.0)
HUMIDITY = Humidity()
MONTHLY_TEMPERATURE = Monthly(AIR, ("degC", "degF"))
MONTHLY_HUMIDITY = Monthly(HUMIDITY, ("%",))


class MonthlyClimate(Record):
    """Monthly means outside, January first."""

    temperature: Series | None = key(MONTHLY_TEMPERATURE, "mean temperature of each month")
    relative_humidity: Series | None = key(MONTHLY_HUMIDITY, "mean relative humidity of each month")


class Climate(Record):
    """The climate of the site."""

    place: str | None = key(Line("Tern Point (invented)"), "where the figures hold")
    source: str | None = key(Line("the code's table of climatic data"), "where the figures come from")
    heating_degree_days: Quantity | None = key(Measure("degree_days", least=0.0), "below 18 degC")
    cooling_degree_days: Quantity | None = key(Measure("degree_days", least=0.0), "above 10 degC")
    heating_design_temperature: Quantity | None = key(AIR, "outside temperature for the design of heating")
    moisture_index: float | None = key(Number("a moisture index", "1.0", 0, 20), "moisture index, where the set asks")
    monthly: MonthlyClimate | None = key(Nested(MonthlyClimate), "monthly means for the moisture balance")


class IndoorHumidity(Record):
    """One of: a humidity class, one relative humidity, the continental chart, or twelve values (`monthly`)."""

    class_: int | None = key(Number("a humidity class", "2", 1, 5, whole=True), "ISO 13788 class", name="class")
    relative_humidity: Quantity | None = key(HUMIDITY, "one value for all months")
    continental: str | None = key(Pick("normal", "high"), "continental chart of ISO 13788 by occupancy; sets the room too")

    def __init__(self, monthly: Series | None = None, **values: Any):
        super().__init__(**values)
        self.__dict__["monthly"] = monthly

    def check(self, node: Mapping, path: str, report: Report) -> None:
        if len(self.stated) != 1:
            what = (
                "two ways of stating humidity cannot both stand" if self.stated else "a class or a humidity is missing"
            )
            report.problem(node.holder, path, what, "{class: 2}")


class IndoorHumidityReader(Reader):
    """Tells the monthly form from the other two."""

    example = "{class: 2}"

    def read(self, node: Node, path: str, report: Report) -> Any:
        if isinstance(node, Mapping) and any(
            name in node.items and not null(node.items[name]) for name in ("unit", "values")
        ):
            series = MONTHLY_HUMIDITY.read(node, path, report)
            return IndoorHumidity(monthly=series) if series else None
        if not isinstance(node, Mapping):
            message = "a class or a relative humidity is expected here"
            report.problem(node.place, path, message, "{class: 2} or {relative_humidity: 45 %}")
            return None
        return IndoorHumidity.read(node, path, report)

    def schema(self, definitions: Definitions) -> dict:
        return {"anyOf": [definitions.reference(IndoorHumidity), MONTHLY_HUMIDITY.schema(definitions)]}


class Indoor(Record):
    """The climate inside."""

    temperature: Quantity | None = key(Measure("temperature", least=-30.0, most=60.0), "air temperature, 20 degC")
    humidity: IndoorHumidity | None = key(IndoorHumidityReader(), "class, relative humidity, or twelve of them")
