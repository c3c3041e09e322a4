"""Whether a set applies comes first; where it does not, or that is unknown, nothing else says meets."""

import pytest

from codes_builders import amendment, of_resistance, only, project, studies
from layerfolio import codes
from layerfolio.catalogue import code_sets
from layerfolio.catalogue.code_sets import code_set
from layerfolio.catalogue.sources import all_sources
from layerfolio.codes.amendments import amendable
from layerfolio.codes.findings import Verdict

GENEROUS = studies(of_resistance(12), of_resistance(12, name="R1", kind="roof"))


def first(**about):
    return codes.judge(project(**about), GENEROUS)[0]


@pytest.mark.parametrize(("about", "verdict"), [
    ({"storeys": 3}, Verdict.MEETS), ({"storeys": 4}, Verdict.DOES_NOT_MEET),
    ({"area": 600}, Verdict.MEETS), ({"area": 600.1}, Verdict.DOES_NOT_MEET),
    ({"storeys": None}, Verdict.NEEDS_JUDGEMENT), ({"area": None}, Verdict.NEEDS_JUDGEMENT),
    ({"storeys": 4, "area": None}, Verdict.DOES_NOT_MEET),
    ({"occupancy": "house"}, Verdict.MEETS), ({"occupancy": "dwelling-unit"}, Verdict.MEETS),
    ({"occupancy": "office"}, Verdict.MEETS), ({"occupancy": "mercantile"}, Verdict.MEETS),
    ({"occupancy": "assembly"}, Verdict.DOES_NOT_MEET), ({"occupancy": "other"}, Verdict.NEEDS_JUDGEMENT),
    ({"occupancy": None}, Verdict.NEEDS_JUDGEMENT),
    ({"occupancy": "workshop"}, Verdict.NEEDS_JUDGEMENT), ({"occupancy": "storage"}, Verdict.NEEDS_JUDGEMENT),
    ({"occupancy": "workshop", "hazard": "medium"}, Verdict.MEETS),
    ({"occupancy": "workshop", "hazard": "high"}, Verdict.DOES_NOT_MEET),
    ({"date": "2022-02-28"}, Verdict.DOES_NOT_MEET), ({"date": "2022-03-01"}, Verdict.MEETS),
    ({"date": ""}, Verdict.NEEDS_JUDGEMENT),
], ids=str)  # fmt: skip
def test_bounds_of_part_9(about, verdict):
    """Division A, 1.3.3.3.(1): three storeys, 600 m², groups C, D, E, F2 and F3; published in March 2022."""
    found = first(**about)
    assert found.id == "nbc-2020/1.3.3.3/applies" and found.topic == "applicability"
    assert found.verdict == verdict
    assert (found.next_step == "") == (verdict == Verdict.MEETS)


@pytest.mark.parametrize("about", [
    {"storeys": 4}, {"area": 601}, {"occupancy": "assembly"}, {"date": "2019-05-01"},
], ids=str)  # fmt: skip
def test_nothing_is_asked_where_the_set_does_not_apply(about):
    findings = codes.judge(project(**about), GENEROUS)
    assert findings[0].verdict == Verdict.DOES_NOT_MEET
    assert {one.verdict for one in findings[1:]} == {Verdict.NOT_ASKED}
    walls = only(findings, "/walls")
    assert walls.provided.value == pytest.approx(12) and "apply? No" in walls.reason


@pytest.mark.parametrize("about", [
    {"storeys": None}, {"area": None}, {"occupancy": "other"}, {"occupancy": "workshop"}, {"date": ""},
], ids=str)  # fmt: skip
def test_nothing_meets_while_it_is_unknown(about):
    findings = codes.judge(project(**about), GENEROUS)
    assert Verdict.MEETS not in {one.verdict for one in findings}
    assert only(findings, "/walls").verdict == Verdict.NEEDS_JUDGEMENT


def test_a_failure_stays_a_failure_while_it_is_unknown():
    findings = codes.judge(project(storeys=None), studies(of_resistance(1)))
    assert only(findings, "/walls").verdict == Verdict.DOES_NOT_MEET


@pytest.mark.parametrize(("about", "scope", "walls"), [
    ({"occupancy": "house", "area": 600, "storeys": 3}, Verdict.MEETS, Verdict.MEETS),
    ({"area": 100, "storeys": 3}, Verdict.MEETS, Verdict.MEETS),
    ({"area": 101, "storeys": 3}, Verdict.NEEDS_JUDGEMENT, Verdict.NEEDS_JUDGEMENT),
    ({"area": 500, "floor_area": 301}, Verdict.NEEDS_JUDGEMENT, Verdict.NOT_ASKED),
    ({"area": 300, "floor_area": 290}, Verdict.MEETS, Verdict.MEETS),
    ({"occupancy": "workshop", "hazard": "low"}, Verdict.MEETS, Verdict.MEETS),
    ({"occupancy": "workshop", "hazard": "medium"}, Verdict.NEEDS_JUDGEMENT, Verdict.NOT_ASKED),
], ids=str)  # fmt: skip
def test_reach_of_the_energy_articles(about, scope, walls):
    """9.36.1.3.(3) and (6): residential; else 300 m² of floor area at most, and no medium-hazard industry."""
    findings = codes.judge(project(**about), GENEROUS)
    assert only(findings, "/energy-scope").verdict == scope
    assert only(findings, "/walls").verdict == walls


