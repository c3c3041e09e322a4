"""A drawing to a file: the ending says which writer."""

from pathlib import Path

from layerfolio.drawing.marks import Drawing
from layerfolio.writing import write_whole

ENDINGS = (".svg", ".pdf", ".dxf")


class NoWriter(RuntimeError):
    """The library that a writer needs is not installed; the message says how to install it."""


def draw_to(drawing: Drawing, target: Path) -> None:
    """Write SVG, PDF or DXF by the ending (writing.check_target has looked at it), whole or not at all; NoWriter."""
    match target.suffix.lower():
        case ".svg":
            from layerfolio.drawing.writers import svg

            write_whole(target, lambda part: part.write_text(svg.write(drawing), encoding="utf-8"))
        case ".dxf":
            from layerfolio.drawing.writers import dxf

            if not dxf.is_there():
                raise NoWriter(f"{dxf.MISSING}, which is not installed: {dxf.INSTALL}")
            write_whole(target, lambda part: dxf.write(drawing, part))
        case _:
            from layerfolio.drawing.writers import pdf

            write_whole(target, lambda part: pdf.write(drawing, part))
