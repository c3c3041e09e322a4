"""One assembly's drawing to a file: the ending says which writer."""

from pathlib import Path

from layerfolio.assembly.types import Assembly
from layerfolio.problems import Problem, ProblemsFound
from layerfolio.writing import write_whole


ALONE = 225.0
"""Width of a drawing that stands alone, paper mm: room for the names of its layers."""


def draw_to(assembly: Assembly, target: Path, *, units: str, page: str) -> None:
    """Write SVG or PDF, whole or not at all; ProblemsFound for another ending."""
    from layerfolio.drawing.section import section

    ending = target.suffix.lower()
    if ending not in (".svg", ".pdf"):
        raise ProblemsFound(
            [Problem(str(target), 0, 0, "", f"cannot draw to {ending or 'a file without ending'}", "W1.svg or W1.pdf")]
        )
    drawing = section(assembly, units=units, page=page, width=ALONE, notes=True)
    if ending == ".svg":
        from layerfolio.drawing.writers import svg

        write_whole(target, lambda part: part.write_text(svg.write(drawing), encoding="utf-8"))
    else:
        from layerfolio.drawing.writers import pdf

        write_whole(target, lambda part: pdf.write(drawing, part))
