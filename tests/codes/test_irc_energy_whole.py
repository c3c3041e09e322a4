"""The American energy chapter over the whole house: total UA and what it may not pass, tested leakage, zones at their edges."""

from dataclasses import replace
from types import SimpleNamespace as N

import pytest
from hypothesis import given
from hypothesis import strategies as st

from codes_builders import amendment, cases, quantity
from codes_irc import SETS, house
from codes_irc_energy import BTU, FT2, TEST_REPORT, ending, insulated, judged, of_u, window
from layerfolio import codes
from layerfolio.codes.context import Envelope, context
from layerfolio.codes.envelope import envelope_judged
from layerfolio.codes.findings import Verdict
from layerfolio.codes.paths import with_paths

OPENINGS = cases("irc-openings")
EXAMPLE = OPENINGS["total"]
MEETS, FAILS, ASKS, WAITS, UNASKED = (
    Verdict.MEETS, Verdict.DOES_NOT_MEET, Verdict.NEEDS_JUDGEMENT, Verdict.NEEDS_EVIDENCE, Verdict.NOT_ASKED,
)  # fmt: skip


def example(*, areas=True, **other):
    """The house of the example, each part at the figure of the table unless `other` has it otherwise."""
    u, size = EXAMPLE["figures"] | other, EXAMPLE["parts"]
    parts = [
        of_u(u["wall"], area=size["wall"] if areas else None), of_u(u["ceiling"], area=size["ceiling"], name="C1", kind="ceiling",
                                                                    faces="vented space"),
        of_u(u["floor"], area=size["floor"], name="F1", kind="floor", faces="vented space"),
    ]  # fmt: skip
    openings = [
        window("A1", u=u["windows"], feet=(4.0, 5.0), count=12, gain=0.5),
        window("D1", "door", u=u["doors"], feet=(4.0, 5.0), count=2),
    ]  # fmt: skip
    return parts, openings


def total(parts, openings, **about):
    findings, where = judged(parts, openings, **{"zone": "5B"} | about)
    return ending(findings, "/total-ua"), findings, where


def test_the_sum_of_the_example():
    """219.9 Btu/(h.F), 116.0 W/K."""
    found, *_ = total(*example(wall=0.050))
    assert found.limit.value == pytest.approx(EXAMPLE["watts"], abs=0.05)
    assert found.limit.value / (FT2 * BTU) == pytest.approx(EXAMPLE["sum"], abs=1e-6)
    assert found.provided.value / (FT2 * BTU) == pytest.approx(EXAMPLE["sum"] + 1500 * 0.005)
    assert (found.verdict, found.step, found.path) == (FAILS, "C3", "performance")
    assert found.id == "irc-2021/N1102.1.5/total-ua"


def test_sums_print_with_as_many_digits_as_tell_them_apart():
    found, *_ = total(*example(wall=0.050))
    assert found.given == "120.0 W/K (227.4 Btu/(h·°F))" and found.asked.startswith("116.0 W/K (219.9 Btu/(h·°F)) or less")
    near, *_ = total(*example(wall=0.045001))
    assert near.verdict == FAILS and near.given.split(" ")[0] != near.asked.split(" ")[0]


def test_the_sum_itself_holds_and_answers_the_wall():
    """The wall loses 7.5 Btu/(h.F) too much; the ceiling at .024 - 7.5/1200 gives it back, a thousandth less does not."""
    back = EXAMPLE["figures"]["ceiling"] - 7.5 / 1200
    found, findings, where = total(*example(wall=0.050, ceiling=back))
    assert found.verdict == MEETS
    said = with_paths(findings, where)
    wall, r_values = ending(said, "/walls"), ending(said, "/wall-insulation")
    assert (wall.verdict, wall.answered_by) == (FAILS, found.id) and r_values.answered_by == found.id
    assert "total UA" in wall.chosen and "total UA: meets, C3" in wall.performance
    assert total(*example(wall=0.050, ceiling=back * 1.001))[0].verdict == FAILS


