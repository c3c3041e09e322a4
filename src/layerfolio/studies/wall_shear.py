"""Unit shear of a line's panels by the published table: information for the engineer, with the mark of every figure."""

from fractions import Fraction
from typing import Any

from layerfolio.assembly.types import Assembly, Layer, Member
from layerfolio.catalogue.fastening import fastener_data
from layerfolio.catalogue.unit_shear import ShearTable, unit_shear_table
from layerfolio.formulas import bracing as f
from layerfolio.steps.trace import Recorder
from layerfolio.studies.structure_types import UnitShear

AS_SHEATHING = ("sheathing", "plywood", "OSB O-1", "OSB O-2", "CSA O325 W16", "CSA O325 W20", "CSA O325 W24")


def bracing_layer(line: Any, assembly: Assembly | None) -> Layer | None:
    """The layer that the line's panels are: named by the line, else the one that serves bracing."""
    if assembly is None:
        return None
    wanted = line.panel.material if line.panel else None
    layers = [one for one in assembly.layers if (one.name == wanted if wanted else "bracing" in one.serves)]
    return layers[0] if len(layers) == 1 else None


def studs_of(assembly: Assembly | None) -> Member | None:
    """The studs of a wall: the member of its thickest framed layer; battens of a cavity are none."""
    framed = [one for one in assembly.layers if one.member and one.kind == "solid"] if assembly else []
    best = max(framed, key=lambda one: one.thickness.value if one.thickness else 0.0, default=None)
    return best.member if best else None


def thickness_of(line: Any, assembly: Assembly | None) -> float | None:
    """Thickness of the panels, m: as the line states it, else that of their layer."""
    stated = line.panel.thickness if line.panel else None
    layer = bracing_layer(line, assembly)
    found = stated or (layer.thickness if layer else None)
    return found.value if found else None


NO_PANELS = ("LIB", "DWB")
"""Methods of braces and boards: the table of panels does not speak of them, and nothing of a panel is missing."""


def wall_shear(
    line: Any, assembly: Assembly | None, ratios: tuple[float, ...], record: Recorder
) -> tuple[UnitShear | None, tuple[str, ...]]:
    """The unit shear, and what the project file would have to state for it; None too where the table has no row."""
    if line.method in NO_PANELS:
        return None, ()
    table, board, pins = unit_shear_table(), line.panel, line.panel_fastening
    thickness, gravity = thickness_of(line, assembly), _gravity(assembly)
    asked = {
        "panel.grade": board and board.grade, "thickness of the panels": thickness, "panel_fastening.nail": pins and pins.kind,
        "panel_fastening.edge": pins and pins.edge, "panel_fastening.blocked": pins and pins.blocked is not None,
        "specific_gravity of the studs": gravity,
    }  # fmt: skip
    missing = tuple(name for name, found in asked.items() if not found)
    if missing or pins.kind != "nail" or not pins.blocked or (pins.field and pins.field.value > table.field + 1e-3):
        return None, missing
    return _found(table, line, thickness, gravity, ratios, record), ()


def _found(table: ShearTable, line: Any, thickness: float, gravity: tuple, ratios: tuple, record: Recorder) -> UnitShear | None:
    pins, grade = line.panel_fastening, line.panel.grade
    nail = table.nail(pins.nail.length.value, pins.nail.diameter.value, thickness)
    row = table.row("sheathing" if grade in AS_SHEATHING else grade, thickness, nail) if nail else None
    number = row.at(pins.edge.value) if row else None
    if number is None:
        return None
    value, words, mark = gravity
    record.section("Unit shear, for information", key="shear", source="sdpws-2015, Table 4.3A")
    inches = row.spacings[number] / 0.0254
    said = f"{row.grade} {Fraction(row.thickness / 0.0254).limit_denominator(32)} in, {row.nail} common at {inches:g} in"
    record.given("v_n", row.wind[number], f"nominal, wind: {said}", f"{row.origin.source}, {row.origin.place}")
    record.given("G", value, f"specific gravity, {words}", mark)
    full = table.content["species"]["full_from"]
    factor = record.step(f.species_factor, G=value) if value < full else 1.0
    design = table.content["designs"][0]
    wind = record.step(f.design_shear, about="wind", v_n=row.wind[number], Om=design["wind"], k_G=factor)
    quake = record.step(f.design_shear, about="earthquake", v_n=row.seismic[number], Om=design["seismic"], k_G=factor)
    marks = ["species factor and proportions of panels: from memory, confirm against the adopted text"]
    if grade not in ("sheathing", "structural I", "plywood siding"):
        marks.append(f"{grade} is taken as the table's sheathing: its own stamp decides")
    if pins.nail.diameter.value < nail.diameter - 1e-6 and row.nail == nail.name:
        thick = round(pins.nail.diameter.value * 1000, 2)
        marks.append(f"a nail of {thick:g} mm is taken as {row.nail}, {nail.diameter * 1000:.2f} mm")
    return UnitShear(
        said, row.wind[number], row.seismic[number], wind, quake, design["edition"], value, factor,
        _aspect(table, ratios, record), tuple(marks), row.origin.source,
    )  # fmt: skip


def _aspect(table: ShearTable, ratios: tuple[float, ...], record: Recorder) -> float | None:
    """Factor on the narrowest panel; None beyond the greatest proportion."""
    limit, narrow = table.content["aspect"], max(ratios, default=0.0)
    if narrow > limit["at_most"]:
        return None
    return record.step(f.aspect_factor, about="narrowest panel", a_p=narrow) if narrow > limit["reduced_over"] else 1.0


def _gravity(assembly: Assembly | None) -> tuple[float, str, str] | None:
    """Specific gravity of the studs, what it is, and its mark; None while their wood is not known."""
    studs = studs_of(assembly)
    if studs is None:
        return None
    if studs.specific_gravity is not None:
        return studs.specific_gravity.value, studs.title, "project file"
    group, sure = fastener_data().gravity(studs.material)
    if group is None:
        return None
    return group.gravity.value, group.title if sure else f"{studs.title} taken as {group.title}", "NDS 2018, Table 12.3.3A"
