"""The room's air through the year: by humidity class, relative humidity, or the continental chart (ISO 13788, Annex A)."""

from layerfolio.formulas import moisture as f
from layerfolio.formulas.moisture import saturation_pressure
from layerfolio.studies.climate_year import HumidityRule, Months, Year

SOURCE = "iso-13788-2012, Annex A"
CLASS_EXCESS = {1: 270.0, 2: 540.0, 3: 810.0, 4: 1080.0}
"""Upper limit of the vapour excess by humidity class at 0 degC outside and below, Pa (ISO 13788, Annex A, from memory).
Class 5 is open upwards, so it gives no year: a relative humidity has to be stated."""
CHARTS = {"normal": (0.35, 0.65), "high": (0.45, 0.75)}
"""Indoor relative humidity at -10 and at 20 degC outside, by occupancy (ISO 13788, Annex A, from memory)."""


def excess(theta_e: float, at_zero: float) -> float:
    """Vapour excess of a humidity class, Pa, at the month's mean outside temperature, degC."""
    if theta_e <= 0:
        return at_zero
    return f.class_excess(dp_0=at_zero, theta_e=theta_e) if theta_e < 20 else 0.0


def chart_humidity(theta_e: float, low: float, high: float) -> float:
    """Indoor relative humidity of the continental chart: straight between -10 and 20 degC, steady outside them."""
    return f.chart_humidity(phi_1=low, phi_2=high, theta_e=min(max(theta_e, -10.0), 20.0))


def chart_temperature(theta_e: float) -> float:
    """Indoor temperature of the continental chart, degC."""
    return f.chart_temperature(theta_e=min(max(theta_e, 10.0), 20.0))


def year_by_class(temperature: Months, humidity: Months, indoor: float, number: int) -> Year:
    """Indoor climate of humidity class 1 to 4; KeyError for class 5, which has no upper limit."""
    at_zero = CLASS_EXCESS[number]
    pressures = tuple(
        phi * saturation_pressure(theta) + excess(theta, at_zero)
        for theta, phi in zip(temperature, humidity, strict=True)
    )
    rule = HumidityRule("class", f"humidity class {number}", number, mark="memory")
    return Year(temperature, humidity, (indoor,) * 12, pressures, rule)


def year_by_humidity(temperature: Months, humidity: Months, indoor: float, inside: float | Months) -> Year:
    """Indoor climate of one relative humidity (a share), or of twelve."""
    constant = isinstance(inside, float | int)
    shares = (float(inside),) * 12 if constant else tuple(inside)  # type: ignore[arg-type]
    if not all(0 < one <= 1 for one in shares):
        raise ValueError("a relative humidity is above 0 and not over 100 %")
    words = f"relative humidity {shares[0] * 100:g} %" if constant else "relative humidity month by month"
    rule = HumidityRule("constant" if constant else "monthly", words, low=min(shares), high=max(shares))
    return Year(temperature, humidity, (indoor,) * 12, tuple(x * saturation_pressure(indoor) for x in shares), rule)


def year_by_chart(temperature: Months, humidity: Months, occupancy: str = "normal") -> Year:
    """Indoor climate of the continental chart, `occupancy` normal or high; the chart sets the temperature too."""
    low, high = CHARTS[occupancy]
    indoor = tuple(map(chart_temperature, temperature))
    pressures = tuple(
        chart_humidity(outside, low, high) * saturation_pressure(inside)
        for outside, inside in zip(temperature, indoor, strict=True)
    )
    rule = HumidityRule("continental", f"continental chart, {occupancy} occupancy", 0, low, high, "memory")
    return Year(temperature, humidity, indoor, pressures, rule)
