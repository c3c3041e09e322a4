"""What `documents` may be for: a word that names nothing is asked about, every claim and every name is known."""

import pytest

from layerfolio.catalogue.expected_documents import claims
from layerfolio.codes.document_words import PLAIN, USUAL, known_words, word_cautions
from layerfolio.dossier import compile_dossier, open_project
from layerfolio.reading.joins import ProjectDocument

HOUSE = """
layerfolio: 1
project: {title: Shed}
code: {set: iso}
materials: {own-batt: {conductivity: 0.04 W/(m.K)}}
assemblies: {W1: {kind: wall, layers: [{material: own-batt, thickness: 1 m}, {membrane: inner sheet, equivalent_air_layer: 5 m}]}}
documents: [{title: A paper, for: [WORD]}]
"""


def cautions(folder, word):
    (folder / "project.yaml").write_text(HOUSE.replace("WORD", word), encoding="utf-8")
    loaded = open_project(folder / "project.yaml")
    return [one for one in compile_dossier(loaded).cautions if one.path == "documents[0].for"]


@pytest.mark.parametrize(("word", "meant"), [
    ("strucure", "structure"), ("airtightnes", "airtightness"), ("heat recovry", "heat recovery"), ("own-bat", "own-batt"),
])  # fmt: skip
def test_a_misspelt_word_is_asked_about(tmp_path, word, meant):
    (one,) = cautions(tmp_path, word)
    assert f'"{word}"' in one.message and f'did you mean "{meant}"?' in one.message


@pytest.mark.parametrize("word", ["zzzz", "strucure"])
def test_every_accepted_word_is_told(tmp_path, word):
    (one,) = cautions(tmp_path, word)
    told = one.message.partition("Words are ")[2].split(", ")
    assert tuple(told) == known_words() and {"foundation", "frost", "plans", "elevations", "heating", "air barrier"} <= {*told}


@pytest.mark.parametrize("word", ["penetrations", "zzzz"])
def test_a_word_like_none_is_not_taken_for_another(tmp_path, word):
    (one,) = cautions(tmp_path, word)
    assert "did you mean" not in one.message


def test_a_name_like_that_of_an_assembly_is_asked_once(tmp_path):
    assert len(cautions(tmp_path, "W9")) == 1


@pytest.mark.parametrize("word", [
    "W1", "own-batt", "inner sheet", "Structure", "water-resistive barrier",
    *dict.fromkeys([*PLAIN, *(w for one in claims() for w in one.words), *(w for _, words in USUAL for w in words)]),
])  # fmt: skip
def test_names_and_claims_are_known(tmp_path, word):
    assert cautions(tmp_path, word) == []


def test_the_description_of_the_key_lists_the_plain_words():
    assert f"({', '.join(PLAIN)})" in ProjectDocument.KEYS["for_"].about


def test_plain_words_name_claims():
    known = {word for one in claims() for word in one.words}
    assert set(PLAIN) <= known


def test_no_data_is_read_for_plain_words(tmp_path, monkeypatch):
    (tmp_path / "project.yaml").write_text(HOUSE.replace("WORD", "W1, structure"), encoding="utf-8")
    project = open_project(tmp_path / "project.yaml").project
    monkeypatch.setattr("layerfolio.codes.document_words._claim_words", lambda: 1 / 0)
    assert list(word_cautions(project)) == []
