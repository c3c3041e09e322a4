"""Loads of the site, storeys of the building, issues of the package."""

from __future__ import annotations

from datetime import date

from layerfolio.reading.groups import Nested
from layerfolio.reading.measures import Measure
from layerfolio.reading.record import Record, key
from layerfolio.reading.scalars import Day, Line, Number
from layerfolio.units.quantity import Quantity


class Seismic(Record):
    """Seismic values of the site."""

    Sa02: float | None = key(Number("a spectral acceleration", "0.3", 0, 20), "spectral acceleration at 0.2 s")
    Smax: float | None = key(
        Number("a spectral acceleration", "0.4", 0, 20), "greatest spectral acceleration as British Columbia's code takes it"
    )
    category: str | None = key(Line("B", 20), "seismic design category")


class SiteLoads(Record):
    """Loads of the site, as given by the project."""

    wind_pressure_1_50: Quantity | None = key(Measure("pressure"), "hourly wind pressure, 1 in 50 years")
    wind_speed: Quantity | None = key(Measure("speed"), "basic wind speed")
    exposure: str | None = key(Line("rough", 40), "exposure: rough, open, or the category")
    seismic: Seismic | None = key(Nested(Seismic), "seismic values")
    wind_suction: Quantity | None = key(
        Measure("pressure", example="1.2 kPa"), "design suction of wind on the cladding, of the zone that is checked"
    )
    snow: Quantity | None = key(Measure("pressure", least=0.0), "ground snow load")
    source: str | None = key(Line("the code's table of climatic data"), "where the figures come from")


class Revision(Record):
    """One issue of the package."""

    mark: str = key(Line("A", 8), "mark of the revision", required=True)
    date: date | None = key(Day(), "date of issue")
    note: str | None = key(Line("issued for permit"), "what changed")


class Storey(Record):
    """One storey."""

    name: str | None = key(Line("ground floor"), "name")
    height: Quantity | None = key(Measure("length", most=30.0, example="2.7 m"), "floor to floor")
