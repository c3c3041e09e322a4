"""Tiles: they meet at their edges without a seam, and both ways of holding them paint the same."""

import numpy as np
import pytest
from rendering import pixels

from layerfolio.drawing.geometry import moved, rectangle
from layerfolio.drawing.marks import Circle, Clip, Drawing, Stipple
from layerfolio.drawing.tiles import NAMES, OVERHANG, SIDE, extent, tile

tiles = pytest.mark.parametrize("name", NAMES)
SQUARE = rectangle(0, 0, SIDE, SIDE)
FEW = 8  # pixels of 240 x 240 that may differ by the rounding of a coordinate; one dot lost at an edge is more


def differing(one, other):
    return (np.abs(one.astype(int) - other.astype(int)) > 64).sum()


@tiles
def test_no_mark_hangs_over_further_than_writers_count_on(name):
    for mark in tile(name, wrapped=False):
        x0, y0, x1, y1 = extent(mark)
        assert min(x0, y0) > -OVERHANG and max(x1, y1) < SIDE + OVERHANG


@tiles
def test_what_crosses_an_edge_stands_at_both_edges(name):
    """Painted inside one square, a wrapped tile equals unwrapped tiles laid all round it."""
    wrapped = Drawing("wrapped", SIDE, SIDE, (Clip(SQUARE, tile(name)),))
    round_about = [
        moved(mark, by=(column * SIDE, row * SIDE))
        for column in (-1, 0, 1)
        for row in (-1, 0, 1)
        for mark in tile(name, wrapped=False)
    ]
    laid = Drawing("laid", SIDE, SIDE, (Clip(SQUARE, tuple(round_about)),))
    assert differing(pixels(wrapped), pixels(laid)) < FEW


@tiles
def test_a_stippled_area_repeats_every_24_mm_without_a_seam(name):
    drawing = Drawing("area", 2 * SIDE, SIDE, (Stipple(rectangle(0, 0, 2 * SIDE, SIDE), name),))
    seen = pixels(drawing)
    left, right = seen[:, :240], seen[:, 240:]
    assert differing(left, right) < FEW
    single = pixels(Drawing("tile", SIDE, SIDE, (Clip(SQUARE, tile(name)),)))
    assert differing(left, single) < FEW
    assert 0.01 < (seen < 128).mean() < 0.5


def test_a_tile_follows_its_shift_and_turn():
    def seen(*place):
        return pixels(Drawing("one", SIDE, SIDE, (Stipple(SQUARE, "gravel", *place),)))

    assert differing(seen((10.0, 0.0))[:, 100:], seen()[:, :140]) < FEW
    assert differing(seen((0.0, 10.0))[:140], seen()[100:]) < FEW
    assert (np.abs(seen((SIDE, 0.0), 90.0).astype(int) - np.rot90(seen())) > 128).mean() < 0.01


def test_every_dot_of_a_tile_is_painted_by_another_renderer_too():
    """Dots are strokes of no length with round ends; a renderer that dropped them would leave the paper white."""
    circles = [one for one in tile("gypsum") if isinstance(one, Circle)]
    dots = [one for one in circles if min(one.centre) > 0.5 and max(one.centre) < 23.5]
    seen = pixels(Drawing("dots", SIDE, SIDE, tuple(dots)), dots_per_mm=20)
    assert len(dots) > 350
    for dot in dots:
        x, y = dot.centre
        assert seen[round((SIDE - y) * 20), round(x * 20)] < 100


def test_no_tile_by_another_name():
    with pytest.raises(KeyError):
        tile("marble")
