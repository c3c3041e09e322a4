"""What stands under the drawing of an assembly: what is judged, what is not drawn, what other sheets take."""

import re

import pytest

from layerfolio.dossier import compile_dossier, open_project
from layerfolio.sheets.as_text import as_text
from layerfolio.sheets.assembly_sheets import assembly_sheet, thermal_sheet
from layerfolio.sheets.desk import Desk

SLAB = """layerfolio: 1
project: {{title: Slab house, date: 2027-02-03, units: {units}}}
building: {{use: detached one-family dwelling, occupancy: house, storeys: 1}}
code: {{set: {code}, zone: "6"}}
materials:
  foam: {{title: Foam board, conductivity: 0.036 W/(m.K), insulating: true, source: report A (invented)}}
assemblies:
  S1:
    kind: slab
    title: Floor slab
    area: 56 m2
    faces: ground
    ground: {{{ground}}}
    layers:
      - {{material: foam, thickness: 100 mm}}
      - {{material: reinforced-concrete, thickness: 100 mm, serves: [structure]}}
"""
EDGE = (
    "conductivity: 2 W/(m.K), perimeter: 30 m, heated: false, "
    "edge_insulation: {direction: vertical, width: 3 ft, thickness: 100 mm, resistance: 15 h.ft2.F/Btu}"
)


@pytest.fixture
def desk(tmp_path):
    def make(code="irc-2021", units="customary", ground=EDGE):
        file = tmp_path / "project.yaml"
        file.write_text(SLAB.format(code=code, units=units, ground=ground), encoding="utf-8")
        return Desk(compile_dossier(open_project(file)))

    return make


def box_of(desk):
    from layerfolio.sheets.blocks import ResultBox

    return next(one for one in assembly_sheet(desk, "S1").blocks if isinstance(one, ResultBox))


def test_the_box_names_the_edge_where_the_edge_is_judged(desk):
    made = desk()
    finding, box = made.thermal_finding("S1"), box_of(made)
    assert not made.judges_whole(finding) and finding.provided.value == pytest.approx(15 / 5.678263)
    assert finding.given.split(";")[0] in box.clause and f"asked {finding.asked.split(';')[0]}" in box.clause
    assert "more than asked" not in box.remark and not any("asked" in name for name, _, _ in box.figures)


def test_the_band_sets_the_edge_beside_the_edge(desk):
    made = desk()
    text = as_text(thermal_sheet(made, "S1"))
    assert f"provided {made.thermal_finding('S1').given}" in text


@pytest.mark.parametrize(("code", "units"), [("irc-2021", "customary"), ("nbc-2020", "metric")])
def test_edge_insulation_is_not_drawn_and_the_sheet_says_where_it_is_judged(desk, code, units):
    made = desk(code, units)
    said = next(line for line in as_text(assembly_sheet(made, "S1")).splitlines() if line.startswith("Edge insulation"))
    judged = next(f for f in made.dossier.findings_of("S1", "thermal") if "edge" in f.asked)
    assert "vertical" in said and "not drawn" in said and f"judged on C1, line {made.line(judged)}" in said
    assert "914 mm" in said and "100 mm" in said and "thick" in said


def test_the_value_by_iso_13370_stands_beside_that_of_the_layers(desk):
    made = desk()
    value = made.dossier.ground["S1"].transmittance
    text = as_text(assembly_sheet(made, "S1"))
    assert f"({value:.3f} W/(m²·K)) by ISO 13370" in text and "C3" in text
    assert "by ISO 13370" not in as_text(assembly_sheet(desk(ground="perimeter: 30 m, heated: false"), "S1"))


def test_what_stands_in_brackets_is_the_si_figure_of_the_same_quantity(desk):
    """A permeance in US perm and, in brackets, in ng/(Pa.s.m2): 1 perm is 57.2 ng."""
    from layerfolio.sheets.blocks import Table

    made = desk()
    sheet = assembly_sheet(made, "S1")
    table = next(one for one in sheet.blocks if isinstance(one, Table))
    found = re.fullmatch(r"([\d.]+) \(([\d.]+)\)", table.rows[1].cells[5])
    assert float(found[2]) / float(found[1]) == pytest.approx(57.21, rel=0.01)
    assert "{W} in ng/(Pa·s·m²)" in next(one.text for one in sheet.blocks if getattr(one, "text", "").startswith("In brackets"))


def test_a_resistance_per_thickness_has_one_origin_on_all_sheets(tmp_path):
    """The mark beside spruce's r in the steps is the one of the layer table, and its place on C5 is of spruce alone."""
    file = tmp_path / "project.yaml"
    text = SLAB.format(code="nbc-2020", units="metric", ground=EDGE) + WALL
    file.write_text(text, encoding="utf-8")
    made = Desk(compile_dossier(open_project(file)))
    steps = as_text(thermal_sheet(made, "W1"))
    mark = re.search(r"2a Spruce studs r = 8.5 m·K/W \((s\d+†)\)", steps)[1]
    assert mark in as_text(assembly_sheet(made, "W1"))
    as_text(thermal_sheet(made, "S1"))
    [places] = [row[2] for row in made.book.rows() if row[0] == mark]
    assert "in contact with the ground" not in places and "A-9.36.2.8.(1)-B and -C" in places
    assert "A-9.36.2.4.(1)]" not in steps


WALL = """  W1:
    kind: wall
    faces: outside air
    layers:
      - {material: foam, thickness: 50 mm}
      - material: foam
        thickness: 184 mm
        framing: {member: stud, material: spruce, width: 38 mm, spacing: 600 mm, fraction: 20 %}
"""
