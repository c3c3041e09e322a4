"""What a person may write where a quantity belongs, and what is refused with a reason."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from layerfolio.units.grammar import QuantityError, parse, parse_dimensions
from layerfolio.units.table import KINDS


@pytest.mark.parametrize(
    ("text", "millimetres"),
    [
        ("38 mm", 38), ("38mm", 38), ("3.8 cm", 38), (".038 m", 38), ("+38 mm", 38), ("-200 mm", -200),
        ("−200 mm", -200),
        ("1-1/2 in", 38.1), ("1 1/2 in", 38.1), ("1½ in", 38.1), ("½ in", 12.7), ("19/32 in", 15.08125),
        ('5 1/2"', 139.7),
        ("5 1/2″", 139.7), ("1.5 inches", 38.1), ("3 ft 6 in", 1066.8), ("3 ft 6 1/2 in", 1079.5), ("3'-6\"", 1066.8),
        ("3'-6 1/2\"", 1079.5), ("3’ 6”", 1066.8), ("8'", 2438.4), ("6 ft", 1828.8), ("-3 ft 6 in", -1066.8),
        ("6 mil", 0.1524),
        ("2e-3 m", 2), ("38\u00a0mm", 38), ("12 µm", 0.012),
    ],
)  # fmt: skip
def test_lengths(text, millimetres):
    quantity = parse(text, "length")
    assert quantity.value * 1000 == pytest.approx(millimetres, rel=1e-12)
    assert quantity.text == text


@pytest.mark.parametrize(
    ("text", "value"),
    [("R-20", 3.52220), ("R20", 3.52220), ("r 20", 3.52220), ("RSI-3.5", 3.5), ("RSI 3.5", 3.5), ("R-13.5", 2.37749)],
)
def test_labelled_resistances(text, value):
    assert parse(text, "resistance").value == pytest.approx(value, rel=3e-6)


@pytest.mark.parametrize(
    ("text", "kind", "message", "example"),
    [
        ("38", "length", "the bare number 38 needs its unit", "38 mm"),
        ("-27", "temperature", "the bare number -27 needs its unit", "-27 degC"),
        ("1e3", "length", "the bare number 1e3 needs its unit", "38 mm"),
        ("12 1/2", "length", "the bare number 12 1/2 needs its unit", "38 mm"),
        ("", "length", "a number with its unit is missing", "38 mm"),
        ("1,5 mm", "length", "has a comma: write a decimal point", "38 mm"),
        ("1,500 mm", "length", "no mark between thousands", "38 mm"),
        ("1 500 mm", "length", "a mark between thousands", "38 mm"),
        ("1'500 mm", "length", "a mark between thousands", "38 mm"),
        ("1_500 mm", "length", "a mark between thousands", "38 mm"),
        ("9**9**9 mm", "length", "is not a number with a unit", "38 mm"),
        ("5 mm + 3 mm", "length", "is not a number with a unit", "38 mm"),
        ("2*19 mm", "length", "is not a number with a unit", "38 mm"),
        ("1e400 m", "length", "the number 1e400 is too large", "38 mm"),
        ("1e99999 m", "length", "too large or too small", "38 mm"),
        ("1e300 m", "length", "outside what a building can have", "38 mm"),
        ("10 Mm", "length", "outside what a building can have", "38 mm"),
        ("nan m", "length", "is not a number that can be used", "38 mm"),
        ("inf", "length", "is not a number that can be used", "38 mm"),
        ("-inf m", "length", "is not a number that can be used", "38 mm"),
        ("1/0 in", "length", "zero below the stroke", "38 mm"),
        ("٣٨ mm", "length", "is not a number with a unit", "38 mm"),
        ("0x26 mm", "length", "is not a number with a unit", "38 mm"),
        ("38 kg", "length", '"kg" is not a unit of length', "38 mm"),
        ("38 mmm", "length", "did you mean mm?", "38 mm"),
        ("38 dozen mm", "length", 'the unit "dozen" is not known', "38 mm"),
        ("20 m2.K/W", "conductivity", "is not a unit of thermal conductivity", "0.040 W/(m.K)"),
        ("0.04 W/(m2.K)", "conductivity", "is not a unit of thermal conductivity", "0.040 W/(m.K)"),
        ("R-20", "length", "is not a number with a unit", "38 mm"),
        ("20 rankine", "temperature", "is not a unit of temperature", "-27 degC"),
        ("-300 degC", "temperature", "outside what a building can have", "-27 degC"),
        ("45 kgCO2e/kg", "mass_share", "is not a unit of mass per mass", "0.44 kg/kg"),
        ("5 % m", "length", "is not known", "38 mm"),
        ("5 m(", "length", "is not known", "38 mm"),
        ("5 m//s", "speed", "is not known", "115 mph"),
        ("5 m)(s", "speed", "is not known", "115 mph"),
        ("800 mm", "cavity_openings", "is not a unit of opening area per length", "800 mm2/m"),
        ("x" * 5000, "length", "is not a number with a unit", "38 mm"),
        ("5 " + "m" * 5000, "length", "is not a number with a unit", "38 mm"),
        ("9" * 70 + " m", "length", "outside what a building can have", "38 mm"),
    ],
)
def test_refusals(text, kind, message, example):
    with pytest.raises(QuantityError) as caught:
        parse(text, kind)
    assert message in caught.value.message
    assert caught.value.example == example
    assert len(caught.value.message) < 160


def test_a_message_never_carries_control_characters():
    with pytest.raises(QuantityError) as caught:
        parse("5 \x1b[31m\x00 mm", "length")
    assert caught.value.message.isprintable()


def test_dimensions():
    assert [q.value for q in parse_dimensions("63 mm x 3.25 mm")] == pytest.approx([0.063, 0.00325])
    assert [q.value for q in parse_dimensions("2 1/2 in × 0.131 in")] == pytest.approx([0.0635, 0.0033274])
    for text in ("63 mm", "63 x 3.25 mm", "1 mm x 2 mm x 3 mm x 4 mm", "x", "1 mm x", "9" * 999):
        with pytest.raises(QuantityError):
            parse_dimensions(text)


@given(whole=st.integers(0, 999), above=st.integers(0, 63), below=st.sampled_from([2, 4, 8, 16, 32, 64]))
def test_mixed_numbers_are_the_sum_of_their_parts(whole, above, below):
    expected = float((whole + Fraction(above, below)) * Fraction("0.0254"))
    for text in (f"{whole} {above}/{below} in", f"{whole}-{above}/{below} in", f'{whole} {above}/{below}"'):
        assert parse(text, "length").value == pytest.approx(expected, rel=1e-12, abs=1e-15)


@given(st.integers(0, 99), st.integers(0, 11))
def test_feet_and_inches_are_the_sum_of_their_parts(feet, inches):
    for text in (f"{feet} ft {inches} in", f"{feet}'-{inches}\"", f"{feet}'{inches}\"", f"{feet}ft{inches}in"):
        assert parse(text, "length").value == pytest.approx((12 * feet + inches) * 0.0254, rel=1e-12, abs=1e-15)


@given(st.floats(min_value=-1e3, max_value=1e3).filter(lambda v: v == 0 or abs(v) > 1e-6))
def test_a_plain_number_is_read_as_python_reads_it(value):
    assert parse(f"{value!r} m", "length").value == value
    assert parse(f"{value!r} m".replace("-", "−"), "length").value == value


@given(text=st.text(max_size=90), kind=st.sampled_from(sorted(KINDS)))
def test_any_text_is_a_quantity_or_a_quantity_error(text, kind):
    try:
        quantity = parse(text, kind)
    except QuantityError as error:
        assert error.message and error.message.isprintable()
    else:
        assert KINDS[kind].least <= quantity.value <= KINDS[kind].most


@given(
    text=st.text(alphabet="0123456789 ./-+'\"°mkgWinftRx()%e·²", max_size=24),
    kind=st.sampled_from(["length", "resistance"]),
)
def test_near_misses_are_a_quantity_or_a_quantity_error(text, kind):
    try:
        parse(text, kind)
    except QuantityError as error:
        assert error.example


@pytest.mark.parametrize("text", ["6/12", "6:12", "6 : 12", "6 in 12", "6in12", "6 / 12"])
def test_a_pitch_is_rise_over_twelve(text):
    found = parse(text, "angle")
    assert found.value == pytest.approx(26.565, abs=5e-4) and found.text == text  # arctan of one half, by any table


@pytest.mark.parametrize("text", ["6/10", "6", "6/12/12", "6/12 deg deg", "6//12"])
def test_other_fractions_are_no_pitch(text):
    with pytest.raises(QuantityError):
        parse(text, "angle")


@pytest.mark.parametrize("text", ["U-0.24", "U 0.24", "u0.24"])
def test_a_labelled_transmittance_is_customary(text):
    assert parse(text, "transmittance").value == pytest.approx(0.24 * 5.678263, rel=1e-6)  # Btu/(h.ft2.F) in W/(m2.K)


@pytest.mark.parametrize(("text", "kind"), [("U-0.24", "resistance"), ("R-20", "transmittance"), ("U-", "transmittance")])
def test_a_label_of_the_other_kind_is_refused(text, kind):
    with pytest.raises(QuantityError):
        parse(text, kind)
