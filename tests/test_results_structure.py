"""Structure in the results file, from a project file: dead load, cladding attachment, unknown figures null."""

import re
from pathlib import Path

import pytest

from layerfolio.dossier import compile_dossier, open_project
from layerfolio.problems import ProblemsFound
from layerfolio.results import results

CHANDLERY = Path(__file__).parents[1] / "examples" / "chandlery" / "project.yaml"
STATED = re.compile(r"\n +fasteners: \{kind: wood screw, [^}]*\}")
PINS = "kind: wood screw, diameter: 4.8 mm, root_diameter: 3.9 mm, length: 140 mm, spacing: 400 mm, rows_at: 600 mm"


def opened(tmp_path, pins=PINS, **loads):
    text = CHANDLERY.read_text(encoding="utf-8")
    assert len(STATED.findall(text)) == 1
    text = STATED.sub(f"\n        fasteners: {{{pins}}}" if pins else "", text)
    for key, value in loads.items():
        text = text.replace("site_loads:\n", f"site_loads:\n  {key}: {value}\n")
    (tmp_path / "project.yaml").write_text(text, encoding="utf-8")
    return open_project(tmp_path / "project.yaml")


def structure(tmp_path, pins=PINS, **loads):
    return results(compile_dossier(opened(tmp_path, pins, **loads)))["assemblies"]["W1"]["structure"]


def test_the_wall_of_the_chandlery_with_screws(tmp_path):
    """Screw of 4.8 mm, root 3.9 mm, 80 ksi, S-P-F, 38 mm of batten, a gap of 50 mm, 52 mm in the stud: worked out by hand."""
    found = structure(tmp_path)
    cladding = found["cladding_attachment"]
    assert cladding["gap"] == {"value": pytest.approx(0.050), "unit": "m"}
    assert cladding["penetration"]["value"] == pytest.approx(0.052) and cladding["governing_mode"] == "IV"
    q = 3350 * 6894.757 * 0.0039
    moment = 80e3 * 6894.757 * 0.0039**3 / 6
    A, B, C = 1 / q, 0.050, 2 * moment
    root = (-B + (B * B + 4 * A * C) ** 0.5) / (2 * A)
    assert cladding["capacity_lateral"] == {"value": pytest.approx(root / 2.2, rel=1e-6), "unit": "N"}
    weight = 9.80665 * (600 * 0.019 + 0.038 * 500 * 64 / 600)
    assert cladding["demand"] == {"value": pytest.approx(weight * 0.4 * 0.6), "unit": "N"}
    assert cladding["withdrawal_capacity"]["value"] == pytest.approx(2850 * 6894.757 * 0.42**2 * 0.0048 * 0.052, rel=1e-6)
    assert cladding["withdrawal_demand"] is None and cladding["missing"] == [] and cladding["refused"] == []
    assert set(cladding["modes"]) == {"Im", "Is", "II", "IIIm", "IIIs", "IV"}


def test_dead_load_is_the_sum_of_its_layers(tmp_path):
    found = structure(tmp_path)
    total = sum(one["dead_load"]["value"] for one in found["dead_load_by_layer"])
    assert found["dead_load"] == {"value": pytest.approx(total), "unit": "kPa"} and 0.4 < total < 0.9


def test_unknown_figures_are_null(tmp_path):
    cladding = structure(tmp_path, pins="")["cladding_attachment"]
    assert cladding["capacity_lateral"] is None and cladding["governing_mode"] is None and cladding["missing"]


def test_wind_suction_of_the_site(tmp_path):
    cladding = structure(tmp_path, wind_suction="1.2 kPa")["cladding_attachment"]
    assert cladding["withdrawal_demand"]["value"] == pytest.approx(1200 * 0.4 * 0.6)


def test_a_fastener_shorter_than_its_layer_is_a_mistake(tmp_path):
    with pytest.raises(ProblemsFound, match="30 mm long and do not go through the layer, which is 38 mm thick"):
        opened(tmp_path, PINS.replace("140 mm", "30 mm"))


@pytest.mark.parametrize(("gravity", "fits"), [("0.42", True), ("0.1", False), ("1.3", False)])
def test_specific_gravity_within_its_bounds(tmp_path, gravity, fits):
    text = CHANDLERY.read_text(encoding="utf-8")
    text = text.replace("materials:\n", f"materials:\n  spruce: {{specific_gravity: {gravity}, source: stamp}}\n", 1)
    (tmp_path / "project.yaml").write_text(text, encoding="utf-8")
    if fits:
        wall = compile_dossier(open_project(tmp_path / "project.yaml")).assemblies["W1"]
        assert wall.layers[4].member.specific_gravity.value == 0.42
        return
    with pytest.raises(ProblemsFound, match="specific_gravity"):
        open_project(tmp_path / "project.yaml")
