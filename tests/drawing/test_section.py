"""What a section shows, case by case: the chandlery's wall, roof and slab, and awkward assemblies."""

from dataclasses import replace
from itertools import pairwise

import pictured
import pytest
from readings import areas, flat, lines, overlapping_labels, texts

import builders
from layerfolio.drawing.geometry import bounds, contains
from layerfolio.drawing.layout_scale import level_scale, scale_text
from layerfolio.drawing.marks import Circle, Curve
from layerfolio.drawing.section import section


def words(drawing, role):
    return [one.text for one in texts(drawing, role)]


def middles(drawing, layer):
    boxes = [bounds(one.outline) for one in areas(drawing) if one.layer == layer]
    return sorted((x0 + x1) / 2 for x0, _, x1, _ in boxes)


def test_wall_chain_is_as_written_and_adds_up():
    drawing = section(pictured.wall())
    assert words(drawing, "thickness") == ["19", "38", "50", "184", "15", "38", "12.7"]
    assert words(drawing, "overall") == ["356.7"]
    assert (drawing.scale, drawing.scale_text) == (5, "1 : 5")


def test_customary_roof_as_on_the_page_design():
    drawing = section(pictured.customary_roof(), units="customary")
    assert words(drawing, "thickness") == ['3/4"', '2 1/2"', '1 3/8"', '11 1/4"', '19/32"', '1 1/2"', '1/2"']
    assert words(drawing, "overall") == ['18 15/32" (469.1)']
    assert drawing.scale_text == "1\" = 1'-0\" (1 : 12)"
    wide = section(pictured.customary_roof(), units="customary", width=193.95, page="tabloid")
    assert wide.scale_text == "1 1/2\" = 1'-0\" (1 : 8)"
    assert words(drawing, "slope") == ["12", "6.93", "(30°)"]


@pytest.mark.parametrize("make, inches, metric", [(pictured.wall, '14"', "356.7"), (pictured.roof, '18 7/16"', "469.7")])
def test_overall_bracket_is_the_metric_sum_and_not_the_rounded_inches(make, inches, metric):
    """19 + 38 + 50 + 184 + 15 + 38 + 12.7 = 356.7 mm, though its inches, each to 1/16, add up to 14 in = 355.6 mm."""
    assert words(section(make(), units="customary"), "overall") == [f"{inches} ({metric})"]
    assert words(section(make()), "overall") == [metric]


def test_customary_roof_leaves_its_table_the_rest_of_a_letter_page():
    """So high, the example's roof sheet stays on one page with its twelve rows, result box and notes."""
    assert section(pictured.customary_roof(), units="customary").height <= 108


@pytest.mark.parametrize("units", ["metric", "customary"])
def test_tags_of_a_wall_and_a_roof_stand_in_the_order_of_the_layers(units):
    for make in (pictured.wall, pictured.roof):
        drawing = section(make(), units=units)
        tags = [one.text for one in sorted(texts(drawing, "tag"), key=lambda one: -one.at[1])]
        numbers = [int(one.rstrip("a")) for one in tags]
        assert numbers == sorted(numbers), tags


def test_members_of_a_wall_have_the_last_one_near_the_tags():
    first, second = middles(section(pictured.wall(), units="customary"), "hemp batts/stud")
    length = max(one.points[0][0] for one in lines(section(pictured.wall(), units="customary"), "break"))
    assert length - second == pytest.approx(7.0, abs=0.3) and (second - first) * 8 == pytest.approx(600)


def test_studs_stand_at_their_spacing():
    first, second = middles(section(pictured.wall()), "hemp batts/stud")
    assert (second - first) * 5 == pytest.approx(600)


@pytest.mark.parametrize("direction, pieces", [("vertical", 2), ("horizontal", 1)])
def test_battens_across_the_paper_are_cut_and_along_it_seen(direction, pieces):
    drawing = section(pictured.wall(direction))
    assert len(middles(drawing, "service cavity/batten")) == pieces
    assert any("7a" in note and "400 mm" in note for note in drawing.notes) == (direction == "horizontal")
    assert words(drawing, "spacing") == (["600", "400"] if direction == "vertical" else ["600"])


