"""The legend in the strip of a wide sheet: hatches used, control lines."""

from layerfolio.binding.formats import BAND, INSET, STAMP, TITLE_BLOCK, Format
from layerfolio.binding.pen import Pen

ROWS, SWATCH, HIGH = 3, 12.3, 6.6
_PITCH = 8.7
_CONTROLS = (("W", "water", (5, 1.2)), ("A", "air", ()), ("V", "vapour", ()), ("T", "thermal", (1.4, 1.0)))


def paint_legend(pen: Pen, fmt: Format, families: tuple[str, ...]) -> None:
    """Up to twelve families in columns of three, then the lines of the control layers; nothing where nothing is cut."""
    if not families:
        return
    from layerfolio.catalogue.hatches import printed_name
    from layerfolio.drawing.hatches import swatch
    from layerfolio.drawing.marks import Drawing

    left, _, right, _ = fmt.frame
    x, y = left + INSET, fmt.strip_top + BAND
    room = right - left - TITLE_BLOCK - STAMP - INSET
    columns = max(3, min(4, -(-len(families) // ROWS)))
    pitch = (room - 58) / columns if columns == 4 else 49.0
    pen.words("Hatches", x, y + 4, 9, "bold")
    for number, family in enumerate(families[: columns * ROWS]):
        at, top = x + pitch * (number // ROWS), y + 6.6 + _PITCH * (number % ROWS)
        pen.figure(Drawing(family, SWATCH, HIGH, swatch(family, SWATCH, HIGH)), at, top)
        pen.words(printed_name(family), at + SWATCH + 1.8, top + 4.4, 9)
    _control_lines(pen, x + pitch * columns + 1, y)


def _control_lines(pen: Pen, x: float, y: float) -> None:
    pen.words("Control lines", x, y + 4, 9, "bold")
    for number, (letter, name, dash) in enumerate(_CONTROLS):
        base = y + 10.9 + 6.4 * number
        for start, end in ((x, x + 6.3), (x + 17, x + 10.7)):  # the pattern runs inward from both ends
            _dashed(pen, start, end, base - 1.2, dash)
        pen.words(letter, x + 8.5, base, 9.72, "bold", 0.5)
        pen.words(name, x + 18.6, base, 9)


def _dashed(pen: Pen, start: float, end: float, y: float, dash: tuple[float, ...]) -> None:
    if not dash:
        pen.rule(start, y, end, y, 0.7)
        return
    on, off = dash
    way = 1 if end > start else -1
    at = start
    while (end - at) * way > 1e-6:
        to = at + way * min(on, abs(end - at))
        pen.rule(at, y, to, y, 0.7)
        at = to + way * off
