"""The key under a moisture picture: what each line and each bar means, in one row or two."""

from collections.abc import Sequence

from layerfolio.drawing import font
from layerfolio.drawing.geometry import parallels, rectangle
from layerfolio.drawing.hatches.strokes import strokes
from layerfolio.drawing.marks import Clip, Curve, Line, Mark
from layerfolio.drawing.moisture_axes import FIGURES, GRID, label
from layerfolio.drawing.moisture_bars import HATCH_PITCH
from layerfolio.drawing.moisture_charts import MAIN, SECOND, WOULD, WOULD_DASH

SIGN, HALF = 8.0, 1.2  # width of a sign, half the height of a box
WORD, BETWEEN = 9.6, 6.0  # from the start of a sign to its word; between two entries at least
PITCH = 5.0
WORDS = {
    "actual": "actual", "saturation": "saturation", "first pass": "if nothing condensed",
    "gaining": "gaining", "drying": "drying",
}  # fmt: skip


def key_rows(names: Sequence[str], width: float) -> list[list[str]]:
    """The entries in as few rows as hold them."""
    rows: list[list[str]] = [[]]
    used = 0.0
    for name in names:
        wide = WORD + font.width(WORDS[name], FIGURES)
        if rows[-1] and used + BETWEEN + wide > width:
            rows.append([])
            used = 0.0
        used += wide + (BETWEEN if rows[-1] else 0.0)
        rows[-1].append(name)
    return rows


def key_marks(names: Sequence[str], width: float, y: float) -> tuple[Mark, ...]:
    """Signs and words from the left edge on, the first row's middle at `y`."""
    marks: list[Mark] = []
    for row in key_rows(names, width):
        x = 0.0
        for name in row:
            marks += [*_sign(name, x, y), label(x + WORD, y, WORDS[name], role="key")]
            x += WORD + font.width(WORDS[name], FIGURES) + BETWEEN
        y -= PITCH
    return tuple(marks)


def _sign(name: str, x: float, y: float) -> list[Mark]:
    level = ((x, y), (x + SIGN, y))
    if name in ("actual", "saturation", "first pass"):
        width, dash = {"actual": (MAIN, ()), "saturation": (SECOND, ()), "first pass": (WOULD, WOULD_DASH)}[name]
        return [Line(level, width, dash, role="key sign")]
    outline = rectangle(x + 2.0, y - HALF, x + SIGN, y + HALF)
    path = (("M", *outline[0]), *(("L", *one) for one in outline[1:]), ("Z",))
    if name == "gaining":
        return [Curve(path, fill="black", role="key sign")]
    lines = strokes(parallels(outline, 45.0, HATCH_PITCH), GRID)
    return [Clip(outline, lines), Curve(path, 0.35, role="key sign")]


__all__ = ["PITCH", "key_marks", "key_rows"]
