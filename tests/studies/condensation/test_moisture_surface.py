"""Surface humidity: the factor each month asks, the critical month, and the factor the section has."""

import pytest

from builders import assembly, layer, member
from layerfolio.studies.climate_year import outside_of
from layerfolio.studies.condensation.surface import CORROSION, MOULD, need
from layerfolio.studies.indoor_air import year_by_humidity
from moisture_cases import CLASS_2, CLASS_3, CLASS_4, HALF, HUMIDITY, TEMPERATURE, WALLS, months_of, study, wall

# Own figures, found twice; None where the room is as warm as the outside. Limit 80 %, January first.
TABLE = {
    "class 2": (CLASS_2, [.533, .523, .503, .349, .010, -.537, None, -.551, .234, .405, .533, .529], "November", .5335),
    "class 3": (CLASS_3, [.684, .679, .679, .536, .184, -.389, None, -.414, .392, .579, .707, .686], "November", .707),
    "class 3 x 1.10": (CLASS_3.with_excess_times(1.10, "x 1.10"),
                       [.723, .720, .725, .586, .234, -.345, None, -.373, .437, .626, .752, .727], "November", .752),
    "class 4": (CLASS_4, [.804, .804, .822, .696, .346, -.244, None, -.279, .539, .731, .850, .812], "November", .850),
    "50 %": (HALF, [.754, .737, .665, .508, .078, -1.458, None, -2.688, .078, .473, .649, .727], "January", .754),
    "65 %": (year_by_humidity(TEMPERATURE, HUMIDITY, 20.0, 0.65),
             [.890, .882, .849, .779, .586, -.104, None, -.656, .586, .763, .842, .877], "January", .890),
}  # fmt: skip


@pytest.mark.parametrize("name", TABLE)
def test_factor_asked_month_by_month(name):
    year, monthly, critical, required = TABLE[name]
    found = need(year, outside_of("outside air", year), MOULD)
    for value, expected in zip(found.monthly, monthly, strict=True):
        assert (value is None) == (expected is None)
        assert value is None or value == pytest.approx(expected, abs=0.0006)
    assert found.critical_month == critical
    assert found.required == pytest.approx(required, abs=0.0006)


def test_the_critical_month_turns_with_the_rule_for_indoor_humidity():
    """By class November, by constant humidity January: the coldest month is not always the one that asks most."""
    assert TABLE["class 3"][2] != TABLE["50 %"][2]


def test_corrosion_asks_more_than_mould():
    outside = outside_of("outside air", CLASS_2)
    assert CORROSION < MOULD
    assert need(CLASS_2, outside, CORROSION).monthly[0] > need(CLASS_2, outside, MOULD).monthly[0]


def test_factor_of_a_plane_section():
    found = study(wall(WALLS["D"]), CLASS_3).surface
    total = 4.3123 - 0.13 - 0.04 + 0.25 + 0.04
    assert found.provided == found.through_insulation == pytest.approx(1 - 0.25 / total, abs=1e-4)
    assert found.through_framing is None and found.keeps_dry


def test_the_framed_section_gives_the_lowest_factor():
    rows = [
        layer(1, name="board", d=0.012, lam=0.13, mu=50),
        layer(2, name="batts", d=0.14, lam=0.04, mu=1, frame=member(0.2, lam=0.13)),
        layer(3, name="gypsum", d=0.0125, lam=0.25, mu=10),
    ]
    found = study(assembly(rows), CLASS_3).surface
    through_stud = 0.25 + 0.012 / 0.13 + 0.14 / 0.13 + 0.05 + 0.04
    assert found.through_framing == pytest.approx(1 - 0.25 / through_stud)
    assert found.provided == found.through_framing < found.through_insulation


@pytest.mark.parametrize(("resistance", "keeps"), [(0.5635, True), (0.5625, False)])
def test_both_sides_of_the_limit(resistance, keeps):
    """Class 3 asks 0.70683: 1 - 0.25 / R_T reaches it at R_T 0.8527 with the films of this check, 0.25 and 0.04."""
    one = assembly([layer(1, name="wall", R=resistance, s_d=1.0)])
    found = study(one, CLASS_3).surface
    assert found.mould.required == pytest.approx(0.70683, abs=1e-5)
    assert found.keeps_dry is keeps


def test_films_of_the_project_do_not_move_the_surface_check():
    """`surfaces` of the project file counts for heat and for the balance, not here."""
    from dataclasses import replace

    from layerfolio.catalogue.datum import Datum, Origin

    own = Datum(0.5, Origin("layer", "project file"))
    usual = wall(WALLS["D"])
    changed = replace(usual, inside_film=own, outside_film=own)
    assert study(usual, CLASS_3).surface == study(changed, CLASS_3).surface
    assert study(usual, CLASS_3).expected.months != study(changed, CLASS_3).expected.months


def test_months_in_which_the_room_air_is_over_the_limit_are_named_and_left_out():
    """Class 3: the room has 67 % in August, over the 60 % of corrosion. At 80 % no month is over."""
    outside = outside_of("outside air", CLASS_3)
    found = need(CLASS_3, outside, CORROSION)
    assert found.beyond == ("June", "August")
    assert found.required == max(x for x in found.monthly if x is not None and x < 1)
    assert need(CLASS_3, outside, MOULD).beyond == ()
    wet = study(wall(WALLS["A"]), year_by_humidity(TEMPERATURE, HUMIDITY, 20.0, 0.85))
    assert len(wet.surface.mould.beyond) == 11 and not wet.surface.keeps_dry
    assert any("room air itself" in words for words in wet.cautions)


def test_a_room_colder_than_outside_asks_nothing():
    cold_store = months_of((15.0,) * 12, (0.7,) * 12, (2.0,) * 12, (500.0,) * 12)
    found = study(wall(WALLS["D"]), cold_store).surface
    assert found.mould.required is None and found.mould.critical_month == "" and found.keeps_dry
