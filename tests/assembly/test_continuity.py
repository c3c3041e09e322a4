"""Whether a control passes a junction, by which layers and joined by what; laws over random assemblies."""

from types import SimpleNamespace as N

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from joined import BARE, EDGE, ROOF, SLAB, USUAL, WALL, WINDOW, link, met, one, part

import builders
from layerfolio.assembly.courses import courses
from layerfolio.assembly.joining import WAYS, at_frame, joined_by, said, short, way
from layerfolio.assembly.junctions import ORDER, junctions

PLASTER = "{material: clay-plaster, thickness: 30 mm, conductivity: 0.8 W/(m.K), density: 1700 kg/m3, serves: [air control]}"
KINDS = ("wall", "roof", "ceiling", "floor", "slab", "foundation-wall")
SERVES = ("water control", "air control", "vapour control", "structure", "lining")
FAMILIES = ("timber-board", "plywood", "batt", "foam", "concrete", "plaster", "gypsum", "straw", "metal", "masonry", "plain")


def layer(family="plywood", kind="solid", title="Panel, of wood"):
    return N(family=family, kind=kind, title=title, name="panel")


class TestJoining:
    @pytest.mark.parametrize(("first", "second", "by"), [
        (layer(), layer("strand-board"), "tape"), (layer(), layer("membrane", "membrane"), "tape"),
        (layer("membrane", "membrane"), layer("membrane", "membrane"), "lap and tape"),
        (layer("plaster"), layer("membrane", "membrane"), "mesh and tape"),
        (layer("plaster"), layer("timber"), "mesh and gasket"),
        (layer("concrete"), layer("membrane", "membrane"), "turned up"), (layer("concrete"), layer(), "gasket"),
        (layer("plaster"), layer("concrete"), "mesh and sealant"), (layer("straw"), layer("plaster"), "sealant"),
    ])  # fmt: skip
    def test_by_family_in_either_order(self, first, second, by):
        assert joined_by(first, second) == joined_by(second, first) == by

    @pytest.mark.parametrize(("family", "by"), [("plywood", "tape"), ("plaster", "mesh and sealant"), ("concrete", "sealant")])
    def test_at_the_frame_of_a_window(self, family, by):
        assert at_frame(layer(family)) == by

    def test_a_membrane_is_one_whatever_it_is_hatched_as(self):
        assert way(layer("foam", "membrane")) == "membrane" and way(layer("batt")) == "soft"

    def test_every_family_of_a_way_is_a_hatch(self):
        from layerfolio.catalogue.hatches import families

        assert {family for listed in WAYS.values() for family in listed} <= set(families())

    @pytest.mark.parametrize(("title", "words"), [
        ("Panel-15, strand board", "panel-15"), ("OSB, 15 mm", "OSB"), ("Roof underlay (open)", "roof underlay"), ("XPS", "XPS"),
    ])  # fmt: skip
    def test_a_layer_inside_a_sentence(self, title, words):
        assert short(layer(title=title)) == words

    def test_words(self):
        assert said("tape", "panel", "slab membrane") == "panel taped to slab membrane"
        assert said("tape", "panel", "panel") == "panel of both sides, taped"


