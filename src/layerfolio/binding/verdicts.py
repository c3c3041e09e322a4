"""The shapes of the verdicts: they differ in outline, so that a copy still tells them apart."""

from layerfolio.binding.measure import width
from layerfolio.binding.pen import Pen
from layerfolio.codes.findings import Verdict

SIZE = 2.8
SPACE = 1.4  # between shape and word


def _side(size: float) -> float:
    """Width of the shape beside a word of that size: 2.8, a little more beside the large word of a results box."""
    return SIZE if size < 12 else 3.3


def shape(pen: Pen, verdict: Verdict, x: float, y: float, side: float = SIZE) -> None:
    """The shape, from x on, standing on the baseline y like a capital letter."""
    r = side / 2
    cx, cy = x + r, y - r + 0.3
    if verdict == Verdict.MEETS:
        pen.disc(cx, cy, r, colour=0)
    elif verdict == Verdict.NEEDS_JUDGEMENT:
        pen.disc(cx, cy, r - 0.2, width=0.4)
        pen.half_disc(cx, cy, r - 0.2)
    elif verdict == Verdict.NEEDS_EVIDENCE:
        pen.polygon(((x + 0.25, cy + r - 0.25), (x + side - 0.25, cy + r - 0.25), (cx, cy - r + 0.2)), width=0.5)
    elif verdict == Verdict.DOES_NOT_MEET:
        pen.polygon(((x, cy - r), (x + side, cy - r), (x + side, cy + r), (x, cy + r)), colour=0)
        _cross(pen, cx, cy, 0.75)
    else:
        pen.polygon(((x, cy - 0.35), (x + side, cy - 0.35), (x + side, cy + 0.35), (x, cy + 0.35)), colour=0)


def _cross(pen: Pen, cx: float, cy: float, reach: float) -> None:
    half = 0.25 * 2**0.5 / 2  # half the width of the white stroke, along each axis
    for turn in (1, -1):
        pen.polygon(
            (
                (cx - reach - half, cy - turn * (reach - half)),
                (cx - reach + half, cy - turn * (reach + half)),
                (cx + reach + half, cy + turn * (reach - half)),
                (cx + reach - half, cy + turn * (reach + half)),
            ),
            colour=1,
        )


def verdict_words(pen: Pen, verdict: Verdict, x: float, y: float, size: float = 9) -> float:
    """Shape and word; gives the place where the word ends."""
    side = _side(size)
    shape(pen, verdict, x, y, side)
    start = x + side + SPACE
    pen.words(str(verdict), start, y, size, "bold")
    return start + width(str(verdict), size, "bold")


def verdict_width(verdict: Verdict, size: float = 9) -> float:
    return _side(size) + SPACE + width(str(verdict), size, "bold")
