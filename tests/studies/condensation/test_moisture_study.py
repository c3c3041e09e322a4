"""The whole study: cups, films, what is missing, odd climates, sensitivity, cautions."""

from dataclasses import replace

import pytest

from builders import assembly, layer
from layerfolio.catalogue.datum import Datum, Origin
from layerfolio.formulas.moisture import saturation_pressure
from layerfolio.studies.condensation.study import films
from moisture_cases import (
    CLASS_2,
    CLASS_3,
    CLASS_4,
    HALF,
    HUMIDITY,
    WALLS,
    WOOL,
    months_of,
    published_wall,
    study,
    wall,
)

PANEL, BATTS, BOARD = (200, 70), (2, 1), (5, 3)


def cup_wall(**changes):
    rows = [
        layer(1, name="board", d=0.06, lam=0.05, mu=BOARD),
        layer(2, name="batts", d=0.14, lam=0.04, mu=BATTS),
        layer(3, name="panel", d=0.015, lam=0.13, mu=PANEL, serves=["vapour control"]),
        layer(4, name="gypsum", d=0.0125, lam=0.25, mu=10),
    ]
    return assembly(rows, **changes)


def cups(run):
    return {value.layer.name: value.cup for value in run.values}


class TestCups:
    def test_as_expected_is_dry_inside_the_main_insulation_and_wet_from_there_outwards(self):
        found = study(cup_wall(), CLASS_2)
        assert cups(found.expected) == {"board": "wet", "batts": "wet", "panel": "dry", "gypsum": "single"}
        assert [value.s_d for value in found.expected.values] == pytest.approx([0.18, 0.14, 3.0, 0.125])

    def test_less_favourable_is_wet_inside_and_for_the_insulation_and_dry_outside(self):
        found = study(cup_wall(), CLASS_2)
        assert cups(found.less_favourable) == {"board": "dry", "batts": "wet", "panel": "wet", "gypsum": "single"}
        assert [value.s_d for value in found.less_favourable.values] == pytest.approx([0.30, 0.14, 1.05, 0.125])

    def test_the_project_can_fix_a_cup_in_both_runs(self):
        found = study(cup_wall(), CLASS_2, vapour_values={"panel": "wet", "board": "dry"})
        for run in (found.expected, found.less_favourable):
            assert cups(run)["panel"] == "wet" and cups(run)["board"] == "dry"
            assert {value.layer.name for value in run.values if value.fixed} == {"panel", "board"}

    def test_the_main_insulation_has_the_greatest_resistance(self):
        one = cup_wall()
        thick_board = replace(one.layers[0], conductivity=Datum(0.01, one.layers[0].conductivity.origin))
        found = study(replace(one, layers=(thick_board, *one.layers[1:])), CLASS_2)
        assert cups(found.expected) == {"board": "wet", "batts": "dry", "panel": "dry", "gypsum": "single"}

    def test_both_runs_stand_beside_each_other(self):
        found = study(wall(WALLS["D"]), CLASS_3)
        assert found.expected.months == found.less_favourable.months  # single figures serve both cups
        assert found.clears and found.clears_less_favourable


class TestFilms:
    def test_by_direction_of_heat_flow(self):
        for direction, inside in (("horizontal", 0.13), ("up", 0.10), ("down", 0.17)):
            assert [film.value for film in films(cup_wall(heat_direction=direction))] == [inside, 0.04]

    def test_none_to_ground(self):
        assert [film.value for film in films(cup_wall(faces="ground"))] == [0.13, 0.0]

    def test_those_of_the_project_count_those_of_the_set_do_not(self):
        own, of_set = (Datum(0.3, Origin(who, "")) for who in ("layer", "code"))
        one = cup_wall()
        assert films(replace(one, inside_film=own, outside_film=own)) == (own, own)
        assert [film.value for film in films(replace(one, inside_film=of_set, outside_film=of_set))] == [0.13, 0.04]


