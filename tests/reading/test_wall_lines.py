"""Lines of bracing: what the keys become, and every rule: what is said, at which line and column, with which example."""

import subprocess
import sys

import jsonschema
import pytest
import yaml
from workbench import PROJECT, problems, read, unmark, write

from layerfolio.reading.json_schema import json_schema

LINES = """\
wall_lines:
  L1: {assembly: W1, length: 9.6 m, height: 2.7 m, storeys_above: 0, supports: roof, direction: east-west,
       line_spacing: 5.4 m, lines_in_direction: 2, construction: light, eave_to_ridge: 2 m,
       panels: [{length: 2.4 m, at: 0 m}, {length: 1.2 m, at: 8.4 m}],
       openings: [{width: 3.6 m, at: 3 m, height: 1.2 m, sill: 0.9 m}],
       panel_fastening: {nail: 63 mm x 3.25 mm, edge: 150 mm, field: 300 mm, blocked: true},
       panel: {grade: OSB O-2, thickness: 15 mm, material: panel-15}, gypsum_opposite: false, hold_downs: false,
       plate_nailing: {nail: 82 mm x 3.66 mm, spacing: 400 mm}, sheathing_lap: false,
       plate_strips: {width: 50 mm, thickness: 0.41 mm, spacing: 1.2 m, nails: 2, nail: 63 mm x 3.25 mm}}
  L2: {assembly: W1, length: 20 ft, height: 8 ft, supports: roof and floor, method: WSP,
       panels: [{length: 48 in}, {length: 4 ft}], openings: [{length: 3 ft}],
       panel_fastening: {screw: 2-1/2 in x 0.131 in, edge: 6 in, field: 12 in}}
"""
WHOLE = PROJECT.replace("assemblies:\n", LINES + "assemblies:\n", 1)


def spoilt(before, after):
    assert WHOLE.count(before) >= 1, before
    return unmark(WHOLE.replace(before, after, 1))


def test_keys_of_the_contract_are_attributes(tmp_path):
    lines = read(write(tmp_path, WHOLE)).project.wall_lines
    one, two = lines["L1"], lines["L2"]
    assert (one.assembly, one.length.value, one.height.value, one.supports) == ("W1", 9.6, 2.7, "roof")
    assert [(p.length.value, p.at.value) for p in one.panels] == [(2.4, 0.0), (1.2, 8.4)]
    assert one.openings[0].along.value == 3.6 and one.openings[0].sill.value == 0.9
    nail = one.panel_fastening.nail
    assert (nail.length.value, nail.diameter.value, nail.text) == (0.063, 0.00325, "63 mm x 3.25 mm")
    assert (one.panel_fastening.kind, one.panel_fastening.blocked, one.panel_fastening.edge.value) == ("nail", True, 0.15)
    assert (one.panel.grade, one.panel.material, one.construction, one.lines_in_direction) == ("OSB O-2", "panel-15", "light", 2)
    assert (one.floors_above, two.floors_above, two.storeys_above, one.interior) == (0, 1, None, False)
    plate, strip = one.plate_nailing, one.plate_strips
    assert (plate.nail.length.value, plate.spacing.value, one.sheathing_lap, two.sheathing_lap) == (0.082, 0.4, False, None)
    assert (strip.width.value, strip.thickness.value, strip.spacing.value) == pytest.approx((0.05, 0.00041, 1.2))
    assert (strip.nails, strip.nail.length.value) == (2, 0.063)
    screw = two.panel_fastening.shank
    assert two.panel_fastening.kind == "screw" and screw.length.value == pytest.approx(0.0635)
    assert screw.diameter.value == pytest.approx(0.0033274) and two.openings[0].along.value == pytest.approx(0.9144)


def test_what_it_carries_is_unknown_until_it_is_stated(tmp_path):
    text, _ = spoilt("supports: roof and floor, ", "")
    assert read(write(tmp_path, text)).project.wall_lines["L2"].floors_above is None


