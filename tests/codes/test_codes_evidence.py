"""What rests on memory, what is missing, what the method does not reach; and the questions that are only raised."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

import builders as b
from codes_builders import amendment, insulation, of_resistance, only, project, studies
from layerfolio import codes
from layerfolio.catalogue.code_sets import code_set
from layerfolio.catalogue.datum import Origin
from layerfolio.catalogue.files import CatalogueError
from layerfolio.catalogue.sources import all_sources
from layerfolio.codes import judges
from layerfolio.codes.context import context
from layerfolio.codes.findings import Verdict
from layerfolio.codes.heat import judge_heat
from layerfolio.codes.requirements import requirement, requirements
from layerfolio.glossary import terms


def memory(datum):
    return replace(datum, origin=Origin("code", "nbc-2020", "a table", "memory"))


def walls(layers, *, film_from_memory=False, where=None):
    one = of_resistance(0, layers=[replace(x, number=i + 1) for i, x in enumerate(layers)])
    if film_from_memory:
        one = replace(one, inside_film=memory(one.inside_film))
    return only(codes.judge(where or project(), studies(one)), "/walls")


@pytest.mark.parametrize(("sure", "doubtful", "verdict"), [
    (3.0, 0.5, Verdict.MEETS), (2.82, 0.5, Verdict.MEETS), (2.81, 0.5, Verdict.NEEDS_EVIDENCE),
    (2.0, 0.5, Verdict.DOES_NOT_MEET),
])  # fmt: skip
def test_a_layer_from_memory_stands_unless_the_verdict_turns_without_it(sure, doubtful, verdict):
    """Limit 2.97, films 0.15: without the doubtful layer 3.15, 2.97, 2.96; with it the last is too little anyway."""
    found = walls([insulation(sure, name="known"), insulation(doubtful, name="guessed", mark="memory")])
    assert found.verdict == verdict
    if verdict == Verdict.NEEDS_EVIDENCE:
        assert "guessed" in found.reason and "guessed" in found.next_step and "known" not in found.reason


@pytest.mark.parametrize(("sure", "bare", "verdict"), [
    (3.0, 0.5, Verdict.MEETS), (2.82, 0.5, Verdict.MEETS), (2.81, 0.5, Verdict.NEEDS_EVIDENCE),
    (2.0, 0.5, Verdict.DOES_NOT_MEET),
])  # fmt: skip
def test_a_stated_figure_without_a_document_stands_unless_the_verdict_turns_without_it(sure, bare, verdict):
    """Limit 2.97, films 0.15, as with a figure from memory: what nobody proves decides nothing by itself."""
    found = walls([insulation(sure, name="tested"), insulation(bare, name="stated", papers=())])
    assert found.verdict == verdict
    if verdict == Verdict.NEEDS_EVIDENCE:
        assert "stated" in found.reason and "has no document" in found.reason and "tested" not in found.reason
        assert "stated" in found.next_step and "document that proves" in found.next_step


@pytest.mark.parametrize(("paper", "verdict"), [
    (b.PAPER, Verdict.MEETS), (replace(b.PAPER, proves=("permeance",)), Verdict.NEEDS_EVIDENCE),
    (replace(b.PAPER, number=""), Verdict.NEEDS_EVIDENCE), (replace(b.PAPER, expires="2026-01-01"), Verdict.NEEDS_EVIDENCE),
])  # fmt: skip
def test_the_document_is_of_heat_findable_and_valid(paper, verdict):
    assert walls([insulation(5.0, papers=(paper,))]).verdict == verdict


def test_a_published_figure_needs_no_document_of_its_own():
    """A figure of the set's tables or of the catalogue is read in its source: its label is looked at on site."""
    layer = insulation(5.0, papers=())
    published = replace(layer.resistance, origin=Origin("catalogue", "nbc-2020", "a table", "found"))
    assert walls([replace(layer, resistance=published)]).verdict == Verdict.MEETS


def insulation_first(R, **more):
    return b.layer(1, R=R, d=0.2, insulating=True, name="batts", **more)


