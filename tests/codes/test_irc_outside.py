"""What lies outside a retarder: vented cladding, continuous insulation, spray foam, a second tight layer (IRC R702.7)."""

from dataclasses import replace

import pytest

import builders as b
from codes_builders import amendment, cases
from codes_irc import PERM, RSI, SETS, air, board, cladding, found, house, panel, sheathing, studs
from layerfolio.catalogue.datum import Document
from layerfolio.codes.findings import Verdict

CASES = cases("irc-retarders")
FAMILY = {"wood": "plywood", "fibreboard": "wood-fibre", "gypsum": "gypsum"}
DEPTHS = (0.089, 0.140)
THIRD = [(set_id, zone, row) for set_id in SETS for zone, row in CASES["class_iii"][set_id].items()]


@pytest.mark.parametrize(("set_id", "zone", "row"), THIRD, ids=str)
@pytest.mark.parametrize("over", FAMILY)
def test_vented_cladding_over_each_sheathing(set_id, zone, row, over):
    """Vinyl or aluminium siding, which every edition names."""
    siding = replace(cladding(name="siding"), material="siding-hollow-backed", counts=True)
    one = found(
        "/vapour-retarder", siding, sheathing(FAMILY[over]), studs(), panel(5), zone=zone, set_id=set_id,
    )  # fmt: skip
    assert one.verdict == (Verdict.MEETS if over in row["over"] else Verdict.DOES_NOT_MEET), one.reason


@pytest.mark.parametrize(("set_id", "verdict"), [
    ("irc-2018", Verdict.NEEDS_JUDGEMENT), ("irc-2021", Verdict.NEEDS_JUDGEMENT), ("irc-2024", Verdict.MEETS),
])  # fmt: skip
def test_boards_on_furring_rest_on_acceptance_before_2024(set_id, verdict):
    """The printed list of 2018 and 2021 does not name them; 2024 adds rainscreen systems."""
    one = found("/vapour-retarder", cladding(), air(), sheathing(), studs(), panel(5), zone="5A", set_id=set_id)
    assert one.verdict == verdict
    assert ("accepted as vented" in one.next_step) == (verdict == Verdict.NEEDS_JUDGEMENT)


@pytest.mark.parametrize(("depth", "verdict"), [(0.025, Verdict.MEETS), (0.0249, Verdict.DOES_NOT_MEET)])
def test_brick_with_a_clear_air_space(depth, verdict):
    """Table R703.8.4(1): nominally 1 in."""
    brick = replace(cladding("masonry", "brick"), counts=True)
    gap = air(depth, counts=True, kind="unventilated")
    assert found("/vapour-retarder", brick, gap, sheathing(), studs(), panel(5), zone="5A").verdict == verdict


def test_membranes_do_not_part_cladding_and_sheathing_but_insulation_does():
    film = b.layer(9, kind="membrane", s_d=0.05, family="membrane", name="housewrap")
    vented = (cladding("masonry", "brick"), air())
    assert found("/vapour-retarder", *vented, film, sheathing(), studs(), panel(5), zone="5A").verdict == Verdict.MEETS
    wool = board(1, family="mineral-board")
    parted = found("/vapour-retarder", *vented, wool, sheathing(), studs(), panel(5), zone="5A")
    assert parted.verdict == Verdict.DOES_NOT_MEET and ") is none of them" in parted.reason and "board (layer" in parted.reason


def test_a_wall_without_outer_sheathing_is_not_in_the_table():
    one = found("/vapour-retarder", cladding("masonry", "brick"), air(), studs(), panel(5), zone="5A", set_id="irc-2024")
    assert one.verdict == Verdict.DOES_NOT_MEET


@pytest.mark.parametrize(("set_id", "zone", "row"), THIRD, ids=str)
@pytest.mark.parametrize("frame", [0, 1], ids=["2x4", "2x6"])
def test_continuous_insulation_over_each_frame_on_both_sides(set_id, zone, row, frame):
    def at(R):
        layers = (board(R, family="mineral-board"), sheathing(), studs(DEPTHS[frame]), panel(5))
        return found("/vapour-retarder", *layers, zone=zone, set_id=set_id)

    limit = row["insulation"][frame]
    enough, short = at(limit), at(limit - 0.01)
    assert (enough.verdict, short.verdict) == (Verdict.MEETS, Verdict.DOES_NOT_MEET), short.reason
    assert ("2x4", "2x6")[frame] in short.reason and f"{limit:g} ft²·°F·h/Btu" in enough.reason


