"""A drawing on a PDF page, as vectors; reportlab is imported only when a page is written."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import BinaryIO

from layerfolio.drawing.marks import Drawing
from layerfolio.drawing.writers.fonts_pdf import register
from layerfolio.drawing.writers.painter import Painter
from layerfolio.drawing.writers.points import MM


def paint(canvas, drawing: Drawing, x_mm: float, y_mm: float) -> None:
    """Paint the drawing on a reportlab canvas, its lower left corner at (x_mm, y_mm) from the page's lower left.

    The canvas comes back in the state it had; the drawing's own state never leaks.
    """
    canvas.saveState()
    canvas.translate(round(x_mm * MM, 3), round(y_mm * MM, 3))
    Painter(canvas).marks(drawing.marks)
    canvas.restoreState()


def write(
    drawing: Drawing,
    target: str | Path | BinaryIO,
    *,
    title: str = "",
    lang: str = "en",
    margin: float = 10.0,
) -> None:
    """One page of the drawing's size plus `margin` mm on each side; the same drawing gives the same bytes."""
    from reportlab.pdfgen.canvas import Canvas

    register()
    size = (drawing.width + 2 * margin) * MM, (drawing.height + 2 * margin) * MM
    where = str(target) if isinstance(target, Path) else target
    canvas = Canvas(where, pagesize=size, invariant=1, pageCompression=1, initialFontName="LF", lang=lang)
    canvas.setTitle(title or drawing.name)
    canvas.setCreator("layerfolio")
    canvas.setAuthor("")
    canvas.setSubject("")
    paint(canvas, drawing, margin, margin)
    canvas.showPage()
    with plain_streams():
        canvas.save()


@contextmanager
def plain_streams() -> Iterator[None]:
    """Compressed streams as they are, not spelled out in letters once more: a fifth shorter, and sooner written."""
    from reportlab import rl_config

    before, rl_config.useA85 = rl_config.useA85, 0
    try:
        yield
    finally:
        rl_config.useA85 = before
