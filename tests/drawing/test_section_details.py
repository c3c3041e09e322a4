"""Fasteners, taped seams, built-up and double members in a section."""

from dataclasses import replace
from itertools import combinations

import clothed
import pictured
import pytest
from readings import areas, flat, lines, texts

import builders
from layerfolio.drawing.geometry import bounds, boxes_touch
from layerfolio.drawing.layout_scale import SCALES, level_scale, scale_text
from layerfolio.drawing.marks import Curve
from layerfolio.drawing.section import section


def shanks(drawing):
    """Boxes of the fasteners' shanks."""
    found = [bounds([one[1:] for one in mark.commands if len(mark.commands) and len(one) == 3])
             for mark in flat(drawing.marks) if isinstance(mark, Curve) and mark.role == "fastener"]  # fmt: skip
    return found + [bounds(one.points) for one in lines(drawing, "fastener") if one.role == "fastener"]


def of(drawing, layer):
    return [bounds(one.outline) for one in areas(drawing) if one.layer == layer]


def test_fasteners_are_drawn_at_true_length_in_their_battens():
    """160 mm from the battens' outer face, 38 + 50 mm away from the studs: 72 mm in them."""
    drawing = section(clothed.screwed_wall())
    battens, studs = of(drawing, "ventilated cavity/batten"), of(drawing, "hemp batts/stud")
    pins = shanks(drawing)
    assert len(pins) == len(battens) == 2
    for x0, y0, x1, y1 in pins:
        assert (y1 - y0) * drawing.scale == pytest.approx(160)
        assert any(a < (x0 + x1) / 2 < b and y1 == pytest.approx(top) for a, _, b, top in battens)
        stud = next(one for one in studs if one[0] < x0 and x1 < one[2])
        assert (stud[3] - y0) * drawing.scale == pytest.approx(72)
    assert any("72 mm in the framing" in note and "6 × 160 mm" in note for note in drawing.notes)


def test_fasteners_stated_on_the_boards_begin_at_the_battens_that_press_them_on():
    assert shanks(section(clothed.screwed_wall(160, 4))) == shanks(section(clothed.screwed_wall(160, 2)))


def test_upright_they_stand_at_their_spacing_and_are_dashed_behind_the_cut():
    drawing = section(clothed.screwed_wall(), view="vertical")
    pins = sorted(shanks(drawing), key=lambda one: one[1])
    middles = [(y0 + y1) / 2 for _, y0, _, y1 in pins]
    assert len(pins) == 2 and (middles[1] - middles[0]) * drawing.scale == pytest.approx(400)
    assert all((x1 - x0) * drawing.scale == pytest.approx(160) for x0, _, x1, _ in pins)
    (behind,) = [one for one in lines(drawing, "fastener") if one.role == "fastener"]
    assert behind.dash and bounds(behind.points)[1] == pytest.approx(pins[0][1])
    assert [one.text for one in texts(drawing, "spacing")].count("400") == 2  # battens inside, screws outside


def test_a_fastener_inside_points_outward():
    assembly = clothed.with_layer(pictured.wall("vertical"), 7, fasteners=clothed.fasteners(80, spacing=None))
    drawing = section(assembly)
    inner = min(y0 for _, y0, _, _ in of(drawing, "service cavity/batten"))
    assert {round(y0, 6) for _, y0, _, _ in shanks(drawing)} == {round(inner, 6)}


def test_where_a_layer_is_cut_short_no_fastener_pretends_a_length():
    layers = [
        pictured.layer(1, "Cavity", 38, "air", kind="cavity", frame=pictured.member("batten", 64, 600, "vertical")),
        pictured.layer(2, "Straw", 2600, "straw", insulating=True), pictured.layer(3, "Board", 15, "strand-board"),
    ]  # fmt: skip
    assembly = clothed.with_layer(builders.assembly(layers), 1, fasteners=clothed.fasteners(200))
    drawing = section(assembly)
    assert any("broken" in note for note in drawing.notes) and not shanks(drawing)


def test_tape_lies_over_a_joint_at_a_stud_on_the_panels_inner_face():
    drawing = section(clothed.screwed_wall())
    (tape,) = lines(drawing, "tape")
    (left, y), (right, _) = tape.points
    panel, studs = of(drawing, "panel-15")[0], of(drawing, "hemp batts/stud")
    assert any(a < (left + right) / 2 < b for a, _, b, _ in studs)
    assert y + tape.width / 2 == pytest.approx(panel[1]) and (right - left) * drawing.scale == pytest.approx(60)
    assert "tape" in drawing.families and any("places of joints" in note for note in drawing.notes)
    assert not lines(section(pictured.wall()), "tape")


