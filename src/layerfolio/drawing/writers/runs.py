"""What writers share: which neighbouring marks can be written as one, and which characters can be written at all."""

from collections.abc import Iterable, Iterator
from itertools import groupby
from unicodedata import category

from layerfolio.drawing.marks import Circle, Curve, Line, Mark


def runs(marks: Iterable[Mark]) -> Iterator[list[Mark]]:
    """Neighbouring marks that one path can paint: plain lines of one pen, dots of one radius, curves of one width."""
    for _, group in groupby(enumerate(marks), _key):
        yield [mark for _, mark in group]


def _key(numbered: tuple[int, Mark]) -> tuple:
    number, mark = numbered
    match mark:
        case Line(halo=0.0):
            return "line", mark.width, mark.dash, mark.round_ends
        case Curve(fill="", halo=0.0):
            return "curve", mark.width
        case Circle(width=0.0, fill="black"):
            return "dot", mark.radius
    return "one", number


def closed(line: Line) -> bool:
    """Whether a line comes back to where it began, so that its last corner is joined too."""
    return len(line.points) > 2 and line.points[0] == line.points[-1]


def drawable(text: str) -> str:
    """The text without control and direction characters, which no drawing can show."""
    if text.isprintable():
        return text
    return "".join(one for one in text if category(one) not in ("Cc", "Cf", "Cs", "Zl", "Zp"))
