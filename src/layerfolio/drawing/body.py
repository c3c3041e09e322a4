"""The cut itself on the page: every piece of material with its hatch, faces and members, between the break lines."""

from collections.abc import Iterable
from dataclasses import dataclass, field

from layerfolio.drawing import breaks, built_up
from layerfolio.drawing.cut import Cut
from layerfolio.drawing.faces import faces, ground_line, heavy_line
from layerfolio.drawing.fasteners import pin_marks
from layerfolio.drawing.frame import Frame
from layerfolio.drawing.geometry import Outline, rectangle
from layerfolio.drawing.hatches import FAMILIES, hatch, timber_beyond
from layerfolio.drawing.layout_framing import Framing
from layerfolio.drawing.layout_stack import Band
from layerfolio.drawing.marks import Area, Clip, Group, Line, Mark, Point
from layerfolio.drawing.members import channel, rounded
from layerfolio.drawing.pieces import OVER, pieces
from layerfolio.drawing.seams import seam_marks


@dataclass(slots=True)
class Body:
    """What is painted inside the break lines, in the order of painting, and what was found on the way."""

    cut: Cut
    frame: Frame
    hatches: list[Mark] = field(default_factory=list)
    faces: list[Mark] = field(default_factory=list)
    members: list[Mark] = field(default_factory=list)
    lines: list[Mark] = field(default_factory=list)
    families: dict[str, None] = field(default_factory=dict)
    unknown: list[str] = field(default_factory=list)
    runs: dict[int, built_up.Run] = field(default_factory=dict)  # by the number of each of their layers

    def piece(self, band: Band, local: Outline, family: str, number: int, alternate: bool, area: bool = True) -> None:
        """One piece of a layer's main material."""
        outline = self.outline(local)
        if area:
            self.hatches.append(Area(outline, band.layer.name, family))
        self.families.setdefault(family)
        if family in FAMILIES:
            self.hatches += hatch(
                family, outline, seed=band.layer.name, piece=number, turn=self.frame.turn, alternate=alternate,
                scale=self.cut.stack.scale,
            )  # fmt: skip
        else:
            self.unknown.append(family)

    def member(self, framing: Framing, local: Outline, number: int) -> None:
        """One member cut across: rings in a strong outline, or the profile's own line for metal."""
        member, name = framing.member, f"{framing.band.layer.name}/{framing.member.name}"
        outline = self.outline(local)
        self.members.append(Area(outline, name, member.family))
        self.families.setdefault(member.family)
        if member.is_metal or member.family == "metal":
            self.members += self.frame.marks([channel(local, self.cut.stack.scale)])
            return
        family = "timber" if member.family == "timber-board" else member.family
        piece = number + framing.band.layer.number
        if family in FAMILIES:
            across = 90.0 if built_up.is_web(framing) and family != "timber" else 0.0
            self.members += hatch(
                family, outline, seed=name, piece=piece, turn=self.frame.turn + across, scale=self.cut.stack.scale
            )
        self.members.append(Line((*outline, outline[0]), 0.5, role="member"))

    def beyond(self, framing: Framing) -> None:
        """A member seen along its length, from the torn edge to the break line."""
        name = f"{framing.band.layer.name}/{framing.member.name}"
        edge = self.torn(framing)
        outline = self.outline(_beside(edge, framing.band, self.cut.length + OVER))
        family = "timber-board" if framing.member.family.startswith("timber") else framing.member.family
        self.members.append(Area(outline, name, family))
        self.families.setdefault(family)
        if family == "timber-board":
            self.members += timber_beyond(outline, turn=self.frame.turn, seed=name)
        elif built_up.is_part(framing):
            self.members.append(Line((*outline, outline[0]), 0.25, role="beyond"))
        self.members += self.frame.marks([rounded(edge, 0.35, 0.42)])

    def torn(self, framing: Framing) -> tuple[Point, ...]:
        """Where the filling ends and the member beyond begins; one edge for all layers of a run."""
        run = self.runs.get(framing.band.layer.number)
        if run is None:
            return _torn_edge(framing, framing.band)
        edge = _torn_edge(run[0], built_up.whole(run))
        return built_up.part_of_edge(edge, framing.band.top, framing.band.bottom)

    def outline(self, local: Iterable[Point]) -> Outline:
        return tuple(map(self.frame.place, local))


