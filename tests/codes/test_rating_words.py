"""A basis is compared by what it names, not by its spelling; what names no rating gets a caution with its place."""

from types import SimpleNamespace as N

import pytest
from hypothesis import given
from hypothesis import strategies as st

from layerfolio.codes.rating import basis_cautions, rated_to, understood

BOTH = ("CSA A440.2", "NFRC 100")


@pytest.mark.parametrize(("basis", "standard"), [
    ("rated to NFRC100", "NFRC 100"), ("NFRC rated", "NFRC 100"), ("nfrc-100", "NFRC 100"),
    ("NFRC label", "NFRC 100"),
    ("NFRC 100 label", "NFRC 100"), ("label NFRC 100", "NFRC 100"), ("to CSA-A440.2", "CSA A440.2"),
    ("csa a440.2:19", "CSA A440.2"),
    ("rated  to  nfrc 100-2020", "NFRC 100"), ("NFRC 100-2020", "NFRC 100"), 
    ("rated to NFRC 100, label 7 (invented)", "NFRC 100"),
    ("NFRC 200", ""), ("NFRC 1001", ""), ("NFRC", ""), ("not rated to NFRC 100", ""), ("NFRC 100 pending", ""), ("CSA rated", ""),
    ("unrated", ""), ("rated", ""), ("rated to CSA A440.22", ""), ("guess", ""), ("declared to NFRC 100", ""), ("", ""),
])  # fmt: skip
def test_words_of_a_basis(basis, standard):
    assert rated_to(basis, BOTH) == standard


@given(st.text(" -_", max_size=3), st.sampled_from(BOTH), st.sampled_from([str.lower, str.upper, str.title]))
def test_spaces_hyphens_and_capitals_make_no_difference(between, name, case):
    assert rated_to(case(f"rated to {name.replace(' ', between)}"), BOTH) == name


def cautions(basis, set_id="irc-2021", kind="window"):
    one = N(basis=basis, transmittance=1.0, kind=kind)
    return list(basis_cautions(N(code=N(set=set_id), openings={"A4": one})))


@pytest.mark.parametrize(("basis", "words"), [
    ("guess", 'names no rating that irc-2021 takes; it understands "rated to NFRC 100"'),
    ("ratd to NFRC 100", 'did you mean "rated to NFRC 100"?'), ("rated to nfcr 100", 'did you mean "rated to NFRC 100"?'),
])  # fmt: skip
def test_a_basis_that_names_none_is_told(basis, words):
    (found,) = cautions(basis)
    assert found.path == "openings.A4.basis" and words in found.message


@pytest.mark.parametrize("basis", ["NFRC rated", "declared to EN 14351-1", "computed by ISO 10077-1"])
def test_others_are_not(basis):
    assert cautions(basis) == []


def test_what_a_set_understands_goes_by_the_kind_and_a_set_without_limits_asks_nothing():
    assert "ANSI/DASMA 105" in understood("irc-2021", "vehicle-door")
    assert understood("nbc-2020", "window") == BOTH
    assert cautions("guess", "iso") == [] and cautions("guess", "nbc-2020")
    assert cautions("guess", kind="hatch") == []