class TestUsual:
    def test_slab_membrane_comes_up_round_the_edge(self, tmp_path):
        found = link(one(met(tmp_path), "sill"), "A")
        assert (found.start, found.end, found.by) == (("W1", "osb"), ("S1", "slab membrane"), "tape")
        assert found.words == "slab membrane turned up, taped to inner panel"

    def test_water_ends_over_the_flashing_at_the_foot(self, tmp_path):
        found = link(one(met(tmp_path), "sill"), "W")
        assert (found.start, found.end, found.broken) == (("W1", "wall membrane"), None, "")
        assert "flashing" in found.words and found.by == "lap"

    def test_water_of_a_wall_under_a_ceiling_goes_up_to_the_roof(self, tmp_path):
        parts = {"W1": USUAL["W1"], "CL1": part("ceiling", ROOF[3:], "faces: vented space")}
        found = link(one(met(tmp_path, parts), "eave"), "W")
        assert found.end is None and not found.broken

    def test_at_a_window_each_layer_meets_the_frame(self, tmp_path):
        for edge in ("sill", "jamb", "head"):
            found = one(met(tmp_path, openings={"A1": WINDOW}), f"window {edge}")
            assert {each.end for each in found.links} == {("A1", "frame")}
            assert link(found, "A").words == "inner panel taped to frame of A1"

    def test_a_pipe_gets_a_collar(self, tmp_path):
        found = one(met(tmp_path), "penetration")
        assert link(found, "A").words == "collar taped to inner panel and pipe" and link(found, "A").end == ("pipe", "pipe")

    def test_round_a_corner_a_layer_meets_itself(self, tmp_path):
        found = link(one(met(tmp_path), "outside corner"), "W")
        assert found.start == found.end == ("W1", "wall membrane") and found.by == "lap"

    def test_plaster_to_boards(self, tmp_path):
        boards = "{material: softwood-boarding, title: Floor boards, thickness: 28 mm, serves: [air control], seams: sealed}"
        parts = {"W1": part("wall", [*WALL[:5], PLASTER]), "F1": part("floor", [BARE[3], boards], "faces: outside air")}
        found = link(one(met(tmp_path, parts), "sill"), "A")
        assert (found.by, found.words) == ("mesh and gasket", "clay plaster on mesh, gasket at floor boards")


class TestBroken:
    @pytest.mark.parametrize(("letter", "serves", "reason"), [
        ("A", "serves: [vapour control]", "no layer of slab S1 serves air control"),
        ("V", "serves: [air control]", "no layer of slab S1 serves vapour control"),
    ])  # fmt: skip
    def test_a_side_without_a_layer(self, tmp_path, letter, serves, reason):
        slab = [one_layer.replace("serves: [vapour control, air control]", serves) for one_layer in SLAB]
        found = one(met(tmp_path, USUAL | {"S1": part("slab", slab, EDGE)}), "sill")
        assert [(each.letter, each.broken) for each in found.broken] == [(letter, reason)]

    def test_no_break_where_neither_side_needs_it(self, tmp_path):
        wall, slab, roof = (
            [each.replace("vapour control, ", "") for each in layers] for layers in (WALL, SLAB, ROOF)
        )  # fmt: skip
        parts = {"W1": part("wall", wall), "S1": part("slab", slab, EDGE), "R1": part("roof", roof, "slope: 30 deg")}
        found = met(tmp_path, parts, openings={"A1": WINDOW})
        assert len(found) == 9 and not any(link(each, "V") or each.broken for each in found)

    def test_water_that_the_wall_does_not_name(self, tmp_path):
        wall = [each for each in WALL if "wall membrane" not in each]
        found = met(tmp_path, USUAL | {"W1": part("wall", wall)})
        assert [each.kind for each in found if any(x.letter == "W" for x in each.broken)] == ["eave", "verge"]
        assert link(one(found, "outside corner"), "W") is None

    def test_a_side_without_insulation(self, tmp_path):
        parts = USUAL | {"S1": part("slab", SLAB[1:])}
        assert link(one(met(tmp_path, parts), "sill"), "T").broken == "slab S1 has no insulation"


class TestZones:
    """What carries, where the project file does not say so."""

    def zones(self, *layers):
        made = [builders.layer(n, family=family, d=d, serves=serves) for n, (family, d, serves) in enumerate(layers, 1)]
        return [each.zone for each in courses(builders.assembly(made))]

    def test_concrete_before_thicker_insulation(self):
        assert self.zones(("foam", 0.2, ()), ("concrete", 0.1, ()), ("tile", 0.01, ())) == ["outer", "frame", "inner"]

    def test_a_thin_screed_does_not_carry(self):
        assert self.zones(("foam", 0.2, ()), ("concrete", 0.05, ())) == ["frame", "inner"]

    def test_what_is_said_to_carry_stands_before_both(self):
        assert self.zones(("straw", 0.4, ("structure",)), ("earth", 0.1, ())) == ["frame", "inner"]


