"""Variants that stand over a set: Quebec's resistances without framing, British Columbia's tables for dwellings."""

from types import SimpleNamespace as N

import pytest

import builders as b
from codes_builders import insulation, of_resistance, only, project, studies
from layerfolio import codes
from layerfolio.catalogue.code_sets import code_set, zones
from layerfolio.codes.findings import Verdict
from layerfolio.codes.heat import measured
from layerfolio.codes.requirements import requirements

# Quebec, E-1.1, r. 1, s. 34 (legisquebec.gouv.qc.ca): minimum resistance, framing not counted, zones A to F.
ZONES = "ABCDEF"
QUEBEC = {
    "walls": ({}, (3.4, 3.6, 3.8, 4.0, 4.2, 4.5)), "roofs": ({"kind": "roof"}, (5.3, 5.6, 6.0, 6.3, 6.8, 7.1)),
    "floors": ({"kind": "floor"}, (4.7,) * 6),
    "foundation-walls": ({"kind": "foundation-wall", "faces": "ground"}, (2.2,) * 6),
}  # fmt: skip
# British Columbia code 2024, Tables 9.36.2.6.-C and 9.36.2.8.-C, zones 4 to 8.
COLD = ("4", "5", "6", "7A", "7B", "8")
BC = {
    "walls": ({}, (3.08, 3.69, 3.69, 3.69, 3.96, 3.96)),
    "attic-ceilings": ({"kind": "ceiling", "faces": "vented space"}, (8.67, 8.67, 10.43, 10.43, 10.43, 10.43)),
    "roofs": ({"kind": "roof"}, (4.67, 4.67, 4.67, 5.02, 5.02, 5.02)), "floors": ({"kind": "floor"}, (5.02,) * 6),
    "foundation-walls": ({"kind": "foundation-wall", "faces": "ground"}, (3.46, 3.97, 3.97, 3.97, 3.97, 3.97)),
}  # fmt: skip
DAYS = dict(zip(COLD, (2500, 3500, 4500, 5500, 6500, 7500), strict=True))


def rule(set_id, question):
    return next(one for one in requirements(set_id) if one.question == question)


def cells(table, names):
    return [(q, zone, cell, about) for q, (about, row) in table.items() for zone, cell in zip(names, row, strict=True)]


@pytest.mark.parametrize(("question", "zone", "cell", "about"), cells(QUEBEC, ZONES))
def test_every_cell_of_quebec(question, zone, cell, about):
    def found(R):
        where = project(set_id="qc-r1", zone=zone, occupancy="house")
        return only(codes.judge(where, studies(of_resistance(R, set_id="qc-r1", **about))), f"/{question}")

    assert found(cell).limit.value == cell and "reaches" in found(cell).reason
    assert found(cell - 0.001).verdict == Verdict.DOES_NOT_MEET
    assert found(cell).verdict == Verdict.NEEDS_JUDGEMENT  # which buildings the regulation is for was not read


def test_quebec_leaves_framing_out():
    framed = insulation(4.0, frame=b.member(0.5, R=1.0))
    wall = of_resistance(0, layers=[framed], set_id="qc-r1")
    study = studies(wall)["W1"][0]
    assert measured(rule("qc-r1", "walls"), study) == pytest.approx(4.15)
    assert measured(rule("nbc-2020", "walls"), study) == pytest.approx(0.15 + 1 / (0.5 / 1.0 + 0.5 / 4.0))


@pytest.mark.parametrize(("question", "zone", "cell", "about"), cells(BC, COLD))
def test_every_cell_of_british_columbia(question, zone, cell, about):
    def found(R):
        where = project(set_id="bc-2024", zone=zone, degree_days=DAYS[zone], occupancy="house")
        return only(codes.judge(where, studies(of_resistance(R, set_id="bc-2024", **about))), f"/{question}")

    assert found(cell).limit.value == cell and found(cell).verdict == Verdict.MEETS
    assert found(cell - 0.0051).verdict == Verdict.DOES_NOT_MEET


@pytest.mark.parametrize(("answers", "limit"), [
    ({"above_frost_line": False}, 2.98), ({"above_frost_line": True}, 3.46), ({"heated": True}, 3.97),
    ({"integral_footing": True, "above_frost_line": False}, 3.97),
])  # fmt: skip
def test_floors_on_the_ground_in_british_columbia(answers, limit):
    ground = {"heated": False, "integral_footing": False} | answers
    one = of_resistance(9, kind="slab", faces="ground", ground=ground, set_id="bc-2024")
    where = project(set_id="bc-2024", zone="7A", degree_days=5500, occupancy="house")
    assert only(codes.judge(where, studies(one)), "/ground-floors").limit.value == limit


@pytest.mark.parametrize("set_id", ["qc-r1", "bc-2024"])
def test_what_a_variant_does_not_replace_is_the_sets_own(set_id):
    own, below = requirements(set_id), {one.question: one for one in requirements("nbc-2020")}
    assert code_set(set_id).base == "nbc-2020" and len({one.question for one in own}) == len(own)
    inherited = [one for one in own if one.question in below and one.source == below[one.question].source]
    assert len(inherited) > 15
    for one in inherited:
        assert one.figures == below[one.question].figures and one.id == below[one.question].id.replace("nbc-2020", set_id)


def test_quebec_replaces_all_energy_articles():
    assert not [one.id for one in requirements("qc-r1") if one.rule["article"].startswith("9.36")]
    assert zones("qc-r1") == tuple(ZONES) and "scopes" not in code_set("qc-r1").content


@pytest.mark.parametrize("source", [None, "list of municipalities"])
def test_a_listed_zone_needs_its_source(source):
    where = project(set_id="qc-r1", zone="C", degree_days=4600, occupancy="house")
    where.code = N(**where.code.__dict__, zone_source=source)
    found = only(codes.judge(where, studies(of_resistance(9, set_id="qc-r1"))), "/zone")
    assert (source in found.reason) if source else ("not carried" in found.reason)


@pytest.mark.parametrize("source", [None, "county list"])
def test_the_county_list_settles_the_zone_of_an_american_set(source):
    where = project(set_id="irc-2021", zone="5A", degree_days=4600, occupancy="house")
    where.code = N(**where.code.__dict__, zone_source=source)
    where.climate.cooling_degree_days = None
    findings = codes.judge(where, studies(of_resistance(9, set_id="irc-2021", method="parallel-path")))
    found = only(findings, "/zone")
    assert (found.verdict == Verdict.MEETS) == bool(source)
    assert not source or "zone 6" in found.reason


def test_the_sets_are_those_that_their_files_carry():
    """The ids are picked out of the text of each code's file; this reads the files themselves."""
    import yaml

    from layerfolio.home import folder

    found = [yaml.safe_load(path.read_text(encoding="utf-8")) for path in (folder("shared") / "codes").glob("*/code.yaml")]
    assert sorted(row["id"] for one in found for row in one["editions"] if row["carried"]) == list(codes.sets())