@pytest.mark.parametrize(("area", "floor", "given"), [
    (52, 46, "1 storey, conditioned floor area 46 m², building area 52 m², mercantile"),
    (None, 46, "1 storey, conditioned floor area 46 m², building area not given, mercantile"),
    (52, None, "1 storey, building area 52 m² (conditioned floor area not given), mercantile"),
    (None, None, "1 storey, floor area not given, mercantile"),
])  # fmt: skip
def test_the_energy_articles_ask_for_floor_area_and_are_given_it(area, floor, given):
    found = only(codes.judge(project(area=area, floor_area=floor), GENEROUS), "/energy-scope")
    assert found.given == given and "300 m² floor area" in found.asked


def test_bounds_of_applicability_were_read():
    """Division A, 1.3.3.3.(1) as the appeal board's decision 1932 prints it: 3 storeys, 600 m²; 9.36.1.3.(3) and (6) in the
    Alberta edition of 2023, page 9-239: combined total floor area of 300 m²."""
    content = code_set("nbc-2020").content
    for row, via in ((content["applies"], "bcab-1932"), (content["scopes"]["energy"], "nbc-2023-ab")):
        assert (row["mark"], row["via"]) == ("found", via)
    assert (content["applies"]["storeys"], content["applies"]["building_area"]) == (3, 600)
    assert content["scopes"]["energy"]["floor_area"] == 300
    assert all_sources()["nbc-2023-ab"].what.count("9.36") and "Parts 3 and 9" in all_sources()["bcab-1932"].what


@pytest.mark.parametrize("about", [{}, {"storeys": 4}, {"area": 601, "floor_area": 500}], ids=str)
def test_a_bound_from_memory_decides_neither_way(about, monkeypatch):
    content = code_set("nbc-2020").content
    monkeypatch.setitem(content["applies"], "mark", "memory")
    found = first(**about)
    assert found.verdict == Verdict.NEEDS_JUDGEMENT and "memory" in found.reason and "confirm" in found.next_step
    monkeypatch.undo()
    monkeypatch.setitem(content["scopes"]["energy"], "mark", "memory")
    found = only(codes.judge(project(), GENEROUS), "/energy-scope")
    assert found.verdict == Verdict.NEEDS_JUDGEMENT and "memory" in found.reason and "confirm" in found.next_step


def test_the_scope_of_energy_leaves_vapour_alone():
    findings = codes.judge(project(area=500, floor_area=301), GENEROUS)
    assert [one.verdict for one in findings if one.topic == "vapour" and one.verdict == Verdict.NOT_ASKED] != []
    assert {one.verdict for one in findings if one.id.endswith("/vapour-barrier")} == {Verdict.DOES_NOT_MEET}


def test_the_edition_is_asked_of_the_authority():
    found = only(codes.judge(project(), GENEROUS), "/in-force")
    assert found.verdict == Verdict.NEEDS_JUDGEMENT and found.topic == "applicability"
    assert "Saskatchewan from 2024-01-01" in found.reason and "ask the authority" in found.next_step
    early = only(codes.judge(project(date="2023-06-01"), GENEROUS), "/in-force")
    assert "no adoption is known" in early.reason


@pytest.mark.parametrize(("date", "verdict", "applies"), [
    ("2027-02-03", Verdict.MEETS, Verdict.MEETS), ("2025-04-01", Verdict.MEETS, Verdict.MEETS),
    ("2025-03-31", Verdict.NOT_ASKED, Verdict.DOES_NOT_MEET),
])  # fmt: skip
def test_an_authority_can_state_since_when_the_edition_is_in_force(date, verdict, applies):
    change = amendment("nbc-2020/edition/in-force", "2025-04-01")
    findings = codes.judge(project(date=date, amendments=[change]), GENEROUS)
    assert findings[0].verdict == applies
    assert only(findings, "/in-force").verdict == verdict


