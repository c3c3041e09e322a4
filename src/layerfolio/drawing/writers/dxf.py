"""A drawing as DXF: millimetres of the building, layers by role, real dimensions. Needs the optional library ezdxf."""

from collections.abc import Sequence
from math import atan2, cos, degrees, pi, sin
from pathlib import Path

from layerfolio.drawing import font
from layerfolio.drawing.clipping import inside, polylines
from layerfolio.drawing.geometry import Outline, bounds, contains, moved, text_box, turned
from layerfolio.drawing.marks import Area, Circle, Clip, Curve, Drawing, Group, Line, Mark, Point, Stipple, Text
from layerfolio.drawing.tiles import SIDE, tile
from layerfolio.drawing.writers.dxf_dimensions import Measured, centre, measured
from layerfolio.drawing.writers.dxf_layers import DASHED, LAYERS, WEIGHTS, layer_of, material_layer
from layerfolio.drawing.writers.points import places
from layerfolio.drawing.writers.runs import closed, drawable

MISSING = "DXF needs the optional library ezdxf"
INSTALL = "pip install layerfolio[dxf]"
MILLIMETRES = 4  # $INSUNITS
TEXT_STYLES = {"regular": "LF", "bold": "LF-BOLD", "oblique": "LF-OBLIQUE", "bold oblique": "LF-BOLD-OBLIQUE", "mono": "LF-MONO"}
DIM_STYLE = "LF"


def is_there() -> bool:
    """Whether the optional library is installed."""
    from importlib.util import find_spec

    return find_spec("ezdxf") is not None


def write(drawing: Drawing, target: str | Path) -> None:
    """One file in model space, its lower left corner at 0, 0; ImportError where the library is missing.

    Lengths are those of the building: paper millimetres times the scale's denominator. The same drawing gives the same bytes.
    """
    import ezdxf

    fixed = ezdxf.options.write_fixed_meta_data_for_testing
    ezdxf.options.write_fixed_meta_data_for_testing = True  # no clock and no random number in the file
    try:
        document = _Writer(drawing).document()
        document.saveas(target)
    finally:
        ezdxf.options.write_fixed_meta_data_for_testing = fixed


