"""What a good project file becomes."""

import hashlib
from datetime import date

import pytest
from workbench import PROJECT, read, spoilt, write

from layerfolio.problems import ProblemsFound
from layerfolio.reading import load
from layerfolio.reading.schema import Project
from layerfolio.units.quantity import Quantity


@pytest.fixture
def loaded(tmp_path):
    return read(write(tmp_path, PROJECT))


def test_every_key_of_the_contract_is_an_attribute(loaded):
    project = loaded.project
    assert project.layerfolio == 1 and project.project.title == "Tern Point chandlery"
    assert project.project.date == date(2027, 2, 3) and project.project.page == "letter"
    assert project.building.occupancy == "mercantile" and project.building.storeys == 1
    assert (project.code.set, project.code.zone, project.code.heat_recovery, project.code.amendments) == (
        "nbc-2020",
        "6",
        True,
        (),
    )
    assert project.climate.heating_degree_days == Quantity(4600.0, "degree_days", "4600 K.d")
    assert project.climate.monthly.temperature.values[2] == -2.5
    assert project.climate.monthly.relative_humidity.values[:2] == (0.80, 0.78)
    assert project.indoor.humidity.class_ == 2 and project.indoor.temperature.value == 20.0
    panel = project.materials["panel-15"]
    assert panel.permeance.dry.value == pytest.approx(48e-12) and panel.permeance.wet.value == pytest.approx(140e-12)
    assert panel.permeance.at_thickness.value == 0.015 and not panel.permeance.single
    assert project.materials["hemp-batt"].evidence[0].expires == date(2029, 1, 1)
    wall = project.assemblies["W1"]
    assert (wall.kind, wall.faces, wall.slope.value, wall.moisture.method) == ("wall", "outside air", 90.0, "monthly")
    assert wall.surfaces.inside.value == 0.13


def test_layers_have_their_names_and_figures(loaded):
    layers = loaded.project.assemblies["W1"].layers
    assert [layer.name for layer in layers] == [
        "larch-board",
        "ventilated",
        "sheathing membrane",
        "mineral-wool-board",
        "hemp-batt",
        "panel-15",
        "unventilated",
        "gypsum-board",
    ]
    assert [layer.kind for layer in layers[:4]] == ["solid", "cavity", "membrane", "solid"]
    assert layers[2].equivalent_air_layer.single and layers[2].equivalent_air_layer.wet.value == 0.05
    assert layers[4].framing.fraction.value == 0.2 and layers[4].framing.width.text == "38 mm"
    assert layers[5].serves == ("bracing", "vapour control", "air control") and layers[5].seams == "taped"
    assert "thickness" in layers[0].stated and "name" not in layers[0].stated


def test_repeated_layers_are_numbered(tmp_path):
    text = spoilt(
        "      - {material: gypsum-board, thickness: 12.7 mm}\n",
        "      - {material: gypsum-board, thickness: 12.7 mm}\n" * 2
        + "      - {cavity: unventilated, thickness: 10 mm}\n"
        + "      - {name: gypsum-board 2, conductivity: 1 W/(m.K), thickness: 1 mm}\n",
    )[0]
    names = [layer.name for layer in read(write(tmp_path, text)).project.assemblies["W1"].layers]
    assert names[-5:] == ["unventilated", "gypsum-board", "gypsum-board 3", "unventilated 2", "gypsum-board 2"]


def test_the_project_is_frozen(loaded):
    for thing in (
        loaded.project,
        loaded.project.assemblies["W1"].layers[0],
        loaded.project.climate.monthly.temperature,
    ):
        with pytest.raises(AttributeError, match="is frozen"):
            thing.values = 1
    with pytest.raises(AttributeError):
        loaded.folder = None


def test_the_smallest_project(tmp_path):
    text = "layerfolio: 1\nproject: {title: Shed}\ncode: {set: iso}\nassemblies:\n  R1:\n    kind: roof\n    layers:\n"
    text += "      - {material: spruce, thickness: 1 in}\n"
    found = read(write(tmp_path, text))
    project = found.project
    assert project.project.units == "metric" and project.project.page == "letter"
    assert project.building.storeys is None and project.materials == {} and project.climate.monthly is None
    assert project.assemblies["R1"].faces == "outside air" and project.assemblies["R1"].slope.value == 0
    assert [c.path for c in found.cautions] == ["assemblies.R1"]


