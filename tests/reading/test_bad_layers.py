"""Layers and parts that do not fit together."""

import pytest
from workbench import problems, spoilt, write

BOARD = "{material: larch-board, thickness: 19 mm}"
CAVITY = "{cavity: ventilated, thickness: 38 mm, battens: {material: spruce, width: 64 mm, spacing: 600 mm}}"
PANEL = "{material: panel-15, thickness: 15 mm, serves: [bracing, vapour control, air control], seams: taped}"
FRAMING = "{member: stud, material: spruce, width: 38 mm, spacing: 600 mm, fraction: 20 %}"

CASES = [
    (BOARD, "{material: larch-board, »cavity: ventilated, thickness: 19 mm}", "layers[0].cavity", "not both"),
    (BOARD, "»{thickness: 19 mm}", "layers[0]", "what the layer is made of is missing"),
    (BOARD, "»{name: cladding, thickness: 19 mm}", "layers[0]", "needs its own figures"),
    (BOARD, "»{name: cladding, conductivity: 0.1 W/(m.K)}", "layers[0].thickness", "thickness is missing"),
    (BOARD, "»{}", "layers[0]", "what the layer is made of is missing"),
    (BOARD, "»larch-board", "layers[0]", "keys with values are expected here"),
    (
        BOARD,
        "{material: larch-board, thickness: 19 mm, »battens: {material: spruce, spacing: 400 mm}}",
        "layers[0].battens",
        "write framing",
    ),
    (
        BOARD,
        "{material: larch-board, thickness: 19 mm, permeance: 1 perm, »equivalent_air_layer: 1 m}",
        "layers[0].equivalent_air_layer",
        "stands already under permeance",
    ),
    (
        BOARD,
        "{material: larch-board, thickness: 19 mm, permeance: »{value: 1 perm, at_thickness: 20 mm}}",
        "layers[0].permeance",
        "the figure is for 20 mm, the layer is 19 mm thick",
    ),
    (
        BOARD,
        "{material: larch-board, thickness: 19 mm, evidence: {file: »../../secret.pdf}}",
        "layers[0].evidence.file",
        "leaves the project's folder",
    ),
    (
        BOARD,
        "{material: larch-board, thickness: 19 mm, evidence: [{file: »/etc/passwd}]}",
        "layers[0].evidence[0].file",
        "leaves the project's folder",
    ),
    (CAVITY, "»{cavity: ventilated}", "layers[1].thickness", "thickness is missing"),
    (
        CAVITY,
        "»{cavity: slightly ventilated, thickness: 38 mm}",
        "layers[1].openings",
        "needs the area of its openings",
    ),
    (CAVITY, "{cavity: ventilated, thickness: 38 mm, »openings: 800 mm2/m}", "layers[1].openings", "have no meaning"),
    (
        CAVITY,
        "{cavity: slightly ventilated, thickness: 38 mm, openings: »800 mm}",
        "layers[1].openings",
        "not a unit of",
    ),
    (
        CAVITY,
        "{cavity: ventilated, thickness: 38 mm, »framing: {material: spruce, spacing: 400 mm}}",
        "layers[1].framing",
        "write battens",
    ),
    (
        CAVITY,
        "{cavity: ventilated, thickness: 38 mm, »conductivity: 0.1 W/(m.K)}",
        "layers[1].conductivity",
        "write resistance",
    ),
    (
        CAVITY,
        "{cavity: ventilated, thickness: 38 mm, »battens: {material: spruce, width: 38 mm}}",
        "layers[1].battens",
        "how much of the area it takes is missing",
    ),
    (
        f"framing: {FRAMING}",
        "»framing: {member: stud, fraction: 20 %}",
        "layers[4].framing",
        "the material of the members is missing",
    ),
    (
        PANEL,
        "{material: panel-15, thickness: »18 mm}",
        "layers[5].thickness",
        'the permeance of "panel-15" is for 15 mm, this layer is 18 mm thick',
    ),
]


@pytest.mark.parametrize(("before", "after", "path", "message"), CASES)
def test_a_layer_that_does_not_fit(tmp_path, before, after, path, message):
    text, places = spoilt(before, after)
    (found,) = problems(write(tmp_path, text))
    assert found.path == f"assemblies.W1.{path}"
    assert [(found.line, found.column)] == places
    assert message in found.message


def test_a_figure_of_the_layer_itself_replaces_the_rated_one(tmp_path):
    text, _ = spoilt(PANEL, "{material: panel-15, thickness: 18 mm, permeance: 40 ng/(Pa.s.m2)}")
    assert problems(write(tmp_path, text)) == ()


