"""Windows, doors, skylights, glass block and hatches against 9.36.2.7: both sides of every cell, rated and declared values."""

from types import SimpleNamespace as N

import pytest

from codes_builders import amendment, cases
from codes_envelope import DAYS, judged, only, opening
from layerfolio.codes.findings import Verdict
from layerfolio.codes.rating import rated_to

CASES = cases("nbc-openings")
CELLS = list(zip(CASES["zones"], CASES["windows"], CASES["ratings"], CASES["skylights"], strict=True))


def fenestration(one, *others, zone="6", ending="/fenestration", **more):
    return only(judged(openings=(one, *others), zone=zone, degree_days=DAYS[zone], **more), ending, one.name)


@pytest.mark.parametrize(("zone", "limit", "rating", "_"), CELLS)
def test_every_cell_of_windows_and_doors(zone, limit, rating, _):
    at = fenestration(opening(U=limit), zone=zone)
    over = fenestration(opening(U=limit + 0.006), zone=zone)
    assert (at.verdict, over.verdict) == (Verdict.MEETS, Verdict.DOES_NOT_MEET)
    assert at.limit.value == limit and at.place == "Table 9.36.2.7.-A" and at.opening and at.step == "C4"
    rated = fenestration(opening(U=limit + 0.5, rating=rating), zone=zone)
    short = fenestration(opening(U=limit + 0.5, rating=rating - 1), zone=zone)
    assert (rated.verdict, short.verdict) == (Verdict.MEETS, Verdict.DOES_NOT_MEET)


@pytest.mark.parametrize(("zone", "_", "__", "limit"), CELLS)
def test_every_cell_of_skylights(zone, _, __, limit):
    at = fenestration(opening(kind="skylight", U=limit), zone=zone, ending="/skylights")
    over = fenestration(opening(kind="skylight", U=limit + 0.006, rating=99), zone=zone, ending="/skylights")
    assert (at.verdict, over.verdict) == (Verdict.MEETS, Verdict.DOES_NOT_MEET)  # no energy rating serves a skylight
    assert at.limit.value == limit and at.place == "Table 9.36.2.7.-B"


@pytest.mark.parametrize(("zone", "limit"), list(zip(CASES["zones"], CASES["windows_2015"], strict=True)))
@pytest.mark.parametrize("U", [0.5, 5.0])
def test_the_figures_of_2015_decide_nothing(zone, limit, U):
    found = fenestration(opening(U=U), zone=zone, set_id="nbc-2015")
    assert found.limit.value == limit and found.verdict == Verdict.NEEDS_JUDGEMENT and "memory" in found.reason


@pytest.mark.parametrize(("zone", "limit"), list(zip(CASES["zones"], CASES["british_columbia"]["windows"], strict=True)))
def test_british_columbia_asks_more_of_windows(zone, limit):
    at = fenestration(opening(U=limit), zone=zone, set_id="bc-2024")
    over = fenestration(opening(U=limit + 0.006), zone=zone, set_id="bc-2024")
    assert at.limit.value == limit and over.verdict == Verdict.DOES_NOT_MEET
    assert only(judged(openings=[opening("D1", "door")], set_id="bc-2024"), "/doors").verdict == Verdict.NEEDS_JUDGEMENT


def test_four_thousand_degree_days_are_zone_6():
    found = only(judged(openings=[opening(U=1.7)], zone=None, degree_days=4000), "/fenestration")
    milder = only(judged(openings=[opening(U=1.7)], zone=None, degree_days=3999), "/fenestration")
    assert (found.verdict, milder.verdict) == (Verdict.DOES_NOT_MEET, Verdict.MEETS)


@pytest.mark.parametrize(
    "basis", ["declared to EN 14351-1", "not rated to CSA A440.2", "CSA A440.2 intended", "rated to CSA A440.22", ""]
)
def test_a_value_that_is_not_rated_is_a_question_even_if_its_number_passes(basis):
    found = fenestration(opening(U=0.92, basis=basis))
    assert found.verdict == Verdict.NEEDS_JUDGEMENT and "0.92" in found.next_step and "reaches the figure" in found.reason
    assert "does not reach" in fenestration(opening(U=2.92, basis=basis)).reason


def test_a_computed_value_is_a_question():
    found = fenestration(opening(U=0.915, how="computed", basis=""))
    assert found.verdict == Verdict.NEEDS_JUDGEMENT and "computed by ISO 10077-1" in found.next_step


@pytest.mark.parametrize(("basis", "standard"), [
    ("rated to CSA A440.2", "CSA A440.2"), ("Rated to NFRC 100", "NFRC 100"), ("rated to NFRC 100-2020", "NFRC 100"),
    ("rated to CSA A440.2:19", "CSA A440.2"), ("rated to NFRC 1000", ""), ("rated to EN 14351-1", ""),
])  # fmt: skip
def test_rated_standards_go_by_their_exact_name(basis, standard):
    assert rated_to(basis, ["CSA A440.2", "NFRC 100"]) == standard


