"""The covering of a sloped roof: both sides of each slope, and where protection of the eave is asked.

Limits: NBC as read in the Alberta edition of 2023, Table 9.26.3.1 and 9.26.5.1.
"""

from dataclasses import replace
from math import atan, degrees
from pathlib import Path

import pytest

import builders as b
from codes_builders import insulation, of_resistance
from codes_envelope import judged, only
from layerfolio.codes.findings import Verdict
from layerfolio.dossier import compile_dossier, open_project

CHANDLERY = Path(__file__).parents[2] / "examples" / "chandlery" / "project.yaml"
ROWS = [
    ("asphalt-shingles", "membrane", 3, Verdict.NEEDS_JUDGEMENT), ("wood-shingles", "timber-board", 4, Verdict.DOES_NOT_MEET),
    ("clay-roof-tile", "tile", 2, Verdict.DOES_NOT_MEET), ("slate", "tile", 2, Verdict.DOES_NOT_MEET),
    ("steel-sheet", "metal", 4, Verdict.NEEDS_JUDGEMENT), ("asphalt-roll-roofing", "membrane", 4, Verdict.NEEDS_JUDGEMENT),
]  # fmt: skip


def found(material, family, slope, ending, **where):
    covering = replace(b.layer(1, d=0.02, R=0.01, counts=False, family=family, name="covering"), material=material)
    one = of_resistance(5.0, kind="roof", name="R1", slope=slope, layers=[covering, insulation(5, 2)])
    return only(judged([one], **where), ending)


@pytest.mark.parametrize(("material", "family", "one_in", "flatter"), ROWS)
def test_both_sides_of_each_slope(material, family, one_in, flatter):
    slope = degrees(atan(1 / one_in))
    assert found(material, family, slope, "/roof-slope").verdict == Verdict.MEETS
    below = found(material, family, slope - 0.05, "/roof-slope")
    assert below.verdict == flatter and below.next_step
    assert f"1 in {one_in}" in below.asked


@pytest.mark.parametrize(("material", "family"), [
    ("concrete-roof-tile", "tile"), ("built-up-roofing", "membrane"), ("own", "plain"),
])  # fmt: skip
def test_a_covering_without_a_row_is_a_question(material, family):
    assert found(material, family, 45, "/roof-slope").verdict == Verdict.NEEDS_JUDGEMENT
    assert found(material, family, 30, "/eave-protection").verdict == Verdict.NEEDS_JUDGEMENT


@pytest.mark.parametrize(("material", "family", "one_in", "flatter"), ROWS)
def test_eave_protection_is_asked_of_shingles_shakes_and_tiles_in_the_cold(material, family, one_in, flatter):
    asked = "shingle" in material or "tile" in material or material == "slate"
    cold = found(material, family, 30, "/eave-protection", degree_days=3501)
    assert cold.verdict == (Verdict.NEEDS_EVIDENCE if asked else Verdict.NOT_ASKED)
    assert found(material, family, 30, "/eave-protection", degree_days=3500).verdict == Verdict.NOT_ASKED
    assert found(material, family, degrees(atan(1 / 1.5)), "/eave-protection").verdict == Verdict.NOT_ASKED
    steep = found(material, family, degrees(atan(1 / 1.51)), "/eave-protection").verdict
    assert steep == (Verdict.NEEDS_EVIDENCE if asked else Verdict.NOT_ASKED)


def test_the_edition_of_2015_decides_nothing():
    one = found("slate", "tile", 10, "/roof-slope", set_id="nbc-2015")
    assert one.verdict == Verdict.NEEDS_JUDGEMENT and one.mark == "memory"


def test_the_chandlery_has_lines_on_its_covering():
    lines = [one for one in compile_dossier(open_project(CHANDLERY)).findings if one.assembly == "R1"]
    assert only(lines, "/roof-slope").verdict == Verdict.MEETS and "30°, 1 in 1.73" in only(lines, "/roof-slope").given
    assert only(lines, "/eave-protection").verdict == Verdict.NOT_ASKED