def test_a_rated_figure_without_a_thickness_cannot_be_used_on_a_layer_that_has_one(tmp_path):
    text, _ = spoilt(", at_thickness: 15 mm}", "}")
    (found,) = problems(write(tmp_path, text))
    assert found.path == "assemblies.W1.layers[5].thickness" and "states no at_thickness" in found.message


@pytest.mark.parametrize("layers", ["layers: []", "layers: ~", "layers: {}", "layers: none"])
def test_no_layers(tmp_path, layers):
    before = spoilt("layerfolio", "layerfolio")[0]
    text = before[: before.index("    layers:\n")] + f"    {layers}\n"
    (found,) = problems(write(tmp_path, text))
    assert found.path == "assemblies.W1.layers" and found.line in (49, 57)


@pytest.mark.parametrize(
    "assemblies", ["assemblies: {}", "assemblies: ~", "", "assemblies: [W1]", "assemblies: {W1: ~}"]
)
def test_no_assemblies(tmp_path, assemblies):
    before = spoilt("layerfolio", "layerfolio")[0]
    text = before[: before.index("assemblies:\n")] + f"{assemblies}\n"
    found = problems(write(tmp_path, text))
    assert found[0].path == "assemblies" and len(found) == 1 + ("W1: ~" in assemblies)


def test_two_layers_cannot_state_one_name(tmp_path):
    text, places = spoilt(
        "12.7 mm}", "12.7 mm, name: lining}\n      - {material: gypsum-board, thickness: 12.7 mm, name: »lining}"
    )
    (found,) = problems(write(tmp_path, text))
    assert found.path == "assemblies.W1.layers[8].name" and [(found.line, found.column)] == places
    assert 'two layers are called "lining" (the first is layer 8)' in found.message


def test_fixed_cups_name_layers(tmp_path):
    text, places = spoilt("moisture: {method: monthly}", "vapour_values: {»hemp-bat: dry}")
    (found,) = problems(write(tmp_path, text))
    assert [(found.line, found.column)] == places and 'did you mean "hemp-batt"?' in found.message


def test_names_that_differ_in_capitals_only(tmp_path):
    text, _ = spoilt("assemblies:\n", "assemblies:\n  w1: {kind: slab, layers: [{material: spruce, thickness: 1 m}]}\n")
    (found,) = problems(write(tmp_path, text))
    assert found.path == "assemblies.W1" and "differ in capitals only" in found.message


def test_lists_and_single_values_must_agree(tmp_path):
    more = "storeys: [{name: ground floor, height: 2.7 m}, {name: loft}]\n"
    more += "revisions: [{mark: A, date: 2027-01-09}, {mark: B}]\n"
    found = problems(write(tmp_path, spoilt("indoor:\n", more + "indoor:\n")[0]))
    assert [one.path for one in found] == ["storeys", "revisions"]
    assert "building.storeys says 1, this list holds 2" in found[0].message
    assert "project.revision says A, the last entry of this list says B" in found[1].message


@pytest.mark.parametrize(
    ("key", "message"),
    [
        ("foundations: {}", "unknown key"),
    ],
)
def test_what_this_version_does_not_read_is_refused(tmp_path, key, message):
    (found,) = problems(write(tmp_path, spoilt("indoor:\n", key + "\nindoor:\n")[0]))
    assert message in found.message
    assert (found.line, found.column) == (32, 1)


def test_ten_mistakes_are_ten_problems_in_file_order(tmp_path):
    text = spoilt("layerfolio: 1", "layerfolio: 3")[0]
    for before, after in [
        ("title: Tern", "titel: Tern"),
        ("date: 2027-02-03", "date: 2027-13-03"),
        ("occupancy: mercantile", "occupancy: shop"),
        ("building_area: 52 m2", "building_area: 52"),
        ("set: nbc-2020", "set: nbc-1066"),
        ("{class: 2}", "{class: 9}"),
        ("kind: wall", "kind: wal"),
        ("thickness: 19 mm", "thickness: 1,9 mm"),
        ("seams: taped", "seams: glued"),
    ]:
        assert before in text
        text = text.replace(before, after, 1)
    found = problems(write(tmp_path, text))
    assert [one.path for one in found] == [
        "layerfolio",
        "project.titel",
        "project.date",
        "building.occupancy",
        "building.building_area",
        "code.set",
        "indoor.humidity.class",
        "assemblies.W1.kind",
        "assemblies.W1.layers[0].thickness",
        "assemblies.W1.layers[5].seams",
    ]
    assert [one.line for one in found] == sorted(one.line for one in found)
