"""Sheet formats, in millimetres: the frame, the foot strip and the fields that content flows through."""

from dataclasses import dataclass

MARGIN = 8.0  # from the sheet's upper and lower edge to the frame
INSET = 4.0  # from the frame to the content
STRIP = 40.0  # height of the foot strip, inside the frame
BAND = 6.0  # height of the notice band, the upper part of the strip
TITLE_BLOCK = 117.0
STAMP = 71.0
FIELD_GAP = 8.0


@dataclass(frozen=True, slots=True)
class Format:
    """A sheet; `left` is the binding margin. Places are counted from the sheet's upper left corner, y downward."""

    name: str
    width: float
    height: float
    left: float
    right: float
    fields: int

    @property
    def frame(self) -> tuple[float, float, float, float]:
        """Left, top, right and bottom of the frame."""
        return self.left, MARGIN, self.width - self.right, self.height - MARGIN

    @property
    def strip_top(self) -> float:
        return self.height - MARGIN - STRIP

    @property
    def top(self) -> float:
        """Upper edge of the content."""
        return MARGIN + INSET

    @property
    def room(self) -> float:
        """Height of the content."""
        return self.strip_top - INSET - self.top

    @property
    def field_width(self) -> float:
        left, _, right, _ = self.frame
        return (right - left - 2 * INSET - FIELD_GAP * (self.fields - 1)) / self.fields

    def field_left(self, number: int) -> float:
        """Left edge of a field, counted from 0."""
        return self.left + INSET + number * (self.field_width + FIELD_GAP)


FORMATS = {
    "letter": Format("letter", 215.9, 279.4, 18, 9.9, 1),
    "a4": Format("A4", 210, 297, 15, 7, 1),
    "tabloid": Format("tabloid", 431.8, 279.4, 18, 9.9, 2),
    "a3": Format("A3", 420, 297, 15, 7, 2),
}
