"""A drawing on a PDF page, as vectors."""

from pathlib import Path
from typing import BinaryIO

from layerfolio.drawing.marks import Drawing


def paint(canvas, drawing: Drawing, x_mm: float, y_mm: float) -> None:
    """Paint the drawing on a reportlab canvas, its lower left corner at (x_mm, y_mm) from the page's lower left."""
    raise NotImplementedError


def write(drawing: Drawing, target: str | Path | BinaryIO, *, title: str = "", lang: str = "en", margin: float = 10.0) -> None:
    """One page of the drawing's size plus margins."""
    raise NotImplementedError