class _Writer:
    def __init__(self, drawing: Drawing):
        self.drawing = drawing
        self.scale = drawing.scale or 1.0
        self.family = ""

    def document(self):
        import ezdxf

        self.file = ezdxf.new("R2010")
        self.file.header["$INSUNITS"] = MILLIMETRES
        self.file.header["$MEASUREMENT"] = 1
        self.file.header["$LTSCALE"] = self.scale
        self.file.header["$DIMSCALE"] = self.scale
        self._tables()
        self.space = self.file.modelspace()
        self._marks(self.drawing.marks, "", ())
        return self.file

    def _tables(self) -> None:
        for name, pattern in DASHED.items():
            self.file.linetypes.add(name, [sum(map(abs, pattern)), *pattern])
        for name, (colour, plots) in LAYERS.items():
            self.file.layers.add(name, color=colour).dxf.plot = int(plots)
        for style, name in TEXT_STYLES.items():
            self.file.styles.add(name, font=font.FACES[style])
        values = {"dimtxt": 2.5, "dimtsz": 1.3, "dimexo": 1.5, "dimexe": 1.6, "dimdle": 1.6, "dimgap": 0.6, "dimtad": 1,
                  "dimscale": self.scale, "dimtxsty": "LF", "dimlfac": 1.0, "dimdec": 1, "dimzin": 8,
                  "dimrnd": 0.0, "dimtofl": 1}  # fmt: skip
        style = self.file.dimstyles.add(DIM_STYLE)
        for name, value in values.items():
            style.set_dxf_attrib(name, value)

    def _marks(self, marks: Sequence[Mark], group: str, clips: tuple[Outline, ...]) -> None:
        found, rest = measured(marks) if group == "dimensions" else ([], marks)
        for one in found:
            self._dimension(one)
        for mark in rest:
            self._mark(mark, group, clips)

    def _mark(self, mark: Mark, group: str, clips: tuple[Outline, ...]) -> None:
        match mark:
            case Group():
                self._marks(mark.marks, mark.name, clips)
            case Clip():
                self._marks(mark.marks, group, (*clips, mark.outline))
            case Area():
                self._area(mark, clips)
            case Line():
                points = (*mark.points[:-1], mark.points[0]) if closed(mark) else mark.points
                self._strokes([points], mark.width, layer_of(mark.role, group), clips, mark.dash)
            case Curve():
                self._curve(mark, group, clips)
            case Circle():
                self._circle(mark, group, clips)
            case Stipple():
                self._stipple(mark, group, clips)
            case Text():
                self._text(mark, group)

    def _at(self, point: Point) -> Point:
        return round(point[0] * self.scale, 4), round(point[1] * self.scale, 4)

    def _strokes(
        self, strokes: Sequence[Sequence[Point]], width: float, layer: str, clips: tuple[Outline, ...], dash: tuple = ()
    ) -> None:
        looks = {"layer": layer, "lineweight": _weight(width)}
        if dash:
            looks["linetype"] = _linetype(dash)
        for stroke in strokes:
            for part in inside(stroke, clips):
                self.space.add_lwpolyline([self._at(one) for one in part], dxfattribs=looks)

    def _curve(self, curve: Curve, group: str, clips: tuple[Outline, ...]) -> None:
        layer, strokes = layer_of(curve.role, group), polylines(curve)
        if curve.fill == "white" and clips:
            for stroke in strokes:
                self._mask(stroke)
        elif curve.fill == "black":
            for stroke in strokes:
                hatch = self.space.add_hatch(color=256, dxfattribs={"layer": layer})
                hatch.paths.add_polyline_path([self._at(one) for one in stroke], is_closed=True)
        if curve.width:
            self._strokes(strokes, curve.width, layer, clips)

    def _mask(self, outline: Sequence[Point]) -> None:
        """White that lies over hatches."""
        corners = outline[:-1] if outline[0] == outline[-1] else outline
        self.space.add_wipeout([self._at(one) for one in corners], dxfattribs={"layer": "LF-MASK"})

    def _circle(self, circle: Circle, group: str, clips: tuple[Outline, ...]) -> None:
        if any(not contains(one, circle.centre) for one in clips):
            return
        layer, (x, y), radius = layer_of(circle.role, group), self._at(circle.centre), circle.radius * self.scale
        if circle.fill == "black":
            half = radius / 2
            ring = [(x - half, y, radius, radius, 1.0), (x + half, y, radius, radius, 1.0)]
            self.space.add_lwpolyline(ring, close=True, dxfattribs={"layer": layer})
        elif circle.fill == "white" and circle.role == "letter field":
            (a, b), r = circle.centre, circle.radius
            self._mask([(a + r * cos(one * pi / 8), b + r * sin(one * pi / 8)) for one in range(16)])
        if circle.width:
            self.space.add_circle((x, y), radius, dxfattribs={"layer": layer, "lineweight": _weight(circle.width)})

    def _stipple(self, stipple: Stipple, group: str, clips: tuple[Outline, ...]) -> None:
        dx, dy = stipple.shift
        area = bounds([turned((x - dx, y - dy), -stipple.turn) for x, y in stipple.outline])
        marks = tile(stipple.tile, wrapped=False)
        for column, row in places(area):
            for mark in marks:
                placed = moved(moved(mark, 0.0, (column * SIDE, row * SIDE)), stipple.turn, stipple.shift)
                self._mark(placed, group, (*clips, stipple.outline))

    def _area(self, area: Area, clips: tuple[Outline, ...]) -> None:
        """The outline of a piece of material, on a layer of its material that does not print."""
        layer = material_layer(area.family)
        if layer not in self.file.layers:
            self.file.layers.add(layer, color=8).dxf.plot = 0
        for part in inside((*area.outline, area.outline[0]), clips):
            self.space.add_lwpolyline([self._at(one) for one in part], dxfattribs={"layer": layer})

    def _text(self, text: Text, group: str) -> None:
        from ezdxf.enums import TextEntityAlignment as Align

        shown = drawable(text.text)
        if not shown.strip():
            return
        if text.box:
            self._mask(text_box(text, text.box))
        anchor = {"start": Align.LEFT, "middle": Align.CENTER, "end": Align.RIGHT}[text.anchor]
        looks = {"layer": layer_of(text.role, group), "style": TEXT_STYLES[text.style], "rotation": text.turn}
        high = font.cap_height(text.size) * self.scale
        entity = self.space.add_text(" ".join(shown) if text.spaced else shown, height=high, dxfattribs=looks)
        entity.set_placement(self._at(text.at), align=anchor)

    def _dimension(self, one: Measured) -> None:
        """A dimension that measures; its figure says what the drawing says, where the drawing says it."""
        (ax, ay), (bx, by) = one.start, one.end
        angle = degrees(atan2(by - ay, bx - ax))
        start, end = self._at(one.start), self._at(one.end)
        made = self.space.add_linear_dim(
            base=end, p1=start, p2=end, angle=angle, text=one.text.text, location=self._at(centre(one.text)),
            text_rotation=one.text.turn % 360.0, dimstyle=DIM_STYLE, dxfattribs={"layer": "LF-DIMENSIONS"},
        )  # fmt: skip
        made.render()


def _weight(width: float) -> int:
    """The nearest line weight that the format knows, in hundredths of a millimetre."""
    return min(WEIGHTS, key=lambda one: (abs(one - width * 100), one))


def _linetype(dash: tuple[float, ...]) -> str:
    """The named pattern nearest in length."""
    return min(DASHED, key=lambda name: (abs(sum(map(abs, DASHED[name])) - sum(dash)), name))

