"""Figures on both sides of each bound: the far one is a caution at its path, the near one is none, and both are read."""

import pytest
from workbench import PROJECT, read, write

FRAMING = "assemblies.W1.layers[4].framing.fraction"
CONDUCTS = "materials.hemp-batt.conductivity"
SOURCE = "    source: test report HB-1 (invented)\n"
CASES = [
    ("  temperature: 20 degC", "  temperature: {}", "indoor.temperature", "5 degC", "4.9 degC"),
    ("  temperature: 20 degC", "  temperature: {}", "indoor.temperature", "95 degF", "96 degF"),
    ("re: -27 degC", "re: {}", "climate.heating_design_temperature", "10 degC", "10.1 degC"),
    ("re: -27 degC", "re: {}", "climate.heating_design_temperature", "-27 degC", "27 degC"),
    ("4600 K.d", "{}", "climate.heating_degree_days", "1 K.d", "0 K.d"),
    ("slope: 90 deg", "slope: {}", "assemblies.W1.slope", "60 deg", "59.9 deg"),
    ("fraction: 20 %", "fraction: {}", FRAMING, "25 %", "25.4 %"),  # 38/600 is 6.33 %, four times that is 25.3 %
    ("fraction: 20 %", "fraction: {}", FRAMING, "2.2 %", "2.1 %"),  # a third of it is 2.11 %
    ("0.040 W/(m.K)", "{}", CONDUCTS, "0.015 W/(m.K)", "0.0149 W/(m.K)"),
]


def cautioned(tmp_path, text: str, path: str) -> list[str]:
    return [one.message for one in read(write(tmp_path, text)).cautions if one.path == path]


@pytest.mark.parametrize(("before", "after", "path", "near", "far"), CASES)
def test_both_sides_of_each_bound(tmp_path, before, after, path, near, far):
    assert before in PROJECT
    assert cautioned(tmp_path, PROJECT.replace(before, after.format(near), 1), path) == []
    (message,) = cautioned(tmp_path, PROJECT.replace(before, after.format(far), 1), path)
    assert far in message


@pytest.mark.parametrize(
    ("name", "more", "value", "expected"),
    [
        ("hemp-batt", "", "0.40 W/(m.K)", 1),
        ("hemp-batt", "", "0.2 W/(m.K)", 0),
        ("hemp-batt", SOURCE, "0.40 W/(m.K)", 0),
        ("fill", "", "0.40 W/(m.K)", 0),
        ("fill", "    insulating: true\n", "0.40 W/(m.K)", 1),
        ("wood-wool cement board", "", "0.40 W/(m.K)", 0),
    ],
)
def test_insulation_that_conducts_much_without_a_source(tmp_path, name, more, value, expected):
    text = PROJECT.replace(SOURCE, more).replace("0.040 W/(m.K)", value).replace("hemp-batt", name)
    assert len(cautioned(tmp_path, text, f"materials.{name}.conductivity")) == expected


def test_a_layer_with_a_figure_of_its_own(tmp_path):
    text = PROJECT.replace("thickness: 184 mm", "thickness: 184 mm\n        conductivity: 0.4 W/(m.K)")
    assert len(cautioned(tmp_path, text, "assemblies.W1.layers[4].conductivity")) == 1


def test_the_usual_project_has_none_of_them(tmp_path):
    assert [one.path for one in read(write(tmp_path, PROJECT)).cautions if "W1" not in one.path] == [
        "materials.hemp-batt.evidence[0].file"
    ]
