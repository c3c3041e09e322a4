"""Reading the number of a quantity in plain characters: `38`, `-27`, `0.7`, `2e-10`, `1 1/2`, `1-1/2`, `19/32`."""

import re
from math import isfinite

SIGN = r"[+\-]?"
DECIMAL = r"(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+\-]?[0-9]{1,3})?"
FRACTION = r"(?:[0-9]{1,6}[ \-])?[0-9]{1,6}/[0-9]{1,6}"
NUMBER = rf"{SIGN}(?:{FRACTION}|{DECIMAL})"
VULGAR = {"½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8"}


class NumberError(Exception):
    """Says in words why the number cannot be used."""


def spread(text: str) -> str:
    """Single-character fractions written out: `5½` becomes `5 1/2`."""
    for sign, words in VULGAR.items():
        text = re.sub(rf"(?<=[0-9]) ?{sign}", f" {words}", text).replace(sign, words)
    return text


def number(text: str) -> float:
    """The value of a text that matches NUMBER."""
    sign = -1.0 if text.startswith("-") else 1.0
    text = text.lstrip("+-")
    value = sign * (_fraction(text) if "/" in text else float(text))
    if not isfinite(value):
        raise NumberError(f"the number {text} is too large")
    return value


def _fraction(text: str) -> float:
    whole, _, part = text.replace("-", " ").rpartition(" ")
    above, below = part.split("/")
    if int(below) == 0:
        raise NumberError("a fraction cannot have zero below the stroke")
    return int(whole or 0) + int(above) / int(below)
