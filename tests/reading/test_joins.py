"""Joins and the foundation: their keys, what is wrong with them and where, what is drawn of no join."""

import pytest
from openings_workbench import WHOLE, spoilt
from workbench import problems, read, write

from layerfolio.reading.join_words import PLACES, WORDS, place_of_join

SILL, REVEAL = "at: sill, of: [W1, S1]", "at: reveal, of: [W1, A1, A2]"
FOUNDATION = "foundation: {kind: slab edge, ground_level: -200 mm}\n"


def cautions(tmp_path, text):
    """(path, message) of what the whole project does not say without the change."""
    before = {str(one) for one in read(write(tmp_path, WHOLE)).cautions}
    return [(one.path, one.message) for one in read(write(tmp_path, text)).cautions if str(one) not in before]


def with_foundation(keys):
    return WHOLE.replace("joins:\n", f"foundation: {{{keys}}}\njoins:\n", 1)


class TestKeys:
    def test_of_the_contract(self, tmp_path):
        text = WHOLE.replace(SILL, "at: eave, of: [W1, R1], overhang: 16 in")
        text = text.replace(REVEAL, f"{REVEAL}, frame_set: in the framing")
        eave, reveal = read(write(tmp_path, text)).project.joins
        assert eave.overhang.value == pytest.approx(0.4064) and eave.frame_set is None
        assert reveal.frame_set == "in the framing" and reveal.overhang is None

    @pytest.mark.parametrize("kind", ["slab edge", "wall", "piers", "piles", "none"])
    def test_of_a_foundation(self, tmp_path, kind):
        found = read(write(tmp_path, with_foundation(f"kind: {kind}, ground_level: -1 ft"))).project.foundation
        assert found.kind == kind and found.ground_level.value == pytest.approx(-0.3048)

    def test_without_one(self, tmp_path):
        assert read(write(tmp_path, WHOLE)).project.foundation is None

    def test_depth_of_a_frame(self, tmp_path):
        text = WHOLE.replace("frame: {width: 110 mm,", "frame: {width: 110 mm, depth: 82 mm,")
        assert read(write(tmp_path, text)).project.openings["A2"].frame.depth.value == pytest.approx(0.082)


WRONG = [
    (SILL, f"{SILL}, »overhang: 400 mm", "joins[0].overhang", "no meaning at a sill: it belongs to an eave", "{at: eave"),
    (REVEAL, f"{REVEAL}, »overhang: 0 mm", "joins[1].overhang", "no meaning at a window", "{at: eave"),
    (SILL, f"{SILL}, »frame_set: in the framing", "joins[0].frame_set", "at a sill: it belongs to a window", "{at: window"),
    (SILL, "at: eave, of: [W1, R1], »frame_set: in the framing", "joins[0].frame_set", "no meaning at an eave", "{at: window"),
    (SILL, "at: eave, of: [W1, R1], overhang: »-1 mm", "joins[0].overhang", "must not be below zero", "400 mm"),
    (SILL, "at: eave, of: [W1, R1], overhang: »5.1 m", "joins[0].overhang", "is over 5 m", "400 mm"),
    (SILL, "at: eave, of: [W1, R1], overhang: »400", "joins[0].overhang", "needs its unit", "400 mm"),
    (SILL, "at: eave, of: [W1, »R9], overhang: 400 mm", "joins[0].of[1]", 'no assembly or opening "R9"', "of: [W1, S1]"),
    (REVEAL, f"{REVEAL}, frame_set: »inside", "joins[1].frame_set", '"inside" is not known', "in the insulation"),
    ("joins:\n", "foundation: {kind: »raft}\njoins:\n", "foundation.kind", '"raft" is not known', "slab edge"),
    ("joins:\n", "foundation: {ground_level: »-21 m}\njoins:\n", "foundation.ground_level", "must not be below -20 m", "-200 mm"),
    ("joins:\n", "foundation: {»level: -1 m}\njoins:\n", "foundation.level", 'unknown key "level"', ""),
    ("width: 110 mm,", "width: 110 mm, depth: »0 mm,", "openings.A2.frame.depth", "must be above zero", "82 mm"),
    ("joins:\n", "storeys: [{height: »31 m}]\njoins:\n", "storeys[0].height", "is over 30 m", "2.7 m"),
    ("joins:\n", "»storeys: [{height: 2.7 m}, {height: 2.5 m}]\njoins:\n", "storeys", "says 1, this list holds 2", "as many"),
]  # fmt: skip


