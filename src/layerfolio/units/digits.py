"""Numbers as they are printed: a true minus sign, never a thousands separator."""

from decimal import ROUND_HALF_UP, Context, Decimal
from math import isfinite

MINUS = "−"
_WIDE = Context(prec=400)  # so that no number of the machine is too long for its decimals
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
    exact = _decimal(value)
    exponent = exact.adjusted()
    if abs(_half_up(exact, digits - 1 - exponent)).adjusted() > exponent:
        exponent += 1  # 9.9996 is 10.00
    if not -4 <= exponent < 7:
        mantissa = _plain(_half_up(exact.scaleb(-exponent), digits - 1))
        return f"{mantissa}·10{str(exponent).translate(_RAISED)}"
    return _plain(_half_up(exact, digits - 1 - exponent))


def fixed(value: float, decimals: int) -> str:
    """The value with so many digits after the point, a true minus sign, and no minus before a zero; a half goes up."""
    return _plain(_half_up(_decimal(value), decimals)) if isfinite(value) else f"{value}".replace("-", MINUS)


def _decimal(value: float) -> Decimal:
    """The number people see: twelve digits of it, so that a half that arithmetic missed by a hair is a half."""
    return Decimal(f"{value:.11e}")


def _half_up(value: Decimal, decimals: int) -> Decimal:
    """Rounded on the decimals, as a person rounds: a half goes away from zero."""
    return value.quantize(Decimal(1).scaleb(-decimals), ROUND_HALF_UP, _WIDE)


def _plain(value: Decimal) -> str:
    text = f"{value:f}"
    if text.startswith("-"):
        return MINUS + text[1:] if value else text[1:]
    return text


def as_number(text: str) -> float:
    """The value of a text that `significant` or `fixed` made."""
    mantissa, _, power = text.partition("·10")
    return float(mantissa.translate(_LOWERED) + (f"e{power.translate(_LOWERED)}" if power else ""))
