"""Laws of details on paper, whatever meets there, and what the painter adds to a model."""

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from readings import crossing_leaders, labels_crossed, overlapping_labels, texts
from test_detail_laws import KINDS, met

from layerfolio.drawing.detail.all import detail_of
from layerfolio.drawing.detail.paper import drawing_of
from layerfolio.drawing.extent import extent


def check(detail, **keywords):
    drawing = drawing_of(detail, **keywords)
    assert overlapping_labels(drawing) == []
    assert labels_crossed(drawing, "tick") == []
    assert labels_crossed(drawing, "leader") == []
    assert crossing_leaders(drawing) == []
    x0, y0, x1, y1 = extent([one for one in drawing.marks])
    assert x0 >= -0.01 and y0 >= -0.01 and x1 <= drawing.width + 0.01 and y1 <= drawing.height + 0.01
    assert [one.text for one in texts(drawing, "tag")] == [str(number + 1) for number in range(len(detail.notes))]
    assert all(one.size >= 9.72 for one in texts(drawing))
    return drawing


@pytest.mark.parametrize("kind", KINDS)
def test_random_junctions(kind):
    @settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow], derandomize=True)
    @given(met(kind), st.sampled_from(("metric", "customary")))
    def law(parts, units):
        junction, made, scale = parts
        check(detail_of(junction, made, units, scale), units=units)

    law()
