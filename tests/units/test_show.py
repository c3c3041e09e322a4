"""Numbers and lengths as printed."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from layerfolio.units.expression import UnitError
from layerfolio.units.grammar import parse
from layerfolio.units.show import (
    as_number,
    customary_length,
    fixed,
    in_units,
    length_figure,
    length_text,
    metric_length,
    significant,
)
from layerfolio.units.table import KINDS


@pytest.mark.parametrize(
    ("value", "text"),
    [
        (5.3, "5.300"), (0.12345, "0.1235"), (-0.5, "−0.5000"), (46023, "46020"), (9999.6, "10000"), (0.99996, "1.000"),
        (0, "0.000"), (-0.0, "0.000"), (0.00012, "0.0001200"), (2e-10, "2.000·10⁻¹⁰"), (-4.8e-11, "−4.800·10⁻¹¹"),
        (1e6, "1000000"), (1.5e7, "1.500·10⁷"), (0.1, "0.1000"), (100, "100.0"), (1234.56, "1235"),
    ],
)  # fmt: skip
def test_significant(value, text):
    assert significant(value) == text


@given(st.floats(min_value=1e-30, max_value=1e30), st.integers(2, 8), st.sampled_from([1, -1]))
def test_significant_reads_back_within_its_digits(value, digits, sign):
    assert as_number(significant(sign * value, digits)) == pytest.approx(sign * value, rel=0.51 * 10 ** (1 - digits))


@pytest.mark.parametrize(
    ("value", "decimals", "text"), [(-0.04, 1, "0.0"), (-0.06, 1, "−0.1"), (2.835, 0, "3"), (1, 2, "1.00")]
)
def test_fixed(value, decimals, text):
    assert fixed(value, decimals) == text


def test_what_is_no_number_is_not_printed():
    for value in (float("nan"), float("inf")):
        with pytest.raises(ValueError, match="cannot be printed"):
            significant(value)


@pytest.mark.parametrize(
    ("written", "metric", "customary"),
    [
        ("38 mm", '38 mm (1 1/2")', '1 1/2" (38 mm)'),
        ("38mm", '38 mm (1 1/2")', '1 1/2" (38 mm)'),
        ("12.7 mm", '12.7 mm (1/2")', '1/2" (12.7 mm)'),
        ("1-1/2 in", '38 mm (1 1/2")', '1 1/2" (38 mm)'),
        ("19/32 in", '15.1 mm (19/32")', '19/32" (15.1 mm)'),
        ('5 1/2"', '140 mm (5 1/2")', '5 1/2" (140 mm)'),
        ("3 ft 6 in", "1067 mm (3'-6\")", "3'-6\" (1067 mm)"),
        ("8'", "2438 mm (8')", "8' (2438 mm)"),
        ("9.6 m", "9.6 m (31'-5 15/16\")", "31'-5 15/16\" (9.6 m)"),
        ("0.6 mm", '0.6 mm (0.024")', '0.024" (0.6 mm)'),
        ("0.15 mm", '0.15 mm (0.0059")', '0.0059" (0.15 mm)'),
        ("-200 mm", '−200 mm (−7 7/8")', '−7 7/8" (−200 mm)'),
        ("2 yd", "1829 mm (6'-0\")", "6'-0\" (1829 mm)"),
    ],
)
def test_lengths_stand_as_written_with_the_other_system_in_brackets(written, metric, customary):
    length = parse(written, "length")
    assert length_text(length, "metric") == metric
    assert length_text(length, "customary") == customary


def test_figures_of_drawings_are_millimetres_or_inches():
    assert length_figure(parse("9.6 m", "length"), "metric") == "9600"
    assert length_figure(parse("19/32 in", "length"), "customary") == '19/32"'
    assert length_figure(parse("19/32 in", "length"), "customary", as_written=False) == '5/8"'
    assert length_figure(0.0127, "metric") == "12.7"
    assert metric_length(12.5) == "12.5 m" and metric_length(9.996) == "9996 mm"


@given(st.integers(2, 16 * 12 * 40))
def test_inches_to_a_sixteenth_read_back(sixteenths):
    metres = sixteenths / 16 * 0.0254
    assert parse(customary_length(metres), "length").value == pytest.approx(metres, rel=1e-12)


@given(st.floats(min_value=0.004, max_value=20))
def test_customary_lengths_are_within_half_a_sixteenth(metres):
    assert parse(customary_length(metres), "length").value == pytest.approx(metres, abs=0.0254 / 32 + 1e-9)


@pytest.mark.parametrize(
    ("value", "unit", "expected"),
    [
        (57.2135e-12, "perm", 1.0), (0.176110, "h.ft2.F/Btu", 1.0), (0.04, "Btu.in/(h.ft2.F)", 0.27734),
        (20, "degF", 68.0),
        (20, "degC", 20.0), (4600, "F.d", 8280.0), (800, "in2/ft", 0.377953), (800, "mm2/m", 800.0),
        (0.0381, "in", 1.5),
        (0.2, "1", 0.2), (0.2, "%", 20.0), (450, "kPa", 0.45), (2e-10, "perm.in", 137.625),
        (5.678263, "Btu/(h.ft2.F)", 1.0),
    ],
)  # fmt: skip
def test_in_units(value, unit, expected):
    assert in_units(value, unit) == pytest.approx(expected, rel=2e-5)


def test_in_units_refuses_what_it_does_not_know():
    for unit in ("parsnips", "kg.m", "m/m/m/m"):
        with pytest.raises(UnitError):
            in_units(1.0, unit)


@pytest.mark.parametrize("kind", KINDS)
def test_the_house_unit_of_every_kind_is_itself(kind):
    assert in_units(3.0, KINDS[kind].unit) == pytest.approx(3.0)


@pytest.mark.parametrize(
    ("value", "decimals", "text"),
    [(11.25, 1, "11.3"), (56.25, 1, "56.3"), (0.5, 0, "1"), (2.5, 0, "3"), (2.675, 2, "2.68"), (1.1 * 1.5, 1, "1.7"),
     (-11.25, 1, "−11.3"), (11.2499, 1, "11.2"), (-0.04, 1, "0.0"), (123456789.5, 0, "123456790"), (0.0, 2, "0.00")],
)  # fmt: skip
def test_a_half_is_rounded_up_on_the_decimals_that_people_see(value, decimals, text):
    assert fixed(value, decimals) == text


@pytest.mark.parametrize(
    ("value", "digits", "text"),
    [(11.25, 3, "11.3"), (9.375, 3, "9.38"), (0.90625, 4, "0.9063"), (7.6475, 4, "7.648"), (9.9996, 4, "10.00"),
     (99999.5, 5, "100000"),
     (46025.0, 4, "46030"), (2.5e-10, 1, "3·10⁻¹⁰"), (9.9999e-5, 4, "0.0001000"), (9.99996e-11, 4, "1.000·10⁻¹⁰")],
)  # fmt: skip
def test_significant_digits_round_a_half_up_too(value, digits, text):
    assert significant(value, digits) == text