def test_two_taped_panels_have_their_joints_apart():
    assembly = clothed.with_layer(clothed.screwed_wall(), 4, seams="taped")
    middles = [sum(x for x, _ in one.points) / 2 for one in lines(section(assembly), "tape")]
    assert len(middles) == 2 and abs(middles[0] - middles[1]) > 50


@pytest.mark.parametrize("by_id", [True, False])
def test_a_built_up_stud_is_flange_web_flange_under_each_other(by_id):
    drawing = section(clothed.i_studs(by_id))
    outer, web, inner = (of(drawing, one) for one in ("outer wool/flange", "wool/web", "inner wool/flange"))
    assert len(outer) == len(web) == len(inner) == 2
    for (a0, _, a1, _), (b0, _, b1, _), (c0, _, c1, _) in zip(outer, web, inner, strict=True):
        assert (a0 + a1) / 2 == pytest.approx((b0 + b1) / 2) == pytest.approx((c0 + c1) / 2)
        assert ((a1 - a0) * 5, (b1 - b0) * 5) == (pytest.approx(63), pytest.approx(10))
    assert {"timber", "strand-board", "batt"} <= set(drawing.families)


@pytest.mark.parametrize("view", ["plan", "vertical"])
def test_one_filling_runs_through_beside_a_built_up_stud(view):
    """No face is drawn between its layers; the chain still has a figure for each."""
    drawing = section(clothed.i_studs(), view=view)
    other = replace(clothed.i_studs(), layers=tuple(replace(one, material=str(one.number)) for one in clothed.i_studs().layers))
    faces = len(lines(drawing, "face")) + len(lines(drawing, "outline"))
    parted = section(other, view=view)
    assert len(lines(parted, "face")) + len(lines(parted, "outline")) == faces + 2
    assert [one.text for one in texts(drawing, "thickness")] == [one.text for one in texts(parted, "thickness")]


@pytest.mark.parametrize("staggered, apart", [(False, 0.0), (True, 300.0)])
def test_double_studs_stand_behind_each_other_or_half_a_spacing_beside(staggered, apart):
    drawing = section(clothed.double_studs(staggered))
    outer, inner = (of(drawing, f"{one} wool/stud") for one in ("outer", "inner"))
    least = min(abs(a[0] - b[0]) for a in outer for b in inner)
    assert least * drawing.scale == pytest.approx(apart)


@pytest.mark.parametrize("view", ["plan", "vertical"])
def test_crossed_battens_meet_in_a_corner(view):
    """The batten seen along reaches behind one that is cut, so that both show where they cross."""
    drawing = section(clothed.i_studs(), view=view)
    pairs = [of(drawing, "ventilated cavity/batten"), of(drawing, "cross cavity/batten")]
    grown = [[((x0 - 0.1, y0 - 0.1), (x1 + 0.1, y0 - 0.1), (x1 + 0.1, y1 + 0.1), (x0 - 0.1, y1 + 0.1))
              for x0, y0, x1, y1 in found] for found in pairs]  # fmt: skip
    assert any(boxes_touch(one, other) for one in grown[0] for other in grown[1])


def test_members_of_one_layer_never_overlap():
    for make in clothed.CLOTHED.values():
        found = [one for one in areas(section(make())) if "/" in one.layer]
        for one, other in combinations(found, 2):
            if one.layer == other.layer:
                assert not boxes_touch(one.outline, other.outline)


def test_the_scales_of_both_systems():
    assert SCALES == {"metric": (5, 10, 20), "customary": (4, 8, 12, 16)}
    assert [scale_text(one, "customary").partition(" (")[0] for one in SCALES["customary"]] == [
        "3\" = 1'-0\"", "1 1/2\" = 1'-0\"", "1\" = 1'-0\"", "3/4\" = 1'-0\"",
    ]  # fmt: skip
    thin = builders.assembly([pictured.layer(1, "Board", 20, "plywood"), pictured.layer(2, "Board", 20, "gypsum")])
    assert (level_scale(thin, "metric", 134.0), level_scale(thin, "customary", 134.0)) == (2, 4)
    deep = builders.assembly([pictured.layer(1, "Straw", 1400, "straw")])
    assert (level_scale(deep, "metric", 134.0), level_scale(deep, "customary", 134.0)) == (20, 16)
