"""The printed steps: January at one plane can be followed with a calculator, and so can everything else."""

import pytest

from calculator import recompute
from layerfolio.steps.spelling import spell
from layerfolio.steps.trace import Choice, Given, Section, Step
from layerfolio.units.show import as_number
from moisture_cases import CLASS_2, CLASS_3, CLASS_4, HALF, WALLS, published_wall, study, wall

STUDIES = {
    "D": study(wall(WALLS["D"]), CLASS_3), "A": study(wall(WALLS["A"]), CLASS_3), "B": study(wall(WALLS["B"]), HALF),
    "published": study(published_wall(), CLASS_2), "ground": study(wall(WALLS["D"], faces="ground"), CLASS_3),
    "two planes": study(
        wall((("sheathing", 0.012, 0.13, 60, None), ("outer fill", 0.1, 0.04, 1, None),
              ("tight board", 0.018, 0.13, 120, None), ("inner fill", 0.06, 0.04, 1, None),
              ("gypsum", 0.0125, 0.25, 10, None))),
        CLASS_4,
    ),
    "zone": study(wall((("tight board", 0.02, 0.13, 2000, None), ("fill", 0.5, 0.04, 30, None))), CLASS_3),
    "one layer": study(wall((("block", 0.1, 0.5, 10, None),)), CLASS_2),
}  # fmt: skip


def part(found, key):
    """The entries of one section."""
    inside, entries = False, []
    for entry in found.trace.entries:
        if isinstance(entry, Section):
            inside = entry.key == key
        elif inside:
            entries.append(entry)
    return entries


@pytest.mark.parametrize("name", STUDIES)
def test_every_printed_line_recomputes(name):
    steps = STUDIES[name].trace.steps()
    assert steps
    for step in steps:
        words = spell(step)
        assert recompute(words.numbers) == pytest.approx(as_number(words.result), rel=1e-3), words


@pytest.mark.parametrize("name", STUDIES)
def test_every_value_that_goes_into_a_step_was_given_or_found_before(name):
    """A reader must not meet a number that came from nowhere. Layers' own resistances and s_d stand in their tables."""
    known = {value.resistance for value in STUDIES[name].expected.values} | {2e-10, 0.25}
    known |= {value.s_d for value in STUDIES[name].expected.values}
    seen = list(known)
    strips = {"R", "s_d"}  # parts of a layer, where the plane lies inside it
    for entry in STUDIES[name].trace.entries:
        if isinstance(entry, Given):
            seen.append(entry.value)
        elif isinstance(entry, Step):
            for quantity, value in entry.arguments:
                if quantity in strips or entry.formula.name in ("class_excess", "temperature_factor"):
                    continue
                assert any(value == pytest.approx(one, rel=1e-9) for one in seen), (entry.formula.name, quantity, value)
            seen.append(entry.value)


class TestJanuaryOfCaseD:
    """By hand: outside -10 degC, 80 %; room 20 degC, class 3. Ice branch at the plane."""

    entries = part(STUDIES["D"], "plane")

    def step(self, name):
        return next(e for e in self.entries if isinstance(e, Step) and e.formula.name == name)

    def test_the_chain_leads_from_films_to_the_amount(self):
        names = [e.formula.name for e in self.entries if isinstance(e, Step)]
        assert names == [
            "resistance_along", "resistance_to_plane", "interface_temperature", "saturation_over_ice",
            "air_layers_to_room", "air_layers_to_outside", "condensation_rate", "condensate", "accumulated",
        ]  # fmt: skip

    def test_figures_of_the_chain(self):
        assert self.step("resistance_along").value == pytest.approx(4.3123, abs=1e-4)
        assert self.step("interface_temperature").value == pytest.approx(-9.08, abs=0.005)
        assert self.step("saturation_over_ice").value == pytest.approx(281.4, abs=0.05)
        assert self.step("air_layers_to_room").value == pytest.approx(2.265)
        assert self.step("air_layers_to_outside").value == pytest.approx(2.4)
        assert self.step("condensate").value * 1000 == pytest.approx(157.59, abs=0.01)
        assert self.step("accumulated").value * 1000 == pytest.approx(456.18, abs=0.01)

    def test_it_ends_at_the_figure_of_the_balance(self):
        january = STUDIES["D"].expected.month("January")
        assert self.step("condensate").value == pytest.approx(january.planes[0].flow, rel=1e-9)
        assert self.step("accumulated").value == pytest.approx(january.planes[0].accumulated, rel=1e-9)

    def test_both_airs_come_first(self):
        values = [e.value for e in part(STUDIES["D"], "airs") if isinstance(e, Step)]
        assert values[-1] == pytest.approx(1017.5, abs=0.05) and values[1] == pytest.approx(207.5, abs=0.05)


def test_without_condensation_the_month_of_the_picture_ends_in_a_relative_humidity():
    entries = part(STUDIES["A"], "plane")
    last = [e for e in entries if isinstance(e, Step)][-1]
    assert last.formula.name == "relative_humidity" and last.value < 1
    every = STUDIES["A"].expected.profiles
    pairs = [zip(one.pressure[1:-1], one.saturation[1:-1], strict=True) for one in every]
    highest = max(p / s for pair in pairs for p, s in pair)
    assert last.value == pytest.approx(highest)
    assert any(isinstance(e, Choice) and "No condensation" in e.text for e in entries)


def test_between_two_wet_planes_the_other_plane_is_given():
    entries = part(STUDIES["two planes"], "plane")
    assert [e.quantity for e in entries if isinstance(e, Given) and e.quantity in ("p_1", "p_2")] == ["p_2"]


def test_values_of_both_runs_are_listed_with_their_cups():
    given = [e for e in part(STUDIES["D"], "cups") if isinstance(e, Given)]
    assert [e.value for e in given] == [0.125, 2.0, pytest.approx(0.14), pytest.approx(2.4)]
    assert all("one value for both cups, both runs" in e.about for e in given)


def test_surface_section_ends_in_the_factor_asked():
    steps = [e for e in part(STUDIES["D"], "surface") if isinstance(e, Step)]
    assert steps[-1].value == pytest.approx(STUDIES["D"].surface.mould.required)
    assert STUDIES["D"].surface.provided in [step.value for step in steps]


def test_a_single_layer_has_no_plane_to_show():
    assert any(isinstance(e, Choice) and e.text == "No plane to show" for e in part(STUDIES["one layer"], "plane"))


def test_figures_from_memory_carry_that_mark():
    figures = [e.figure for e in STUDIES["D"].trace.entries if isinstance(e, Given) and e.figure is not None]
    marks = {(f.value, f.origin.mark) for f in figures if f.origin.chosen_by == "default"}
    assert {(810.0, "memory"), (0.8, "memory"), (1200.0, "found")} <= marks
