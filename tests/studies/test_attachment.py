"""Dead load and attachment of small walls: by hand, laws, and where the method ends."""

from dataclasses import replace
from types import SimpleNamespace as N

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import builders as b
from codes_builders import quantity
from codes_irc import wall
from layerfolio.studies.attachment import attachment
from layerfolio.studies.attachment_inputs import over_studs
from layerfolio.studies.dead_load import dead_load
from layerfolio.studies.fastener_kinds import kind_of
from layerfolio.studies.joint import joint
from structure_walls import INCH, LBF, PSF, board, cladding, fasteners, furring, hung, long_enough, studs

SITE = N(site_loads=None)


def screws(length=3.0, **more):
    return fasteners("screw", length=length, **more)


def test_dead_load_by_hand():
    """Cladding 10 psf; battens 64 mm at 600 mm, 500 kg/m3, 38 mm; board 30 kg/m3; studs 20 % of 140 mm, batts 40 kg/m3."""
    one = wall(cladding(10), furring(screws(), thickness=38 / 25.4, apart=600 / 25.4, width=64 / 25.4),
               board(2.0), studs(depth=140 / 25.4), b.layer(9, kind="membrane", s_d=5, name="sheet"))  # fmt: skip
    found = dead_load(one)
    parts = [10 * PSF, 64 / 600 * 500 * 9.80665 * 0.038, 30 * 9.80665 * 0.0508, 9.80665 * 0.14 * (0.2 * 500 + 0.8 * 40), 0.0]
    assert [x.load for x in found.layers] == pytest.approx(parts)
    assert found.total == pytest.approx(sum(parts)) and found.on_fasteners == pytest.approx(sum(parts[:2]))
    assert found.layers[3].of_members == pytest.approx(9.80665 * 0.14 * 0.2 * 500)


def test_dead_load_is_unknown_while_a_density_is_missing():
    one = hung(screws(), boards=(replace(board(1), density=None),))
    found = dead_load(one)
    assert found.total is None and found.missing == ("board",) and found.on_fasteners == pytest.approx(10 * PSF)
    bare = wall(replace(cladding(10), density=None), furring(screws()), board(1), studs())
    assert dead_load(bare).on_fasteners is None
    assert any("density of layer 1" in one for one in attachment(bare, SITE).missing)


@settings(max_examples=40, deadline=None)
@given(st.lists(st.tuples(st.floats(0.001, 0.3), st.floats(10, 2500)), min_size=1, max_size=8))
def test_dead_load_is_the_sum_in_any_order(parts):
    layers = [replace(b.layer(9, R=1, d=d, mu=1, name=f"l{i}"), density=b.datum(rho)) for i, (d, rho) in enumerate(parts)]
    forth, back = dead_load(wall(*layers)), dead_load(wall(*reversed(layers)))
    assert forth.total == pytest.approx(back.total) == pytest.approx(sum(d * rho for d, rho in parts) * 9.80665)
    assert forth.on_fasteners is None


def test_what_hangs_and_what_is_crossed():
    found = joint(hung(screws()))
    assert [x.name for x in found.hung] == ["cladding", "furred space"] and [x.name for x in found.crossed] == ["board"]
    assert not found.direct and found.foam and found.main.name == "batts" and found.carrier is found.side
    assert found.gap == pytest.approx(INCH) and found.penetration == pytest.approx(1.25 * INCH)


def test_fasteners_on_the_board_are_those_of_the_furring():
    one = wall(cladding(10), furring(None), replace(board(1), fasteners=screws()), studs())
    assert joint(one).carrier.name == "board" and attachment(one, SITE).capacity_lateral > 0


def test_no_insulation_outside_no_joint():
    assert joint(wall(cladding(10), furring(screws()), studs())) is None
    assert attachment(wall(cladding(10), furring(screws()), studs()), SITE) is None


