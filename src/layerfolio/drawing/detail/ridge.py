"""The ridge of a roof: both slopes alike, their frames meeting plumb at x = 0, the outer face of the frames at y = 0 there."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from math import cos, radians

from layerfolio.assembly.junction_types import Junction
from layerfolio.assembly.types import Assembly
from layerfolio.drawing.detail.model import Arrow, Break, Detail, Piece, Sheet, Trace, Word
from layerfolio.drawing.detail.ridge_place import BOARD, CAP, GAP, RISE, RidgePlace
from layerfolio.drawing.detail.ridge_words import look_at, notes, order_of_work, remarks
from layerfolio.drawing.detail.traces import depth_of, insulation_middle, sheet_role
from layerfolio.drawing.figures import Units
from layerfolio.drawing.marks import Point


def ridge(junction: Junction, assemblies: Mapping[str, Assembly], units: Units, scale: float = 10.0) -> Detail:
    """A vertical section along the slopes."""
    over = assemblies[junction.of[0]]
    place = RidgePlace(junction, over, scale)
    half = tuple(_half(place))
    low = place.height(place.arm.courses[-1].end, place.right)
    return Detail(
        name=f"ridge {over.name}",
        kind="vertical section through a bay",
        pieces=(*half, *map(_mirrored, half), *_board(place), *_spacers(place)),
        sheets=tuple(_sheets(place)),
        traces=tuple(_traces(place)),
        notes=tuple(notes(place, units)),
        breaks=tuple(_breaks(place)),
        arrows=_arrows(place),
        words=(
            Word("OUTSIDE", (-place.right, place.height(place.arm.courses[0].start, 0.0) + 10 * scale)),
            Word("INSIDE", (-8 * scale, min(low + 10 * scale, place.height(place.arm.courses[-1].end, 0.0) - 12 * scale))),
        ),
        remarks=remarks(place),
        order=order_of_work(place),
        look=look_at(place),
    )


def ridge_half(place: RidgePlace) -> tuple[tuple[Piece, ...], tuple[Sheet, ...], tuple[Trace, ...]]:
    """The slope that falls to the right, without a board between both: what a section of the building adds to its own slope."""
    kept = [replace(one, points=_right(one.points)) for one in _sheets(place) if one.role not in ("mesh", "flashing")]
    right = [one for one in kept if len(one.points) > 1]
    traces = [replace(one, runs=tuple(_right(run) for run in one.runs if run[-1][0] > 0), gaps=()) for one in _traces(place)]
    return tuple(_half(place, False)), (*right, *_cap_of(place)), tuple(one for one in traces if one.runs)


def _right(run: tuple[Point, ...]) -> tuple[Point, ...]:
    return tuple(point for point in run if point[0] > -0.01)


def _half(place: RidgePlace, board: bool = True) -> Iterator[Piece]:
    far = place.plumb(place.right)
    for one in place.arm.courses:
        near = GAP if one.zone == "rain" and place.vented else BOARD if board and one.zone == "frame" and place.has_board else 0.0
        member = one.layer.member
        first = near + member.width.value * 500 if one.zone == "rain" and member and member.width else None
        yield from place.arm.pieces(one, place.plumb(near), far, first and place.plumb(first).at(one.middle))


def _mirrored(piece: Piece) -> Piece:
    return replace(piece, outline=tuple((-x, y) for x, y in piece.outline)[::-1], turn=-piece.turn, number=piece.number + 1)


def _spacers(place: RidgePlace) -> Iterator[Piece]:
    """Between covering and cap, with air between them along the ridge."""
    if place.vented is None:
        return
    low, high = place.cover, place.cover - RISE * cos(radians(place.slope)) + 1.0
    for x in (CAP - 45.0,):
        outline = place.arm.outline(high, low, place.plumb(x - 12.0), place.plumb(x + 12.0))
        one = Piece(outline, "timber", "spacer", -place.slope, 0.35, number=1)
        yield from (one, _mirrored(one))


def _board(place: RidgePlace) -> Iterator[Piece]:
    """Between the frames, as deep as they are."""
    if place.has_board:
        frame = place.arm.zone("frame")
        top, low = place.height(frame[0].start, 0.0), place.height(frame[-1].end, 0.0)
        edge_top, edge_low = place.height(frame[0].start, BOARD), place.height(frame[-1].end, BOARD)
        corners = ((-BOARD, edge_low), (0.0, low), (BOARD, edge_low), (BOARD, edge_top), (0.0, top), (-BOARD, edge_top))
        yield Piece(corners, "timber", "ridge board", 90.0, 0.5)


def _sheets(place: RidgePlace) -> Iterator[Sheet]:
    for one in place.arm.courses:
        if one.sheet:
            role, name = sheet_role(one), place.arm.name(one.layer)
            if one.zone == "rain" and place.vented:
                line = place.over_ridge(one.start, GAP)
                yield Sheet(line[:2], role, name)
                yield Sheet(line[2:], role, name)
            else:
                yield Sheet(place.over_ridge(one.start), role, name)
    yield from _cap_of(place)


def _cap_of(place: RidgePlace) -> tuple[Sheet, ...]:
    return tuple(_cap(place)) if place.vented else ()


def _cap(place: RidgePlace) -> Iterator[Sheet]:
    """Raised over the slot, with mesh at its edges."""
    edge, top = place.height(place.cover, CAP) + RISE, place.height(place.cover, 0.0) + RISE
    yield Sheet(((-CAP, edge - 12.0), (-CAP, edge), (0.0, top), (CAP, edge), (CAP, edge - 12.0)), "flashing", "ridge cap")
    for side in (4.0 - CAP, CAP - 4.0):
        yield Sheet(((side, place.height(place.cover, CAP) + 1.0), (side, edge)), "mesh", "mesh")


def _traces(place: RidgePlace) -> Iterator[Trace]:
    found = {one: place.served(one) for one in "WAV"}
    if found["A"] and found["A"] == found["V"]:
        found = {"W": found["W"], "AV": found["A"]}
    for number, (letters, course) in enumerate(found.items()):
        if course is None:
            continue
        off = place.off * (1 + 1.1 * max(0, number - 1))
        d = course.start - place.off if letters == "W" else depth_of(place.arm, course, off)
        link = place.junction.link(letters[0])
        if link and link.broken:
            line = place.over_ridge(d, 6.0)
            yield Trace(letters, (line[:2], line[2:]), (line[1], line[2]))
        else:
            yield Trace(letters, (place.over_ridge(d),))
    middle = insulation_middle(place.arm)
    if middle is not None:
        yield Trace("T", (place.over_ridge(middle),))


def _breaks(place: RidgePlace) -> Iterator[Break]:
    over, courses = 4 * place.scale, place.arm.courses
    high, low = place.height(courses[0].start, place.right) + over, place.height(courses[-1].end, place.right) - over
    for sign in (-1, 1):
        yield Break((sign * place.right, high), (sign * place.right, low))


def _arrows(place: RidgePlace) -> tuple[Arrow, ...]:
    if place.vented is None:
        return ()
    x = place.right * 0.45
    y = place.height(place.vented.middle, x)
    return Arrow((x, y), 180.0 - place.slope), Arrow((-x, y), place.slope)