def test_iso_applies_to_any_plane_assembly_and_asks_nothing_of_its_own():
    assemblies = studies(of_resistance(5, set_id="iso", method="combined"))
    findings = codes.judge(project(set_id="iso", zone=None, storeys=9, area=5000, occupancy="other"), assemblies)
    assert [one.id for one in findings] == ["iso/6946/applies", "iso/6946/walls"]
    assert findings[0].verdict == Verdict.MEETS
    assert findings[1].verdict == Verdict.NOT_ASKED and findings[1].provided.value == pytest.approx(0.2)
    assert first(set_id="iso", zone=None, date="2016-12-31").verdict == Verdict.DOES_NOT_MEET
    assert first(set_id="iso", zone=None, date="2017-01-01").verdict == Verdict.MEETS


@pytest.mark.parametrize(("limit", "verdict"), [(0.25, Verdict.MEETS), (0.2, Verdict.MEETS), (0.1999, Verdict.DOES_NOT_MEET)])
def test_iso_with_a_limit_that_the_project_states(limit, verdict):
    change = amendment("iso/6946/walls", f"{limit} W/(m2.K)", "contract, page 3")
    assemblies = studies(of_resistance(5, set_id="iso", method="combined"))
    found = codes.judge(project(set_id="iso", zone=None, amendments=[change]), assemblies)[-1]
    assert found.verdict == verdict and found.amended == "contract, page 3"
    if verdict == Verdict.DOES_NOT_MEET:  # judged unrounded: both print with as many digits as it takes
        assert found.given.startswith("0.2000 ") and found.asked.startswith("0.1999 ")


def test_unknown_and_misfit_amendments_are_problems():
    changes = [
        amendment("nbc-2020/9.36.2.6/wall", "3.5 m2.K/W"),
        amendment("nbc-2020/9.36.2.6/walls", "0.3 W/(m2.K)"),
        amendment("nbc-2020/9.36.2.6/walls", "3.5 m2.K/W"),
        amendment("nbc-2020/9.23.13/bracing", "1"),
        amendment("nbc-2020/edition/in-force", "soon"),
        amendment("nbc-2020/9.36.2.6/roofs", "4.67"),
    ]
    problems = codes.amendment_problems(project(amendments=changes), "project.yaml")
    assert [one.path for one in problems] == [
        "code.amendments[0].requirement", "code.amendments[1].value", "code.amendments[3].requirement",
        "code.amendments[4].value", "code.amendments[5].value",
    ]  # fmt: skip
    assert problems[0].example == "nbc-2020/9.36.2.6/walls" and "did you mean" in problems[0].message
    assert problems[3].example == "2025-04-01"


@pytest.mark.parametrize(("requirement", "value", "kind", "near"), [
    ("irc-2021/N1102.1.2/walls", "R-24", "is a thermal transmittance, and this is a thermal resistance",
     "N1102.1.3/wall-insulation"),
    ("irc-2021/N1102.1.3/ceiling-insulation", "U-0.02", "is a thermal resistance", "N1102.1.2/ceilings"),
    ("irc-2021/N1102.1.2/fenestration", "R-3", "is a thermal transmittance", ""),
    ("irc-2021/edition/in-force", "R-3", "is a date", ""),
])  # fmt: skip
def test_an_amendment_of_another_kind_names_the_near_requirement(requirement, value, kind, near):
    (found,) = codes.amendment_problems(project(set_id="irc-2021", amendments=[amendment(requirement, value)]))
    assert f"{requirement} {kind}" in found.message and found.message.endswith(near or "resistance")


@pytest.mark.parametrize("set_id", code_sets.set_ids())
def test_every_figure_that_can_be_amended_has_a_kind(set_id):
    changes = [amendment(one, "4 parsecs") for one in amendable(set_id)]
    assert len(codes.amendment_problems(project(set_id=set_id, amendments=changes))) == len(changes)


def test_requirement_ids_list_all_that_is_found():
    ids = codes.requirement_ids("nbc-2020")
    assert len(ids) == len(set(ids)) and ids[0] == "nbc-2020/1.3.3.3/applies"
    kinds = ("wall", "roof", "ceiling", "floor", "slab", "foundation-wall")
    everything = studies(*(of_resistance(5, kind=kind, name=kind) for kind in kinds))
    found = codes.judge(project(), everything)
    assert {one.id for one in found} <= set(ids)
    assert set(codes.amendable("nbc-2020")) <= set(ids) and set(codes.amendable("iso")) <= set(codes.requirement_ids("iso"))
    assert codes.sets() == ("bc-2024", "irc-2018", "irc-2021", "irc-2024", "iso", "nbc-2015", "nbc-2020", "qc-r1")
    assert codes.zones("nbc-2020")[-1] == "8"


def test_customary_first_prints_both_units():
    found = only(codes.judge(project(units="customary"), studies(of_resistance(5.0625))), "/walls")
    assert found.asked.startswith("16.9 ft²·°F·h/Btu (2.97 m²·K/W) or more")
    assert found.given == "28.7 ft²·°F·h/Btu (5.06 m²·K/W)"
