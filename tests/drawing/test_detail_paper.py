"""Laws of details on paper, whatever meets there, and what the painter adds to a model."""

from dataclasses import replace
from itertools import combinations, pairwise
from math import dist, hypot

import detail_pictures
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from readings import areas, dots, flat, keeps_the_laws, lines, texts
from test_detail_laws import KINDS, met

from layerfolio.drawing.detail.all import detail_of
from layerfolio.drawing.detail.model import Break, Detail, Measure, Note, Piece, Trace, Word
from layerfolio.drawing.detail.paper import drawing_of
from layerfolio.drawing.geometry import bounds, rectangle, text_box
from layerfolio.drawing.hatches.strokes import ROLE
from layerfolio.drawing.lines import distance
from layerfolio.drawing.marks import Circle, Clip, Curve, Group, Line, Stipple

MADE = {"sill": detail_pictures.sill, "eave": detail_pictures.eave, "small": detail_pictures.small}
pictures = pytest.mark.parametrize("name", MADE)
BLOCK = Piece(rectangle(0, 0, 300, 200), "foam", "W1/foam")


def check(detail, **keywords):
    drawing = drawing_of(detail, **keywords)
    keeps_the_laws(drawing)
    assert [one.text for one in texts(drawing, "tag")] == [str(number + 1) for number in range(len(detail.notes))]
    assert all(one.size >= 9.72 for one in texts(drawing))
    return drawing


@pytest.mark.parametrize("kind", KINDS)
def test_labels_leaders_and_frame_of_random_junctions(kind):
    @settings(max_examples=15, deadline=None, suppress_health_check=[HealthCheck.too_slow])
    @given(met(kind), st.sampled_from(("metric", "customary")))
    def law(parts, units):
        junction, made, scale = parts
        check(detail_of(junction, made, units, scale), units=units)

    law()


@pictures
@pytest.mark.parametrize("keywords", [{}, {"units": "customary"}, {"light": True}, {"width": 190.0}, {"scale": 20.0}])
def test_details_by_hand_keep_the_laws(name, keywords):
    check(MADE[name](), **keywords)


@pictures
def test_pieces_are_true_to_scale(name):
    detail = MADE[name]()
    drawing = drawing_of(detail)
    drawn = areas(drawing)
    assert len(drawn) == len(detail.pieces)
    for piece in detail.pieces:
        box = bounds(piece.outline)
        sizes = box[2] - box[0], box[3] - box[1]
        same = [one for one in drawn if one.layer == piece.layer]
        found = [(b[2] - b[0], b[3] - b[1]) for b in (bounds(one.outline) for one in same)]
        assert any(all(abs(a * drawing.scale - b) < 0.1 for a, b in zip(one, sizes, strict=True)) for one in found), piece.layer


def test_the_largest_scale_that_fits_is_taken_and_written():
    detail = Detail("block", "plan section", (BLOCK,))
    assert drawing_of(detail).scale == 2
    assert drawing_of(replace(detail, pieces=(replace(BLOCK, outline=rectangle(0, 0, 370, 200)),))).scale == 5
    assert drawing_of(detail, room=80.0).scale == 5
    assert drawing_of(detail, units="customary").scale == 4
    asked = drawing_of(detail, units="customary", scale=8)
    assert asked.scale_text == "1 1/2\" = 1'-0\" (1 : 8)"
    assert [one.text for one in texts(asked, "scale")] == [asked.scale_text]


def test_notes_narrow_to_three_lines_before_the_scale_becomes_smaller():
    words = "inner collar taped all round"
    long, note = replace(BLOCK, outline=rectangle(0, 0, 720, 200)), Note(words, ((700, 100),), "right")
    wide = Detail("wide", "plan", (long,), notes=(note,))
    drawing = drawing_of(wide)
    assert drawing.scale == 5
    assert len(texts(drawing, "note")) == 3
    assert len(texts(drawing_of(wide, scale=10), "note")) == 2


@pictures
def test_every_straight_leg_of_a_control_line_carries_a_letter(name):
    detail = MADE[name]()
    drawing = drawing_of(detail)
    letters = [(one.text, middle(text_box(one))) for one in texts(drawing, "control letter")]
    for trace in detail.traces:
        shown = {letter for letter, _ in letters}
        assert set(trace.letters) <= shown
        legs = [leg for run in trace.runs for leg in pairwise(run)]
        long = [leg for leg in legs if dist(*leg) / drawing.scale > 22]
        count = sum(letter in trace.letters for letter, _ in letters)
        assert count >= len(long)


@pictures
def test_letters_keep_clear_of_leaders_dots_and_each_other(name):
    drawing = drawing_of(MADE[name]())
    middles = [middle(text_box(one)) for one in texts(drawing, "control letter")]
    assert all(abs(a[0] - b[0]) > 3.4 or abs(a[1] - b[1]) > 3.0 for a, b in combinations(middles, 2))
    for leader in lines(drawing, "leader"):
        assert all(distance(one, a, b) > 2.0 for one in middles for a, b in pairwise(leader.points))
    assert all(dist(one, other.centre) > 2.0 for one in middles for other in dots(drawing))