@pytest.mark.parametrize(("before", "after", "path", "message", "example"), WRONG)
def test_one_mistake_is_one_problem_at_its_place(tmp_path, before, after, path, message, example):
    text, places = spoilt(before, after)
    found = problems(write(tmp_path, text))
    assert [(one.path, (one.line, one.column)) for one in found] == [(path, places[0])]
    assert message in found[0].message and found[0].example.startswith(example)


@pytest.mark.parametrize(("before", "after"), [
    (SILL, "at: eave, of: [W1, R1], overhang: 0 mm"), (SILL, "at: gable, of: [W1, R1], overhang: 5 m"),
    (SILL, "at: corner, of: [W1]"), (SILL, "at: corner, of: W1"), (REVEAL, "at: window, of: [W1]"),
    (REVEAL, "at: sill, of: [W1, A1], frame_set: at the outside"), (SILL, "at: eave, of: [W1, S1]"),
    ("joins:\n", "foundation: {kind: slab edge, ground_level: -20 m}\njoins:\n"), ("joins:\n", "foundation: {}\njoins:\n"),
])  # fmt: skip
def test_what_is_right_is_quiet(tmp_path, before, after):
    assert not [each for each in cautions(tmp_path, WHOLE.replace(before, after, 1)) if "psi" not in each[1]]


LOOK_AGAIN = [
    (SILL, "at: slil, of: [W1, S1]", "joins[0].at", 'no detail is drawn for "slil": did you mean "sill"? drawn are sill, rim'),
    (SILL, "at: balcony, of: [W1, S1]", "joins[0].at", 'no detail is drawn for "balcony": drawn are sill, rim, eave, verge'),
    (SILL, "at: rim, of: [W1]", "joins[0].of", "no detail is drawn of this rim: name the floor too"),
    (SILL, "at: pipe, of: [R1]", "joins[0].of", "pipes are drawn through walls alone"),
    (REVEAL, "at: window, of: [S1]", "joins[1].of", "no detail is drawn of this window: name the opening too"),
    (REVEAL, "at: window, of: [R1, K1]", "joins[1].of", "openings are drawn in walls alone"),
    (REVEAL, "at: window, of: [R1, A1]", "joins[1].of", "A1 is in W1, which this join does not name"),
    ("joins:\n", "foundation: {ground_level: 100 mm}\njoins:\n", "foundation.ground_level", "puts the ground over the finished"),
    ("joins:\n", "foundation: {kind: piles}\njoins:\n", "foundation.kind", "the only floor is a slab"),
    ("faces: outside air", "faces: outside air\n    clearance_to_ground: 300 mm", "", ""),
]  # fmt: skip


@pytest.mark.parametrize(("before", "after", "path", "message"), LOOK_AGAIN)
def test_what_is_to_be_looked_at_again(tmp_path, before, after, path, message):
    found = [one for one in cautions(tmp_path, WHOLE.replace(before, after, 1)) if "psi" not in one[1]]
    assert [one[0] for one in found] == ([path] if path else [])
    assert all(message in one[1] for one in found)


@pytest.mark.parametrize(("level", "said"), [("-299 mm", True), ("-300 mm", False), ("-450 mm", False)])
def test_cladding_that_ends_over_the_finished_floor(tmp_path, level, said):
    faces = "faces: outside air"
    text = with_foundation(f"ground_level: {level}").replace(faces, f"{faces}\n    clearance_to_ground: 300 mm", 1)
    found = [one for one in cautions(tmp_path, text) if "foundation" in one[0]]
    assert bool(found) is said and all("cladding of W1" in one[1] for one in found)


def test_a_slab_edge_without_a_slab(tmp_path):
    text = with_foundation("kind: slab edge").replace("kind: slab\n", "kind: floor\n    faces: outside air\n")
    assert any(one[0] == "foundation.kind" and "no assembly is a slab" in one[1] for one in cautions(tmp_path, text))


class TestWords:
    def test_each_word_means_one_place(self):
        assert len(PLACES) == sum(len(words) for words in WORDS.values())
        assert all(place_of_join(place) == place for place in WORDS)

    @pytest.mark.parametrize(("at", "place"), [
        ("Sill", "sill"), ("wall-to-slab", "sill"), ("window_reveal", "window"), ("  eaves ", "eave"),
        ("Corners", "outside corner"),
        ("balcony", ""), ("", ""), ("sills of things", ""),
    ])  # fmt: skip
    def test_however_it_is_written(self, at, place):
        assert place_of_join(at) == place

    @pytest.mark.parametrize(("has_opening", "place"), [(True, "window sill"), (False, "sill")])
    def test_a_sill_with_an_opening_is_its_sill(self, has_opening, place):
        assert place_of_join("sill", has_opening) == place