@pytest.mark.parametrize(("path", "papers", "back", "verdict"), [
    ("total UA", (), 1.0, WAITS), ("total UA", (), 1.001, FAILS), (None, (), 1.0, FAILS), ("prescriptive", (), 1.0, FAILS),
    ("performance", (), 1.0, FAILS), ("total UA", None, 1.0, FAILS),
])  # fmt: skip
def test_the_path_that_is_stated_carries_what_it_would_answer(path, papers, back, verdict):
    """The sum of the test above, its windows without a label: it holds and is open, so what it would answer is open too."""
    ceiling = (EXAMPLE["figures"]["ceiling"] - 7.5 / 1200) * back
    parts, openings = example(wall=0.050, ceiling=ceiling)
    openings[0] = window("A1", u=0.3, feet=(4.0, 5.0), count=12, gain=0.5, **({} if papers is None else {"papers": papers}))
    _, findings, where = total(parts, openings)
    where.code.energy_path = path
    said = with_paths(findings, where)
    lines = [ending(said, "/walls"), ending(said, "/wall-insulation")]
    assert [one.verdict for one in lines] == [verdict, verdict]
    for one in lines:
        settled = one.verdict == WAITS
        assert ("settle the line of the total UA" in one.next_step) == settled
        assert one.chosen.startswith("performance: total UA, as the project file says") == settled
        assert bool(one.answered_by) == (papers is None)


def test_nothing_is_summed_where_every_part_reaches_its_figure():
    assert total(*example())[0].verdict == UNASKED


def test_a_wall_within_the_table_of_r_values_asks_for_no_sum():
    parts, openings = example()
    parts[0] = replace(insulated(30, 0), area=parts[0].area)
    found, findings, _ = total(parts, openings)
    assert ending(findings, "/walls").verdict == FAILS and found.verdict == UNASKED


@pytest.mark.parametrize(("basis", "papers", "verdict"), [
    ("declared to EN 14351-1", True, ASKS), ("rated to NFRC 100", False, WAITS), ("rated to NFRC 100", True, UNASKED),
])  # fmt: skip
def test_an_open_part_leaves_open_whether_anything_is_traded(basis, papers, verdict):
    parts, openings = example()
    openings[0] = window("A1", u=0.3, feet=(4.0, 5.0), count=12, basis=basis, **({} if papers else {"papers": ()}))
    found, findings, _ = total(parts, openings)
    assert ending(findings, "/fenestration", "A1").verdict == (MEETS if verdict == UNASKED else verdict)
    assert found.verdict == verdict
    assert ("A1 is open" in found.reason) == (verdict != UNASKED)


def test_an_open_part_that_the_other_table_shows_is_not_waited_for():
    parts, openings = example()
    parts[0] = replace(insulated(30, 0), area=parts[0].area)
    found, findings, _ = total(parts, openings)
    assert found.verdict == UNASKED and ending(findings, "/wall-insulation").verdict == MEETS


def test_a_missing_area_is_named():
    found, *_ = total(*example(wall=0.050, areas=False))
    assert found.verdict == WAITS and "area of W1" in found.next_step and found.given == "not summed"


def test_an_unrated_window_leaves_the_sum_open():
    parts, openings = example(wall=0.050, ceiling=0.010)
    openings[0] = window("A1", u=0.2, feet=(4.0, 5.0), count=12, basis="declared to EN 14351-1")
    found, *_ = total(parts, openings)
    assert found.verdict == ASKS and "A1 is open" in found.reason


def test_solar_heat_gain_is_not_traded():
    parts, openings = example(wall=0.090, ceiling=0.010)
    openings[0] = window("A1", u=0.3, feet=(4.0, 5.0), count=12, gain=0.26)
    found, *_ = total(parts, openings, zone="2A", set_id="irc-2018")
    assert found.verdict == FAILS and "solar heat gain of A1" in found.reason
    openings[0] = window("A1", u=0.3, feet=(4.0, 5.0), count=12, gain=0.25)
    assert total(parts, openings, zone="2A", set_id="irc-2018")[0].verdict == MEETS


