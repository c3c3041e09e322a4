"""Lines of bracing: geometry, and unit shear against published and worked figures.

Outside figures: SDPWS Table 4.3A (page of 2008 in a city's record; transcription of 2015); a worked wall of 7/16 in sheathing, 8d
common nails at 6 in, spruce-pine-fir: 308 lbf/ft = 4.50 kN/m for wind, 221 lbf/ft = 3.22 kN/m for earthquake.
A state's table of allowable stress (Massachusetts 780 CMR 2306.3) is half of the earthquake column.
"""

from dataclasses import replace

import pytest

import builders as b
from layerfolio.catalogue.datum import Datum, Origin
from layerfolio.catalogue.unit_shear import PLF, unit_shear_table
from layerfolio.reading.wall_lines import BracingPanel, PanelBoard, PanelFastening, Shank, WallLine
from layerfolio.studies.wall_line import wall_line_study
from layerfolio.units.grammar import parse, parse_dimensions


def mm(text):
    return parse(text, "length")


def pins(nail="2-1/2 in x 0.131 in", edge="6 in", field="12 in", blocked=True, kind="nail", **more):
    shank = Shank(*parse_dimensions(nail), nail)
    return PanelFastening(**{kind: shank, "edge": mm(edge), "field": mm(field), "blocked": blocked} | more)


def line(panels=(("2.4 m", "0 m"), ("1.2 m", "8.4 m")), thickness="7/16 in", grade="sheathing", fastening=None, **more):
    made = [BracingPanel(length=mm(size), at=mm(at) if at else None) for size, at in panels]
    return WallLine(**{
        "assembly": "W1", "length": mm("9.6 m"), "height": mm("2.7 m"), "panels": tuple(made),
        "panel": PanelBoard(grade=grade, thickness=mm(thickness)) if grade else None, "panel_fastening": fastening or pins(),
    } | more)  # fmt: skip


def wall(gravity=0.42, material="spruce-pine-fir"):
    member = b.member(0.2, R=1.5)
    datum = Datum(gravity, Origin("project", "", "", "given")) if gravity else None
    studs = replace(b.layer(1, R=3, d=0.14), member=replace(member, specific_gravity=datum, material=material))
    return b.assembly([studs, b.layer(2, R=0.1, d=0.0111, serves=["bracing"])])


def test_geometry():
    one = wall_line_study("L1", line(), wall())
    assert (one.total_panels, one.share) == (pytest.approx(3.6), pytest.approx(0.375))
    assert one.greatest_gap == pytest.approx(6.0) and one.end_distance == pytest.approx(0) and one.laid_out
    assert one.aspect_ratios == (pytest.approx(1.125), pytest.approx(2.25))
    assert [step.formula.name for step in one.trace.steps()][:3] == ["panels_together", "panel_share", "clear_distance"]


def test_a_panel_that_ends_with_the_line_leaves_nothing():
    """6.9 m and 2.7 m are 9.6 m, whatever floats make of the sum."""
    found = wall_line_study("L1", line(panels=(("2.4 m", "0 m"), ("2.7 m", "6.9 m")), length=mm("9.6 m")), None)
    assert found.ends == (0.0, 0.0) and found.end_distance == 0.0


def test_panels_stand_in_order_of_place():
    one = wall_line_study("L1", line([("1.2 m", "8.2 m"), ("2.4 m", "0.3 m"), ("1 m", "4 m")]), wall())
    assert [at for at, _ in one.panels] == [0.3, 4.0, 8.2]
    assert one.gaps == (pytest.approx(1.3), pytest.approx(3.2)) and one.ends == (0.3, pytest.approx(0.2))
    assert one.end_distance == 0.3


def test_without_places_nothing_is_said_of_gaps():
    one = wall_line_study("L1", line([("2.4 m", None), ("1.2 m", None)]), wall())
    assert one.greatest_gap is None and one.end_distance is None and not one.laid_out and one.gaps == ()
    assert one.panels == ((0.0, 2.4), (pytest.approx(8.4), 1.2)) and any("panels.at" in word for word in one.missing)


def test_a_line_without_panels():
    one = wall_line_study("L1", line([]), wall())
    assert one.total_panels == one.share == 0 and not one.laid_out and "panels" in one.missing


