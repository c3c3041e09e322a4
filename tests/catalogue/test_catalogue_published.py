"""Single published figures, each with its source, typed in here a second time."""

import pytest

from layerfolio.catalogue.climates import climate, climates
from layerfolio.catalogue.materials import material

# On-line timber-component catalogue, layer rows of external-wall/detail/kz/awrhhi08a, pitched-roof/detail/kz/sdmhbi02a
# and their neighbours: conductivity W/(m.K), density kg/m3, specific heat J/(kg.K), vapour resistance factor.
TIMBER_CATALOGUE = {
    "larch-board": (0.155, 600, 1600, 150),
    "clt": (0.13, 500, 1600, 50),
    "gypsum-fibre-board": (0.32, 1000, 1100, 21),
    "gypsum-board-fire": (0.25, 800, 1050, 10),
    "cellulose-dense-pack": (0.040, 50, 2000, 1),
    "wood-fibre-board-wet": (0.045, 250, 2100, 5),
}


@pytest.mark.parametrize(("name", "figures"), TIMBER_CATALOGUE.items())
def test_timber_catalogue(name, figures):
    one = material(name)
    assert (one.conductivity.value, one.density.value, one.specific_heat.value, one.vapour.dry.value) == figures
    assert one.vapour.single
    assert {one.conductivity.origin.source, one.vapour.dry.origin.source} == {"timber-catalogue"}
    assert one.vapour.dry.origin.mark == "found"


# ISO 10456:2007, Table 3, vapour resistance factors dry and wet, from memory.
ISO_10456_VAPOUR = {
    "spruce": (50, 20),
    "hardwood": (200, 50),
    "plywood-300": (150, 50),
    "plywood": (200, 70),
    "plywood-700": (220, 90),
    "plywood-1000": (250, 110),
    "osb": (50, 30),
    "particleboard": (50, 15),
    "fibreboard-250": (5, 3),
    "fibreboard-400": (10, 5),
    "mdf": (20, 12),
    "gypsum-board": (10, 4),
    "linoleum": (1000, 800),
    "concrete": (130, 80),
}


@pytest.mark.parametrize(("name", "cups"), ISO_10456_VAPOUR.items())
def test_iso_10456_vapour_factors_stay_marked_as_memory(name, cups):
    vapour = material(name).vapour
    assert (vapour.dry.value, vapour.wet.value) == cups
    assert {vapour.dry.origin.mark, vapour.wet.origin.mark} == {"memory"}
    assert not vapour.single


# National Building Code of Canada 2020, note A-9.25.5.1.(1): permeance, dry cup, ng/(Pa.s.m2), read.
NBC_NOTE = {
    "gypsum-board-primed": 1300,
    "gypsum-board-latex-painted": 180,
    "cement-board": 590,
    "polyiso-board-foil-faced": 4.3,
    "asphalt-paper-10-minute": 370,
    "asphalt-paper-30-minute": 650,
    "asphalt-paper-60-minute": 1800,
    "asphalt-felt-15": 290,
    "spunbonded-polyolefin": 3646,
}
NBC_NOTE_BESIDE = {
    "gypsum-board": {2600},
    "gypsum-sheathing": {1373},
    "plywood": {23, 74, 40, 57},
    "osb": {44},
    "fibreboard-sheathing": {100, 2900},
    "softwood-boarding": {982},
    "polyiso-board-paper-faced": {61.1},
    "xps": {23, 92},
    "eps": {86, 160},
    "spray-foam-open-cell": {894, 3791},
    "spray-foam-closed-cell": {96},
    "polyethylene-150": {1.6, 5.8},
    "bituminous-paper": {170, 1400},
    "breather-membrane": {30, 1200},
    "brick": {102, 602},
    "mortar": {13, 690},
    "stucco": {75, 240},
    "reinforced-concrete": {23},
}


@pytest.mark.parametrize(("name", "nanograms"), NBC_NOTE.items())
def test_code_note_figures_that_are_used(name, nanograms):
    vapour = material(name).vapour
    assert vapour.basis == "permeance"
    assert vapour.dry.value * 1e12 == pytest.approx(nanograms)
    assert vapour.wet is None and not vapour.single
    assert vapour.dry.origin.mark == "found"