def test_a_project_without_lines_does_not_load_their_module(tmp_path):
    path = write(tmp_path, PROJECT)
    code = (
        "import sys; from pathlib import Path; from layerfolio.reading import load; "
        f"load(Path({str(path)!r}), materials=None, sets=None, zones=None); print('layerfolio.reading.wall_lines' in sys.modules)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True)
    assert done.stdout.strip() == "False", done.stderr


NAIL = "63 mm x 3.25 mm"
TWO = "length: 2.4 m, at: 0 m}, {length: 1.2 m, at: 8.4 m}"
WRONG = [
    ("length: 9.6 m", "length: »9.6", "L1.length", "the bare number 9.6 needs its unit", "9.6 m"),
    ("height: 2.7 m", "height: »31 m", "L1.height", "is over 30 m", "2.7 m"),
    ("assembly: W1, length: 9.6", "assembly: »W2, length: 9.6", "L1.assembly", 'no assembly "W2": did you mean "W1"?', "W1"),
    ("construction: light", "construction: »lite", "L1.construction", 'did you mean "light"?', "light | heavy"),
    ("supports: roof,", "supports: »roof and floor,", "L1.supports", "storeys_above says 0, supports says", "supports: roof"),
    ("storeys_above: 0", "storeys_above: »0.5", "L1.storeys_above", "a whole number is expected", "0"),
    ("method: WSP", "method: »WPS", "L2.method", '"WPS" is not known here: did you mean "WSP"?', "WSP | CS-WSP"),
    # panels
    (TWO, "length: »9.7 m}", "L1.panels[0].length", "longer than the line", "9.6 m"),
    ("at: 8.4 m", "at: »8.5 m", "L1.panels[1].at", "ends 9.7 m from the start of the line, which is 9.6 m", "at: 8.4 m"),
    ("at: 8.4 m", "at: »1.7 m", "L1.panels[1].at", "begins before panel 1 ends, 2.4 m", "at: 2.4 m"),
    ("at: 0 m}, {", "at: 0 m}, »{length: 0.1 m}, {", "L1.panels[1].at", "at is missing: other panels", "at: 1.2 m"),
    ("at: 0 m", "at: »-1 m", "L1.panels[0].at", "must not be below zero", "1.2 m"),
    ("[{length: 48 in}", "»panels: [{length: 18 ft}", "L2.panels", "together, the line 20 ft", "fit into the line"),
    ("at: 8.4 m", "at: 8.4 m, height: »2.8 m", "L1.panels[1].height", "taller than the wall", "2.7"),
    ("{length: 2.4 m, at", "{length: »0 m, at", "L1.panels[0].length", "must be above zero", "9.6 m"),
    # openings
    ("width: 3.6 m, at: 3 m", "width: »9.7 m, at: 0 m", "L1.openings[0].width", "the opening of 9.7 m is longer", "9.6"),
    ("height: 1.2 m, sill", "height: »1.9 m, sill", "L1.openings[0].height", "over a sill of 0.9 m is taller", "height: 1.8 m"),
    ("at: 3 m, height", "at: »2.3 m, height", "L1.openings[0].at", "this opening lies in panel 1", "at: 2.4 m"),
    ("openings: [{length: 3 ft}]", "»openings: [{length: 13 ft}]", "L2.openings", "are more than the line, 20 ft", "fit"),
    # fasteners
    (f"nail: {NAIL}", "nail: »63 mm", "L1.panel_fastening.nail", "is not two or three lengths joined by x", NAIL),
    (f"nail: {NAIL}", "nail: »63 mm x 3.25", "L1.panel_fastening.nail", "the bare number 3.25 needs its unit", NAIL),
    (f"nail: {NAIL}", "nail: »3.25 mm x 63 mm", "L1.panel_fastening.nail", "the length comes first", NAIL),
    (f"nail: {NAIL}", "nail: »63 mm x 3.25 mm x 2 mm", "L1.panel_fastening.nail", "has three lengths", NAIL),
    (f"nail: {NAIL}", "nail: »63 mm x 0 mm", "L1.panel_fastening.nail", "must be above zero", NAIL),
    (f"nail: {NAIL}", "nail: »63 in x 3 in", "L1.panel_fastening.nail", "is no nail or screw of a panel", NAIL),
    (f"nail: {NAIL}", f"nail: {NAIL}, »screw: 51 mm x 4 mm", "L1.panel_fastening.screw", "nail and screw are stated", "nail"),
    ("edge: 150 mm", "edge: »150", "L1.panel_fastening.edge", "the bare number 150 needs its unit", "150 mm"),
    # the board
    ("grade: OSB O-2", "grade: »OSB 2", "L1.panel.grade", 'did you mean "OSB O-2"?', "plywood"),
    ("grade: OSB O-2", "grade: »cardboard", "L1.panel.grade", '"cardboard" is not known here', "plywood"),
    ("material: panel-15}, gyp", "material: »panel-16}, gyp", "L1.panel.material", 'did you mean "panel-15"?', "material"),
    ("thickness: 15 mm, material", "thickness: »11 mm, material", "L1.panel.thickness", "the panel is 11 mm thick", "15 mm"),
    # names
    ("  L1:", "  »W1:", "wall_lines.W1", "is the name of an assembly already", "L1"),
    ("  L2:", "  »l1:", "wall_lines.l1", '"l1" and "L1" differ in capitals only', "L1"),
    ("  L1:", "  »L-1:", "wall_lines.L-1", "cannot be the name of a line", "L1: {assembly"),
    ("kind: wall", "kind: roof", None, "a roof holds no line of bracing", "assembly: W1"),
    # site and materials
    ("density: 40 kg/m3", "specific_gravity: »1.3", "materials.hemp-batt.specific_gravity", "from 0.2 to 1.2", "0.42"),
    ("density: 40 kg/m3", "specific_gravity: »0.19", "materials.hemp-batt.specific_gravity", "from 0.2 to 1.2", "0.42"),
]  # fmt: skip


@pytest.mark.parametrize(("before", "after", "path", "said", "example"), WRONG)
def test_each_mistake_is_said_at_its_place(tmp_path, before, after, path, said, example):
    text, places = spoilt(before, after)
    if "panels: [{length: 18 ft}" in after:
        text, places = unmark(WHOLE.replace("panels: [{length: 48 in}", after, 1))
    found = problems(write(tmp_path, text))
    matching = [one for one in found if said in one.message]
    assert matching, [one.message for one in found]
    one = matching[0]
    assert example in one.example or not one.example
    if path is not None:
        assert one.path == (f"wall_lines.{path}" if path[0] == "L" else path)
        assert [(one.line, one.column)] == places and len(found) == 1


@pytest.mark.parametrize(("before", "after"), [
    ("at: 8.4 m", "at: 6.6 m"), ("height: 1.2 m, sill", "height: 1.8 m, sill"), ("at: 3 m, height", "at: 2.4 m, height"),
    ("{length: 3 ft}", "{length: 12 ft}"),
])  # fmt: skip
def test_the_limit_itself_fits(tmp_path, before, after):
    text, _ = spoilt(before, after)
    assert problems(write(tmp_path, text)) == ()


@pytest.mark.parametrize("key", ["assembly: W1, ", "length: 9.6 m, ", "height: 2.7 m, "])
def test_what_a_line_cannot_be_without(tmp_path, key):
    text, _ = spoilt(f"{{{key}" if key.startswith("a") else key, "{" if key.startswith("a") else "")
    (one,) = problems(write(tmp_path, text))
    assert one.path == f"wall_lines.L1.{key.partition(':')[0]}" and "is missing" in one.message


def test_edges_farther_apart_than_the_field_are_asked_about(tmp_path):
    text, _ = spoilt("edge: 150 mm, field: 300 mm", "edge: 300 mm, field: 150 mm")
    (one,) = [c for c in read(write(tmp_path, text)).cautions if "fastened farther apart" in c.message]
    assert one.path == "wall_lines.L1.panel_fastening.edge"


def test_screws_are_read_whatever_an_edition_says_of_them(tmp_path):
    text, _ = spoilt(f"nail: {NAIL}", "screw: 51 mm x 4 mm")
    assert read(write(tmp_path, text)).project.wall_lines["L1"].panel_fastening.kind == "screw"


@pytest.mark.parametrize(("before", "after", "wrong"), [
    ("grade: OSB O-2", "grade: OSB O-2", False), ("grade: OSB O-2", "grade: cardboard", True), (NAIL, "63 mm", True),
    ("construction: light", "construction: lite", True), ("length: 9.6 m", "length: 9.6", True),
])  # fmt: skip
def test_the_schema_says_the_same(before, after, wrong):
    text, _ = spoilt(before, after)
    loader = type("Plain", (yaml.SafeLoader,), {})
    loader.yaml_implicit_resolvers = {
        first: [one for one in pairs if one[0] != "tag:yaml.org,2002:timestamp"]
        for first, pairs in yaml.SafeLoader.yaml_implicit_resolvers.items()
    }
    found = list(jsonschema.Draft202012Validator(json_schema()).iter_errors(yaml.load(text, Loader=loader)))
    assert bool(found) is wrong
