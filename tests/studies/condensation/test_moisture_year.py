"""The year of monthly means: classes, stated humidity, the continental chart, the ground, and what is missing."""

from types import SimpleNamespace as Stated

import pytest

from layerfolio.formulas.moisture import saturation_pressure
from layerfolio.studies.climate_year import DAYS, SECONDS, Year, climate_year, outside_of
from layerfolio.studies.indoor_air import (
    CLASS_EXCESS,
    chart_humidity,
    chart_temperature,
    excess,
    year_by_chart,
    year_by_class,
    year_by_humidity,
)
from moisture_cases import CLASS_3, HUMIDITY, TEMPERATURE


@pytest.mark.parametrize(
    ("theta", "share"), [(-30, 1), (0, 1), (0.001, 0.99995), (5, 0.75), (12, 0.4), (18, 0.1), (20, 0), (31, 0)]
)
@pytest.mark.parametrize("number", CLASS_EXCESS)
def test_excess_of_a_class_falls_straight_to_nothing_at_20(theta, share, number):
    assert excess(theta, CLASS_EXCESS[number]) == pytest.approx(CLASS_EXCESS[number] * share)


def test_class_figures():
    assert CLASS_EXCESS == {1: 270, 2: 540, 3: 810, 4: 1080}


def test_pressures_of_a_class_year():
    """Own figures of the invented climate: outside and room, Pa."""
    outside = [207.5, 241.3, 382.7, 592.9, 911.2, 1316.9, 1635.9, 1485.2, 1051.4, 719.7, 455.3, 276.8]
    room = [1017.5, 1051.3, 1192.7, 1200.4, 1235.2, 1438.4, 1635.9, 1566.2, 1375.4, 1286.7, 1265.3, 1086.8]
    assert list(CLASS_3.outdoor_pressure) == pytest.approx(outside, abs=0.06)
    assert list(CLASS_3.indoor_pressure) == pytest.approx(room, abs=0.06)
    assert CLASS_3.indoor_humidity[0] == pytest.approx(0.435, abs=0.0005)


def test_class_5_has_no_upper_limit_and_gives_no_year():
    with pytest.raises(KeyError):
        year_by_class(TEMPERATURE, HUMIDITY, 20.0, 5)


def test_months_have_their_own_days():
    assert sum(DAYS) == 365 and SECONDS[1] == 28 * 86400


@pytest.mark.parametrize(
    ("theta", "normal", "high"),
    [(-20, 0.35, 0.45), (-10, 0.35, 0.45), (5, 0.50, 0.60), (20, 0.65, 0.75), (28, 0.65, 0.75)],
)
def test_continental_chart(theta, normal, high):
    assert chart_humidity(theta, 0.35, 0.65) == pytest.approx(normal)
    assert chart_humidity(theta, 0.45, 0.75) == pytest.approx(high)


@pytest.mark.parametrize(("theta", "indoor"), [(-5, 20), (10, 20), (15, 22.5), (20, 25), (30, 25)])
def test_continental_indoor_temperature(theta, indoor):
    assert chart_temperature(theta) == pytest.approx(indoor)


def test_year_by_the_chart():
    year = year_by_chart(TEMPERATURE, HUMIDITY, "high")
    assert year.indoor_humidity[0] == pytest.approx(0.45)
    assert year.indoor_temperature[5] == pytest.approx(23.5)
    assert (year.rule.kind, year.rule.mark) == ("continental", "memory")


def test_twelve_humidities():
    shares = tuple(0.3 + 0.02 * month for month in range(12))
    year = year_by_humidity(TEMPERATURE, HUMIDITY, 21.0, shares)
    assert list(year.indoor_humidity) == pytest.approx(list(shares))
    assert year.rule.kind == "monthly"


def test_more_points_and_times():
    damper = CLASS_3.with_points(0.10, "ten points more")
    assert list(damper.indoor_humidity) == pytest.approx([share + 0.1 for share in CLASS_3.indoor_humidity])
    times = CLASS_3.with_excess_times(1.10, "times 1.10")
    assert times.indoor_pressure[0] - times.outdoor_pressure[0] == pytest.approx(1.10 * 810)
    assert damper.rule.words == "ten points more" and CLASS_3.rule.words == "humidity class 3"


def test_against_the_ground():
    outside = outside_of("ground", CLASS_3)
    assert outside.temperature == (sum(TEMPERATURE) / 12,) * 12
    assert outside.pressure == (saturation_pressure(sum(TEMPERATURE) / 12),) * 12
    assert outside_of("outside air", CLASS_3).pressure == CLASS_3.outdoor_pressure
    assert "vented space" in outside_of("vented space", CLASS_3).words


@pytest.mark.parametrize("count", [11, 13])
def test_a_year_has_twelve_months(count):
    with pytest.raises(ValueError, match=f"12 months, not {count}"):
        year_by_class((TEMPERATURE * 2)[:count], (HUMIDITY * 2)[:count], 20.0, 2)


@pytest.mark.parametrize("wrong", [1.01, 0.0, -0.2, 80])
def test_a_humidity_is_a_share(wrong):
    with pytest.raises(ValueError, match="relative humidity"):
        year_by_class(TEMPERATURE, (*HUMIDITY[:11], wrong), 20.0, 2)
    with pytest.raises(ValueError, match="relative humidity"):
        year_by_humidity(TEMPERATURE, HUMIDITY, 20.0, wrong)


def test_a_room_without_vapour_is_refused():
    with pytest.raises(ValueError, match="above 0"):
        Year(TEMPERATURE, HUMIDITY, (20.0,) * 12, (0.0,) * 12, CLASS_3.rule)


def project(temperature=TEMPERATURE, humidity=HUMIDITY, indoor=20.0, **inside):
    monthly = Stated(
        temperature=temperature and Stated(values=temperature), relative_humidity=humidity and Stated(values=humidity)
    )
    room = Stated(temperature=indoor and Stated(value=indoor), humidity=Stated(**inside) if inside else None)
    return Stated(climate=Stated(monthly=monthly), indoor=room)


@pytest.mark.parametrize(
    ("inside", "kind"),
    [({"class_": 3}, "class"), ({"class_": None, "relative_humidity": Stated(value=0.45)}, "constant"),
     ({"class_": None, "relative_humidity": None, "monthly": Stated(values=(0.4,) * 12)}, "monthly"),
     ({"continental": "normal"}, "continental")],
)  # fmt: skip
def test_each_way_of_stating_the_room(inside, kind):
    year, missing = climate_year(project(**inside))
    assert missing == () and year.rule.kind == kind


def test_what_is_missing_is_named_by_its_key():
    outside = ("climate.monthly.temperature", "climate.monthly.relative_humidity")
    assert climate_year(Stated()) == (None, (*outside, "indoor.temperature", "indoor.humidity"))
    assert climate_year(project(humidity=None, class_=2)) == (None, ("climate.monthly.relative_humidity",))
    assert climate_year(project(indoor=None, class_=2)) == (None, ("indoor.temperature",))
    year, missing = climate_year(project(class_=5))
    assert year is None and "class 5 has no upper limit" in missing[0]
