"""What openings, joins, documents and the answers of the whole-building rules become."""

import subprocess
import sys
from datetime import date

import pytest
from openings_workbench import WHOLE, spoilt
from workbench import PROJECT, read, write

from layerfolio.units.quantity import Quantity

BTU = 5.678263  # W/(m2.K) in one Btu/(h.ft2.F), from the international table Btu, foot and Fahrenheit degree


@pytest.fixture
def project(tmp_path):
    return read(write(tmp_path, WHOLE)).project


def test_keys_of_the_contract_are_attributes(project):
    one, two = project.openings["A1"], project.openings["A2"]
    assert list(project.openings) == ["A1", "A2", "D1", "K1", "H1"]
    assert (one.kind, one.count, one.in_, one.orientation, one.solar_factor) == ("window", 2, "W1", "south", 0.5)
    assert one.width == Quantity(1.2, "length", "1200 mm") and one.height.value == 1.4
    assert one.transmittance.value == 0.92 and one.basis == "declared to EN 14351-1"
    assert one.evidence[0].number == "WD-7" and one.frame is None
    assert two.count == 1 and two.frame.width.value == 0.11 and two.frame.transmittance.value == 1.1
    assert two.glass.transmittance.value == 0.6 and two.edge.psi.value == 0.04 and two.transmittance is None
    sill, reveal = project.joins
    assert (sill.at, sill.of, sill.length.value, sill.psi.value) == ("sill", ("W1", "S1"), 28.0, 0.06)
    assert reveal.of == ("W1", "A1", "A2") and reveal.psi is None
    (document,) = project.documents
    assert document.for_ == ("W1", "bracing") and document.number == "B-7" and document.proves == ()
    assert project.area_includes_openings is False


def test_every_other_key_of_an_opening(tmp_path):
    keys = "clear_opening: {width: 560 mm, height: 1 m, area: 0.5 m2}, sill_height: 44 in, egress: true, operation: side-hung, "
    keys += "safety_glazing: false, energy_rating: 29, title: Bedroom windows, source: sheet WD-7,"
    one = read(write(tmp_path, spoilt("A1: {", f"A1: {{{keys} ")[0])).project.openings["A1"]
    assert one.clear_opening.width.value == 0.56 and one.clear_opening.area.value == 0.5
    assert one.sill_height.value == pytest.approx(1.1176) and one.egress is True and one.safety_glazing is False
    assert (one.operation, one.energy_rating, one.title, one.source) == ("side-hung", 29.0, "Bedroom windows", "sheet WD-7")


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("0.92 W/(m2.K)", 0.92),
        ("0.92 W/m2K", 0.92),
        ("0.30 Btu/(h.ft2.F)", 0.30 * BTU),
        ("0.30 Btu/(h·ft²·°F)", 0.30 * BTU),
        ("0.5 BTU/hr/ft2/F", 0.5 * BTU),
    ],
)
def test_a_transmittance_in_either_system(tmp_path, text, value):
    found = read(write(tmp_path, spoilt("0.92 W/(m2.K)", text)[0])).project.openings["A1"].transmittance
    assert found.value == pytest.approx(value, rel=1e-6) and found.text == text


@pytest.mark.parametrize("text", ["openings: {}\n", "openings: ~\n", "openings: {}\njoins: []\ndocuments: []\n", ""])
def test_nothing_is_no_mistake(tmp_path, text):
    found = read(write(tmp_path, PROJECT + text)).project
    assert (found.openings, found.joins, found.documents) == ({}, (), ())


def test_answers_about_an_assembly(tmp_path):
    text = WHOLE.replace(
        "    slope: 90 deg\n",
        "    slope: 90 deg\n    area_includes_openings: true\n    distance_to_boundary: 1.2 m\n    face_area: 70 m2\n"
        "    clearance_to_ground: 8 in\n    clearance_to_roof: 50 mm\n"
        "    fire_blocks: {vertical: 3 m, horizontal: 6 m, material: solid lumber 38 mm}\n"
        "    unheated_space: {envelope: [{area: 12 m2, transmittance: 2 W/(m2.K)}], volume: 30 m3, air_changes: 1}\n",
    )
    wall = read(write(tmp_path, text)).project.assemblies["W1"]
    assert wall.area_includes_openings is True and wall.distance_to_boundary.value == 1.2
    assert wall.face_area.value == 70 and wall.clearance_to_ground.value == pytest.approx(0.2032)
    assert wall.clearance_to_roof.value == 0.05 and wall.fire_blocks.material == "solid lumber 38 mm"
    assert (wall.fire_blocks.vertical.value, wall.fire_blocks.horizontal.value) == (3, 6)
    assert wall.unheated_space.envelope[0].transmittance.value == 2 and wall.unheated_space.air_changes == 1