@pytest.mark.parametrize("set_id", SETS)
@pytest.mark.parametrize(("zone", "most"), [("4A", 0.48), ("5B", 0.48), ("6A", 0.40), ("7", 0.40), ("8", 0.40), ("3A", None)])
def test_no_trade_passes_the_mean_of_windows(set_id, zone, most):
    """0.48 in zones 4 and 5, 0.40 in 6 to 8; a window of more than 15 ft2 that the walls make good."""
    parts, _ = example(wall=0.010)
    at, over = (
        total(parts, [window(u=u, feet=(8.0, 5.0), gain=0.2)], zone=zone, set_id=set_id)
        for u in (most or 0.6, (most or 0.6) * 1.001)
    )  # fmt: skip
    number = "N1102.6" if set_id == "irc-2024" else "N1102.5"
    means = ending(over[1], "/fenestration-maxima")
    assert (at[0].verdict, over[0].verdict) == (MEETS, FAILS if most else MEETS)
    assert means.verdict == over[0].verdict and means.id == f"{set_id}/{number}/fenestration-maxima"


def test_without_a_trade_no_mean_is_asked():
    _, findings, _ = total(*example())
    assert ending(findings, "/fenestration-maxima").verdict == UNASKED
    findings, _ = judged(*example(), zone="2A", path="performance")
    assert ending(findings, "/fenestration-maxima").verdict == WAITS  # the simulation that would trade comes from elsewhere


def test_no_trade_passes_the_mean_of_skylights():
    parts, _ = example(wall=0.010)
    for u, verdict in ((0.75, MEETS), (0.751, FAILS)):
        assert total(parts, [window("S1", "skylight", u=u, feet=(8.0, 5.0))], zone="6A")[0].verdict == verdict


def test_the_slabs_of_2024_enter_the_sum_by_their_perimeter():
    parts, openings = example(wall=0.050, ceiling=0.010, windows=0.28, doors=0.28)
    slab = insulated(0, 0, kind="slab", faces="ground", framed=False, name="S1", ground={"heated": False, "depth": 0.0})
    assert total([*parts, slab], openings, set_id="irc-2024")[0].verdict == ASKS
    assert total([*parts, slab], openings, set_id="irc-2021")[0].verdict == MEETS
    said = with_paths(*total([*parts, slab], openings, set_id="irc-2021")[1:])
    assert ending(said, "/slab-insulation").answered_by == ""  # a slab is no part of the sum of 2021


def test_a_hatch_counts_as_what_it_lies_in():
    parts, openings = example()
    hatch = window("H1", "hatch", u=0.1, feet=(2.5, 2.0), wall="C1", basis="tested")
    where = house("5B")
    where.assemblies, where.documents, where.code.energy_path = {}, (), None
    from codes_builders import studies

    found = studies(*parts)
    about = context(where, Envelope({n: x[0] for n, x in found.items()}, {}, {one.name: one for one in (*openings, hatch)}))
    row = next(one for one in envelope_judged(about).rows if one.name == "H1")
    assert row.asked == pytest.approx(0.024 * BTU) and row.provided == pytest.approx(0.1 * BTU)


@given(st.floats(0.02, 0.2), st.floats(0.01, 0.1), st.floats(0.1, 0.5))
def test_the_sum_decides(wall, ceiling, windows):
    found, *_ = total(*example(wall=wall, ceiling=ceiling, windows=windows), set_id="irc-2021")
    lost = 1500 * wall + 1200 * ceiling + 240 * windows + 1200 * 0.033 + 40 * 0.30
    if found.verdict == MEETS:
        assert lost <= EXAMPLE["sum"] * (1 + 1e-8)
    elif found.verdict == FAILS:
        assert lost > EXAMPLE["sum"] or windows * 240 + 0.3 * 40 > 0.48 * 280


