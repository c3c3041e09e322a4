"""The foot of a drawing: check bar, written scale, key of the control lines."""

from layerfolio.drawing.control import DASHES, NAMES, WIDTH
from layerfolio.drawing.figures import Units
from layerfolio.drawing.lettering import CAPITAL, SIZE, middle_text, wide
from layerfolio.drawing.marks import Curve, Line, Mark, Text

BAR, BAR_HEIGHT, END = 100.0, 1.6, 4.0
BAR_CUSTOMARY = 101.6
CHECKS = "on paper: print check"  # the bar is no scale of the drawing, whose own is written beside it
SIGN, WORD = 17.0, 18.6  # width of a key's sign; its word from the sign's start
SLOTS = {"W": 46.0, "A": 42.0, "V": 48.0, "T": 44.0}
KEY_DROP = 7.9  # from the bar's middle to the middle of the key


def check_bar(x: float, y: float, units: Units) -> tuple[Mark, ...]:
    """Fields in turn black and white, `y` at their middle: ten of 10 mm, or eight of 1/2 in."""
    long, fields, figures = BAR, 10, ("0", "50", f"100 mm {CHECKS}")
    if units == "customary":
        long, fields, figures = BAR_CUSTOMARY, 8, ("0", "2", f"4 in {CHECKS}")
    half, step = BAR_HEIGHT / 2, long / fields
    marks: list[Mark] = [_box(x + one * step, y - half, step, BAR_HEIGHT, "black") for one in range(0, fields, 2)]
    marks.append(Line(_ring(x, y - half, long, BAR_HEIGHT), 0.25, role="check bar"))
    marks += [Line(((at, y - END / 2), (at, y + END / 2)), 0.35, role="check bar end") for at in (x, x + long)]
    for number, words in enumerate(figures):
        at = x + number * long / 2
        start = max(0.2, at - wide(words.split()[0]) / 2)
        marks.append(Text((start, y - END / 2 - 0.5 - CAPITAL), words, SIZE, role="check bar figure"))
    return tuple(marks)


def key_of_controls(x: float, y: float, letters: str) -> tuple[Mark, ...]:
    """The lines that the drawing shows, each with its word, from x on; `y` at the middle of the letters."""
    marks: list[Mark] = []
    for sign in letters:
        marks += control_sign(x, y, sign)
        marks.append(middle_text(x + WORD, y, NAMES[sign], role="key"))
        x += SLOTS[sign]
    return tuple(marks)


def control_sign(x: float, y: float, sign: str) -> tuple[Mark, ...]:
    """17 mm of a control line about its letter, the pattern mirrored."""
    reach = 6.3
    dash = (3.6, 1.2) if sign == "W" else DASHES[sign]  # so that the outer end shows a piece, not a speck
    role = f"key {sign}"
    left = Line(((x + reach, y), (x, y)), WIDTH, dash, role=role)
    right = Line(((x + SIGN - reach, y), (x + SIGN, y)), WIDTH, dash, role=role)
    return left, right, middle_text(x + SIGN / 2, y, sign, style="bold", anchor="middle", role=role)


def _box(x: float, y: float, wide_: float, high: float, fill: str) -> Curve:
    first, *rest = _ring(x, y, wide_, high)[:4]
    return Curve((("M", *first), *(("L", *one) for one in rest), ("Z",)), fill=fill, role="check bar")


def _ring(x: float, y: float, wide_: float, high: float) -> tuple[tuple[float, float], ...]:
    return (x, y), (x + wide_, y), (x + wide_, y + high), (x, y + high), (x, y)