def test_the_papers_edges():
    """Marine 4, 2x6: 3.7 is not enough, 3.75 is; vented cladding over strand board is."""

    def marine(*outer):
        return found("/vapour-retarder", *outer, sheathing("strand-board"), studs(), panel(5), zone="4C").verdict

    assert marine(board(3.7)) == Verdict.DOES_NOT_MEET and marine(board(3.75)) == Verdict.MEETS
    assert marine(cladding("masonry", "brick"), air()) == Verdict.MEETS
    assert found("/vapour-retarder", sheathing(), studs(), panel(5), zone="4A").verdict == Verdict.MEETS


@pytest.mark.parametrize(("depth", "R", "verdict"), [
    (0.092, 7.5, Verdict.MEETS), (0.093, 7.5, Verdict.DOES_NOT_MEET), (0.120, 11.25, Verdict.MEETS),
    (0.143, 11.25, Verdict.MEETS), (0.184, 11.25, Verdict.NEEDS_JUDGEMENT), (0.184, 11.2, Verdict.DOES_NOT_MEET),
])  # fmt: skip
def test_depth_of_the_framing(depth, R, verdict):
    """Between the rows the deeper one; deeper than 2x6 the table has none, and less than its last row is too little."""
    assert found("/vapour-retarder", board(R), sheathing(), studs(depth), panel(5), zone="6A").verdict == verdict


@pytest.mark.parametrize(("R", "verdict"), [
    (11.25, Verdict.MEETS), (11.2, Verdict.NEEDS_JUDGEMENT), (7.5, Verdict.NEEDS_JUDGEMENT),
])  # fmt: skip
def test_framing_that_is_not_stated(R, verdict):
    one = found("/vapour-retarder", board(R), sheathing(), studs(framed=False), panel(5), zone="6A")
    assert one.verdict == verdict
    if verdict == Verdict.NEEDS_JUDGEMENT:
        assert "framing" in one.next_step


def test_resistance_from_memory_outside_does_not_carry_it():
    layers = (board(8, mark="memory"), board(4, name="other"), sheathing(), studs(), panel(5))
    assert found("/vapour-retarder", *layers, zone="6A").verdict == Verdict.NEEDS_EVIDENCE
    generous = (board(1, mark="memory"), board(12, name="other"), sheathing(), studs(), panel(5))
    assert found("/vapour-retarder", *generous, zone="6A").verdict == Verdict.MEETS


def test_the_authority_may_state_its_own_resistance():
    change = amendment("irc-2021/R702.7/class-iii-conditions", "R-9", "ordinance 9")
    for R, verdict in ((9, Verdict.MEETS), (8.99, Verdict.DOES_NOT_MEET)):
        where = house("6A", amendments=[change])
        assert found("/vapour-retarder", board(R), sheathing(), studs(), panel(5), where=where).verdict == verdict


# Spray foam (R702.7.1)


FOAM_REPORT = Document(number="SF-1", issuer="a laboratory", proves=("permeance",))


def sprayed(R, perm=1.4, documents=(FOAM_REPORT,)):
    made = studs(0.025, R * RSI, name="foam", family="foam")
    vapour = b.layer(9, permeance=(perm * PERM, perm * PERM)).vapour
    return replace(made, vapour=vapour, documents=documents)


@pytest.mark.parametrize(("set_id", "verdict"), [
    ("irc-2018", Verdict.DOES_NOT_MEET), ("irc-2021", Verdict.MEETS), ("irc-2024", Verdict.MEETS),
])  # fmt: skip
def test_spray_foam_is_added_to_boards_since_2021(set_id, verdict):
    """Zone 6, foam of R 6.5 and 1.4 perm with boards of R 5 over 2x6: 11.5 reaches 11.25; in 2018 the foam counts alone."""
    layers = (board(5), sheathing(), sprayed(6.5), studs(0.115), panel(5))
    assert found("/vapour-retarder", *layers, zone="6A", set_id=set_id).verdict == verdict
    alone = (sheathing(), sprayed(11.25), studs(0.115), panel(5))
    assert found("/vapour-retarder", *alone, zone="6A", set_id=set_id).verdict == Verdict.MEETS