@pictures
def test_no_leader_runs_along_a_membrane(name):
    """Its white would wipe the line out. Lines run on behind a break, where they do not show."""
    drawing = drawing_of(MADE[name]())
    x0, _, x1, _ = bounds([point for one in areas(drawing) for point in one.outline])
    for leader in lines(drawing, "leader"):
        a, b = leader.points[:2]
        steps = [(a[0] + (b[0] - a[0]) * n / 400, a[1] + (b[1] - a[1]) * n / 400) for n in range(401)]
        steps = [one for one in steps if x0 < one[0] < x1]
        for heavy in [*lines(drawing, "membrane"), *lines(drawing, "metal")]:
            for c, d in pairwise(heavy.points):
                beside = [one for one in steps if beside_leg(one, c, d) and distance(one, c, d) < heavy.width / 2 + 0.475]
                assert len(beside) * dist(a, b) / 400 < 3.2, (leader.role, heavy.role)


def test_dashes_fill_a_leg_from_end_to_end():
    for line in lines(drawing_of(detail_pictures.sill()), "control"):
        if line.dash:
            on, off = line.dash
            count = (dist(*line.points) + off) / (on + off)
            assert abs(count - round(count)) < 1e-6


def test_an_interrupted_control_ends_in_two_strokes_at_each_end_of_its_gap():
    detail = detail_pictures.small()
    strokes = lines(drawing_of(detail), "interrupted")
    assert len(strokes) == 2 * len(detail.traces[0].gaps)
    assert all(abs(one.points[0][0] - one.points[1][0]) < 1e-6 for one in strokes)  # across a level line
    assert not lines(drawing_of(detail_pictures.sill()), "interrupted")


def test_a_control_line_moves_off_the_membrane_it_follows():
    foam = Detail("foam", "plan", (BLOCK,), traces=(Trace("W", (((-8.75, 0), (-8.75, 200)),)),))
    plain, beside = (
        drawing_of(replace(foam, sheets=sheets), scale=5)
        for sheets in ((), (detail_pictures.Sheet(((0, 0), (0, 200)), "membrane"),))
    )
    face = min(x for one in areas(plain) for x, _ in one.outline)
    assert face - lines(plain, "control W")[0].points[0][0] == pytest.approx(1.75)
    face = min(x for one in areas(beside) for x, _ in one.outline)
    assert face - lines(beside, "control W")[0].points[0][0] == pytest.approx(2.3)


def test_where_pieces_meet_one_line_is_drawn_at_the_stronger_weight():
    stud = Piece(rectangle(300, 50, 340, 150), "timber", "W1/stud", edge=0.5)
    air = Piece(rectangle(0, 200, 300, 240), "air", "W1/cavity")
    drawing = drawing_of(Detail("meet", "plan", (BLOCK, stud, air)), scale=5)
    found = [*lines(drawing, "outline"), *lines(drawing, "face")]
    x0, y0, _, _ = bounds([p for one in areas(drawing) for p in one.outline])
    assert width_at(found, (x0 + 60, y0 + 20)) == [0.5]  # stud against foam
    assert width_at(found, (x0 + 60, y0 + 4)) == [0.5]  # outer face
    assert width_at(found, (x0 + 30, y0 + 40)) == [0.35]  # face of the foam in the cavity
    assert width_at(found, (x0 + 30, y0 + 48)) == []  # air has no edge of its own
    assert width_at(found, (x0 + 60, y0 + 40.5)) == []


def test_pieces_and_lines_stop_at_the_zigzag_of_a_break():
    detail = Detail("broken", "plan", (BLOCK,), breaks=(Break((-20, 200), (320, 200)),))
    drawing = drawing_of(detail, scale=5)
    (line,) = lines(drawing, "break")
    section = next(one for one in drawing.marks if isinstance(one, Group) and one.name == "section")
    clip = section.marks[0]
    assert isinstance(clip, Clip)
    assert set(line.points[1:-1]) <= set(clip.outline)
    high = max(y for one in lines(drawing, "outline") for _, y in one.points)
    assert high > line.points[0][1] + 4  # faces run on behind the break, where the clip cuts them
    assert high < drawing.height + 10


def test_words_for_the_sides_stay_on_their_side():
    crowded = replace(
        detail_pictures.sill(), words=(Word("OUTSIDE", (-100, 300)), Word("INSIDE", (243, 300))),
    )  # fmt: skip
    for detail in (crowded, detail_pictures.sill()):
        drawing = drawing_of(detail)
        inner = next(one for one in areas(drawing) if one.layer == "W1/hemp")
        x0, _, x1, _ = bounds(inner.outline)
        sides = {one.text: middle(text_box(one))[0] for one in texts(drawing, "side")}
        assert sides["OUTSIDE"] < x0 and sides["INSIDE"] > x1


