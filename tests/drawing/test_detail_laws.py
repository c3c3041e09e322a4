"""Laws that hold for every junction in building millimetres, whatever assemblies meet there."""

from itertools import pairwise
from math import hypot

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from test_section_laws import layers

import builders
from layerfolio.assembly.courses import courses
from layerfolio.assembly.junction_types import Junction, Link
from layerfolio.drawing.detail.all import MAKERS, detail_of
from layerfolio.drawing.geometry import bounds, contains

SECOND = {"sill": ("slab", "floor"), "rim": ("floor",), "eave": ("roof", "ceiling"), "verge": ("roof",), "ridge": ("roof",)}
KINDS = sorted(MAKERS)


@st.composite
def met(draw, kind):
    """Two random assemblies and how they meet."""
    made = {}
    first = "roof" if kind == "ridge" else "wall"
    made["W1"] = assembly_of(draw, "W1", first)
    if kind in SECOND and kind != "ridge":
        made["X1"] = assembly_of(draw, "X1", draw(st.sampled_from(SECOND[kind])))
    if kind.endswith("corner") and draw(st.booleans()):
        made["W2"] = assembly_of(draw, "W2", "wall")
    broken = draw(st.booleans())
    links = tuple(Link(letter, None, None, "tape", "", "no layer for it" if broken else "") for letter in "AV")
    junction = Junction(
        1, kind, tuple(made), "Test", links,
        overhang=draw(st.sampled_from((None, 0.0, 0.2, 0.4, 0.9))),
        ground_level=draw(st.sampled_from((None, -0.2, -0.6))),
        clearance=draw(st.sampled_from((None, 0.2))),
        foundation=draw(st.sampled_from(("", "wall", "piers", "slab edge"))),
        frame_set=draw(st.sampled_from(("", "at the outside", "in the framing", "in the insulation"))),
        edge_insulation=draw(st.sampled_from((None, (0.1, 0.47)))),
    )  # fmt: skip
    return junction, made, draw(st.sampled_from((5.0, 10.0, 16.0)))


def assembly_of(draw, name, kind):
    slope = draw(st.sampled_from((0.0, 2.0, 10.0, 30.0, 45.0, 60.0))) if kind == "roof" else 90.0
    faces = draw(st.sampled_from(("outside air", "vented space", "ground")))
    made = [draw(layers(number + 1)) for number in range(draw(st.integers(1, 9)))]
    return builders.assembly(made, name=name, kind=kind, slope=slope, faces=faces)


def overlaps(pieces, steps=60):
    """Points of a lattice over the drawing that lie in two cut pieces at once, a little inside both."""
    cut = [one for one in pieces if not one.beyond]
    if not cut:
        return []
    x0, y0, x1, y1 = bounds([p for one in cut for p in one.outline])
    boxes = [(bounds(one.outline), one) for one in cut]
    found = []
    for row in range(steps):
        for column in range(steps):
            point = x0 + (x1 - x0) * (column + 0.37) / steps, y0 + (y1 - y0) * (row + 0.41) / steps
            held = [one for box, one in boxes if _within(box, point) and contains(one.outline, point) and _clear(one, point)]
            if len(held) > 1:
                found.append((point, [one.layer for one in held]))
    return found


def _within(box, point):
    return box[0] <= point[0] <= box[2] and box[1] <= point[1] <= box[3]


def _clear(piece, point, least=0.05):
    """Whether a point is not just on an edge."""
    points = piece.outline
    return all(_off(points[number - 1], points[number], point) > least for number in range(len(points)))


def _off(a, b, point):
    dx, dy = b[0] - a[0], b[1] - a[1]
    long = hypot(dx, dy)
    return abs(dx * (point[1] - a[1]) - dy * (point[0] - a[0])) / long if long else 1.0


def check(junction, made, scale):
    detail = detail_of(junction, made, "metric", scale)
    assert detail.pieces or detail.sheets
    names = {f"{a.name}/{one.name}" for a in made.values() for one in a.layers}
    stated = [one.layer for one in (*detail.pieces, *detail.sheets) if "/" in one.layer]
    assert all(any(one == name or one.startswith(f"{name}/") for name in names) for one in stated)
    assert all(abs(value) < 1e5 for one in detail.pieces for point in one.outline for value in point)
    assert overlaps(detail.pieces) == []
    for trace in detail.traces:
        assert all(len(run) >= 2 for run in trace.runs)
        link = next((one for one in junction.links if one.letter == trace.letters[0]), None)
        if len(trace.runs) > 1 and link and link.broken:
            assert trace.gaps
    return detail


@pytest.mark.parametrize("kind", KINDS)
def test_pieces_of_a_junction_lie_beside_each_other(kind):
    @settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.too_slow])
    @given(met(kind))
    def law(drawn):
        check(*drawn)

    law()


@settings(max_examples=60, deadline=None)
@given(st.data())
def test_courses_add_up_and_follow_each_other(data):
    assembly = assembly_of(data.draw, "W1", "wall")
    found = courses(assembly)
    assert [one.layer for one in found] == list(assembly.layers)
    assert all(abs(one.end - other.start) < 1e-9 for one, other in pairwise(found))
    order = ["rain", "outer", "frame", "inner"]
    ranks = [order.index(one.zone) for one in found]
    assert ranks == sorted(ranks)
    assert min(abs(one.start) for one in found if one.zone == "frame") < 1e-9
