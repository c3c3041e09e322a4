"""Where the parts of a project meet: what is stated, what is derived and said to be, what cannot meet."""

import pytest
from joined import BARE, DOOR, EDGE, ROOF, SLAB, USUAL, WALL, WINDOW, link, met, one, part

from layerfolio.assembly.junctions import ORDER

JOINS = "joins:\n"


def joins(*lines):
    return JOINS + "".join(f"  - {{{line}}}\n" for line in lines)


def kinds(found):
    return [each.kind for each in found]


class TestDerived:
    def test_a_wall_a_slab_a_roof_and_a_window_from_the_ground_up(self, tmp_path):
        found = met(tmp_path, openings={"A1": WINDOW})
        assert kinds(found) == [
            "sill", "window sill", "window jamb", "window head", "penetration", "eave", "verge", "ridge", "outside corner",
        ]  # fmt: skip
        assert [each.number for each in found] == list(range(1, 10))
        assert not any(each.stated for each in found)
        assert all(each.choices for each in found)

    def test_each_says_that_it_is_derived_and_why(self, tmp_path):
        said = [each.choices[0] for each in met(tmp_path, openings={"A1": WINDOW})]
        assert all("derived" in choice.text and "lists no such join" in choice.because for choice in said)

    def test_a_wall_alone_has_its_corner_and_a_pipe(self, tmp_path):
        assert kinds(met(tmp_path, {"W1": USUAL["W1"]})) == ["penetration", "outside corner"]

    def test_a_roof_alone_has_its_ridge(self, tmp_path):
        assert kinds(met(tmp_path, {"R1": USUAL["R1"]})) == ["ridge"]

    @pytest.mark.parametrize(("slope", "has"), [(0, False), (4.9, False), (5, True), (60, True), (60.1, False), (75, False)])
    def test_verge_and_ridge_of_a_slope(self, tmp_path, slope, has):
        found = kinds(met(tmp_path, USUAL | {"R1": part("roof", ROOF, f"slope: {slope} deg")}))
        assert ("ridge" in found, "verge" in found) == (has, has)
        assert ("eave" in found) == (slope <= 60)

    def test_a_ceiling_has_an_eave_and_neither_verge_nor_ridge(self, tmp_path):
        parts = {"W1": USUAL["W1"], "CL1": part("ceiling", ROOF[3:], "faces: vented space")}
        found = met(tmp_path, parts)
        assert kinds(found) == ["penetration", "eave", "outside corner"]
        assert one(found, "eave").overhang is None
        assert any("over the plate" in choice.text for choice in one(found, "eave").choices)

    def test_the_wall_of_the_greatest_area_is_meant(self, tmp_path):
        parts = {"W1": part("wall", WALL, "area: 20 m2"), "W2": part("wall", WALL, "area: 80 m2"), "S1": USUAL["S1"]}
        assert one(met(tmp_path, parts), "sill").of == ("W2", "S1")

    def test_no_wall_stands_on_the_floor_of_a_basement(self, tmp_path):
        parts = {"W1": USUAL["W1"], "S1": part("slab", SLAB, "ground: {depth: 2 m}")}
        assert "sill" not in kinds(met(tmp_path, parts))

    @pytest.mark.parametrize("openings", [{"D1": DOOR}, {}, {"K1": WINDOW.replace("window", "hatch")}])
    def test_no_window_is_made_of_a_door(self, tmp_path, openings):
        assert not [each for each in met(tmp_path, openings=openings) if each.opening]


