"""What the Canadian set asks of a shop and not of a house: exits, doors and access; air by Part 6; alarms of dwellings."""

from types import SimpleNamespace as N

import pytest

from codes_builders import project, quantity
from codes_envelope import judged, length, only, opening
from layerfolio.codes.findings import Verdict
from layerfolio.codes.paths import with_paths
from layerfolio.codes.requirements import requirements

SETS = ("nbc-2015", "nbc-2020")


def exits(found):
    return [one for one in found if one.id.endswith("/exits")]


@pytest.mark.parametrize("occupancy", ["house", "dwelling-unit"])
def test_no_line_on_exits_for_dwellings(occupancy):
    assert exits(judged(occupancy=occupancy)) == []


@pytest.mark.parametrize("set_id", SETS)
@pytest.mark.parametrize("occupancy", ["mercantile", "office", "workshop", "other", None])
def test_one_line_on_exits_for_others(occupancy, set_id):
    (found,) = exits(judged(occupancy=occupancy, set_id=set_id))
    assert found.verdict == Verdict.NEEDS_JUDGEMENT and found.mark == "memory"
    assert "9.9" in found.clause and "3.8" in found.clause


def test_the_doors_are_named_with_what_they_lack():
    plain = opening("D1", "door", size=(0.91, 2.03))
    found = exits(judged(openings=[opening(), plain], occupancy="mercantile"))[0]
    assert found.given == "D1: 910 mm wide over the frame, clear width not given"
    assert "clear_opening.width of D1" in found.next_step and "A1" not in found.given
    told = opening("D1", "door", size=(0.91, 2.03), clear_opening=N(width=length(0.85)))
    found = exits(judged(openings=[told], occupancy="mercantile"))[0]
    assert found.given == "D1: 910 mm wide over the frame, 850 mm clear" and "clear_opening" not in found.next_step
    assert exits(judged(occupancy="mercantile"))[0].given == "no door in the project file"


def test_air_of_a_shop_names_no_way_of_dwellings():
    found = only(with_paths(judged(occupancy="mercantile"), project(occupancy="mercantile")), "/ventilation")
    assert found.performance.partition(";")[0] == "a ventilation design to Part 6"
    house = only(with_paths(judged(occupancy="house"), project(occupancy="house")), "/ventilation")
    assert "F326" in house.performance


@pytest.mark.parametrize("set_id", SETS)
def test_articles_on_alarms_rest_on_memory(set_id):
    (alarms,) = [one for one in requirements(set_id) if one.question == "smoke-alarms"]
    assert alarms.mark == "memory"


def test_a_share_of_the_walls_figure_is_said_once():
    for one in judged(zone="6"), judged(zone=None, degree_days=None):
        for question in ("party-walls", "flues", "appendages", "services"):
            asked = only(one, f"/{question}").asked
            assert asked.count("% of the wall's figure") == 1, asked


@pytest.mark.parametrize(("units", "asked", "given"), [
    ("metric", "18 to 28 L/s in normal use", "2 bedrooms, 20 L/s"),
    ("customary", "38.1 to 59.3 cfm (18 to 28 L/s) in normal use", "2 bedrooms, 42.4 cfm (20 L/s)"),
])  # fmt: skip
def test_flows_in_the_system_that_comes_first(units, asked, given):
    """1 cfm is 0.47195 L/s."""
    fan = N(flow=quantity(0.020, "airflow"), recovery=None)
    found = only(judged(units=units, bedrooms=2, ventilation=fan), "/ventilation")
    assert (found.asked, found.given) == (asked, given)


def energy_path_words(occupancy, set_id="nbc-2020"):
    """The performance path that lines of the energy articles name: of a wall, of a window, of airtightness."""
    window = opening("A1", "window", U=1.9)
    where = project(occupancy=occupancy, set_id=set_id)
    found = with_paths(judged(openings=[window], occupancy=occupancy, set_id=set_id), where)
    return {one.performance.partition("; ")[0] for one in found if "/9.36" in one.id and "elsewhere" in one.performance}


class TestEnergyModel:
    """NBC 2020 (read in the Alberta edition of 2023), 9.36.1.3.(4): subsection 9.36.5 is for houses and for buildings of
    dwelling units alone; (1)(c) leaves the energy code for buildings to the others.
    """

    @pytest.mark.parametrize("set_id", ["nbc-2020", "bc-2024"])
    @pytest.mark.parametrize("occupancy", ["mercantile", "office", "workshop", "storage"])
    def test_no_shop_is_sent_to_an_article_of_dwellings(self, occupancy, set_id):
        words = energy_path_words(occupancy, set_id)
        assert words and all("NECB" in one and "9.36.5" not in one for one in words), words

    @pytest.mark.parametrize("occupancy", ["house", "dwelling-unit"])
    def test_dwellings_keep_it(self, occupancy):
        words = energy_path_words(occupancy)
        assert words and all("9.36.5" in one and "NECB" not in one for one in words), words

    @pytest.mark.parametrize("occupancy", ["other", None])
    def test_an_unknown_use_is_told_both(self, occupancy):
        words = energy_path_words(occupancy)
        assert words and all("9.36.5" in one and "NECB" in one for one in words), words