@pytest.mark.parametrize(("perm", "verdict"), [(1.5, Verdict.MEETS), (1.51, Verdict.DOES_NOT_MEET)])
def test_spray_foam_is_tight_enough(perm, verdict):
    layers = (sheathing(), sprayed(11.3, perm), studs(0.115), panel(5))
    assert found("/vapour-retarder", *layers, zone="6A").verdict == verdict


def test_spray_foam_lies_against_a_sheathing_and_proves_its_permeance():
    away = (sheathing("mineral-board"), sprayed(11.3), studs(0.115), panel(5))
    assert found("/vapour-retarder", *away, zone="6A").verdict == Verdict.DOES_NOT_MEET
    unproved = (sheathing(), sprayed(11.3, documents=()), studs(0.115), panel(5))
    one = found("/vapour-retarder", *unproved, zone="6A")
    assert one.verdict == Verdict.NEEDS_EVIDENCE and "foam" in one.next_step


# A tight retarder with foam boards (Table R702.7(4))


@pytest.mark.parametrize(("zone", "limits"), CASES["with_foam"]["rows"].items(), ids=str)
@pytest.mark.parametrize("frame", [0, 1], ids=["2x4", "2x6"])
@pytest.mark.parametrize("set_id", ["irc-2021", "irc-2024"])
def test_foam_outside_a_class_ii_retarder_on_both_sides(set_id, zone, limits, frame):
    def at(R):
        layers = (board(R), sheathing(), studs(DEPTHS[frame]), panel(0.8, 2.4))
        return found("/retarder-with-foam", *layers, zone=zone, set_id=set_id)

    enough, short = at(limits[frame]), at(limits[frame] - 0.01)
    assert (enough.verdict, short.verdict) == (Verdict.MEETS, Verdict.DOES_NOT_MEET)
    assert enough.limit.value == pytest.approx(limits[frame] * RSI) == pytest.approx(enough.provided.value)


@pytest.mark.parametrize(("set_id", "wet", "verdict"), [
    ("irc-2021", 1.0, Verdict.DOES_NOT_MEET), ("irc-2021", 1.0001, Verdict.MEETS),
    ("irc-2024", 1.0, Verdict.MEETS), ("irc-2024", 0.999, Verdict.DOES_NOT_MEET),
])  # fmt: skip
def test_the_retarder_behind_foam_opens_by_the_wet_cup(set_id, wet, verdict):
    layers = (board(5), sheathing(), studs(), panel(0.8, wet))
    assert found("/retarder-with-foam", *layers, zone="6A", set_id=set_id).verdict == verdict


@pytest.mark.parametrize(("set_id", "verdict"), [("irc-2021", Verdict.NOT_ASKED), ("irc-2024", Verdict.DOES_NOT_MEET)])
def test_class_i_behind_foam_is_asked_since_2024(set_id, verdict):
    layers = (board(20), sheathing(), studs(), panel(0.05))
    assert found("/retarder-with-foam", *layers, zone="6A", set_id=set_id).verdict == verdict


def test_foam_table_where_it_is_not_asked():
    wool = (board(5, family="mineral-board"), sheathing(), studs(), panel(0.8))
    assert found("/retarder-with-foam", *wool).verdict == Verdict.NOT_ASKED
    assert found("/retarder-with-foam", board(5), sheathing(), studs(), panel(5)).verdict == Verdict.NOT_ASKED
    assert found("/retarder-with-foam", board(5), sheathing(), studs()).verdict == Verdict.NOT_ASKED
    layers = (board(5), sheathing(), studs(), panel(0.8, 2.4))
    assert found("/retarder-with-foam", *layers, zone="2A").verdict == Verdict.NOT_ASKED
    unproved = (board(1), sheathing(), studs(), panel(0.8, 2.4, documents=()))
    assert found("/retarder-with-foam", *unproved).verdict == Verdict.NEEDS_EVIDENCE


# No retarder but insulation outside (Table R702.7(5))