def test_cladding_nailed_straight_through():
    nailed = replace(cladding(3, family="timber-board"), fasteners=fasteners("nail", length=4.0), timber=True,
                     specific_gravity=b.datum(0.42))  # fmt: skip
    one = joint(wall(nailed, board(1), studs()))
    assert one.direct and one.side.name == "cladding"
    found = attachment(wall(nailed, board(1), studs()), SITE)
    assert found.capacity_lateral > 0 and found.side_thickness == pytest.approx(0.02)
    stone = replace(nailed, timber=False)
    assert "not wood" in attachment(wall(stone, board(1), studs()), SITE).refused[0]


def test_demand_by_hand():
    found = attachment(hung(screws(spacing=12, rows=16), weight=11), SITE)
    assert found.demand == pytest.approx(11 * 12 * 16 / 144 * LBF, rel=1e-6)
    assert found.weight == pytest.approx(11 * PSF)


@settings(max_examples=30, deadline=None)
@given(st.floats(4, 24), st.floats(1.05, 3), st.floats(2, 30))
def test_demand_is_linear_in_spacing_and_weight(spacing, times, weight):
    one, wide = (attachment(hung(screws(spacing=spacing * k), weight=weight), SITE) for k in (1, times))
    heavy = attachment(hung(screws(spacing=spacing), weight=weight * times), SITE)
    assert wide.demand == pytest.approx(one.demand * times) == pytest.approx(heavy.demand)
    assert wide.capacity_lateral == one.capacity_lateral


@settings(max_examples=30, deadline=None)
@given(st.floats(0.5, 3), st.floats(0.1, 2))
def test_more_board_less_capacity(depth, more):
    found = [attachment(hung(screws(9.0), depth=d), SITE).capacity_lateral for d in (depth, depth + more)]
    assert found[1] < found[0]


def test_everything_crossed_is_gap_and_wood_panels_bear_nothing():
    panel = replace(b.layer(9, R=0.1, d=0.011, mu=60, family="plywood", name="panel"), density=b.datum(500))
    one = hung(screws(4.0), boards=(board(1), panel))
    assert joint(one).gap == pytest.approx(INCH + 0.011) and joint(one).panel_depth == pytest.approx(0.011) and joint(one).foam
    assert attachment(one, SITE).capacity_lateral < attachment(hung(screws(4.0)), SITE).capacity_lateral


@pytest.mark.parametrize(("least", "governed", "refused"), [
    (1.0, True, False), (0.98, False, True), (1.13, True, False),
])  # fmt: skip
def test_the_published_row_governs_over_six_diameters_on_foam(least, governed, refused):
    """A No. 10 screw: 1 in in the published table, 6 D = 1.14 in otherwise."""
    found = attachment(hung(screws(long_enough(least=least))), SITE)
    assert bool(found.refused) == refused and (found.capacity_lateral is None) == refused
    assert any("published row" in getattr(x, "because", "") for x in found.trace.entries) == governed


@pytest.mark.parametrize(("least", "refused"), [(1.139, True), (1.141, False)])
def test_six_diameters_on_other_boards(least, refused):
    one = hung(screws(long_enough(least=least)), boards=(board(1, family="wood-fibre"),))
    found = attachment(one, SITE)
    assert bool(found.refused) == refused
    if refused:
        assert "to be designed by a licensed professional" in found.trace.entries[-1].because


@pytest.mark.parametrize(("least", "counted"), [(1.89, 1.89 - 0.38), (1.901, 1.901)])
def test_the_tip_is_left_out_below_ten_diameters(least, counted):
    found = attachment(hung(screws(long_enough(least=least)), boards=(board(1, family="wood-fibre"),)), SITE)
    step = next(x for x in found.trace.steps() if x.formula.name == "yield_main")
    assert dict(step.arguments)["l_m"] == pytest.approx(counted * INCH)


def test_no_more_than_the_depth_of_the_stud_counts():
    found = attachment(hung(screws(12.0)), SITE)
    step = next(x for x in found.trace.steps() if x.formula.name == "yield_main")
    assert dict(step.arguments)["l_m"] == pytest.approx(5.5 * INCH)


