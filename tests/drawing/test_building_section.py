"""The section through the whole building: put together without a gap, each control followed from ground to roof."""

from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from readings import flat, inside_its_frame, overlapping_labels
from test_detail_laws import assembly_of, overlaps

from layerfolio.assembly.junction_types import Junction
from layerfolio.drawing.building.cut import BuildingCut
from layerfolio.drawing.building.drawn import building_drawn
from layerfolio.drawing.building.parts import _runs
from layerfolio.drawing.building.section import building_section
from layerfolio.drawing.marks import Area


@st.composite
def buildings(draw):
    made = {"W1": assembly_of(draw, "W1", "wall")}
    made["X1"] = assembly_of(draw, "X1", draw(st.sampled_from(("slab", "floor"))))
    made["R1"] = assembly_of(draw, "R1", draw(st.sampled_from(("roof", "ceiling"))))
    kinds = [("sill", ("W1", "X1"))]
    if draw(st.booleans()):
        kinds += [("window sill", ("W1", "A1")), ("window head", ("W1", "A1"))]
    if draw(st.booleans()):
        kinds.append(("rim", ("W1", "X1")))
    kinds.append(("eave", ("W1", "R1")))
    if draw(st.booleans()) and made["R1"].kind == "roof":
        kinds.append(("ridge", ("R1",)))
    size = draw(st.sampled_from(((0.9, 1.2), (1.8, 0.6), (1.0, 2.0))))
    junctions = [
        Junction(number, kind, of, kind, (), overhang=0.4, opening_size=size, sill_height=draw(st.sampled_from((None, 0.8, 1.4))))
        for number, (kind, of) in enumerate(kinds, 1)
    ]
    storeys = draw(st.sampled_from(((), (2.4,), (2.7, 2.5))))
    return junctions, made, storeys, draw(st.sampled_from((None, 2.0, 3.5)))


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(buildings(), st.sampled_from((20.0, 50.0)))
def test_pieces_lie_beside_each_other_and_controls_run_through(building, scale):
    junctions, made, storeys, span = building
    detail = building_section(BuildingCut(junctions, made, storeys, span, scale))
    assert overlaps(detail.pieces) == []
    for trace in detail.traces:
        ends = [point for run in trace.runs for point in (run[0], run[-1])]
        assert len({(round(x), round(y)) for x, y in ends}) == len(ends)  # runs that touch are one run
    assert {one.sheet for one in detail.bubbles} <= {f"D{one.number}" for one in junctions}


@settings(max_examples=8, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(buildings(), st.sampled_from(("metric", "customary")))
def test_it_keeps_to_its_page(building, units):
    drawn = building_drawn(*building, units, room=191.0)
    inside_its_frame(drawn.drawing)
    assert overlapping_labels(drawn.drawing) == []
    assert all(one.outline for one in flat(drawn.drawing.marks) if isinstance(one, Area))


def test_runs_are_joined_whichever_way_they_were_given():
    runs = [((0.0, 0.0), (0.0, 5.0)), ((3.0, 9.0), (0.0, 9.0)), ((0.0, 9.0), (0.0, 5.0))]
    assert _runs(runs) == (((0.0, 0.0), (0.0, 9.0), (3.0, 9.0)),)


def test_no_section_without_a_wall_on_a_floor_or_under_a_roof():
    assert building_drawn([Junction(1, "ridge", ("R1",), "Ridge", ())], {}, (), None, "metric") is None


@pytest.mark.parametrize(("span", "shorter"), [(1.1, False), (4.0, True)])
def test_a_long_span_is_shortened_before_a_smaller_scale_is_taken(chandlery_meeting, span, shorter):
    junctions, made = chandlery_meeting
    drawn = building_drawn(junctions, made, (2.4,), span, "metric", room=191.0)
    assert drawn.drawing.scale == 25
    assert any("shorter" in one for one in drawn.detail.remarks) == shorter


def test_the_example_is_followed_from_slab_to_ridge(chandlery_meeting):
    """Air and vapour: a line from the slab to the window, one from there over the ridge; heat: one line through the pane."""
    junctions, made = chandlery_meeting
    detail = building_section(BuildingCut(junctions, made, (2.4,), 2.45, 25.0))
    runs = {one.letters: one.runs for one in detail.traces}
    assert (len(runs["AV"]), len(runs["T"])) == (2, 1)
    assert not any(one.gaps for one in detail.traces)
    shown = {one.number for one in detail.bubbles}
    assert shown == {str(one.number) for one in junctions if one.kind in ("sill", "window sill", "window head", "eave", "ridge")}


@pytest.fixture(scope="module")
def chandlery_meeting():
    from pathlib import Path

    from layerfolio.dossier import compile_dossier, open_project

    folder = Path(__file__).parents[2] / "examples" / "chandlery"
    dossier = compile_dossier(open_project(folder))
    return dossier.junctions, dossier.assemblies


def test_a_roof_is_called_broken_off_only_where_there_is_one(chandlery_meeting):
    junctions, made = chandlery_meeting
    words = "the roof is broken off"
    assert any(words in one for one in building_section(BuildingCut(junctions, made, (2.4,), None, 25.0)).remarks)
    ceiling = {**made, "R1": replace(made["R1"], kind="ceiling")}
    assert not any(words in one for one in building_section(BuildingCut(junctions, ceiling, (2.4,), None, 25.0)).remarks)
