"""Laws that hold for every formula: names in the glossary, right dimension, printed lines that recompute."""

import inspect
import random

import pint
import pytest

import layerfolio.formulas.bracing
import layerfolio.formulas.corrections
import layerfolio.formulas.dowel
import layerfolio.formulas.envelope
import layerfolio.formulas.ground
import layerfolio.formulas.loads
import layerfolio.formulas.moisture
import layerfolio.formulas.openings
import layerfolio.formulas.thermal
import layerfolio.formulas.vapour  # noqa: F401  (they fill the registry)
from calculator import recompute
from layerfolio.glossary import term, terms
from layerfolio.steps.formula import REGISTRY
from layerfolio.steps.spelling import spell
from layerfolio.steps.trace import Recorder
from layerfolio.units.show import as_number, in_units, significant

UNITS = pint.UnitRegistry()
FORMULAS = sorted(REGISTRY.values(), key=lambda f: f.name)

EMPIRICAL = {
    "slightly_ventilated_resistance": ({"A_v": 1000.0, "R_u": 2.0, "R_v": 1.0}, 1.5),
    "unheated_space_resistance": ({"A_i": 12.0, "A_e": (20.0, 10.0), "U_e": (2.0, 1.0), "n_u": 2.0, "V_u": 50.0}, 0.144578),
    "underfloor_transmittance": ({"h_u": 0.5, "U_uw": 2.0, "B": 4.0, "eps": 0.002, "v_w": 2.0, "f_w": 0.05}, 0.5725),
    "fasteners_per_area": ({"a_pin": 0.25, "b_pin": 0.5}, 8.0),
    "fastener_correction": (
        {"alpha": 0.8, "lam_pin": 50.0, "A_pin": 2e-5, "n_pin": 5.0, "d_ins": 0.1, "R_ins": 3.0, "R_T0": 6.0}, 0.01,
    ),
    "rain_correction": ({"p_rain": 2.5, "fx": 0.04, "R_ins": 3.0, "R_T0": 6.0}, 0.025),
    "saturation_over_water": ({"theta": 20.0}, 2336.95),
    "saturation_over_ice": ({"theta": -10.0}, 259.33),
    "temperature_over_water": ({"p_sat_min": 2336.95}, 20.0),
    "temperature_over_ice": ({"p_sat_min": 259.33}, -10.0),
    "class_excess": ({"dp_0": 810.0, "theta_e": 5.0}, 607.5),
    "chart_humidity": ({"phi_1": 0.35, "phi_2": 0.65, "theta_e": 5.0}, 0.5),
    "ventilation_rate": ({"q_V": 0.03, "V": 108.0}, 1.0),
    "air_loss": ({"c_V": 0.34, "n_a": 0.5, "V": 100.0}, 17.0),
    "chart_temperature": ({"theta_e": 15.0}, 22.5),
}
"""Formulas whose constants carry units of their own (limits in mm2/m, degC, Pa), so the dimension law cannot read them:
each with arguments and the value they give by hand."""

RANGES = {
    "m": (0.005, 0.6),
    "W/(m.K)": (0.02, 2.5),
    "m2.K/W": (0.05, 9),
    "W/(m2.K)": (0.1, 5),
    "1": (0.05, 0.9),
    "degC": (-30, 25),
    "m.K/W": (0.5, 40),
    "kg/(m.s.Pa)": (1e-13, 3e-10),
    "kg/(m2.s.Pa)": (1e-11, 5e-9),
    "mm2/m": (501, 1499),
    "Pa": (100, 3000),
    "s": (1e5, 8e6),
    "kg/m2": (0.001, 2),
    "kg/(m2.s)": (1e-9, 1e-6),
    "kg/m3": (20, 2400),
    "m2/m": (0.0005, 0.003),
    "m/s": (1, 8),
    "mm/d": (0.5, 5),
    "W/K": (0.5, 300),
    "m2": (0.3, 200),
    "m3": (30, 2000),
    "m3/s": (0.005, 0.2),
    "J/(kg.K)": (900, 2000),
    "Wh/(m3.K)": (0.3, 0.4),
    "N": (50, 5000),
    "N/m": (2e4, 8e5),
    "N.m": (1, 60),
    "m/N": (1e-6, 2e-5),
    "N/kg": (9.7, 9.9),
}


def parameters(formula):
    return list(inspect.signature(formula.function).parameters.values())


def values_for(formula, seed, length=3):
    """Random arguments in the glossary's ranges; a parameter annotated as a tuple gets several."""
    random_ = random.Random(f"{formula.name}/{seed}")
    found = {}
    for parameter in parameters(formula):
        low, high = RANGES[term(parameter.name).si]
        if formula.within and parameter.name in formula.within:
            low, high = formula.within[parameter.name]
        draw = lambda low=low, high=high: random_.uniform(low, high)  # noqa: E731
        many = "tuple" in str(parameter.annotation)
        found[parameter.name] = tuple(draw() for _ in range(length)) if many else draw()
    return found


@pytest.mark.parametrize("formula", FORMULAS, ids=lambda f: f.name)
class TestEveryFormula:
    def test_names_are_in_the_glossary(self, formula):
        assert formula.result in terms()
        assert {p.name for p in parameters(formula)} <= set(terms())

    def test_is_one_return_expression_with_a_docstring_and_a_source(self, formula):
        assert (formula.title and ", " in formula.source) or formula.source == "common-practice"
        assert not any(name in formula.function.__doc__ for name in ("=", " / "))

    def test_body_has_the_dimension_of_its_result(self, formula):
        if formula.name in EMPIRICAL:
            arguments, expected = EMPIRICAL[formula.name]
            assert formula(**arguments) == pytest.approx(expected, rel=1e-4)
            return

        def with_unit(name, value):
            unit = term(name).si
            if unit == "degC":
                return UNITS.Quantity(value, "kelvin")
            return UNITS.Quantity(value, _pint(unit))

        arguments = {
            name: tuple(with_unit(name, v) for v in value) if isinstance(value, tuple) else with_unit(name, value)
            for name, value in values_for(formula, 0).items()
        }
        result = formula.function(**arguments)
        expected = "kelvin" if term(formula.result).si == "degC" else _pint(term(formula.result).si)
        assert UNITS.Quantity(result).check(UNITS.Quantity(1, expected).dimensionality)

    @pytest.mark.parametrize("system", ["metric", "customary"])
    @pytest.mark.parametrize("seed", range(12))
    def test_printed_line_recomputes_to_the_printed_digits(self, formula, seed, system):
        record = Recorder()
        value = record.step(formula, **values_for(formula, seed))
        words = spell(record.done().steps()[0], system)
        shown = as_number(words.result)
        assert recompute(words.numbers) == pytest.approx(shown, rel=1e-3)
        assert significant(recompute(words.numbers), 4) == significant(shown, 4)
        unit = words.unit if words.unit != "1" else None
        expected = in_units(value, unit) if unit else value
        assert shown == pytest.approx(expected, rel=6e-4)


def _pint(unit):
    return unit.replace(".", "*").replace("m2", "m**2").replace("m3", "m**3") if unit != "1" else ""


def test_every_registered_formula_is_tested():
    assert len(FORMULAS) >= 45


@pytest.mark.parametrize("formula", [f for f in FORMULAS if f.within], ids=lambda f: f.name)
def test_outside_its_range_an_empirical_formula_refuses(formula):
    for name, (low, high) in formula.within.items():
        for value in (low - abs(low) * 0.01 - 0.01, high * 1.01 + 0.01):
            with pytest.raises(ValueError, match="is outside"):
                formula(**{**values_for(formula, 0), name: value})
