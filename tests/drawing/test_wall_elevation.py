"""Elevations of lines of bracing: to scale, legible, in black and white, their chain adding up."""

from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from readings import flat, labels_crossed, lines, overlapping_labels, texts

from layerfolio.drawing.extent import extent
from layerfolio.drawing.font import cap_height
from layerfolio.drawing.lettering import CAPITAL
from layerfolio.drawing.marks import Clip, Curve, Group, Line, Text
from layerfolio.drawing.wall_dimensions import breaks, chain_steps, printed, steps
from layerfolio.drawing.wall_elevation import ASSUMED, wall_elevations
from layerfolio.drawing.wall_panels import CLOSEST, are_drawn, sheets_of
from layerfolio.drawing.wall_views import LineView, OpeningView, PanelView, SheetView
from layerfolio.units.show import length_figure

UNITS = st.sampled_from(["metric", "customary"])
NORTH = LineView(
    "L1", "North wall, ground floor", 9.6, 2.7,
    (PanelView(0.0, 2.4, 2.7), PanelView(4.2, 1.2, 2.7), PanelView(9.0, 0.6, 2.4)),
    (OpeningView(2.7, 1.2, 0.9, 1.2), OpeningView(6.0, 0.91, 0.0, None)), hold_downs=True,
    notes=("nails 63 x 3.25 mm at 150 on edges, 300 between; edges blocked",),
)  # fmt: skip


@st.composite
def views(draw):
    """Panels and gaps in turn, from slivers to whole walls; the length is their sum."""
    height = draw(st.floats(1.0, 12.0))
    pieces = draw(st.lists(st.floats(0.05, 8.0), min_size=1, max_size=25))
    place, panels, openings = 0.0, [], []
    touching = draw(st.booleans())
    for number, long in enumerate(pieces):
        if number % 2 == 0 or touching:
            panels.append(PanelView(place, long, height * draw(st.sampled_from((1.0, 0.7)))))
        elif draw(st.booleans()):
            openings.append(OpeningView(place, long, 0.3 * height, draw(st.sampled_from((None, 0.5 * height)))))
        place += long
    title = draw(st.sampled_from(("North wall", "", "A very long name of a line of bracing " * 5)))
    notes = draw(st.lists(st.sampled_from(("nails", "staples at 75 " * 12)), max_size=2))
    return LineView(f"L{len(panels)}", title, place, height, tuple(panels), tuple(openings),
                    draw(st.booleans()), draw(st.booleans()), tuple(notes), draw(st.booleans()), draw(sheets()),
                    draw(st.sampled_from((None, 0.4, 0.6))), draw(st.sampled_from((None, 0.05, 0.15))),
                    draw(st.sampled_from((None, 0.3))), draw(st.sampled_from((None, True, False))))  # fmt: skip


def sheets():
    return st.sampled_from((None, SheetView(1.2, 2.4, False), SheetView(1.2192, 3.048, True)))


@settings(max_examples=80, deadline=None)
@given(st.lists(views(), min_size=1, max_size=6), UNITS, st.sampled_from((180.0, 191.0, 193.95)))
def test_no_lettering_overlaps_or_leaves_the_field(several, units, width):
    drawings = wall_elevations(several, units=units, width=width)
    for drawing in drawings:
        assert overlapping_labels(drawing) == []
        assert labels_crossed(drawing, "tick") == []
        assert labels_crossed(drawing, "pointer") == []
        x0, y0, x1, y1 = extent(drawing.marks)
        assert x0 >= -0.01 and y0 >= -0.01 and x1 <= width + 0.01 and y1 <= drawing.height + 0.01
        assert all(one.size >= 9.72 for one in texts(drawing))
        assert len([one for one in flat(drawing.marks) if getattr(one, "role", "") == "scale"]) == 1
    walls = [one for drawing in drawings for one in flat(drawing.marks) if getattr(one, "role", "") == "outline wall"]
    assert len(walls) == len(several)


def _text_of(figure: str) -> Fraction:
    """The figure of a chain in mm or inches."""
    if '"' not in figure:
        return Fraction(figure)
    feet, _, inches = figure.removesuffix('"').rpartition("'-")
    return 12 * Fraction(feet or 0) + sum(map(Fraction, inches.split()), Fraction(0))


@settings(max_examples=200, deadline=None)
@given(views(), UNITS)
def test_the_chain_adds_up_to_the_length(view, units):
    parts = chain_steps(view, units)
    shown = [_text_of(printed(one, units)) for one in parts]
    assert sum(shown) == _text_of(printed(steps(view.length, units), units)) and min(parts) >= 0
    assert len(parts) == len(breaks(view)) - 1


