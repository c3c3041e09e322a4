"""Small judges: a figure against its limit, by the set's own rounding rule."""

from collections.abc import Sequence
from decimal import ROUND_HALF_UP, Decimal

NOISE = 1e-9
"""Relative difference below which two figures are the same: what summing floats leaves behind, far below any print."""


def rounded(value: float, decimals: int | None) -> float:
    """The value as the set compares it: half up to so many decimals, or as it is."""
    if decimals is None:
        return value
    exact = Decimal(f"{value:.9f}")  # 2.965 summed from floats is 2.9649999999..., and a hand rounds it to 2.97
    return float(exact.quantize(Decimal(1).scaleb(-decimals), ROUND_HALF_UP))


def at_least(value: float, limit: float, decimals: int | None = None) -> bool:
    """The rounded value reaches the limit; the limit itself is reached."""
    return rounded(value, decimals) >= limit - abs(limit) * NOISE


def at_most(value: float, limit: float, decimals: int | None = None) -> bool:
    """The rounded value stays within the limit; the limit itself is within."""
    return rounded(value, decimals) <= limit + abs(limit) * NOISE


def between(value: float, least: float, most: float, decimals: int | None = None) -> bool:
    """Both ends included."""
    return at_least(value, least, decimals) and at_most(value, most, decimals)


def one_of(value: str, allowed: Sequence[str]) -> bool:
    """The value is one of those that are allowed."""
    return value in allowed


def ratio_at_least(part: float, whole: float, limit: float, decimals: int | None = None) -> bool:
    """part / whole reaches the limit; nothing over nothing does not."""
    return at_least(part / whole, limit, decimals) if whole > 0 else part > 0


def present(value: object) -> bool:
    """Something is there."""
    return value not in (None, "", (), [])