def body_of(cut: Cut, frame: Frame) -> Body:
    """All pieces of a section on the page."""
    body = Body(cut, frame)
    runs = built_up.runs_of(cut.stack, cut.framing)
    body.runs = {one.band.layer.number: run for run in runs for one in run}
    by_number = {one.band.layer.number: one for one in cut.framing}
    previous, alternate = "", False
    for band in cut.stack.bands:
        if band.form == "body":
            alternate = band.layer.family == previous and not alternate
            previous = band.layer.family
            framing = by_number.get(band.layer.number)
            _material(body, band, framing, alternate)
            _framing(body, band, framing)
    body.faces += frame.marks(faces(cut.stack, cut.length, built_up.inner_faces(runs)))
    for band in cut.stack.bands:
        if band.line:
            body.families.setdefault(band.layer.family)
            body.lines += frame.marks(heavy_line(band, cut.length))
    if cut.stack.ground:
        body.families.setdefault("ground")
        body.lines += frame.marks([ground_line(cut.stack, cut.length)])
    for seam in cut.seams:
        body.lines += frame.marks(seam_marks(seam))
    for pins in cut.pins:
        body.lines += frame.marks(pin_marks(pins))
    return body


def clipped(body: Body, over: tuple[Mark, ...]) -> Mark:
    """The section between its break lines; `over` is painted last inside them."""
    groups = (("hatches", body.hatches), ("faces", body.faces), ("members", body.members), ("membranes", body.lines))
    marks = (*(Group(name, tuple(inner)) for name, inner in groups if inner), *over)
    return Clip(body.outline(breaks.clip_outline(body.cut.length, body.cut.stack.depth)), marks)


def _material(body: Body, band: Band, framing: Framing | None, alternate: bool) -> None:
    cut = body.cut
    if band.layer.kind == "cavity":
        outline = body.outline(rectangle(-OVER, band.bottom, cut.length + OVER, band.top))
        body.hatches.append(Area(outline, band.layer.name, "air"))
        return
    if band.layer.number in body.runs:
        _built_up(body, band, framing, alternate)
        return
    if framing is not None and framing.seen == "along":
        body.piece(band, _beside(body.torn(framing), band, -OVER), band.layer.family, 0, alternate)
        return
    family, ends = pieces(band, framing, cut.stack.scale, cut.length, cut.view)
    for number, (left, right) in enumerate(ends):
        piece = number + (band.layer.number if family == "timber" else 0)
        body.piece(band, rectangle(left, band.bottom, right, band.top), family, piece, alternate)
        if family in ("timber", "timber-board") and number:
            body.faces += body.frame.marks([Line(((left, band.top), (left, band.bottom)), 0.35, role="joint")])


def _framing(body: Body, band: Band, framing: Framing | None) -> None:
    if framing is not None and framing.seen == "along":
        body.beyond(framing)
    elif framing is not None:
        for number, (left, right) in enumerate(framing.intervals):
            body.member(framing, rectangle(left, band.bottom, right, band.top), number)
    if band.cut_short:
        body.members += body.frame.marks(breaks.cut_short(body.cut.length, band.middle))


def _built_up(body: Body, band: Band, framing: Framing, alternate: bool) -> None:
    """The filling beside flanges and webs: an area for each layer, hatched once over all of them."""
    run, cut = body.runs[band.layer.number], body.cut
    family, first = band.layer.family, run[0].band is band
    if framing.seen == "along":
        body.hatches.append(Area(body.outline(_beside(body.torn(framing), band, -OVER)), band.layer.name, family))
        if first:
            edge = _torn_edge(run[0], built_up.whole(run))
            body.piece(band, _beside(edge, built_up.whole(run), -OVER), family, 0, alternate, area=False)
        return
    for left, right in pieces(band, framing, cut.stack.scale, cut.length, cut.view)[1]:
        body.hatches.append(Area(body.outline(rectangle(left, band.bottom, right, band.top)), band.layer.name, family))
    if first:
        thin = built_up.thinnest(run)
        ends = pieces(thin.band, thin, cut.stack.scale, cut.length, cut.view)[1]
        for number, outline in enumerate(built_up.bays(run, ends)):
            body.piece(band, outline, family, number, alternate, area=False)


def _torn_edge(framing: Framing, band: Band) -> tuple[Point, ...]:
    return breaks.torn_edge(framing.torn, band.top, band.bottom, band.layer.name)


def _beside(edge: tuple[Point, ...], band: Band, x: float) -> Outline:
    """The part of a layer between its torn edge and `x`."""
    return (*edge, (x, band.bottom), (x, band.top))