def test_defaults_are_not_shared_between_projects(tmp_path):
    text = "layerfolio: 1\nproject: {title: a}\ncode: {set: iso}\n"
    text += "assemblies: {W1: {kind: wall, layers: [{membrane: x}]}}\n"
    one, two = read(write(tmp_path, text)).project, read(write(tmp_path, text)).project
    assert one == two and one.materials is not two.materials


def test_checksum_folder_and_files(loaded, tmp_path):
    assert loaded.input_sha256 == hashlib.sha256(PROJECT.encode()).hexdigest()
    assert loaded.folder == tmp_path and loaded.files == (tmp_path / "project.yaml",)


def test_a_missing_document_is_a_caution_and_a_present_one_is_none(tmp_path):
    path = write(tmp_path, PROJECT)
    assert [(c.path, c.message) for c in read(path).cautions] == [
        ("materials.hemp-batt.evidence[0].file", 'the file "data-sheets/hemp-batt.pdf" is not there')
    ]
    write(tmp_path, b"%PDF-", "data-sheets/hemp-batt.pdf")
    found = read(path)
    assert found.cautions == ()
    file = found.project.materials["hemp-batt"].evidence[0].file
    assert file == "data-sheets/hemp-batt.pdf" and (found.folder / file).is_file()


def test_a_material_without_a_source_is_a_caution(tmp_path):
    text = spoilt("    source: test report P-15 (invented)\n", "")[0]
    messages = [c for c in read(write(tmp_path, text)).cautions if c.path == "materials.panel-15"]
    assert len(messages) == 1 and "source" in messages[0].message


def test_a_later_room_can_report_with_the_place(loaded):
    found = loaded.problem_at(
        "assemblies.W1.layers[4].framing.material", "no conductivity is known", "material: spruce"
    )
    assert (found.line, found.column) == (64, 43) and found.path.endswith("framing.material")
    assert loaded.problem_at("assemblies.W1.layers[4].density", "x").line == 62  # not stated: the layer that lacks it
    assert loaded.problem_at("climate.cooling_degree_days", "x").line == 24
    assert loaded.problem_at("", "x").line == 1
    assert loaded.problem_at("assemblies.W1.layers[99]", "x").line == 57


def test_text_is_kept_harmless(tmp_path):
    nasty = r'"<img src=x> & {{ 7*7 }} {% raw %} \u0007\e[31m \u202Eabc\u202C \n\n second  line %PDF"'
    text = spoilt("title: Tern Point chandlery", f"title: {nasty}")[0]
    title = read(write(tmp_path, text)).project.project.title
    assert title == "<img src=x> & {{ 7*7 }} {% raw %} [31m abc second line %PDF"
    text = spoilt("title: Tern Point chandlery", "title: " + "very long title " * 200)[0]
    assert len(read(write(tmp_path, text)).project.project.title) > 3000
    text = spoilt("title: Tern Point chandlery", "title: חנות ספינות")[0]
    assert read(write(tmp_path, text)).project.project.title == "חנות ספינות"


def test_words_that_older_yaml_turns_into_something_else_stay_words(tmp_path):
    text = PROJECT
    for before, after in [
        ("title: Tern Point chandlery", "title: no"),
        ("location: Lot 7, Tern Point Road", "location: 12:30"),
        ("owner: the invented owner", "owner: 1_000"),
        ("revision: A", "revision: 01"),
        ("prepared_by: an invented office", "prepared_by: 2027-02-03"),
    ]:
        text = text.replace(before, after, 1)
    about = read(write(tmp_path, text)).project.project
    assert [about.title, about.location, about.owner, about.revision, about.prepared_by] == [
        "no",
        "12:30",
        "1_000",
        "01",
        "2027-02-03",
    ]


def test_without_names_to_check_against_any_name_stands(tmp_path):
    text = PROJECT.replace("larch-board", "unobtainium").replace("nbc-2020", "nbc-2222")
    assert load(write(tmp_path, text)).project.code.set == "nbc-2222"


def test_names_are_asked_for_only_when_needed(tmp_path):
    def never():
        raise AssertionError("asked")

    text = "layerfolio: 1\nproject: {title: a}\ncode: {set: iso}\nmaterials: {clay: {source: x}}\n"
    text += "assemblies: {W1: {kind: wall, layers: [{material: clay}]}}\n"
    assert load(write(tmp_path, text), materials=never).project.materials.keys() == {"clay"}