def bare(R, *, inside=1.0, perm=0.9):
    """Foam boards of that permeance over a wall whose framing is nearly empty, no retarder inside."""
    return board(R, dry=perm), sheathing(), studs(R=inside * RSI - 0.2), panel(50, serves=(), name="lining")


@pytest.mark.parametrize(("zone", "limit"), CASES["without_retarder"]["rows"].items(), ids=str)
def test_insulation_in_place_of_a_retarder_on_both_sides(zone, limit):
    at = found("/vapour-retarder", *bare(limit), zone=zone, set_id="irc-2024")
    below = found("/vapour-retarder", *bare(limit - 0.01), zone=zone, set_id="irc-2024")
    assert (at.verdict, below.verdict) == (Verdict.MEETS, Verdict.DOES_NOT_MEET), below.reason
    assert found("/vapour-retarder", *bare(limit), zone=zone, set_id="irc-2021").verdict == Verdict.DOES_NOT_MEET


@pytest.mark.parametrize(
    ("inside", "verdict"), [(5.0, Verdict.MEETS), (5.01, Verdict.NEEDS_JUDGEMENT), (13, Verdict.NEEDS_JUDGEMENT)]
)
def test_little_may_lie_inside_that_insulation(inside, verdict):
    """R 5 at most, the framing's insulation counted; the papers' R 13 batt needs an accepted design."""
    one = found("/vapour-retarder", *bare(6.5, inside=inside), zone="5A", set_id="irc-2024")
    assert one.verdict == verdict, one.reason


@pytest.mark.parametrize(("perm", "verdict"), [(1.0, Verdict.MEETS), (1.01, Verdict.DOES_NOT_MEET)])
def test_a_tight_layer_lies_outside_the_framing(perm, verdict):
    assert found("/vapour-retarder", *bare(6.5, perm=perm), zone="5A", set_id="irc-2024").verdict == verdict


# Class I on both faces


@pytest.mark.parametrize(("set_id", "wet", "verdict"), [
    ("irc-2021", 0.05, Verdict.NEEDS_JUDGEMENT), ("irc-2021", 2.0, Verdict.NEEDS_JUDGEMENT),
    ("irc-2024", 0.05, Verdict.NEEDS_JUDGEMENT), ("irc-2024", 2.0, Verdict.NOT_ASKED),
])  # fmt: skip
def test_class_i_on_both_faces_is_left_to_an_accepted_design(set_id, wet, verdict):
    tight = panel(0.1, serves=(), name="facer")
    one = found("/retarders-on-both-faces", tight, sheathing(), studs(), panel(0.1, wet), zone="6A", set_id=set_id)
    assert one.verdict == verdict
    wider = panel(0.1001, serves=(), name="facer")
    one = found("/retarders-on-both-faces", wider, sheathing(), studs(), panel(0.1), zone="6A", set_id=set_id)
    assert one.verdict == Verdict.MEETS


def test_both_faces_where_it_is_not_asked_or_not_known():
    tight = panel(0.05, serves=(), name="facer")
    for layers, zone in (((tight, studs(), panel(0.8)), "6A"), ((tight, studs(), panel(0.05)), "4A"), ((tight, studs()), "6A")):
        assert found("/retarders-on-both-faces", *layers, zone=zone).verdict == Verdict.NOT_ASKED
    unproved = panel(0.05, serves=(), name="facer", documents=())
    one = found("/retarders-on-both-faces", unproved, sheathing(), studs(), panel(0.05), zone="6A")
    assert one.verdict == Verdict.NEEDS_EVIDENCE


@pytest.mark.parametrize(("seams", "verdict"), [("taped", Verdict.NEEDS_EVIDENCE), ("open", Verdict.DOES_NOT_MEET)])
def test_a_retarder_that_is_the_air_barrier_too_since_2024(seams, verdict):
    both = replace(panel(0.8, serves=("vapour control", "air control")), seams=seams)
    assert found("/retarder-as-air-barrier", sheathing(), studs(), both, set_id="irc-2024").verdict == verdict
    for layers, set_id in (((sheathing(), studs(), both), "irc-2021"), ((sheathing(), studs(), panel(0.8)), "irc-2024")):
        with pytest.raises(AssertionError):
            found("/retarder-as-air-barrier", *layers, set_id=set_id)
