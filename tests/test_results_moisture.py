"""The `condensation` part of the results file, key by key, as outside readers rely on it."""

import json

import pytest

from builders import assembly, layer
from layerfolio.results_moisture import results_part
from layerfolio.studies.climate_year import MONTHS
from layerfolio.studies.condensation.types import TWO_PERIOD
from moisture_cases import CLASS_2, CLASS_3, WALLS, published_wall, study, wall


def test_case_d():
    part = results_part(study(wall(WALLS["D"]), CLASS_3))
    assert part["method"] == "monthly" and part["clears"] is True
    assert [one["month"] for one in part["months"]] == [*MONTHS[9:], *MONTHS[:9]]
    october = part["months"][0]["planes"]
    assert october == [
        {"between": ["strand board", "wool"], "flow": {"value": pytest.approx(0.02233, abs=1e-5), "unit": "kg/m2"},
         "accumulated": {"value": pytest.approx(0.02233, abs=1e-5), "unit": "kg/m2"}}
    ]  # fmt: skip
    assert part["months"][9]["planes"][0]["flow"]["value"] == pytest.approx(-0.29686, abs=1e-5)
    assert part["greatest_accumulation"] == {"value": pytest.approx(0.70922, abs=1e-5), "unit": "kg/m2"}
    assert part["less_favourable"] == {"greatest_accumulation": part["greatest_accumulation"], "clears": True}
    assert part["surface_factor"]["critical_month"] == "November"
    assert part["surface_factor"]["required"] == pytest.approx(0.707, abs=0.0005)
    assert 0.9 < part["surface_factor"]["provided"] < 1


def test_without_condensation_twelve_months_january_first():
    part = results_part(study(wall(WALLS["A"]), CLASS_3))
    assert part["months"] == [{"month": name, "planes": []} for name in MONTHS]
    assert part["greatest_accumulation"]["value"] == 0.0 and part["clears"] is True


def test_months_of_the_last_computed_year():
    """Case B does not clear: the second year stands in the results, on top of the first."""
    found = study(wall(WALLS["B"]), CLASS_3)
    part = results_part(found)
    assert part["clears"] is False and part["years"] == 2
    assert part["months"][0]["planes"][0]["accumulated"]["value"] > found.expected.first_year[0].accumulated
    totals = [sum(plane["accumulated"]["value"] for plane in one["planes"]) for one in part["months"]]
    assert part["greatest_accumulation"]["value"] == max(totals)


def test_two_period_part():
    part = results_part(study(published_wall(), CLASS_2))["two_period"]
    assert part["condensed"] == {"value": pytest.approx(0.27, rel=0.01), "unit": "kg/m2"}
    assert part["evaporated"]["value"] == pytest.approx(0.659, rel=0.001)
    assert part["reserve"]["value"] == pytest.approx(0.39, abs=0.002)
    assert part["limit"] == {"value": 0.5, "unit": "kg/m2"} and part["verdict"] == "meets"


def test_the_two_period_method_decides_where_it_is_asked_for():
    part = results_part(study(published_wall(), CLASS_2, method=TWO_PERIOD))
    assert part["method"] == "two-period" and part["clears"] is True
    assert part["greatest_accumulation"] == part["two_period"]["condensed"]
    assert len(part["months"]) == 12 and all(one["planes"] == [] for one in part["months"])


def test_unknown_is_null_and_what_is_missing_is_named():
    bare = assembly([layer(1, name="board", d=0.02, lam=0.1), layer(2, d=0.1, lam=0.04, mu=1)])
    part = results_part(study(bare, CLASS_2))
    for key in ("months", "greatest_accumulation", "clears", "two_period", "outcome"):
        assert part[key] is None
    assert part["less_favourable"] == {"greatest_accumulation": None, "clears": None}
    assert part["missing"] == ["board"]
    no_year = results_part(study(published_wall(), None, missing_inputs=("indoor.humidity",)))
    assert no_year["missing"] == ["indoor.humidity"] and no_year["surface_factor"] is None
    assert no_year["clears"] is None and no_year["two_period"]["verdict"] == "meets"


@pytest.mark.parametrize("name", WALLS)
def test_it_is_plain_json(name):
    part = results_part(study(wall(WALLS[name]), CLASS_3))
    assert json.loads(json.dumps(part, allow_nan=False)) == part
    assert json.dumps(part) == json.dumps(results_part(study(wall(WALLS[name]), CLASS_3)))