class TestStated:
    def test_wall_first_whatever_the_order(self, tmp_path):
        found = one(met(tmp_path, more=joins("at: sill, of: [S1, W1]")), "sill")
        assert (found.of, found.stated, found.title, found.path) == (("W1", "S1"), True, "Sill: wall W1 on slab S1", "joins[0]")

    @pytest.mark.parametrize(("at", "kind"), [
        ("sill", "sill"), ("foot", "sill"), ("Slab edge", "sill"), ("eaves", "eave"), ("gable", "verge"), ("verge", "verge"),
        ("ridge", "ridge"), ("corner", "outside corner"), ("external corner", "outside corner"),
        ("inside-corner", "inside corner"),
        ("re-entrant corner", "inside corner"), ("service_penetration", "penetration"), ("corners", "outside corner"),
    ])  # fmt: skip
    def test_words_for_a_place(self, tmp_path, at, kind):
        found = met(tmp_path, more=joins(f"at: {at}, of: [W1, S1, R1]" if kind != "ridge" else f"at: {at}, of: [R1]"))
        assert [each.kind for each in found if each.stated] == [kind]

    @pytest.mark.parametrize(("at", "edges"), [
        ("window", ["sill", "jamb", "head"]), ("window reveal", ["sill", "jamb", "head"]), ("reveal", ["sill", "jamb", "head"]),
        ("head", ["head"]), ("window sill", ["sill"]), ("sill", ["sill"]), ("jamb", ["jamb"]),
    ])  # fmt: skip
    def test_words_for_a_window(self, tmp_path, at, edges):
        found = met(tmp_path, openings={"A1": WINDOW}, more=joins(f"at: {at}, of: [W1, A1]"))
        assert [each.kind for each in found if each.stated] == [f"window {edge}" for edge in edges]
        assert {each.of for each in found if each.opening} == {("W1", "A1")}

    def test_nothing_is_drawn_for_other_words(self, tmp_path):
        assert not [each for each in met(tmp_path, more=joins("at: balcony, of: [W1, S1]")) if each.stated]

    def test_one_window_stands_for_all_and_says_so(self, tmp_path):
        held = {"D1": DOOR, "A1": WINDOW, "A2": WINDOW}
        found = one(met(tmp_path, openings=held, more=joins("at: window, of: [W1, D1, A1, A2]")), "window head")
        assert found.of == ("W1", "A1")
        assert found.choices[0].text == "A1 is drawn for D1 and A2 too"

    def test_a_door_alone_has_no_sill(self, tmp_path):
        found = met(tmp_path, openings={"D1": DOOR}, more=joins("at: window, of: [W1, D1]"))
        assert [each.kind for each in found if each.opening] == ["window jamb", "window head"]

    def test_one_of_a_kind_for_each_pair(self, tmp_path):
        parts = USUAL | {"W2": part("wall", BARE)}
        found = met(tmp_path, parts, more=joins("at: sill, of: [W1, W2, S1]", "at: foot, of: [S1, W1]"))
        assert [each.of for each in found if each.kind == "sill"] == [("W1", "S1"), ("W2", "S1")]

    def test_a_kind_that_is_stated_is_not_derived_again(self, tmp_path):
        parts = USUAL | {"W2": part("wall", BARE)}
        found = met(tmp_path, parts, more=joins("at: sill, of: [W2, S1]", "at: corner, of: [W1, W2]"))
        assert one(found, "sill").of == ("W2", "S1") and one(found, "outside corner").of == ("W1", "W2")

    def test_what_a_join_leaves_out_is_taken_and_said(self, tmp_path):
        found = one(met(tmp_path, more=joins("at: eave, of: [W1]")), "eave")
        assert found.of == ("W1", "R1")
        assert [(each.text, each.because) for each in found.choices][:1] == [
            ("Roof R1 is taken for the eave", "the join names none")
        ]

    def test_the_floor_between_storeys_is_not_guessed(self, tmp_path):
        parts = USUAL | {"F1": part("floor", BARE[3:4], "faces: unheated space")}
        assert "rim" not in kinds(met(tmp_path, parts, more=joins("at: rim, of: [W1]")))
        assert one(met(tmp_path, parts, more=joins("at: rim, of: [W1, F1]")), "rim").of == ("W1", "F1")


