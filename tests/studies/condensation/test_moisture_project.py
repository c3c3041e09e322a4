"""From a project file to the moisture results, by the keys of the file alone."""

import pytest

from layerfolio.assembly.resolve import resolve
from layerfolio.dossier import open_project
from layerfolio.results_moisture import results_part
from layerfolio.studies.condensation.study import study_of_project
from layerfolio.studies.thermal import thermal_study
from layerfolio.studies.vapour import vapour_study
from moisture_cases import CLASS_3

PROJECT = """layerfolio: 1
project: {title: Wall of the moisture tests, date: 2027-02-03}
code: {set: iso}
climate:
  monthly:
    temperature: {unit: degC, values: [-10, -8, -2, 5, 12, 17, 20, 18, 12, 6, -1, -7]}
    relative_humidity: {unit: "%", values: [80, 78, 74, 68, 65, 68, 70, 72, 75, 77, 81, 82]}
indoor: {temperature: 20 degC, humidity: {class: 3}}
materials:
  outer-board:
    {conductivity: 0.127 W/(m.K), density: 700 kg/m3, vapour_resistance_factor: 100, family: particle-board, source: x}
  inner-board:
    {conductivity: 0.127 W/(m.K), density: 700 kg/m3, vapour_resistance_factor: {dry: 50, wet: 15}, source: own}
  fill: {conductivity: 0.040 W/(m.K), vapour_resistance_factor: 1, absorbent: false, source: own}
assemblies:
  W1:
    kind: wall
    faces: outside air
    layers:
      - {material: outer-board, thickness: 19 mm}
      - {material: fill, thickness: 160 mm}
      - {membrane: retarder, equivalent_air_layer: 2.0 m}
      - {material: inner-board, thickness: 19 mm}
"""


def opened(folder, text):
    path = folder / "project.yaml"
    path.write_text(text, encoding="utf-8")
    project = open_project(path).project
    one = resolve(project)[0]["W1"]
    thermal = thermal_study(one)
    return study_of_project(project, "W1", one, thermal, vapour_study(one, thermal.layers))


def changed(old, new):
    assert old in PROJECT
    return PROJECT.replace(old, new)


def test_the_year_of_the_file(tmp_path):
    found = opened(tmp_path, PROJECT)
    assert found.method == "monthly" and found.year == CLASS_3
    assert [value.cup for value in found.expected.values] == ["single", "single", "single", "dry"]


def test_the_published_wall_by_its_file(tmp_path):
    """The two-period example once more, through the file: absorbent: false selects 0.5 kg/m2."""
    part = results_part(opened(tmp_path, changed("    faces:", "    moisture: {method: two-period}\n    faces:")))
    assert part["method"] == "two-period"
    assert part["two_period"]["condensed"]["value"] == pytest.approx(0.27, rel=0.01)
    assert part["two_period"]["evaporated"]["value"] == pytest.approx(0.659, rel=0.001)
    assert part["two_period"]["limit"]["value"] == 0.5 and part["two_period"]["verdict"] == "meets"
    assert part["greatest_accumulation"] == part["two_period"]["condensed"]


def test_a_fill_that_absorbs_has_the_general_limit(tmp_path):
    assert opened(tmp_path, changed("absorbent: false", "absorbent: true")).two_period.limit == 1.0


@pytest.mark.parametrize(
    "place", ["    vapour_values: {inner-board: wet}\n", "    moisture: {vapour_values: {inner-board: wet}}\n"]
)
def test_a_fixed_cup(tmp_path, place):
    found = opened(tmp_path, changed("    faces:", place + "    faces:"))
    assert [(run.values[3].cup, run.values[3].fixed) for run in (found.expected, found.less_favourable)] == [
        ("wet", True)
    ] * 2


def test_films_of_the_file_count_in_the_balance_only(tmp_path):
    usual, own = (
        opened(tmp_path, PROJECT),
        opened(tmp_path, changed("    faces:", "    surfaces: {inside: 0.25 m2.K/W}\n    faces:")),
    )
    assert own.expected.greatest_accumulation > usual.expected.greatest_accumulation
    assert own.surface == usual.surface


@pytest.mark.parametrize(
    ("old", "new", "named"),
    [("indoor: {temperature: 20 degC, humidity: {class: 3}}\n", "", "indoor.temperature"),
     ("humidity: {class: 3}", "humidity: {class: 5}", "class 5 has no upper limit"),
     (PROJECT[PROJECT.index("climate:"):PROJECT.index("indoor:")], "", "climate.monthly.temperature")],
)  # fmt: skip
def test_what_is_missing_in_the_file_is_named(tmp_path, old, new, named):
    found = opened(tmp_path, changed(old, new))
    assert not found.evaluated and any(named in words for words in found.missing_inputs)
    assert found.two_period is not None


def test_a_layer_without_vapour_figures(tmp_path):
    found = opened(tmp_path, changed("vapour_resistance_factor: 1, absorbent", "absorbent"))
    assert found.missing_layers == ("fill",) and results_part(found)["missing"] == ["fill"]


@pytest.mark.parametrize(
    ("humidity", "kind"),
    [
        ("{relative_humidity: 45 %}", "constant"),
        ('{unit: "%", values: [38, 40, 42, 45, 50, 55, 58, 58, 52, 48, 44, 40]}', "monthly"),
    ],
)
def test_stated_humidity(tmp_path, humidity, kind):
    year = opened(tmp_path, changed("{class: 3}", humidity)).year
    assert year.rule.kind == kind and year.indoor_humidity[3] == pytest.approx(0.45)