def test_a_film_from_memory_counts_like_a_layer():
    assert walls([insulation(3.0)], film_from_memory=True).verdict == Verdict.MEETS
    turned = walls([insulation(2.9)], film_from_memory=True)
    assert turned.verdict == Verdict.NEEDS_EVIDENCE and "the inside film" in turned.reason


def test_framing_from_memory_makes_its_layer_doubtful():
    frame = b.member(0.1, R=1.2)
    sure = walls([insulation_first(5.0, frame=frame)])
    doubtful = walls([insulation_first(5.0, frame=replace(frame, share=memory(frame.share)))])
    assert sure.verdict == Verdict.MEETS and doubtful.verdict == Verdict.NEEDS_EVIDENCE


def test_transmittance_turns_too():
    change = amendment("iso/6946/walls", "0.3 W/(m2.K)")
    where = project(set_id="iso", zone=None, amendments=[change])
    for R, verdict in ((3.2, Verdict.MEETS), (3.0, Verdict.NEEDS_EVIDENCE)):
        layers = [insulation(R), replace(insulation(1.0, name="guessed", mark="memory"), number=2)]
        one = of_resistance(0, layers=layers, set_id="iso", method="combined")
        assert codes.judge(where, studies(one))[-1].verdict == verdict


def memory_limit():
    """The requirement on walls with its figures marked as never re-read."""
    asked = next(one for one in requirements("nbc-2020") if one.question == "walls")
    return replace(asked, mark="memory")


@pytest.mark.parametrize("R", [0.5, 2.97, 9.0])
def test_a_limit_from_memory_never_decides(R):
    heat, _ = studies(of_resistance(R))["W1"]
    found = judge_heat(memory_limit(), heat, context(project()))
    assert found.verdict == Verdict.NEEDS_JUDGEMENT
    assert "rests on memory: confirm against the adopted text" in found.reason
    assert found.limit.value == 2.97 and found.provided.value == pytest.approx(R)


def test_an_amended_limit_decides_though_the_sets_own_rests_on_memory():
    heat, _ = studies(of_resistance(3.0))["W1"]
    about = context(project(amendments=[amendment("nbc-2020/9.36.2.6/walls", "RSI-3.0")]))
    assert judge_heat(memory_limit(), heat, about).verdict == Verdict.MEETS


def test_a_missing_thermal_figure_needs_evidence():
    bare = b.layer(2, name="mystery board", d=0.012)
    found = walls([insulation(5), bare])
    assert found.verdict == Verdict.NEEDS_EVIDENCE and "mystery board" in found.next_step
    assert found.provided is None and found.given == "not calculated"


def test_beyond_the_reach_of_the_combined_method_nothing_is_decided():
    steel = b.member(0.02, lam=50.0, is_metal=True)
    change = amendment("iso/6946/walls", "0.9 W/(m2.K)")
    one = of_resistance(
        0, layers=[b.layer(1, lam=0.035, d=0.15, frame=steel, insulating=True)], set_id="iso", method="combined"
    )
    heat = studies(one)["W1"][0]
    assert not heat.asked.within_limits
    found = codes.judge(project(set_id="iso", zone=None, amendments=[change]), studies(one))[-1]
    assert found.verdict == Verdict.NEEDS_JUDGEMENT and found.provided is not None


def test_metal_framing_is_not_judged_by_isothermal_planes():
    """Note A-9.36.2.4.(1) weighs two results for steel studs, which is not calculated here."""
    framed = insulation_first(5.0, frame=b.member(0.0077, R=0.0023, is_metal=True))
    found = walls([framed, insulation(4)])
    assert found.verdict == Verdict.NEEDS_JUDGEMENT and "metal" in found.reason


# Questions that are only raised


def assembly(*layers, **more):
    return of_resistance(0, layers=[replace(x, number=i + 1) for i, x in enumerate(layers)], **more)


def panel(serves, seams="", name="panel"):
    return replace(b.layer(9, R=0.1, d=0.015, serves=serves, name=name), seams=seams)


