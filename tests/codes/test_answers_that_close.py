"""A line that asks for an answer closes, or says what is left, once the project file gives that answer by the key it names."""

import re
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from codes_builders import finding
from layerfolio.codes import sets
from layerfolio.codes.document_words import known_words
from layerfolio.codes.findings import Verdict
from layerfolio.codes.judging import gate
from layerfolio.codes.requirements import requirements
from layerfolio.dossier import compile_dossier, documented, open_project
from layerfolio.reading.schema import ABSENT

PROJECT = """
layerfolio: 1
project: {{title: Shed, date: 2027-02-03}}
building: {{occupancy: {occupancy}, storeys: 1, building_area: 40 m2, conditioned_floor_area: 36 m2{building}}}
code: {{set: {set_id}, zone: "6"{code}}}
climate: {{heating_degree_days: 4600 K.d}}
assemblies:
  W1: {{kind: wall, area: 30 m2{wall}, layers: [
    {{material: larch-board, thickness: 19 mm, serves: [weather face]}}, {{material: mineral-wool-batt, thickness: 140 mm}},
    {{material: osb, thickness: 15 mm, serves: [bracing, vapour control, air control], seams: taped}}]}}
  W2: {{kind: wall, area: 30 m2, layers: [{{material: osb, thickness: 15 mm, serves: [air control], seams: taped}}]}}
{more}
"""
PAPER = "{title: Structural design, number: S-7, issuer: an engineer, for: [%s]%s}"


def loaded(folder, *, set_id="nbc-2020", occupancy="house", building="", code="", wall="", documents=(), more=""):
    papers = f"documents: [{', '.join(documents)}]" if documents else more
    path = folder / "project.yaml"
    path.write_text(
        PROJECT.format(set_id=set_id, occupancy=occupancy, building=building, code=code, wall=wall, more=papers), encoding="utf-8"
    )
    return compile_dossier(open_project(path))


def line(dossier, ending, subject=None):
    (found,) = [one for one in dossier.findings if one.id.endswith(ending) and one.assembly == subject]
    return found


class TestAccessoryStructure:
    @pytest.mark.parametrize("occupancy", ["workshop", "storage"])
    @pytest.mark.parametrize(("said", "verdict"), [
        ("", "needs judgement"), (", accessory: true", "meets"), (", accessory: false", "does not meet"),
    ])  # fmt: skip
    def test_whether_the_american_set_applies(self, tmp_path, occupancy, said, verdict):
        found = line(loaded(tmp_path, set_id="irc-2021", occupancy=occupancy, building=said), "/applies")
        assert found.verdict == verdict
        assert ("building.accessory" in found.next_step) == (said == "")

    def test_what_is_stated_stands_in_the_line(self, tmp_path):
        found = line(loaded(tmp_path, set_id="irc-2021", occupancy="workshop", building=", accessory: true"), "/applies")
        assert "accessory structure of a dwelling as the project file states" in found.reason

    def test_lines_held_back_are_free_then(self, tmp_path):
        def open_lines(said):
            found = loaded(tmp_path, set_id="irc-2021", occupancy="workshop", building=said).findings
            return [one.id for one in found if one.verdict == "needs judgement"]

        assert len(open_lines(", accessory: true")) < len(open_lines(""))


