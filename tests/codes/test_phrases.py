"""What findings say are phrases without a final stop, joined by semicolons, so that they can be joined once more."""

import re
from itertools import product
from pathlib import Path

import pytest

import builders as b
from codes_builders import insulation, of_resistance, project, studies
from layerfolio import codes
from layerfolio.dossier import compile_dossier, open_project

ROOT = Path(__file__).parents[2]
PROJECTS = [*sorted((ROOT / "examples").glob("*/*.yaml")), *sorted((ROOT / "shared" / "starters").glob("*/project.yaml"))]
KINDS = ("wall", "roof", "ceiling", "floor", "slab", "foundation-wall")
FACES = ("outside air", "vented space", "unheated space", "ground")


def check(findings):
    assert findings
    for one in findings:
        for said in (one.asked, one.given, one.reason, one.next_step, one.what_follows):
            assert said == said.strip() and not said.endswith((".", ";", ":", ",")), said
            assert not re.search(r"[.!] [A-Z]|\? (?!No: )[A-Z]|;;|; ;|  |\.;", said), said
            assert not re.search(r"[^;:] (?:ask the authority:|supply the |state code\.)", said), said


@pytest.mark.parametrize("path", PROJECTS, ids=lambda one: f"{one.parent.name}/{one.stem}")
def test_phrases_of_projects(path):
    check(compile_dossier(open_project(path)).findings)


@pytest.mark.parametrize("set_id", ["nbc-2020", "iso", "irc-2021", "irc-2024"])
@pytest.mark.parametrize("R", [0.5, 2.85, 4.6, 12])
def test_phrases_of_every_kind_of_assembly(set_id, R):
    everything = [
        of_resistance(R, kind=kind, faces=faces, name=f"{kind} {number}", set_id=set_id)
        for number, (kind, faces) in enumerate(product(KINDS, FACES))
    ]
    bare = of_resistance(0, layers=[insulation(3), b.layer(2, d=0.01, name="bare")], name="bare", set_id=set_id)
    for where in (
        project(set_id=set_id, occupancy="house"),
        project(set_id=set_id),
        project(set_id=set_id, zone=None, degree_days=None, heat_recovery=None, storeys=None, date=""),
        project(set_id=set_id, zone="6", degree_days=6500, humidity_class=5, occupancy="workshop", floor_area=None),
    ):  # fmt: skip
        check(codes.judge(where, studies(*everything, bare)))
