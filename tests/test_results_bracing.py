"""Lines of bracing in the results file: the keys that outside readers rely on, their units, the verdict of the worst finding."""

import json
from pathlib import Path

import pytest
import yaml

from layerfolio.codes.findings import Verdict
from layerfolio.codes.wall_lines import is_on_a_line
from layerfolio.dossier import compile_dossier, open_project
from layerfolio.results import results

ROOT = Path(__file__).parents[1]
LINE = {
    "assembly": "W1", "length": "9.6 m", "height": "2.7 m", "storeys_above": 0, "construction": "light", "line_spacing": "5.4 m",
    "lines_in_direction": 2, "eave_to_ridge": "2 m",
    "panels": [{"length": "4.8 m", "at": "0 m"}, {"length": "4.8 m", "at": "4.8 m"}],
    "panel": {"grade": "OSB O-2", "thickness": "15 mm"},
    "panel_fastening": {"nail": "63 mm x 3.25 mm", "edge": "150 mm", "field": "300 mm", "blocked": True},
    "plate_nailing": {"nail": "82 mm x 3.66 mm", "spacing": "150 mm"}, "plate_on": "wood",
}  # fmt: skip


@pytest.fixture
def chandlery(tmp_path):
    def run(set_id="nbc-2020", seismic=None, **change):
        text = (ROOT / "examples" / "chandlery" / "project.yaml").read_text(encoding="utf-8")
        content = yaml.load(text, Loader=yaml.BaseLoader)
        content["code"]["set"] = set_id
        content["building"]["occupancy"] = "house" if set_id == "bc-2024" else content["building"]["occupancy"]
        content["site_loads"]["seismic"] = seismic or {"Sa02": 0.3, "Smax": 0.34}
        content["site_loads"]["exposure"] = "rough"
        content["assemblies"]["W1"]["layers"] = content["assemblies"]["W1"]["layers"][:6]  # the panel is what the room sees
        content["wall_lines"] = {"L1": {key: one for key, one in (LINE | change).items() if one is not None}}
        path = tmp_path / "project.yaml"
        path.write_text(yaml.safe_dump(content, allow_unicode=True, sort_keys=False), encoding="utf-8")
        dossier = compile_dossier(open_project(path))
        return dossier, json.loads(json.dumps(results(dossier)))["wall_lines"]["L1"]

    return run


def test_little_wind_and_quake_asks_no_length(chandlery):
    dossier, one = chandlery()
    assert one["required"] is None and one["provided"] == {"value": pytest.approx(9.6), "unit": "m"}
    assert one["path"].startswith("9.23.13.1") and one["verdict"] == "meets"
    assert one["unit_shear"]["unit"] == "kN/m" and one["unit_shear_by"]["design_wind"] == one["unit_shear"]
    assert dossier.wall_lines["L1"].assembly == "W1"


def test_bands_ask_a_share(chandlery):
    _, one = chandlery(seismic={"Sa02": 0.8})
    assert one["required"] == {"value": 0.25, "unit": "1"} and one["provided"] == {"value": pytest.approx(1.0), "unit": "1"}
    assert one["path"].startswith("9.23.13.2") and one["verdict"] == "meets"


def test_an_extreme_place_is_judged_by_nobody_here(chandlery):
    _, one = chandlery(seismic={"Sa02": 1.9})
    assert one["path"].startswith("9.23.13.3") and one["verdict"] == "needs judgement" and one["required"] is None


def test_british_columbia_does_not_take_the_panel_inside_literally(chandlery):
    dossier, one = chandlery("bc-2024")
    assert one["verdict"] == "does not meet" and one["required"]["unit"] == one["provided"]["unit"] == "m"
    assert one["required"]["value"] == pytest.approx(1.0 * 1.2)  # continuous panels, gypsum board opposite left out, blocked
    wall = next(x for x in dossier.findings if x.assembly == "W1" and x.id == "bc-2024/9.23.13/bracing")
    assert "Smax 0.34" in wall.given and "L1" in wall.reason and "0.47" in wall.asked


def test_findings_name_their_line(chandlery):
    dossier, one = chandlery(panel_fastening=None)
    rows = [x for x in results(dossier)["findings"] if x["wall_line"] == "L1"]
    assert len(rows) == len([x for x in dossier.findings if is_on_a_line(x)]) == 5
    assert one["unit_shear"] is None and one["unit_shear_by"] is None and one["verdict"] == str(Verdict.NEEDS_EVIDENCE)
    assert "panel_fastening.nail" in one["missing"]


def test_without_lines_the_part_is_empty():
    assert results(compile_dossier(open_project(ROOT / "examples" / "chandlery" / "no-panel.yaml")))["wall_lines"] == {}
