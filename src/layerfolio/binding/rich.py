"""Text of changing looks broken into lines. Widths in millimetres come from the bundled faces, sizes are points.

Sheet texts are set from runs, never through a paragraph language, so that no text can be an instruction.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from layerfolio.binding.measure import drawable, em, style_of
from layerfolio.sheets.markup import parse

INDEX_SIZE, INDEX_DROP = 0.72, 0.18  # of the size: the lowered part of a symbol
MONO_SIZE = 8.2 / 9
_SPACES = re.compile(r"( +|\n)")
_BREAKABLE = "-/_.,;:"


@dataclass(frozen=True, slots=True)
class Bit:
    """Characters of one look, `x` from the start of the line; `drop` points below the baseline."""

    x: float
    text: str
    style: str
    size: float
    drop: float = 0.0


@dataclass(frozen=True, slots=True)
class Line:
    bits: tuple[Bit, ...]
    width: float

    @property
    def text(self) -> str:
        return "".join(bit.text for bit in self.bits)


@dataclass(slots=True)
class _Word:
    """Parts that stand together: (text, style, size, drop, width); `space` is the width of the spaces before it."""

    parts: list[tuple[str, str, float, float, float]]
    width: float
    space: float
    spaces: int


def line(text: str, size: float = 9, bold: bool = False, oblique: bool = False) -> Line:
    """The whole text on one line, however wide."""
    found = wrap(text.replace("\n", " "), float("inf"), size, bold, oblique)
    return found[0] if found else Line((), 0.0)


@lru_cache(maxsize=2048)
def wrap(text: str, room: float, size: float = 9, bold: bool = False, oblique: bool = False) -> tuple[Line, ...]:
    """Lines no wider than `room`; a word wider than that is broken. A newline begins a new line."""
    lines: list[Line] = []
    current: list[_Word] = []
    used = 0.0
    for word in _words(text, size, bold, oblique):
        if word is None:
            lines.append(_line(current))
            current, used = [], 0.0
            continue
        for piece in _broken(word, room):
            if current and used + piece.space + piece.width > room + 1e-6:
                lines.append(_line(current))
                current, used = [], 0.0
            used += piece.width + (piece.space if current else 0)
            current.append(piece)
    lines.append(_line(current))
    return tuple(lines)


def wrap_few(
    text: str, room: float, most: int, size: float = 9, bold: bool = False, tail: str = ""
) -> tuple[Line, ...]:
    """At most that many lines, cut with an ellipsis where there is more; `tail` is kept behind what is left."""
    lines = wrap(text + tail, room, size, bold)
    if len(lines) <= most:
        return lines
    end = line("…" + tail, size, bold)
    *kept, last = wrap(text, room - end.width, size, bold)[:most]
    bits = tuple(Bit(last.width + bit.x, bit.text, bit.style, bit.size, bit.drop) for bit in end.bits)
    return (*kept, Line(last.bits + bits, last.width + end.width))


def _words(text: str, size: float, bold: bool, oblique: bool) -> Iterator[_Word | None]:
    """Words in order; None where the text asks for a new line."""
    parts: list = []
    space, spaces = 0.0, 0
    for run in parse(text):
        style = style_of(run, bold, oblique)
        own = size * (INDEX_SIZE if run.index else MONO_SIZE if run.mono else 1)
        drop = size * INDEX_DROP if run.index else 0.0
        for part in _SPACES.split(run.text):
            if not part:
                continue
            if part[0] not in " \n":
                shown = drawable(part, style)
                parts.append((shown, style, own, drop, em(shown, style) * own))
                continue
            if parts:
                yield _Word(parts, sum(p[4] for p in parts), space, spaces)
                parts, space, spaces = [], 0.0, 0
            if part == "\n":
                yield None
                space, spaces = 0.0, 0
            else:
                space, spaces = space + em(part, style) * own, spaces + len(part)
    if parts:
        yield _Word(parts, sum(p[4] for p in parts), space, spaces)


def _broken(word: _Word, room: float) -> Iterator[_Word]:
    """The word, or its pieces when it is wider than a line."""
    if word.width <= room:
        yield word
        return
    parts, used = [], 0.0
    space, spaces = word.space, word.spaces
    for text, style, size, drop, _ in word.parts:
        while text:
            count = _fitting(text, style, size, room - used)
            if count < len(text) and not parts and count == 0:
                count = 1
            if count:
                piece = text[:count]
                parts.append((piece, style, size, drop, em(piece, style) * size))
                used += parts[-1][4]
                text = text[count:]
            if text:
                yield _Word(parts, used, space, spaces)
                parts, used, space, spaces = [], 0.0, 0.0, 0
    if parts:
        yield _Word(parts, used, space, spaces)


def _fitting(text: str, style: str, size: float, room: float) -> int:
    """How many characters fit; rather a few less, to break after a hyphen, slash or stop."""
    used = 0.0
    for count, one in enumerate(text):
        used += em(one, style) * size
        if used > room:
            for back in range(count, max(count * 2 // 3, 0), -1):
                if text[back - 1] in _BREAKABLE:
                    return back
            return count
    return len(text)


def _line(words: list[_Word]) -> Line:
    """Words joined; neighbours of one look become one bit with its spaces in it."""
    bits: list[list] = []
    x = 0.0
    for number, word in enumerate(words):
        if number:
            x += word.space
            if bits:
                bits[-1][1] += " " * word.spaces
                bits[-1][5] = word.space
        for text, style, size, drop, own in word.parts:
            last = bits[-1] if bits else None
            if last and last[2:5] == [style, size, drop] and _joins(last, word):
                last[1] += text
                last[5] = 0.0
            else:
                bits.append([x, text, style, size, drop, 0.0])
            x += own
    return Line(tuple(Bit(b[0], b[1].rstrip(" ") if b is bits[-1] else b[1], *b[2:5]) for b in bits), x)


def _joins(last: list, word: _Word) -> bool:
    """Whether the spaces before the word are as wide in the look of the last bit as they were measured."""
    return not last[5] or abs(em(" ", last[2]) * last[3] * word.spaces - last[5]) < 1e-6
