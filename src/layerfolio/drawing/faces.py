"""Lines along the layers, in the section's own directions: faces, heavy lines of thin layers, the ground line."""

from collections.abc import Collection

from layerfolio.drawing.geometry import rectangle
from layerfolio.drawing.layout_stack import Band, Stack
from layerfolio.drawing.marks import Area, Line, Mark
from layerfolio.drawing.pieces import OVER

STRONG, WEAK = 0.5, 0.35


def faces(stack: Stack, length: float, without: Collection[float] = ()) -> list[Mark]:
    """A line at every face, stronger at the outer faces and at cut timber; none at the heights in `without`."""
    solid = [one for one in stack.bands if one.form == "body"]
    marks: list[Mark] = []
    for index, one in enumerate(solid):
        before = solid[index - 1] if index else None
        if before is None or abs(before.bottom - one.top) > 1e-6:
            marks.append(_face(one.top, length, before is None or _timber(one)))
        after = solid[index + 1] if index + 1 < len(solid) else None
        touching = after is not None and abs(after.top - one.bottom) < 1e-6
        marks.append(_face(one.bottom, length, after is None or _timber(one) or (touching and _timber(after))))
    return [one for one in marks if round(one.points[0][1], 6) not in without]


def _timber(band: Band) -> bool:
    return band.layer.kind == "solid" and band.layer.family in ("timber", "timber-board")


def _face(y: float, length: float, strong: bool) -> Line:
    width, role = (STRONG, "outline") if strong else (WEAK, "face")
    return Line(((-OVER, y), (length + OVER, y)), width, role=role)


def heavy_line(band: Band, length: float) -> list[Mark]:
    """A membrane, a sheet or a layer too thin to show its depth."""
    half = band.line / 2
    strip = rectangle(-OVER, band.middle - half, length + OVER, band.middle + half)
    role = band.layer.family if band.form == "sheet" else "thin layer"
    line = Line(((-OVER, band.middle), (length + OVER, band.middle)), band.line, role=role)
    return [Area(strip, band.layer.name, band.layer.family), line]


def ground_line(stack: Stack, length: float) -> Line:
    """On the outermost face; the ground's strokes stand outside the section."""
    y = 0.0 if stack.outside_up else -stack.depth
    return Line(((-OVER, y), (length + OVER, y)), 1.0, role="ground")
