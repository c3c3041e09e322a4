"""Which document is expected of what: each standard with source, place and mark; everything in the catalogue has an entry."""

import pytest

from layerfolio.catalogue import code_sets, materials
from layerfolio.catalogue.expected_documents import (
    claims,
    expected_documents,
    for_material,
    for_member,
    for_opening,
    named,
    read,
    region_of,
    regions,
)
from layerfolio.catalogue.files import MARKS, CatalogueError
from layerfolio.catalogue.hatches import families
from layerfolio.catalogue.sources import all_sources
from layerfolio.reading.openings import KINDS

STANDARDS = [(one, x) for one in expected_documents() for found in one.standards.values() for x in found]


def texts(name, region):
    return " ".join(x.text for x in named(name).standards.get(region, ()))


class TestWhatIsPublished:
    """Names of standards as product and code texts give them; those read in a source carry the mark found."""

    @pytest.mark.parametrize(
        ("name", "region", "standard", "mark"),
        [
            ("cellulose", "canada", "CAN/ULC-S703", "found"),  # NBC 2020, Part 9, accepted insulation standards
            ("wood-fibre-board", "canada", "CAN/ULC-S706.1", "found"),  # NBC 2020, table of 9.23.17.2
            ("strand-board", "canada", "CSA O325", "found"),  # pages on panel marks
            ("gypsum-board", "canada", "ASTM C1396", "found"),  # NBC 2020, Part 9
            ("gypsum-board", "united-states", "ASTM C1396", "memory"),
            ("fibre-cement", "united-states", "ASTM C1186", "found"),  # IRC 2018, page 403 of the scans
            ("fibre-cement", "canada", "ASTM C1186", "memory"),
            ("membrane", "canada", "CAN/CGSB-51.34", "found"),  # NBC 2020, 9.25.4.2
            ("membrane", "united-states", "ASTM E2556", "found"),  # IRC 2021, R703.2
            ("window", "canada", "CSA A440.2", "found"),  # NBC 2020, section 9.36
            ("window", "europe", "EN 14351-1", "memory"),
            ("i-joist", "united-states", "ASTM D5055", "memory"),
            ("lumber", "canada", "19 %", "found"),  # NBC 2020, 9.3.2.5
            ("flame-spread", "united-states", "200 at most, smoke 450 at most", "found"),  # IRC 2021, R302.9
        ],
    )
    def test_standard_and_mark(self, name, region, standard, mark):
        found = [x for x in named(name).standards[region] if standard in x.text]
        assert [x.origin.mark for x in found] == [mark]

    def test_nothing_european_is_marked_as_read(self):
        """No European product standard was opened."""
        assert {x.origin.mark for one in expected_documents() for x in one.standards.get("europe", ())} == {"memory"}


@pytest.mark.parametrize(("one", "standard"), STANDARDS, ids=lambda x: getattr(x, "name", None) or x.text)
def test_every_standard_says_where_it_was_read(one, standard):
    assert standard.origin.source in all_sources()
    assert standard.origin.place
    assert standard.origin.mark in MARKS
    if standard.origin.source == "common-practice":
        assert standard.origin.mark == "memory"  # that source is what nobody read


class TestEverythingHasAnEntry:
    def test_each_material_of_the_catalogue_by_its_own_name(self):
        listed = [name for one in expected_documents() for name in one.materials]
        assert sorted(listed) == sorted(materials.names())

    def test_each_hatch_family_but_air(self):
        listed = {name for one in expected_documents() for name in one.families}
        assert set(families()) - listed == {"air"}
        assert listed <= set(families())

    def test_each_kind_of_opening(self):
        assert {name for one in expected_documents() for name in one.openings} == {*KINDS, "join"}

    def test_what_nobody_described_is_any_other_material(self):
        assert for_material("moon-dust", "air").name == "other"

    def test_a_name_of_the_catalogue_goes_before_its_family(self):
        assert for_material("cellulose-dense-pack", "loose-fill").name == "cellulose"
        assert for_material("own-fill", "loose-fill").name == "plant-fibre"

    def test_members_that_are_products(self):
        assert for_member("Web").name == "i-joist"
        assert for_member("stud") is None

    def test_openings(self):
        assert for_opening("skylight").name == "window"
        assert for_opening("hatch").name == "hatch"


class TestRegions:
    def test_every_code_set_has_one(self):
        assert {name: region_of(name).name for name in code_sets.set_ids()}
        assert region_of("nbc-2020").name == "canada"
        assert region_of("irc-2021").name == "united-states"
        assert region_of("iso").name == "europe"

    def test_an_unknown_code_has_none(self):
        assert region_of("moon-2020") is None
        assert named("cellulose").expected_in(None) == ()

    def test_no_code_is_in_two(self):
        codes = [code for one in regions() for code in one.codes]
        assert len(codes) == len(set(codes))


def test_claims_are_told_apart_by_their_words():
    words = [word for one in claims() for word in one.words]
    assert len(words) == len(set(words)) and all(word == word.lower() for word in words)


GOOD = "- {name: a, title: A, shows: b, expected: {canada: [{standard: S, source: iso-6946-2017, place: 1, mark: memory}]}}"


@pytest.mark.parametrize(
    ("wrong", "message"),
    [
        (GOOD.replace("source: iso-6946-2017, ", ""), "no source"),
        (GOOD.replace(", mark: memory", ""), "no mark"),
        (GOOD.replace("mark: memory", "mark: given"), "no mark"),
        (GOOD.replace("place: 1, ", ""), "place"),
        (GOOD.replace("standard: S, ", ""), "needs its name"),
        (GOOD.replace("canada", "atlantis"), "atlantis"),
        (GOOD.replace("shows: b, ", ""), "shows"),
        (GOOD.replace("title: A", "title: A, colour: red"), "colour"),
        (GOOD.replace("mark: memory", "mark: memory, year: 1"), "year"),
    ],
)
def test_a_row_that_does_not_say_where_it_comes_from_does_not_load(tmp_path, wrong, message):
    file = tmp_path / "wrong.yaml"
    file.write_text(wrong, encoding="utf-8")
    with pytest.raises(CatalogueError, match=message):
        read(file)


def test_the_good_row_loads(tmp_path):
    file = tmp_path / "good.yaml"
    file.write_text(GOOD, encoding="utf-8")
    assert read(file)[0].standards["canada"][0].origin.mark == "memory"
