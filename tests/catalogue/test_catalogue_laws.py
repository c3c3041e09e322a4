"""Laws that hold for every material file, whatever it holds."""

import re

import pytest

from layerfolio.catalogue.hatches import families
from layerfolio.catalogue.materials import material, names
from layerfolio.catalogue.sources import all_sources

# Vapour figures that were read, not remembered: the timber catalogue, the code's own note, single measured records.
VAPOUR_READ_IN = {"timber-catalogue", "nbc-2020", "masea"}
HEAT_READ_IN = {"iso-10456-2007", "ashrae-hof-2013", "timber-catalogue", "din-v-4108-4", "masea"}
PLAUSIBLE = {  # lowest and highest figure that a building material can have
    "conductivity": (0.017, 400),
    "density": (5, 11500),
    "specific_heat": (100, 2400),
    "resistance": (0.01, 6),
    "mu": (1, 1_000_000),
    "s_d": (0.01, 1500),
    "permeance": (1e-12, 4e-9),
}
CAPITALS = {"EPDM", "PVC", "No.", "Douglas"}  # words a title may spell with a capital inside it

every_material = pytest.mark.parametrize("one", [material(name) for name in names()], ids=lambda one: one.name)


def figures(one):
    """(quantity, datum) of everything in the file, chosen or standing beside."""
    for quantity in ("conductivity", "density", "specific_heat", "resistance"):
        if datum := getattr(one, quantity):
            yield quantity, datum
    if one.vapour:
        yield from ((one.vapour.basis, datum) for datum in (one.vapour.dry, one.vapour.wet) if datum)
    yield from ((other.quantity, other.datum) for other in one.also_published)


def test_the_catalogue_holds_what_a_small_merchant_needs():
    assert len(names()) >= 120
    wanted = {"larch-board", "spruce", "mineral-wool-board", "hemp-batt", "gypsum-board"}
    assert wanted <= set(names())
    assert "panel-15" not in names()  # a project's own


@every_material
def test_every_figure_says_where_it_comes_from(one):
    for _, datum in figures(one):
        assert datum.origin.chosen_by == "catalogue"
        assert datum.origin.source in all_sources()
        assert not datum.origin.via or datum.origin.via in all_sources()
        assert datum.origin.mark in ("found", "memory", "derived")
        assert datum.origin.place or datum.origin.source == "common-practice"


@every_material
def test_found_only_where_something_was_read(one):
    for quantity, datum in figures(one):
        if datum.origin.mark != "found":
            continue
        allowed = VAPOUR_READ_IN if quantity in ("mu", "s_d", "permeance") else HEAT_READ_IN
        assert datum.origin.source in allowed, quantity
        if datum.origin.source in ("iso-10456-2007", "ashrae-hof-2013", "nbc-2020", "din-v-4108-4", "masea"):
            assert datum.origin.via, "a source not opened itself names where it was read"


@every_material
def test_practice_and_memory_are_never_called_found(one):
    for _, datum in figures(one):
        if datum.origin.source in ("common-practice", "din-4108-4", "iso-13370-2017"):
            assert datum.origin.mark == "memory"


@every_material
def test_heat_of_an_insulant_never_comes_from_iso_10456(one):
    """ISO 10456 gives no conductivity for insulants: declared values apply (wood-based boards are none there)."""
    if one.insulating and not one.timber and one.conductivity:
        assert one.conductivity.origin.source != "iso-10456-2007"


@every_material
def test_figures_are_plausible(one):
    for quantity, datum in figures(one):
        low, high = PLAUSIBLE[quantity]
        assert low <= datum.value <= high, quantity


@every_material
def test_wet_is_never_tighter_than_dry(one):
    vapour = one.vapour
    if vapour and vapour.dry and vapour.wet:
        if vapour.basis == "permeance":
            assert vapour.dry.value <= vapour.wet.value
        else:
            assert vapour.wet.value <= vapour.dry.value
        assert vapour.single == (vapour.dry is vapour.wet)


@every_material
def test_vapour_of_the_product_as_built_is_never_of_a_membrane_at_one_thickness(one):
    if one.membrane and one.vapour:
        assert one.vapour.at_thickness is None


@every_material
def test_family_and_flags_agree(one):
    assert one.family in families()
    assert one.metal <= (one.family in ("metal", "membrane"))
    assert (one.family == "metal") <= one.metal
    assert one.membrane <= (one.family == "membrane")
    if one.family in ("foam", "metal", "membrane", "glass"):
        assert not one.absorbent
    if one.family in ("timber", "timber-board", "plywood", "strand-board", "particle-board"):
        assert one.timber
    if one.insulating and one.conductivity:
        assert one.conductivity.value < 0.2


@every_material
def test_what_is_missing_is_said(one):
    """A missing heat or vapour figure of a layer is named under `needs`, so that a sheet can ask for it."""
    heat = one.conductivity or one.resistance or one.membrane
    assert bool(heat) != ("conductivity" in one.needs)
    if "vapour" in one.needs:
        assert one.vapour is None
    for quantity in ("density", "specific_heat"):
        if quantity in one.needs:
            assert getattr(one, quantity) is None


@every_material
def test_wood_panels_leave_a_permeance_verdict_to_their_own_report(one):
    panel = one.family in ("plywood", "strand-board", "particle-board") and one.vapour and not one.resistance
    if panel and one.name != "lvl":
        assert one.decided_by_report == ("permeance",)


@every_material
def test_other_figures_differ_from_the_chosen_one(one):
    chosen = {("conductivity", one.conductivity.value)} if one.conductivity else set()
    for other in one.disagreeing():
        assert other.what
        assert (other.quantity, other.datum.value) not in chosen
        assert other.quantity not in ("density", "specific_heat")


@every_material
def test_titles_are_plain_words_that_fit_the_layer_table(one):
    assert len(one.title) <= 38
    assert one.title[0].isupper()
    for word in one.title.split()[1:]:
        assert word in CAPITALS or word == word.lower(), word
    assert re.fullmatch(r"[A-Za-z0-9 ,.%³/-]+", one.title)
    assert re.fullmatch(r"[a-z0-9]+(-[a-z0-9]+)*", one.name)


@every_material
def test_no_maker_is_named(one):
    words = " ".join((one.title, one.note, *(other.what for other in one.also_published)))
    assert not re.search(r"[®™©]|\b(GmbH|Inc|Ltd|Corp|AG|brand|trademark)\b", words)


def test_titles_are_unique():
    titles = [material(name).title for name in names()]
    assert len(titles) == len(set(titles))