def test_answers_about_a_roof_and_the_ground(tmp_path):
    text = WHOLE.replace(
        "    slope: 30 deg\n",
        "    slope: 30 deg\n    vents: {low: 144 in2, high: 0.1 m2, roof_area: 60 m2}\n    roof_space: boards and underlay\n"
        "    inverted_roof: {precipitation: 2.5 mm/day, drainage_factor: 0.04}\n",
    ).replace(
        "{perimeter: 29 m}",
        "{perimeter: 29 m, wall_thickness: 300 mm, insulated_from_edge: 1.2 m, edge_insulation: {direction: vertical, "
        "width: 600 mm, thickness: 50 mm, resistance: 1.4 m2.K/W}, underfloor: {height: 400 mm, wall_transmittance: "
        "1.5 W/(m2.K), vents: 1500 mm2/m, wind_speed: 4 m/s, shielding: average}}",
    )
    found = read(write(tmp_path, text)).project.assemblies
    roof, ground = found["R1"], found["S1"].ground
    assert roof.vents.low.value == pytest.approx(0.0929, rel=1e-3) and roof.roof_space == "boards and underlay"
    assert roof.inverted_roof.precipitation == pytest.approx(2.5) and roof.inverted_roof.drainage_factor == 0.04
    assert ground.edge_insulation.direction == "vertical" and ground.edge_insulation.resistance.value == 1.4
    assert ground.underfloor.vents.value == 1500 and ground.underfloor.shielding == "average"
    assert ground.wall_thickness.value == 0.3 and ground.insulated_from_edge.value == 1.2


def test_answers_about_layers_materials_building_code_and_climate(tmp_path):
    text = WHOLE
    for before, after in [
        ("thickness: 50 mm}", "thickness: 50 mm, air_voids: 1, flame_spread: 25, smoke_developed: 50, fasteners: {kind: screw, "
         "material: stainless steel, diameter: 6 mm, root_diameter: 4 mm, length: 160 mm, spacing: 300 mm, rows_at: 600 mm, "
         "depth: 50 mm, per_area: 5.5, conductivity: 17 W/(m.K)}}"),
        ("    density: 40 kg/m3\n", "    density: 40 kg/m3\n    flame_spread: 75\n    smoke_developed: 250\n"),
        ("  storeys: 1\n", "  storeys: 1\n  sprinklered: false\n  fire_response: slow\n  bedrooms: 2\n  solid_fuel: true\n"
         "  ventilation: {flow: 30 L/s, recovery: 75 %}\n"),
        ("  heat_recovery: true\n", "  heat_recovery: true\n  energy_path: insulation R-values\n  zone_source: county list\n"),
        ("4600 K.d", "4600 K.d\n  moisture_index: 1.1"),
    ]:  # fmt: skip
        assert before in text
        text = text.replace(before, after, 1)
    found = read(write(tmp_path, text)).project
    layer = found.assemblies["W1"].layers[3]
    assert layer.air_voids == 1 and layer.flame_spread == 25 and layer.smoke_developed == 50
    screws = layer.fasteners
    assert (screws.material, screws.diameter.value, screws.per_area, screws.rows_at.value) == ("stainless steel", 0.006, 5.5, 0.6)
    assert found.materials["hemp-batt"].flame_spread == 75 and found.materials["hemp-batt"].smoke_developed == 250
    building = found.building
    assert (building.sprinklered, building.fire_response, building.bedrooms, building.solid_fuel) == (False, "slow", 2, True)
    assert building.ventilation.flow.value == pytest.approx(0.03) and building.ventilation.recovery.value == 0.75
    assert (found.code.energy_path, found.code.zone_source) == ("insulation R-values", "county list")
    assert found.climate.moisture_index == 1.1


def test_documents_are_inputs_and_their_absence_is_a_caution(tmp_path):
    text = WHOLE.replace("source: detail TP-1 (invented)", "evidence: {file: data-sheets/sill.pdf, expires: 2029-01-01}")
    path = write(tmp_path, text)
    found = read(path)
    absent = [one.path for one in found.cautions if "is not there" in one.message]
    assert absent == [
        "materials.hemp-batt.evidence[0].file",
        "openings.A1.evidence[0].file",
        "joins[0].evidence.file",
        "documents[0].file",
    ]
    for name in ("hemp-batt", "a1", "sill", "bracing"):
        write(tmp_path, b"%PDF-", f"data-sheets/{name}.pdf")
    again = read(path)
    assert again.cautions == () and again.project.joins[0].evidence[0].expires == date(2029, 1, 1)
    assert again.inputs == (path, *(tmp_path / f"data-sheets/{name}.pdf" for name in ("hemp-batt", "a1", "sill", "bracing")))


def test_a_document_that_leaves_the_folder_is_refused(tmp_path):
    from workbench import problems

    text, places = spoilt("file: data-sheets/bracing.pdf", "file: »../bracing.pdf")
    (found,) = problems(write(tmp_path, text))
    assert [(found.line, found.column)] == places and found.path == "documents[0].file"


def test_openings_of_a_variant_merge_and_go(tmp_path):
    write(tmp_path, WHOLE)
    more = "layerfolio: 1\nvariant_of: project.yaml\nopenings: {A1: {count: 3}, H1: null}\njoins: null\n"
    found = read(write(tmp_path, more, "less.yaml")).project
    assert found.openings["A1"].count == 3 and found.openings["A1"].width.value == 1.2 and "H1" not in found.openings
    assert found.joins == ()


def test_a_project_without_openings_loads_no_module_of_theirs(tmp_path):
    """`check` stays quick: what a file does not state is not imported."""
    path = write(tmp_path, PROJECT)
    names = ["openings", "opening_rules", "envelope_rules", "joins", "site_answers", "fasteners"]
    code = f"import sys; from layerfolio.reading import load; load({str(path)!r})\n"
    code += f"print([n for n in {names} if 'layerfolio.reading.' + n in sys.modules])"
    ran = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert ran.stdout.strip() == "[]"
