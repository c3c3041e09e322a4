"""The cut itself: every piece of material with its hatch, faces and members, between the break lines."""

from dataclasses import dataclass, field

from layerfolio.drawing import breaks
from layerfolio.drawing.geometry import Outline, rectangle
from layerfolio.drawing.hatches import FAMILIES, hatch, timber_beyond
from layerfolio.drawing.layout_framing import Framing, View
from layerfolio.drawing.layout_stack import Band, Stack
from layerfolio.drawing.marks import Area, Clip, Group, Line, Mark, Point
from layerfolio.drawing.members import cut_member, rounded
from layerfolio.drawing.pieces import OVER, pieces


@dataclass(slots=True)
class Body:
    """What is painted inside the break lines, and what was found on the way."""

    hatches: list[Mark] = field(default_factory=list)
    faces: list[Mark] = field(default_factory=list)
    members: list[Mark] = field(default_factory=list)
    lines: list[Mark] = field(default_factory=list)
    families: dict[str, None] = field(default_factory=dict)
    unknown: list[str] = field(default_factory=list)

    def piece(self, band: Band, outline: Outline, family: str, scale: float, piece: int, alternate: bool) -> None:
        """One piece of a layer's main material."""
        self.hatches.append(Area(outline, band.layer.name, family))
        self.families.setdefault(family)
        if family not in FAMILIES:
            self.unknown.append(family)
            return
        self.hatches += hatch(
            family, outline, seed=band.layer.name, piece=piece, alternate=alternate, scale=scale
        )


def body_of(stack: Stack, framing: tuple[Framing, ...], length: float, view: View) -> Body:
    """All pieces of a section `length` mm long, in the section's own directions."""
    body = Body()
    by_number = {one.band.layer.number: one for one in framing}
    previous, alternate = "", False
    for band in stack.bands:
        if band.form != "body":
            continue
        alternate = band.layer.family == previous and not alternate
        previous = band.layer.family
        _band(body, stack, band, by_number.get(band.layer.number), length, view, alternate)
    _faces(body, stack, length)
    _heavy_lines(body, stack, length)
    if stack.ground:
        _ground(body, stack, length)
    return body


def clipped(body: Body, length: float, depth: float, over: tuple[Mark, ...]) -> Mark:
    """The section between its break lines; `over` is painted last inside them."""
    groups = (("hatches", body.hatches), ("faces", body.faces), ("members", body.members), ("membranes", body.lines))
    marks = (*(Group(name, tuple(inner)) for name, inner in groups if inner), *over)
    return Clip(breaks.clip_outline(length, depth), marks)


def _band(
    body: Body, stack: Stack, band: Band, frame: Framing | None, length: float, view: View, alternate: bool
) -> None:
    along = frame is not None and frame.seen == "along"
    if band.layer.kind == "cavity":
        outline = rectangle(-OVER, band.bottom, length + OVER, band.top)
        body.hatches.append(Area(outline, band.layer.name, "air"))
    elif along:
        outline = _beside_torn(frame, -OVER)
        body.piece(band, outline, band.layer.family, stack.scale, 0, alternate)
    else:
        family, ends = pieces(band, frame, stack.scale, length, view)
        for number, (left, right) in enumerate(ends):
            piece = number + (band.layer.number if family == "timber" else 0)
            outline = rectangle(left, band.bottom, right, band.top)
            body.piece(band, outline, family, stack.scale, piece, alternate)
            if family in ("timber", "timber-board") and number:
                body.faces.append(Line(((left, band.top), (left, band.bottom)), 0.35, role="joint"))
    if along:
        _beyond(body, band, frame, length)
    elif frame:
        for number, (left, right) in enumerate(frame.intervals):
            outline = rectangle(left, band.bottom, right, band.top)
            body.members += cut_member(frame, outline, number, stack.scale)
            body.families.setdefault(frame.member.family)
    if band.cut_short:
        body.members += breaks.cut_short(length, band.middle)


def _beyond(body: Body, band: Band, frame: Framing, length: float) -> None:
    """The member seen along its length, from the torn edge to the break line."""
    outline = _beside_torn(frame, length + OVER)
    name = f"{band.layer.name}/{frame.member.name}"
    body.members.append(Area(outline, name, frame.member.family))
    if frame.member.family.startswith("timber"):
        body.members += timber_beyond(outline, seed=name)
        body.families.setdefault("timber-board")
    body.members.append(rounded(_torn_edge(frame), 0.35, 0.42))


def _torn_edge(frame: Framing) -> tuple[Point, ...]:
    band = frame.band
    return breaks.torn_edge(frame.torn, band.top, band.bottom, band.layer.name)


def _beside_torn(frame: Framing, x: float) -> Outline:
    """The part of a layer between its torn edge and `x`."""
    return (*_torn_edge(frame), (x, frame.band.bottom), (x, frame.band.top))


def _faces(body: Body, stack: Stack, length: float) -> None:
    """A line at every face, stronger at the outer faces and at cut timber."""
    solid = [one for one in stack.bands if one.form == "body"]
    for index, one in enumerate(solid):
        before = solid[index - 1] if index else None
        if before is None or abs(before.bottom - one.top) > 1e-6:
            strong = before is None
            body.faces.append(_face(one.top, length, strong or _timber(one)))
        after = solid[index + 1] if index + 1 < len(solid) else None
        touching = after is not None and abs(after.top - one.bottom) < 1e-6
        strong = after is None or _timber(one) or (touching and _timber(after))
        body.faces.append(_face(one.bottom, length, strong))


def _timber(band: Band) -> bool:
    return band.layer.kind == "solid" and band.layer.family in ("timber", "timber-board")


def _face(y: float, length: float, strong: bool) -> Line:
    width, role = (0.5, "outline") if strong else (0.35, "face")
    return Line(((-OVER, y), (length + OVER, y)), width, role=role)


def _heavy_lines(body: Body, stack: Stack, length: float) -> None:
    for one in stack.bands:
        if one.line:
            body.lines.append(Area(_strip(one, length), one.layer.name, one.layer.family))
            ends = ((-OVER, one.middle), (length + OVER, one.middle))
            body.lines.append(Line(ends, one.line, role=one.layer.family if one.form == "sheet" else "thin layer"))
            body.families.setdefault(one.layer.family)


def _strip(band: Band, length: float) -> Outline:
    return rectangle(-OVER, band.middle - band.line / 2, length + OVER, band.middle + band.line / 2)


def _ground(body: Body, stack: Stack, length: float) -> None:
    """The ground line on the outermost face; its strokes stand outside the section (see `ground_strokes`)."""
    y = 0.0 if stack.outside_up else -stack.depth
    body.lines.append(Line(((-OVER, y), (length + OVER, y)), 1.0, role="ground"))
    body.families.setdefault("ground")