@pytest.mark.parametrize(("seams", "verdict"), [
    ("taped", Verdict.NEEDS_EVIDENCE), ("sealed", Verdict.NEEDS_EVIDENCE), ("lapped", Verdict.NEEDS_EVIDENCE),
    ("", Verdict.NEEDS_EVIDENCE), ("open", Verdict.DOES_NOT_MEET),
])  # fmt: skip
def test_seams_of_the_air_barrier(seams, verdict):
    """9.25.3.3.(1): every joint of a panel is sealed; a project file cannot show that it was done."""
    found = only(
        codes.judge(project(), studies(assembly(insulation(5), panel(["air control"], seams)))), "/air-barrier"
    )
    assert found.verdict == verdict and found.next_step and "panel (layer 2)" in found.given


def test_no_layer_for_air_control_is_a_question():
    found = only(codes.judge(project(), studies(assembly(insulation(5)))), "/air-barrier")
    assert found.verdict == Verdict.NEEDS_JUDGEMENT and "serves: [air control]" in found.next_step


def test_bracing_inside_names_what_is_lost():
    inside = only(codes.judge(project(), studies(assembly(insulation(5), panel(["bracing"])))), "/bracing")
    outside = only(codes.judge(project(), studies(assembly(panel(["bracing"]), insulation(5)))), "/bracing")
    assert inside.verdict == outside.verdict == Verdict.NEEDS_EVIDENCE  # no wind and earthquake figures in this project
    assert "room side" in inside.reason and "room side" not in outside.reason
    assert "structural engineer" in inside.who_decides


@pytest.mark.parametrize(("recovery", "count"), [(True, 1), (False, 0), (None, 0)])
def test_heat_recovery_equipment_needs_its_rating(recovery, count):
    findings = codes.judge(project(heat_recovery=recovery), studies(of_resistance(5)))
    found = [one for one in findings if one.id.endswith("/heat-recovery")]
    assert len(found) == count and all(one.verdict == Verdict.NEEDS_EVIDENCE for one in found)


def test_every_finding_that_does_not_meet_or_waits_says_what_is_next():
    kinds = ("wall", "roof", "ceiling", "floor", "slab", "foundation-wall")
    everything = studies(*(of_resistance(1, kind=kind, name=kind) for kind in kinds))
    for where in (
        project(),
        project(heat_recovery=None, zone=None, degree_days=None),
        project(set_id="iso", zone=None),
        *(project(set_id=x, zone="6A", occupancy="house") for x in ("irc-2018", "irc-2021", "irc-2024")),
        project(set_id="irc-2024", zone=None, degree_days=None, occupancy="storage"),
    ):
        for one in codes.judge(where, everything):
            assert one.reason and one.source in all_sources() and one.place and one.clause and one.who_decides
            assert (one.next_step != "") == (one.verdict not in (Verdict.MEETS, Verdict.NOT_ASKED)), one
            assert "approved" not in f"{one.reason}{one.next_step}" and "complies" not in f"{one.reason}{one.next_step}"
            for measured in (one.provided, one.limit):
                assert measured is None or measured.quantity in terms()


def test_findings_follow_the_file_and_are_the_same_each_time():
    one, other = of_resistance(5, name="B"), of_resistance(5, name="A")
    findings = codes.judge(project(), studies(one, other))
    names = [x.assembly for x in findings if x.assembly]
    assert names == sorted(names, reverse=True)
    assert findings == codes.judge(project(), studies(one, other))


# Requirement files


def good():
    figures = {"clause": "1", "source": "nbc-2020", "mark": "found", "place": "1", "at_least": 1}
    return {"question": "q", "article": "1", "topic": "thermal", "order": 1, "title": "t", "judge": "at_least",
            "subject": "building", "editions": {"nbc-2020": figures}}  # fmt: skip