def test_an_amended_figure_enters_the_sum():
    change = amendment("irc-2021/N1102.1.2/walls", f"{0.060 * BTU} W/(m2.K)")
    found, *_ = total(*example(wall=0.061), amendments=[change])
    assert found.limit.value / (FT2 * BTU) == pytest.approx(EXAMPLE["sum"] + 1500 * 0.015)


# Air leakage


@pytest.mark.parametrize(("set_id", "article", "words", "by_model"), [
    ("irc-2021", "N1101.13.5", "one of the packages", WAITS), ("irc-2024", "N1108", "10 credits, from at least two", UNASKED),
])  # fmt: skip
def test_additional_efficiency_is_not_forgotten(set_id, article, words, by_model):
    """2021, N1101.13.5: of every path (Colorado); 2024, N1101.13.1: of the prescriptive path (a federal copy)."""
    lines = (judged(*example(), set_id=set_id, path=path)[0] for path in (None, "performance"))
    found = [ending(one, "/additional-efficiency") for one in lines]
    assert [one.verdict for one in found] == [WAITS, by_model]
    assert words in found[0].asked and found[0].id == f"{set_id}/{article}/additional-efficiency"
    assert not any(one.id.endswith("additional-efficiency") for one in judged(*example(), set_id="irc-2018")[0])


@pytest.mark.parametrize(("set_id", "clause"), [
    ("irc-2018", "N1102.4.1.1"), ("irc-2021", "N1102.4.1.1"), ("irc-2024", "N1102.5.1.1"),
])  # fmt: skip
def test_every_junction_of_the_air_barrier_waits_for_its_detail(set_id, clause):
    found = ending(judged(*example(), set_id=set_id)[0], "/air-sealing")
    assert (found.verdict, found.clause, found.topic) == (WAITS, clause, "air") and "seams" in found.next_step


def leakage(aim, zone="6A", set_id="irc-2021", documents=(), **about):
    about = {"floor_area": 300} | about
    return ending(judged(zone=zone, set_id=set_id, aim=aim, documents=documents, **about)[0], "/air-leakage")


LEAKAGE = [
    (set_id, zone, limit)
    for set_id, tables in OPENINGS["sets"].items()
    for zone, limit in zip(OPENINGS["zones"], tables["leakage"], strict=True)
]


@pytest.mark.parametrize(("set_id", "zone", "limit"), LEAKAGE)
def test_every_cell_of_air_leakage(set_id, zone, limit):
    """IRC 2021 (N1102.4.1.3) and 2024 (N1102.5.1.3) as adopted; 2018 rests on memory and decides nothing."""
    at, over = leakage(limit, zone, set_id), leakage(limit + 0.01, zone, set_id)
    assert at.verdict == WAITS and f"{limit:.1f} air changes" in at.asked and "ASTM E779" in at.next_step
    assert over.verdict == (ASKS if set_id == "irc-2018" else FAILS)
    for measured, verdict in ((limit, MEETS), (limit + 0.01, FAILS)):
        tested = leakage(limit, zone, set_id, documents=(TEST_REPORT,), measured=measured)
        assert tested.verdict == (ASKS if set_id == "irc-2018" else verdict)
    assert leakage(limit, zone, set_id, documents=(TEST_REPORT,)).verdict == WAITS


def test_an_aim_with_a_report_whose_result_nobody_states_waits():
    """IRC 2021, N1102.4.1.3: the leakage is that of the test, not the one aimed at."""
    old = N(**{**vars(TEST_REPORT), "edition": "2020"})
    for report in (TEST_REPORT, old):
        found = leakage(1.5, documents=(report,))
        assert found.verdict == WAITS and "measured_air_changes_at_50_pa" in found.next_step and "BD-1" in found.reason


@pytest.mark.parametrize(("aim", "measured", "verdict"), [
    (None, 3.0, MEETS), (5.0, 3.0, MEETS), (2.0, 3.01, FAILS), (3.0, None, WAITS), (3.01, None, FAILS), (None, 3.01, FAILS),
])  # fmt: skip
def test_the_measured_leakage_stands_before_the_aim(aim, measured, verdict):
    assert leakage(aim, measured=measured, documents=(TEST_REPORT,)).verdict == verdict


