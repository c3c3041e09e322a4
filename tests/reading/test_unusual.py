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


SIZED = """
layerfolio: 1
project: {title: Shed}
building: {building_area: 52 m2}
code: {set: nbc-2020}
site_loads: {SITE}
assemblies:
  W1: {kind: wall, layers: [{material: gypsum-board, thickness: THICK}]}
  W2: {kind: wall, layers: [{material: gypsum-board, thickness: 15 mm}]}
openings:
  A1: {kind: window, in: W1, width: WIDTH, height: HEIGHT, transmittance: LEAK, basis: rated to CSA A440.2}
  A2: {kind: window, in: W2, width: FREE, height: 1 m, transmittance: 1.4 W/(m2.K), basis: rated to CSA A440.2}
wall_lines:
  L1: {assembly: W1, length: LONG, height: HIGH, interior: INSIDE}
"""
USUAL = {
    "SITE": "snow: 2.4 kPa", "THICK": "15 mm", "WIDTH": "2 m", "HEIGHT": "2 m", "LEAK": "1.4 W/(m2.K)", "FREE": "2 m",
    "LONG": "8.4 m", "HIGH": "2.7 m", "INSIDE": "false",
}  # fmt: skip
SIZE_CASES = [
    ("SITE", "site_loads.snow", "snow: 30 kPa", "snow: 2400 kPa"), ("SITE", "site_loads.snow", "snow: 0 kPa", "snow: 2.4 Pa"),
    ("SITE", "site_loads.snow", "snow: 0.05 kPa", "snow: 0.049 kPa"),
    ("SITE", "site_loads.wind_pressure_1_50", "wind_pressure_1_50: 0.1 kPa", "wind_pressure_1_50: 0.45 Pa"),
    ("SITE", "site_loads.wind_pressure_1_50", "wind_pressure_1_50: 3 kPa", "wind_pressure_1_50: 45 kPa"),
    ("SITE", "site_loads.wind_suction", "wind_suction: 1.2 kPa", "wind_suction: 120 kPa"),
    ("SITE", "site_loads.wind_speed", "wind_speed: 200 mph", "wind_speed: 115 m/s"),
    ("THICK", "assemblies.W1.layers[0].thickness", "1 m", "140 in"),
    ("WIDTH", "openings.A1.width", "8.4 m", "8.41 m"), ("HEIGHT", "openings.A1.height", "2.7 m", "2.71 m"),
    ("FREE", "openings.A2.width", "8 m", "14 m"), ("LEAK", "openings.A1.transmittance", "7.5 W/(m2.K)", "14 W/(m2.K)"),
    ("LONG", "wall_lines.L1.length", "28.8 m", "28.9 m"), ("HIGH", "wall_lines.L1.height", "6 m", "6.1 m"),
]  # fmt: skip


def sized(tmp_path, path, **changes):
    text = SIZED
    for word, value in (USUAL | changes).items():
        text = text.replace(word, value)
    return cautioned(tmp_path, text, path)


@pytest.mark.parametrize(("word", "path", "near", "far"), SIZE_CASES)
def test_sizes_and_loads_on_both_sides(tmp_path, word, path, near, far):
    assert sized(tmp_path, path, **{word: near}) == []
    (message,) = sized(tmp_path, path, **{word: far})
    assert far.rpartition(": ")[2] in message


def test_an_inside_line_bounds_no_window(tmp_path):
    assert sized(tmp_path, "openings.A1.width", WIDTH="7.9 m", LONG="4 m", INSIDE="true") == []


def test_earth_may_be_thick(tmp_path):
    assert sized(tmp_path, "assemblies.W1.layers[0].thickness", THICK="1.2 m, name: rammed earth") == []
