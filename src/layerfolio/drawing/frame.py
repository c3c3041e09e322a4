"""From the section's own directions (x along the layers, y across them) to the page."""

from collections.abc import Iterable
from dataclasses import dataclass

from layerfolio.drawing.geometry import moved, turned
from layerfolio.drawing.marks import Mark, Point


@dataclass(frozen=True, slots=True)
class Frame:
    """Turned by `turn` degrees about the section's upper left corner, which lies at `shift` on the page."""

    turn: float
    shift: Point

    def place(self, point: Point) -> Point:
        """A point of the section on the page."""
        x, y = turned(point, self.turn) if self.turn else point
        return x + self.shift[0], y + self.shift[1]

    def local(self, point: Point) -> Point:
        """A point of the page in the section's directions."""
        return turned((point[0] - self.shift[0], point[1] - self.shift[1]), -self.turn)

    def marks(self, marks: Iterable[Mark]) -> tuple[Mark, ...]:
        return tuple(moved(one, self.turn, self.shift) for one in marks)
