"""A drawing: a size and a tuple of frozen marks in paper millimetres, y upward. Writers and tests read it; nothing else."""

from dataclasses import dataclass

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Line:
    """An open polyline. `dash` alternates on and off lengths in mm; `halo` is white painted beside it on each side first."""

    points: tuple[Point, ...]
    width: float
    dash: tuple[float, ...] = ()
    halo: float = 0.0
    round_ends: bool = False
    role: str = ""  # outline, face, hatch, dimension, leader, control W ... for readers of the listing


@dataclass(frozen=True, slots=True)
class Curve:
    """A path of Bezier commands: ("M", x, y), ("L", x, y), ("C", x1, y1, x2, y2, x, y), ("Z",). `fill`: "", black or white."""

    commands: tuple[tuple, ...]
    width: float = 0.0  # 0: not stroked
    fill: str = ""
    halo: float = 0.0
    role: str = ""


@dataclass(frozen=True, slots=True)
class Circle:
    centre: Point
    radius: float
    width: float = 0.0
    fill: str = ""
    role: str = ""


@dataclass(frozen=True, slots=True)
class Area:
    """The outline of a piece of material: paints nothing, tells other writers and the tests what lies where."""

    outline: tuple[Point, ...]
    layer: str  # layer name, member as "layer/member"
    family: str


@dataclass(frozen=True, slots=True)
class Text:
    """`at` is the anchor on the baseline; `size` in points; `turn` in degrees anticlockwise; `style` regular, bold, oblique
    or bold oblique; `anchor` start, middle or end; `box` paints a white box behind, grown by that many mm (0: none)."""

    at: Point
    text: str
    size: float = 9.72
    style: str = "regular"
    anchor: str = "start"
    turn: float = 0.0
    spaced: float = 0.0  # letter spacing in points
    box: float = 0.0
    role: str = ""


@dataclass(frozen=True, slots=True)
class Clip:
    """Marks painted only inside a closed outline."""

    outline: tuple[Point, ...]
    marks: tuple["Mark", ...]


@dataclass(frozen=True, slots=True)
class Stipple:
    """A repeated tile (dots, flecks) inside a closed outline: `tile` names one of drawing.tiles, `shift` moves its phase."""

    outline: tuple[Point, ...]
    tile: str
    shift: Point = (0.0, 0.0)
    turn: float = 0.0


@dataclass(frozen=True, slots=True)
class Group:
    """Named marks: one SVG group, one heading in the listing."""

    name: str
    marks: tuple["Mark", ...]


Mark = Line | Curve | Circle | Area | Text | Clip | Stipple | Group


@dataclass(frozen=True, slots=True)
class Drawing:
    """`width` and `height` in paper millimetres; `scale` is the denominator (5 for 1 : 5), None when nothing is to scale."""

    name: str
    width: float
    height: float
    marks: tuple[Mark, ...]
    scale: float | None = None
    scale_text: str = ""  # "1 : 5" or `1 1/2" = 1'-0" (1 : 8)`
    families: tuple[str, ...] = ()  # hatch families in order of appearance, then signs, for the legend
    notes: tuple[str, ...] = ()  # what the sheet must say: "thickness of layer 3 not to scale"
