"""The pieces of a detail as marks: what is seen beyond the cut, hatches, outlines."""

from collections.abc import Iterable
from dataclasses import dataclass, field

from layerfolio.drawing.detail.alternate import alternates
from layerfolio.drawing.detail.ends import Edge, run_on
from layerfolio.drawing.detail.model import Piece
from layerfolio.drawing.detail.outlines import outline_lines
from layerfolio.drawing.geometry import Outline, bounds
from layerfolio.drawing.hatches import FAMILIES, hatch, timber_beyond
from layerfolio.drawing.hatches.light import lightened
from layerfolio.drawing.marks import Area, Curve, Line, Mark

SMALL = 12.0  # mm on paper: cut timber as slender as a batten or a plate
THINNEST, THINNEST_SMALL = 0.7, 0.35  # mm on paper: thinner pieces are solid at this width; the same at 1 : 20 and smaller
SMALL_SCALE = 20.0
FINE_LINES = {0.5: 0.35, 0.35: 0.25}  # what outlines become there


@dataclass(slots=True)
class Body:
    """Marks in the order of painting; control lines get their white between `hatches` and `outlines`."""

    beyond: list[Mark] = field(default_factory=list)
    hatches: list[Mark] = field(default_factory=list)
    outlines: list[Mark] = field(default_factory=list)
    thin: list[Mark] = field(default_factory=list)
    families: dict[str, None] = field(default_factory=dict)
    notes: dict[str, None] = field(default_factory=dict)


def body_of(pieces: tuple[Piece, ...], edges: tuple[Edge, ...], scale: float, light: bool) -> Body:
    """All pieces, those that end at a break running on behind it."""
    body = Body()
    painted = [(one, run_on(one.outline, edges, True)) for one in pieces]
    for piece, outline in painted:
        if piece.beyond:
            _beyond(body, piece, outline, light)
    hides = [bounds(one.outline) for one in pieces if one.beyond]
    turned = alternates([one for one in pieces if not one.beyond])
    cut = [(piece, outline) for piece, outline in painted if not piece.beyond]
    for piece, outline in cut:
        if _covers(piece, hides):
            body.hatches.append(_white(outline))
    for piece, outline in cut:
        _cut(body, piece, outline, piece.layer in turned, scale, light)
    thick = [one for one in cut if depth(one[0].outline) >= _thinnest(scale)]
    body.outlines += outline_lines(thick, FINE_LINES if scale >= SMALL_SCALE else None)
    return body


def _beyond(body: Body, piece: Piece, outline: Outline, light: bool) -> None:
    body.beyond.append(Area(piece.outline, piece.layer, piece.family))
    body.beyond.append(_white(outline))
    if piece.family.startswith("timber"):
        body.beyond += lightened(timber_beyond(outline, turn=piece.turn, seed=piece.layer), "timber-board" if light else "batt")
        body.families.setdefault("timber-board")
    else:
        body.beyond.append(Line((*outline, outline[0]), 0.25, role="beyond"))


def _cut(body: Body, piece: Piece, outline: Outline, alternate: bool, scale: float, light: bool) -> None:
    body.hatches.append(Area(piece.outline, piece.layer, piece.family))
    body.families.setdefault(piece.family)
    if piece.family not in FAMILIES:
        body.notes.setdefault(f"No hatch is known for {piece.family!r}: drawn as a plain outline")
    if depth(piece.outline) < _thinnest(scale):
        body.thin.append(_solid(outline, _thinnest(scale)))
        body.notes.setdefault(f"{piece.layer}: thickness not to scale")
    elif piece.family in FAMILIES:
        marks = hatch(
            piece.family, outline, seed=piece.layer, piece=piece.number, turn=piece.turn, alternate=alternate, scale=scale
        )
        body.hatches += lightened(marks, piece.family) if light else marks


def is_small_member(piece: Piece) -> bool:
    """Whether a piece is cut timber that a control line should leave whole."""
    return piece.family.startswith("timber") and not piece.beyond and depth(piece.outline) < SMALL


def depth(outline: Outline) -> float:
    """About how thin an outline is: its area over half its girth."""
    area = girth = 0.0
    for at, (x, y) in enumerate(outline):
        ax, ay = outline[at - 1]
        area += ax * y - x * ay
        girth += ((x - ax) ** 2 + (y - ay) ** 2) ** 0.5
    half = abs(area) / 2
    root = max(0.0, (girth / 4) ** 2 - half) ** 0.5  # of the rectangle of that area and girth
    return girth / 4 - root


def _covers(piece: Piece, hides: Iterable[tuple[float, float, float, float]]) -> bool:
    """Whether something seen beyond the cut would show through a piece."""
    if piece.family == "air":
        return False
    x0, y0, x1, y1 = bounds(piece.outline)
    return any(x0 < one[2] and one[0] < x1 and y0 < one[3] and one[1] < y1 for one in hides)


def _white(outline: Outline) -> Curve:
    return Curve(_ring(outline), fill="white", role="cover")


def _thinnest(scale: float) -> float:
    return THINNEST_SMALL if scale >= SMALL_SCALE else THINNEST


def _solid(outline: Outline, thinnest: float) -> Curve:
    width = thinnest - min(thinnest, depth(outline))
    return Curve(_ring(outline), max(0.2, width), "black", role="thin layer")


def _ring(outline: Outline) -> tuple[tuple, ...]:
    return (("M", *outline[0]), *(("L", *one) for one in outline[1:]), ("Z",))
