"""A drawing as SVG: one unit is one millimetre, y downward, text as text."""

from layerfolio.drawing import font
from layerfolio.drawing.geometry import Outline, text_box
from layerfolio.drawing.marks import Area, Circle, Clip, Curve, Drawing, Group, Line, Mark, Stipple, Text
from layerfolio.drawing.tiles import SIDE, tile
from layerfolio.drawing.writers.runs import drawable, runs
from layerfolio.drawing.writers.svg_paths import bezier, face, number, pair, polyline, ring


def write(drawing: Drawing) -> str:
    """The whole document; the same drawing gives the same text."""
    return _Writer(drawing).document()


class _Writer:
    def __init__(self, drawing: Drawing):
        import svgwrite

        wide, high = number(drawing.width), number(drawing.height)
        self.page = svgwrite.Drawing(size=(f"{wide}mm", f"{high}mm"), debug=False)
        self.page.viewbox(0, 0, wide, high)
        self.page.set_desc(title=drawable(drawing.name))
        self.page.add(self.page.rect((0, 0), (wide, high), fill="white"))
        self.drawing = drawing
        self.top = drawing.height
        self.ids: dict[str, int] = {}
        self.tiles: dict[str, str] = {}
        self.places: dict[tuple, str] = {}

    def document(self) -> str:
        self._marks(self.page.add(self.page.g(fill="none", stroke="none")), self.drawing.marks)
        return f'<?xml version="1.0" encoding="utf-8"?>\n{self.page.tostring()}\n'

    def _marks(self, parent, marks: tuple[Mark, ...]) -> None:
        for run in runs(marks):
            self._run(parent, run)

    def _run(self, parent, run: list[Mark]) -> None:
        first = run[0]
        match first:
            case Line():
                looks = {"stroke_linecap": "round"} if first.round_ends else {}
                self._path(parent, "".join(polyline(one, self.top) for one in run), first, looks, first.dash)
            case Curve():
                looks = {"stroke_linejoin": "round", **({"fill": first.fill} if first.fill else {})}
                self._path(parent, "".join(bezier(one, self.top) for one in run), first, looks)
            case Circle():
                for one in run:
                    self._circle(parent, one)
            case Text():
                self._text(parent, first)
            case Clip():
                clip = f"url(#{self._clip(first.outline)})"
                self._marks(parent.add(self.page.g(clip_path=clip)), first.marks)
            case Stipple():
                parent.add(self.page.path(d=ring(first.outline, self.top), fill=f"url(#{self._place(first)})"))
            case Group():
                self._marks(parent.add(self.page.g(id=self._id(first.name))), first.marks)
            case Area():
                pass

    def _path(self, parent, d: str, mark: Line | Curve, looks: dict, dash: tuple[float, ...] = ()) -> None:
        if mark.halo:
            wide = number(mark.width + 2 * mark.halo)
            halo = {name: value for name, value in looks.items() if name != "fill"}
            parent.add(self.page.path(d=d, stroke="white", stroke_width=wide, **halo))
        if dash:
            looks = {**looks, "stroke_dasharray": " ".join(map(number, dash))}
        if mark.width:
            looks = {**looks, "stroke": "black", "stroke_width": number(mark.width)}
        parent.add(self.page.path(d=d, **looks))

    def _circle(self, parent, circle: Circle) -> None:
        looks = {"stroke": "black", "stroke_width": number(circle.width)} if circle.width else {}
        if circle.fill:
            looks["fill"] = circle.fill
        x, y = circle.centre
        parent.add(self.page.circle((number(x), number(self.top - y)), number(circle.radius), **looks))

    def _text(self, parent, text: Text) -> None:
        """Text with its own width written beside it, so that a reader without the face keeps the layout."""
        shown = drawable(text.text)
        if not shown:
            return
        if text.box:
            parent.add(self.page.path(d=ring(text_box(text, text.box), self.top), fill="white"))
        wide = font.width(shown, text.size, text.style, text.spaced)
        start = {"start": 0.0, "middle": -wide / 2, "end": -wide}[text.anchor]
        x, y = text.at
        looks = face(text)
        if text.turn:
            looks["transform"] = f"rotate({number(-text.turn)} {pair(x, y, self.top)})"
        places = [x + start]
        if text.spaced:  # each letter at its own place, since viewers differ in how they space a given length
            places = [x + start + _up_to(text, shown[:count]) for count in range(len(shown))]
        else:
            looks |= {"textLength": number(wide), "lengthAdjust": "spacingAndGlyphs"}
        at = {"x": list(map(number, places)), "y": [number(self.top - y)]}
        parent.add(self.page.text(shown, fill="black", **at, **looks))

    def _clip(self, outline: Outline) -> str:
        name = self._id("clip")
        self.page.defs.add(self.page.clipPath(id=name)).add(self.page.path(d=ring(outline, self.top)))
        return name

    def _place(self, stipple: Stipple) -> str:
        """The tile's pattern at its own place."""
        x, y = stipple.shift
        turn = f"translate({pair(x, y, self.top)}) rotate({number(-stipple.turn)}) translate(0 {number(-SIDE)})"
        key = stipple.tile, turn
        if key not in self.places:
            name = self._id(f"{stipple.tile}-place")
            base = f"#{self._tile(stipple.tile)}"
            self.page.defs.add(self.page.pattern(id=name, patternTransform=turn, inherit=base))
            self.places[key] = name
        return self.places[key]

    def _tile(self, name: str) -> str:
        """The pattern that holds a tile's marks, written once; it starts at its own origin, as some viewers ask."""
        if name not in self.tiles:
            self.tiles[name] = self._id(f"tile-{name}")
            box = {"insert": (0, 0), "size": (number(SIDE), number(SIDE)), "patternUnits": "userSpaceOnUse"}
            pattern = self.page.defs.add(self.page.pattern(id=self.tiles[name], fill="none", **box))
            top, self.top = self.top, SIDE
            self._marks(pattern, tile(name))
            self.top = top
        return self.tiles[name]

    def _id(self, name: str) -> str:
        """A valid name that no other element of the document has."""
        plain = "".join(one if one.isascii() and one.isalnum() else "-" for one in name).strip("-") or "part"
        plain = plain if plain[0].isalpha() else f"part-{plain}"
        count = self.ids[plain] = self.ids.get(plain, 0) + 1
        return plain if count == 1 else f"{plain}-{count}"


def _up_to(text: Text, before: str) -> float:
    """Where the next letter of a spaced text begins, mm from its start."""
    return font.width(before, text.size, text.style, text.spaced) + (text.spaced * font.MM_PER_PT if before else 0.0)