def test_tags_keep_off_the_ground():
    drawing = drawing_of(detail_pictures.sill())
    (ground,) = lines(drawing, "ground")
    (x0, y), (x1, _) = ground.points
    for text in texts(drawing, "note") + texts(drawing, "tag"):
        left, low, right, high = bounds(text_box(text))
        assert right < x0 or left > x1 or low > y or high < y - 8.6


def test_an_arrow_leaves_the_control_line_its_place_or_is_left_out():
    cavity = Piece(rectangle(0, 0, 38, 300), "air", "W1/cavity", 90.0)
    sides = (replace(BLOCK, outline=rectangle(-40, 0, 0, 300)), replace(BLOCK, outline=rectangle(38, 0, 80, 300)))
    detail = Detail(
        "cavity", "vertical", (*sides, cavity), arrows=(detail_pictures.Arrow((19, 150)),),
        traces=(Trace("W", (((26, 0), (26, 300)),)),),
    )  # fmt: skip
    drawing = drawing_of(detail, scale=5)
    (arrow,) = lines(drawing, "air")
    control = lines(drawing, "control W")[0].points[0][0]
    assert arrow.points[0][0] < control - 1.3
    assert not lines(drawing_of(detail, scale=20), "air")


def test_a_figure_between_its_ticks_or_beside_them():
    def of(long):
        detail = Detail("dim", "plan", (BLOCK,), measures=(Measure((0, 0), (long, 0), "x", -40, long / 1000),))
        drawing = drawing_of(detail, scale=5)
        (text,) = texts(drawing, "figure")
        ticks = [middle(one.points)[0] for one in lines(drawing, "tick")]
        return text.text, middle(text_box(text))[0], min(ticks), max(ticks)

    text, x, low, high = of(250)
    assert text == "250" and low < x < high
    text, x, low, high = of(30)
    assert text == "30" and x > high


def test_inches_come_first_in_customary_units():
    detail = Detail("dim", "plan", (BLOCK,), measures=(Measure((0, 0), (203.2, 0), "x", -40, 0.2032),))
    assert [one.text for one in texts(drawing_of(detail, units="customary"), "figure")] == ['8" (203)']
    assert [one.text for one in texts(drawing_of(detail), "figure")] == ["203"]


@pictures
def test_light_drawings_have_fewer_strokes_and_the_same_lines(name):
    full, light = drawing_of(MADE[name]()), drawing_of(MADE[name](), light=True)
    assert strokes(light) < 0.8 * strokes(full)
    for role in ("outline", "face", "control", "leader", "membrane"):
        assert lines(light, role) == lines(full, role)
    tiles = {one.tile for one in flat(light.marks) if isinstance(one, Stipple)}
    assert all(one.endswith("-light") for one in tiles)


def test_what_the_painter_changes_is_said():
    notes = drawing_of(detail_pictures.small(), scale=5).notes
    assert notes == ("W1/skim: thickness not to scale", "No hatch is known for 'quark': drawn as a plain outline")


def test_the_key_explains_the_letters_that_are_drawn():
    assert [one.text for one in texts(drawing_of(detail_pictures.small()), "key") if len(one.text) == 1] == ["A"]
    assert [one.text for one in texts(drawing_of(detail_pictures.sill()), "key") if len(one.text) == 1] == list("WAVT")
    assert not texts(drawing_of(Detail("block", "plan", (BLOCK,))), "key")


def test_a_bubble_points_at_its_place_and_names_its_sheet():
    drawing = drawing_of(detail_pictures.small())
    assert [one.text for one in texts(drawing, "bubble")] == ["3", "D3"]
    (leader,) = lines(drawing, "bubble leader")
    ring = next(one for one in flat(drawing.marks) if isinstance(one, Circle) and one.role == "bubble")
    assert dist(leader.points[1], ring.centre) == pytest.approx(ring.radius)


def test_same_detail_gives_the_same_drawing():
    assert all(drawing_of(make()) == drawing_of(make()) for make in MADE.values())


def beside_leg(point, a, b):
    """Whether a point lies beside a straight line and not beyond its ends."""
    along = [(p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1]) for p in (point, b)]
    return 0 < along[0] < along[1]


def middle(points):
    return sum(x for x, _ in points) / len(points), sum(y for _, y in points) / len(points)


def width_at(found: list[Line], point):
    """Widths of the lines through a point."""
    return [one.width for one in found if distance(point, *one.points) < 0.05]


def strokes(drawing) -> float:
    """Length of the hatching, mm; a tile counts by its area and how dense it is."""
    total = 0.0
    for mark in flat(drawing.marks):
        if isinstance(mark, Curve) and mark.role == ROLE:
            at = None
            for kind, *values in mark.commands:
                end = tuple(values[-2:]) if values else at
                total += hypot(end[0] - at[0], end[1] - at[1]) if kind != "M" and at and end else 0.0
                at = end
        elif isinstance(mark, Stipple):
            x0, y0, x1, y1 = bounds(mark.outline)
            total += (x1 - x0) * (y1 - y0) * (0.5 if mark.tile.endswith("-light") else 1.0)
    return total