def test_records_can_be_made_in_code():
    from layerfolio.reading.layers import Layer

    layer = Layer(material="spruce", thickness=Quantity(0.1, "length", "100 mm"))
    assert layer.kind == "solid" and layer.serves == () and layer.stated == {"material", "thickness"}
    with pytest.raises(TypeError, match="no key colour"):
        Layer(colour="red")


@pytest.mark.parametrize(
    ("slope", "degrees"), [("30 deg", 30.0), ("30°", 30.0), ("6:12", 26.565051), ("0 deg", 0.0), ("0.5 rad", 28.64789)]
)
def test_slopes(tmp_path, slope, degrees):
    text = spoilt("slope: 90 deg", f"slope: {slope}")[0]
    assert read(write(tmp_path, text)).project.assemblies["W1"].slope.value == pytest.approx(degrees)


def test_parts_that_later_studies_ask_for(tmp_path):
    more = """\
site_loads:
  {wind_pressure_1_50: 0.45 kPa, wind_speed: 115 mph, exposure: rough, seismic: {Sa02: 0.3, category: B}, snow: 1.8 kPa}
air_changes_at_50_pa: 1.0
revisions: [{mark: 0, date: 2027-01-09, note: for comment}, {mark: A, date: 2027-02-03}]
storeys: [{name: ground floor, height: 2.7 m}]
openings: {}
"""
    ground = "ground: {conductivity: 2.0 W/(m.K), perimeter: 29 m, depth: 0 m, heated: false, above_frost_line: true}"
    text = spoilt("indoor:\n", more + "indoor:\n")[0].replace("moisture: {method: monthly}", ground)
    text = text.replace("    heating_design", "    heating_design").replace(
        "4600 K.d", "4600 K.d\n  cooling_degree_days: 300 K.d"
    )
    project = read(write(tmp_path, text)).project
    assert project.site_loads.wind_pressure_1_50.value == 450 and project.site_loads.seismic.Sa02 == 0.3
    assert project.site_loads.wind_speed.value == pytest.approx(51.4096) and project.site_loads.snow.value == 1800
    assert project.air_changes_at_50_pa == 1.0 and [r.mark for r in project.revisions] == ["0", "A"]
    assert project.climate.cooling_degree_days.value == 300 and project.openings == {}
    assert project.assemblies["W1"].ground.heated is False and project.assemblies["W1"].ground.perimeter.value == 29


@pytest.mark.parametrize("where", ["vapour_values: {hemp-batt: dry}", "moisture: {vapour_values: {hemp-batt: dry}}"])
def test_fixed_cups_may_stand_on_the_assembly_or_under_moisture(tmp_path, where):
    text = spoilt("moisture: {method: monthly}", where)[0]
    assert read(write(tmp_path, text)).project.assemblies["W1"].vapour_values == {"hemp-batt": "dry"}


def test_problems_are_an_exception_with_every_problem(tmp_path):
    with pytest.raises(ProblemsFound) as caught:
        read(write(tmp_path, "layerfolio: 1\n"))
    assert [p.path for p in caught.value.problems] == ["assemblies", "code", "project"]


def test_project_has_the_keys_of_the_contract():
    assert list(Project.KEYS)[:9] == [
        "layerfolio",
        "variant_of",
        "project",
        "building",
        "code",
        "climate",
        "indoor",
        "site_loads",
        "air_changes_at_50_pa",
    ]


@pytest.mark.parametrize("hazard", ["low", "medium", "high"])
@pytest.mark.parametrize("permafrost", [True, False])
def test_answers_that_code_tables_ask(tmp_path, hazard, permafrost):
    """NBC 2020: the group of an industrial occupancy, and the row of Table 9.36.2.8 on permafrost."""
    text = spoilt("occupancy: mercantile\n", f"occupancy: workshop\n  hazard: {hazard}\n")[0]
    text = text.replace("moisture: {method: monthly}", f"ground: {{permafrost: {str(permafrost).lower()}}}")
    project = read(write(tmp_path, text)).project
    assert project.building.hazard == hazard
    assert project.assemblies["W1"].ground.permafrost is permafrost


def test_a_hazard_is_one_of_three(tmp_path):
    text, places = spoilt("occupancy: mercantile\n", "occupancy: workshop\n  hazard: »severe\n")
    with pytest.raises(ProblemsFound) as caught:
        read(write(tmp_path, text))
    (found,) = caught.value.problems
    assert (found.path, [(found.line, found.column)]) == ("building.hazard", places)
