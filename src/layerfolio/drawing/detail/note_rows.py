"""Words of a tag in lines of like length."""

import re
from collections.abc import Sequence
from functools import cache

from layerfolio.drawing.detail.model import Note
from layerfolio.drawing.layout_tags import PITCH
from layerfolio.drawing.lettering import LINE, wide, wrapped

NARROW, WIDE = 14.0, 31.0  # of a column of notes, mm
MORE = 1.6  # mm of room above and below a note of several lines
MOST = 3  # lines
_FIGURE = re.compile(r" (?=[\d(]\S*$)")


def rows_of(note: Note, room: float) -> tuple[str, ...]:
    """As few lines as `room` mm allow; an ellipsis only where three do not hold the words."""
    words = bound(note.words)
    for count in range(1, MOST + 1):
        rows = in_lines(words, count)
        if max(map(wide, rows)) <= room + 0.01:
            return rows
    return wrapped(words, room, MOST)


def size_of(note: Note, room: float) -> float:
    """Height that a tag takes in its column."""
    return max(PITCH, len(rows_of(note, room)) * LINE + MORE)


def room_for(notes: Sequence[Note], lines: int) -> float:
    """The least width that sets every note in so many lines; 0 without notes."""
    found = [max(map(wide, in_lines(bound(one.words), lines))) for one in notes]
    return min(WIDE, max(NARROW, *found)) if found else 0.0


def bound(words: str) -> str:
    """A figure keeps to the word before it."""
    return _FIGURE.sub("\u00a0", words)


@cache
def in_lines(words: str, count: int) -> tuple[str, ...]:
    """At most `count` lines, the longest as short as can be."""
    parts = words.split(" ")
    limits = {wide(" ".join(parts[a:b])) for a in range(len(parts)) for b in range(a + 1, len(parts) + 1)}
    for limit in sorted(limits):
        rows = _filled(parts, limit)
        if rows is not None and len(rows) <= count:
            return rows
    return (words,)


def _filled(parts: list[str], limit: float) -> tuple[str, ...] | None:
    """Lines filled up one after the other; None where a word is wider than all."""
    rows: list[str] = []
    for word in parts:
        longer = f"{rows[-1]} {word}" if rows else word
        if rows and wide(longer) <= limit + 1e-9:
            rows[-1] = longer
        elif wide(word) <= limit + 1e-9:
            rows.append(word)
        else:
            return None
    return tuple(rows)
