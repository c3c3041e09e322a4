"""A key that the chosen set does not go by is asked about; one that it does go by is not."""

from pathlib import Path

import pytest

from layerfolio.codes.other_sets import GOES_BY, PATHS
from layerfolio.dossier import compile_dossier, open_project

ROOT = Path(__file__).parents[2]
PROJECT = """
layerfolio: 1
project: {{title: Shed}}
code: {{set: {set_id}{code}}}
{more}
assemblies: {{W1: {{kind: wall, layers: [{{material: osb, thickness: 15 mm}}]}}}}
"""
STATED = {
    "site_loads.wind_speed": "site_loads: {wind_speed: 115 mph}",
    "site_loads.seismic.category": "site_loads: {seismic: {category: B}}",
    "site_loads.wind_pressure_1_50": "site_loads: {wind_pressure_1_50: 0.4 kPa}",
    "site_loads.seismic.Sa02": "site_loads: {seismic: {Sa02: 0.3}}",
    "climate.moisture_index": "climate: {moisture_index: 0.9}", "code.air_route": ", air_route: CAN/ULC-S742",
    "building.accessory": "building: {accessory: false}", "building.townhouse": "building: {townhouse: false}",
}  # fmt: skip


def cautioned(folder, set_id, code="", more=""):
    (folder / "project.yaml").write_text(PROJECT.format(set_id=set_id, code=code, more=more), encoding="utf-8")
    found = compile_dossier(open_project(folder / "project.yaml")).cautions
    return {one.path: one.message for one in found if one.path in GOES_BY or one.path == "code.energy_path"}


def test_each_key_of_the_list_is_tried_here():
    assert STATED.keys() == GOES_BY.keys()


@pytest.mark.parametrize("set_id", ["nbc-2020", "bc-2024", "qc-r1", "irc-2021"])
@pytest.mark.parametrize("path", GOES_BY)
def test_a_key_for_other_codes(tmp_path, path, set_id):
    text = STATED[path]
    code, more = (text, "") if path.startswith("code.") else ("", text)
    used = set_id.partition("-")[0] in GOES_BY[path][0]
    found = cautioned(tmp_path, set_id, code, more)
    assert found.keys() == (set() if used else {path})
    instead = GOES_BY[path][1]
    if not used and instead:
        assert f"goes by {instead}" in found[path]


@pytest.mark.parametrize(("set_id", "path", "used"), [
    ("nbc-2020", "total UA", False), ("nbc-2020", "trade-off", True), ("nbc-2020", "performance", True),
    ("irc-2021", "total UA", True), ("irc-2021", "trade-off", False), ("irc-2021", "prescriptive", True),
    ("iso", "total UA", True),
])  # fmt: skip
def test_an_energy_path_of_another_code(tmp_path, set_id, path, used):
    assert cautioned(tmp_path, set_id, f", energy_path: {path}").keys() == (set() if used else {"code.energy_path"})


def test_paths_are_those_of_the_key():
    from layerfolio.reading.schema import ENERGY_PATHS

    assert set(PATHS) <= set(ENERGY_PATHS)


FILES = sorted((ROOT / "examples").glob("*/*.yaml")) + sorted((ROOT / "shared" / "starters").glob("*/*.yaml"))


@pytest.mark.parametrize("file", FILES, ids=lambda one: f"{one.parent.name}/{one.stem}")
def test_examples_and_starters_state_no_such_key(file):
    paths = {one.path for one in compile_dossier(open_project(file)).cautions}
    assert not paths & (GOES_BY.keys() | {"code.energy_path"})
