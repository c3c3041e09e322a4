"""Laws over all hatch families: inside the outline, the same for the same seed, nothing where a layer is thin."""

import subprocess
import sys
from math import hypot

import pytest

from layerfolio.drawing.geometry import contains, moved, rectangle, turned
from layerfolio.drawing.hatches import FAMILIES, hatch, swatch, timber_beyond
from layerfolio.drawing.marks import Circle, Clip, Curve, Drawing, Line, Stipple
from layerfolio.drawing.writers import listing

EMPTY = {"air", "plain"}
RULED = {"foam", "masonry", "metal", "plywood", "membrane", "glass", "tile"}  # nothing left to chance
PAINTED = [one for one in FAMILIES if one not in EMPTY]
OUTLINES = {
    "level": (rectangle(10, 5, 90, 17.2), 0.0),
    "upright": (rectangle(3, 4, 14, 60), 90.0),
    "sloped": (tuple(turned(one, 30) for one in rectangle(0, 0, 60, 8)), 30.0),
    "cut plumb": (((0, 0), (40, 23), (40, 37), (0, 14)), 29.9),
    "stepped": (((0, 0), (50, 0), (50, 25), (25, 25), (25, 9), (0, 9)), 0.0),
    "notched": (((0, 0), (40, 0), (40, 30), (20, 12), (0, 30)), 0.0),
}
everywhere = pytest.mark.parametrize("where", OUTLINES)
painted = pytest.mark.parametrize("family", PAINTED)


def text_of(marks):
    return listing.write(Drawing("one", 1, 1, tuple(marks)))


def points_of(mark):
    if isinstance(mark, Curve):
        return [command[1:][at : at + 2] for command in mark.commands for at in range(0, len(command) - 1, 2)]
    return [mark.centre] if isinstance(mark, Circle) else list(mark.points)


def near(outline, point, slack=0.01):
    """Inside, or so close to an edge that only rounding parts it from the inside."""
    return contains(outline, point) or any(
        _distance(point, outline[one - 1], outline[one]) < slack for one in range(len(outline))
    )


def _distance(point, start, end):
    (px, py), (ax, ay), (bx, by) = point, start, end
    length = hypot(bx - ax, by - ay)
    share = min(1, max(0, ((px - ax) * (bx - ax) + (py - ay) * (by - ay)) / length**2))
    return hypot(px - ax - share * (bx - ax), py - ay - share * (by - ay))


@painted
@everywhere
def test_a_hatch_is_cut_off_at_its_outline(family, where):
    outline, turn = OUTLINES[where]
    marks = hatch(family, outline, seed="layer", turn=turn)
    assert marks
    for mark in marks:
        if isinstance(mark, (Clip, Stipple)):
            assert mark.outline == outline
        else:
            assert all(near(outline, one) for one in points_of(mark))


@painted
@everywhere
def test_something_is_painted_inside_and_nothing_far_outside(family, where):
    outline, turn = OUTLINES[where]
    marks = hatch(family, outline, seed="layer", turn=turn)
    loose = [one for mark in marks for one in (mark.marks if isinstance(mark, Clip) else (mark,))]
    points = [point for one in loose if not isinstance(one, Stipple) for point in points_of(one)]
    if points:
        assert family in RULED or any(contains(outline, one) for one in points)
        xs, ys = zip(*outline, strict=True)
        reach = max(max(xs) - min(xs), max(ys) - min(ys))
        for x, y in points:  # a clip hides what is outside, but it should not be asked to hide much
            assert min(xs) - reach < x < max(xs) + reach and min(ys) - reach < y < max(ys) + reach


@pytest.mark.parametrize("family", FAMILIES)
def test_the_same_seed_gives_the_same_marks(family):
    outline = rectangle(0, 0, 60, 8)
    assert hatch(family, outline, seed="W1/hemp", piece=2) == hatch(family, outline, seed="W1/hemp", piece=2)


@painted
def test_another_layer_or_piece_looks_another_way_unless_ruled(family):
    outline = rectangle(0, 0, 30, 8)
    plain = hatch(family, outline, seed="hemp")
    assert (plain == hatch(family, outline, seed="spruce")) == (family in RULED)
    assert (plain == hatch(family, outline, seed="hemp", piece=4)) == (family in RULED)


