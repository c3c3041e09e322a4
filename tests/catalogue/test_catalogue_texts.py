"""Sources, hatch families and notices."""

import re

import pytest

from layerfolio.catalogue.files import CatalogueError
from layerfolio.catalogue.hatches import families, printed_name
from layerfolio.catalogue.notices import all_notices, notice
from layerfolio.catalogue.sources import all_sources, printed, source
from layerfolio.drawing.hatches import FAMILIES
from layerfolio.home import folder
from layerfolio.steps.formula import REGISTRY


def test_the_drawing_room_implements_exactly_these_families():
    assert tuple(families()) == FAMILIES


def test_legend_words_fit_their_column():
    assert all(len(words) <= 24 for words in families().values())
    assert len(set(families().values())) == len(families())
    with pytest.raises(KeyError):
        printed_name("velvet")


def test_the_source_file_is_sorted_by_key():
    text = (folder("shared") / "sources.yaml").read_text(encoding="utf-8")
    keys = re.findall(r"^([a-z0-9.-]+):", text, flags=re.MULTILINE)
    assert keys == sorted(set(keys))


@pytest.mark.parametrize("one", all_sources().values(), ids=lambda one: one.key)
def test_every_source_says_what_it_is_and_how_it_was_read(one):
    assert one.short and one.title and one.publisher and one.what and one.read
    assert one.year is None or 1950 < one.year < 2030
    assert len(one.short) <= 45
    assert not one.address.startswith("http")


def test_every_formula_names_a_described_source():
    import layerfolio.formulas.thermal
    import layerfolio.formulas.vapour  # noqa: F401

    assert REGISTRY
    missing = {one.source.split(",")[0] for one in REGISTRY.values()} - set(all_sources())
    assert not missing


def test_unknown_source():
    with pytest.raises(KeyError):
        source("the-neighbour")


def test_how_a_source_prints():
    assert printed("iso-6946-2017", "6.7.2") == "ISO 6946:2017, 6.7.2"
    assert printed("iso-6946-2017") == "ISO 6946:2017"
    assert printed("test report HB-1 (invented)") == "test report HB-1 (invented)"


SOURCE = "a-1: {short: A, title: A, publisher: A, year: 2000, what: a, read: a}\n"


def test_sources_of_a_code_join_and_a_key_stands_once(tmp_path, monkeypatch):
    code = tmp_path / "codes" / "some"
    code.mkdir(parents=True)
    (tmp_path / "sources.yaml").write_text(SOURCE, encoding="utf-8")
    (code / "sources.yaml").write_text(SOURCE.replace("a-1", "b-1"), encoding="utf-8")
    monkeypatch.setattr("layerfolio.catalogue.sources.folder", lambda name: tmp_path)
    assert list(all_sources.__wrapped__()) == ["a-1", "b-1"]
    (code / "sources.yaml").write_text(SOURCE, encoding="utf-8")
    with pytest.raises(CatalogueError, match="described twice"):
        all_sources.__wrapped__()


@pytest.mark.parametrize("text", ["a-1: {short: A}\n", SOURCE.replace("}", ", colour: red}"), "a-1: A\n"])
def test_a_source_that_says_too_little_or_too_much_does_not_load(tmp_path, monkeypatch, text):
    (tmp_path / "sources.yaml").write_text(text, encoding="utf-8")
    monkeypatch.setattr("layerfolio.catalogue.sources.folder", lambda name: tmp_path)
    with pytest.raises(CatalogueError, match="a-1"):
        all_sources.__wrapped__()


def test_the_strip_says_who_has_the_final_say():
    words = "The final say rests with a licensed professional and the authority having jurisdiction."
    assert notice("title-strip").paragraphs == (words,)


def test_the_cover_says_the_same():
    text = notice("cover").text
    assert "licensed professional" in text and "authority having jurisdiction" in text and "final say" in text


@pytest.mark.parametrize("id", ["structure", "moisture", "fire", "alternatives", "data-marks", "who-decides"])
def test_the_notices_that_sheets_rely_on_exist(id):
    assert notice(id).paragraphs


@pytest.mark.parametrize("one", all_notices(), ids=lambda one: one.id)
def test_no_notice_claims_what_only_an_authority_can(one):
    assert one.title and one.prints_on
    words = set(re.findall(r"[a-z]+", one.text.casefold()))
    assert not words & {"approved", "complies", "compliant", "guaranteed", "certified"}
    assert all(len(paragraph) < 400 for paragraph in one.paragraphs)


def test_every_mark_is_explained():
    text = notice("data-marks").text
    assert all(f"{mark}:" in text for mark in ("Found", "Memory", "Derived", "Given"))


@pytest.mark.parametrize("id", ["", "../sources", "nothing"])
def test_unknown_notice(id):
    with pytest.raises(KeyError):
        notice(id)
