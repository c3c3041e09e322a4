"""The small section of explanation sheets, and the key of hatches."""

import pictured
import pytest
from readings import areas, crossing_leaders, flat, labels_crossed, overlapping_labels, texts

from layerfolio.catalogue.hatches import families
from layerfolio.drawing.extent import extent
from layerfolio.drawing.geometry import bounds
from layerfolio.drawing.hatches import FAMILIES
from layerfolio.drawing.legend import legend
from layerfolio.drawing.marks import Circle, Curve, Line
from layerfolio.drawing.mini import mini_section
from layerfolio.drawing.section import section

TAGS = ((4, "mineral wool behind the membrane"), (5, "hemp batts between studs"), (6, "panel-15, seams taped"))


def test_mini_section_points_at_the_layer():
    drawing = mini_section(pictured.wall(), "panel-15", TAGS)
    assert [one.text for one in texts(drawing, "tag")] == ["4", "5", "6"]
    assert [one.text for one in texts(drawing, "note")] == [note for _, note in TAGS]
    assert (drawing.width, drawing.scale_text) == (138.0, "1 : 10")
    pointer, = (one for one in flat(drawing.marks) if isinstance(one, Curve) and one.role == "pointer")
    tip = pointer.commands[0][2]
    _, low, _, high = next(bounds(one.outline) for one in areas(drawing) if one.layer == "panel-15")
    assert low < tip < high


@pytest.mark.parametrize("name", pictured.SHOWN)
def test_mini_sections_keep_the_laws(name):
    assembly = pictured.SHOWN[name]()
    tags = tuple((one.number, one.title) for one in assembly.layers[:4])
    drawing = mini_section(assembly, assembly.layers[0].name, tags)
    assert not overlapping_labels(drawing) and not crossing_leaders(drawing)
    assert not labels_crossed(drawing, "leader")
    x0, y0, x1, y1 = extent(drawing.marks)
    assert x0 >= 0 and y0 >= 0 and x1 <= drawing.width and y1 <= drawing.height


def test_mini_section_without_a_highlight_has_no_pointer():
    drawing = mini_section(pictured.wall(), None, ())
    assert not any(isinstance(one, Curve) and one.role == "pointer" for one in flat(drawing.marks))


def test_every_family_that_prints_has_a_hatch():
    assert set(families()) == set(FAMILIES)


@pytest.mark.parametrize("controls, height", [(False, None), (True, 34.0)])
def test_legend_names_each_family_once_inside_its_width(controls, height):
    used = ("batt", "timber", "timber-board", "ground", "gypsum", "nonsense", "air", "control V")
    drawing = legend(used, 216.0, controls=controls, height=height)
    names = [one.text for one in texts(drawing, "legend") if one.role == "legend"]
    printed = [families()[one] for one in ("timber", "timber-board", "batt", "gypsum", "ground")]
    assert [one for one in names if one in printed] == printed
    assert ("vapour" in names) == controls
    assert not overlapping_labels(drawing)
    x0, y0, x1, y1 = extent(drawing.marks)
    assert x0 >= 0 and y0 >= -0.01 and x1 <= 216 and y1 <= drawing.height
    assert height is None or drawing.height <= height + 1e-6


def test_legend_of_all_families_fits_the_field_of_a_letter_sheet():
    drawing = legend(FAMILIES, 180.0)
    assert not overlapping_labels(drawing) and extent(drawing.marks)[2] <= 180


@pytest.mark.parametrize("make, circles, arrows, letters", [
    (pictured.wall, 2, 0, "WAVT"), (pictured.roof, 0, 1, "WAVT"), (pictured.slab, 0, 0, "AVT"),
    (pictured.floor, 0, 0, "VT"),
])  # fmt: skip
def test_legend_shows_the_signs_of_its_drawing_and_no_others(make, circles, arrows, letters):
    """A wall's air moves towards the reader, a roof's along the slope; a slab has none."""
    drawing = legend(section(make()).families, 216.0, controls=True)
    air = [one for one in flat(drawing.marks) if getattr(one, "role", "") == "air"]
    assert sum(isinstance(one, Circle) for one in air) == circles
    assert sum(isinstance(one, Line) for one in air) == arrows
    assert [one.text for one in texts(drawing, "key")] == list(letters)


def test_legend_of_a_package_has_the_air_signs_of_all_its_drawings():
    both = (*section(pictured.wall()).families, *section(pictured.roof()).families)
    names = [one.text for one in texts(legend(both, 180.0), "legend")]
    assert "moving air" in names and "moving air, towards you" in names and "vapour" not in names
