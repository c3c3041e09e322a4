"""Scales as people write them."""

import pytest

from layerfolio.drawing.building.drawn import SCALES as BUILDINGS
from layerfolio.drawing.detail.all import SCALES as DETAILS
from layerfolio.drawing.layout_scale import SCALES as SECTIONS
from layerfolio.drawing.layout_scale import scale_text
from layerfolio.drawing.wall_views import SCALES as WALLS
from layerfolio.drawing.written_scale import BadScale, scale_of


@pytest.mark.parametrize(("text", "meant"), [
    ("5", 5), ("1:5", 5), ("1 : 20", 20), ("2.5", 2.5), ('3"', 4), ("3 in", 4), ('1-1/2"', 8), ('1 1/2"', 8),
    ("1 1/2\" = 1'-0\"", 8),
    ("1\" = 1'", 12), ("3/4\" = 1'-0\"", 16), ("1/2 in = 1 ft", 24), ("6 inches", 2),
])  # fmt: skip
def test_ratios_and_inches_to_the_foot(text, meant):
    assert scale_of(text) == meant


@pytest.mark.parametrize("text", [
    "", "small", "2:5", "0", "1:0", "1:9999", "-5", '0"', '1/0"', "in", "1:5:5", '1.5"', "9**9", "1e3", '1/99"',
])  # fmt: skip
def test_everything_else_is_refused(text):
    with pytest.raises(BadScale):
        scale_of(text)


EVERY = sorted({int(one) for found in (SECTIONS, DETAILS, BUILDINGS, WALLS) for one in found["customary"] if one <= 384})


@pytest.mark.parametrize("scale", EVERY)
def test_every_scale_down_to_a_thirty_second_is_written_in_inches_to_the_foot_and_reads_back(scale):
    text, ratio = scale_text(scale, "customary").removesuffix(")").split(" (")
    assert scale_of(text) == scale and ratio == f"1 : {scale}"
