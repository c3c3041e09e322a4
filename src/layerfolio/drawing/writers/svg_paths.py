"""Path data and looks for SVG: millimetres with three decimals, y measured downward from the top of the drawing."""

from layerfolio.drawing import font
from layerfolio.drawing.geometry import Outline
from layerfolio.drawing.marks import Curve, Line, Text
from layerfolio.drawing.writers.runs import closed

FAMILIES = f"'{font.FAMILY}', 'DejaVu Sans', sans-serif"
MONO = "'DejaVu Sans Mono', monospace"


def number(value: float) -> str:
    """A length or angle with at most three decimals, without trailing noughts or a negative nought."""
    shown = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if shown == "-0" else shown


def pair(x: float, y: float, top: float) -> str:
    """A point of the drawing as SVG counts it."""
    return f"{number(x)} {number(top - y)}"


def polyline(line: Line, top: float) -> str:
    """Path data of a line, closed when it comes back to its start."""
    points = line.points[:-1] if closed(line) else line.points
    return "M" + "L".join(pair(x, y, top) for x, y in points) + ("Z" if closed(line) else "")


def ring(outline: Outline, top: float) -> str:
    """Path data of a closed outline."""
    return "M" + "L".join(pair(x, y, top) for x, y in outline) + "Z"


def bezier(curve: Curve, top: float) -> str:
    """Path data of a curve."""
    return "".join(_command(kind, values, top) for kind, *values in curve.commands)


def _command(kind: str, values: list[float], top: float) -> str:
    return kind + " ".join(pair(values[one], values[one + 1], top) for one in range(0, len(values), 2))


def face(text: Text) -> dict[str, str]:
    """The attributes that name a text's face; condensed is asked for twice, since systems list the face either way."""
    looks = {"font_family": MONO if text.style == "mono" else FAMILIES, "font_size": number(text.size * font.MM_PER_PT)}
    if text.style != "mono":
        looks["font_stretch"] = "condensed"
    if "bold" in text.style:
        looks["font_weight"] = "bold"
    if "oblique" in text.style:
        looks["font_style"] = "oblique"
    return looks
