"""A project of a wall, a slab, a roof and a window, told in a few words, for tests of junctions."""

from layerfolio.assembly.junctions import junctions
from layerfolio.assembly.resolve import resolve
from layerfolio.dossier import open_project

WALL = [
    "{material: larch-board, thickness: 19 mm, serves: [weather face]}",
    "{cavity: ventilated, thickness: 38 mm, battens: {material: spruce, width: 64 mm, spacing: 600 mm, direction: vertical}}",
    "{membrane: wall membrane, equivalent_air_layer: 0.05 m, serves: [water control]}",
    "{material: mineral-wool-board, thickness: 50 mm, conductivity: 0.035 W/(m.K)}",
    "{material: mineral-wool-batt, thickness: 184 mm, framing: {member: stud, material: spruce, width: 38 mm, spacing: 600 mm}}",
    "{material: osb, title: Inner panel, thickness: 15 mm, serves: [vapour control, air control], seams: taped}",
    "{material: gypsum-board, thickness: 12.7 mm, serves: [lining]}",
]
BARE = [one for one in WALL if "mineral-wool-board" not in one]
"""The wall without insulation outside its frame."""
ROOF = [
    "{material: steel-sheet, thickness: 0.6 mm, serves: [weather face]}",
    "{cavity: ventilated, thickness: 50 mm, battens: {material: spruce, width: 38 mm, spacing: 600 mm, direction: up the slope}}",
    "{membrane: roof membrane, equivalent_air_layer: 0.05 m, serves: [water control]}",
    "{material: mineral-wool-batt, thickness: 286 mm, framing: {member: rafter, material: spruce, width: 38 mm, spacing: 0.6 m}}",
    "{material: osb, title: Inner panel, thickness: 15 mm, serves: [vapour control, air control], seams: taped}",
]
SLAB = [
    "{material: xps, thickness: 100 mm}",
    "{membrane: slab membrane, equivalent_air_layer: 100 m, serves: [vapour control, air control]}",
    "{material: reinforced-concrete, thickness: 120 mm, serves: [structure]}",
]
EDGE = "ground: {edge_insulation: {direction: vertical, width: 470 mm, thickness: 100 mm, resistance: 2.8 m2.K/W}}"
WINDOW = "{kind: window, in: W1, width: 1200 mm, height: 1400 mm, sill_height: 900 mm, transmittance: 1.2 W/(m2.K), basis: rated}"
DOOR = WINDOW.replace("window", "door")


def part(kind, layers, more=""):
    """An assembly as YAML, `more` keys between kind and layers."""
    lines = [f"    kind: {kind}", *([f"    {one}" for one in more.split("\n")] if more else []), "    layers:"]
    return "\n".join([*lines, *(f"      - {one}" for one in layers)]) + "\n"


USUAL = {
    "W1": part("wall", WALL, "area: 60 m2"), "R1": part("roof", ROOF, "slope: 30 deg"), "S1": part("slab", SLAB, EDGE),
}  # fmt: skip


def text_of(parts, openings=None, more="", units="metric"):
    named = "".join(f"  {name}:\n{body}" for name, body in parts.items())
    held = "".join(f"  {name}: {body}\n" for name, body in (openings or {}).items())
    head = f"layerfolio: 1\nproject: {{title: Test, units: {units}}}\ncode: {{set: iso}}\n"
    return f"{head}assemblies:\n{named}" + (f"openings:\n{held}" if held else "") + more


def opened(tmp_path, parts, openings=None, more="", units="metric"):
    """The project file as opened."""
    file = tmp_path / "project.yaml"
    file.write_text(text_of(parts, openings, more, units), encoding="utf-8")
    return open_project(file)


def met(tmp_path, parts=USUAL, openings=None, more="", units="metric"):
    """The junctions of such a project."""
    project = opened(tmp_path, parts, openings, more, units).project
    return junctions(project, resolve(project)[0])


def one(found, kind):
    """The only junction of a kind."""
    (only,) = [each for each in found if each.kind == kind]
    return only


def link(junction, letter):
    """The link of a control, None where the junction has none."""
    return next((each for each in junction.links if each.letter == letter), None)