class TestMissing:
    def test_a_layer_without_vapour_figures_is_named_and_nothing_is_guessed(self):
        one = cup_wall()
        bare = replace(one, layers=(one.layers[0], replace(one.layers[1], vapour=None), *one.layers[2:]))
        found = study(bare, CLASS_2)
        assert found.missing_layers == ("batts",)
        assert (found.expected, found.less_favourable, found.two_period, found.clears) == (None, None, None, None)
        assert not found.evaluated and found.surface is not None
        assert any("batts" in getattr(entry, "because", "") for entry in found.trace.entries)

    def test_a_missing_cup_is_named_unless_the_project_fixes_the_other(self):
        one = cup_wall()
        dry_only = replace(one.layers[2], vapour=replace(one.layers[2].vapour, wet=None))
        half = replace(one, layers=(*one.layers[:2], dry_only, one.layers[3]))
        assert study(half, CLASS_2).missing_layers == ("panel",)
        assert study(half, CLASS_2, vapour_values={"panel": "dry"}).evaluated

    @pytest.mark.parametrize("s_d", [0.0, -0.1])
    def test_an_air_layer_of_nothing_is_no_figure(self, s_d):
        one = cup_wall()
        rows = [*one.layers, layer(5, name="membrane", kind="membrane", s_d=s_d)]
        assert study(replace(one, layers=tuple(rows)), CLASS_2).missing_layers == ("membrane",)

    def test_a_layer_without_a_thermal_figure_is_named(self):
        found = study(assembly([layer(1, name="mystery", d=0.1, mu=5), layer(2, d=0.1, lam=0.04, mu=1)]), CLASS_2)
        assert found.missing_layers == ("mystery",) and found.surface is None and not found.evaluated

    def test_without_a_year_the_two_periods_still_stand(self):
        found = study(published_wall(), None, missing_inputs=("climate.monthly.temperature",))
        assert found.missing_inputs == ("climate.monthly.temperature",)
        assert found.expected is None and found.surface is None and not found.evaluated
        assert found.two_period.verdict == "meets"

    def test_layers_outside_a_ventilated_cavity_need_no_figures(self):
        inner = [replace(row, number=row.number + 2) for row in cup_wall().layers]
        cladding = layer(1, name="slate", counts=False)
        cavity = layer(2, name="cavity", kind="cavity", cavity="ventilated", d=0.04, counts=False)
        found = study(assembly([cladding, cavity, *inner]), CLASS_2)
        assert found.evaluated and found.expected.months == study(cup_wall(), CLASS_2).expected.months


class TestOddClimates:
    def test_condensation_in_all_twelve_months(self):
        damp = months_of((-5.0,) * 12, (0.9,) * 12, (20.0,) * 12, (0.7 * saturation_pressure(20.0),) * 12)
        found = study(wall(WALLS["B"]), damp)
        assert (found.expected.outcome, found.expected.start, found.expected.years) == ("does not clear", "January", 2)
        first, second = found.expected.first_year[-1].accumulated, found.expected.months[-1].accumulated
        assert second == pytest.approx(2 * first)
        assert any("all twelve months" in words for words in found.cautions)

    def test_a_room_colder_than_outside_all_year(self):
        """A cold store: vapour moves inwards, and the plane lies on the inner side of the insulation."""
        store = months_of((15, 16, 18, 20, 24, 27, 29, 28, 25, 22, 18, 16), (0.8,) * 12, (-2.0,) * 12, (400.0,) * 12)
        panel = ("panel", 0.012, 0.13, 200, None)
        found = study(wall((("render", 0.02, 1.0, 10, None), WOOL, panel)), store)
        assert found.surface.mould.required is None
        assert {between for _, between in found.expected.planes()} == {("wool", "panel")}
        assert not found.clears
        assert any("colder than outside" in words for words in found.cautions)

    def test_a_wet_inside_surface_is_said(self):
        bad = assembly([layer(1, name="sheet", d=0.002, lam=50.0, mu=100000)])
        found = study(bad, CLASS_4)
        assert found.expected.saturated and any("inside surface itself is wet" in words for words in found.cautions)

    def test_two_dry_spells_start_after_the_longer_one(self):
        """Wet in January, February and July: five dry months come before January, four before July."""
        cold = (-15, -12, 10, 12, 14, 16, -10, 16, 14, 12, 10, 10)
        year = months_of(cold, HUMIDITY, (20.0,) * 12, (0.45 * saturation_pressure(20.0),) * 12)
        found = study(wall(WALLS["B"]), year)
        wet = [m.name for m in found.expected.months if m.flow > 0]
        assert set(wet) == {"January", "February", "July"}
        assert found.expected.start == "January"


