"""Answers of a project file that settle American lines: strength of boards, cladding, studs, the measured leakage."""

import re

import pytest

from layerfolio.dossier import compile_dossier, open_project
from layerfolio.problems import ProblemsFound

PROJECT = """layerfolio: 1
project: {title: Foam wall (invented), date: 2027-02-03, units: customary}
building: {occupancy: house, storeys: 1, building_area: 80 m2}
code: {set: irc-2021, zone: "6A"}
materials:
  spruce: {specific_gravity: 0.42, source: stamp}
  own-foam:
    {conductivity: 0.036 W/(m.K), density: 20 kg/m3, family: foam, insulating: true, vapour_resistance_factor: 60,
     compressive_strength: 15 psi, source: sheet EP-1 (invented),
     evidence: [{number: EP-1, issuer: a maker (invented), proves: [compressive strength, conductivity]}]}
measured_air_changes_at_50_pa: 2.4
documents: [{title: Test of leakage, number: BD-1, issuer: a tester, file: test.pdf, for: airtightness}]
assemblies:
  W1:
    kind: wall
    faces: outside air
    layers:
      - {material: larch-board, thickness: 19 mm}
      - cavity: ventilated
        thickness: 19.1 mm
        battens: {material: spruce, width: 64 mm, spacing: 16 in, direction: vertical}
        fasteners: {kind: wood screw, diameter: 0.19 in, length: 4 in, spacing: 12 in, rows_at: 16 in}
      - {material: own-foam, thickness: 25 mm}
      - {material: plywood, thickness: 12 mm}
      - {material: mineral-wool-batt, thickness: 140 mm, framing: {member: stud, material: spruce, width: 38 mm, spacing: 16 in}}
      - {material: gypsum-board, thickness: 12.7 mm}
"""


def judged(folder, *changes):
    text = PROJECT
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    (folder / "test.pdf").write_bytes(b"%PDF-1.4\n")
    (folder / "project.yaml").write_text(text, encoding="utf-8")
    dossier = compile_dossier(open_project(folder / "project.yaml"))
    ends = ("furring-over-foam", "air-leakage")
    return [next(one for one in dossier.findings if one.id.endswith(end)) for end in ends]


def test_all_answers_given_both_meet(tmp_path):
    """IRC 2021, R703.15.2 and N1102.4.1.3 as adopted: 1 in of foam under furring at 16 in; 3.0 in zone 6."""
    assert [one.verdict for one in judged(tmp_path)] == ["meets", "meets"]


@pytest.mark.parametrize(("old", "new", "verdict"), [
    ("compressive_strength: 15 psi", "compressive_strength: 14.9 psi", "needs judgement"),
    ("compressive_strength: 15 psi, ", "", "needs evidence"), ("[compressive strength, ", "[", "needs evidence"),
    ("      - {material: larch-board, thickness: 19 mm}\n", "", "needs evidence"),
    ("width: 38 mm, spacing: 16 in", "width: 38 mm, fraction: 20 %", "needs evidence"),
    ("kind: wood screw", "kind: drywall screw", "needs judgement"),
])  # fmt: skip
def test_furring_with_one_answer_less(tmp_path, old, new, verdict):
    assert judged(tmp_path, (old, new))[0].verdict == verdict


def test_a_layer_states_its_own_strength(tmp_path):
    weak = ("{material: own-foam, thickness: 25 mm}", "{material: own-foam, thickness: 25 mm, compressive_strength: 70 kPa}")
    assert judged(tmp_path, weak)[0].verdict == "needs judgement"


@pytest.mark.parametrize(("old", "new", "verdict"), [
    ("measured_air", "air", "needs evidence"), ("2.4", "3.0", "meets"), ("2.4", "3.1", "does not meet"),
    (", file: test.pdf", "", "needs evidence"), ("documents: [{title: Test of leakage, ", "documents: [{expires: 2027-02-02, "
     "title: Test of leakage, ", "needs evidence"),
])  # fmt: skip
def test_leakage_with_one_answer_less(tmp_path, old, new, verdict):
    changes = [(old, new)] if verdict != "does not meet" else [(old, new), ("80 m2}", "80 m2, conditioned_floor_area: 300 m2}")]
    assert judged(tmp_path, *changes)[1].verdict == verdict


def test_an_amendment_of_the_table_is_refused(tmp_path):
    row = "{requirement: irc-2021/R703.15.2/furring-over-foam, value: 100 mm, source: by-law 1}"
    with pytest.raises(ProblemsFound, match=re.escape("a table or a class")):
        judged(tmp_path, ('zone: "6A"', f'zone: "6A", amendments: [{row}]'))
