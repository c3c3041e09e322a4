"""One assembly's drawing to a file: the ending says which writer."""

from pathlib import Path

from layerfolio.assembly.types import Assembly
from layerfolio.writing import write_whole

ALONE = 225.0
"""Width of a drawing that stands alone, paper mm: room for the names of its layers."""


def draw_to(assembly: Assembly, target: Path, *, units: str, page: str) -> None:
    """Write SVG or PDF by the ending (writing.check_target has looked at it), whole or not at all."""
    from layerfolio.drawing.section import section

    drawing = section(assembly, units=units, page=page, width=ALONE, notes=True)
    if target.suffix.lower() == ".svg":
        from layerfolio.drawing.writers import svg

        write_whole(target, lambda part: part.write_text(svg.write(drawing), encoding="utf-8"))
    else:
        from layerfolio.drawing.writers import pdf

        write_whole(target, lambda part: pdf.write(drawing, part))
