"""Heat through the ground. One outside table; the rest are reference cases of our own, for no example that the standard
itself issues was within reach."""

from math import log, pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builders import assembly, layer
from layerfolio.catalogue.ground import ground_data
from layerfolio.formulas import ground as f
from layerfolio.steps.trace import Choice
from layerfolio.studies.ground import BASEMENT, SLAB, SUSPENDED, WALL, ground_studies, ground_study
from layerfolio.studies.thermal import thermal_study
from layerfolio.units.quantity import Quantity
from traceable import each_number_is_given_or_found

TABLE_C1 = (
    (0.13, 0.11, 0.10, 0.09, 0.08), (0.22, 0.18, 0.16, 0.14, 0.13), (0.30, 0.24, 0.21, 0.18, 0.17),
    (0.37, 0.29, 0.25, 0.22, 0.19), (0.44, 0.34, 0.28, 0.24, 0.22), (0.49, 0.38, 0.31, 0.27, 0.23),
    (0.55, 0.41, 0.34, 0.29, 0.25), (0.60, 0.44, 0.36, 0.30, 0.26), (0.65, 0.47, 0.38, 0.32, 0.27),
    (0.70, 0.50, 0.40, 0.33, 0.28), (0.74, 0.52, 0.41, 0.34, 0.28), (0.78, 0.55, 0.43, 0.35, 0.29),
    (0.82, 0.57, 0.44, 0.35, 0.30), (0.86, 0.59, 0.45, 0.36, 0.30), (0.89, 0.61, 0.46, 0.37, 0.31),
    (0.93, 0.62, 0.47, 0.37, 0.32), (0.96, 0.64, 0.47, 0.38, 0.32), (0.99, 0.65, 0.48, 0.39, 0.32),
    (1.02, 0.66, 0.49, 0.39, 0.33), (1.05, 0.68, 0.50, 0.40, 0.33),
)  # fmt: skip
"""Rows: perimeter over area 0.05 to 1.00 by 0.05; columns: insulation 0, 0.5, 1, 1.5, 2 m2.K/W."""

SIZE = {"conductivity": 2.0, "perimeter": 36.0, "wall_thickness": 0.3}  # of a floor of 10 m by 8 m


def floor(resistance=0.0, *, area=80.0, kind="slab", faces="ground", ground=SIZE, layers=None):
    """A floor or wall of one layer (none at all with `layers=()`) that meets the ground, and its study."""
    rows = [layer(1, R=resistance)] if layers is None else layers
    one = assembly(
        rows, kind=kind, faces=faces, area=Quantity(area, "area", f"{area:g} m2") if area else None,
        ground=dict(ground), method="isothermal-planes", inside=0.16, outside=0.0,
    )  # fmt: skip
    return one, thermal_study(one)


def u(*args, **kwargs):
    return ground_study(*floor(*args, **kwargs)).transmittance


@pytest.mark.parametrize("row", range(len(TABLE_C1)))
def test_the_former_english_table_of_solid_ground_floors(row):
    """Approved Document L of England, Appendix C, Table C1 (solid ground floors on clay, walls 0.3 m), read in a transcription
    of the table in a public text index: all cells within its two decimals."""
    ratio = 0.05 * (row + 1)
    for insulation, printed in zip((0, 0.5, 1, 1.5, 2), TABLE_C1[row], strict=True):
        ground = {"conductivity": 1.5, "perimeter": 100 * ratio, "wall_thickness": 0.3}
        found = ground_study(*floor(insulation, area=100.0, ground=ground, layers=() if not insulation else None))
        assert found.transmittance == pytest.approx(printed, abs=0.005 + 1e-6)


