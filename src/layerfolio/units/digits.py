"""Numbers as they are printed: a true minus sign, never a thousands separator."""

from math import floor, isfinite, log10

MINUS = "−"
_RAISED = str.maketrans("-0123456789", "⁻⁰¹²³⁴⁵⁶⁷⁸⁹")
_LOWERED = str.maketrans("⁻⁰¹²³⁴⁵⁶⁷⁸⁹−", "-0123456789-")


def significant(value: float, digits: int = 4) -> str:
    """The value to that many significant digits, zeros kept: 5.3 is `5.300`, 46023 is `46020`.

    Below 0.0001 and from ten million on as `2.000·10⁻¹⁰`, which `as_number` reads back.
    """
    if not isfinite(value):
        raise ValueError(f"{value} cannot be printed")
    if value == 0:
        return fixed(0.0, digits - 1)
    exponent = floor(log10(abs(float(f"{value:.{digits - 1}e}"))) + 1e-12)
    if not -4 <= exponent < 7:
        mantissa = float(f"{value:.{digits - 1}e}") / 10.0**exponent
        return f"{fixed(mantissa, digits - 1)}·10{str(exponent).translate(_RAISED)}"
    if exponent >= digits:
        step = 10 ** (exponent - digits + 1)
        return fixed(round(value / step) * step, 0)
    return fixed(value, digits - 1 - exponent)


def fixed(value: float, decimals: int) -> str:
    """The value with so many digits after the point, a true minus sign, and no minus before a zero."""
    text = f"{value:.{decimals}f}"
    if text.startswith("-"):
        return MINUS + text[1:] if float(text) else text[1:]
    return text


def as_number(text: str) -> float:
    """The value of a text that `significant` or `fixed` made."""
    mantissa, _, power = text.partition("·10")
    return float(mantissa.translate(_LOWERED) + (f"e{power.translate(_LOWERED)}" if power else ""))
