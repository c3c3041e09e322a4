"""The parts of the results file on openings, the ground and the whole building, key by key, as outside readers rely on them."""

import json
from dataclasses import replace
from types import SimpleNamespace

import pytest

from layerfolio.codes.findings import Finding, Measured, Verdict
from layerfolio.dossier import compile_dossier, open_project
from layerfolio.results import results
from layerfolio.results_envelope import building_part
from layerfolio.studies.envelope_types import GroundStudy
from layerfolio.terminal import summary

PROJECT = """\
layerfolio: 1
project: {title: Net loft, date: 2027-02-03}
code: {set: iso}
building: {conditioned_volume: 130 m3, ventilation: {flow: 30 L/s, recovery: 60 %}}
climate: {heating_design_temperature: -20 degC}
indoor: {temperature: 20 degC}
air_changes_at_50_pa: 1.0
openings:
  A1: {kind: window, count: 2, in: W1, orientation: south, width: 1.23 m, height: 1.48 m, transmittance: 0.92 W/(m2.K),
       basis: declared to EN 14351-1, solar_factor: 0.5}
  A2: {kind: window, in: W1, width: 1.23 m, height: 1.48 m, frame: {width: 110 mm, transmittance: 1.0 W/(m2.K)},
       glass: {transmittance: 0.7 W/(m2.K)}, edge: {psi: 0.05 W/(m.K)}}
joins:
  - {at: sill, of: [W1, F1], length: 28 m, psi: 0.06 W/(m.K), source: detail 3}
assemblies:
  W1:
    kind: wall
    area: 40 m2
    layers:
      - {material: spruce, thickness: 20 mm}
      - {material: mineral-wool-batt, thickness: 140 mm, fasteners: {material: steel, conductivity: 50 W/(m.K), diameter: 6 mm,
         per_area: 8}}
  F1:
    kind: floor
    faces: outside air
    area: 48 m2
    layers: [{material: mineral-wool-batt, thickness: 100 mm}]
"""


def compiled(tmp_path, text=PROJECT):
    path = tmp_path / "project.yaml"
    path.write_text(text, encoding="utf-8")
    return compile_dossier(open_project(path))


@pytest.fixture
def dossier(tmp_path):
    return compiled(tmp_path)


def test_openings(dossier):
    found = results(dossier)["openings"]
    assert list(found) == ["A1", "A2"]
    one, two = found["A1"], found["A2"]
    assert (one["kind"], one["count"], one["in"], one["how"], one["solar_factor"]) == ("window", 2, "W1", "stated", 0.5)
    assert one["area"] == {"value": pytest.approx(1.8204), "unit": "m2"} and one["total_area"]["value"] == pytest.approx(3.6408)
    assert one["transmittance"] == {"value": 0.92, "unit": "W/(m2.K)"} and one["basis"] == "declared to EN 14351-1"
    assert one["missing"] == [] and two["basis"] is None and two["solar_factor"] is None
    # own reference window of 1.23 m x 1.48 m with a frame of 110 mm all round
    assert two["how"] == "computed" and two["transmittance"]["value"] == pytest.approx(0.915, abs=0.0005)


def test_an_opening_without_a_figure_is_null_and_says_what_it_lacks(tmp_path):
    text = PROJECT.replace("transmittance: 0.92 W/(m2.K),\n       basis: declared to EN 14351-1, ", "")
    found = results(compiled(tmp_path, text))
    assert found["openings"]["A1"]["transmittance"] is None and found["openings"]["A1"]["how"] == "missing"
    assert found["openings"]["A1"]["missing"]
    building = found["building"]
    assert building["ua"]["as_designed"] is None and building["design_heat_loss"] is None
    assert any("A1" in words for words in building["missing"])