@pytest.mark.parametrize(("pins", "word"), [
    (fasteners("screw", length=None), "fasteners.length"), (replace(screws(), root=None), "fasteners.root_diameter"),
    (replace(screws(), outer=None), "fasteners.diameter"), (screws(spacing=None), "fasteners.spacing"),
    (screws(words=" "), "fasteners.kind"), (None, "fasteners of layer"),
])  # fmt: skip
def test_what_is_missing_is_named_and_nothing_is_calculated(pins, word):
    pins = replace(pins, kind="") if pins is not None and pins.kind == " " else pins
    found = attachment(hung(pins), SITE)
    assert any(word in one for one in found.missing)
    assert found.capacity_lateral is None and found.modes == () and found.withdrawal_capacity is None


@pytest.mark.parametrize(("one", "word"), [
    (hung(screws(words="staple")), "only nails"), (hung(screws(outer=0.35, root=0.3)), "table of steels"),
    (hung(fasteners("nail", outer=0.09, length=4)), "table of steels"), (hung(screws(), wood=0.30), "0.3"),
    (hung(screws(), studs_wood=0.74), "0.74"), (hung(screws(1.7)), "do not reach"),
    (wall(cladding(10), furring(screws(), apart=16), board(1), studs(apart=24)), "does not lie over studs"),
    (replace(hung(screws()), kind="roof", slope=30.0), "only walls"),
])  # fmt: skip
def test_where_the_method_ends_it_refuses(one, word):
    found = attachment(one, SITE)
    assert any(word in words for words in found.refused) and found.capacity_lateral is None
    assert any("licensed professional" in getattr(x, "because", "") for x in found.trace.entries)


def test_a_report_of_the_fastener_stands_for_the_table_of_steels():
    own = b.datum(900e6)
    found = attachment(hung(screws(outer=0.315, root=0.21, bending_yield=own)), SITE)
    assert not found.refused and found.capacity_lateral > 0


def test_a_wood_without_its_stamp_is_taken_and_said():
    frame = studs(gravity=None, material="hem-fir")
    one = wall(cladding(10), furring(screws(), gravity=None, material="spruce"), board(1), frame)
    found = attachment(one, SITE)
    said = [x.because for x in found.trace.entries if "species group" in getattr(x, "text", "")]
    assert len(said) == 1 and "Spruce-Pine-Fir" in said[0]
    unknown = wall(cladding(10), furring(screws(), gravity=None, material="oak"), board(1), studs())
    assert attachment(unknown, SITE).missing == ("specific_gravity of Battens",)


def test_withdrawal_is_compared_only_with_a_given_suction():
    one = hung(screws())
    assert attachment(one, SITE).withdrawal_demand is None
    windy = N(site_loads=N(wind_suction=quantity(1000.0, "pressure")))
    assert attachment(one, windy).withdrawal_demand == pytest.approx(1000 * (16 * INCH) ** 2)
    hourly = N(site_loads=N(wind_pressure_1_50=quantity(450.0, "pressure")))
    assert attachment(one, hourly).withdrawal_demand is None


def test_withdrawal_capacity_by_hand():
    """No. 10 screw, G 0.42, 1 in: 95.5 lb (worked out apart)."""
    found = attachment(hung(screws(long_enough())), SITE)
    assert found.withdrawal_capacity / LBF == pytest.approx(95.5, abs=0.1)


@pytest.mark.parametrize(("furring_at", "studs_at", "over"), [
    (0.4064, 0.4064, True), (0.6, 0.6, True), (0.8, 0.4, True), (0.6, 0.4, False), (0.4, 0.6, False), (0.61, 0.6, True),
])  # fmt: skip
def test_furring_over_studs(furring_at, studs_at, over):
    assert over_studs(furring_at, studs_at) == over


def test_kinds():
    assert [kind_of(x) for x in ("16d common nail", "Lag screw", "wood screw, partial thread", "tie", "")] == [
        "nail", "lag", "screw", "", "",
    ]  # fmt: skip
