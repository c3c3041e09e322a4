"""The example project with openings, joins and documents, and a way to spoil it: `»` marks where a problem must stand."""

from workbench import PROJECT, unmark

OPENINGS = """\
openings:
  A1: {kind: window, count: 2, in: W1, orientation: south, width: 1200 mm, height: 1400 mm,
       transmittance: 0.92 W/(m2.K), basis: declared to EN 14351-1, solar_factor: 0.5,
       evidence: [{file: data-sheets/a1.pdf, number: WD-7, issuer: Marram Test House (invented)}]}
  A2: {kind: window, in: W1, orientation: east, width: 900 mm, height: 1200 mm,
       frame: {width: 110 mm, transmittance: 1.1 W/(m2.K)}, glass: {transmittance: 0.6 W/(m2.K)}, edge: {psi: 0.04 W/(m.K)}}
  D1: {kind: door, in: W1, width: 910 mm, height: 2030 mm, transmittance: 1.2 W/(m2.K), basis: rated to CSA A440.2}
  K1: {kind: skylight, in: R1, orientation: north-west, width: 780 mm, height: 1.18 m}
  H1: {kind: hatch, in: CL1, width: 24 in, height: 30 in}
joins:
  - {at: sill, of: [W1, S1], length: 28 m, psi: 0.06 W/(m.K), source: detail TP-1 (invented)}
  - {at: reveal, of: [W1, A1, A2]}
documents:
  - {title: Bracing design, number: B-7, file: data-sheets/bracing.pdf, for: [W1, bracing]}
"""
MORE = """\
  S1:
    kind: slab
    area: 46 m2
    ground: {perimeter: 29 m}
    layers: [{material: spruce, thickness: 1 in}]
  R1:
    kind: roof
    slope: 30 deg
    area: 60 m2
    layers: [{material: spruce, thickness: 1 in}]
  CL1:
    kind: ceiling
    faces: vented space
    area: 40 m2
    layers: [{material: spruce, thickness: 1 in}]
"""
WHOLE = PROJECT.replace("assemblies:\n", OPENINGS + "assemblies:\n", 1) + MORE


def spoilt(before: str, after: str) -> tuple[str, list[tuple[int, int]]]:
    """The whole project with one text replaced, and the places of the marks in it."""
    assert WHOLE.count(before) >= 1, before
    return unmark(WHOLE.replace(before, after, 1))
