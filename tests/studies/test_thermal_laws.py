"""Laws of the thermal study over many assemblies."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from builders import assembly, layer, member
from layerfolio.studies.paths import MOST_GROUPS, paths
from layerfolio.studies.thermal import COMBINED, PARALLEL, PLANES, thermal_study

resistances = st.floats(0.01, 12)
shares = st.floats(0.005, 0.6)


@st.composite
def walls(draw, framings=4):
    count = draw(st.integers(1, 6))
    rows = []
    for number in range(1, count + 1):
        frame = None
        if number <= framings and draw(st.booleans()):
            frame = member(draw(shares), R=draw(resistances), member_id=draw(st.sampled_from(["", "", "a", "b"])))
        rows.append(layer(number, R=draw(resistances), frame=frame))
    return assembly(rows, inside=draw(st.floats(0.1, 0.2)), outside=draw(st.floats(0.03, 0.2)))


@given(walls())
def test_shares_of_the_paths_add_up_to_one(wall):
    assert sum(p.share for p in paths(thermal_study(wall).layers)) == pytest.approx(1)


@given(walls())
def test_each_layer_keeps_its_framing_share_over_all_paths(wall):
    study = thermal_study(wall)
    for heat in study.layers:
        if heat.member_resistance is not None:
            held = sum(p.share for p in paths(study.layers) if heat.layer.number in p.in_member)
            assert held == pytest.approx(heat.layer.member.share.value)


@given(walls())
def test_limits_are_ordered_and_carry_their_methods(wall):
    by = thermal_study(wall).by_method
    assert by[COMBINED].upper_limit == by[PARALLEL].resistance
    assert by[COMBINED].lower_limit == by[PLANES].resistance
    assert by[PLANES].resistance <= by[COMBINED].resistance * (1 + 1e-12)
    assert by[COMBINED].resistance <= by[PARALLEL].resistance * (1 + 1e-12)
    for result in by.values():
        assert result.transmittance * result.resistance == pytest.approx(1)


@given(walls())
def test_share_of_heat_through_framing_is_a_share(wall):
    share = thermal_study(wall).framing_share_of_heat
    assert share is None or 0 <= share <= 1 + 1e-12


@given(walls(), st.floats(15, 25), st.floats(-40, 10))
def test_temperatures_fall_from_the_room_to_the_outside(wall, indoor, outdoor):
    faces = thermal_study(wall, indoor=indoor, outdoor=outdoor).interfaces
    profile = [outdoor, *(x.temperature for x in faces), indoor]
    assert profile == sorted(profile)


def test_members_of_one_id_overlap_and_others_cross():
    """Flange and web zones of one I-joist: the web share lies wholly inside the flange share."""

    def zone(number, share, member_id):
        return layer(number, R=2.0, frame=member(share, R=0.5, member_id=member_id))

    joist = thermal_study(assembly([zone(1, 0.08, "J"), zone(2, 0.017, "J"), zone(3, 0.08, "J")])).layers
    assert sorted((round(p.share, 3), len(p.in_member)) for p in paths(joist)) == [(0.017, 3), (0.063, 2), (0.92, 0)]
    crossed = thermal_study(assembly([zone(1, 0.08, ""), zone(2, 0.017, ""), zone(3, 0.08, "")])).layers
    assert len(paths(crossed)) == 8


def test_ratio_of_the_limits_on_both_sides_of_one_and_a_half():
    """ISO 6946:2017, 6.7.2.1: the combined method is for ratios up to 1.5."""

    def wall(member_r):
        return assembly([layer(1, R=4.0, frame=member(0.2, R=member_r)), layer(2, R=1.5)])

    inside = thermal_study(wall(0.5)).by_method[COMBINED]
    outside = thermal_study(wall(0.05)).by_method[COMBINED]
    assert inside.upper_limit / inside.lower_limit <= 1.5 and inside.within_limits
    assert outside.upper_limit / outside.lower_limit > 1.5 and not outside.within_limits
    assert outside.resistance > 0


def test_a_missing_figure_gives_no_result_and_names_the_layer():
    study = thermal_study(assembly([layer(1, R=1.0), layer(2, d=0.1, name="unknown board")]))
    assert study.missing == ("unknown board",)
    assert study.by_method == {} and study.asked is None


def test_layers_outside_a_ventilated_cavity_do_not_count():
    rows = [layer(1, R=5.0, counts=False), layer(2, d=0.04, kind="cavity", cavity="ventilated", counts=False)]
    inner = layer(3, R=2.0)
    assert thermal_study(assembly([*rows, inner])).asked.resistance == pytest.approx(2.17)


def test_too_many_independent_framings_are_refused():
    rows = [layer(i, R=1.0, frame=member(0.1, R=0.5)) for i in range(1, MOST_GROUPS + 2)]
    with pytest.raises(ValueError, match="independent framings"):
        thermal_study(assembly(rows))