def test_a_requirement_without_clause_source_place_or_mark_does_not_load(tmp_path):
    path, edition = tmp_path / "q.yaml", code_set("nbc-2020")
    assert requirement(good(), path, edition).id == "nbc-2020/1/q"
    for key in ("clause", "source", "mark", "place"):
        content = good()
        del content["editions"]["nbc-2020"][key]
        with pytest.raises(CatalogueError):
            requirement(content, path, edition)
    for key in ("question", "judge", "subject", "order"):
        content = good()
        del content[key]
        with pytest.raises(CatalogueError, match=key):
            requirement(content, path, edition)
    content = good()
    content["editions"]["nbc-2020"]["mark"] = "given"
    with pytest.raises(CatalogueError):
        requirement(content, path, edition)
    assert requirement(good() | {"editions": {}}, path, edition) is None


def test_every_source_of_the_requirements_is_described():
    for set_id in codes.sets():
        for one in requirements(set_id):
            assert one.source in all_sources()
            assert one.figures.get("via", one.source) in all_sources()


@pytest.mark.parametrize("set_id", codes.sets())
def test_what_a_code_applies_to_names_its_source(set_id):
    content = code_set(set_id).content
    rows = [content["applies"], *content.get("scopes", {}).values()]
    rows += [content[key] for key in ("zones", "rounding") if key in content]
    assert all(row["clause"] for row in rows)
    for edition in content["editions"]:
        rows += [edition["published"], *edition.get("adopted", ())]
    for row in rows:
        assert row["place"] and row["mark"] in ("found", "memory", "derived")
        assert row["source"] in all_sources() and row.get("via", row["source"]) in all_sources()


# Judges


@given(st.floats(-1e3, 1e3), st.floats(-1e3, 1e3))
def test_at_least_and_at_most_divide_the_line(value, limit):
    assert judges.at_least(value, limit) or judges.at_most(value, limit)
    if abs(value - limit) > abs(limit) * 1e-8 + 1e-12:
        assert judges.at_least(value, limit) != judges.at_most(value, limit)


@pytest.mark.parametrize(("value", "decimals", "rounded"), [
    (1.9893, 2, 1.99), (2.965, 2, 2.97), (2.6 + 0.365, 2, 2.97), (2.9649, 2, 2.96), (4.665, 2, 4.67),
    (2.5, 0, 3), (2.345, None, 2.345),
])  # fmt: skip
def test_half_is_rounded_up_as_by_hand(value, decimals, rounded):
    assert judges.rounded(value, decimals) == rounded


def test_the_other_judges():
    assert judges.between(1, 1, 2) and judges.between(2, 1, 2) and not judges.between(2.01, 1, 2)
    assert judges.one_of("a", ("a", "b")) and not judges.one_of("c", ("a", "b"))
    assert judges.ratio_at_least(1, 5, 0.2) and not judges.ratio_at_least(0.99, 5, 0.2)
    assert judges.ratio_at_least(1, 0, 0.2) and not judges.ratio_at_least(0, 0, 0.2)
    assert judges.present(0) and not any(judges.present(nothing) for nothing in (None, "", (), []))


class TestWhichFigure:
    """The figure that rests on memory is named, not the layer alone."""

    def framed(self, *, batt="given", share=False, wood=False):
        frame = replace(b.member(0.1, R=1.2), name="rafter")
        frame = replace(frame, share=memory(frame.share)) if share else frame
        frame = replace(frame, resistance=memory(frame.resistance)) if wood else frame
        return walls([insulation_first(5.0, mark=batt, frame=frame)])

    @pytest.mark.parametrize(("changes", "words", "step"), [
        ({"batt": "memory"}, "whose figure rests on memory", "supply the figure of"),
        ({"share": True}, "whose share of rafters rests on memory", "state framing.fraction, the share of rafters, of"),
        ({"wood": True}, "whose figure of its rafters rests on memory", "supply the figure of its rafters of"),
        ({"batt": "memory", "share": True}, "whose figure and share of rafters rest on memory", "supply the figure of"),
    ])  # fmt: skip
    def test_it_is_named(self, changes, words, step):
        found = self.framed(**changes)
        assert found.verdict == Verdict.NEEDS_EVIDENCE
        assert words in found.reason and step in found.next_step
        assert ("framing.fraction" in found.next_step) == ("share" in changes)

    def test_nothing_from_memory_asks_nothing(self):
        assert self.framed().verdict == Verdict.MEETS
