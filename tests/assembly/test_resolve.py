"""From names to figures: precedence, framing shares, films, cavities; each choice is said."""

import pytest

from layerfolio.assembly.resolve import heat_direction, resolve
from layerfolio.dossier import open_project
from layerfolio.studies.thermal import thermal_study

HEAD = """\
layerfolio: 1
project: {{title: Test}}
code: {{set: {code_set}, zone: "6", heat_recovery: true}}
materials: {materials}
assemblies:
  A1:
    kind: {kind}
    {more}
    layers:
"""


@pytest.fixture
def made(tmp_path):
    """made(layers..., code_set=..., kind=...) -> (assembly, cautions)."""

    def make(*layers, code_set="nbc-2020", kind="wall", more="title: Test", materials="{}"):
        text = HEAD.format(code_set=code_set, kind=kind, more=more, materials=materials)
        text += "".join(f"      - {{{layer}}}\n" for layer in layers)
        if code_set == "iso":
            text = text.replace(', zone: "6", heat_recovery: true', "")
        file = tmp_path / "project.yaml"
        file.write_text(text, encoding="utf-8")
        found, cautions = resolve(open_project(file).project)
        return found["A1"], cautions

    return make


STUDS = "material: mineral-wool-batt, thickness: 140 mm, framing: {member: stud, material: spruce, width: 38 mm, spacing: 600 mm"


class TestPrecedence:
    """The layer's own figure, then the project's materials, then the set's own table, then the catalogue."""

    board = "material: gypsum-board, thickness: 12.7 mm"
    own = "{gypsum-board: {conductivity: 0.20 W/(m.K), source: report G}}"

    def test_the_layer_first(self, made):
        one, _ = made(f"{self.board}, conductivity: 0.3 W/(m.K), source: stated", materials=self.own)
        assert one.layers[0].conductivity.value == 0.3
        assert one.layers[0].conductivity.origin.chosen_by == "layer"

    def test_then_the_projects_materials(self, made):
        one, _ = made(self.board, materials=self.own)
        assert one.layers[0].conductivity.value == 0.20
        assert one.layers[0].conductivity.origin.source == "report G"

    def test_then_the_table_of_the_set(self, made):
        """NBC 2020 note A-9.36.2.4.(1): gypsum board 12.7 mm counts 0.0775 m2.K/W."""
        one, _ = made(self.board)
        assert one.layers[0].resistance.value == 0.0775
        assert one.layers[0].resistance.origin.chosen_by == "code"

    def test_then_the_catalogue(self, made):
        one, _ = made(self.board, code_set="iso")
        assert one.layers[0].conductivity.origin.chosen_by == "catalogue"
        assert one.layers[0].conductivity.value == 0.25

    def test_a_figure_without_source_says_so(self, made):
        one, _ = made("name: unknown stuff, thickness: 20 mm, conductivity: 0.1 W/(m.K)")
        assert "no source stated" in one.layers[0].conductivity.origin.source

    def test_nothing_known_is_missing_not_guessed(self, made):
        one, _ = made("material: hemp-batt, thickness: 100 mm")
        assert thermal_study(one).missing == ("hemp-batt",)


class TestFramingShare:
    def test_stated_fraction_decides(self, made):
        one, _ = made(STUDS + ", fraction: 15 %}")
        assert one.layers[0].member.share.value == pytest.approx(0.15)
        assert not any("take" in c.text for c in one.choices)

    def test_else_the_sets_table_and_a_choice(self, made):
        """NBC 2020 Table A-9.36.2.4.(1)-A: wood-frame wall, studs at 610 (600) mm, 20 % framing."""
        one, _ = made(STUDS + "}")
        assert one.layers[0].member.share.value == pytest.approx(0.20)
        assert any("20 %" in c.text for c in one.choices)

    def test_else_width_over_spacing(self, made):
        one, _ = made(STUDS + "}", code_set="iso")
        assert one.layers[0].member.share.value == pytest.approx(38 / 600)

    def test_a_share_from_memory_is_marked(self, made):
        rafters = STUDS.replace("member: stud", "member: rafter") + "}"
        one, _ = made(rafters, kind="roof", more="slope: 30 deg")
        assert one.layers[0].member.share.value == pytest.approx(0.10)
        assert one.layers[0].member.share.origin.mark == "memory"
        assert any("not re-read" in c.because for c in one.choices)


