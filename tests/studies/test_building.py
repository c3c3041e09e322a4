"""The sum over the envelope: nothing is left out in silence, and laws that hold for every building."""

from types import SimpleNamespace

import pytest
from envelope_builders import frame_and_glass, join, opening, project, wall
from hypothesis import given
from hypothesis import strategies as st

from layerfolio.studies.building import building_study
from layerfolio.studies.openings import opening_study

U = st.floats(0.1, 3.0)
AREA = st.floats(1.0, 300.0)


def study(thermal, openings=None, ground=None, **about):
    whole = project(assemblies=tuple(thermal), **about)
    found = {name: opening_study(name, one, whole) for name, one in (openings or {}).items()}
    return building_study(whole, thermal, ground or {}, found)


def window(**keys):
    return opening(1.0, 1.0, transmittance=1.5, basis="rated", **keys)


class TestAreas:
    def test_stated_areas_are_net(self):
        found = study({"W1": wall(0.2, 50.0)}, {"A1": window(count=3)})
        assert [part.size for part in found.parts] == [50.0, 3.0]

    def test_gross_areas_lose_their_openings(self):
        found = study({"W1": wall(0.2, 50.0), "W2": wall(0.2, 20.0, "W2")}, {"A1": window(count=3)}, gross=True)
        assert [part.size for part in found.parts] == [47.0, 20.0, 3.0]
        assert found.conductance == pytest.approx(0.2 * 67 + 1.5 * 3)

    @pytest.mark.parametrize(("project_says", "assembly_says", "size"), [(True, False, 50.0), (False, True, 49.0)])
    def test_the_assembly_overrides_the_project(self, project_says, assembly_says, size):
        found = study({"W1": wall(0.2, 50.0)}, {"A1": window()}, gross=project_says, own_gross=assembly_says)
        assert found.parts[0].size == size

    def test_openings_as_large_as_the_wall_are_told(self):
        found = study({"W1": wall(0.2, 1.0)}, {"A1": window()}, gross=True)
        assert found.conductance is None and "larger than its openings" in found.parts[0].lacking


class TestWhatIsLacking:
    def test_a_missing_area_is_never_zero(self):
        found = study({"W1": wall(0.2, None), "W2": wall(0.2, 10.0, "W2")})
        assert found.conductance is None and found.heat_loss is None
        assert found.parts[0].conductance is None and found.parts[1].conductance == pytest.approx(2.0)
        assert found.lacking == ("W1: area",)

    def test_a_layer_without_a_figure(self):
        found = study({"W1": wall(None, 10.0)})
        assert found.lacking == ("W1: thermal figures of layer-1",)

    def test_an_opening_without_a_figure(self):
        found = study({"W1": wall(0.2, 10.0)}, {"A1": opening(1.0, 1.0, **frame_and_glass(1.4, None, psi=0.05))})
        assert found.lacking == ("A1: glass.transmittance",)

    def test_a_join_with_psi_and_no_length(self):
        found = study({"W1": wall(0.2, 10.0)}, joins=[join("sill", ("W1", "S1"), None, 0.06)])
        assert found.lacking == ("sill W1, S1: length",)

    def test_a_join_without_psi_is_not_counted_and_lacks_nothing(self):
        found = study({"W1": wall(0.2, 10.0)}, joins=[join("sill", ("W1", "S1"), 28.0, None)])
        assert len(found.parts) == 1 and found.lacking == () and found.conductance == pytest.approx(2.0)

    @pytest.mark.parametrize(("known", "expected"), [(0.25, 10.0), (None, None)])
    def test_the_ground_counts_by_its_own_study(self, known, expected):
        ground = SimpleNamespace(transmittance=known, missing=() if known else ("perimeter",))
        found = study({"S1": wall(0.5, 40.0, "S1", kind="slab", faces="ground")}, ground={"S1": ground})
        assert found.conductance == (pytest.approx(expected) if expected else None)
        assert found.lacking == (() if known else ("S1: ground: perimeter",))

    def test_against_the_ground_the_layers_alone_are_no_figure(self):
        assert study({"S1": wall(0.5, 40.0, "S1", faces="ground")}).lacking == ("S1: a study of the ground",)

    @pytest.mark.parametrize("gone", ["n50", "volume"])
    def test_without_tightness_or_volume_no_total(self, gone):
        loss = study({"W1": wall(0.2, 10.0)}, **{gone: None}).heat_loss
        assert loss.transmission == pytest.approx(2.0 * 47) and (loss.air, loss.total) == (None, None)
        assert loss.lacking == {"n50": "air_changes_at_50_pa", "volume": "building.conditioned_volume"}[gone]

    @pytest.mark.parametrize(("aim", "measured", "counted"), [(3.0, None, 3.0), (3.0, 2.0, 2.0), (None, 2.0, 2.0)])
    def test_the_measured_tightness_counts_before_the_aim(self, aim, measured, counted):
        whole = project(n50=aim)
        whole.measured_air_changes_at_50_pa = measured
        found, plain = building_study(whole, {"W1": wall(0.2, 10.0)}, {}, {}), study({"W1": wall(0.2, 10.0)}, n50=counted)
        assert found.heat_loss.air == plain.heat_loss.air

    @pytest.mark.parametrize("gone", ["indoor", "outdoor"])
    def test_without_a_design_temperature_no_heat_loss(self, gone):
        found = study({"W1": wall(0.2, 10.0)}, **{gone: None})
        assert found.heat_loss is None and found.conductance == pytest.approx(2.0)


