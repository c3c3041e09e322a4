"""Laws that hold for the drawing of every assembly, whatever its layers."""

from fractions import Fraction
from itertools import combinations, pairwise
from math import dist, hypot, radians, tan

import pictured
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from readings import areas, dots, flat, keeps_the_laws, lines, texts

import builders
from layerfolio.drawing.geometry import contains, text_box
from layerfolio.drawing.layout_stack import SHEET, form_of
from layerfolio.drawing.lines import crosses_outline, distance
from layerfolio.drawing.marks import Curve, Line
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
    keeps_the_laws(drawing)
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


def test_a_steep_roof_that_is_broken_keeps_the_laws():
    """The word `broken` in the chain is wider than any figure beside it."""
    deep = [pictured.layer(number, f"Layer {number}", mm, "timber-board") for number, mm in ((1, 286), (2, 400), (3, 286))]
    check(builders.assembly(deep, kind="roof", slope=60.0))


def test_spacings_of_a_steep_roof_keep_clear_of_its_tags():
    """Below a section of 60 degrees the lines of the spacings come to lie under the tags."""
    joist, thin = pictured.member("joist", 38, 300, "across the slope"), pictured.member("joist", 89, 406.4, "across the slope")
    batten, beside = pictured.member("batten", 64, 625, "horizontal"), pictured.member("batten", 38, 600, "horizontal")
    layers = [
        pictured.layer(1, "Layer 1", 184, "foam", frame=joist), pictured.layer(2, "Layer 2", 89, "foam", insulating=True),
        pictured.layer(3, "Layer 3", 18, "timber", frame=batten), pictured.layer(4, "Layer 4", 140, "plaster", frame=beside),
        pictured.layer(5, "Layer 5", 15, "air", kind="cavity", cavity="unventilated"),
        pictured.layer(6, "Layer 6", None, "timber", frame=thin), pictured.layer(7, "Layer 7", 24, "quark", insulating=True),
        pictured.layer(8, "Layer 8", None, "plywood"), pictured.layer(9, "Layer 9", 25, "air", kind="cavity"),
        pictured.layer(10, "Layer 10", None, "membrane", kind="membrane"),
        pictured.layer(11, "Layer 11", 184, "strand-board", insulating=True,
                       frame=pictured.member("stud", 64, 600, "across the slope")),
    ]  # fmt: skip
    check(builders.assembly(layers, kind="roof", slope=60.0), width=193.95, page="tabloid", notes=True)


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


OVER = 5.0  # pieces run on behind the break line
ROOMY = [one for one in pictured.SHOWN if one != "fourteen"]
"""Fourteen layers with members have thin neighbours on one leader, and more tags than can all leave steeply."""


def obstructions(assembly, units):
    """Heavy lines, control lines and layers thinner than 3 mm on paper, as areas of the page, measured from the marks."""
    drawing = section(assembly, units=units)
    found = [(line, line.width / 2 + 0.475) for role in ("control W", "control A", "control V", "membrane", "thin layer",
             "metal") for line in lines(drawing, role)]  # fmt: skip
    for area in areas(drawing):
        (ax, ay), (bx, by), (cx, cy), *_ = area.outline
        deep = hypot(cx - bx, cy - by)
        if "/" not in area.layer and len(area.outline) == 4 and area.family != "air" and 1.01 < deep < 3:
            middle = (((ax + (cx - bx) / 2), ay + (cy - by) / 2), (bx + (cx - bx) / 2, by + (cy - by) / 2))
            found.append((Line(middle, 0.0), deep / 2))
    return drawing, found


def run_along(leader, line, reach, over):
    """Length over which a leader of a small angle lies within `reach` of a line; 0 for one that crosses steeply."""
    (ax, ay), (bx, by) = line.points[0], line.points[-1]
    long = hypot(bx - ax, by - ay)
    c, s = (bx - ax) / long, (by - ay) / long
    (x0, y0), (x1, y1) = [(c * (x - ax) + s * (y - ay), c * (y - ay) - s * (x - ax)) for x, y in leader.points[:2]]
    steep = 30 if line.role else 20
    if abs(y1 - y0) >= tan(radians(steep)) * abs(x1 - x0) - 1e-6:
        return 0.0
    steps = [(x0 + (x1 - x0) * one / 2000, y0 + (y1 - y0) * one / 2000) for one in range(2001)]
    return sum(0 <= x <= long - over and abs(y) < reach for x, y in steps) * abs(x1 - x0) / 2000


@pytest.mark.parametrize("units", ["metric", "customary"])
@pytest.mark.parametrize("name", ROOMY)
def test_no_leader_runs_along_a_line_or_a_thin_layer(name, units):
    """Its white would wipe the line out: at most 2.5 mm within the section, or a crossing at 30 degrees or more,
    of a thin layer at 20."""
    drawing, found = obstructions(pictured.SHOWN[name](), units)
    for leader in lines(drawing, "leader"):
        for line, reach in found:
            over = 0.0 if line.role.startswith("control") else OVER
            assert run_along(leader, line, reach, over) <= 2.6, (leader.role, line.role)


@pytest.mark.parametrize("units", ["metric", "customary"])
@pytest.mark.parametrize("name", ROOMY)
def test_dots_are_painted_last_and_apart_and_off_the_control_lines(name, units):
    drawing = section(pictured.SHOWN[name](), units=units)
    roles = [one.role for one in flat(drawing.marks) if getattr(one, "role", "").startswith("leader")]
    first = roles.index("leader dot")
    assert all(role == "leader dot" for role in roles[first:])
    middles = [one.centre for one in dots(drawing)]
    assert all(dist(one, other) >= 2.0 for one, other in combinations(middles, 2))
    for leader in lines(drawing, "leader"):
        others = [one for one in middles if one != leader.points[0]]
        assert all(distance(one, *leader.points[:2]) >= 0.55 + 0.475 for one in others), leader.role
    if (name, units) == ("ceiling", "customary"):
        return  # its board of 2 mm under a membrane carries the line, which leaves a dot no room beside it
    for line in lines(drawing, "control"):
        if line.role != "control T":
            assert all(distance(dot, *line.points) > line.width / 2 + 0.55 for dot in middles)


@pytest.mark.parametrize("units", ["metric", "customary"])
@pytest.mark.parametrize("name", pictured.SHOWN)
def test_words_for_the_sides_keep_white_between_them_and_leaders(name, units):
    drawing = section(pictured.SHOWN[name](), units=units)
    for word in texts(drawing, "side"):
        box = text_box(word, 1.0)
        for leader in lines(drawing, "leader"):
            assert not any(crosses_outline(a, b, box) for a, b in pairwise(leader.points)), (word.text, leader.role)


@pytest.mark.parametrize("name", pictured.SHOWN)
def test_the_white_of_control_lines_stops_at_cut_members(name):
    """Else a control line cuts a small batten to crumbs."""
    drawing = section(pictured.SHOWN[name](), units="metric")
    members = [one.outline for one in areas(drawing) if "/" in one.layer and len(one.outline) == 4]
    whites = [one for one in flat(drawing.marks) if isinstance(one, Curve) and one.role == "control white"]
    for white in whites:
        corners = [command[1:] for command in white.commands if len(command) == 3]
        middle = (sum(x for x, _ in corners) / 4, sum(y for _, y in corners) / 4)
        assert not any(contains(outline, middle) for outline in members)
    assert whites or not any(texts(drawing, f"control letter {sign}") for sign in "WAV")
    assert not any(one.halo for one in lines(drawing, "control"))


def test_same_assembly_gives_the_same_drawing():
    for make in pictured.SHOWN.values():
        assert section(make()) == section(make())