class TestHeat:
    """Where the insulations touch, and the gap where they do not; both sides of each limit."""

    def gap(self, tmp_path, parts, kind, **more):
        return link(one(met(tmp_path, parts, **more), kind), "T").broken

    @pytest.mark.parametrize(("edge", "broken"), [
        (EDGE, ""), (EDGE.replace("470 mm", "120 mm"), ""), (EDGE.replace("470 mm", "70 mm"), "50 mm of bare edge"),
        (EDGE.replace("vertical", "horizontal"), "120 mm of reinforced concrete"), ("", "120 mm of reinforced concrete"),
    ])  # fmt: skip
    def test_the_edge_of_a_slab(self, tmp_path, edge, broken):
        found = self.gap(tmp_path, USUAL | {"S1": part("slab", SLAB, edge)}, "sill")
        assert found.startswith(broken) and bool(found) == bool(broken)

    def test_insulation_on_the_slab_lies_beside_the_wall(self, tmp_path):
        assert not self.gap(tmp_path, USUAL | {"S1": part("slab", [*SLAB[1:], SLAB[0]])}, "sill")

    @pytest.mark.parametrize(("wall", "broken"), [(WALL, ""), (BARE, "120 mm of reinforced concrete between the insulations")])
    def test_a_slab_over_a_space_is_covered_by_outer_insulation_alone(self, tmp_path, wall, broken):
        parts = {"W1": part("wall", wall), "F1": part("floor", [SLAB[0], SLAB[2]], "faces: outside air")}
        assert self.gap(tmp_path, parts, "sill") == broken

    def test_joists_with_a_deck_are_timber_and_no_gap(self, tmp_path):
        floor = [WALL[4].replace("stud", "joist"), "{material: plywood, thickness: 18 mm}"]
        assert not self.gap(tmp_path, {"W1": part("wall", BARE), "F1": part("floor", floor, "faces: outside air")}, "sill")

    @pytest.mark.parametrize(("wall", "broken"), [(WALL, ""), (BARE, "200 mm of rafter space between the insulations")])
    def test_insulation_over_rafters(self, tmp_path, wall, broken):
        over = [
            "{material: mineral-wool-board, thickness: 160 mm, conductivity: 0.035 W/(m.K)}",
            "{material: spruce, thickness: 200 mm, framing: {member: rafter, material: spruce, width: 60 mm, spacing: 800 mm}}",
        ]
        parts = {"W1": part("wall", wall), "R1": part("roof", over, "slope: 30 deg")}
        assert self.gap(tmp_path, parts, "eave") == broken

    def test_walls_of_one_kind_meet_and_outer_meets_inner_across_the_frame(self, tmp_path):
        joins = "joins: [{at: corner, of: [W1, W2]}]\n"
        frame = "{material: spruce, thickness: 200 mm, framing: {member: stud, material: spruce, width: 38 mm, spacing: 600 mm}}"
        wool = "{material: mineral-wool-board, thickness: 100 mm, conductivity: 0.035 W/(m.K)}"
        parts = {"W1": part("wall", [wool, frame]), "W2": part("wall", [frame, wool])}
        assert self.gap(tmp_path, parts, "outside corner", more=joins) == "200 mm of frame between the insulations"
        assert not self.gap(tmp_path, parts | {"W2": part("wall", [wool, frame])}, "outside corner", more=joins)

    @pytest.mark.parametrize(("wall", "broken"), [(WALL, False), (BARE, True)])
    def test_the_rim_of_a_floor_is_covered_by_outer_insulation(self, tmp_path, wall, broken):
        joists = "{material: spruce, thickness: 235 mm, framing: {member: joist, material: spruce, width: 38 mm, spacing: 0.4 m}}"
        parts = {"W1": part("wall", wall), "F1": part("floor", [joists], "faces: unheated space")}
        found = self.gap(tmp_path, parts, "rim", more="joins: [{at: rim, of: [W1, F1]}]\n")
        assert bool(found) is broken and (not broken or found.startswith("235 mm of floor"))

    @pytest.mark.parametrize(("frame_set", "broken"), [("in the framing", False), ("at the outside", True)])
    def test_a_window_off_its_insulation(self, tmp_path, frame_set, broken):
        wall = [WALL[5], "{material: spruce, thickness: 100 mm}", WALL[4]]
        joins = f"joins: [{{at: window, of: [W1, A1], frame_set: {frame_set}}}]\n"
        found = self.gap(tmp_path, {"W1": part("wall", wall)}, "window head", openings={"A1": WINDOW}, more=joins)
        assert bool(found) is broken


