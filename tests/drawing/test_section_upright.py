"""A wall cut from top to bottom: what is seen, what is cut, and the laws of every drawing."""

from dataclasses import replace

import clothed
import pictured
import pytest
from hypothesis import HealthCheck, given, settings
from readings import areas, lines, texts
from test_section_laws import KEYWORDS, assemblies, check, stated

import builders
from layerfolio.drawing.geometry import bounds
from layerfolio.drawing.layout_stack import SHEET
from layerfolio.drawing.section import section

WALLS = {"wall": pictured.wall, "fourteen": pictured.fourteen, "straw": pictured.straw, "two": pictured.two_layers,
         "unknown": pictured.unknown, "foundation": pictured.foundation_wall, **clothed.CLOTHED}  # fmt: skip


def upright(assembly, **kwargs):
    return section(assembly, view="vertical", **kwargs)


def boxes(drawing, layer):
    return [bounds(one.outline) for one in areas(drawing) if one.layer == layer]


@pytest.mark.parametrize("units", ["metric", "customary"])
@pytest.mark.parametrize("name", WALLS)
def test_shown_walls_keep_the_laws_upright(name, units):
    check(WALLS[name](), units=units, view="vertical")


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(clothed.clothed(assemblies()), KEYWORDS)
def test_any_wall_keeps_the_laws_upright(assembly, keywords):
    check(replace(assembly, kind="wall", slope=90.0), view="vertical", **keywords)


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(clothed.clothed(assemblies()), KEYWORDS)
def test_any_clothed_assembly_keeps_the_laws(assembly, keywords):
    check(assembly, **keywords)


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(assemblies())
def test_depth_upright_is_true_to_scale(assembly):
    assembly = replace(assembly, kind="wall", slope=90.0)
    drawing = upright(assembly)
    if any("broken" in note or "not given" in note for note in drawing.notes):
        return
    deep = [one for one in assembly.layers if one.thickness and (one.thickness.value >= SHEET or one.kind == "cavity")]
    ticks = [(a[0] + b[0]) / 2 for a, b in (one.points for one in lines(drawing, "tick")) if (a[1] + b[1]) / 2 < 60]
    if deep and texts(drawing, "overall"):
        assert (max(ticks) - min(ticks)) * drawing.scale >= 1000 * sum(one.thickness.value for one in deep) - 0.1
        assert stated(assembly) == pytest.approx(float(texts(drawing, "overall")[0].text), abs=0.51 * len(deep))


def test_the_outside_is_at_the_left_and_layers_follow_to_the_inside():
    drawing = upright(pictured.wall())
    left, right = sorted(texts(drawing, "side"), key=lambda one: one.at[0])
    assert (left.text, right.text) == ("OUTSIDE", "INSIDE")
    starts = [min(x0 for x0, *_ in boxes(drawing, one.name)) for one in pictured.wall().layers]
    assert starts == sorted(starts)


def test_both_views_have_one_scale_and_one_thickness():
    plan, up = section(pictured.wall()), upright(pictured.wall())
    assert plan.scale == up.scale == 5
    assert [one.text for one in texts(plan, "overall")] == [one.text for one in texts(up, "overall")]


def test_what_is_cut_in_plan_is_seen_upright_and_the_other_way_round():
    """Studs and upright battens run up the paper; level battens are cut and stand at their spacing."""
    drawing = upright(pictured.wall())
    (x0, y0, x1, y1), *more = boxes(drawing, "hemp batts/stud")
    assert not more and y1 - y0 > 20 and (x1 - x0) * 5 == pytest.approx(184)
    battens = sorted(boxes(drawing, "service cavity/batten"), key=lambda one: one[1])
    assert len(battens) == 2
    first, second = ((one[1] + one[3]) / 2 for one in battens)
    assert (second - first) * 5 == pytest.approx(400) and (battens[0][3] - battens[0][1]) * 5 == pytest.approx(38)


@pytest.mark.parametrize("direction, across", [("vertical", False), ("horizontal", True)])
def test_boards_lie_level_unless_their_name_says_otherwise(direction, across):
    """Level cladding is cut across its grain, upright cladding along it."""
    boards = pictured.layer(1, f"{direction} boards", 19, "timber-board")
    drawing = upright(builders.assembly([boards, pictured.layer(2, "Wool", 140, "batt")]))
    assert ("timber" in drawing.families) == across


def test_a_roof_has_no_plan_and_its_own_section_as_the_other_view():
    with pytest.raises(ValueError, match="no section in plan"):
        section(pictured.roof(), view="plan")
    assert section(pictured.roof(), view="vertical") == section(pictured.roof())
    assert section(pictured.wall(), view="plan") == section(pictured.wall())


@pytest.mark.parametrize("room", [120.0, 140.0, 170.0])
def test_it_keeps_to_the_height_that_is_left(room):
    assert upright(pictured.wall(), room=room).height <= room


def test_same_wall_gives_the_same_drawing():
    for make in WALLS.values():
        assert upright(make()) == upright(make())
