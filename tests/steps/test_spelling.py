"""What a step looks like in print: symbols, numbers, result."""

from layerfolio.formulas import moisture
from layerfolio.formulas import thermal as f
from layerfolio.steps.formula import Formula
from layerfolio.steps.spelling import spell
from layerfolio.steps.trace import Recorder


def spelled(formula, system="metric", **arguments):
    record = Recorder()
    record.step(formula, **arguments)
    return spell(record.done().steps()[0], system)


def test_a_layer():
    words = spelled(f.layer_resistance, d=0.140, lam=0.036)
    assert (words.left, words.symbols, words.numbers, words.result) == ("{R}", "{d} / {lam}", "0.14 / 0.036", "3.889")


def test_sums_and_brackets():
    words = spelled(f.framed_layer_resistance, f=(0.2, 0.8), R=(1.564, 4.6))
    assert words.symbols == "1 / (Σ {f} / {R})"
    assert words.numbers == "1 / (0.2 / 1.564 + 0.8 / 4.6)"
    assert words.result == "3.314"


def test_a_negative_number_keeps_its_sign():
    words = spelled(f.interface_temperature, theta_i=20, theta_e=-27, R_x=0.13, R_T=5.2)
    assert words.numbers == "20 − (20 − (−27)) · 0.13 / 5.2"
    assert words.result == "18.83"  # 18.825, a half


def test_functions_and_negative_numbers_keep_their_brackets():
    words = spelled(moisture.saturation_over_ice, theta=-9.08)
    assert words.symbols == "610.5 · exp(21.875 · {theta} / (265.5 + {theta}))"
    assert words.numbers == "610.5 · exp(21.875 · (−9.08) / (265.5 + (−9.08)))"
    assert words.result == "281.4"


def test_a_logarithm_prints_as_ln():
    words = spelled(moisture.temperature_over_water, p_sat_min=1460.0)
    assert words.symbols == "237.3 · ln({p_sat_min} / 610.5) / (17.269 − ln({p_sat_min} / 610.5))"
    assert words.numbers.startswith("237.3 · ln(1460 / 610.5)")


def test_customary_where_the_formula_holds_in_it():
    words = spelled(f.layer_resistance, "customary", d=0.0254, lam=0.1442279)
    assert words.unit == "h.ft2.F/Btu"
    assert words.numbers == "1 / 1.000"


def _difference(*, R_upper: float, R_lower: float) -> float:
    """A difference of near numbers."""
    return R_upper - R_lower


def test_more_digits_where_numbers_nearly_cancel():
    words = spelled(Formula(_difference, "R", "none, 1"), R_upper=5.00012, R_lower=5.00001)
    assert abs(eval(words.numbers.replace("−", "-")) - 0.00011) < 1e-7


def test_no_more_digits_than_the_printed_result_needs():
    words = spelled(f.framing_share_of_heat, U_fr=0.068033043924, R_upper=5.6008970231)
    assert words.numbers == "0.06803 · 5.601" and words.result == "0.3810"