@st.composite
def projects(draw):
    """Random assemblies and joins of them, whatever they are."""
    made = {}
    for number in range(draw(st.integers(1, 4))):
        kind = draw(st.sampled_from(KINDS))
        layers = [draw(random_layers(n + 1)) for n in range(draw(st.integers(1, 6)))]
        slope = draw(st.sampled_from((0.0, 3.0, 30.0, 75.0))) if kind == "roof" else 90.0 if "wall" in kind else 0.0
        faces = draw(st.sampled_from(("outside air", "vented space", "ground")))
        made[f"P{number}"] = builders.assembly(layers, name=f"P{number}", kind=kind, slope=slope, faces=faces)
    names = [*made, "A1"]
    joins = [
        N(at=draw(st.sampled_from(("sill", "rim", "eave", "verge", "ridge", "corner", "inside corner", "window", "pipe", "?"))),
          of=tuple(draw(st.lists(st.sampled_from(names), min_size=1, max_size=3))), overhang=None, frame_set=None)
        for _ in range(draw(st.integers(0, 3)))
    ]  # fmt: skip
    size = N(value=1.2)
    hole = N(kind="window", in_="P0", width=size, height=size, sill_height=None, frame=None)
    given_ = {name: N(clearance_to_ground=None) for name in made}
    return N(joins=joins, openings={"A1": hole}, assemblies=given_, foundation=None, project=N(units="metric")), made


@st.composite
def random_layers(draw, number):
    serves = tuple(draw(st.lists(st.sampled_from(SERVES), max_size=2, unique=True)))
    kind = draw(st.sampled_from(("solid", "solid", "membrane", "cavity")))
    if kind == "membrane":
        return builders.layer(number, kind=kind, family="membrane", serves=serves)
    deep = draw(st.sampled_from((0.001, 0.012, 0.1, 0.4)))
    if kind == "cavity":
        cavity = draw(st.sampled_from(("ventilated", "unventilated")))
        return builders.layer(number, kind=kind, family="air", d=deep, cavity=cavity)
    frame = draw(st.one_of(st.none(), st.just(builders.member(0.1, lam=0.13))))
    family, warm = draw(st.sampled_from(FAMILIES)), draw(st.booleans())
    return builders.layer(number, family=family, d=deep, serves=serves, insulating=warm, frame=frame)


@settings(max_examples=150, deadline=None)
@given(projects())
def test_whatever_meets_is_said_once_and_in_order(drawn):
    project, made = drawn
    found = junctions(project, made)
    assert [each.number for each in found] == list(range(1, len(found) + 1))
    order = [(bool(each.cannot), ORDER.index(each.kind)) for each in found]
    assert order == sorted(order)
    assert len({(each.kind, each.of) for each in found}) == len(found)
    assert found == junctions(project, made)
    for each in found:
        assert all(name in made or name == each.opening for name in each.of)
        assert each.stated is bool(each.path) and (each.stated or each.choices)
        letters = [one_link.letter for one_link in each.links]
        assert letters == [letter for letter in "WAVT" if letter in letters]
        for one_link in each.links:
            assert bool(one_link.broken) != bool(one_link.by and one_link.words)
            assert one_link.start or one_link.end
            for end in filter(None, (one_link.start, one_link.end)):
                assert end in (("pipe", "pipe"), ("A1", "frame")) or made[end[0]].layer(end[1])
