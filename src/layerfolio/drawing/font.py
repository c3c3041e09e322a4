"""Widths from the bundled font's own tables, so that every writer and every collision test measures text alike."""

import struct
from functools import cache
from pathlib import Path

from layerfolio.home import folder

MM_PER_PT = 25.4 / 72
FACES = {
    "regular": "DejaVuSansCondensed.ttf",
    "bold": "DejaVuSansCondensed-Bold.ttf",
    "oblique": "DejaVuSansCondensed-Oblique.ttf",
    "bold oblique": "DejaVuSansCondensed-BoldOblique.ttf",
    "mono": "DejaVuSansMono.ttf",
}
FAMILY = "DejaVu Sans Condensed"
CAP_HEIGHT = 0.729  # of the size, as the font file's OS/2 table states it
ASCENT, DESCENT = 0.76, 0.236  # of the size: tallest letter (d, l) and deepest (p, q)


def path(style: str = "regular") -> Path:
    """The font file of a style; KeyError for a style that is not bundled."""
    return folder("shared") / "fonts" / FACES[style]


def width(text: str, size_pt: float, style: str = "regular", spaced: float = 0) -> float:
    """Width in mm of `text` set at `size_pt` points; `spaced` points of letter spacing stand between letters."""
    if not text:
        return 0.0
    face = _face(style)
    points = sum(map(face.advance, text)) * size_pt + spaced * (len(text) - 1)
    return points * MM_PER_PT


def cap_height(size_pt: float) -> float:
    """Height in mm of a capital letter."""
    return CAP_HEIGHT * size_pt * MM_PER_PT


def missing_glyphs(text: str, style: str = "regular") -> str:
    """The characters of `text` that the bundled face cannot draw, once each, in order of appearance."""
    face = _face(style)
    return "".join(dict.fromkeys(one for one in text if not face.has(one)))


@cache
def _face(style: str) -> "_Face":
    return _Face(path(style).read_bytes())


class _Face:
    """The two tables of a TrueType file that measuring needs: cmap (character to glyph) and hmtx (glyph to advance).

    Layout as in the OpenType specification: table directory, head, hhea, hmtx, cmap formats 4 and 12.
    """

    def __init__(self, data: bytes):
        self._data = data
        count = struct.unpack_from(">H", data, 4)[0]
        entries = (struct.unpack_from(">4sLLL", data, 12 + 16 * one) for one in range(count))
        tables = {tag: offset for tag, _, offset, _ in entries}
        self._em = struct.unpack_from(">H", data, tables[b"head"] + 18)[0]
        self._long = struct.unpack_from(">H", data, tables[b"hhea"] + 34)[0]
        self._hmtx = tables[b"hmtx"]
        self._segments = _segments(data, tables[b"cmap"])
        self._glyphs: dict[str, int] = {}
        self._advances: dict[str, float] = {}

    def glyph(self, character: str) -> int:
        """Glyph number, 0 when the face does not have the character."""
        known = self._glyphs.get(character)
        if known is None:
            code = ord(character)
            start = next((at for first, last, at in self._segments if first <= code <= last), None)
            known = start(code) if start else 0
            self._glyphs[character] = known
        return known

    def has(self, character: str) -> bool:
        return self.glyph(character) != 0

    def advance(self, character: str) -> float:
        """Advance width as a share of the type size."""
        known = self._advances.get(character)
        if known is None:
            at = self._hmtx + 4 * min(self.glyph(character), self._long - 1)
            known = self._advances[character] = struct.unpack_from(">H", self._data, at)[0] / self._em
        return known


def _segments(data: bytes, cmap: int) -> list[tuple]:
    """(first code, last code, code -> glyph) of the fullest Unicode subtable."""
    count = struct.unpack_from(">H", data, cmap + 2)[0]
    records = [struct.unpack_from(">HHL", data, cmap + 4 + 8 * one) for one in range(count)]
    offsets = {(platform, encoding): cmap + offset for platform, encoding, offset in records}
    if (3, 10) in offsets:
        return _format_12(data, offsets[3, 10])
    return _format_4(data, offsets[3, 1])


def _format_12(data: bytes, at: int) -> list[tuple]:
    groups = struct.unpack_from(">L", data, at + 12)[0]
    rows = (struct.unpack_from(">LLL", data, at + 16 + 12 * one) for one in range(groups))
    return [(first, last, lambda code, first=first, glyph=glyph: glyph + code - first) for first, last, glyph in rows]


def _format_4(data: bytes, at: int) -> list[tuple]:
    n = struct.unpack_from(">H", data, at + 6)[0] // 2
    ends, starts, deltas, offsets = (at + 14 + shift for shift in (0, 2 * n + 2, 4 * n + 2, 6 * n + 2))

    def reader(one: int):
        delta = struct.unpack_from(">H", data, deltas + 2 * one)[0]
        offset = struct.unpack_from(">H", data, offsets + 2 * one)[0]
        first = struct.unpack_from(">H", data, starts + 2 * one)[0]

        def glyph(code: int) -> int:
            if not offset:
                return (code + delta) % 65536
            found = struct.unpack_from(">H", data, offsets + 2 * one + offset + 2 * (code - first))[0]
            return (found + delta) % 65536 if found else 0

        return glyph

    return [
        (
            struct.unpack_from(">H", data, starts + 2 * one)[0],
            struct.unpack_from(">H", data, ends + 2 * one)[0],
            reader(one),
        )
        for one in range(n)
    ]