def test_a_panel_has_the_figure_of_the_tables():
    """750 mm is 29 1/2 inches, wherever it begins; the gaps take up the sixteenths."""
    spread = tuple(PanelView(start, long, 2.7) for start, long in ((0.0, 1.2), (3.53, 0.75), (4.8, 1.2), (8.4, 1.2)))
    view = replace(NORTH, panels=spread)
    shown = [printed(one, "customary") for one in chain_steps(view, "customary")]
    assert [shown[n] for n in (0, 2, 4, 6)] == [length_figure(one.length, "customary") for one in spread]


def _spans(drawing, role):
    found = [one for one in flat(drawing.marks) if isinstance(one, Curve) and one.role == role]
    xs = [[c[1] for c in one.commands if len(c) > 1] for one in found]
    return [max(one) - min(one) for one in xs]


def test_panels_and_wall_are_true_to_the_scale():
    [drawing] = wall_elevations((NORTH,))
    assert (drawing.scale, drawing.scale_text) == (100, "1 : 100")
    assert round(_spans(drawing, "outline wall")[0], 6) == 96.0
    assert [round(one, 6) for one in _spans(drawing, "outline panel")[:3]] == [24.0, 12.0, 6.0]
    [feet] = wall_elevations((NORTH,), units="customary")
    assert feet.scale_text == '1/8" = 1\'-0" (1 : 96)'
    assert round(_spans(feet, "outline wall")[0], 6) == 100.0


def test_a_short_line_is_drawn_larger_and_a_long_one_smaller():
    assert wall_elevations((LineView("L1", "", 7.9, 2.7, ()),))[0].scale == 50
    assert wall_elevations((LineView("L1", "", 8.1, 2.7, ()),))[0].scale == 100
    assert wall_elevations((LineView("L1", "", 120.0, 2.7, ()),))[0].scale == 1000


def test_every_panel_is_hatched_at_45_degrees_and_named():
    [drawing] = wall_elevations((NORTH,))
    hatches = [one for one in _opened(drawing.marks) if isinstance(one, Clip)]
    assert len(hatches) == len(NORTH.panels) + 1  # and the key
    for clip in hatches:
        for stroke in clip.marks:
            for (_, ax, ay), (_, bx, by) in zip(stroke.commands[::2], stroke.commands[1::2], strict=True):
                assert abs((bx - ax) - (by - ay)) < 1e-6
    assert [one.text for one in texts(drawing, "panel")] == ["P1", "P2", "P3"]
    chain = sorted(texts(drawing, "chain"), key=lambda one: one.at[0])
    assert [one.text for one in chain] == ["2400", "1800", "1200", "3600", "600"]


def _opened(marks):
    for one in marks:
        yield from _opened(one.marks) if isinstance(one, Group) else (one,)


def test_hold_downs_stand_where_the_project_states_them_and_nowhere_else():
    def count(view):
        [drawing] = wall_elevations((view,))
        return sum(getattr(one, "role", "") == "hold-down" for one in flat(drawing.marks))

    assert count(NORTH) == 6 + 1  # panel ends, and the key
    assert count(replace(NORTH, hold_downs=False)) == 0
    touching = replace(NORTH, panels=(PanelView(0, 1.2, 2.7), PanelView(1.2, 1.2, 2.7)))
    assert count(touching) == 3 + 1


def test_places_that_are_assumed_have_no_gap_and_say_so():
    [drawing] = wall_elevations((replace(NORTH, laid_out=False),))
    chain = sorted(texts(drawing, "chain"), key=lambda one: one.at[0])
    assert [one.text for one in chain] == ["2400", "1200", "600"]
    assert ASSUMED in " ".join(one.text for one in texts(drawing, "note"))


def test_braces_let_in_are_one_line_from_corner_to_corner():
    [drawing] = wall_elevations((replace(NORTH, let_in=True, openings=()),))
    assert not [one for one in _opened(drawing.marks) if isinstance(one, Clip)]
    braces = [one.points for one in lines(drawing, "brace")]
    assert len(braces) == len(NORTH.panels) + 1  # and the key
    for (x0, y0), (x1, y1) in braces[:2]:
        assert y1 - y0 == pytest.approx(27.0) and x1 > x0
    assert next(one.text for one in texts(drawing, "key")) == "brace let in, either way"


def test_an_opening_without_a_height_is_dashed():
    [drawing] = wall_elevations((NORTH,))
    frames = [one for one in flat(drawing.marks) if isinstance(one, Line) and one.role == "outline opening"]
    assert [bool(one.dash) for one in frames] == [False, True, False]


