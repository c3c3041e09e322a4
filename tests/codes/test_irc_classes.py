"""Classes of vapour retarders and what each zone permits: every cell, and both sides of every limit (IRC R702.7)."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

import builders as b
from codes_builders import amendment, cases
from codes_irc import NG, PERM, REPORT, SETS, air, board, cladding, findings, found, house, panel, sheathing, studs, wall
from layerfolio.catalogue.datum import Datum, Origin
from layerfolio.codes.findings import Verdict
from layerfolio.codes.retarder_class import class_of, opens, unit_trap
from layerfolio.units.show import in_units

CASES = cases("irc-retarders")
CLASSES = {"I": 0.1, "II": 1.0, "III": 10.0}
DRY = {"I": 0.05, "II": 0.8, "III": 5.0}


@pytest.mark.parametrize("row", CASES["classes"]["rows"], ids=str)
def test_a_limit_belongs_to_its_class(row):
    """Table R702.7(1): up to 0.1, over 0.1 up to 1.0, over 1.0 up to 10 perm."""
    assert class_of(row["at"] * PERM, CLASSES) == row["class"]
    assert class_of(row["at"] * PERM * 1.00001, CLASSES) == row["above"]
    assert class_of(row["at"] * PERM * 0.99999, CLASSES) == row["class"]


def test_one_us_perm_in_si():
    found = PERM / NG
    assert found == pytest.approx(CASES["units"]["perm_ng"], abs=5e-5)
    assert in_units(PERM, "perm") == pytest.approx(1.0, abs=1e-6)
    for row in CASES["units"]["rows"]:
        assert in_units(row["ng"] * NG, "perm") == pytest.approx(row["perm"], abs=5e-5)


CELLS = [
    (set_id, zone, name, said)
    for set_id in SETS
    for zone, row in CASES["permitted"][set_id].items()
    for name, said in row.items()
]


@pytest.mark.parametrize(("set_id", "zone", "name", "said"), CELLS)
def test_every_cell_of_the_table_of_zones(set_id, zone, name, said):
    """A wall with no vented cladding and nothing outside: Class III `table` then fails on Table R702.7(3)."""
    one = found("/vapour-retarder", sheathing(), studs(), panel(DRY[name]), zone=zone, set_id=set_id)
    wanted = {"yes": Verdict.MEETS, "no": Verdict.DOES_NOT_MEET, "table": Verdict.DOES_NOT_MEET}
    assert one.verdict == wanted.get(said, Verdict.NOT_ASKED), one.reason
    assert one.given.startswith(f"Class {name}")
    assert (one.limit is None) == (said == "not asked")


@pytest.mark.parametrize(("perm", "verdict"), [
    (0.1, Verdict.MEETS), (1.0, Verdict.MEETS), (1.00001, Verdict.DOES_NOT_MEET), (10.0, Verdict.DOES_NOT_MEET),
])  # fmt: skip
def test_both_sides_of_class_ii_in_a_cold_zone(perm, verdict):
    one = found("/vapour-retarder", sheathing(), studs(), panel(perm), zone="6A")
    assert one.verdict == verdict and one.limit.value == pytest.approx(PERM)
    assert one.provided.value == pytest.approx(perm * PERM)


@pytest.mark.parametrize(("perm", "verdict"), [
    (0.1, Verdict.DOES_NOT_MEET), (0.10001, Verdict.MEETS), (10.0, Verdict.MEETS), (10.0001, Verdict.DOES_NOT_MEET),
])  # fmt: skip
def test_both_sides_of_what_zone_4_permits(perm, verdict):
    """Class I is not permitted, over 10 perm is no retarder."""
    assert found("/vapour-retarder", sheathing(), studs(), panel(perm), zone="4A").verdict == verdict


@pytest.mark.parametrize(("set_id", "wet", "opened"), [
    ("irc-2021", 1.0, False), ("irc-2021", 1.00001, True), ("irc-2024", 1.0, True), ("irc-2024", 0.99999, False),
])  # fmt: skip
@pytest.mark.parametrize("zone", ["1A", "3A", "4A"])
def test_a_retarder_that_opens_by_the_wet_cup_is_permitted_everywhere(set_id, wet, opened, zone):
    """At exactly 1.00 perm wet cup: not in 2021 (more than 1), yes in 2024 (1 or more)."""
    one = found("/vapour-retarder", sheathing(), studs(), panel(0.05, wet), zone=zone, set_id=set_id)
    assert one.verdict == (Verdict.MEETS if opened else Verdict.DOES_NOT_MEET)
    assert ("opens by the wet cup" in one.given) == opened


def test_an_open_layer_does_not_become_a_class_by_its_wet_cup():
    one = found("/vapour-retarder", sheathing(), studs(), panel(1.2, 5.0), zone="6A")
    assert one.verdict == Verdict.DOES_NOT_MEET and "opens" not in one.given


def test_both_cups_stand_in_what_is_provided():
    one = found("/vapour-retarder", sheathing(), studs(), panel(0.8, 2.4), zone="6A")
    assert "45.8 ng/(Pa·s·m²) (0.8 US perm) dry cup, 137 ng/(Pa·s·m²) (2.4 US perm) wet cup" in one.given
    assert one.given.endswith("panel (layer 3)")
    first = found("/vapour-retarder", sheathing(), studs(), panel(0.8, 2.4), zone="6A", units="customary")
    assert "0.8 US perm (45.8 ng/(Pa·s·m²)) dry cup" in first.given


@pytest.mark.parametrize(("ng", "said"), [(57.21, False), (57.22, True), (60, True), (60.01, False)])
def test_the_unit_trap_is_said_where_it_bites(ng, said):
    """60 ng is 1.05 US perm: what passes as a Canadian barrier may be no Class II retarder."""
    assert bool(unit_trap(ng * NG)) == said
    one = found("/vapour-retarder", sheathing(), studs(), panel(ng * NG / PERM), zone="6A")
    assert ("Canadian vapour barrier" in one.given) == said
    assert one.given.startswith("Class II;" if ng < 57.2135 else "Class III;")


@pytest.mark.parametrize("documents", [(), (replace(REPORT, expires="2027-02-02"),)], ids=["none", "expired"])
@pytest.mark.parametrize("perm", [0.05, 0.8, 5.0, 20.0])
def test_the_projects_own_figure_needs_its_report(documents, perm):
    one = found("/vapour-retarder", sheathing(), studs(), panel(perm, documents=documents), zone="6A")
    assert one.verdict == Verdict.NEEDS_EVIDENCE and "report" in one.next_step and "not proved" in one.given


def of_catalogue(material, d, *, mu=None, s_d=None, wet=None, mark="memory", family="plywood"):
    made = b.layer(9, R=0.1, d=d, mu=mu, s_d=s_d, serves=("vapour control",), name=material, family=family)
    origin = Origin("catalogue", "iso-10456-2007", "Table 3", mark)
    dry = Datum(made.vapour.dry.value, origin)
    opened = dry if wet is None else Datum(wet, origin)
    vapour = replace(made.vapour, dry=dry, wet=opened, single=wet is None)
    return replace(made, material=material, vapour=vapour)


@pytest.mark.parametrize(("zone", "verdict"), [
    ("4A", Verdict.MEETS), ("6A", Verdict.NEEDS_EVIDENCE), ("1A", Verdict.NEEDS_EVIDENCE),
])  # fmt: skip
def test_published_values_of_plywood_decide_only_where_both_classes_are_treated_alike(zone, verdict):
    """12.5 mm plywood: 80 ng, Class III, by ISO 10456; 40 to 57 ng, Class II, by note A-9.25.5.1.(1)."""
    one = found("/vapour-retarder", sheathing(), studs(), of_catalogue("plywood", 0.0125, mu=200), zone=zone)
    assert one.verdict == verdict and one.given.startswith("Class II or Class III")
    if verdict == Verdict.NEEDS_EVIDENCE:
        assert "80 ng" in one.reason and "40 to 57 ng" in one.reason and "own report decides" in one.reason


@pytest.mark.parametrize(("mark", "s_d", "verdict"), [
    ("memory", 5, Verdict.NEEDS_EVIDENCE), ("found", 5, Verdict.MEETS),
    ("memory", 0.1, Verdict.DOES_NOT_MEET), ("found", 0.1, Verdict.DOES_NOT_MEET),
])  # fmt: skip
def test_a_figure_from_memory_alone_never_makes_it_meet(mark, s_d, verdict):
    film = of_catalogue("some-film", None, s_d=s_d, mark=mark, family="membrane")
    assert found("/vapour-retarder", sheathing(), studs(), film, zone="6A").verdict == verdict


def test_a_wet_cup_from_memory_never_opens_a_retarder():
    film = of_catalogue("some-film", None, s_d=50, wet=0.3, mark="memory", family="membrane")
    assert found("/vapour-retarder", sheathing(), studs(), film, zone="4A").verdict == Verdict.NEEDS_EVIDENCE
    sure = of_catalogue("some-film", None, s_d=50, wet=0.3, mark="found", family="membrane")
    assert found("/vapour-retarder", sheathing(), studs(), sure, zone="4A").verdict == Verdict.MEETS


@pytest.mark.parametrize(("material", "name", "cold"), [
    ("polyethylene-150", "I", Verdict.MEETS), ("aluminium-foil", "I", Verdict.MEETS),
    ("gypsum-board-latex-painted", "III", Verdict.DOES_NOT_MEET), ("gloss-paint", "III", Verdict.DOES_NOT_MEET),
])  # fmt: skip
@pytest.mark.parametrize("set_id", SETS)
def test_materials_that_the_list_names_need_no_figure(set_id, material, name, cold):
    """Sheet polyethylene and unperforated foil are Class I, latex and enamel paint Class III."""
    film = of_catalogue(material, None, s_d=3, family="membrane")
    one = found("/vapour-retarder", sheathing(), studs(), film, zone="6A", set_id=set_id)
    assert one.verdict == cold and one.given.startswith(f"Class {name}")


def test_no_figure_at_all_needs_evidence():
    bare = b.layer(9, R=0.1, d=0.015, serves=["vapour control"], name="bare")
    one = found("/vapour-retarder", sheathing(), studs(), bare, zone="6A")
    assert one.verdict == Verdict.NEEDS_EVIDENCE and "permeance not given" in one.given


@pytest.mark.parametrize("set_id", SETS)
def test_without_a_control_layer(set_id):
    open_wall = (sheathing(), studs(), panel(50, serves=(), name="board"))
    assert found("/vapour-retarder", *open_wall, zone="6A", set_id=set_id).verdict == Verdict.DOES_NOT_MEET
    assert found("/vapour-retarder", *open_wall, zone="3A", set_id=set_id).verdict == Verdict.NOT_ASKED
    zone_4 = Verdict.NOT_ASKED if set_id == "irc-2018" else Verdict.DOES_NOT_MEET
    assert found("/vapour-retarder", *open_wall, zone="4A", set_id=set_id).verdict == zone_4
    could = found("/vapour-retarder", sheathing(), studs(), panel(5, serves=()), zone="6A", set_id=set_id)
    assert could.verdict == Verdict.NEEDS_JUDGEMENT and "panel (layer 3, Class III)" in could.reason
    unknown = b.layer(9, R=0.1, d=0.01, name="bare")
    assert found("/vapour-retarder", sheathing(), studs(), unknown, set_id=set_id).verdict == Verdict.NEEDS_EVIDENCE


def test_bales_between_the_framing_are_no_retarder_inside_it_and_foam_may_be():
    """R702.7 asks for the retarder on the inside of the frame: batts and bales lie within it, whatever their permeance."""
    deep = {"depth": 0.5, "R": 6.0}  # 7 US perm by its figure: Class III
    bales = found("/vapour-retarder", sheathing(), studs(family="straw", name="bales", **deep), panel(50, serves=()))
    assert bales.verdict == Verdict.DOES_NOT_MEET and "bales" not in bales.reason
    foam = found("/vapour-retarder", sheathing(), studs(family="foam", name="foam", **deep), panel(50, serves=()))
    assert foam.verdict == Verdict.NEEDS_JUDGEMENT and "foam (layer 2, Class III)" in foam.reason


def test_a_layer_that_is_no_retarder_is_no_fault_where_none_is_required():
    assert found("/vapour-retarder", sheathing(), studs(), panel(20), zone="2B").verdict == Verdict.MEETS
    assert found("/vapour-retarder", sheathing(), studs(), panel(20), zone="4B").verdict == Verdict.DOES_NOT_MEET


def test_zone_4_without_its_letter_is_a_question_only_where_it_decides():
    """Code zone 4 as Class III permitted, marine 4 under the table: the open question of the papers, settled by the texts."""
    layers = (sheathing(), studs(), panel(5))
    one = found("/vapour-retarder", *layers, zone="4")
    assert one.verdict == Verdict.NEEDS_JUDGEMENT and "4C" in one.reason and "code.zone" in one.next_step
    assert found("/vapour-retarder", sheathing(), studs(), panel(0.8), zone="4").verdict == Verdict.MEETS
    assert found("/vapour-retarder", *layers, zone="4B").verdict == Verdict.MEETS


def test_a_wall_without_framing_waits_for_that_answer():
    one = found("/vapour-retarder", sheathing(), studs(framed=False), panel(5), zone="6A")
    assert one.verdict == Verdict.NEEDS_JUDGEMENT and "no framing is stated" in one.reason
    assert found("/vapour-retarder", studs(framed=False), panel(0.8), zone="6A").verdict == Verdict.MEETS


@pytest.mark.parametrize(("perm", "verdict"), [(0.5, Verdict.MEETS), (0.51, Verdict.DOES_NOT_MEET)])
def test_an_authority_may_state_its_own_permeance(perm, verdict):
    change = amendment("irc-2021/R702.7/vapour-retarder", "0.5 perm", "ordinance 9")
    where = house("6A", amendments=[change])
    one = found("/vapour-retarder", sheathing(), studs(), panel(perm), where=where)
    assert (one.verdict, one.amended, one.mark) == (verdict, "ordinance 9", "given")
    assert one.limit.value == pytest.approx(0.5 * PERM)


@pytest.mark.parametrize("about", [
    {"kind": "roof", "slope": 30}, {"kind": "ceiling", "faces": "vented space"}, {"kind": "floor"},
    {"kind": "foundation-wall", "faces": "ground"}, {"kind": "wall", "faces": "ground"},
], ids=str)  # fmt: skip
def test_other_assemblies_are_not_asked(about):
    """The section is on frame walls; basement walls and what lies below grade are exempt."""
    asked = [x.id for x in findings(wall(sheathing(), studs(), panel(5), **about), "6A") if "/R702.7" in x.id]
    assert asked == []


@given(st.floats(0.001, 100), st.floats(0.001, 100))
def test_a_more_open_layer_never_has_a_tighter_class(one, other):
    order = [*CLASSES, ""]
    low, high = sorted((one, other))
    assert order.index(class_of(low * PERM, CLASSES)) <= order.index(class_of(high * PERM, CLASSES))
    assert opens(high * PERM, {"over": 1.0}) >= opens(low * PERM, {"over": 1.0})


@given(st.floats(0.2, 40), st.floats(0, 20), st.sampled_from(["4C", "5A", "6A", "7", "8"]))
def test_more_insulation_outside_never_loses_a_verdict(R, more, zone):
    def meets(value):
        layers = (board(value, family="mineral-board"), sheathing(), studs(), panel(5))
        return found("/vapour-retarder", *layers, zone=zone).verdict == Verdict.MEETS

    assert meets(R + more) >= meets(R)


def test_a_class_iii_finish_is_named_where_the_cladding_is_vented_over_a_listed_sheathing():
    """Zone 6, Table R702.7(3): vented cladding over fibreboard lets 10 perm inside do; over wood panels it does not."""
    def steps(family, zone="6A", control=("vapour control",)):
        layers = (cladding(), air(), sheathing(family), studs(), panel(14.5, serves=control))
        found_ = found("/vapour-retarder", *layers, zone=zone)
        return found_.verdict, found_.next_step

    for control in ((), ("vapour control",)):
        verdict, step = steps("wood-fibre", control=control)
        assert verdict == Verdict.DOES_NOT_MEET
        assert "(10 US perm) or less inside, as Class III with the vented cladding (Table R702.7(3))" in step
        assert "another retarder" in step and "authority accepts the cladding" in step
        assert "Class III" not in steps("plywood", control=control)[1]
    assert "Class III" in steps("plywood", zone="5A")[1] and "Class III" not in steps("wood-fibre", zone="7")[1]


def test_on_bales_the_appendix_is_named_that_may_stand_before_the_section():
    bales = studs(family="straw", name="bales")
    one = found("/vapour-retarder", sheathing("wood-fibre"), bales, panel(0.7, 11))
    assert one.verdict == Verdict.MEETS and "AS105.6.1" in one.asked and "AS105.6.1" in one.reason
    assert "appendix" not in found("/vapour-retarder", sheathing("wood-fibre"), studs(), panel(0.7, 11)).asked


def test_a_wall_without_retarder_says_how_much_its_tightest_layer_lets_through():
    """No layer serves vapour control: the finish inside, 14.5 perm, against 10 perm of Class III."""
    one = found("/vapour-retarder", cladding(), air(), studs(), panel(14.5, serves=(), name="plaster"), zone="6A")
    assert one.verdict == Verdict.DOES_NOT_MEET
    assert "plaster" in one.reason and "14.5 US perm" in one.reason
