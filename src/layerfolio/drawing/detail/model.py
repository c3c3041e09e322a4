"""A junction in building millimetres, before it is put on paper: x to the inside or right, y upward, any origin.

Makers of junctions give a `Detail`; `paper.drawing_of` paints it. Widths of lines, lettering, offsets of dimensions are
paper millimetres and stay the same at every scale.
"""

from dataclasses import dataclass
from typing import Literal

from layerfolio.drawing.geometry import Outline
from layerfolio.drawing.marks import Point

Side = Literal["left", "right"]


@dataclass(frozen=True, slots=True)
class Piece:
    """One cut piece of material: any simple polygon. `layer` is "W1/panel-15" for a layer, "W1/hemp-batt/stud" for its member,
    a plain word ("plate", "gutter") for what the tool adds. `turn`: direction of the layer's length in degrees. `beyond`: seen
    behind the cut, painted first in thin lines."""

    outline: Outline
    family: str  # hatch family; "air" for a cavity, "timber" cut across, "timber-board" along the grain
    layer: str
    turn: float = 0.0
    edge: float = 0.35  # width of the outline; 0.5 for framing and timber cut across, 0 for none
    beyond: bool = False
    number: int = 0  # chooses how rings look and where random strokes start


@dataclass(frozen=True, slots=True)
class Sheet:
    """What is drawn as a line, not to scale: membranes 1.0, flashing 0.8, tape and gasket 1.0 to 1.6, mesh dotted."""

    points: tuple[Point, ...]
    role: Literal["membrane", "flashing", "tape", "gasket", "mesh", "metal", "ground", "seal"]
    layer: str = ""


@dataclass(frozen=True, slots=True)
class Trace:
    """A control line round the junction: one polyline per unbroken run; `letters` "W", "A", "V", "T" or "AV" (in turn).

    Where the control is interrupted the runs end apart and each end of the gap stands in `gaps`.
    """

    letters: str
    runs: tuple[tuple[Point, ...], ...]
    gaps: tuple[Point, ...] = ()


@dataclass(frozen=True, slots=True)
class Note:
    """A tag: words (two short lines on paper at most), where its leader points, on which side its circle stands.

    `at` may give several places, best first. `layer`: "W1/6" where it speaks of a layer of an assembly's table.
    """

    words: str
    at: tuple[Point, ...]
    side: Side
    layer: str = ""


@dataclass(frozen=True, slots=True)
class Measure:
    """A dimension between two points, level ("x") or upright ("y"). Its line stands where `line` says (building mm), the
    figure is `value` m, or `text` where that is no plain length ("200 min.")."""

    start: Point
    end: Point
    axis: Literal["x", "y"]
    line: float
    value: float | None = None
    text: str = ""


@dataclass(frozen=True, slots=True)
class Break:
    """A break line from a to b with a zigzag: the detail goes on beyond it."""

    a: Point
    b: Point


@dataclass(frozen=True, slots=True)
class Arrow:
    """Moving air in a ventilated space: its middle and direction in degrees (90: upward); in plan a ring with a dot."""

    at: Point
    turn: float = 90.0
    towards_viewer: bool = False


@dataclass(frozen=True, slots=True)
class Word:
    """OUTSIDE, INSIDE, ROOM ... in spaced capitals."""

    text: str
    at: Point


@dataclass(frozen=True, slots=True)
class Bubble:
    """A mark that leads to another sheet: the number of the detail over the sheet it stands on; `at` is what it points at."""

    number: str
    sheet: str
    at: Point


@dataclass(frozen=True, slots=True)
class Detail:
    """Everything of one junction. `order` and `look` become the two columns under the drawing (sentences, in order)."""

    name: str  # "sill W1 S1"
    kind: str  # "vertical section through a bay", "plan section" ...
    pieces: tuple[Piece, ...]
    sheets: tuple[Sheet, ...] = ()
    traces: tuple[Trace, ...] = ()
    notes: tuple[Note, ...] = ()
    measures: tuple[Measure, ...] = ()
    breaks: tuple[Break, ...] = ()
    arrows: tuple[Arrow, ...] = ()
    words: tuple[Word, ...] = ()
    bubbles: tuple[Bubble, ...] = ()
    slope: tuple[Point, float] | None = None  # where the slope triangle stands, and its degrees
    clip: Outline = ()  # nothing of the pieces shows beyond it; () for their own bounds
    remarks: tuple[str, ...] = ()  # what the sheet must say of the drawing
    order: tuple[str, ...] = ()
    look: tuple[str, ...] = ()
