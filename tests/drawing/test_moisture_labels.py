"""A value beside a curve: it is seen as its point's own, or it is not there where it is said elsewhere."""

from math import hypot

from hypothesis import given
from hypothesis import strategies as st

from layerfolio.drawing.geometry import text_box
from layerfolio.drawing.moisture_labels import BESIDE, point_label

FRAME = (0.0, 0.0, 60.0, 40.0)
POINT = (4.0, 3.8)
UNDER = ((0.0, 3.8), (60.0, 9.0))  # the curve that the point lies on
BETWEEN = [UNDER, ((0.0, 5.2), (20.0, 9.0), (60.0, 39.0))]  # saturation close above it, no room below


def test_a_value_said_elsewhere_is_left_out_where_nothing_beside_the_point_is_clear():
    assert point_label(POINT, "69 %", BETWEEN, (), FRAME) is not None
    assert point_label(POINT, "69 %", BETWEEN, (), FRAME, spare=True) is None


def test_a_value_said_elsewhere_stands_where_there_is_room():
    assert point_label((20.0, 20.0), "69 %", [((0.0, 20.0), (60.0, 20.0))], (), FRAME, spare=True) is not None


@given(st.floats(1, 59), st.floats(1, 39), st.lists(st.tuples(st.floats(0, 40), st.floats(0, 40)), max_size=3))
def test_it_is_never_far_from_its_point(x, y, ends):
    found = point_label((x, y), "69 %", [((0.0, a), (60.0, b)) for a, b in ends], (), FRAME, spare=True)
    if found:
        assert min(hypot(px - x, py - y) for px, py in text_box(found)) < 2 * BESIDE
