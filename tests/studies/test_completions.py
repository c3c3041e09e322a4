"""Corrections, unheated spaces and slightly ventilated cavities of ISO 6946.

No published example with printed results was within reach: the figures here are reference cases of our own, from inputs
worked by hand. The formulas themselves were compared with a transcription of the standard as numbered functions.
"""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builders import assembly, layer, member
from layerfolio.assembly.beside import Fasteners, InvertedRoof, UnheatedSpace
from layerfolio.catalogue.completions import completions
from layerfolio.steps.trace import Choice
from layerfolio.studies.thermal import COMBINED, PARALLEL, PLANES, thermal_study
from layerfolio.units.quantity import Quantity

ISO = completions("iso")
STEEL = ISO.conductivities["steel"]


def pins(depth=None, per_area=5.0, diameter=0.0048, conductivity=STEEL, **more):
    values = {"spacing": None, "rows": None} | more
    return Fasteners("steel pins", conductivity, diameter, per_area, depth=depth, **values)


def wall(fasteners=None, voids=None, *, inside=0.1, outside=0.04, **more):
    """Concrete 200 mm of 2.3 W/(m.K) inside insulation 160 mm of 0.036; films 0.14 together, as in the reference case."""
    insulation = replace(layer(1, d=0.16, lam=0.036, insulating=True), fasteners=fasteners, air_voids=voids)
    return assembly([insulation, layer(2, d=0.2, lam=2.3)], inside=inside, outside=outside, completions=ISO, **more)


def corrected(*args, **kwargs):
    return thermal_study(wall(*args, **kwargs))


class TestFasteners:
    def test_through_the_whole_layer(self):
        """U 0.2141; 0.0205 is 9.6 % of it, so it is added: 0.235."""
        study = corrected(pins())
        assert study.asked.transmittance == pytest.approx(0.2141, abs=5e-5)
        assert study.corrections.fasteners == pytest.approx(0.0205, abs=5e-5)
        assert study.corrections.total / study.asked.transmittance == pytest.approx(0.096, abs=5e-4)
        assert study.corrections.counted
        assert study.final.transmittance == pytest.approx(0.235, abs=5e-4)

    def test_recessed(self):
        assert corrected(pins(0.110)).corrections.fasteners == pytest.approx(0.0141, abs=5e-5)

    def test_number_from_spacing_and_rows(self):
        stated, spaced = corrected(pins()), corrected(pins(per_area=None, spacing=0.4, rows=0.5))
        assert spaced.corrections.fasteners == pytest.approx(stated.corrections.fasteners)

    def test_stainless_steel_in_proportion(self):
        stainless = corrected(pins(conductivity=ISO.conductivities["stainless steel"]))
        assert stainless.corrections.fasteners == pytest.approx(corrected(pins()).corrections.fasteners * 17 / 50)

    def test_plastic_needs_none(self):
        study = corrected(pins(conductivity=None, conducts_poorly=True))
        assert (study.corrections.total, study.corrections.counted) == (0.0, False)
        assert study.final == study.asked

    def test_what_is_missing_is_said(self):
        study = corrected(pins(per_area=None, lacking=("per_area",)))
        assert study.corrections.total == 0
        assert any("per_area" in e.because for e in study.trace.entries if isinstance(e, Choice))

    def test_outside_a_ventilated_cavity_they_count_for_nothing(self):
        cladding = replace(layer(1, d=0.02, lam=0.13, counts=False), fasteners=pins())
        one = assembly([cladding, layer(2, d=0.16, lam=0.036)], completions=ISO)
        assert thermal_study(one).corrections.total == 0


@pytest.mark.parametrize(("level", "expected"), [(0, 0.0), (1, 0.0091), (2, 0.0362)])
def test_air_voids_by_level(level, expected):
    assert corrected(voids=level).corrections.air_voids == pytest.approx(expected, abs=5e-5)


def test_rain_under_the_insulation_of_an_inverted_roof():
    """2.5 mm a day at 0.04: 0.1 times the square of 4.444 / 4.671."""
    roof = assembly(
        [layer(1, d=0.16, lam=0.036, insulating=True), layer(2, s_d=100, kind="membrane", serves=("water control",)),
         layer(3, d=0.2, lam=2.3)],
        inside=0.1, outside=0.04, completions=ISO, inverted_roof=InvertedRoof(2.5, ISO.drainage), kind="roof",
    )  # fmt: skip
    assert thermal_study(roof).corrections.inverted_roof == pytest.approx(0.1 * (4.4444 / 4.6714) ** 2, rel=1e-4)