@pytest.mark.parametrize("make, above, below", [
    (pictured.wall, "OUTSIDE", "INSIDE"), (pictured.roof, "OUTSIDE", "INSIDE"), (pictured.slab, "ROOM", "GROUND"),
    (pictured.floor, "ROOM", "VENTED SPACE"), (pictured.ceiling, "VENTED SPACE", "ROOM"),
    (pictured.foundation_wall, "GROUND", "INSIDE"), (pictured.flat_roof, "OUTSIDE", "INSIDE"),
])  # fmt: skip
def test_sides_and_which_way_up(make, above, below):
    assembly = make()
    drawing = section(assembly)
    upper, lower = sorted(texts(drawing, "side"), key=lambda one: -one.at[1])
    assert (upper.text, lower.text) == (above, below)
    middle = {one.layer: sum(y for _, y in one.outline) / len(one.outline) for one in areas(drawing)}
    first, last = (middle[one.name] for one in (assembly.layers[0], assembly.layers[-1]))
    assert (first > last) == (assembly.kind not in ("floor", "slab"))


@pytest.mark.parametrize("name", pictured.SHOWN)
def test_each_leader_begins_in_its_own_layer(name):
    drawing = section(pictured.SHOWN[name]())
    assembly = pictured.SHOWN[name]()
    for line in lines(drawing, "leader"):
        label = line.role.removeprefix("leader ")
        layer = assembly.layers[int(label.rstrip("a")) - 1]
        wanted = f"{layer.name}/{layer.member.name}" if label.endswith("a") else layer.name
        inside = [one.layer for one in areas(drawing) if contains(one.outline, line.points[0])]
        thin = [one for one in areas(drawing) if one.layer == wanted and _near(one.outline, line.points[0])]
        assert wanted in inside or thin, (label, inside)
        if not label.endswith("a") and layer.member:
            assert f"{layer.name}/{layer.member.name}" not in inside


def _near(outline, point, reach=0.6):
    """A membrane's line is thinner than a dot."""
    return any(contains(outline, (point[0] + dx, point[1] + dy)) for dx in (-reach, reach) for dy in (-reach, reach))


@pytest.mark.parametrize(
    "units, length, last",
    [("metric", 100.0, "100 mm on paper: print check"), ("customary", 101.6, "4 in on paper: print check")],
)
@pytest.mark.parametrize("make", [pictured.wall, pictured.roof, pictured.slab])
def test_check_bar_measures_what_it_says(make, units, length, last):
    drawing = section(make(), units=units)
    ends = sorted(one.points[0][0] for one in lines(drawing, "check bar end"))
    assert ends[1] - ends[0] == pytest.approx(length, abs=1e-9)
    assert words(drawing, "check bar figure")[-1] == last
    assert not overlapping_labels(drawing)
    fields = [bounds([c[1:] for c in one.commands if len(c) == 3]) for one in flat(drawing.marks)
              if isinstance(one, Curve) and one.role == "check bar"]  # fmt: skip
    widths = {round(x1 - x0, 6) for x0, _, x1, _ in fields}
    assert widths == {10.0} if units == "metric" else {12.7}


def test_control_lines_stand_where_the_page_design_puts_them():
    """W 2.3 off the face its membrane lies on; A and V in turn on one line 1.75 off the panel's inner side."""
    drawing = section(pictured.wall())
    box = {one.layer: bounds(one.outline) for one in areas(drawing)}
    water = {one.points[0][1] for one in lines(drawing, "control W")}
    assert [y - box["mineral-wool board"][3] for y in water] == pytest.approx([2.3])
    both = {one.points[0][1] for one in lines(drawing, "control A V")}
    assert [box["panel-15"][1] - y for y in both] == pytest.approx([1.75])
    signs = sorted((one.at[0], one.text) for one in texts(drawing, "control letter") if one.text in "AV")
    assert [sign for _, sign in signs] == ["A", "V", "A", "V"]
    assert all(b - a >= 9 for (a, _), (b, _) in pairwise(signs))
    bracket = [y for one in lines(drawing, "control T") for _, y in one.points]
    assert (min(bracket), max(bracket)) == pytest.approx((box["hemp batts"][1], box["mineral-wool board"][3]))