def test_a_rating_without_a_document_needs_it():
    found = fenestration(opening(U=1.0, papers=()))
    assert found.verdict == Verdict.NEEDS_EVIDENCE and "CSA A440.2" in found.next_step
    assert fenestration(opening(U=2.0, papers=())).verdict == Verdict.DOES_NOT_MEET
    assert fenestration(opening(U=None)).verdict == Verdict.NEEDS_EVIDENCE


def test_one_door_may_be_over_the_limit():
    first, second = opening("D1", "door", U=2.6), opening("D2", "door", U=2.0)
    assert fenestration(first).verdict == Verdict.MEETS
    assert fenestration(first, second).verdict == Verdict.DOES_NOT_MEET and "2 are over" in fenestration(first, second).reason
    assert fenestration(first, opening("D2", "door", U=1.6)).verdict == Verdict.MEETS
    assert fenestration(opening("D1", "door", U=2.61)).verdict == Verdict.DOES_NOT_MEET
    assert fenestration(opening("D1", "door", U=2.6, count=2)).verdict == Verdict.DOES_NOT_MEET
    assert fenestration(opening("A1", "window", U=2.6)).verdict == Verdict.DOES_NOT_MEET


def test_glass_block_by_transmittance_and_area():
    def block(U, area, **more):
        return only(judged(openings=[opening("G1", "glass-block", U=U, size=(area, 1.0), **more)]), "/glass-block").verdict

    assert block(2.9, 1.85) == Verdict.MEETS
    assert block(2.91, 1.85) == Verdict.DOES_NOT_MEET and block(2.9, 1.86) == Verdict.DOES_NOT_MEET
    assert block(2.9, 1.85, papers=()) == Verdict.NEEDS_EVIDENCE and block(None, 1.0) == Verdict.NEEDS_EVIDENCE


@pytest.mark.parametrize(("kind", "ending", "nominal"), [("hatch", "/hatches", 2.6), ("vehicle-door", "/vehicle-doors", 1.1)])
def test_nominal_resistances(kind, ending, nominal):
    def found(R):
        return only(judged(openings=[opening("H1", kind, U=None if R is None else 1 / R)]), ending)

    assert found(nominal + 0.19).verdict == Verdict.MEETS and found(nominal + 0.189).verdict == Verdict.NEEDS_EVIDENCE
    assert found(None).verdict == Verdict.NEEDS_EVIDENCE and found(nominal).limit.value == nominal


def test_an_amended_limit_holds():
    change = amendment("nbc-2020/9.36.2.7/fenestration", "1.2 W/(m2.K)", "by-law 7")
    over = fenestration(opening(U=1.3, rating=40), amendments=[change])
    assert (over.verdict, over.limit.value, over.amended) == (Verdict.DOES_NOT_MEET, 1.2, "by-law 7")
    assert fenestration(opening(U=1.2), amendments=[change]).verdict == Verdict.MEETS


def test_an_open_zone_is_asked():
    found = only(judged(openings=[opening(U=1.5)], zone=None, degree_days=None), "/fenestration")
    assert found.verdict == Verdict.NEEDS_JUDGEMENT and "which zone" in found.next_step and "1.44" in found.reason


@pytest.mark.parametrize(("proves", "verdict"), [
    (("transmittance",), Verdict.MEETS), (("energy rating",), Verdict.MEETS), (("colour",), Verdict.NEEDS_EVIDENCE),
    ((), Verdict.NEEDS_EVIDENCE),
])  # fmt: skip
def test_a_document_proves_only_what_it_names(proves, verdict):
    """A rated window whose document speaks of its colour has no document of its rating."""
    paper = N(number="Z-9", issuer="a test house", edition="2026", expires=None, proves=proves, title="")
    assert fenestration(opening(U=1.0, papers=(paper,))).verdict is verdict


@pytest.mark.parametrize(("said", "verdict", "words"), [
    ({}, Verdict.MEETS, ""),
    ({"expires": "2020-01-01"}, Verdict.NEEDS_EVIDENCE, "has expired (2020-01-01)"),
    ({"proves": ("colour",)}, Verdict.NEEDS_EVIDENCE, "does not say that it proves it"),
    ({"number": None}, Verdict.NEEDS_EVIDENCE, "no document of the rating is given"),
])  # fmt: skip
def test_what_a_document_lacks_is_said(said, verdict, words):
    usual = {"number": "Z-9", "issuer": "a test house", "edition": "2026", "expires": None, "proves": ("transmittance",)}
    found = fenestration(opening(U=1.0, papers=(N(title="", **usual | said),)))
    assert found.verdict is verdict and words in found.reason