def test_many_lines_take_several_drawings_each_with_its_bar():
    many = tuple(LineView(f"L{n}", "A wall", 9.0, 2.7, (PanelView(0, 9.0, 2.7),)) for n in range(1, 8))
    drawings = wall_elevations(many, room=190.0)
    assert len(drawings) > 1 and all(one.height <= 190.0 for one in drawings)
    assert [sum(1 for _ in lines(one, "check bar end")) for one in drawings] == [2] * len(drawings)


def test_lettering_is_at_least_two_and_a_half_millimetres():
    [drawing] = wall_elevations((NORTH,))

    assert all(cap_height(one.size) >= CAPITAL - 0.005 for one in flat(drawing.marks) if isinstance(one, Text))


SHEETED = replace(NORTH, sheet=SheetView(1.2, 2.4, False), stud=0.6, edge=0.15, field=0.3, blocked=True, hold_downs=False)


def test_sheets_fill_a_panel_without_gap_or_overlap():
    """2.7 m by 2.7 m of sheets 1.2 m by 2.4 m: three columns, two rows, and a strip of 0.3 m."""
    boxes = sheets_of(PanelView(0.9, 2.7, 2.7), SHEETED)
    assert len(boxes) == 6
    assert sum((x1 - x0) * (y1 - y0) for x0, y0, x1, y1 in boxes) == pytest.approx(2.7 * 2.7)
    assert sorted({round(x1 - x0, 6) for x0, _, x1, _ in boxes}) == [0.3, 1.2]
    assert len(sheets_of(PanelView(0.0, 1.2, 2.4), SHEETED)) == 1  # exactly one sheet has no seam
    assert sheets_of(PanelView(0.0, 5.0, 3.0), NORTH) == [(0.0, 0.0, 5.0, 3.0)]


def test_seams_stand_at_the_sheets_edges_on_paper():
    [drawing] = wall_elevations((SHEETED,))
    wall = min(one.commands[0][1] for one in flat(drawing.marks) if isinstance(one, Curve) and one.role == "outline wall")
    upright = [one.points for one in lines(drawing, "seam") if one.points[0][0] == one.points[1][0] and abs(
        one.points[0][1] - one.points[1][1]) > 5]  # fmt: skip
    assert round((upright[0][0][0] - wall) * drawing.scale, 3) == 1200
    notes = [one.text for one in texts(drawing, "note")]
    assert any("assumption of this drawing" in one for one in notes)
    [stated] = wall_elevations((replace(SHEETED, sheet=SheetView(1.2, 2.4, True)),))
    assert not any("assumption" in one.text for one in texts(stated, "note"))


@pytest.mark.parametrize("blocked, drawn", [(True, True), (False, False), (None, False)])
def test_blocking_is_drawn_behind_level_seams_where_the_file_says_so(blocked, drawn):
    [drawing] = wall_elevations((replace(SHEETED, blocked=blocked),))
    assert bool(lines(drawing, "blocking")) == drawn


@pytest.mark.parametrize("edge", [0.1, 0.15])
def test_fasteners_stand_at_their_true_spacing_or_a_note_says_that_they_do_not(edge):
    view = LineView("L1", "", 1.2, 2.4, (PanelView(0.0, 1.2, 2.4),), stud=0.6, edge=edge, field=0.3)
    [drawing] = wall_elevations((view,))
    ticks = next(one for one in flat(drawing.marks) if isinstance(one, Curve) and one.role == "panel fasteners")
    low = min(command[2] for command in ticks.commands)
    foot = sorted(a[1] for a, b in zip(ticks.commands[::2], ticks.commands[1::2], strict=True) if a[1] == b[1] and a[2] < low + 1)
    gaps = {round((b - a) * drawing.scale) for a, b in pairwise(foot)}
    assert gaps == {round(edge * 1000)}
    [small] = wall_elevations((replace(view, length=60.0),))
    assert not are_drawn(view, small.scale) and any("run together" in one.text for one in texts(small, "note"))
    assert not [one for one in flat(small.marks) if getattr(one, "role", "") == "panel fasteners"]


def test_fasteners_are_drawn_on_one_side_of_the_limit_alone():
    assert are_drawn(replace(SHEETED, edge=0.12), 100) and CLOSEST == 0.12 * 1000 / 100
    assert not are_drawn(replace(SHEETED, edge=0.119), 100)
    assert not are_drawn(replace(SHEETED, edge=None), 50) and not are_drawn(replace(SHEETED, let_in=True), 50)