@pytest.mark.parametrize("name", pictured.SHOWN)
def test_control_letters_keep_clear_of_cut_members(name):
    drawing = section(pictured.SHOWN[name]())
    members = [one for one in areas(drawing) if "/" in one.layer and len(one.outline) == 4]
    for sign in texts(drawing, "control letter"):
        x, y = sign.at[0], sign.at[1] + 1.25
        assert not any(contains(one.outline, (x, y)) for one in members), sign.text


def test_key_shows_only_the_lines_that_are_drawn_and_wide_sheets_have_none():
    assert words(section(pictured.wall()), "key W")[:1] == ["W"]
    assert not words(section(pictured.floor()), "key W")
    assert not texts(section(pictured.wall(), page="tabloid", width=193.95), "key")


def test_air_moves_towards_the_reader_in_plan_and_up_the_slope_in_a_roof():
    def rounds(drawing):
        return [one for one in flat(drawing.marks) if isinstance(one, Circle) and one.role == "air"]

    wall, roof = section(pictured.wall()), section(pictured.roof())
    assert len(rounds(wall)) == 4 and not lines(wall, "air")
    assert not rounds(roof)
    for arrow in lines(roof, "air"):
        (ax, ay), (bx, by) = arrow.points
        assert (by - ay) / (bx - ax) == pytest.approx(0.57735, abs=1e-4)


def test_notes_stand_beside_the_tags_of_a_wide_sheet():
    drawing = section(pictured.wall("vertical"), width=193.95, page="tabloid", notes=True)
    told = words(drawing, "note")
    assert "larch boards" in told and "38\u00a0×\u00a0184" in " ".join(told)
    assert not words(section(pictured.wall()), "note")


@pytest.mark.parametrize("make, units, scale", [
    (pictured.wall, "metric", 5), (pictured.wall, "customary", 8), (pictured.two_layers, "metric", 2),
    (pictured.straw, "metric", 10), (pictured.straw, "customary", 8), (pictured.slab, "metric", 5),
])  # fmt: skip
def test_scale_follows_depth_and_spacing(make, units, scale):
    assert level_scale(make(), units, 134.0) == scale


@pytest.mark.parametrize("deep, scale", [(499, 5), (500, 5), (501, 10), (1000, 10)])
def test_one_to_five_while_the_section_is_at_most_100_deep(deep, scale):
    one = builders.assembly([pictured.layer(1, "Earth", deep, "earth")])
    assert level_scale(one, "metric", 134.0) == scale
    drawing = section(one)
    assert not any("broken" in note for note in drawing.notes)


def test_a_section_too_deep_for_every_scale_is_broken_and_says_so():
    drawing = section(builders.assembly([pictured.layer(1, "Earth", 2400, "earth")]))
    assert words(drawing, "thickness") == ["2400", "broken"] and words(drawing, "overall") == ["2400"]
    assert any("broken" in note for note in drawing.notes)


def test_a_layer_that_would_turn_into_a_line_keeps_the_larger_scale():
    """6 mm of cork over 700 mm of gravel: at 1 : 10 it would be 0.6 mm on paper, so the gravel is cut short."""
    layers = [pictured.layer(1, "Gravel", 700, "gravel"), pictured.layer(2, "Cork tile", 6, "cork")]
    drawing = section(builders.assembly(layers, kind="slab", slope=0.0))
    assert drawing.scale == 5 and any("broken" in note for note in drawing.notes)


