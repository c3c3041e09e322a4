"""The moisture studies against published worked examples and tables. Inputs and results as published."""

import pytest

from builders import assembly, layer
from layerfolio.formulas import moisture as f
from layerfolio.formulas.moisture import saturation_pressure
from layerfolio.steps.trace import Step
from layerfolio.studies.condensation.surface import R_SI, factor
from moisture_cases import published_wall, section, study


class TestPublishedWall:
    """Worked example of a German building-physics textbook (study notes on its chapter 13, after DIN 4108-3:2018):
    boards, retarder and wool. Printed: U 0.218 W/(m2.K), 3.48e-8 kg/(m2.s), 0.27 and 0.659 kg/m2, 2.0 % by mass."""

    found = study(published_wall(), None)
    period = found.two_period.expected

    def values(self, formula):
        return [e.value for e in self.found.trace.entries if isinstance(e, Step) and e.formula.name == formula]

    def test_rate_and_amount_of_condensate(self):
        """Within 1 %: the example rounds the temperature of the plane to a tenth of a degree."""
        [plane] = self.period.planes
        assert plane[0] == ("outer board", "mineral wool")
        assert self.values("condensation_rate") == [pytest.approx(3.48e-8, rel=0.01)]
        assert self.period.condensed == pytest.approx(0.27, rel=0.01)

    def test_evaporation(self):
        assert self.values("evaporation_rate") == [pytest.approx(8.48e-8, rel=0.001)]
        assert self.period.evaporated == pytest.approx(0.659, rel=0.001)

    def test_saturation_as_printed(self):
        """The example's own pressures, from its rounded temperatures: 437 Pa at the plane, airs 321 and 1168 Pa."""
        rate = f.condensation_rate(delta_0=2e-10, p_1=1168, p_c=437, s_d_1=3.11, p_2=321, s_d_2=1.90)
        assert rate == pytest.approx(3.48e-8, abs=0.005e-8)
        assert f.condensate(g_c=rate, t=90 * 86400) == pytest.approx(0.27, abs=0.005)

    def test_rise_of_the_outer_board(self):
        wood = [check for check in self.period.checks if "outer board" in check.name]
        assert [round(check.value, 3) for check in wood] == [0.020]
        assert [check.limit for check in wood] == [0.03]

    def test_limits_and_verdict(self):
        assert self.found.two_period.limit == 0.5  # the wool absorbs nothing
        assert self.found.two_period.verdict == "meets"
        assert self.period.reserve == pytest.approx(0.659 - 0.27, abs=0.003)

    def test_transmittance_of_the_method(self):
        assert self.values("resistance_along")[0] == pytest.approx(1 / 0.218, rel=0.002)


def test_surface_factor_of_a_slab_edge():
    """Training book on the Spanish guidance document DA DB-HE/2: surface 15.3, outside 10.4, room 20 degC give 0.51,
    which misses 0.52."""
    value = f.temperature_factor_of_surface(theta_si=15.3, theta_e=10.4, theta_i=20.0)
    assert value == pytest.approx(0.51, abs=0.001)
    assert value < 0.52


def test_surface_factor_of_a_plane_wall():
    """Polish course sheet with three checks to ISO 13788, its first wall: U 0.2899 gives 0.928."""
    resistance = 1 / 0.2899 - R_SI - 0.04
    assert factor(0.04, (resistance,)) == pytest.approx(0.928, abs=0.001)


def test_surface_factor_asked_by_the_same_sheet():
    """Same sheet: lowest surface temperature 20.6 in a room of 25, outside -20 degC, asks 0.902."""
    assert f.temperature_factor_needed(theta_si_min=20.6, theta_e=-20, theta_i=25) == pytest.approx(0.902, abs=0.0005)


def test_temperatures_of_a_rendered_brick_wall():
    """Study notes on a German timber-construction handbook, table 17.25: plasters and light brick between 20 and -10
    degC, R 0.844, U 0.986, faces 16.1, 15.5, -8.1, -8.8 degC, saturation 306 Pa behind the render. Films 0.13 and 0.04;
    brick of 0.30 W/(m.K), which the table's own R needs. The vapour figures play no part."""
    rows = ((0.020, 0.87, 15), (0.240, 0.30, 5), (0.015, 0.70, 15))
    wall = assembly([layer(i, d=d, lam=lam, mu=mu) for i, (d, lam, mu) in enumerate(rows, 1)])
    _, nodes = section(wall, strip=99.0)
    assert nodes.total - 0.17 == pytest.approx(0.844, abs=0.001)
    assert 1 / nodes.total == pytest.approx(0.986, abs=0.001)
    temperatures = nodes.temperatures(20.0, -10.0)[::-1]
    assert temperatures == pytest.approx([16.1, 15.5, -8.1, -8.8], abs=0.1)
    assert saturation_pressure(temperatures[2]) == pytest.approx(306, abs=1.0)