class TestOwnReferenceCases:
    """Worked by hand from the same formulas: they hold the chain of steps together and are no outside checks."""

    @pytest.mark.parametrize(
        ("resistance", "equivalent", "expected"), [(0.0, 0.72, 0.821), (1.0, 2.72, 0.435), (3.5, 7.72, 0.205)]
    )
    def test_slab(self, resistance, equivalent, expected):
        found = ground_study(*floor(resistance))
        assert (found.kind, found.missing) == (SLAB, ())
        assert found.characteristic_dimension == pytest.approx(4.444, abs=5e-4)
        assert found.equivalent_thickness == pytest.approx(equivalent)
        assert found.transmittance == pytest.approx(expected, abs=5e-4)

    def test_vertical_edge_insulation(self):
        edge = {"direction": "vertical", "width": 0.6, "thickness": 0.05, "resistance": 1.5}
        found = ground_study(*floor(layers=(), ground=SIZE | {"edge_insulation": edge}))
        psi = next(step.value for step in found.trace.steps() if step.formula is f.vertical_edge)
        assert psi == pytest.approx(-0.444, abs=5e-4)
        assert found.transmittance == pytest.approx(0.621, abs=6e-4)

    def test_suspended_floor(self):
        below = {"height": 0.3, "wall_transmittance": 1.5, "vents": 1500.0, "wind_speed": 4.0, "shielding": "average"}
        found = ground_study(*floor(4.0, kind="floor", faces="outside air", ground=SIZE | {"underfloor": below}))
        values = {step.formula.name: step.value for step in found.trace.steps()}
        assert found.kind == SUSPENDED
        assert values["suspended_part"] == pytest.approx(0.2304, abs=5e-5)
        assert values["bottom_transmittance"] == pytest.approx(0.8214, abs=5e-5)
        assert values["underfloor_transmittance"] == pytest.approx(0.3004, abs=5e-5)
        assert found.transmittance == pytest.approx(0.191, abs=5e-4)

    def test_basement(self):
        below = ground_study(*floor(1.0, ground=SIZE | {"depth": 2.0}))
        wall = floor(2.0, kind="foundation-wall", ground={"conductivity": 2.0, "depth": 2.0})
        found = ground_study(*wall, below)
        assert (below.kind, found.kind) == (BASEMENT, WALL)
        assert below.transmittance == pytest.approx(0.353, abs=5e-4)
        assert found.transmittance == pytest.approx(0.311, abs=5e-4)
        assert ground_study(*wall).transmittance >= found.transmittance  # without the floor: the greatest it may be


def test_a_basement_wall_takes_the_thickness_of_its_one_floor():
    below, wall = floor(1.0, ground=SIZE | {"depth": 2.0}), floor(2.0, kind="wall", ground={"conductivity": 2.0, "depth": 2.0})
    other, plain = floor(1.5, ground=SIZE | {"depth": 2.0}), floor(2.0, kind="wall", faces="outside air")

    def studied(**made):
        return ground_studies({n: one for n, (one, _) in made.items()}, {n: study for n, (_, study) in made.items()})

    one_floor = studied(W1=wall, W2=plain, S1=below)
    assert list(one_floor) == ["W1", "S1"]
    assert one_floor["W1"].transmittance == ground_study(*wall, one_floor["S1"]).transmittance
    assert studied(W1=wall, S1=below, S2=other)["W1"].transmittance == ground_study(*wall).transmittance


def test_the_characteristic_dimension_is_not_area_over_perimeter():
    """A transcription of a national guide prints A / P, a slip: half the perimeter divides."""
    assert ground_study(*floor()).characteristic_dimension == pytest.approx(80 / 18)


class TestWhatIsMissing:
    def test_the_conductivity_of_the_ground_is_not_invented(self):
        found = ground_study(*floor(ground={"perimeter": 36.0}))
        assert found.missing == ("ground.conductivity",)
        assert (found.transmittance, found.equivalent_thickness) == (None, None)

    def test_what_may_be_stated_rests_on_memory(self):
        kinds = [(title, figure.value, figure.origin.mark) for title, figure in ground_data().kinds]
        assert kinds == [
            ("clay or silt", 1.5, "memory"), ("sand or gravel", 2.0, "memory"), ("homogeneous rock", 3.5, "memory")
        ]  # fmt: skip

    def test_area_and_perimeter(self):
        assert ground_study(*floor(area=None, ground={"conductivity": 2.0})).missing == ("area", "ground.perimeter")

    def test_the_thickness_of_the_walls_is_a_printed_choice(self):
        size = {key: value for key, value in SIZE.items() if key != "wall_thickness"}
        found = ground_study(*floor(1.0, ground=size))
        assert found.transmittance == pytest.approx(u(1.0))
        assert any("0.30 m is taken" in e.text for e in found.trace.entries if isinstance(e, Choice))

    def test_a_basement_wall_wants_its_depth(self):
        assert ground_study(*floor(2.0, kind="foundation-wall", ground={"conductivity": 2.0})).missing == ("ground.depth",)

    def test_an_underfloor_space_wants_its_answers(self):
        found = ground_study(*floor(2.0, kind="floor", faces="outside air", ground=SIZE | {"underfloor": {"height": 0.3}}))
        assert found.missing == tuple(
            f"ground.underfloor.{key}" for key in ("wall_transmittance", "vents", "wind_speed", "shielding")
        )

    def test_a_layer_without_a_figure(self):
        found = ground_study(*floor(layers=[layer(1, name="grit")]))
        assert found.missing == ("a thermal figure of layer grit",)

    def test_what_does_not_meet_the_ground_has_no_study(self):
        assert ground_study(*floor(2.0, kind="wall", faces="outside air")) is None
        assert ground_study(*floor(2.0, kind="floor", faces="outside air")) is None