class TestAbsent:
    @pytest.mark.parametrize("word", [one for one in ABSENT if one != "openings"])
    def test_each_word_closes_a_line_that_names_it(self, tmp_path, word):
        before = [one for one in loaded(tmp_path).findings if f"building.absent: [{word}]" in one.next_step]
        after = loaded(tmp_path, building=f", absent: [{word}]")
        assert len(before) == 1 and before[0].verdict == "needs evidence"
        closed = line(after, before[0].id.partition("/")[2])
        assert closed.verdict == "not asked" and "as stated in the project file" in closed.reason and not closed.next_step

    def test_every_word_of_the_data_is_one_of_the_key(self):
        used = {one.rule["absent"] for set_id in sets() for one in requirements(set_id) if "absent" in one.rule}
        assert used == set(ABSENT) - {"openings"}

    @pytest.mark.parametrize("set_id", ["nbc-2020", "irc-2021"])
    def test_a_building_without_openings(self, tmp_path, set_id):
        ending = {"nbc-2020": "/glazed-area", "irc-2021": "/openings-near-line"}[set_id]
        near = {"set_id": set_id, "wall": ", distance_to_boundary: 1.2 m"}
        asked = line(loaded(tmp_path, **near, building=", sprinklered: false"), ending, "W1")
        assert asked.verdict == "needs evidence" and "building.absent: [openings]" in asked.next_step
        closed = line(loaded(tmp_path, **near, building=", sprinklered: false, absent: [openings]"), ending, "W1")
        assert closed.verdict in ("not asked", "meets")

    def test_no_openings_and_an_opening_contradict_each_other(self, tmp_path):
        window = "openings: {A1: {kind: window, in: W1, width: 1 m, height: 1 m}}"
        with pytest.raises(Exception, match="absent") as found:
            loaded(tmp_path, building=", absent: [openings]", more=window)
        assert "building.absent" in str(found.value)

    @pytest.mark.parametrize(("said", "verdict"), [
        ("", "needs evidence"), (", meets_roof: false", "not asked"), (", meets_roof: true", "needs evidence"),
        (", meets_roof: true, clearance_to_roof: 50 mm", "meets"),
    ])  # fmt: skip
    def test_a_wall_that_meets_no_roof(self, tmp_path, said, verdict):
        found = line(loaded(tmp_path, wall=said), "/cladding-to-roof", "W1")
        assert found.verdict == verdict
        assert ("meets_roof: false" in found.next_step) == (verdict == "needs evidence")


class TestRoute:
    @pytest.mark.parametrize(("route", "wind", "verdict", "step"), [
        (None, 500, "needs evidence", "code.air_route"), ("9.36.2.10", 500, "needs evidence", "laps of 50 mm"),
        ("CAN/ULC-S742", 500, "needs evidence", "test report to CAN/ULC-S742"),
        ("ASTM E2357", 650, "needs evidence", "test report to ASTM E2357"), ("ASTM E2357", 651, "does not meet", "another route"),
        ("ASTM E2357", None, "needs evidence", "wind_pressure_1_50"),
    ])  # fmt: skip
    def test_what_is_left_is_of_the_route_that_is_named(self, tmp_path, route, wind, verdict, step):
        """The third route is open to 650 Pa (NBC 2020, 9.36.2.9.(1)(c))."""
        code = f', air_route: "{route}"' if route else ""
        more = f"site_loads: {{wind_pressure_1_50: {wind} Pa}}" if wind else ""
        found = line(loaded(tmp_path, code=code, more=more), "/air-routes")
        assert (found.verdict, step in found.next_step) == (verdict, True)


