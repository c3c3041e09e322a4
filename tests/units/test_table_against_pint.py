"""Outside check: the whole table of units against pint, which the tool asks only about words it lacks."""

import pint
import pytest

from layerfolio.units.expression import read_unit
from layerfolio.units.grammar import parse
from layerfolio.units.outside import look_up
from layerfolio.units.symbols import ALIASES, SYMBOLS
from layerfolio.units.table import KINDS, dimension, house_factor

REGISTRY = pint.UnitRegistry(cache_folder=None)

# What pint calls the symbols that it does not know by our name, or knows as something else.
NAMES = {
    "µm": "micrometer", "µg": "microgram", "mil": "thou", "in": "inch", "t": "metric_ton", "gr": "grain", "d": "day",
    "h": "hour", "degC": "delta_degree_Celsius", "degF": "delta_degree_Fahrenheit", "deg": "degree", "L": "liter",
    "cfm": "foot**3/minute", "mph": "mile/hour", "lbf": "pound_force", "plf": "pound_force/foot",
    "psf": "pound_force/foot**2", "psi": "pound_force/inch**2", "ksi": "1000*pound_force/inch**2",
    "pcf": "pound/foot**3", "Btu": "Btu_it", "perm": "grain/(hour*foot**2*inch_Hg_32F)", "%": "percent", "oz": "ounce",
}  # fmt: skip
CARBON = {"kgCO2e": 1.0, "gCO2e": 1e-3, "tCO2e": 1e3, "kgC": 1.0}  # no units of pint


def outside(expression: str) -> pint.Quantity:
    return REGISTRY.Quantity(1, REGISTRY.parse_units("")) * REGISTRY.parse_expression(expression)


@pytest.mark.parametrize("symbol", [s for s in SYMBOLS if s not in CARBON])
def test_symbol(symbol):
    expected = outside(NAMES.get(symbol, symbol)).to_base_units()
    factor, (length, mass, time, temperature, angle, carbon) = SYMBOLS[symbol]
    scale = 57.29577951308232 if angle else 1.0  # pint's base angle is the radian
    assert factor == pytest.approx(expected.magnitude * scale, rel=2e-7)
    names = {"[length]": length, "[mass]": mass, "[time]": time, "[temperature]": temperature}
    assert dict(expected.dimensionality) == {name: power for name, power in names.items() if power}
    assert carbon == 0


def test_carbon_is_no_mass():
    for symbol, factor in CARBON.items():
        assert SYMBOLS[symbol][0] == factor
    assert SYMBOLS["kgCO2e"][1] != SYMBOLS["kg"][1]


@pytest.mark.parametrize("alias", ALIASES)
def test_every_alias_leads_to_the_table(alias):
    assert read_unit(alias) == read_unit(ALIASES[alias])


PUBLISHED = [  # (kind, as written, pint expression for the house unit's value)
    ("conductivity", "W/(m.K)", "W/m/K"), ("conductivity", "W/mK", "W/m/K"), ("conductivity", "W/m.K", "W/m/K"),
    ("conductivity", "W/(m·K)", "W/m/K"), ("conductivity", "W/(m K)", "W/m/K"), ("conductivity", "W m⁻¹ K⁻¹", "W/m/K"),
    ("conductivity", "Btu.in/(h.ft2.F)", "Btu_it*inch/hour/foot**2/delta_degF"),
    ("conductivity", "Btu·in/(hr·ft²·°F)", "Btu_it*inch/hour/foot**2/delta_degF"),
    ("conductivity", "Btu/(h.ft.F)", "Btu_it/hour/foot/delta_degF"),
    ("resistance", "ft2.h.F/Btu", "hour*foot**2*delta_degF/Btu_it"),
    ("resistance", "h·ft²·°F/BTU", "hour*foot**2*delta_degF/Btu_it"),
    ("resistance", "m²·K/W", "m**2*K/W"), ("resistance", "m2K/W", "m**2*K/W"), ("resistance", "K.m2/W", "m**2*K/W"),
    ("resistivity", "h.ft2.F/(Btu.in)", "hour*foot**2*delta_degF/Btu_it/inch"),
    ("transmittance", "W/(m²·K)", "W/m**2/K"), ("transmittance", "W/m2K", "W/m**2/K"),
    ("transmittance", "Btu/(h.ft2.F)", "Btu_it/hour/foot**2/delta_degF"),
    ("point_transmittance", "Btu/(h.F)", "Btu_it/hour/delta_degF"),
    ("permeance", "ng/(Pa.s.m2)", "ng/Pa/s/m**2"), ("permeance", "kg/(m2.s.Pa)", "kg/Pa/s/m**2"),
    ("permeance", "US perm", "grain/(hour*foot**2*inch_Hg_32F)"), ("permeance", "ng/(s·m²·Pa)", "ng/Pa/s/m**2"),
    ("permeability", "perm.in", "grain/(hour*foot**2*inch_Hg_32F)*inch"), ("permeability", "ng/(Pa.s.m)", "ng/Pa/s/m"),
    ("density", "lb/ft3", "pound/foot**3"), ("density", "g/cm3", "g/cm**3"), ("density", "pcf", "pound/foot**3"),
    ("surface_density", "lb/ft2", "pound/foot**2"), ("surface_density", "g/m²", "g/m**2"),
    ("specific_heat", "Btu/(lb.F)", "Btu_it/pound/delta_degF"), ("specific_heat", "kJ/(kg·K)", "kJ/kg/K"),
    ("area", "ft²", "foot**2"), ("area", "sq ft", "foot**2"), ("area", "mm2", "mm**2"),
    ("volume", "ft3", "foot**3"), ("volume", "L", "liter"),
    ("pressure", "psf", "pound_force/foot**2"), ("pressure", "kPa", "kPa"), ("pressure", "N/mm2", "N/mm**2"),
    ("speed", "mph", "mile/hour"), ("speed", "km/h", "km/hour"), ("line_load", "kN/m", "kN/m"),
    ("line_load", "lbf/ft", "pound_force/foot"), ("airflow", "cfm", "foot**3/minute"), ("airflow", "L/s", "liter/s"),
    ("air_leakage", "cfm/ft2", "foot/minute"), ("power", "Btu/h", "Btu_it/hour"), ("energy", "kWh", "kWh"),
    ("time", "min", "minute"), ("mass", "lb", "pound"), ("force", "lbf", "pound_force"),
]  # fmt: skip


