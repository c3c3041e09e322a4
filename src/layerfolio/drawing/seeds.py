"""Random numbers that are the same on every machine and in every run."""

from hashlib import sha256
from random import Random


def generator(*parts: str | int) -> Random:
    """A generator seeded by kind, stable name of the layer and number of the piece.

    So one changed layer leaves its neighbours alone, and the interpreter's own hash seed stays out.
    """
    digest = sha256("\x1f".join(map(str, parts)).encode()).digest()
    return Random(int.from_bytes(digest[:8], "big"))
