"""Words of the trade for a key, and zones that a set does not have."""

import pytest
from openings_workbench import WHOLE
from workbench import PROJECT, problems, read, write


@pytest.mark.parametrize(("word", "meant"), [
    ("shgc", "solar_factor"), ("SHGC", "solar_factor"), ("u_value", "transmittance"), ("u-value", "transmittance"),
    ("U-factor", "transmittance"),
])  # fmt: skip
def test_other_words_of_an_opening(tmp_path, word, meant):
    text = WHOLE.replace("  K1: {kind: skylight,", f"  K1: {{kind: skylight, {word}: 0.4,")
    (found,) = problems(write(tmp_path, text))
    assert found.message == f'unknown key "{word}": did you mean "{meant}"?'


@pytest.mark.parametrize(("word", "meant"), [
    ("perm", "permeance"), ("k-value", "conductivity"), ("mu", "vapour_resistance_factor"),
])  # fmt: skip
def test_other_words_of_a_material(tmp_path, word, meant):
    text = PROJECT.replace("    density: 40 kg/m3\n", f"    density: 40 kg/m3\n    {word}: 1\n")
    (found,) = problems(write(tmp_path, text))
    assert found.message == f'unknown key "{word}": did you mean "{meant}"?'


@pytest.mark.parametrize(("zone", "near"), [("9", ":"), ("7", 'did you mean "7A" or "7B"?')])
def test_an_unknown_zone_lists_the_zones(tmp_path, zone, near):
    (found,) = problems(write(tmp_path, PROJECT.replace('zone: "6"', f'zone: "{zone}"')))
    assert near in found.message and found.message.endswith("there are 4, 5, 6, 7A, 7B, 8")


def test_a_door_without_glass(tmp_path):
    whole = WHOLE.replace("D1: {kind: door,", "D1: {kind: door, glazed: false, safety_glazing: true,")
    found = read(write(tmp_path, whole))
    assert found.project.openings["D1"].glazed is False
    assert any(one.path == "openings.D1.safety_glazing" for one in found.cautions)
    assert read(write(tmp_path, WHOLE)).project.openings["D1"].glazed is None