WORKED = [
    ("7/16 in", "2-1/2 in x 0.131 in", "6 in", 308, 221), ("15/32 in", "2-1/2 in x 0.131 in", "6 in", 336, 239),
    ("7/16 in", "2-1/2 in x 0.131 in", "4 in", 451, 322), ("3/8 in", "2 in x 0.113 in", "6 in", 258, 184),
]  # fmt: skip


@pytest.mark.parametrize(("thickness", "nail", "edge", "wind", "seismic"), WORKED)
def test_worked_figures(thickness, nail, edge, wind, seismic):
    found = wall_line_study("L1", line(thickness=thickness, fastening=pins(nail, edge)), wall()).shear
    assert [found.design_wind / PLF, found.design_seismic / PLF] == pytest.approx([wind, seismic], abs=0.6)


def test_308_pounds_a_foot_are_4_50_kilonewtons_a_metre():
    one = wall_line_study("L1", line(), wall())
    assert one.unit_shear == pytest.approx(4500, abs=5) and one.shear.species == pytest.approx(0.92)
    assert "memory" in one.shear.marks[0]


@pytest.mark.parametrize(("gravity", "factor"), [(0.5, 1.0), (0.55, 1.0), (0.49, 0.99), (0.36, 0.86)])
def test_framing_of_little_weight(gravity, factor):
    assert wall_line_study("L1", line(), wall(gravity)).shear.species == pytest.approx(factor)


def test_the_name_of_the_wood_gives_its_specific_gravity():
    assert wall_line_study("L1", line(), wall(None)).shear.gravity == 0.42
    assert wall_line_study("L1", line(), wall(None, "unknown wood")).unit_shear is None


@pytest.mark.parametrize(("size", "factor"), [
    ("1.36 m", 1.0), ("1.35 m", 1.0), ("1.34 m", 1.25 - 0.125 * 2.7 / 1.34), ("0.76 m", None),
])  # fmt: skip
def test_slender_panels(size, factor):
    found = wall_line_study("L1", line([(size, "0 m")]), wall()).shear.aspect
    assert found is None if factor is None else found == pytest.approx(factor)


def test_the_narrowest_panel_of_the_limit_itself():
    assert wall_line_study("L1", line([("2.7 m", "0 m")], height=mm("9.45 m")), wall()).shear.aspect == pytest.approx(0.8125)


NONE = [
    line(fastening=pins(edge="6-1/4 in")), line(fastening=pins(blocked=False)), line(fastening=pins(kind="screw")),
    line(fastening=pins("1-5/8 in x 0.131 in")), line(thickness="1/4 in"), line(grade="fibreboard"),
    line(fastening=pins(field="13 in")), line(fastening=pins("2-1/2 in x 0.09 in")),
]  # fmt: skip


@pytest.mark.parametrize(
    "stated", NONE, ids=["edge", "blocking", "screws", "penetration", "thin", "no row", "field", "thin nail"]
)
def test_outside_the_table_there_is_no_figure(stated):
    assert wall_line_study("L1", stated, wall()).unit_shear is None


@pytest.mark.parametrize("row", unit_shear_table().rows, ids=lambda row: f"{row.grade} {row.thickness:.4f} {row.nail}")
def test_laws_of_the_table(row):
    """Wind is 1.4 times earthquake, rounded to 5; both rise as nails stand closer."""
    for quake, wind in zip(row.seismic, row.wind, strict=True):
        assert abs(1.4 * quake / PLF - wind / PLF) <= 5
    assert list(row.seismic) == sorted(row.seismic) and list(row.spacings) == sorted(row.spacings, reverse=True)


@pytest.mark.parametrize(("thickness", "nail", "figures"), [
    (0.375, "8d", (230, 360, 460, 610)), (0.4375, "8d", (255, 395, 505, 670)), (0.46875, "10d", (340, 510, 665, 870)),
])  # fmt: skip
def test_a_state_s_allowable_figures_are_half_the_nominal(thickness, nail, figures):
    (row,) = [
        one for one in unit_shear_table().rows
        if (one.grade, one.nail) == ("structural I", nail) and one.thickness == pytest.approx(thickness * 0.0254)
    ]  # fmt: skip
    assert [round(one / PLF / 2) for one in row.seismic] == list(figures)