def test_metric_and_customary_ways_of_writing_a_scale():
    assert [scale_text(one, "metric") for one in (2, 5, 10)] == ["1 : 2", "1 : 5", "1 : 10"]
    assert [scale_text(one, "customary") for one in (4, 8, 12, 16)] == [
        "3\" = 1'-0\" (1 : 4)", "1 1/2\" = 1'-0\" (1 : 8)", "1\" = 1'-0\" (1 : 12)", "3/4\" = 1'-0\" (1 : 16)",
    ]  # fmt: skip


def test_thin_layers_are_solid_and_said():
    drawing = section(pictured.fourteen())
    assert {one.width for one in lines(drawing, "thin layer")} == {0.7}
    assert "Layer 14 (Clay plaster): thickness not to scale" in drawing.notes
    assert any("its 0.2 mm is not in the chain" in note for note in drawing.notes)


def test_what_is_not_known_is_drawn_plainly_and_said():
    drawing = section(pictured.unknown())
    assert not words(drawing, "overall") and "2" in words(drawing, "tag")
    assert "3a" not in words(drawing, "tag")
    told = "\n".join(drawing.notes)
    assert "thickness not given: not to scale" in told and "'quark'" in told
    assert "3a (spruce studs), 10 % of the area, is not drawn" in told


def test_a_cavity_without_battens_and_a_layer_alone():
    air = pictured.layer(1, "Still air", 25, "air", kind="cavity", cavity="unventilated")
    assert words(section(builders.assembly([air])), "tag") == ["1"]
    membrane = pictured.layer(1, "Membrane", None, "membrane", kind="membrane")
    drawing = section(builders.assembly([membrane]))
    assert words(drawing, "tag") == ["1"] and not words(drawing, "overall")


def test_metal_studs_are_a_profile_and_no_timber():
    drawing = section(pictured.foundation_wall())
    assert "timber" not in drawing.families and "metal" in drawing.families
    assert {one.width for one in lines(drawing, "member")} == {0.7}


def test_adjacent_layers_of_one_kind_are_hatched_the_other_way():
    pair = [pictured.layer(n, f"Board {n}", 40, "wood-fibre") for n in (1, 2)]
    drawing = section(builders.assembly(pair))
    assert drawing.families == ("wood-fibre",) and len(areas(drawing)) == 2


def test_one_changed_layer_leaves_the_hatches_of_its_neighbours_alone():
    """Seeds come from the layer's own name: the studs' rings do not change with the lining."""
    other = pictured.wall()
    changed = replace(other, layers=(*other.layers[:-1], replace(other.layers[-1], name="plywood", family="plywood")))

    def rings(assembly):
        return [one.commands for one in flat(section(assembly).marks) if isinstance(one, Curve) and one.role == "hatch"]

    before, after = rings(other), rings(changed)
    assert sum(one in after for one in before) >= 0.6 * len(before)


def test_the_scale_that_is_asked_for_is_used():
    assert section(pictured.wall(), scale=10).scale == 10
    assert section(pictured.roof(), scale=20).scale == 20


def test_a_spacing_across_the_section_says_whose_it_is():
    """Battens outside the frame are dimensioned below the section, beside the lining: with their tag."""
    frame, batten = pictured.member("stud", 38, 600, "vertical"), pictured.member("batten", 64, 400, "vertical")
    layers = [
        pictured.layer(1, "Larch boards", 19, "timber-board"),
        pictured.layer(2, "Ventilated cavity", 38, "air", kind="cavity", cavity="ventilated", frame=batten),
        pictured.layer(3, "Hemp batts", 140, "batt", insulating=True, frame=frame),
    ]
    assert words(section(builders.assembly(layers)), "spacing") == ["600", "2a: 400"]
    inside = [replace(one, number=number) for number, one in enumerate((layers[2], layers[1], layers[0]), 1)]
    assert words(section(builders.assembly(inside)), "spacing") == ["600", "400"]