def test_only_an_attached_valid_report_shows_the_leakage():
    named = N(**{**vars(TEST_REPORT), "file": None})
    late = N(**{**vars(TEST_REPORT), "expires": "2026-01-01"})
    other = N(**{**vars(TEST_REPORT), "for_": ("bracing",)})
    found = [leakage(1.5, documents=(one,), measured=1.4).verdict for one in (TEST_REPORT, named, late, other)]
    assert found == [MEETS, WAITS, WAITS, WAITS]
    assert "not attached" in leakage(1.5, documents=(named,), measured=1.4).reason
    assert leakage(1.5, measured=1.4).verdict == WAITS
    assert leakage(None).verdict == WAITS and "air_changes_at_50_pa" in leakage(None).next_step


@pytest.mark.parametrize(("feet", "verdict"), [(1500, ASKS), (1500.1, FAILS)])
def test_small_dwellings_may_be_tested_by_their_enclosure(feet, verdict):
    assert leakage(3.1, floor_area=feet * FT2).verdict == verdict
    assert leakage(2.6, set_id="irc-2024", floor_area=feet * FT2).verdict == verdict


def test_leakage_in_an_open_zone():
    assert leakage(4.0, None).verdict == ASKS and leakage(6.0, None).verdict == FAILS and leakage(2.0, None).verdict == WAITS


# Zones


@pytest.mark.parametrize("set_id", SETS)
@pytest.mark.parametrize(("degree_days", "zone", "above"), [
    (3000, "4", "5"), (4000, "5", "6"), (5000, "6", "7"), (7000, "7", "8"),
])  # fmt: skip
def test_the_upper_end_of_a_zone_belongs_to_it(set_id, degree_days, zone, above):
    """Table R301.3: 5400, 7200, 9000 and 12 600 F-days, included; another code's zones begin at the same figures."""
    found = {}
    for days in (degree_days, degree_days + 0.1):
        where = house(None, set_id, degree_days=days)
        where.climate.cooling_degree_days = quantity(1000, "degree_days")
        found[days] = ending(codes.judge(where, {}), "/zone")
    first, second = found.values()
    assert first.reason == f"the degree-days give zone {zone}" and second.reason == f"the degree-days give zone {above}"


@pytest.mark.parametrize(("heating", "cooling"), [(3500, 3500), (100, 6000)])
def test_points_that_the_table_of_2021_leaves_out_are_a_question(heating, cooling):
    where = house(None, "irc-2021", degree_days=heating)
    where.climate.cooling_degree_days = quantity(cooling, "degree_days")
    found = ending(codes.judge(where, {}), "/zone")
    assert found.verdict == ASKS and "do not settle" in found.reason and "prints no zone there" in found.reason
    assert "authority" in found.next_step and "degree_days" not in found.next_step
    where.code.zone, where.code.zone_source = "5A", "county list, Larkmere County (invented)"
    assert ending(codes.judge(where, {}), "/zone").verdict == MEETS


@pytest.mark.parametrize(("set_id", "heating", "cooling", "word"), [
    ("irc-2021", 10, 6001, "zone 0"), ("irc-2024", 10, 6001, "zone 0"), ("irc-2018", 1000, 2500, "3C where"),
])  # fmt: skip
def test_degree_days_without_a_zone_send_to_the_authority(set_id, heating, cooling, word):
    where = house(None, set_id, degree_days=heating)
    where.climate.cooling_degree_days = quantity(cooling, "degree_days")
    found = ending(codes.judge(where, {}), "/zone")
    assert found.verdict == ASKS and word in found.reason and "authority" in found.next_step
    assert "heating_degree_days" not in found.next_step


def test_only_what_is_not_given_is_asked_for():
    found = ending(codes.judge(house(None, "irc-2021", degree_days=3500), {}), "/zone")
    assert "climate.cooling_degree_days" in found.next_step and "heating" not in found.next_step


