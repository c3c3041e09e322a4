"""The few things that every lettering of a drawing shares: size, middle, spreading apart, words that fit."""

import re
from collections.abc import Sequence
from itertools import pairwise

from layerfolio.drawing import font
from layerfolio.drawing.marks import Text

SIZE = 9.72  # pt: capitals 2.5 mm high
CAPITAL = 2.5  # mm
LINE = 4.2  # mm from line to line of a note
PITCH = 3.7  # mm between figures of a chain


def middle_text(x: float, y: float, text: str, **rest) -> Text:
    """A text whose capitals stand level with `y` at their middle."""
    return Text((x, y - CAPITAL / 2), text, SIZE, **rest)


def wide(text: str, style: str = "regular", spaced: float = 0.0) -> float:
    """Width in mm at the size of drawings."""
    return font.width(text, SIZE, style, spaced)


def spread(wanted: Sequence[float], sizes: Sequence[float]) -> list[float]:
    """Places from the top down, as near to `wanted` as can be, neighbours at least half of both sizes apart.

    Where they are too close the whole run spreads about its own middle (least squares by pooling neighbours).
    """
    offsets, run = [0.0], 0.0
    for upper, lower in pairwise(sizes):
        run += (upper + lower) / 2
        offsets.append(run)
    pools: list[list[float]] = []  # sum, count
    for place, offset in zip(wanted, offsets, strict=False):
        pools.append([place + offset, 1])
        while len(pools) > 1 and pools[-2][0] / pools[-2][1] < pools[-1][0] / pools[-1][1]:
            last = pools.pop()
            pools[-1][0] += last[0]
            pools[-1][1] += last[1]
    level = [total / count for total, count in pools for _ in range(int(count))]
    return [one - offset for one, offset in zip(level, offsets, strict=False)]


def wrapped(text: str, room: float, lines: int = 2) -> tuple[str, ...]:
    """Words set into at most `lines` lines of `room` mm; what does not fit ends with an ellipsis."""
    words = [one for one in re.split("[ \t\r\n]+", text) if one]  # not at no-break spaces
    set_lines: list[str] = []
    while words and len(set_lines) < lines:
        count = len(words)
        while count > 1 and wide(" ".join(words[:count])) > room:
            count -= 1
        set_lines.append(" ".join(words[:count]))
        words = words[count:]
    if not set_lines:
        return ()
    if words or any(wide(one) > room for one in set_lines):
        set_lines = [one if wide(one) <= room else _cut(one, room) for one in set_lines]
        if words:
            set_lines[-1] = _cut(set_lines[-1] + " " + words[0], room)
    return tuple(set_lines)


def _cut(text: str, room: float) -> str:
    while text and wide(text + "…") > room:
        text = text[:-1]
    return text.rstrip() + "…"