def test_films_are_the_standards_whatever_the_set_takes():
    """The assemblies here carry 0.16 and 0 as films; the equivalent thickness takes 0.17 and 0.04."""
    assert ground_study(*floor(1.0)).equivalent_thickness == pytest.approx(0.3 + 2 * (0.17 + 1.0 + 0.04))


resistances, sizes, conductivities = st.floats(0.01, 10), st.floats(9, 2000), st.floats(0.5, 4)


def square(area, conductivity, **more):
    return {"conductivity": conductivity, "perimeter": 4 * area**0.5, "wall_thickness": 0.3} | more


@given(resistances, sizes, st.floats(1.05, 4), conductivities)
def test_a_larger_floor_of_the_same_shape_loses_less(resistance, area, factor, conductivity):
    """Within each branch; across the join the two formulas part by an seven-thousandth (test below)."""
    small, large = (
        ground_study(*floor(resistance, area=a, ground=square(a, conductivity))) for a in (area, area * factor)
    )
    same = (small.equivalent_thickness < small.characteristic_dimension) == (
        large.equivalent_thickness < large.characteristic_dimension
    )
    assert large.transmittance < small.transmittance * (1 if same else 1.0002)


@given(resistances, st.floats(0.05, 3), sizes, conductivities)
def test_more_insulation_loses_less(resistance, more, area, conductivity):
    """Over both branches: at the join the step up is smaller than what this much insulation takes off."""
    ground = square(area, conductivity)
    assert u(resistance + more, area=area, ground=ground) < u(resistance, area=area, ground=ground)


@given(st.floats(1, 40), conductivities)
def test_the_two_branches_part_by_an_seven_thousandth_at_their_join(dimension, conductivity):
    """At d_f = B the ratio does not depend on size or ground: 2 ln(π + 1) / (π + 1) against 1 / 1.457."""
    moderate = f.slab_transmittance(lam_g=conductivity, B=dimension, d_f=dimension)
    good = f.insulated_slab_transmittance(lam_g=conductivity, B=dimension, d_f=dimension)
    assert good / moderate == pytest.approx((pi + 1) / (2 * log(pi + 1) * 1.457))
    assert good / moderate == pytest.approx(1.000136, abs=1e-6)


@given(
    resistances, sizes, conductivities, st.sampled_from(["vertical", "horizontal"]),
    st.floats(0.2, 4), st.floats(0.01, 0.3), st.floats(0.0, 6),
)  # fmt: skip
def test_edge_insulation_never_raises_the_transmittance(r, area, conductivity, direction, width, thickness, resistance):
    edge = {"direction": direction, "width": width, "thickness": thickness, "resistance": resistance}
    with_edge = u(r, area=area, ground=square(area, conductivity, edge_insulation=edge))
    assert 0 < with_edge <= u(r, area=area, ground=square(area, conductivity))


@given(resistances, sizes, st.floats(0.1, 3), conductivities)
def test_a_floor_below_the_ground_loses_less_than_one_on_it(resistance, area, depth, conductivity):
    deep = u(resistance, area=area, ground=square(area, conductivity, depth=depth))
    assert deep < u(resistance, area=area, ground=square(area, conductivity)) * 1.0002


@given(resistances, st.floats(0.2, 3), conductivities, st.floats(0.05, 10))
def test_a_wall_without_its_floor_has_the_greatest_value(resistance, depth, conductivity, floor_resistance):
    wall = floor(resistance, kind="foundation-wall", ground={"conductivity": conductivity, "depth": depth})
    below = ground_study(*floor(floor_resistance, ground=square(80.0, conductivity, depth=depth)))
    assert ground_study(*wall).transmittance >= ground_study(*wall, below).transmittance * (1 - 1e-12)


UNDERFLOOR = {
    "height": 0.6, "wall_transmittance": 2.8, "vents": 1500.0, "wind_speed": 4.0, "shielding": "average",
}  # fmt: skip
EDGE = {"direction": "vertical", "width": 0.6, "thickness": 0.05, "resistance": 1.5}
EVERY_KIND = {
    "slab": floor(1.0),
    "edge": floor(1.0, ground=SIZE | {"edge_insulation": EDGE}),
    "suspended": floor(1.0, kind="floor", faces="vented space", ground=SIZE | {"underfloor": UNDERFLOOR}),
    "basement": floor(1.0, ground=SIZE | {"depth": 2.0}),
    "wall": floor(1.0, kind="wall", ground=SIZE | {"depth": 2.0}),
}


@pytest.mark.parametrize("kind", EVERY_KIND)
def test_every_number_of_a_step_is_given_with_its_source_or_found_above(kind):
    # R of the layers: the steps of the thermal resistance stand on the same sheet
    each_number_is_given_or_found(ground_study(*EVERY_KIND[kind]).trace, {"R"})
