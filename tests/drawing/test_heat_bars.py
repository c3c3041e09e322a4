"""Bars of the design heat loss: in order, to scale, legible, in black and white."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from layerfolio.drawing.geometry import boxes_touch, text_box
from layerfolio.drawing.heat_bars import KINDS, MOST, HeatBar, heat_bars
from layerfolio.drawing.marks import Curve, Text

NAMES = st.text("abcdefgh WRA123", min_size=1, max_size=60)
PARTS = st.lists(st.builds(HeatBar, NAMES, st.floats(-50, 5000), st.sampled_from(list(KINDS))), min_size=1, max_size=40)
SYSTEMS = st.sampled_from(["metric", "customary"])


def texts(drawing, role):
    return [mark for mark in drawing.marks if isinstance(mark, Text) and mark.role == role]


def bars_of(drawing):
    """Left and right end of each bar, from the top down; the key's swatches left out."""
    found = [mark for mark in drawing.marks if isinstance(mark, Curve) and mark.role.startswith("bar ") and mark.fill]
    spans = [([c[1] for c in mark.commands if len(c) > 1], [c[2] for c in mark.commands if len(c) > 1]) for mark in found]
    return sorted(((min(xs), max(xs), max(ys)) for xs, ys in spans if max(ys) > 5.0), key=lambda span: -span[2])


class TestOrderAndScale:
    def test_largest_first_and_proportional(self):
        parts = [HeatBar("W1", 200.0, "assembly"), HeatBar("air change", 400.0, "air"), HeatBar("A1", 100.0, "opening")]
        drawing = heat_bars(parts)
        assert [one.text for one in texts(drawing, "name")] == ["air change", "W1", "A1"]
        assert [one.text for one in texts(drawing, "value")] == ["400 W", "200 W", "100 W"]
        lengths = [right - left for left, right, _ in bars_of(drawing)]
        assert lengths[0] == pytest.approx(2 * lengths[1]) and lengths[1] == pytest.approx(2 * lengths[2])

    def test_customary_units_come_first(self):
        """1 W is 3.412 Btu/h."""
        drawing = heat_bars([HeatBar("W1", 1000.0, "assembly")], system="customary")
        assert texts(drawing, "value")[0].text == "3412 Btu/h (1000 W)"

    def test_a_part_that_gains_has_a_value_and_no_bar(self):
        drawing = heat_bars([HeatBar("W1", 200.0, "assembly"), HeatBar("corner", -12.0, "join")])
        assert texts(drawing, "value")[1].text == "−12 W" and len(bars_of(drawing)) == 1

    @pytest.mark.parametrize("bars", [[], [HeatBar("W1", 0.4, "assembly")]])
    def test_nothing_lost_no_chart(self, bars):
        assert heat_bars(bars) is None

    def test_small_parts_beyond_the_most_stand_together(self):
        drawing = heat_bars([HeatBar(f"W{i}", 100.0 - i, "assembly") for i in range(MOST + 4)])
        names, values = texts(drawing, "name"), texts(drawing, "value")
        assert len(names) == MOST and names[-1].text == "5 smaller parts"
        assert values[-1].text == f"{sum(100 - i for i in range(MOST - 1, MOST + 4))} W"


@given(PARTS, SYSTEMS, st.sampled_from([180.0, 193.95]))
def test_everything_stays_on_the_paper_and_apart(parts, system, width):
    drawing = heat_bars(parts, system=system, width=width)
    if drawing is None:
        assert max(one.watts for one in parts) < 0.5
        return
    words = [mark for mark in drawing.marks if isinstance(mark, Text)]
    for one in words:
        (left, bottom), _, (right, top), _ = text_box(one)
        assert left >= -0.3 and right <= width + 0.3 and bottom >= -0.5 and top <= drawing.height + 0.5, one.text
    lettered = [one for one in words if one.role in ("name", "value", "key")]
    for number, one in enumerate(lettered):
        assert not any(boxes_touch(text_box(one, -0.3), text_box(other, -0.3)) for other in lettered[number + 1 :])


@given(PARTS)
def test_the_order_in_which_parts_are_told_changes_nothing_but_ties(parts):
    apart = {one.watts: one for one in parts}
    first, second = (heat_bars(list(order)) for order in (apart.values(), reversed(list(apart.values()))))
    assert first == second


def test_black_and_white_only():
    drawing = heat_bars([HeatBar("x", 10.0 * n, kind) for n, kind in enumerate(KINDS, 1)])
    assert {mark.fill for mark in drawing.marks if isinstance(mark, Curve)} <= {"", "black", "white"}
