"""Laws that hold for the drawing of every assembly, whatever its layers."""

from fractions import Fraction

import pictured
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from readings import crossing_leaders, labels_crossed, lines, overlapping_labels, texts

import builders
from layerfolio.drawing.extent import extent
from layerfolio.drawing.layout_stack import SHEET, form_of
from layerfolio.drawing.section import section

SOLID = ("timber-board", "plywood", "strand-board", "wood-fibre", "mineral-board", "batt", "straw", "foam", "gypsum",
         "masonry", "concrete", "gravel", "plaster", "timber", "metal", "quark")  # fmt: skip
SERVES = ("water control", "air control", "vapour control", "bracing", "lining")


@st.composite
def members(draw):
    width = draw(st.sampled_from((38, 45, 64, 89, 140)))
    spacing = draw(st.sampled_from((300, 400, 406.4, 450, 600, 625, 800, 1200)))
    direction = draw(st.sampled_from(("", "vertical", "horizontal", "up the slope", "across the slope")))
    return pictured.member(draw(st.sampled_from(("stud", "batten", "joist"))), width, spacing, direction)


@st.composite
def layers(draw, number):
    kind = draw(st.sampled_from(("solid", "solid", "solid", "cavity", "membrane")))
    serves = draw(st.lists(st.sampled_from(SERVES), max_size=2, unique=True))
    title, framing = f"Layer {number}", None
    if kind == "membrane":
        deep = draw(st.sampled_from((None, 0.2, 4)))
        return pictured.layer(number, title, deep, "membrane", kind=kind, serves=serves)
    if draw(st.booleans()):
        framing = draw(members())
    if kind == "cavity":
        state = draw(st.sampled_from(("ventilated", "unventilated", "slightly ventilated")))
        deep = draw(st.sampled_from((15, 25, 38, 64)))
        return pictured.layer(number, title, deep, "air", kind=kind, cavity=state, frame=framing)
    deep = draw(st.sampled_from((0.6, 3, 6, 9.5, 12.7, 15, 18, 24, 40, 89, 140, 184, 286, 400, 600, None)))
    return pictured.layer(
        number, title, deep, draw(st.sampled_from(SOLID)), serves=serves, insulating=draw(st.booleans()), frame=framing
    )


@st.composite
def assemblies(draw):
    count = draw(st.integers(1, 14))
    kind = draw(st.sampled_from(("wall", "roof", "ceiling", "floor", "slab", "foundation-wall")))
    slope = draw(st.sampled_from((0.0, 2.0, 10.0, 18.4, 30.0, 45.0, 60.0))) if kind == "roof" else 90.0
    faces = draw(st.sampled_from(("outside air", "vented space", "unheated space", "ground")))
    made = [draw(layers(number + 1)) for number in range(count)]
    return builders.assembly(made, kind=kind, slope=slope, faces=faces)


def stated(assembly) -> float:
    """Sum of the thicknesses that the chain carries, mm."""
    deep = [one.thickness.value for one in assembly.layers if one.thickness]
    return 1000 * sum(one for one in deep if one >= SHEET)


def check(assembly, **kwargs):
    drawing = section(assembly, **kwargs)
    assert overlapping_labels(drawing) == []
    assert labels_crossed(drawing, "tick") == []
    assert labels_crossed(drawing, "leader") == []
    assert crossing_leaders(drawing) == []
    x0, y0, x1, y1 = extent(drawing.marks)
    assert x0 >= -0.01 and y0 >= -0.01 and x1 <= drawing.width + 0.01 and y1 <= drawing.height + 0.01
    tags = [one.text for one in texts(drawing, "tag")]
    assert sorted(tag for tag in tags if tag.isdigit()) == sorted(str(one.number) for one in assembly.layers)
    assert len(tags) == len(set(tags))
    assert all(one.size >= 9.72 for one in texts(drawing))
    return drawing


KEYWORDS = st.sampled_from((
    {}, {"units": "customary"}, {"width": 193.95, "page": "tabloid", "notes": True},
    {"width": 191.0, "page": "a3", "units": "customary"}, {"notes": True},
))  # fmt: skip


@settings(max_examples=120, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(assemblies(), KEYWORDS)
def test_labels_leaders_and_frame(assembly, keywords):
    check(assembly, **keywords)


@pytest.mark.parametrize("units", ["metric", "customary"])
@pytest.mark.parametrize("name", pictured.SHOWN)
def test_shown_assemblies_keep_the_laws(name, units):
    check(pictured.SHOWN[name](), units=units)


@pytest.mark.parametrize("slope", [6, 8, 12, 18.43, 22.5, 30, 37, 45, 52, 60])
def test_every_slope_keeps_the_laws(slope):
    check(pictured.roof(slope))


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(assemblies())
def test_chain_adds_up(assembly):
    drawing = section(assembly)
    overall = texts(drawing, "overall")
    if not overall:
        nominal = [one for one in assembly.layers if one.thickness is None and form_of(one, 5) == "body"]
        assert nominal or stated(assembly) == 0
        return
    figures = [Fraction(one.text) for one in texts(drawing, "thickness") if one.text != "broken"]
    assert sum(figures) == Fraction(overall[0].text)
    assert abs(float(overall[0].text) - stated(assembly)) < 0.51 * len(figures)


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(assemblies())
def test_depth_on_paper_is_true_to_scale(assembly):
    drawing = section(assembly)
    if any("broken" in note or "not given" in note for note in drawing.notes):
        return
    faces = lines(drawing, "outline") + lines(drawing, "face")
    if not faces or not stated(assembly):
        return
    (ax, ay), (bx, by) = faces[0].points
    length = ((bx - ax) ** 2 + (by - ay) ** 2) ** 0.5
    off = [((bx - ax) * (line.points[0][1] - ay) - (by - ay) * (line.points[0][0] - ax)) / length for line in faces]
    thin = sum(one.thickness.value * 1000 for one in assembly.layers if form_of(one, drawing.scale) == "thin")
    between = (max(off) - min(off)) * drawing.scale
    assert stated(assembly) - thin - 0.1 <= between <= stated(assembly) + 0.1


def test_same_assembly_gives_the_same_drawing():
    for make in pictured.SHOWN.values():
        assert section(make()) == section(make())
