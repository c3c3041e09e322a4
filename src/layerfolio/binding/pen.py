"""The one place that speaks to the canvas: millimetres from the sheet's upper left corner, y downward."""

from collections.abc import Sequence

from layerfolio.binding.measure import drawable, width
from layerfolio.binding.rich import Line
from layerfolio.drawing.marks import Drawing
from layerfolio.drawing.writers.fonts_pdf import register
from layerfolio.sheets.markup import NO_BREAK

MM = 72 / 25.4
DOT_PITCH = 1.6


class Pen:
    """Draws on one page; `height` is the sheet's. Black only."""

    def __init__(self, canvas, height: float):
        self.canvas = canvas
        self.height = height
        self._fonts = register()
        self._width = 0.0

    def page(self) -> None:
        """End the page; the next one starts with a fresh graphics state."""
        self.canvas.showPage()
        self._width = 0.0

    def _y(self, y: float) -> float:
        return (self.height - y) * MM

    def _line_width(self, width: float) -> None:
        if width != self._width:
            self.canvas.setLineWidth(round(width * MM, 4))
            self._width = width

    def rule(self, x1: float, y1: float, x2: float, y2: float, width: float) -> None:
        """A straight line."""
        self._line_width(width)
        self.canvas.line(x1 * MM, self._y(y1), x2 * MM, self._y(y2))

    def across(self, x: float, y: float, length: float, width: float) -> None:
        """A level line to the right."""
        self.rule(x, y, x + length, y, width)

    def box(self, x: float, y: float, wide: float, high: float, width: float) -> None:
        """A frame from its upper left corner."""
        self._line_width(width)
        self.canvas.rect(x * MM, self._y(y + high), wide * MM, high * MM, stroke=1, fill=0)

    def polygon(self, points: Sequence[tuple[float, float]], width: float = 0.0, colour: int | None = None) -> None:
        """A closed shape: stroked when it has a width, filled black (0) or white (1) when it has a colour."""
        path = self.canvas.beginPath()
        path.moveTo(points[0][0] * MM, self._y(points[0][1]))
        for x, y in points[1:]:
            path.lineTo(x * MM, self._y(y))
        path.close()
        self._fill(path, width, colour)

    def disc(self, x: float, y: float, radius: float, width: float = 0.0, colour: int | None = None) -> None:
        path = self.canvas.beginPath()
        path.circle(x * MM, self._y(y), radius * MM)
        self._fill(path, width, colour)

    def half_disc(self, x: float, y: float, radius: float) -> None:
        """The right half, filled."""
        path = self.canvas.beginPath()
        left, right = (x - radius) * MM, (x + radius) * MM
        path.arc(left, self._y(y + radius), right, self._y(y - radius), startAng=-90, extent=180)
        path.close()
        self._fill(path, 0.0, 0)

    def _fill(self, path, width: float, colour: int | None) -> None:
        if width:
            self._line_width(width)
        if colour == 1:
            self.canvas.setFillGray(1)
        self.canvas.drawPath(path, stroke=bool(width), fill=colour is not None)
        if colour == 1:
            self.canvas.setFillGray(0)

    def dots(self, x1: float, x2: float, y: float, anchor: float) -> None:
        """A row of dots between two places, in step with all others that share the anchor."""
        last = anchor - DOT_PITCH * max(0, -(-(anchor - x2) // DOT_PITCH))
        count = int((last - x1) // DOT_PITCH)
        if count < 1:
            return
        canvas = self.canvas
        canvas.saveState()
        canvas.setLineCap(1)
        canvas.setLineWidth(0.35 * MM)
        canvas.setDash([0, DOT_PITCH * MM])
        canvas.line(last * MM, self._y(y), (last - count * DOT_PITCH - 0.01) * MM, self._y(y))
        canvas.restoreState()

    def set(self, line: Line, x: float, y: float) -> None:
        """One line of text from x on; y is its baseline."""
        self.set_all((line,), x, y, 0.0)

    def set_right(self, line: Line, x: float, y: float) -> None:
        """One line of text that ends at x."""
        self.set(line, x - line.width, y)

    def set_all(self, lines: Sequence[Line], x: float, y: float, leading: float) -> None:
        """Lines below each other; y is the first baseline."""
        text = None
        for line in lines:
            for bit in line.bits:
                if text is None:
                    text = self.canvas.beginText()
                text.setTextOrigin((x + bit.x) * MM, self._y(y) - bit.drop)
                text.setFont(self._fonts[bit.style], bit.size)
                text.textOut(bit.text.replace(NO_BREAK, " "))
            y += leading
        if text is not None:
            self.canvas.drawText(text)

    def words(self, text: str, x: float, y: float, size: float, style: str = "regular", anchor: float = 0.0) -> None:
        """Text of one look, not mark-up; `anchor` 0 starts at x, 0.5 is centred on it, 1 ends there."""
        shown = drawable(text, style).replace(NO_BREAK, " ")
        start = x - anchor * width(text, size, style)
        written = self.canvas.beginText(start * MM, self._y(y))
        written.setFont(self._fonts[style], size)
        written.textOut(shown)
        self.canvas.drawText(written)

    def figure(self, drawing: Drawing, x: float, y: float, shrink: float = 1.0) -> None:
        """A drawing, its upper left corner at (x, y)."""
        from layerfolio.drawing.writers.pdf import paint

        self._width = 0.0
        if shrink == 1.0:
            paint(self.canvas, drawing, x, self.height - y - drawing.height)
            return
        self.canvas.saveState()
        self.canvas.translate(x * MM, self._y(y + drawing.height * shrink))
        self.canvas.scale(shrink, shrink)
        paint(self.canvas, drawing, 0, 0)
        self.canvas.restoreState()