CLADDING = "material: larch-board, thickness: 19 mm"
BATTS = "material: mineral-wool-batt, thickness: 140 mm"


class TestCavities:
    def test_a_ventilated_cavity_and_all_outside_it_count_for_nothing(self, made):
        one, _ = made(CLADDING, "cavity: ventilated, thickness: 38 mm", BATTS)
        assert [x.counts for x in one.layers] == [False, False, True]
        assert any("do not count" in c.text for c in one.choices)

    @pytest.mark.parametrize(("code_set", "outside"), [("iso", 0.13), ("nbc-2020", 0.03)])
    def test_outside_film_beside_it(self, made, code_set, outside):
        """ISO 6946:2017, 6.9.4: as inside. The NBC sets keep their own outside film; both are printed as a choice."""
        one, _ = made(CLADDING, "cavity: ventilated, thickness: 38 mm", BATTS, code_set=code_set)
        assert one.outside_film.value == outside
        assert any("film" in c.text for c in one.choices)

    def test_still_air_by_depth_and_direction(self, made):
        """ISO 6946:2017, Table 8: 25 mm horizontal 0.18, upward 0.16."""
        wall, _ = made("cavity: unventilated, thickness: 25 mm", BATTS, code_set="iso")
        roof, _ = made(
            "cavity: unventilated, thickness: 25 mm", BATTS, code_set="iso", kind="roof", more="slope: 0 deg"
        )
        assert wall.layers[0].resistance.value == pytest.approx(0.18)
        assert roof.layers[0].resistance.value == pytest.approx(0.16)
        assert wall.layers[0].vapour.dry.value == 0.01

    def test_between_two_rows_it_is_interpolated_and_said(self, made):
        """Between 15 mm (0.17) and 25 mm (0.18)."""
        one, _ = made("cavity: unventilated, thickness: 20 mm", BATTS, code_set="iso")
        assert one.layers[0].resistance.value == pytest.approx(0.175)
        assert any("15 mm" in c.because and "25 mm" in c.because for c in one.choices)

    @pytest.mark.parametrize(("openings", "counts"), [(400, True), (800, False), (1600, False)])
    def test_slightly_ventilated_by_its_openings(self, made, openings, counts):
        one, _ = made(
            f"cavity: slightly ventilated, thickness: 25 mm, openings: {openings} mm2/m", BATTS, code_set="iso"
        )
        assert one.layers[0].counts is counts
        assert any("slightly ventilated" in c.text for c in one.choices)

    def test_a_stated_resistance_stands(self, made):
        one, _ = made("cavity: unventilated, thickness: 25 mm, resistance: 0.5 m2.K/W, source: report", BATTS)
        assert one.layers[0].resistance.value == 0.5


class TestFilms:
    def test_surfaces_override(self, made):
        one, _ = made(BATTS, more="surfaces: {inside: 0.17 m2.K/W, outside: 0.08 m2.K/W}")
        assert (one.inside_film.value, one.outside_film.value) == (0.17, 0.08)

    def test_the_ground_has_no_film(self, made):
        one, _ = made("material: xps, thickness: 100 mm", kind="slab", more="faces: ground")
        assert one.outside_film.value == 0

    @pytest.mark.parametrize(("slope", "direction"), [(0, "up"), (59.9, "up"), (60, "horizontal"), (90, "horizontal")])
    def test_a_roof_of_sixty_degrees_is_a_wall(self, slope, direction):
        """NBC 2020, 9.36.2.1.(3): less than 60 degrees from horizontal is a roof."""
        assert heat_direction("roof", slope) == direction


class TestCautions:
    def test_cladding_inside(self, made):
        _, cautions = made(BATTS, "cavity: ventilated, thickness: 20 mm", "material: fibre-cement, thickness: 8 mm")
        assert sum("room side" in c.message for c in cautions) == 2

    def test_no_vapour_control(self, made):
        _, cautions = made(BATTS)
        assert any("vapour control" in c.message for c in cautions)
        _, cautions = made(BATTS, "material: osb, thickness: 15 mm, serves: [vapour control]")
        assert not cautions


