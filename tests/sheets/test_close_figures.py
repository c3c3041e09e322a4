"""A transmittance judged unrounded reads otherwise than its limit wherever it prints, in either unit, on every sheet."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from layerfolio.codes.findings import Verdict
from layerfolio.codes.wording import pair
from layerfolio.dossier import compile_dossier, documented, open_project
from layerfolio.sheets.as_text import as_text
from layerfolio.sheets.figures import u_beside
from layerfolio.sheets.package import package
from layerfolio.terminal import summary
from layerfolio.units.show import in_units

PROJECT = """
layerfolio: 1
project: {{title: House, date: 2027-02-03, units: {units}}}
building: {{occupancy: house, storeys: 1, building_area: 60 m2, conditioned_floor_area: 50 m2}}
code: {{set: irc-2021, zone: "6", zone_source: county list}}
materials: {{fill: {{conductivity: 0.04 W/(m.K), source: report, insulating: true, vapour_resistance_factor: 1}}}}
assemblies:
  R1: {{kind: ceiling, faces: vented space, area: 60 m2, layers: [{{material: fill, thickness: {thickness}}},
       {{material: gypsum-board, thickness: 12.7 mm}}]}}
"""


def compiled(folder, thickness, units="customary"):
    (folder / "project.yaml").write_text(PROJECT.format(thickness=thickness, units=units), encoding="utf-8")
    return documented(compile_dossier(open_project(folder / "project.yaml")))


def line(dossier):
    (found,) = [one for one in dossier.findings if one.id.endswith("N1102.1.2/ceilings")]
    return found


def just_over(folder, units):
    """The dossier of a ceiling that misses U-0.024 by a few ten-thousandths of it."""
    dossier = compiled(folder, "280 mm", units)
    found = line(dossier)
    more = 1 / found.limit.value * (1 - 4e-4) - 1 / found.provided.value
    return compiled(folder, f"{280 + more * 0.04 * 1000:.4f} mm", units)


@pytest.mark.parametrize("units", ["customary", "metric"])
def test_every_sheet_and_the_terminal_tell_it_from_its_limit(tmp_path, units):
    dossier = just_over(tmp_path, units)
    found = line(dossier)
    assert found.verdict is Verdict.DOES_NOT_MEET and found.provided.value > found.limit.value
    unit = "Btu/(h.ft2.F)" if units == "customary" else "W/(m2.K)"
    value, limit = (in_units(one.value, unit) for one in (found.provided, found.limit))
    sheets = {one.number: as_text(one) for one in package(dossier).sheets}
    sheets["check"] = next(x for x in summary(dossier).splitlines() if x.startswith("  R1"))
    for number in ("C1", "C3", "C7", "R1", "check"):
        figures = {float(one) for one in re.findall(r"\b0\.\d+", sheets[number])}
        shown = [one for one in figures if abs(one / value - 1) < 2e-4 and abs(one / limit - 1) > 1e-5]
        assert shown, (number, value, limit)


def test_a_miss_is_written_out(tmp_path):
    found = line(just_over(tmp_path, "customary"))
    assert "10⁻" not in found.reason and re.search(r"missed by 0\.0000\d+ Btu", found.reason)


@given(st.floats(0.05, 3), st.floats(1e-7, 0.01), st.booleans(), st.sampled_from(["metric", "customary"]))
def test_value_and_limit_never_read_alike(limit, off, under, system):
    value = limit * (1 - off if under else 1 + off)
    cells = [u_beside(one, value, limit, system) for one in (value, limit)]
    assert cells[0] != cells[1] and not set(re.findall(r"[\d.]+", cells[0])) & set(re.findall(r"[\d.]+", cells[1]))
    for how in ({}, {"customary": True}, {"both": True}):
        shown = pair("U", value, limit, None, **how)
        texts = [re.findall(r"\d+\.?\d*", one.replace("ft²", "").replace("m²", "")) for one in shown]
        assert all(a != b for a, b in zip(*texts, strict=True))


SLAB = """
layerfolio: 1
project: {{title: House, date: 2027-02-03}}
building: {{occupancy: house, storeys: 1, building_area: 60 m2, conditioned_floor_area: 50 m2}}
code: {{set: nbc-2020, zone: "6", heat_recovery: true}}
climate: {{heating_degree_days: 4600 K.d}}
assemblies:
  S1: {{kind: slab, area: 60 m2, ground: {{heated: false{answers}}}, layers: [{{material: xps, thickness: 100 mm}},
       {{material: reinforced-concrete, thickness: 100 mm}}]}}
"""


@pytest.mark.parametrize(("answers", "open_"), [("", True), (", above_frost_line: true, integral_footing: false", False)])
def test_a_limit_that_an_answer_decides_prints_as_open_everywhere(tmp_path, answers, open_):
    """NBC Table 9.36.2.8.-B asks 1.96 above the frost line and nothing below it."""
    (tmp_path / "project.yaml").write_text(SLAB.format(answers=answers), encoding="utf-8")
    dossier = documented(compile_dossier(open_project(tmp_path / "project.yaml")))
    (found,) = [one for one in dossier.findings if one.id.endswith("/ground-floors")]
    sheets = {one.number: as_text(one) for one in package(dossier).sheets}
    assert (found.limit is None) == open_ and found.provided is not None
    assert ("depends on an answer that is missing: nothing or 1.96" in found.asked) == open_
    assert ("more than asked" in sheets["S1"]) != open_ and ("depends on an answer" in sheets["S1"]) == open_
    assert ("What is asked of S1 is open; the most demanding" in sheets["C3"]) == open_
