"""The sketch of a fastener: true lengths, legible, within its field."""

from hypothesis import given, settings
from hypothesis import strategies as st
from readings import flat, labels_crossed, overlapping_labels, texts

from layerfolio.drawing.extent import extent
from layerfolio.drawing.fastener_sketch import FastenerView, fastener_sketch
from layerfolio.drawing.marks import Curve

VIEWS = st.builds(
    FastenerView, st.just("W1"), st.floats(0.006, 0.09), st.floats(0.0, 0.3), st.floats(0.012, 0.2), st.floats(0.002, 0.012)
)


@settings(max_examples=120, deadline=None)
@given(VIEWS, st.sampled_from(["metric", "customary"]), st.sampled_from((180.0, 191.0)))
def test_it_is_legible_and_true(view, units, width):
    drawing = fastener_sketch(view, units=units, width=width)
    assert overlapping_labels(drawing) == []
    assert labels_crossed(drawing, "tick") == labels_crossed(drawing, "pointer") == []
    x0, y0, x1, y1 = extent(drawing.marks)
    assert x0 >= -0.01 and y0 >= -0.01 and x1 <= width + 0.01 and y1 <= drawing.height + 0.01
    assert all(one.size >= 9.72 for one in texts(drawing))
    [shank] = [one for one in flat(drawing.marks) if isinstance(one, Curve) and one.role == "fastener"]
    xs = [c[1] for c in shank.commands if len(c) > 1]
    whole = view.side + view.gap + view.penetration
    assert abs(max(xs) - min(xs) - whole * 1000 / drawing.scale) < 1e-6


def test_its_parts_are_named_with_their_lengths():
    drawing = fastener_sketch(FastenerView("W1", 0.038, 0.05, 0.072, 0.006))
    assert [one.text for one in texts(drawing, "part")] == ["38 under the head", "50 crossed", "72 in the framing"]
    assert [one.text for one in texts(drawing, "length")] == ["160"]
    assert drawing.scale_text == "1 : 2"


def test_nothing_crossed_is_not_dimensioned():
    drawing = fastener_sketch(FastenerView("W1", 0.038, 0.0, 0.04, 0.006))
    assert len(texts(drawing, "part")) == 2