@pytest.mark.parametrize("family", FAMILIES)
def test_a_layer_thinner_than_1_2_gets_no_hatch(family):
    assert hatch(family, rectangle(0, 0, 60, 1.19), seed="a") == ()
    assert hatch(family, rectangle(0, 0, 1.19, 60), seed="a", turn=90) == ()
    some = hatch(family, rectangle(0, 0, 60, 1.21), seed="a")
    assert bool(some) == (family not in EMPTY | {"ground"})  # its groups stand whole or not at all


@painted
def test_at_1_to_10_the_limit_is_1_5(family):
    board = rectangle(0, 0, 60, 1.45)
    assert hatch(family, board, seed="a", scale=10) == ()
    assert hatch(family, rectangle(0, 0, 60, 4.5), seed="a", scale=10)


@painted
def test_no_line_is_thinner_than_a_copy_of_a_copy_keeps(family):
    marks = hatch(family, rectangle(0, 0, 60, 9), seed="a")
    loose = [one for mark in marks for one in (mark.marks if isinstance(mark, Clip) else (mark,))]
    for mark in loose:
        if isinstance(mark, Circle):
            assert mark.radius >= 0.16 and mark.fill == "black"
        elif isinstance(mark, Curve):
            assert mark.width >= 0.20 or mark.fill == "black"


@pytest.mark.parametrize("family", sorted(set(PAINTED) - {"tile", "plywood", "membrane", "glass"}))
def test_a_hatch_turns_with_a_sloped_layer(family):
    level = rectangle(0, 0, 22.4, 7.3)
    sloped = tuple(turned(one, 30) for one in level)
    expected = [moved(one, 30) for one in hatch(family, level, seed="a")]
    for one, other in zip(hatch(family, sloped, seed="a", turn=30), expected, strict=True):
        first, second = ([one], [other]) if not isinstance(one, Clip) else (one.marks, other.marks)
        for left, right in zip(first, second, strict=True):
            flat = [value for point in points_of(left) for value in point]
            assert flat == pytest.approx([value for point in points_of(right) for value in point], abs=1e-6)


def test_no_family_by_another_name():
    with pytest.raises(KeyError):
        hatch("marble", rectangle(0, 0, 9, 9), seed="a")


def test_the_families_are_those_of_the_material_data():
    names = """timber timber-board plywood strand-board particle-board wood-fibre mineral-board batt loose-fill straw
        cork foam gypsum masonry concrete gravel ground earth plaster metal membrane glass tile air plain"""
    assert list(FAMILIES) == names.split()


@pytest.mark.parametrize("family", FAMILIES)
def test_a_swatch_has_its_edge(family):
    marks = swatch(family, 12, 6.2)
    assert any(isinstance(one, Line) for one in marks)
    assert len(marks) > 1 or family == "plain"


def test_timber_beyond_has_a_thin_edge_and_wider_lines():
    outline = rectangle(0, 0, 40, 20)
    clip, edge = timber_beyond(outline, seed="rafter")
    assert edge.width == 0.25 and edge.points[0] == edge.points[-1]
    rows = {round(one[2]) for one in clip.marks[0].commands if one[0] == "M"}
    assert 9 <= len(rows) <= 14  # 20 deep, a line every 1.6


def test_hatches_do_not_depend_on_the_hash_seed_of_the_interpreter():
    script = (
        "from layerfolio.drawing.hatches import FAMILIES, swatch, hatch\n"
        "from layerfolio.drawing.marks import Drawing\n"
        "from layerfolio.drawing.tiles import NAMES, tile\n"
        "from layerfolio.drawing.writers import listing\n"
        "marks = [one for name in FAMILIES for one in swatch(name, 12, 6)]\n"
        "marks += [one for name in NAMES for one in tile(name)]\n"
        "print(listing.write(Drawing('all', 1, 1, tuple(marks))))\n"
    )
    outputs = {
        subprocess.run(
            [sys.executable, "-c", script],
            env={"PYTHONHASHSEED": seed, "PYTHONPATH": ":".join(sys.path)},
            capture_output=True,
            check=True,
            text=True,
        ).stdout
        for seed in ("1", "2")
    }
    assert len(outputs) == 1 and "hatch" in outputs.pop()