@pytest.mark.parametrize(("kind", "unit", "expression"), PUBLISHED)
def test_compound(kind, unit, expression):
    expected = outside(expression).to_base_units().magnitude
    assert parse(f"3 {unit}", kind).value == pytest.approx(3 * expected, rel=1e-6)


@pytest.mark.parametrize(
    ("text", "kind", "expected"),
    [
        ("4600 K.d", "degree_days", 4600.0),
        ("9000 F.d", "degree_days", 5000.0),
        ("1 K.h", "degree_days", 1 / 24),
        ("-40 degF", "temperature", -40.0),
        ("32 °F", "temperature", 0.0),
        ("293.15 K", "temperature", 20.0),
        ("800 mm2/m", "cavity_openings", 800.0),
        ("1 in2/ft", "cavity_openings", 645.16 / 0.3048),
        ("15 cm²/m", "cavity_openings", 1500.0),
        ("500 mm2/m2", "openings_per_area", 500.0),
        ("23 %", "share", 0.23),
        ("0.44 kg/kg", "mass_share", 0.44),
        ("44 %", "mass_share", 0.44),
        ("450 gCO2e/kg", "carbon_per_mass", 0.45),
        ("12 kgCO2e/m2", "carbon_per_area", 12.0),
        ("6:12", "angle", 26.565051177077994),
        ("0.5 rad", "angle", 28.64788975654116),
    ],
)
def test_house_units_that_are_not_plain_si(text, kind, expected):
    assert parse(text, kind).value == pytest.approx(expected, rel=1e-12, abs=1e-12)


def test_constants_of_customary_printing():
    """1 US perm and 1 ft2.h.F/Btu as the conversion tables of the codes print them, to their printed digits."""
    assert parse("1 perm", "permeance").value * 1e12 == pytest.approx(57.2135, abs=5e-5)
    assert parse("R-1", "resistance").value == pytest.approx(0.176110, abs=5e-7)


@pytest.mark.parametrize("kind", KINDS)
def test_example_of_every_kind_reads_as_that_kind(kind):
    quantity = parse(KINDS[kind].example, kind)
    assert quantity.kind == kind and quantity.text == KINDS[kind].example
    assert house_factor(kind) > 0 and len(dimension(kind)) == 6


@pytest.mark.parametrize("word", ["furlong", "rod", "slug", "fortnight", "centimetre"])
def test_a_word_outside_the_table_is_looked_up(word):
    expected = outside(word).to_base_units().magnitude
    assert look_up(word)[0] == pytest.approx(expected)


@pytest.mark.parametrize(
    "word", ["dozen", "degC", "delta_degC", "dB", "x", "import", "__class__", "m**2", "ppm", "ampere"]
)
def test_what_pint_may_not_answer(word):
    assert look_up(word) is None


def test_the_tool_does_not_import_pint_for_units_of_its_own_table():
    import subprocess
    import sys

    script = (
        "import sys; from layerfolio.units.grammar import parse\n"
        "parse('38 mm', 'length'); parse('0.3 Btu.in/(h.ft2.F)', 'conductivity')\n"
        "assert 'pint' not in sys.modules\n"
        "parse('2 furlong', 'length'); assert 'pint' in sys.modules"
    )
    subprocess.run([sys.executable, "-c", script], check=True)
