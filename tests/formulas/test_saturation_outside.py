"""Outside check: saturation pressure against two general-purpose libraries, psychrolib and CoolProp."""

import psychrolib
import pytest
from CoolProp.CoolProp import PropsSI

from layerfolio.formulas import moisture as f
from layerfolio.formulas.moisture import saturation_pressure, saturation_temperature

psychrolib.SetUnitSystem(psychrolib.SI)


def tolerance(theta):
    """0.25 % from -10 degC up; below it grows to 1.1 % at -30 degC."""
    return 0.0025 if theta >= -10 else 0.0025 + (0.011 - 0.0025) * (-10 - theta) / 20


@pytest.mark.parametrize("theta", range(-30, 41))
def test_against_psychrolib(theta):
    expected = psychrolib.GetSatVapPres(float(theta))
    assert saturation_pressure(theta) == pytest.approx(expected, rel=tolerance(theta))
    assert saturation_pressure(theta) < expected


@pytest.mark.parametrize("theta", range(1, 41))
def test_against_coolprop_above_the_triple_point(theta):
    expected = PropsSI("P", "T", theta + 273.15, "Q", 0, "Water")
    assert saturation_pressure(theta) == pytest.approx(expected, rel=0.0025)


@pytest.mark.parametrize("theta", [-30, -20, -10, -5])
def test_below_zero_the_branch_over_ice_is_used(theta):
    """The formula over water, taken below zero, is off by 5 % at -5 degC and by 33 % at -30 degC."""
    over_water = f.saturation_over_water.function(theta=theta)
    assert over_water > 1.04 * saturation_pressure(theta)
    assert abs(over_water / psychrolib.GetSatVapPres(float(theta)) - 1) > tolerance(theta)


def test_both_branches_meet_at_zero():
    assert f.saturation_over_ice(theta=0.0) == f.saturation_over_water(theta=0.0) == 610.5


@pytest.mark.parametrize(("theta", "printed"), [(20, 2337), (-5, 401), (12, 1402)])
def test_tabulated_values_of_din_4108_3(theta, printed):
    """DIN 4108-3, tabulated saturation pressures, whole pascals."""
    assert saturation_pressure(theta) == pytest.approx(printed, abs=1.0)


@pytest.mark.parametrize(
    ("pressure", "theta"),
    [(321, -7.580), (401, -5.005), (610.5, 0), (1168, 9.263), (1285, 10.687), (1402, 12.002), (1700, 14.960),
     (2000, 17.509), (2337, 20.000)],
)  # fmt: skip
def test_inverse(pressure, theta):
    """Own check values, not an outside check."""
    assert saturation_temperature(pressure) == pytest.approx(theta, abs=0.001)


@pytest.mark.parametrize("theta", [x / 4 for x in range(-160, 161)])
def test_inverse_undoes_saturation(theta):
    assert saturation_temperature(saturation_pressure(theta)) == pytest.approx(theta, abs=1e-9)


def test_a_temperature_outside_the_range_is_refused():
    for theta in (-100.1, 90.1):
        with pytest.raises(ValueError, match="is outside"):
            saturation_pressure(theta)
