"""The ground on its calculation sheet: result and steps, or what is missing; corrections on theirs."""

from dataclasses import replace

import pytest

from layerfolio.dossier import compile_dossier, open_project
from layerfolio.sheets import blocks as b
from layerfolio.sheets.as_text import as_text
from layerfolio.sheets.assembly_sheets import assembly_sheet, thermal_sheet
from layerfolio.sheets.desk import Desk
from layerfolio.sheets.ground_steps import ground_blocks
from layerfolio.studies.ground import ground_studies

TEXT = """layerfolio: 1
project: {{title: Small house, date: 2027-02-03, units: {units}}}
code: {{set: iso}}
materials:
  board: {{title: Boards, conductivity: 0.036 W/(m.K), source: report A}}
  concrete: {{title: Concrete, conductivity: 2.3 W/(m.K), source: report B}}
assemblies:
  W1:
    kind: wall
    layers:
      - {{material: board, thickness: 160 mm, fasteners: {{kind: pins, material: steel, diameter: 4.8 mm, per_area: 5}}}}
      - {{material: concrete, thickness: 200 mm}}
  S1:
    kind: slab
    area: 80 m2
    ground: {{{ground}}}
    layers: [{{material: concrete, thickness: 200 mm}}]
"""
WHOLE = (
    "conductivity: 2 W/(m.K), perimeter: 36 m, "
    "edge_insulation: {direction: vertical, width: 600 mm, thickness: 50 mm, resistance: 1.5 m2.K/W}"
)


@pytest.fixture
def desk(tmp_path):
    def make(ground, units="metric"):
        file = tmp_path / "project.yaml"
        file.write_text(TEXT.format(ground=ground, units=units), encoding="utf-8")
        dossier = compile_dossier(open_project(file))
        return Desk(replace(dossier, ground=ground_studies(dossier.assemblies, dossier.thermal)))

    return make


def text_of(blocks):
    return as_text(b.Sheet("S1-T", "Slab", "—", tuple(blocks)))


def test_steps_result_and_what_it_serves(desk):
    made = desk(WHOLE)
    blocks = ground_blocks(made, "S1")
    text = text_of(blocks)
    assert not any(isinstance(one, b.Head) for one in blocks)  # a head would begin a page and leave the table above alone
    assert "serves the sum of heat losses on C3" in text and "judged on C1" in text
    box = next(one for one in blocks if isinstance(one, b.ResultBox))
    assert box.verdict is None and box.figures[0][1] == f"{made.dossier.ground['S1'].transmittance:.3f}"
    for symbol in ("ψ_e", "d_f", "U_gr"):
        assert f"{symbol} =" in text
    assert "0.30 m is taken for the thickness of the walls on the edge" in text
    assert "w = 0.3 m (d" in text and "†)" in text


def test_without_a_conductivity_the_rows_that_may_be_stated(desk):
    made = desk("perimeter: 36 m")
    text = text_of(ground_blocks(made, "S1"))
    assert "Not stated in the project file: ground.conductivity." in text
    for ground, figure in (("clay or silt", "1.5"), ("sand or gravel", "2"), ("homogeneous rock", "3.5")):
        assert any(line.startswith(ground) and figure in line and line.endswith("†") for line in text.splitlines())
    assert not any(isinstance(one, b.Calculation) for one in ground_blocks(made, "S1"))


def test_off_the_ground_there_is_nothing(desk):
    assert ground_blocks(desk(WHOLE), "W1") == []


def test_customary_units_stand_first(desk):
    box = next(one for one in ground_blocks(desk(WHOLE, "customary"), "S1") if isinstance(one, b.ResultBox))
    value = desk(WHOLE).dossier.ground["S1"].transmittance
    assert box.figures[0][1:] == (f"{value / 5.678263:.3f}", f"({value:.3f})")


UNDERFLOOR = (
    "conductivity: 2 W/(m.K), perimeter: 36 m, underfloor: {height: 600 mm, wall_transmittance: 2.8 W/(m2.K), "
    "vents: 1500 mm2/m, wind_speed: 4 m/s, shielding: average}"
)


@pytest.mark.parametrize("ground", [WHOLE, UNDERFLOOR])
@pytest.mark.parametrize("units", ["metric", "customary"])
def test_the_running_total_is_in_the_unit_of_its_head(desk, ground, units):
    """Also where the formulas of a step hold in SI units alone."""
    made = desk(ground, units)
    steps = next(one for one in ground_blocks(made, "S1") if isinstance(one, b.Calculation))
    totals = [line.total for step in steps.steps for line in step.body if isinstance(line, b.Equation) and line.total]
    value = made.dossier.ground["S1"].transmittance / (5.678263 if units == "customary" else 1)
    assert ("Btu" in steps.total_unit) == (units == "customary")
    assert float(totals[-1]) == pytest.approx(value, rel=1e-3)


def test_the_corrected_figure_ends_its_steps_and_stands_in_the_result(desk):
    made = desk(WHOLE)
    steps = as_text(thermal_sheet(made, "W1"))
    study = made.dossier.thermal["W1"]
    assert study.corrections.counted
    assert f"{study.final.transmittance:.4f} W/(m²·K)" in steps
    assert steps.index("U = 1 / R_T") < steps.index("Corrections of the transmittance") < steps.index("U_c = U + ΔU")
    assert f"{study.final.transmittance:.3f}" in as_text(assembly_sheet(made, "W1"))
