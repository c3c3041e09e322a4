"""What is found of junctions: a line for each control through the building, one for each place where a control stops."""

from types import SimpleNamespace as N

import pytest

from codes_builders import of_resistance, studies
from codes_envelope import building
from layerfolio import codes
from layerfolio.assembly.junction_types import Junction, Link
from layerfolio.codes.context import Envelope
from layerfolio.codes.findings import Verdict
from layerfolio.codes.junction_lines import sheets, subject

LETTERS = {"A": "air control", "V": "vapour control", "W": "water control", "T": "thermal control"}
LINES = {
    "nbc-2020": {"A": "9.25.3.3/air-line", "V": "9.25.4.1/vapour-line", "W": "9.27.3.8/water-line", "T": "9.36.2.5/junctions"},
    "irc-2021": {"A": "N1102.4.1/air-sealing", "W": "R703.4/water-line", "T": "N1102.4.1/thermal-line"},
    "irc-2024": {"A": "N1102.5.1/air-sealing", "W": "R703.4/water-line", "T": "N1102.5.1/thermal-line"},
    "iso": {},
}
ALWAYS = {
    "nbc-2020": ["9.36.2.5/junctions"], "irc-2021": ["N1102.4.1/air-sealing", "N1102.4.1/thermal-line"],
    "irc-2024": ["N1102.5.1/air-sealing", "N1102.5.1/thermal-line"], "iso": [],
}  # fmt: skip


def junction(number=1, kind="sill", of=("W1", "S1"), broken=(), letters="WAVT", cannot=""):
    whole = {x: Link(x, ("W1", "a"), ("S1", "b"), "tape") for x in letters}
    links = tuple((whole | {x: Link(x, ("W1", "a"), None, broken=f"no layer serves {LETTERS[x]}") for x in broken}).values())
    return Junction(number, kind, of, f"{kind.capitalize()}: {' and '.join(of)}", () if cannot else links, cannot=cannot)


def found(set_id, *junctions):
    known = studies(of_resistance(3.0, name="W1", set_id=set_id))
    where = building(set_id=set_id, occupancy="house", zone={"iso": None}.get(set_id, "6"))
    where.assemblies = {"W1": N()}
    findings = codes.judge(where, known, Envelope(thermal={n: x[0] for n, x in known.items()}, junctions=junctions))
    asked = {one.id for one in codes.judging.requirements(set_id) if one.judge == "control_line"}
    return {(one.id.removeprefix(f"{set_id}/"), one.assembly): one for one in findings if one.id in asked}


@pytest.mark.parametrize("set_id", LINES)
class TestLines:
    def test_one_for_each_control_of_the_building(self, set_id):
        lines = found(set_id, junction(1), junction(2, "eave", ("W1", "R1")))
        assert sorted(lines, key=str) == sorted(((one, None) for one in LINES[set_id].values()), key=str)
        for letter, name in LINES[set_id].items():
            line = lines[name, None]
            assert line.given == f"{LETTERS[letter]} passes 2 junctions (D1 and D2)"
            assert "D1 and D2" in line.reason and "stops" not in line.reason

    def test_none_ever_meets_or_fails(self, set_id):
        lines = found(set_id, junction(1, broken="AT"), junction(2, "ridge", ("R1",), cannot="flat"), junction(3))
        assert {one.verdict for one in lines.values()} <= {Verdict.NEEDS_EVIDENCE, Verdict.NEEDS_JUDGEMENT}

    def test_one_more_for_each_junction_where_a_control_stops(self, set_id):
        some = (junction(1, broken="AV"), junction(2, "eave", ("W1", "R1"), broken="T"), junction(3, "ridge", ("R1",)))
        lines = found(set_id, *some)
        stopped = {subject_: one for (_, subject_), one in lines.items() if subject_}
        assert sorted(stopped) == ["eave W1/R1", "sill W1/S1"]
        sill = stopped["sill W1/S1"]
        assert "air control stops: no layer serves air control; vapour control stops" in sill.reason
        assert sill.step == "D1" and sill.verdict is Verdict.NEEDS_JUDGEMENT
        assert sill.next_step.startswith("name the layer that serves air control and vapour control")

    def test_of_what_cannot_meet_the_reason_is_said(self, set_id):
        ((key, line),) = [one for one in found(set_id, junction(1, cannot="slab S1 is no roof")).items() if one[0][1]]
        assert key[1] == "sill W1/S1" and "slab S1 is no roof" in line.reason

    def test_without_junctions_only_what_asks_for_details(self, set_id):
        lines = found(set_id)
        assert sorted(lines) == [(one, None) for one in ALWAYS[set_id]]
        assert all(one.verdict is Verdict.NEEDS_EVIDENCE and one.next_step.startswith("supply") for one in lines.values())

    def test_no_line_for_a_control_that_nothing_carries(self, set_id):
        lines = found(set_id, junction(1, letters="AT"))
        assert not any("water" in one or "vapour" in one for one, _ in lines)


def test_where_it_stops_is_told_apart_from_where_it_passes():
    line = found("nbc-2020", junction(1, broken="A"), junction(2), junction(3))["9.25.3.3/air-line", None]
    assert line.given == "air control passes 2 junctions (D2 and D3); it stops at D1"
    line = found("nbc-2020", junction(1, broken="A"))["9.25.3.3/air-line", None]
    assert line.given == "air control stops at D1"


@pytest.mark.parametrize(("broken", "name"), [
    ("VA", "9.25.3.3/air-line"), ("WV", "9.25.4.1/vapour-line"), ("TW", "9.27.3.8/water-line"), ("T", "9.36.2.5/junctions"),
])  # fmt: skip
def test_a_junction_stands_in_one_line_that_of_its_first_control(broken, name):
    stopped = [one for one, subject_ in found("nbc-2020", junction(1, broken=broken)) if subject_]
    assert stopped == [name]


def test_a_gap_in_the_insulation_is_closed_not_named():
    gap = Junction(1, "eave", ("W1", "R1"), "Eave", (Link("T", ("W1", "a"), ("R1", "b"), broken="200 mm of rafter space"),))
    line = found("nbc-2020", gap)["9.36.2.5/junctions", "eave W1/R1"]
    assert "200 mm of rafter space" in line.reason and line.next_step.startswith("close the gap")


@pytest.mark.parametrize(("numbers", "text"), [
    ([1], "D1"), ([2, 1], "D1 and D2"), ([1, 2, 3], "D1 to D3"), ([3, 3], "D3"),
    ([1, 2, 4, 6, 7, 8], "D1, D2, D4 and D6 to D8"),
])  # fmt: skip
def test_sheets_in_a_sentence(numbers, text):
    assert sheets(numbers) == text


def test_a_subject_names_kind_and_parts():
    assert subject(junction(kind="outside corner", of=("W1",))) == "outside corner W1"


@pytest.mark.parametrize("set_id", codes.sets())
@pytest.mark.parametrize("letter", LETTERS)
def test_under_every_set_a_control_that_stops_is_found(set_id, letter):
    where = building(set_id=set_id, occupancy="house", zone={"qc-r1": "C", "iso": None}.get(set_id, "6"))
    findings = codes.judge(where, {}, Envelope(junctions=(junction(4, broken=letter),)))
    (line,) = [one for one in findings if one.assembly == "sill W1/S1"]
    assert f"{LETTERS[letter]} stops" in line.reason and line.step == "D4"