class TestCannot:
    @pytest.mark.parametrize(("join", "kind", "reason"), [
        ("at: eave, of: [W1, S1]", "eave", "slab S1 is no roof or ceiling: an eave needs one"),
        ("at: sill, of: [W1, R1]", "sill", "roof R1 is no slab or floor: a sill needs one"),
    ])  # fmt: skip
    def test_parts_of_another_kind(self, tmp_path, join, kind, reason):
        found = one(met(tmp_path, more=joins(join)), kind)
        assert found.cannot.startswith(reason) and found.links == ()

    @pytest.mark.parametrize(("slope", "reason"), [(1.9, "flat"), (2.0, ""), (60, ""), (61, "steeper than 60 degrees")])
    def test_a_ridge_needs_a_slope(self, tmp_path, slope, reason):
        parts = USUAL | {"R1": part("roof", ROOF, f"slope: {slope} deg")}
        found = one(met(tmp_path, parts, more=joins("at: ridge, of: [R1]")), "ridge")
        assert (reason in found.cannot) and bool(found.cannot) == bool(reason)

    @pytest.mark.parametrize("below", [True, False])
    def test_insulation_below_the_joists_does_not_reach_the_plate(self, tmp_path, below):
        joists = "{material: spruce, thickness: 140 mm, framing: {member: joist, material: spruce, width: 38 mm, spacing: 0.4 m}}"
        wool = "{material: mineral-wool-board, thickness: 80 mm, conductivity: 0.035 W/(m.K)}"
        parts = {"W1": USUAL["W1"], "CL1": part("ceiling", [joists, wool] if below else [wool, joists], "faces: vented space")}
        found = one(met(tmp_path, parts, more=joins("at: eave, of: [W1, CL1]")), "eave")
        assert ("lies below what carries it" in found.cannot) is below


    def test_a_pipe_through_a_roof_is_not_drawn_and_hides_none_through_the_wall(self, tmp_path):
        found = one(met(tmp_path, more=joins("at: pipe, of: [R1]")), "penetration")
        assert found.of == ("W1",) and not found.stated

    def test_what_is_not_drawn_takes_no_number_of_a_detail(self, tmp_path):
        found = met(tmp_path, more=joins("at: sill, of: [W1, R1]", "at: eave, of: [W1, R1]"))
        assert [bool(each.cannot) for each in found] == [False] * (len(found) - 1) + [True]
        assert found[-1].number == len(found)