def test_a_permeance_at_another_thickness_is_a_problem(tmp_path):
    from layerfolio.problems import ProblemsFound

    file = tmp_path / "project.yaml"
    text = HEAD.format(
        code_set="nbc-2020",
        kind="wall",
        more="title: T",
        materials="{p: {permeance: {dry: 48 ng/(Pa.s.m2), at_thickness: 15 mm}, conductivity: 0.13 W/(m.K), source: r}}",
    )
    file.write_text(text + "      - {material: p, thickness: 18 mm}\n", encoding="utf-8")
    with pytest.raises(ProblemsFound) as found:
        open_project(file)
    assert "15 mm" in str(found.value) and "18 mm" in str(found.value)


def test_a_material_without_its_thickness_is_a_problem_with_its_line(tmp_path):
    from layerfolio.problems import ProblemsFound

    file = tmp_path / "project.yaml"
    text = HEAD.format(code_set="nbc-2020", kind="wall", more="title: T", materials="{}")
    layers = "      - {material: spruce}\n      - {material: polyethylene-150}\n      - {material: osb, resistance: 0.1 m2.K/W}\n"
    file.write_text(text + layers, encoding="utf-8")
    with pytest.raises(ProblemsFound) as found:
        open_project(file)
    assert [(p.path, p.line) for p in found.value.problems] == [("assemblies.A1.layers[0]", 10)]


def test_a_slab_listed_from_the_room_out_is_a_caution(made):
    gravel, slab = "material: gravel, thickness: 200 mm", "material: concrete, thickness: 100 mm"
    _, cautions = made(slab, gravel, kind="slab", more="faces: ground")
    assert any("room side" in c.message for c in cautions)
    _, cautions = made(gravel, slab, kind="slab", more="faces: ground")
    assert not cautions


@pytest.mark.parametrize(
    ("code_set", "framing", "known"),
    [
        ("nbc-2020", "member: post, material: spruce, spacing: 920 mm", False),
        ("nbc-2020", "member: stud, material: spruce, spacing: 600 mm", True),
        ("iso", "member: stud, material: spruce, spacing: 600 mm", False),
        ("iso", "member: stud, material: spruce, fraction: 8 %", True),
        ("iso", "member: stud, material: spruce, width: 38 mm, spacing: 600 mm", True),
    ],
)
def test_framing_of_unknown_share_is_a_problem(made, code_set, framing, known):
    """Not counted as nothing: a frame without width and without a table row would raise the result."""
    from layerfolio.problems import ProblemsFound

    layer = f"material: mineral-wool-batt, thickness: 140 mm, framing: {{{framing}}}"
    if known:
        assert made(layer, code_set=code_set)[0].layers[0].member.share.value > 0
    else:
        with pytest.raises(ProblemsFound, match="width, or fraction"):
            made(layer, code_set=code_set)


PLATE = "material: mineral-wool-board, thickness: 100 mm"
OWN = "{mineral-wool-board: {conductivity: 0.036 W/(m.K), source: report M}}"
PINS = "fasteners: {kind: pins, material: steel, diameter: 4.8 mm, per_area: 5}"