@pytest.mark.parametrize(("name", "nanograms"), NBC_NOTE_BESIDE.items())
def test_code_note_figures_that_stand_beside(name, nanograms):
    beside = {
        round(one.datum.value * 1e12, 6)
        for one in material(name).disagreeing()
        if one.quantity == "permeance" and one.cup == "dry" and one.datum.origin.source == "nbc-2020"
    }
    assert beside == nanograms


def test_both_published_vapour_factors_of_strand_board_stand():
    osb = material("osb")
    others = [one for one in osb.disagreeing() if one.quantity == "mu"]
    assert [(one.datum.value, one.datum.origin.source) for one in others] == [(200.0, "timber-catalogue")]
    assert osb.decided_by_report == ("permeance",)


@pytest.mark.parametrize(
    ("name", "resistance", "source"),
    [  # federal guide "Keeping the Heat In", m2.K/W per 25.4 mm
        ("cork-board", 0.65, "nrcan-keeping-the-heat-in"),
        ("wood-fibre-blown", 0.58, "nrcan-keeping-the-heat-in"),
        ("xps", 0.88, "nrcan-keeping-the-heat-in"),
        # strawbale appendix, ft2.h.F/Btu per inch: 1.55 flat, 1.85 on edge; 1 ft2.h.F/Btu is 0.17611 m2.K/W
        ("straw-bale-flat", 1.55 * 0.176110, "gsbn-strawbale-2018"),
        ("straw-bale-on-edge", 1.85 * 0.176110, "gsbn-strawbale-2018"),
        # light straw-clay proposal: 1.80 at 10 lb/ft3, 0.84 at 50 lb/ft3
        ("light-straw-clay-160", 1.80 * 0.176110, "light-straw-clay-proposal"),
        ("light-straw-clay-800", 0.84 * 0.176110, "light-straw-clay-proposal"),
    ],
)
def test_conductivities_derived_from_a_resistance_per_inch(name, resistance, source):
    figure = material(name).conductivity
    assert figure.value == pytest.approx(0.0254 / resistance, rel=0.005)
    assert (figure.origin.mark, figure.origin.source) == ("derived", source)


def test_open_cell_foam_is_derived_from_the_permeance_of_25_mm():
    foam = material("spray-foam-open-cell").vapour.dry
    assert foam.value == pytest.approx(2e-10 / (894e-12 * 0.025), rel=0.001)
    assert foam.origin.mark == "derived"


def test_steel_framing_per_millimetre():
    """Note A-9.36.2.4.(1) of the NBC: 0.0000161 m2.K/W per mm."""
    (other,) = material("steel-stud").disagreeing()
    assert other.datum.value == pytest.approx(0.001 / 0.0000161, rel=0.001)


# British Columbia Building Code 2024, Table C-2: elevation, HDD18, January 2.5 and 1 %, driving rain, snow, wind 1/50.
PLACES = {
    "Vancouver, City Hall": (40, 2825, -7, -9, 160, 1.8, 0.45),
    "Revelstoke": (440, 4000, -20, -23, 80, 7.2, 0.32),
    "Prince George": (580, 4720, -32, -36, 80, 3.4, 0.37),
    "Tofino": (10, 3150, -2, -4, 300, 1.1, 0.68),
    "Smith River": (660, 7100, -45, -47, 40, 2.8, 0.30),
}


@pytest.mark.parametrize(("place", "figures"), PLACES.items())
def test_climate_rows(place, figures):
    one = climate(place)
    assert figures == (
        one.elevation,
        one.heating_degree_days,
        one.january_2_5,
        one.january_1,
        one.driving_rain_pressure,
        one.snow,
        one.wind_1_50,
    )


@pytest.mark.parametrize("one", climates(), ids=lambda one: one.place)
def test_climate_rows_are_plausible(one):
    assert one.january_1 < one.january_2_5 < one.july_wet < one.july_dry
    assert 0 < one.wind_1_10 < one.wind_1_50 < 1
    assert 2000 < one.heating_degree_days < 8000
    assert (one.origin.mark, one.origin.source) == ("found", "bcbc-2024-climate")


def test_unknown_place():
    with pytest.raises(KeyError):
        climate("Tern Point")
