"""Every rule on openings, joins and documents: what is said, at which line and column, with which example."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from openings_workbench import WHOLE, spoilt
from test_anything import FOLDER, QUICK, VALUES, one_folder, read_or_problems
from workbench import problems, read, write

__all__ = ["FOLDER", "one_folder"]

A1 = "openings.A1"
D1_U = "transmittance: 1.2 W/(m2.K), basis: rated to CSA A440.2"
FRAME = "frame: {width: 110 mm, transmittance: 1.1 W/(m2.K)}"
GLASS = "glass: {transmittance: 0.6 W/(m2.K)}"
EDGE = "edge: {psi: 0.04 W/(m.K)}"
COMPUTED = f"{FRAME}, {GLASS}, {EDGE}"

AT_THEIR_PLACE = [
    # units
    ("0.92 W/(m2.K)", "»0.92 W/(m.K)", f"{A1}.transmittance", "is not a unit of thermal transmittance", "1.4 W/(m2.K)"),
    ("0.92 W/(m2.K)", "»0.92", f"{A1}.transmittance", "the bare number 0.92 needs its unit", "1.4 W/(m2.K)"),
    ("0.92 W/(m2.K)", "»1.4 m2.K/W", f"{A1}.transmittance", "is not a unit of thermal transmittance", "1.4 W/(m2.K)"),
    ("0.92 W/(m2.K)", "»92 W/(m2.K)", f"{A1}.transmittance", "is over 20 W/(m2.K)", "1.4 W/(m2.K)"),
    ("0.92 W/(m2.K)", "»0 W/(m2.K)", f"{A1}.transmittance", "must be above zero", "1.4 W/(m2.K)"),
    ("0.04 W/(m.K)", "»0.04 W/(m2.K)", "openings.A2.edge.psi", "is not a unit of linear thermal", "0.04 W/(m.K)"),
    ("width: 1200 mm", "width: »1200", f"{A1}.width", "the bare number 1200 needs its unit", "1200 mm"),
    ("width: 1200 mm", "width: »31 m", f"{A1}.width", "is over 30 m", "1200 mm"),
    ("height: 1400 mm", "height: »-1400 mm", f"{A1}.height", "must be above zero", "1200 mm"),
    ("solar_factor: 0.5", "solar_factor: »1.01", f"{A1}.solar_factor", "from 0 to 1", "0.5"),
    ("count: 2", "count: »0", f"{A1}.count", "from 1 to 1000", "1"),
    ("count: 2", "count: »1.5", f"{A1}.count", "a whole number is expected", "1"),
    ("psi: 0.06 W/(m.K)", "psi: »0.06 W/(m2.K)", "joins[0].psi", "is not a unit of linear thermal", "0.06 W/(m.K)"),
    # words
    ("kind: window, in", "kind: »windo, in", "openings.A2.kind", 'did you mean "window"?', "window | door"),
    ("orientation: east", "orientation: »eastt", "openings.A2.orientation", 'did you mean "east"?', "north | north-east"),
    ("in: R1,", "in: R1, »panes: 2,", "openings.K1.panes", "unknown key", ""),
    ("  H1:", "  »H-1:", "openings.H-1", "cannot be the name of an opening", "A1: {kind: window"),
    # one way to the transmittance
    (D1_U, f"»{D1_U}, {COMPUTED}", "openings.D1.transmittance", "the figures of frame and glass compute it too", "basis: rated"),
    (
        D1_U,
        f"»{D1_U}, {GLASS}",
        "openings.D1.transmittance",
        "the figures of glass compute it too: keep one way",
        "frame: {width",
    ),
    (
        FRAME,
        "frame: {width: »450 mm, transmittance: 1.1 W/(m2.K)}",
        "openings.A2.frame.width",
        "leaves no glass in 900 mm by",
        "110",
    ),
    (
        FRAME,
        "frame: {area: »1.08 m2, width: 110 mm, transmittance: 1.1 W/(m2.K)}",
        "openings.A2.frame.area",
        "no area for the glass",
        "area:",
    ),
    (
        "glass: {",
        "glass: {area: »2 m2, ",
        "openings.A2.glass.area",
        "leaves no area for the frame: width by height is 1.08 m2",
        "area",
    ),
    # where it is
    (
        "kind: window, in: W1",
        "kind: window, in: »W2",
        "openings.A2.in",
        'there is no assembly "W2": did you mean "W1"?',
        "in: W1",
    ),
    ("kind: window, in: W1", "kind: window, in: »Q9", "openings.A2.in", "no assembly", "in: W1"),
    ("kind: window, in: W1", "kind: window, in: »S1", "openings.A2.in", "a slab holds no window: S1 lies on the", "in: W1"),
    ("kind: window, in: W1", "kind: »window, in: R1", "openings.A2.kind", "a window in a roof is a skylight", "kind: skylight"),
    (
        "kind: window, in: W1",
        "kind: »window, in: CL1",
        "openings.A2.kind",
        "is a skylight, and CL1 is a ceiling",
        "kind: skylight",
    ),
    ("kind: door, in: W1", "kind: »door, in: CL1", "openings.D1.kind", "a ceiling holds no door", "kind: hatch"),
    (
        "kind: skylight, in: R1",
        "kind: »skylight, in: W1",
        "openings.K1.kind",
        "a skylight belongs to a roof or ceiling",
        "kind: window",
    ),
    # how large it is
    ("  A2: {", "  »A2: {count: 1, ", "openings.A2", "more than W1 has (1 m2)", "area_includes_openings: true"),
    # what is free
    (
        "in: R1,",
        "in: R1, clear_opening: {width: »800 mm},",
        "openings.K1.clear_opening.width",
        "is more than the width",
        "560 mm",
    ),
    (
        "in: R1,",
        "in: R1, clear_opening: {height: »2 m},",
        "openings.K1.clear_opening.height",
        "is more than the height",
        "560 mm",
    ),
    (
        "in: R1,",
        "in: R1, clear_opening: {width: 500 mm, height: 1 m, area: »0.51 m2},",
        "openings.K1.clear_opening.area",
        "is more than 500 mm by 1 m",
        "area: 0.5 m2",
    ),
    # names
    ("  K1:", "  »w1:", "openings.w1", '"w1" is the name of an assembly already, W1', "w12"),
    ("  K1:", "  »W1:", "openings.W1", '"W1" is the name of an assembly already: take another', "W12"),
    ("  K1:", "  »a1:", "openings.a1", '"a1" is the name of an opening already, A1', "a12"),
    # joins and documents
    (
        "of: [W1, S1]",
        "of: [W1, »S2]",
        "joins[0].of[1]",
        'there is no assembly or opening "S2": did you mean "S1"?',
        "of: [W1, S1]",
    ),
    ("of: [W1, A1, A2]", "of: »A9", "joins[1].of", "there is no assembly or opening", "of: [W1, S1]"),
    ("of: [W1, A1, A2]", "»of: []", "joins[1].of", "nothing is listed here", "[W1, S1]"),
    # ground, roofs, fasteners, code
    (
        "slope: 90 deg",
        "slope: 90 deg\n    »inverted_roof: {drainage_factor: 0.04}",
        "assemblies.W1.inverted_roof",
        "has no meaning on a wall: it belongs to a roof",
        "kind: roof",
    ),
    (
        "slope: 90 deg",
        "slope: 90 deg\n    »vents: {low: 0.1 m2}",
        "assemblies.W1.vents",
        "belongs to a roof or ceiling",
        "kind: roof",
    ),
    (
        "slope: 30 deg",
        "slope: 30 deg\n    inverted_roof: {precipitation: »2.5}",
        "assemblies.R1.inverted_roof.precipitation",
        "the bare number 2.5 needs its unit",
        "2.5 mm/day",
    ),
    (
        "slope: 30 deg",
        "slope: 30 deg\n    inverted_roof: {precipitation: »2.5 m/day}",
        "assemblies.R1.inverted_roof.precipitation",
        "is over 100 mm/day",
        "2.5 mm/day",
    ),
    (
        "thickness: 19 mm}",
        "thickness: 19 mm, fasteners: {per_area: 5, root_diameter: »6 mm, diameter: 4 mm}}",
        "assemblies.W1.layers[0].fasteners.root_diameter",
        "root_diameter 6 mm is more than diameter 4 mm",
        "root_diameter: 4 mm",
    ),
    (
        "thickness: 19 mm}",
        "thickness: 19 mm, fasteners: {per_area: 5, depth: »20 mm}}",
        "assemblies.W1.layers[0].fasteners.depth",
        "they reach 20 mm into the layer, which is 19 mm thick",
        "depth: 19 mm",
    ),
    ("thickness: 19 mm}", "thickness: 19 mm, air_voids: »3}", "assemblies.W1.layers[0].air_voids", "from 0 to 2", "1"),
    ('zone: "6"\n', "»zone_source: county list\n", "code.zone_source", "no zone is stated", "zone_source: county list"),
]

MISSING = [  # what is wrong stands at the thing that lacks it
    (f"{A1}.basis", ", basis: declared to EN 14351-1", "", "basis is missing", "basis: rated to CSA A440.2", "A1: {"),
    (
        "openings.A2.frame.transmittance",
        ", transmittance: 1.1 W/(m2.K)}",
        "}",
        "frame transmittance is missing to compute",
        "frame: {",
        "frame: {",
    ),
    (
        "openings.A2.glass.transmittance",
        "glass: {transmittance: 0.6 W/(m2.K)}",
        "glass: {panes: 3}",
        "glass transmittance is missing",
        "glass: {",
        "glass: {",
    ),
    ("openings.A2.glass.transmittance", f"{GLASS}, ", "", "glass transmittance is missing", "glass: {", "A2: {"),
    ("openings.A2.frame.transmittance", f"{FRAME}, ", "", "frame transmittance is missing", "frame: {", "A2: {"),
    ("openings.A2.frame.width", "width: 110 mm, ", "", "width of the frame, or its area", "frame: {width: 110 mm", "frame: {"),
    (
        "openings.A2.edge.length",
        "width: 110 mm, ",
        "area: 0.4 m2, ",
        "edge length is missing",
        "edge: {length: 4.2 m}",
        "edge: {",
    ),
    ("openings.A2.edge.psi", f", {EDGE}", "", "edge psi is missing", "edge: {psi: 0.04 W/(m.K)}", "A2: {"),
    (
        "openings.A2.edge.psi",
        EDGE,
        "edge: {spacer: metal}",
        "material of the frame and coating of the glass",
        "edge: {psi",
        "edge: {",
    ),
    ("openings.D1.kind", "kind: door, ", "", "kind is missing", "kind: window", "D1: {"),
    ("openings.D1.in", "kind: door, in: W1, ", "kind: door, ", "in is missing", "in: W1", "D1: {"),
    ("openings.K1.height", ", height: 1.18 m", "", "height is missing", "height: 1200 mm", "K1: {"),
    ("joins[0].at", "at: sill, ", "", "at is missing", "at: sill", "{of: [W1, S1]"),
    ("joins[1].of", ", of: [W1, A1, A2]", "", "of is missing", "of: [W1, S1]", "{at: reveal"),
    (
        "documents[0]",
        "title: Bracing design, number: B-7, ",
        "",
        "neither title nor number",
        "number: HB-1",
        "{file: data-sheets/br",
    ),
    (
        "assemblies.S1.ground.edge_insulation.resistance",
        "{perimeter: 29 m}",
        "{edge_insulation: {direction: vertical, width: 600 mm, thickness: 50 mm}}",
        "resistance is missing",
        "resistance: 1.4 m2.K/W",
        "edge_insulation: {",
    ),
]

CAUTIONS = [
    ("transmittance: 0.92 W/(m2.K)", "transmittance: 0.28 W/(m2.K)", f"{A1}.transmittance", "less than any window on sale"),
    (f"{FRAME}, {GLASS}, {EDGE}", "basis: rated to CSA A440.2", "openings.A2.basis", "none is stated"),
    ("orientation: south,", "orientation: south, operation: fixed, egress: true,", f"{A1}.egress", "does not open"),
    (
        "orientation: south,",
        "orientation: south, operation: fixed, clear_opening: {width: 1 m},",
        f"{A1}.clear_opening",
        "not open",
    ),
    ("slope: 30 deg", "slope: 0 deg", "openings.K1.orientation", "R1 is flat"),
    ("length: 28 m, ", "", "joins[0]", "psi without a length counts for nothing"),
    (", psi: 0.06 W/(m.K)", "", "joins[0]", "length without psi"),
    (", source: detail TP-1 (invented)", "", "joins[0]", "the source of psi is not stated"),
    ("for: [W1, bracing]", "for: [W9, bracing]", "documents[0].for", 'nothing is called "W9"'),
    (
        "thickness: 50 mm}",
        "thickness: 50 mm, fasteners: {spacing: 150 mm}}",
        "assemblies.W1.layers[3].fasteners",
        "no heat is counted",
    ),
    ("  storeys: 1\n", "  storeys: 1\n  ventilation: {recovery: 0 %}\n", "building.ventilation.recovery", "are both meant?"),
]

QUIET = [  # the near side of a rule
    (f"{FRAME}, {GLASS}, {EDGE}", "title: bought later"),  # no figure: the code's default may be used
    (f"{FRAME}, {GLASS}, {EDGE}", "frame: {material: wood}, glass: {panes: 2, tint: clear}"),
    (f"{FRAME}, {GLASS}, {EDGE}", f"{FRAME[:-1]}, material: wood}}, {GLASS[:-1]}, coating: true}}, edge: {{spacer: improved}}"),
    (f"{FRAME}, {GLASS}, {EDGE}", f"{FRAME}, {GLASS[:-1]}, panes: 1}}"),
    (
        f"{FRAME}, {GLASS}, {EDGE}",
        "frame: {transmittance: 1.1 W/(m2.K)}, glass: {transmittance: 0.6 W/(m2.K), area: 0.7 m2}, "
        "edge: {psi: 0.04 W/(m.K), length: 3.3 m}",
    ),
    ("width: 110 mm", "width: 449 mm"),
    ("0.92 W/(m2.K)", "0.4 W/(m2.K)"),
    (D1_U, f"{D1_U}, frame: {{material: wood}}, glass: {{panes: 2}}"),
    ("slope: 30 deg", "slope: 1 deg"),
    ("in: R1, orientation: north-west,", "in: CL1,"),
    ("thickness: 50 mm}", "thickness: 50 mm, fasteners: {spacing: 150 mm, rows_at: 600 mm}}"),
    ("serves: [bracing,", "fasteners: {spacing: 150 mm}, serves: [bracing,"),
    ("  storeys: 1\n", "  storeys: 1\n  ventilation: {recovery: 75 %}\n"),
    ("for: [W1, bracing]", "for: [A1, hemp-batt, soil gas]"),
]


def narrow(before: str, after: str) -> tuple[str, list[tuple[int, int]]]:
    """The spoilt project; an opening that is to be too large gets a wall of one square metre that holds it alone."""
    text, places = spoilt(before, after)
    if before == "  A2: {":
        text = text.replace("area: 58 m2", "area: 1 m2").replace("in: W1, orientation: south", "in: R1, orientation: south")
        text = text.replace("count: 2, in: R1", "count: 2, in: W1").replace(
            "width: 1200 mm, height: 1400 mm", "width: 1 m, height: 1 m"
        )
        text = text.replace("width: 910 mm, height: 2030 mm", "width: 0.4 m, height: 2030 mm")
    return text, places


@pytest.mark.parametrize(("before", "after", "path", "message", "example"), AT_THEIR_PLACE)
def test_one_mistake_is_one_problem_at_its_place(tmp_path, before, after, path, message, example):
    text, places = narrow(before, after)
    found = problems(write(tmp_path, text))
    here = [one for one in found if one.path == path]
    assert [(one.line, one.column) for one in here] == places, found
    assert message in here[0].message and example in here[0].example
    follow_on = [one for one in found if one not in here and "no assembly or opening" not in one.message]
    assert follow_on == []


@pytest.mark.parametrize(("path", "before", "after", "message", "example", "holder"), MISSING)
def test_what_is_missing_is_told_where_it_belongs(tmp_path, path, before, after, message, example, holder):
    text, _ = spoilt(before, after)
    (found,) = problems(write(tmp_path, text))
    at = text.index(holder, text.index("A2: {") if path.startswith("openings.A2") and holder != "A2: {" else 0)
    assert (found.line, found.column) == (text.count("\n", 0, at) + 1, at - text.rfind("\n", 0, at)), found
    assert found.path == path and message in found.message and example in found.example


@pytest.mark.parametrize(("before", "after", "path", "message"), CAUTIONS)
def test_what_is_seldom_meant_is_a_caution(tmp_path, before, after, path, message):
    text = spoilt(before, after)[0]
    found = [one.message for one in read(write(tmp_path, text)).cautions if one.path == path]
    assert len(found) == 1 and message in found[0]


@pytest.mark.parametrize(("before", "after"), QUIET)
def test_the_near_side_of_a_rule_is_quiet(tmp_path, before, after):
    found = read(write(tmp_path, spoilt(before, after)[0]))
    assert [one for one in found.cautions if "is not there" not in one.message] == []


def sized(area: str, *openings: str, gross: bool) -> str:
    """A wall of that area with windows of those sizes, `width x height x count`."""
    lines = ["layerfolio: 1", "project: {title: Shed}", "code: {set: iso}", f"area_includes_openings: {str(gross).lower()}"]
    lines += [f"assemblies: {{W1: {{kind: wall, area: {area}, layers: [{{material: spruce, thickness: 1 in}}]}}}}", "openings:"]
    for n, size in enumerate(openings, 1):
        width, height, count = size.split(" x ")
        lines.append(f"  A{n}: {{kind: window, in: W1, width: {width}, height: {height}, count: {count}}}")
    return "\n".join(lines) + "\n"


@pytest.mark.parametrize(
    ("area", "openings", "gross", "paths"),
    [
        ("6 m2", ["2 m x 3 m x 1"], True, []),  # all of it is glass: equal is not more
        ("5.99 m2", ["2 m x 3 m x 1"], True, ["openings.A1"]),
        ("5.99 m2", ["2 m x 3 m x 1"], False, ["openings.A1"]),
        ("6 m2", ["2 m x 3 m x 2"], False, []),  # net: what is left beside two windows
        ("6 m2", ["2 m x 3 m x 2"], True, ["openings.A1"]),
        ("6 m2", ["2 m x 1 m x 2", "1 m x 2 m x 1"], True, []),
        ("6 m2", ["2 m x 1 m x 2", "1 m x 2.01 m x 1"], True, ["openings.A2"]),
        ("6 m2", ["2 m x 1 m x 2", "1 m x 2.01 m x 1", "1 m x 1 m x 1"], True, ["openings.A2"]),  # told once
        ("6 m2", ["2 m x 1 m x 2", "1 m x 2.01 m x 1"], False, []),
    ],
)
def test_openings_and_the_area_of_their_wall(tmp_path, area, openings, gross, paths):
    found = problems(write(tmp_path, sized(area, *openings, gross=gross)))
    assert [one.path for one in found] == paths
    assert all(one.example and "area" in one.example for one in found)


def test_an_assembly_rules_over_the_project(tmp_path):
    text = sized("3 m2", "1 m x 2 m x 2", gross=True)
    (found,) = problems(write(tmp_path, text))
    assert "the openings of W1 come to 4 m2 with this one, more than its area 3 m2" in found.message
    assert problems(write(tmp_path, text.replace("kind: wall,", "kind: wall, area_includes_openings: false,"))) == ()
    text = sized("3 m2", "1 m x 2 m x 2", gross=False)
    assert problems(write(tmp_path, text)) == ()
    assert len(problems(write(tmp_path, text.replace("kind: wall,", "kind: wall, area_includes_openings: true,")))) == 1


@pytest.mark.parametrize(("slope", "window", "skylight"), [("59 deg", 1, 0), ("60 deg", 0, 1), ("90 deg", 0, 1)])
def test_sixty_degrees_part_windows_from_skylights(tmp_path, slope, window, skylight):
    text = sized("9 m2", "1 m x 2 m x 1", gross=False).replace("kind: wall,", f"kind: roof, slope: {slope},")
    assert len(problems(write(tmp_path, text))) == window
    assert len(problems(write(tmp_path, text.replace("kind: window", "kind: skylight")))) == skylight


def test_nothing_is_said_twice_of_a_value_that_is_wrong_already(tmp_path):
    """A figure that cannot be read counts as stated: rules between keys do not speak of it again."""
    text, _ = spoilt(FRAME, "frame: {width: 110, transmittance: much}")
    assert [one.path for one in problems(write(tmp_path, text))] == ["openings.A2.frame.width", "openings.A2.frame.transmittance"]
    text, _ = spoilt("    kind: wall\n", "    kind: wal\n")
    assert [one.path for one in problems(write(tmp_path, text))] == ["assemblies.W1.kind"]


KEYS = [
    "kind",
    "in",
    "width",
    "height",
    "count",
    "transmittance",
    "basis",
    "frame",
    "glass",
    "edge",
    "clear_opening",
    "evidence",
    "at",
    "of",
    "length",
    "psi",
    "title",
    "for",
    "file",
    "A1",
    "W1",
    "orientation",
    "egress",
]
SCALARS = [
    "W1",
    "window",
    "skylight",
    "1200 mm",
    "1.2 W/(m2.K)",
    "0.04 W/(m.K)",
    "~",
    "''",
    "0",
    "1e400 m",
    "true",
    "a.pdf",
    "*x",
]
THINGS = st.recursive(
    st.one_of(st.sampled_from(SCALARS), VALUES),
    lambda inner: st.one_of(
        st.lists(inner, max_size=4).map(lambda items: "[" + ", ".join(items) + "]"),
        st.dictionaries(st.sampled_from(KEYS), inner, max_size=8).map(
            lambda items: "{" + ", ".join(f"{k}: {v}" for k, v in items.items()) + "}"
        ),
    ),
    max_leaves=20,
)
OPENING = st.dictionaries(st.sampled_from(KEYS), THINGS, max_size=12).map(
    lambda items: "{A1: {" + ", ".join(f"{k}: {v}" for k, v in items.items()) + "}, A2: {kind: window, in: W1}}"
)


@settings(QUICK, max_examples=300)
@given(st.sampled_from(["openings", "joins", "documents"]), st.one_of(THINGS, OPENING))
def test_anything_under_the_new_keys_ends_in_problems_or_a_project(key, value):
    read_or_problems(WHOLE.replace(f"\n{key}:\n", f"\n{key}: {value}\nspare_{key}:\n", 1).split(f"\nspare_{key}:")[0] + "\n")
    base = WHOLE.split("openings:\n")[0] + "assemblies:\n" + WHOLE.split("assemblies:\n")[1]
    read_or_problems(base + f"{key}: {value}\n")


@settings(QUICK, max_examples=200)
@given(st.sampled_from(["A1", "A2", "D1", "K1"]), st.dictionaries(st.sampled_from(KEYS), THINGS, max_size=6))
def test_an_opening_with_any_keys_beside_its_own(name, pairs):
    more = "".join(f"{key}: {value}, " for key, value in pairs.items())
    read_or_problems(WHOLE.replace(f"  {name}: {{", f"  {name}: {{{more}", 1))


@settings(QUICK, max_examples=200)
@given(st.integers(0, 900), st.integers(0, 30), st.text(alphabet="ab:-[]{}&*!'\"% \n~0,.mW", max_size=6))
def test_the_openings_with_a_piece_replaced(at, length, piece):
    at += WHOLE.index("openings:\n")
    read_or_problems(WHOLE[:at] + piece + WHOLE[at + length :])