@pytest.mark.parametrize(("number", "counted"), [(1.56, False), (1.58, True)])
def test_under_three_per_cent_they_are_dropped(number, counted):
    """5 pins are 9.563 %, so 3 % lies at 1.5685 pins a square metre."""
    study = corrected(pins(per_area=number))
    share = study.corrections.total / study.asked.transmittance
    assert (share >= 0.03) is counted is study.corrections.counted
    assert (study.final != study.asked) is counted
    dropped = any("dropped" in e.text for e in study.trace.entries if isinstance(e, Choice))
    assert dropped is not counted


def test_methods_stay_uncorrected_and_without_anything_stated_there_are_none():
    plain, study = thermal_study(replace(wall(), completions=None)), corrected(pins(), 2)
    assert plain.corrections is None
    assert study.by_method == plain.by_method


@given(
    st.one_of(st.none(), st.floats(0.01, 0.3)), st.floats(0.1, 20), st.floats(0.002, 0.012), st.sampled_from([None, 0, 1, 2]),
)  # fmt: skip
def test_a_corrected_transmittance_is_never_below_the_plain_one(depth, number, diameter, level):
    study = corrected(pins(depth, number, diameter), level)
    assert study.final.transmittance >= study.asked.transmittance
    assert study.final.transmittance * study.final.resistance == pytest.approx(1)


def slight(openings, frame=None):
    """A wall with a cavity between a masonry leaf and insulation, resolved both ways."""
    leaf, air = layer(1, d=0.1, lam=0.8), layer(2, R=0.18, d=0.04, kind="cavity", cavity="slightly ventilated")
    inner = [layer(3, d=0.14, lam=0.04, frame=frame), layer(4, d=0.0125, lam=0.25)]
    still = assembly([leaf, air, *inner])
    outer = [replace(leaf, counts=False), replace(air, counts=False, resistance=None)]
    return assembly([*outer, *inner], outside=0.13, still=still, openings=openings), still


@pytest.mark.parametrize("frame", [None, member(0.15, lam=0.13)], ids=["plain", "framed"])
class TestSlightlyVentilated:
    def test_between_still_and_well_ventilated(self, frame):
        one, still = slight(1000.0, frame)
        middle, closed = thermal_study(one), thermal_study(still)
        opened = thermal_study(replace(one, still=None, openings=None))
        for method in (PLANES, PARALLEL, COMBINED):
            ends = closed.by_method[method].resistance, opened.by_method[method].resistance
            assert middle.by_method[method].resistance == pytest.approx(sum(ends) / 2)

    @pytest.mark.parametrize("openings", [500.0, 1500.0])
    def test_the_ends_are_the_two_limits(self, frame, openings):
        one, still = slight(openings, frame)
        end = still if openings == 500 else replace(one, still=None, openings=None)
        for method, result in thermal_study(one).by_method.items():
            assert result.resistance == pytest.approx(thermal_study(end).by_method[method].resistance)

    def test_limits_still_carry_their_methods(self, frame):
        by = thermal_study(slight(700.0, frame)[0]).by_method
        assert by[COMBINED].upper_limit == by[PARALLEL].resistance
        assert by[COMBINED].lower_limit == by[PLANES].resistance

    @given(st.floats(500, 1499), st.floats(0.1, 200))
    def test_more_openings_lose_more(self, frame, openings, more):
        less = thermal_study(slight(openings, frame)[0]).asked.transmittance
        assert thermal_study(slight(min(openings + more, 1500), frame)[0]).asked.transmittance > less


def test_a_roof_space_adds_its_resistance():
    ceiling = assembly([layer(1, R=5.0)], kind="ceiling", inside=0.10, outside=0.04)
    with_space = replace(ceiling, roof_space=ISO.roof_spaces["sheeted or tiles with underlay"])
    assert thermal_study(with_space).asked.resistance == pytest.approx(5.34)
    assert thermal_study(with_space).by_method[PLANES].resistance == pytest.approx(5.34)
    temperatures = thermal_study(with_space, indoor=20, outdoor=-10).interfaces
    assert temperatures[0].temperature == pytest.approx(-10 + 30 * 0.24 / 5.34)


def test_an_unheated_space_beside():
    """12 m2 towards a space whose walls, 20 m2, let 2 W/(m2.K) through and whose 40 m3 change once an hour: 12 / 53.2."""
    beside = UnheatedSpace(((20.0, 2.0),), 40.0, 1.0)
    one = assembly([layer(1, R=2.0)], area=Quantity(12.0, "area", "12 m2"), outside=0.13, unheated_space=beside)
    assert thermal_study(one).asked.resistance == pytest.approx(0.26 + 2.0 + 12 / 53.2)


def test_conductivities_are_those_of_the_table_of_design_values():
    """ISO 10456 Table 3, as reprinted in the library ht 1.2.0: steel 50, stainless steel 17."""
    assert (STEEL.value, ISO.conductivities["stainless steel"].value) == (50, 17)
    assert {STEEL.origin.mark, ISO.voids[1].origin.mark} == {"found", "memory"}