def test_where_each_figure_was_calculated():
    computed = opening(1.0, 1.0, **frame_and_glass(1.4, 1.1, psi=0.08))
    found = study({"W1": wall(0.2, 50.0)}, {"A1": window(), "A2": computed}, joins=[join("rim", ("W1",), 20, 0.1)])
    assert [part.step for part in found.parts] == ["W1-T", "", "C4", ""]
    assert [part.group for part in found.parts] == ["wall", "window", "window", "join"]


def test_mean_of_the_windows():
    found = study({"W1": wall(0.2, 50.0)}, {"A1": window(), "A2": opening(2.0, 1.5, transmittance=0.9, basis="rated")})
    mean = next(step.value for step in found.trace.steps() if step.formula.name == "mean_transmittance")
    assert mean == pytest.approx((1.5 * 1.0 + 0.9 * 3.0) / 4.0)


@given(st.lists(st.tuples(U, AREA), min_size=1, max_size=12))
def test_the_sum_is_the_sum_of_its_parts_however_it_is_taken(parts):
    thermal = {f"W{i}": wall(u, area, f"W{i}") for i, (u, area) in enumerate(parts)}
    found = study(thermal, {"A1": window()}, joins=[join("rim", ("W1",), 10.0, 0.05)])
    assert found.conductance == pytest.approx(sum(u * area for u, area in parts) + 1.5 + 0.5)
    assert found.conductance == pytest.approx(sum(part.conductance for part in found.parts))


@given(U, AREA, st.floats(0.01, 50.0))
def test_conductance_grows_with_area(u, area, more):
    assert study({"W1": wall(u, area + more)}).conductance > study({"W1": wall(u, area)}).conductance


@given(st.floats(-40, 10), st.floats(0.1, 3.0))
def test_heat_loss_is_linear_in_the_temperature_difference(outdoor, times):
    thermal = {"W1": wall(0.2, 50.0)}
    once = study(thermal, indoor=20.0, outdoor=outdoor).heat_loss.total
    more = study(thermal, indoor=20.0, outdoor=20.0 - times * (20.0 - outdoor)).heat_loss.total
    assert more == pytest.approx(times * once)


@given(st.integers(2, 9), st.booleans())
def test_an_opening_parted_into_single_ones_changes_nothing(count, gross):
    thermal = {"W1": wall(0.2, 50.0)}
    together = study(thermal, {"A1": window(count=count)}, gross=gross)
    apart = study(thermal, {f"A{i}": window() for i in range(count)}, gross=gross)
    assert together.conductance == pytest.approx(apart.conductance)
    assert together.heat_loss.total == pytest.approx(apart.heat_loss.total)


@given(st.floats(0.0, 0.95), st.floats(0.0, 0.95))
def test_recovered_heat_lowers_the_loss(one, other):
    low, high = sorted((one, other))
    loss = lambda recovery: study({"W1": wall(0.2, 50.0)}, flow=0.03, recovery=recovery).heat_loss.total  # noqa: E731
    assert loss(high) <= loss(low) + 1e-9
