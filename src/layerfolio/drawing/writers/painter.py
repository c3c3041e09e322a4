"""Marks painted on a reportlab canvas, one path for each run of like marks."""

from layerfolio.drawing import font
from layerfolio.drawing.geometry import Outline, bounds, text_box, turned
from layerfolio.drawing.marks import Area, Circle, Clip, Curve, Group, Line, Mark, Stipple, Text
from layerfolio.drawing.tiles import OVERHANG, SIDE, tile
from layerfolio.drawing.writers.fonts_pdf import register
from layerfolio.drawing.writers.pdf_path import Path, ring
from layerfolio.drawing.writers.points import pair, places, pt
from layerfolio.drawing.writers.runs import closed, drawable, runs

MITRE, ROUND = 0, 1
BLACK, WHITE = 0, 1


class Painter:
    """Paints marks on one canvas; lengths go out in points with two decimals."""

    def __init__(self, canvas):
        self.canvas = canvas
        self.fonts = register()

    def marks(self, marks: tuple[Mark, ...]) -> None:
        for run in runs(marks):
            self._run(run)

    def _run(self, run: list[Mark]) -> None:
        match run[0]:
            case Line():
                self._lines(run)
            case Curve():
                self._curves(run)
            case Circle(width=0.0, fill="black"):
                self._dots(run)
            case Circle():
                self._circle(run[0])
            case Text():
                self._text(run[0])
            case Clip():
                self._clip(run[0].outline)
                self.marks(run[0].marks)
                self.canvas.restoreState()
            case Stipple():
                self._stipple(run[0])
            case Group():
                self.marks(run[0].marks)
            case Area():
                pass

    def _pen(self, width: float, shade: int = BLACK, dash: tuple = (), cap: int = 0, join: int = MITRE) -> None:
        canvas = self.canvas
        canvas.setLineWidth(pt(width))
        canvas.setStrokeGray(shade)
        canvas.setLineCap(cap)
        canvas.setLineJoin(join)
        canvas.setDash([pt(one) for one in dash])

    def _lines(self, lines: list[Line]) -> None:
        path = Path()
        for line in lines:
            is_closed = closed(line)
            path.line(line.points[:-1] if is_closed else line.points, is_closed)
        pattern, cap = lines[0], int(lines[0].round_ends)
        if pattern.halo:
            self._pen(pattern.width + 2 * pattern.halo, WHITE, cap=cap)
            self.canvas.drawPath(path)
        self._pen(pattern.width, BLACK, pattern.dash, cap)
        self.canvas.drawPath(path)

    def _curves(self, curves: list[Curve]) -> None:
        path = Path()
        for curve in curves:
            path.curve(curve)
        pattern = curves[0]
        if pattern.halo:
            self._pen(pattern.width + 2 * pattern.halo, WHITE, join=ROUND)
            self.canvas.drawPath(path)
        if pattern.width:
            self._pen(pattern.width, join=ROUND)
        self._paper(pattern.fill)
        self.canvas.drawPath(path, stroke=int(pattern.width > 0), fill=int(bool(pattern.fill)))

    def _paper(self, fill: str) -> None:
        if fill:
            self.canvas.setFillGray(WHITE if fill == "white" else BLACK)

    def _dots(self, dots: list[Circle]) -> None:
        """Filled dots as strokes of no length with round ends: a tenth of the bytes of drawn circles."""
        path = Path()
        for dot in dots:
            path.line((dot.centre, dot.centre))
        self._pen(2 * dots[0].radius, cap=ROUND)
        self.canvas.drawPath(path)

    def _circle(self, circle: Circle) -> None:
        if circle.width:
            self._pen(circle.width)
        self._paper(circle.fill)
        stroke, fill = int(circle.width > 0), int(bool(circle.fill))
        self.canvas.circle(*pair(circle.centre), pt(circle.radius), stroke=stroke, fill=fill)

    def _text(self, text: Text) -> None:
        shown = drawable(text.text)
        wide = font.width(shown, text.size, text.style, text.spaced)
        canvas = self.canvas
        if text.box:
            self._box(text_box(text, text.box))
        canvas.saveState()
        canvas.setFillGray(BLACK)
        canvas.translate(*pair(text.at))
        if text.turn:
            canvas.rotate(text.turn)
        canvas.setFont(self.fonts[text.style], text.size)
        start = {"start": 0.0, "middle": -wide / 2, "end": -wide}[text.anchor]
        canvas.drawString(pt(start), 0, shown, mode=0, charSpace=text.spaced)
        canvas.restoreState()

    def _box(self, corners: Outline) -> None:
        self.canvas.setFillGray(WHITE)
        self.canvas.drawPath(ring(corners), stroke=0, fill=1)

    def _clip(self, outline: Outline) -> None:
        self.canvas.saveState()
        self.canvas.clipPath(ring(outline), stroke=0, fill=0)

    def _stipple(self, stipple: Stipple) -> None:
        """The tile as a form, placed side by side; its marks hang over, so that no seam shows."""
        name = self._form(stipple.tile)
        canvas = self.canvas
        self._clip(stipple.outline)
        canvas.translate(*pair(stipple.shift))
        if stipple.turn:
            canvas.rotate(stipple.turn)
        dx, dy = stipple.shift
        area = bounds([turned((x - dx, y - dy), -stipple.turn) for x, y in stipple.outline])
        for column, row in places(area):
            canvas.saveState()
            canvas.translate(pt(column * SIDE), pt(row * SIDE))
            canvas.doForm(name)
            canvas.restoreState()
        canvas.restoreState()

    def _form(self, name: str) -> str:
        """The tile's form, written once in a document."""
        form = f"tile-{name}"
        if not self.canvas.hasForm(form):
            self.canvas.beginForm(form, pt(-OVERHANG), pt(-OVERHANG), pt(SIDE + OVERHANG), pt(SIDE + OVERHANG))
            self.marks(tile(name, wrapped=False))
            self.canvas.endForm()
        return form
