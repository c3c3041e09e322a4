"""Dimension figures, and labels pushed apart."""

from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from layerfolio.drawing.figures import figure, inch_text, total, with_other
from layerfolio.drawing.lettering import SIZE, spread, wide, wrapped
from layerfolio.drawing.lines import Obstacle, distance, segments_cross
from layerfolio.units.quantity import Quantity


def length(metres, text):
    return Quantity(metres, "length", text)


@pytest.mark.parametrize("value, text, metric, customary", [
    (0.0127, "12.7 mm", "12.7", '1/2"'), (0.184, "184 mm", "184", '7 1/4"'), (0.0381, "1-1/2 in", "38", '1 1/2"'),
    (0.1397, '5 1/2"', "140", '5 1/2"'), (0.3, "0.3 m", "300", '11 13/16"'),
    (19 / 32 * 0.0254, "19/32 in", "15.1", '19/32"'),
    (0.0006, "0.6 mm", "0.6", '0.024"'), (1.0668, "3 ft 6 in", "1067", "3'-6\""),
])  # fmt: skip
def test_a_figure_is_as_written_or_converted(value, text, metric, customary):
    assert figure(length(value, text), "metric").text == metric
    assert figure(length(value, text), "customary").text == customary


def test_sixteenths_and_thirty_seconds_add_up_exactly():
    """3/4 + 2 1/2 + 1 3/8 + 11 1/4 + 19/32 + 1 1/2 + 1/2 = 18 15/32 in, worked by hand."""
    texts = ("3/4", "2 1/2", "1 3/8", "11 1/4", "19/32", "1 1/2", "1/2")
    figures = [figure(length(sum(map(Fraction, one.split())) * 0.0254, f"{one} in"), "customary") for one in texts]
    whole = total(figures, "customary")
    assert whole.text == '18 15/32"' and with_other(whole, 0.46910625, "customary") == '18 15/32" (469.1)'


@given(st.integers(1, 64 * 120))
def test_inch_text_reads_back(sixty_fourths):
    amount = Fraction(sixty_fourths, 64)
    text = inch_text(amount)
    quantity = length(float(amount) * 0.0254, text)
    assert figure(quantity, "customary").amount == amount


@given(st.lists(st.floats(-100, 100), min_size=1, max_size=20), st.floats(0.5, 8))
def test_spread_keeps_order_distance_and_middle(wanted, size):
    wanted = sorted(wanted, reverse=True)
    placed = spread(wanted, [size] * len(wanted))
    assert all(a - b >= size - 1e-9 for a, b in pairwise(placed))
    assert sum(placed) == pytest.approx(sum(wanted), abs=1e-6)


def test_spread_shares_the_overlap_equally():
    assert spread([1.0, 0.0], [3.7, 3.7]) == pytest.approx([2.35, -1.35])
    assert spread([9.0, 0.0], [3.7, 3.7]) == [9.0, 0.0]


@given(st.text(st.characters(codec="latin-1", exclude_categories=["Cc"]), max_size=60), st.floats(8, 40))
def test_wrapped_lines_fit(text, room):
    lines = wrapped(text, room)
    assert len(lines) <= 2 and all(wide(one) <= room or one == "…" for one in lines)


def test_wrapping_breaks_between_words_and_not_in_figures():
    assert wrapped("wood-fibre board 1\u00a03/8\"", 30.0) == ("wood-fibre board", '1\u00a03/8"')
    assert wrapped("one", 30.0) == ("one",)
    assert wide("wood-fibre board") > 20 and SIZE == 9.72


def test_segments():
    assert segments_cross((0, 0), (2, 2), (0, 2), (2, 0))
    assert not segments_cross((0, 0), (1, 1), (2, 0), (3, 1))
    assert not segments_cross((0, 0), (1, 1), (1, 1), (2, 0))
    assert distance((1, 1), (0, 0), (2, 0)) == 1 and distance((5, 0), (0, 0), (2, 0)) == 3
    box = Obstacle.of(((1, 1), (2, 1), (2, 2), (1, 2)))
    assert box.crossed_by((0, 1.5), (3, 1.5)) and box.crossed_by((1.5, 1.5), (5, 5))
    assert not box.crossed_by((0, 0), (3, 0)) and not box.crossed_by((0, 0.5), (0.5, 3))