class TestLengths:
    def test_an_overhang_is_stated_or_a_drafting_default(self, tmp_path):
        stated = one(met(tmp_path, more=joins("at: eave, of: [W1, R1], overhang: 650 mm")), "eave")
        assert stated.overhang == pytest.approx(0.65) and not stated.choices
        derived = one(met(tmp_path), "eave")
        assert derived.overhang == 0.4
        choice = derived.choices[1]
        assert choice.text == "Overhang 400 mm" and choice.because.startswith("drafting default")

    def test_the_default_is_round_in_the_units_that_come_first(self, tmp_path):
        found = one(met(tmp_path, units="customary"), "eave")
        assert found.overhang == pytest.approx(16 * 0.0254) and 'Overhang 16"' in [each.text for each in found.choices]

    def test_no_overhang_is_an_answer_too(self, tmp_path):
        assert one(met(tmp_path, more=joins("at: verge, of: [W1, R1], overhang: 0 mm")), "verge").overhang == 0.0

    @pytest.mark.parametrize(("clearance", "level", "choice"), [
        ("", "", "200 mm below the foot"), ("clearance_to_ground: 300 mm", "", "from the clearance"),
        ("", "foundation: {ground_level: -250 mm}\n", ""),
        ("clearance_to_ground: 300 mm", "foundation: {ground_level: -250 mm}\n", ""),
    ])  # fmt: skip
    def test_the_ground(self, tmp_path, clearance, level, choice):
        parts = USUAL | {"W1": part("wall", WALL, clearance)}
        found = one(met(tmp_path, parts, more=joins("at: sill, of: [W1, S1]") + level), "sill")
        assert found.clearance == (pytest.approx(0.3) if clearance else None)
        assert found.ground_level == (pytest.approx(-0.25) if level else None)
        grounds = [each.text for each in found.choices if "round" in each.text]
        assert len(grounds) == bool(choice) and all(choice in each for each in grounds)

    @pytest.mark.parametrize(("floor", "more", "kind"), [
        (USUAL["S1"], "", "slab edge"), (USUAL["S1"], "foundation: {kind: piers}\n", "piers"),
        (part("floor", SLAB[::2], "faces: outside air"), "", ""),
        (part("floor", SLAB[::2], "faces: vented space\nground: {underfloor: {height: 400 mm}}"), "", "wall"),
        (part("floor", SLAB[::2], "faces: outside air"), "foundation: {kind: none}\n", "none"),
    ])  # fmt: skip
    def test_the_foundation(self, tmp_path, floor, more, kind):
        found = one(met(tmp_path, {"W1": USUAL["W1"], "F1": floor}, more=more), "sill")
        assert found.foundation == kind
        assert any("Foundation" in each.text for each in found.choices) is (kind in ("slab edge", "wall"))

    @pytest.mark.parametrize(("edge", "found"), [
        (EDGE, (0.1, 0.47)), (EDGE.replace("vertical", "horizontal"), None), ("area: 40 m2", None),
    ])  # fmt: skip
    def test_edge_insulation_stands_upright(self, tmp_path, edge, found):
        made = one(met(tmp_path, USUAL | {"S1": part("slab", SLAB, edge)}), "sill").edge_insulation
        assert made == (found and pytest.approx(found))

    def test_a_window_takes_its_frame_from_the_opening(self, tmp_path):
        framed = WINDOW.replace("transmittance: 1.2 W/(m2.K), basis: rated", "frame: {width: 95 mm, depth: 82 mm}")
        found = one(met(tmp_path, openings={"A1": framed}), "window head")
        assert (found.frame_width, found.frame_depth) == (pytest.approx(0.095), pytest.approx(0.082))
        assert not any("Frame of" in each.text for each in found.choices)
        assert found.opening_size == (1.2, 1.4) and found.sill_height == 0.9

    def test_else_a_drafting_default_that_is_said(self, tmp_path):
        found = one(met(tmp_path, openings={"A1": WINDOW}), "window head")
        assert (found.frame_width, found.frame_depth) == (0.11, 0.07)
        assert "Frame of A1 drawn 110 mm wide and 70 mm deep" in [each.text for each in found.choices]

    @pytest.mark.parametrize("frame_set", ["in the insulation", "at the outside", "in the framing"])
    def test_where_the_frame_stands(self, tmp_path, frame_set):
        found = met(tmp_path, openings={"A1": WINDOW}, more=joins(f"at: window, of: [W1, A1], frame_set: {frame_set}"))
        assert {each.frame_set for each in found if each.opening} == {frame_set}
        assert not any("Frame set" in choice.text for each in found for choice in each.choices)


def test_every_kind_has_its_place_in_the_order():
    from layerfolio.drawing.detail.all import MAKERS

    assert sorted(ORDER) == sorted(MAKERS)


def test_the_same_file_gives_the_same_junctions(tmp_path):
    assert met(tmp_path, openings={"A1": WINDOW}) == met(tmp_path, openings={"A1": WINDOW})


def test_a_link_for_each_control_of_the_usual_house(tmp_path):
    for each in met(tmp_path, openings={"A1": WINDOW}):
        assert [link(each, letter) is not None for letter in "WAVT"] == [True] * 4, each.title
        assert not each.broken, (each.title, each.broken)


def test_the_words_of_the_defaults_are_their_lengths():
    from layerfolio.assembly.junction_facts import FRAME, OVERHANG
    from layerfolio.units.grammar import parse

    for by_units in (OVERHANG, *FRAME.values()):
        assert all(parse(words, "length").value == pytest.approx(value) for value, words in by_units.values())