def test_the_building_adds_up(dossier):
    found = results(dossier)["building"]
    parts = found["parts"]
    assert [one["name"] for one in parts if one["kind"] != "join"] == ["W1", "F1", "A1", "A2"]
    assert found["transmission"] == {"value": pytest.approx(sum(one["conductance"]["value"] for one in parts)), "unit": "W/K"}
    for one in parts:
        figure = one["linear_transmittance"] if one["kind"] == "join" else one["transmittance"]
        assert one["conductance"]["value"] == pytest.approx(one["size"]["value"] * figure["value"])
        assert one["design_heat_loss"]["value"] == pytest.approx(one["conductance"]["value"] * 40)
    join = parts[-1]
    assert join["size"] == {"value": 28.0, "unit": "m"} and join["conductance"]["value"] == pytest.approx(1.68)
    assert found["transmission_loss"]["value"] == pytest.approx(found["transmission"]["value"] * 40)
    whole = found["transmission_loss"]["value"] + found["air_loss"]["value"]
    assert found["design_heat_loss"] == {"value": pytest.approx(whole), "unit": "W"}
    assert found["indoor_temperature"]["value"] == 20 and found["outdoor_temperature"]["value"] == -20


def test_what_the_set_does_not_limit_is_null(dossier):
    found = results(dossier)["building"]
    assert found["ua"]["limit"] is None
    assert found["trade_off"] == {"as_designed": None, "limit": None, "verdict": None}


def test_limits_stand_beside_what_they_limit(dossier):
    judged = SimpleNamespace(
        ua_designed=219.9, ua_limit=231.0, trade_off_designed=2.84, trade_off_limit=2.83, trade_off_verdict=Verdict.DOES_NOT_MEET,
        lacking=("A1: area",),
    )  # fmt: skip
    found = building_part(dossier.building, judged)
    assert found["ua"] == {"as_designed": {"value": 219.9, "unit": "W/K"}, "limit": {"value": 231.0, "unit": "W/K"}}
    assert found["trade_off"]["as_designed"]["value"] == 2.84 and found["trade_off"]["limit"]["unit"] == "W/K"
    assert found["trade_off"]["verdict"] == "does not meet" and found["missing"] == ["A1: area"]
    assert found["transmission"]["value"] == dossier.building.conductance


def test_without_a_study_every_key_stands_and_is_null():
    found = building_part(None)
    assert found["ua"] == {"as_designed": None, "limit": None} and found["design_heat_loss"] is None
    assert found["parts"] == [] and found["missing"] == []


def test_the_ground_is_for_what_lies_against_it(dossier):
    slab = GroundStudy("F1", "slab on ground", 0.231, 3.43, 4.2, (), dossier.thermal["F1"].trace)
    found = results(replace(dossier, ground={"F1": slab}))["assemblies"]
    assert found["W1"]["thermal"]["ground_transmittance"] is None and found["W1"]["thermal"]["ground"] is None
    assert found["F1"]["thermal"]["ground_transmittance"] == {"value": 0.231, "unit": "W/(m2.K)"}
    assert found["F1"]["thermal"]["ground"]["characteristic_dimension"] == {"value": 3.43, "unit": "m"}
    lacking = replace(slab, transmittance=None, missing=("ground.perimeter",))
    thermal = results(replace(dossier, ground={"F1": lacking}))["assemblies"]["F1"]["thermal"]
    assert thermal["ground_transmittance"] is None and thermal["ground"]["missing"] == ["ground.perimeter"]


def test_corrections_stand_apart_from_the_methods(dossier):
    found = results(dossier)["assemblies"]
    thermal = found["W1"]["thermal"]
    fixed = thermal["corrections"]
    assert fixed["fasteners"]["value"] > 0 and fixed["fasteners"]["unit"] == "W/(m2.K)" and fixed["counted"] is True
    corrected = thermal["transmittance"]["value"] + fixed["total"]["value"]
    assert fixed["corrected_transmittance"]["value"] == pytest.approx(corrected)
    assert thermal["transmittance"] == thermal["by_method"][thermal["method"]]["transmittance"]
    assert found["F1"]["thermal"]["corrections"] is None


