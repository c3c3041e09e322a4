"""The whole envelope against figures from outside: linear bridges by length and by areas, a total UA."""

import pytest
from envelope_builders import join, opening, project, q, wall

from layerfolio.studies.building import building_study
from layerfolio.studies.openings import opening_study
from layerfolio.units.show import in_units


def test_linear_bridge_by_length():
    """ASHRAE Handbook Fundamentals 2021, chapter 27, example 6: 41 m2 at 0.287 and 15.2 m at 0.544 give 0.49."""
    study = building_study(project(joins=[join("slab edge", ("W1",), 15.2, 0.544)]), {"W1": wall(0.287, 41.0)}, {}, {})
    assert round(study.conductance / 41.0, 2) == 0.49


def test_the_same_bridge_by_areas():
    """The same example: 9.4 m2 at 1.162 and 31.6 m2 at 0.287 give 0.49."""
    both = {"W1": wall(1.162, 9.4, "W1"), "W2": wall(0.287, 31.6, "W2")}
    study = building_study(project(assemblies=("W1", "W2")), both, {}, {})
    assert round(study.conductance / 41.0, 2) == 0.49


def test_total_ua_of_a_house_in_zone_5():
    """Areas of an own example with the 2021 energy code's U-factors of zone 5 (table R402.1.2): 219.9 Btu/(h.F), by hand."""
    foot, u = 0.3048**2, 5.678263
    thermal = {n: wall(U * u, area * foot, n, kind=kind) for n, U, area, kind in [
        ("W1", 0.045, 1500, "wall"), ("C1", 0.024, 1200, "ceiling"), ("F1", 0.033, 1200, "floor")]}  # fmt: skip
    openings = {
        "A1": opening(12 * 0.3048, 20 * 0.3048, transmittance=0.30 * u, basis="rated"),
        "D1": opening(5 * 0.3048, 8 * 0.3048, kind="door", transmittance=0.30 * u, basis="rated"),
    }
    about = project(assemblies=tuple(thermal))
    studies = {name: opening_study(name, one, about) for name, one in openings.items()}
    study = building_study(about, thermal, {}, studies)
    assert round(in_units(study.conductance, "Btu/(h.F)"), 1) == 219.9
    assert round(study.conductance, 1) == 116.0


def test_infiltration_and_ventilation_by_hand():
    """1.23 x 1008 / 3600 = 0.3444; n = 3.0/20 + 3600 x 0.03/216 x 0.25 = 0.275; H = 0.3444 x 0.275 x 216 = 20.457 W/K."""
    about = project(n50=3.0, volume=216.0, flow=0.03, recovery=0.75)
    study = building_study(about, {"W1": wall(0.2, 100.0)}, {}, {})
    assert study.heat_loss.air_changes == pytest.approx(0.275)
    assert study.heat_loss.transmission == pytest.approx(20.0 * 47)
    assert study.heat_loss.air == pytest.approx(20.457 * 47, rel=1e-4)
    assert study.heat_loss.total == pytest.approx((20.0 + 20.457) * 47, rel=1e-4)


def test_a_stated_share_is_read_as_a_share():
    assert q(0.75, "share").value == 0.75
