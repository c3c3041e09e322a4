"""The legend in the strip of a wide sheet: the drawing room's own key of hatches and control lines."""

from layerfolio.binding.formats import BAND, INSET, STAMP, STRIP, TITLE_BLOCK, Format
from layerfolio.binding.pen import Pen


def paint_legend(pen: Pen, fmt: Format, families: tuple[str, ...]) -> None:
    """Left of the stamp space; nothing where nothing is cut."""
    if not families:
        return
    from layerfolio.drawing.legend import legend

    left, _, right, _ = fmt.frame
    room = right - left - TITLE_BLOCK - STAMP - 2 * INSET
    key = legend(families, room, controls=True, height=STRIP - BAND - 2)
    pen.figure(key, left + INSET, fmt.strip_top + BAND + 1, min(1.0, room / key.width))
