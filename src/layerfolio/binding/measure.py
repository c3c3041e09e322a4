"""Widths of text of one look, and what stands for characters that a face lacks."""

from functools import lru_cache

from layerfolio.drawing import font
from layerfolio.sheets.markup import FALLBACK, NO_BREAK, Run


@lru_cache(maxsize=16384)
def em(text: str, style: str) -> float:
    """Width at one point of size."""
    return font.width(text, 1, style)


@lru_cache(maxsize=16384)
def drawable(text: str, style: str) -> str:
    """The text with what the face lacks replaced, so that nothing prints as an empty box."""
    lacking = font.missing_glyphs(text.replace(NO_BREAK, " "), style)
    return "".join(FALLBACK if one in lacking else one for one in text) if lacking else text


def width(text: str, size: float, style: str = "regular") -> float:
    """Width of a text of one look."""
    return em(drawable(text, style), style) * size


def style_of(run: Run, bold: bool = False, oblique: bool = False) -> str:
    if run.mono:
        return "mono"
    oblique = run.oblique or (oblique and not run.index)
    bold = run.bold or bold
    return "bold oblique" if bold and oblique else "bold" if bold else "oblique" if oblique else "regular"
