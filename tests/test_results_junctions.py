"""Junctions in the results file: the contract's keys, and the same as on the details."""

import json

import pytest

from layerfolio.dossier import compile_dossier, open_project
from layerfolio.results import results
from layerfolio.starters import starter_file, starters

KEYS = {"number", "kind", "of", "title", "stated", "links", "broken"}
FILE = """\
layerfolio: 1
project: {title: Test}
code: {set: nbc-2020, zone: "6"}
building: {occupancy: house, storeys: 1, building_area: 60 m2}
assemblies:
  W1:
    kind: wall
    layers:
      - {membrane: wall membrane, equivalent_air_layer: 0.05 m, serves: [water control]}
      - {material: mineral-wool-batt, thickness: 140 mm, framing: {member: stud, material: spruce, width: 38 mm, spacing: 600 mm}}
      - {material: osb, thickness: 15 mm, serves: [air control, vapour control], seams: taped}
  S1:
    kind: slab
    layers:
      - {material: xps, thickness: 100 mm}
      - {material: reinforced-concrete, thickness: 120 mm, serves: [structure]}
joins:
  - {at: sill, of: [W1, S1]}
"""


@pytest.fixture
def whole(tmp_path):
    file = tmp_path / "project.yaml"
    file.write_text(FILE, encoding="utf-8")
    return compile_dossier(open_project(file))


def test_keys_of_the_contract(whole):
    found = json.loads(json.dumps(results(whole)))["junctions"]
    assert [one["number"] for one in found] == [1, 2, 3]
    assert all(one.keys() >= KEYS for one in found)
    sill = found[0]
    assert (sill["kind"], sill["of"], sill["title"], sill["stated"]) == ("sill", ["W1", "S1"], "Sill: wall W1 on slab S1", True)
    assert sill["overhang"] is None and sill["foundation"] == "slab edge"
    assert [one["control"] for one in sill["links"]] == list("WAVT")
    assert sill["links"][0] == {
        "control": "W", "from": ["W1", "wall membrane"], "to": None, "by": "lap",
        "words": "wall membrane laps the flashing at the foot", "passes": True,
    }  # fmt: skip


def test_a_control_that_stops_is_broken_and_found(whole):
    data = results(whole)
    broken = {one["control"]: one["because"] for one in data["junctions"][0]["broken"]}
    assert broken == {
        "A": "no layer of slab S1 serves air control", "V": "no layer of slab S1 serves vapour control",
        "T": "120 mm of reinforced concrete between the insulations",
    }  # fmt: skip
    (line,) = [one for one in data["findings"] if one["assembly"] == "sill W1/S1"]
    assert line["id"] == "nbc-2020/9.25.3.3/air-line" and all(because in line["reason"] for because in broken.values())


def test_as_in_the_dossier(whole):
    data = results(whole)["junctions"]
    assert [(one["number"], one["kind"], tuple(one["of"])) for one in data] == [(j.number, j.kind, j.of) for j in whole.junctions]


@pytest.mark.parametrize("name", starters())
def test_no_control_of_a_starter_stops(name):
    dossier = compile_dossier(open_project(starter_file(name)))
    assert dossier.junctions and not [one.title for one in dossier.junctions if one.broken or one.cannot]