@pytest.mark.parametrize("listed", ["", "county list (invented)"])
def test_a_zone_without_its_letter_says_what_to_write(listed):
    where = house("5", degree_days=3500)
    where.climate.cooling_degree_days, where.code.zone_source = quantity(900, "degree_days"), listed
    found = ending(codes.judge(where, {}), "/zone")
    assert found.verdict == ASKS and "write 5A, 5B or 5C" in found.next_step
    where.code.zone = "5B"
    assert ending(codes.judge(where, {}), "/zone").verdict == MEETS


@pytest.mark.parametrize("zone", ["5", "5A"])
def test_what_needs_judgement_is_never_said_to_be_asked_nothing(zone):
    findings, _ = judged([], [window(gain=0.5)], zone=zone)
    found = ending(findings, "/solar-gain")
    assert found.verdict == ASKS and "0.40 or less by Table N1102.1.3" in found.asked
    assert ("write 5A, 5B or 5C" in found.next_step) == (zone == "5")


@pytest.mark.parametrize("set_id", SETS)
def test_the_county_list_settles_the_zone(set_id):
    """N1101.7: the list first; what the degree-days give is said beside it and judged no more."""
    where = house("4C", set_id, degree_days=4500)
    where.climate.cooling_degree_days = quantity(900, "degree_days")
    where.code.zone_source = "county list (invented)"
    findings = codes.judge(where, {})
    found = ending(findings, "/zone")
    assert found.verdict == MEETS and "county list" in found.reason and "zone 6" in found.reason
    assert "zone 4C" in ending(findings, "/air-leakage").asked


@pytest.mark.parametrize(("set_id", "walls", "floors"), [
    ("irc-2018", 0.060, 0.033), ("irc-2021", 0.045, 0.033), ("irc-2024", 0.045, 0.033),
])  # fmt: skip
def test_marine_zones_take_their_own_rows(set_id, walls, floors):
    """Marine 4 is asked as zone 5; marine 3 and 5 as their numbers."""
    for zone, twin in (("4C", "5A"), ("5C", "5A"), ("3C", "3A")):
        for end, shape in (("/walls", {}), ("/floors", {"kind": "floor", "faces": "vented space"})):
            limits = [ending(judged([of_u(0.05, **shape)], zone=z, set_id=set_id)[0], end).limit.value for z in (zone, twin)]
            assert limits[0] == limits[1]
    assert ending(judged([of_u(walls)], zone="4C", set_id=set_id)[0], "/walls").verdict == MEETS
    floor = of_u(floors, kind="floor", faces="vented space")
    assert ending(judged([floor], zone="4C", set_id=set_id)[0], "/floors").verdict == MEETS


@pytest.mark.parametrize("set_id", SETS)
def test_every_energy_requirement_is_found_once_for_each_subject(set_id):
    shapes = [(kind, faces) for kind in ("wall", "roof", "ceiling", "floor", "slab", "foundation-wall")
              for faces in ("outside air", "vented space", "unheated space", "ground")]  # fmt: skip
    parts = [insulated(13, 5, kind=kind, faces=faces, name=f"P{n}", area=100) for n, (kind, faces) in enumerate(shapes)]
    kinds = ("window", "door", "skylight", "hatch", "glass-block", "vehicle-door")
    openings = [window(f"A{n}", kind, u=0.4, gain=0.3, wall="P0") for n, kind in enumerate(kinds)]
    findings, _ = judged(parts, openings, set_id=set_id)
    energy = [one for one in findings if "/N1102" in one.id]
    keys = [(one.id, one.assembly) for one in energy]
    assert len(keys) == len(set(keys))
    for one in codes.requirements.requirements(set_id):
        if "/N1102" in one.id:
            subjects = [p.name for p in parts if one.asks(p)] + [x.name for x in openings if x.kind in one.of_openings]
            assert {key[1] for key in keys if key[0] == one.id} == set(subjects or [None]), one.id