class TestWhatIsStatedBesideTheLayers:
    """Fasteners, air voids, unheated spaces, slightly ventilated cavities: counted by iso, said and left out by the others."""

    def test_iso_counts_fasteners(self, made):
        one, cautions = made(f"{PLATE}, {PINS}, air_voids: 1", code_set="iso", materials=OWN)
        pins = one.layers[0].fasteners
        assert (pins.conductivity.value, pins.per_area, pins.lacking) == (50, 5, ())
        assert pins.diameter == pytest.approx(0.0048)
        assert one.layers[0].air_voids == 1 and one.completions is not None
        assert thermal_study(one).corrections.counted
        assert not any("fasteners" in c.message for c in cautions)

    @pytest.mark.parametrize("code_set", ["nbc-2020", "irc-2021"])
    def test_the_others_say_that_they_do_not(self, made, code_set):
        one, _ = made(f"{PLATE}, {PINS}, air_voids: 2", code_set=code_set, materials=OWN)
        assert one.completions is None and thermal_study(one).corrections is None
        assert any(c.text == "Fasteners and air voids add nothing to the transmittance" for c in one.choices)

    def test_what_fasteners_lack_is_a_caution(self, made):
        one, cautions = made(f"{PLATE}, fasteners: {{kind: pins, material: steel}}", code_set="iso", materials=OWN)
        assert one.layers[0].fasteners.lacking == ("root_diameter or diameter", "per_area, or spacing and rows_at")
        assert any("are not counted" in c.message for c in cautions)

    def test_the_root_of_the_thread_decides(self, made):
        pins = PINS.replace("diameter: 4.8 mm", "diameter: 8 mm, root_diameter: 5.5 mm")
        one, _ = made(f"{PLATE}, {pins}", code_set="iso", materials=OWN)
        assert one.layers[0].fasteners.diameter == pytest.approx(0.0055)

    def test_plastic_conducts_poorly(self, made):
        one, _ = made(f"{PLATE}, {PINS.replace('steel', 'plastic')}", code_set="iso", materials=OWN)
        assert one.layers[0].fasteners.conducts_poorly

    def test_a_roof_space_counts_in_iso_with_the_film_of_the_roof(self, made):
        more = "roof_space: tiles without underlay"
        one, _ = made(PLATE, code_set="iso", kind="ceiling", more=more, materials=OWN)
        assert (one.roof_space.value, one.roof_space.origin.mark, one.outside_film.value) == (0.06, "memory", 0.04)

    def test_a_roof_space_adds_nothing_in_nbc(self, made):
        one, _ = made(PLATE, kind="ceiling", more="roof_space: tiles without underlay", materials=OWN)
        assert one.roof_space is None
        assert any("unheated roof space adds no resistance" in c.text for c in one.choices)

    def test_an_unheated_space_wants_all_its_answers(self, made):
        stated = "faces: unheated space\n    unheated_space: {envelope: [{area: 20 m2, transmittance: 2 W/(m2.K)}], volume: 40 m3"
        whole, _ = made(PLATE, code_set="iso", more=f"area: 12 m2\n    {stated}, air_changes: 1}}", materials=OWN)
        assert whole.unheated_space.envelope == ((20.0, 2.0),)
        part, _ = made(PLATE, code_set="iso", more=f"{stated}}}", materials=OWN)
        assert part.unheated_space is None
        assert any("air changes, the area of the assembly" in c.because for c in part.choices)

    @pytest.mark.parametrize(
        ("openings", "counts"), [(500, "unventilated"), (501, None), (1499, None), (1500, "ventilated")]
    )
    def test_a_slightly_ventilated_cavity_in_iso(self, made, openings, counts):
        cavity = f"cavity: slightly ventilated, thickness: 40 mm, openings: {openings} mm2/m"
        one, _ = made("material: larch-board, thickness: 20 mm", cavity, PLATE, code_set="iso", materials=OWN)
        assert (one.still is not None) is (counts is None)
        assert one.openings == (openings if counts is None else None)
        assert one.layers[0].counts is (counts == "unventilated")
        if one.still:
            assert one.still.layers[0].counts and one.still.still is None

    def test_nbc_takes_it_as_ventilated(self, made):
        cavity = "cavity: slightly ventilated, thickness: 40 mm, openings: 800 mm2/m"
        one, _ = made("material: larch-board, thickness: 20 mm", cavity, PLATE, materials=OWN)
        assert one.still is None and not one.layers[0].counts

    def test_answers_about_the_ground_become_plain_values(self, made):
        more = (
            "ground: {conductivity: 2 W/(m.K), perimeter: 29 m, wall_thickness: 300 mm, insulated_from_edge: 1.2 m,\n"
            "      edge_insulation: {direction: vertical, width: 600 mm, thickness: 50 mm, resistance: 1.4 m2.K/W},\n"
            "      underfloor: {height: 400 mm, vents: 1500 mm2/m, shielding: average}}"
        )
        one, _ = made(PLATE, kind="slab", more=more, materials=OWN)
        assert one.ground == {
            "conductivity": 2.0, "perimeter": 29.0, "wall_thickness": 0.3, "insulated_from_edge": 1.2,
            "edge_insulation": {"direction": "vertical", "width": 0.6, "thickness": 0.05, "resistance": 1.4},
            "underfloor": {"height": 0.4, "vents": 1500.0, "shielding": "average"},
        }  # fmt: skip

    def test_flame_spread_of_the_layer_before_that_of_the_material(self, made):
        own = "{mineral-wool-board: {conductivity: 0.036 W/(m.K), flame_spread: 25, source: report M}}"
        one, _ = made(PLATE, f"{PLATE}, flame_spread: 50", materials=own)
        assert [x.flame_spread.value for x in one.layers] == [25, 50]
        assert one.layers[0].smoke_developed is None
