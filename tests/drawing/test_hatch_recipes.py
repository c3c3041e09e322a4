"""Each hatch as the page design describes it; the measures are its own."""

from itertools import pairwise
from math import atan2, degrees, hypot

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from layerfolio.drawing.geometry import contains, rectangle
from layerfolio.drawing.hatches import hatch
from layerfolio.drawing.marks import Circle, Clip, Curve, Stipple


def inner(marks):
    return [one for mark in marks for one in (mark.marks if isinstance(mark, Clip) else (mark,))]


def segments(marks, width=None):
    """Straight strokes of curves (of one line width), as pairs of points."""
    found = []
    for mark in inner(marks):
        if width not in (None, mark.width):
            continue
        for one, other in pairwise(mark.commands):
            if other[0] == "L":
                found.append((one[1:], other[1:]))
    return found


def direction(segment):
    (ax, ay), (bx, by) = segment
    return degrees(atan2(by - ay, bx - ax)) % 180


def sampled(commands, parts=12):
    """Points along a path of moves and Beziers."""
    at = commands[0][1:]
    points = [at]
    for _, *values in commands[1:]:
        handles = [at, tuple(values[:2]), tuple(values[2:4]), tuple(values[4:])]
        for step in range(1, parts + 1):
            t = step / parts
            weights = ((1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3)
            points.append(tuple(sum(w * p[axis] for w, p in zip(weights, handles, strict=True)) for axis in (0, 1)))
        at = handles[-1]
    return points


def batt_points(length, depth, seed="hemp"):
    (clip,) = hatch("batt", rectangle(0, 0, length, depth), seed=seed)
    (curve,) = clip.marks
    assert [one[0] for one in curve.commands].count("M") == 1  # one continuous line
    assert curve.width == 0.25
    return sampled(curve.commands)


@settings(deadline=None)
@given(length=st.floats(4, 140), depth=st.floats(4, 60), seed=st.text(max_size=3))
def test_the_batt_curve_stays_inside_the_layer(length, depth, seed):
    for x, y in batt_points(length, depth, seed):
        assert 0.25 < y < depth - 0.25, "the line, 0.25 wide, must not melt into a face"
        assert -0.15 * length - 3 < x < 1.15 * length + 3


@pytest.mark.parametrize(("length", "depth"), [(112.4, 36.8), (56, 20), (134, 8), (112.4, 60)])
def test_batts_have_even_bulbs_with_half_a_bulb_at_each_end(length, depth):
    points = batt_points(length, depth)
    pitch = min(13.0, max(3.4, 0.29 * depth))
    count = 2 * round(length / pitch)
    middle = depth / 2
    tops = [one for one, other in pairwise(points) if (one[1] - middle) * (other[1] - middle) < 0]
    assert len(tops) == count  # the curve crosses the middle once for each half pitch
    gaps = [b[0] - a[0] for a, b in pairwise(tops)]
    half = length / count
    assert all(0.6 * half < one < 1.4 * half for one in gaps), "even"
    assert max(gaps) - min(gaps) > 0.01 * half, "but not equal"
    assert points[0][0] == pytest.approx(0) and points[-1][0] == pytest.approx(length)


def test_the_strands_of_a_batt_lean_back_so_that_loops_become_bulbs():
    points = batt_points(112.4, 36.8)
    upper = [x for x, y in points if y > 30]
    clusters, last = [[upper[0]]], upper[0]
    for x in upper[1:]:
        if x < last - 3 or x > last + 4:
            clusters.append([])
        clusters[-1].append(x)
        last = x
    widths = [max(one) - min(one) for one in clusters if len(one) > 6]
    assert max(widths) > 1.05 * 112.4 / (2 * round(112.4 / 10.672))  # wider than half a pitch


@pytest.mark.parametrize(("piece", "across", "upward"), [(0, -1, -1), (1, 1, 1), (2, 1, -1), (3, -1, 1)])
def test_growth_rings_stand_round_a_pith_outside_the_piece(piece, across, upward):
    wide, high = 12.8, 7.6
    pith = wide / 2 + across * 0.22 * wide, high / 2 + upward * (high / 2 + 0.9 * high)
    (clip,) = hatch("timber", rectangle(0, 0, wide, high), seed="batten", piece=piece)
    radii = []
    for command in clip.marks[0].commands:
        if command[0] == "M":
            radii.append([])
        radii[-1].append(hypot(command[-2] - pith[0], command[-1] - pith[1]))
    for ring in radii:
        assert max(ring) - min(ring) < 2 * 0.13 + 1e-6  # round, but for a little wave
    means = sorted(sum(one) / len(one) for one in radii)
    step = min(1.25, max(0.85, 0.15 * high))
    gaps = [b - a for a, b in pairwise(means) if b - a > 0.3]  # a ring may be seen in two stretches
    assert all(0.82 * step - 0.3 < one < 1.18 * step + 0.3 for one in gaps)
    assert len(gaps) > 4


def test_a_board_of_19_shows_three_or_four_lines_along_the_grain():
    (clip,) = hatch("timber-board", rectangle(0, 0, 134, 3.8), seed="larch")
    middles = sorted(one[2] for one in clip.marks[0].commands if one[0] == "M")
    rows = 1 + sum(b - a > 0.5 for a, b in pairwise(middles))
    assert rows in (3, 4)


@pytest.mark.parametrize(("family", "pitch"), [("masonry", 1.8), ("foam", 3.2), ("wood-fibre", 2.6), ("metal", 1.9)])
def test_line_hatches_run_through_where_an_area_is_split(family, pitch):
    def offsets(outline):
        lines = [one for one in segments(hatch(family, outline, seed=str(outline))) if hypot(*_run(one)) > 2.5]
        return {round((ay - ax) / 2**0.5 / pitch % 1, 6) % 1 for (ax, ay), _ in lines if direction(((ax, ay), _)) < 90}

    assert offsets(rectangle(0, 0, 33.3, 14)) == offsets(rectangle(33.3, 0, 71.7, 14)) != set()


def _run(segment):
    (ax, ay), (bx, by) = segment
    return bx - ax, by - ay


@pytest.mark.parametrize("family", ["masonry", "wood-fibre", "metal"])
def test_45_degrees_stay_so_in_an_upright_layer_and_turn_over_in_every_second_one(family):
    long = [
        {
            round(direction(one))
            for one in segments(hatch(family, outline, seed="a", turn=turn, alternate=alternate))
            if hypot(*_run(one)) > 2.5
        }
        for outline, turn, alternate in (
            (rectangle(0, 0, 60, 9), 0, False),
            (rectangle(0, 0, 9, 60), 90, False),
            (rectangle(0, 0, 60, 9), 0, True),
        )
    ]
    assert long == [{45}, {45}, {135}]


def test_flecks_of_wood_fibre_stand_about_square_to_the_lines():
    flecks = segments(hatch("wood-fibre", rectangle(0, 0, 60, 10), seed="a"), width=0.22)
    assert len(flecks) > 40
    assert all(110 - 1e-6 <= direction(one) <= 160 + 1e-6 for one in flecks)
    assert all(2 * 0.55 - 1e-6 <= hypot(*_run(one)) <= 2 * 0.85 + 1e-6 for one in flecks)


@pytest.mark.parametrize(("depth", "bands"), [(3.0, 3), (3.6, 3), (3.7, 5)])
def test_plywood_has_three_bands_and_five_above_3_6(depth, bands):
    strokes = segments(hatch("plywood", rectangle(0, 0, 40, depth), seed="a"))
    levels = {round(ay, 6) for (_, ay), (_, by) in strokes if ay == by}
    assert levels == {round(depth * one / bands, 6) for one in range(1, bands)}
    short = [one for one in strokes if one[0][1] != one[1][1]]
    assert {round(ay / depth * bands) for (_, ay), _ in short} == set(range(1, bands, 2))  # outer bands stay white
    assert all(_run(one)[0] == pytest.approx(0.5) for one in short)


def test_groups_of_ground_are_drawn_whole_or_not_at_all():
    outline = rectangle(0, 0, 40, 10)
    strokes = segments(hatch("ground", outline, seed="a"))
    lengths = [round(hypot(*_run(one)), 3) for one in strokes]
    assert lengths == [2.8, 3.5, 2.8] * (len(strokes) // 3) and len(strokes) >= 21
    assert all(contains(outline, point) for one in strokes for point in one)
    assert {round(direction(one)) for one in strokes} == {45, 135}


def test_mineral_board_has_a_whole_number_of_rows():
    (clip,) = hatch("mineral-board", rectangle(0, 0, 134, 10), seed="a")
    starts = sorted(one[2] for one in clip.marks[0].commands if one[0] == "M")
    assert 1 + sum(b - a > 0.8 for a, b in pairwise(starts)) == 5
    assert len(starts) == pytest.approx(5 * 134 / 4.2, rel=0.05)


def test_dots_of_gypsum_stand_clear_of_the_faces():
    (clip,) = hatch("gypsum", rectangle(0, 0, 134, 2.54), seed="a")
    assert len(clip.marks) == pytest.approx(134 * 2.54 / 1.44, rel=0.1)
    for dot in clip.marks:
        assert 0.17 <= dot.radius <= 0.25
        assert dot.radius < dot.centre[1] < 2.54 - dot.radius


def test_a_quarter_of_the_places_in_concrete_are_stones():
    (clip,) = hatch("concrete", rectangle(0, 0, 130, 30), seed="a")
    (stones,) = [one for one in clip.marks if isinstance(one, Curve)]
    count = sum(one[0] == "Z" for one in stones.commands)
    assert count / (130 * 30 / 9) == pytest.approx(0.24, abs=0.02)
    assert sum(isinstance(one, Circle) for one in clip.marks) > 300


def test_strand_board_has_a_fleck_for_each_1_9_square_millimetres():
    flecks = segments(hatch("strand-board", rectangle(0, 0, 100, 3), seed="a"))
    assert len(flecks) == pytest.approx(300 / 1.9, rel=0.05)
    lean = [min(direction(one), 180 - direction(one)) for one in flecks]
    assert 0.4 < sum(one < 1e-6 for one in lean) / len(lean) < 0.6  # half of them along the board
    assert max(lean) < 27


def test_a_large_area_repeats_a_tile_and_a_small_one_does_not():
    (small,) = hatch("gypsum", rectangle(0, 0, 134, 2.54), seed="a")
    (large,) = hatch("gypsum", rectangle(0, 0, 134, 30), seed="a")
    assert isinstance(small, Clip) and isinstance(large, Stipple)
    (other,) = hatch("gypsum", rectangle(0, 0, 134, 30), seed="b")
    assert large.shift != other.shift and large.shift[1] == other.shift[1]  # moved along the layer only
