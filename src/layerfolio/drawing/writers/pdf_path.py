"""A path of a PDF page, written straight in points: the library's own formatting of numbers took most of a page's time."""

from layerfolio.drawing.geometry import Outline
from layerfolio.drawing.marks import Curve, Point
from layerfolio.drawing.writers.points import MM

_FORMS = {"M": "%.2f %.2f m", "L": "%.2f %.2f l", "C": "%.2f %.2f %.2f %.2f %.2f %.2f c", "Z": "h"}


class Path:
    """What a canvas draws or clips by: it asks for `getCode`."""

    def __init__(self) -> None:
        self.parts: list[str] = ["n"]

    def getCode(self) -> str:
        """The operators, in the name that the library calls."""
        return " ".join(self.parts)

    def line(self, points: tuple[Point, ...], close: bool = False) -> None:
        """Straight pieces from point to point, in mm."""
        self.parts += ["%.2f %.2f %s" % (x * MM, y * MM, "l" if n else "m") for n, (x, y) in enumerate(points)]  # noqa: UP031
        if close:
            self.parts.append("h")

    def curve(self, curve: Curve) -> None:
        """All commands of a curve, in mm."""
        self.parts += [_FORMS[kind] % tuple([one * MM for one in values]) for kind, *values in curve.commands]


def ring(outline: Outline) -> Path:
    """A closed outline."""
    path = Path()
    path.line(outline, True)
    return path
