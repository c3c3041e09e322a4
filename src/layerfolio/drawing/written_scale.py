"""A scale as a person writes it: 5, 1:5, 1 : 5, 3", 1-1/2" = 1'-0"."""

import re
from fractions import Fraction

LEAST, MOST = 1.0, 500.0
EXAMPLES = "5, 1:5, 3\" or 1-1/2\" = 1'-0\""
_RATIO = re.compile(r"(?:1\s*:\s*)?(\d{1,4}(?:\.\d{1,3})?)")
_INCHES = re.compile(
    r"(?:(\d{1,2})(?![\d/]))?(?:[\s-]*(\d{1,2})/(\d{1,2}))?\s*(?:\"|in|inch|inches)(?:\s*=\s*1\s*(?:'|ft|foot)(?:-?\s*0\s*(?:\"|in)?)?)?"
)


class BadScale(ValueError):
    """A text that is no scale; the message says what is expected."""


def scale_of(text: str) -> float:
    """The denominator of a written scale; BadScale says what is expected."""
    plain = text.strip()
    if match := _RATIO.fullmatch(plain):
        found = float(match[1])
    elif (match := _INCHES.fullmatch(plain)) and (match[1] or match[2]) and match[3] != "0":
        inches = Fraction(match[1] or 0) + (Fraction(int(match[2]), int(match[3])) if match[2] else 0)
        found = float(12 / inches) if inches else 0.0
    else:
        raise BadScale(f"{text!r} is no scale: {EXAMPLES}")
    if not LEAST <= found <= MOST:
        raise BadScale(f"{text!r} is no scale of a section: 1 : {LEAST:g} to 1 : {MOST:g}")
    return found