class TestGivenPapers:
    @pytest.mark.parametrize(("word", "ending"), [
        ("structure", "/framing"), ("soil gas", "/soil-gas"), ("plans", "/drawings"), ("elevations", "/drawings"),
        ("foundation", "/foundations"), ("frost", "/foundations"), ("heating", "/heating"), ("air barrier", "/air-routes"),
        ("plans", "/smoke-alarms"), ("details", "/two-planes"), ("photographs", "/insulation-contact"),
    ])  # fmt: skip
    def test_a_paper_for_it_leaves_its_review(self, tmp_path, word, ending):
        before, after = loaded(tmp_path), documented(loaded(tmp_path, documents=[PAPER % (word, "")]))
        found = line(after, ending)
        assert line(before, ending).verdict == "needs evidence" and found.verdict == "needs judgement"
        assert "S-7" in found.given and "the authority reviews Structural design, S-7" in found.next_step
        assert not found.next_step.startswith("supply")
        (row,) = [one for one in after.register.rows if one.document and one.document.number == "S-7"]
        assert row.number in found.evidence

    @pytest.mark.parametrize(("ending", "subject"), [("/air-sealing", None), ("/alternatives", None), ("/loads", None)])
    def test_american_lines(self, tmp_path, ending, subject):
        papers = f"air_changes_at_50_pa: 2\ndocuments: [{PAPER % ('alternative solution, air barrier, structure', '')}]"
        found = line(loaded(tmp_path, set_id="irc-2021", more=papers), ending, subject)
        assert found.verdict == "needs judgement" and "S-7" in found.next_step

    def test_one_for_an_assembly_speaks_for_that_alone(self, tmp_path):
        found = loaded(tmp_path, documents=[PAPER % ("W1, air barrier", "")])
        verdicts = [str(line(found, "/air-barrier", one).verdict) for one in ("W1", "W2")]
        assert verdicts == ["needs judgement", "needs evidence"]

    @pytest.mark.parametrize(("day", "verdict"), [("2027-02-03", "needs judgement"), ("2027-02-02", "needs evidence")])
    def test_one_that_has_expired_is_named_and_asked_for_anew(self, tmp_path, day, verdict):
        found = line(loaded(tmp_path, documents=[PAPER % ("structure", f", expires: {day}")]), "/framing")
        assert found.verdict == verdict
        assert ("newer edition" in found.next_step) == (verdict == "needs evidence")

    def test_one_that_nobody_could_find_again_is_named_with_what_it_lacks(self, tmp_path):
        found = line(loaded(tmp_path, documents=["{title: Structural design, for: [structure]}"]), "/framing")
        assert found.verdict == "needs evidence"
        assert re.search("supply .*; state number, and issuer or edition, of Structural design", found.next_step)

    def test_nothing_is_said_to_be_met_by_a_paper(self, tmp_path):
        words = sorted({one for set_id in sets() for rule in requirements(set_id) for one in rule.rule.get("papers", ())})
        for set_id in ("nbc-2020", "irc-2021"):
            before, after = (
                loaded(tmp_path, set_id=set_id, documents=papers) for papers in ((), [PAPER % (", ".join(words), "")])
            )
            assert sum(one.verdict == "meets" for one in before.findings) == sum(one.verdict == "meets" for one in after.findings)

    def test_every_word_of_a_requirement_is_known_for_documents(self):
        words = {one for set_id in sets() for rule in requirements(set_id) for one in rule.rule.get("papers", ())}
        assert words <= set(known_words())


class TestHazard:
    def test_the_question_of_reach_names_the_key_that_is_missing(self, tmp_path):
        found = line(loaded(tmp_path, occupancy="workshop"), "/energy-scope")
        assert found.next_step == "state building.hazard (low, medium or high)" and "hazard is not given" in found.reason

    def test_low_hazard_closes_it(self, tmp_path):
        assert line(loaded(tmp_path, occupancy="workshop", building=", hazard: low"), "/energy-scope").verdict == "meets"

    def test_another_occupancy_is_asked_by_its_group(self, tmp_path):
        assert "building.occupancy" in line(loaded(tmp_path, occupancy="other"), "/energy-scope").next_step


class TestOpenReach:
    """Where it is unknown whether a set applies, *meets* is a question; a failure stays one and says what is open."""

    @given(verdict=st.sampled_from(Verdict), reason=st.sampled_from(["", "so it is"]), answer=st.sampled_from(["yes", "unknown"]))
    def test_each_verdict(self, verdict, reason, answer):
        one = replace(finding(verdict, "do this"), reason=reason)
        said = replace(finding(Verdict.NEEDS_JUDGEMENT, "state the occupancy"), clause="1.1")
        gated = gate(one, answer, said)
        turns = answer == "unknown" and verdict is Verdict.MEETS
        assert gated.verdict is (Verdict.NEEDS_JUDGEMENT if turns else verdict)
        tells = answer == "unknown" and verdict in (Verdict.MEETS, Verdict.DOES_NOT_MEET)
        assert ("whether it is asked is open (1.1)" in gated.reason) == tells
        assert not gated.reason.startswith(("; ", "but")) and "; ;" not in gated.what_follows
        assert ("state the occupancy" in gated.next_step) == tells
        assert ("do this" in gated.next_step) == (not turns)

    def test_a_failing_line_of_a_workshop_under_the_american_set(self, tmp_path):
        found = loaded(tmp_path, set_id="irc-2021", occupancy="workshop").findings
        of_set = [one for one in found if one.id.startswith("irc") and one.topic != "applicability"]
        failing = [one for one in of_set if one.verdict == "does not meet"]
        assert failing and all("whether it is asked is open (R101.2)" in one.reason for one in failing)
