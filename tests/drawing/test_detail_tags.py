"""Heights in a column of tags, words in lines, hatches in their light print."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from layerfolio.drawing.detail.column_heights import Slot, heights
from layerfolio.drawing.detail.model import Note
from layerfolio.drawing.detail.note_rows import NARROW, WIDE, in_lines, room_for, rows_of
from layerfolio.drawing.geometry import rectangle
from layerfolio.drawing.hatches import FAMILIES, hatch
from layerfolio.drawing.hatches.light import WHOLE, lightened
from layerfolio.drawing.lettering import wide
from layerfolio.drawing.marks import Clip, Curve

slots = st.lists(st.tuples(st.floats(0, 100), st.floats(6, 14)), min_size=1, max_size=12)


@given(slots)
def test_tags_keep_their_order_and_stand_apart(drawn):
    ordered = [Slot(at, size) for at, size in sorted(drawn, reverse=True)]
    found = heights(ordered, -500, 600)
    for (a, one), (b, other) in pairwise(zip(found, ordered, strict=True)):
        assert a - b >= (one.size + other.size) / 2 - 1e-6


@given(slots)
def test_tags_stay_between_the_limits_where_they_fit(drawn):
    ordered = [Slot(at, size) for at, size in sorted(drawn, reverse=True)]
    tall = sum(one.size for one in ordered)
    low, high = 50 - tall / 2 - 1, 50 + tall / 2 + 1
    found = heights(ordered, low, high)
    assert found[0] + ordered[0].size / 2 <= high + 1e-6
    assert found[-1] - ordered[-1].size / 2 >= low - 1e-6


def test_tags_with_room_stand_where_they_point_and_what_is_fixed_stays():
    assert heights([Slot(80, 10), Slot(40, 10)], 0, 100) == [80, 40]
    found = heights([Slot(52, 10), Slot(50, 10, True), Slot(49, 10)], 0, 100)
    assert found[1] == pytest.approx(50, abs=0.01)
    assert found[0] >= found[1] + 10 - 1e-6 and found[2] <= found[1] - 10 + 1e-6


def test_figures_keep_to_their_word_and_lines_are_alike():
    assert rows_of(Note("gypsum board 12.7", ((0, 0),), "left"), 25.0) == ("gypsum", "board\u00a012.7")
    assert rows_of(Note("plate", ((0, 0),), "left"), 25.0) == ("plate",)
    assert in_lines("panel taped to the membrane", 2) == ("panel taped to", "the membrane")


@given(st.lists(st.text("abcdefgh ", min_size=1, max_size=40), min_size=1, max_size=5), st.sampled_from((2, 3)))
def test_notes_are_never_wider_than_their_column(texts, lines):
    notes = [Note(" ".join(one.split()) or "x", ((0, 0),), "left") for one in texts]
    room = room_for(notes, lines)
    assert NARROW <= room <= WIDE
    for note in notes:
        assert all(wide(row) <= room + 0.02 for row in rows_of(note, room))
        assert 1 <= len(rows_of(note, room)) <= 3


def strokes(marks):
    return sum(
        strokes(one.marks) if isinstance(one, Clip) else sum(command[0] == "M" for command in one.commands)
        if isinstance(one, Curve) else 1
        for one in marks
    )  # fmt: skip


@pytest.mark.parametrize("family", [one for one in FAMILIES if one not in ("air", "plain")])
def test_a_light_hatch_has_about_half_the_strokes(family):
    marks = hatch(family, rectangle(0, 0, 24, 8), seed="light")
    light = lightened(marks, family)
    if family in WHOLE:
        assert light == marks
    else:
        assert 0.4 * strokes(marks) <= strokes(light) <= 0.65 * strokes(marks) + 1
