"""A project as design.md lists it, and a way to spoil it: `»` in a text marks where the problem must be reported."""

from pathlib import Path

from layerfolio.problems import Problem, ProblemsFound
from layerfolio.reading import load

PROJECT = """\
layerfolio: 1
project:
  title: Tern Point chandlery
  location: Lot 7, Tern Point Road
  owner: the invented owner
  prepared_by: an invented office
  authority: Building department of an invented town
  date: 2027-02-03
  revision: A
  page: letter
  units: metric
building:
  use: ship's chandlery (shop), no sleeping
  occupancy: mercantile
  storeys: 1
  building_area: 52 m2
  conditioned_floor_area: 46 m2
  conditioned_volume: 130 m3
code:
  set: nbc-2020
  zone: "6"
  heat_recovery: true
  amendments: []
climate:
  place: Tern Point (invented)
  source: invented for this example
  heating_degree_days: 4600 K.d
  heating_design_temperature: -27 degC
  monthly:
    temperature: {unit: degC, values: [-12, -10, -2.5, 4.5, 10.5, 15, 18, 17.5, 13.5, 9, 4, -4]}
    relative_humidity: {unit: "%", values: [80, 78, 75, 72, 70, 72, 74, 76, 78, 79, 82, 82]}
indoor:
  temperature: 20 degC
  humidity: {class: 2}
materials:
  hemp-batt:
    conductivity: 0.040 W/(m.K)
    density: 40 kg/m3
    specific_heat: 1600 J/(kg.K)
    vapour_resistance_factor: {dry: 2, wet: 1}
    source: test report HB-1 (invented)
    evidence: [{file: data-sheets/hemp-batt.pdf, number: HB-1, expires: 2029-01-01, proves: [conductivity]}]
  panel-15:
    conductivity: 0.13 W/(m.K)
    density: 620 kg/m3
    permeance: {dry: 48 ng/(Pa.s.m2), wet: 140 ng/(Pa.s.m2), at_thickness: 15 mm}
    source: test report P-15 (invented)
assemblies:
  W1:
    kind: wall
    title: North and east walls
    area: 58 m2
    faces: outside air
    slope: 90 deg
    surfaces: {inside: 0.13 m2.K/W, outside: 0.04 m2.K/W}
    moisture: {method: monthly}
    layers:
      - {material: larch-board, thickness: 19 mm}
      - {cavity: ventilated, thickness: 38 mm, battens: {material: spruce, width: 64 mm, spacing: 600 mm}}
      - {membrane: sheathing membrane, equivalent_air_layer: 0.05 m, serves: [water control]}
      - {material: mineral-wool-board, thickness: 50 mm}
      - material: hemp-batt
        thickness: 184 mm
        framing: {member: stud, material: spruce, width: 38 mm, spacing: 600 mm, fraction: 20 %}
      - {material: panel-15, thickness: 15 mm, serves: [bracing, vapour control, air control], seams: taped}
      - {cavity: unventilated, thickness: 38 mm, battens: {material: spruce, width: 38 mm, spacing: 400 mm}}
      - {material: gypsum-board, thickness: 12.7 mm}
"""
MATERIALS = ("gypsum-board", "larch-board", "mineral-wool-board", "spruce")
SETS = ("iso", "nbc-2020")
ZONES = {"iso": (), "nbc-2020": ("4", "5", "6", "7A", "7B", "8")}


def write(folder: Path, text: str | bytes, name: str = "project.yaml") -> Path:
    """The text as a file of the folder."""
    path = folder / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(text if isinstance(text, bytes) else text.encode("utf-8"))
    return path


def read(path: Path):
    """Load with the names of a small catalogue."""
    return load(path, materials=lambda: MATERIALS, sets=lambda: SETS, zones=ZONES.__getitem__)


def problems(path: Path) -> tuple[Problem, ...]:
    """What is wrong with a project; empty when nothing is."""
    try:
        read(path)
    except ProblemsFound as found:
        return found.problems
    return ()


def spoilt(before: str, after: str) -> tuple[str, list[tuple[int, int]]]:
    """The project with one text replaced, and the places of the marks in it."""
    assert PROJECT.count(before) >= 1, before
    return unmark(PROJECT.replace(before, after, 1))


def unmark(text: str) -> tuple[str, list[tuple[int, int]]]:
    """The text without its marks, and line and column of each."""
    places = []
    while "»" in text:
        at = text.index("»")
        places.append((text.count("\n", 0, at) + 1, at - text.rfind("\n", 0, at)))
        text = text[:at] + text[at + 1 :]
    return text, places