def made(**changes):
    values = {
        "id": "nbc-2020/9.36.2.7/windows", "assembly": "A1", "edition": "NBC 2020", "clause": "9.36.2.7", "topic": "thermal",
        "question": "?", "path": "prescriptive", "verdict": Verdict.DOES_NOT_MEET, "asked": "", "given": "",
        "provided": Measured("U", 1.7), "limit": Measured("U", 1.61), "reason": "",
    }  # fmt: skip
    return Finding(**(values | changes))


def test_findings_name_their_opening_path_and_evidence(dossier):
    findings = (
        made(opening=True, performance="trade-off", chosen="prescriptive, the usual one", evidence=("E1-03",)),
        made(assembly="W1", answered_by="nbc-2020/9.36.2.11/trade-off"),
        made(assembly=None, provided=Measured("H_T", 219.9), limit=Measured("no such name", 3)),
    )
    one, wall, building = results(replace(dossier, findings=findings))["findings"]
    assert (one["assembly"], one["opening"], one["performance"]) == ("A1", "A1", "trade-off")
    assert one["chosen"] == "prescriptive, the usual one" and one["evidence"] == ["E1-03"] and one["answered_by"] is None
    assert (wall["assembly"], wall["opening"], wall["answered_by"]) == ("W1", None, "nbc-2020/9.36.2.11/trade-off")
    assert wall["performance"] is None and wall["chosen"] is None and wall["evidence"] == []
    assert building["assembly"] is None and building["opening"] is None
    assert building["provided"]["unit"] == "W/K" and building["limit"]["unit"] == "1"


def test_it_is_plain_json_and_twice_the_same(dossier):
    found = results(dossier)
    assert json.loads(json.dumps(found, allow_nan=False)) == found
    assert json.dumps(found) == json.dumps(results(dossier))


def test_the_terminal_lists_openings_and_the_heat_loss(dossier):
    lines = summary(dossier).splitlines()
    assert any(line.startswith("  A1  U 0.920 W/(m²·K)  [declared to EN 14351-1]  2 x window in W1") for line in lines)
    assert any(line.startswith("  A2  U 0.915 W/(m²·K)  [computed by ISO 10077-1]  window in W1") for line in lines)
    (loss,) = [line for line in lines if "design heat loss" in line]
    assert loss.endswith("at −20 °C outside and 20 °C inside") and f"{dossier.building.heat_loss.total:.0f}"[:2] in loss


def test_the_terminal_in_customary_units(tmp_path):
    text = PROJECT.replace("date: 2027-02-03", "date: 2027-02-03, units: customary")
    lines = summary(compiled(tmp_path, text)).splitlines()
    assert any("A1  U 0.162 Btu/(h·ft²·°F) (U 0.920 W/(m²·K))" in line for line in lines)
    assert any("Btu/h at −4 °F outside and 68 °F inside" in line for line in lines)


def test_without_air_the_terminal_says_what_it_counts(tmp_path):
    made = compiled(tmp_path, PROJECT.replace("air_changes_at_50_pa: 1.0\n", ""))
    (loss,) = [line for line in summary(made).splitlines() if "heat loss" in line]
    assert "without air" in loss and "air_changes_at_50_pa" in loss
    building = results(made)["building"]
    assert building["design_heat_loss"] is None and building["air_loss"] is None
    assert building["transmission_loss"]["value"] > 0 and "air_changes_at_50_pa" in " ".join(building["missing"])


def test_the_terminal_says_nothing_of_what_is_not_there(tmp_path):
    head, _, rest = PROJECT.partition("openings:\n")
    head = head.replace("climate: {heating_design_temperature: -20 degC}\n", "")
    text = head + "assemblies:\n" + rest.split("assemblies:\n")[1]
    found = summary(compiled(tmp_path, text))
    assert "design heat loss" not in found and "no U" not in found