class TestSensitivity:
    def rows(self, one, year, **how):
        return {change.key: change for change in study(one, year, **how).sensitivity}

    def test_the_edition_of_2001_on_a_class(self):
        rows = self.rows(wall(WALLS["D"]), CLASS_3)
        assert rows["class-margin"].greatest_accumulation * 1000 == pytest.approx(829.84, abs=0.1)
        assert rows["class-margin"].outcome == "clears" and not rows["class-margin"].turns
        assert "humidity-margin" not in rows

    def test_five_points_on_a_stated_humidity(self):
        rows = self.rows(wall(WALLS["D"]), HALF)
        assert rows["humidity-margin"].greatest_accumulation * 1000 == pytest.approx(915.12, abs=0.1)
        assert "class-margin" not in rows

    def test_ten_points_more_turn_the_answer(self):
        change = self.rows(wall(WALLS["D"]), CLASS_3)["humidity"]
        assert change.outcome == "does not clear" and change.turns

    def test_the_wet_cup_of_the_control_layer(self):
        one = cup_wall()
        tight = replace(one, layers=(replace(layer(1, name="board", d=0.012, lam=0.13, mu=50)), *one.layers[1:]))
        base, rows = study(tight, CLASS_3), self.rows(tight, CLASS_3)
        fixed = study(tight, CLASS_3, vapour_values={"panel": "wet"})
        assert rows["wet-control"].greatest_accumulation == fixed.expected.greatest_accumulation
        assert rows["wet-control"].greatest_accumulation > base.expected.greatest_accumulation

    def test_no_row_for_a_control_layer_with_one_value(self):
        assert "wet-control" not in self.rows(published_wall(), CLASS_2)

    def test_a_blocked_cavity_brings_the_cladding_back(self):
        inner = [replace(row, number=row.number + 2) for row in cup_wall().layers]
        cladding = layer(1, name="metal", d=0.0006, lam=50.0, s_d=1500.0, counts=False)
        cavity = layer(2, name="cavity", kind="cavity", cavity="ventilated", d=0.04, counts=False)
        one = assembly([cladding, cavity, *inner])
        change = self.rows(one, CLASS_3)["blocked-cavity"]
        assert study(one, CLASS_3).expected.outcome == "none"
        assert change.outcome == "does not clear" and change.turns
        same = [layer(1, name="metal", d=0.0006, lam=50.0, s_d=1500.0), layer(2, name="air", R=0.0, s_d=0.01), *inner]
        assert change.greatest_accumulation == study(assembly(same), CLASS_3).expected.greatest_accumulation

    def test_a_cladding_without_figures_is_said_not_guessed(self):
        inner = [replace(row, number=row.number + 2) for row in cup_wall().layers]
        rows = [layer(1, name="slate", d=0.01, counts=False),
                layer(2, name="cavity", kind="cavity", cavity="ventilated", d=0.04, counts=False), *inner]  # fmt: skip
        change = self.rows(assembly(rows), CLASS_3)["blocked-cavity"]
        assert change.outcome is None and "slate" in change.why and not change.turns

    def test_a_coat_of_paint_on_either_side(self):
        rows = self.rows(wall(WALLS["D"]), CLASS_3)
        coat = ("coat", None, None, None, 3.0)
        inside, outside = (*WALLS["D"], coat), (coat, *WALLS["D"])
        for key, painted in (("painted-inside", inside), ("painted-outside", outside)):
            expected = study(wall(painted), CLASS_3).expected
            assert rows[key].greatest_accumulation == pytest.approx(expected.greatest_accumulation)
            assert rows[key].outcome == expected.outcome

    def test_without_a_run_there_is_none(self):
        assert study(wall(WALLS["D"]), None).sensitivity == ()


class TestRunOff:
    def wool_wall(self, absorbent):
        one = wall(WALLS["D"])
        rows = [replace(row, absorbent=absorbent) if row.name == "wool" else row for row in one.layers]
        return replace(one, layers=tuple(rows))

    def test_over_200_grams_beside_a_layer_that_absorbs_nothing(self):
        found = study(self.wool_wall(False), CLASS_3)
        assert any("run off wool" in words and "strand board / wool" in words for words in found.cautions)
        assert not any("run off" in words for words in study(self.wool_wall(True), CLASS_3).cautions)

    def test_up_to_200_grams_nothing_is_said(self):
        mild = CLASS_2.with_excess_times(0.7, "less")
        found = study(self.wool_wall(False), mild)
        assert 0 < found.expected.greatest_accumulation < 0.2
        assert not any("run off" in words for words in found.cautions)
