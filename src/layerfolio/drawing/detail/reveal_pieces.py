"""The pieces at one edge of a window."""

from collections.abc import Iterator

from layerfolio.assembly.courses import Course
from layerfolio.drawing.detail.arm import End
from layerfolio.drawing.detail.model import Piece
from layerfolio.drawing.detail.reveal_place import DOUBLED, FALL, JOINT, RevealPlace
from layerfolio.drawing.geometry import Outline

PANE = 36.0  # mm of the pane
BOARD, BUCK, PACKER = 19.0, 18.0, 30.0


def reveal_pieces(place: RevealPlace) -> Iterator[Piece]:
    """The wall up to the opening, the window in it, what lines the reveal."""
    wall, far = place.wall, End(place.far)
    for one in wall.zone("rain"):
        yield from wall.pieces(one, End(place.rain_from), far, _batten(place, one))
    for one in wall.zone("outer"):
        yield from wall.pieces(one, _start(place), far)
    for one in wall.zone("frame"):
        yield from _frame(place, one, far)
    for one in wall.zone("inner"):
        if one.depth:
            yield from wall.pieces(one, End(0.0), far, place.far * 0.55)
    yield from _window(place)
    yield from _lining(place)


def _start(place: RevealPlace) -> End:
    """Where outer layers begin: at the opening, under a window sloped as its pan."""
    return End(FALL * place.window[1], -FALL) if place.edge == "sill" and place.window[1] >= 0 else End(0.0)


def _batten(place: RevealPlace, course: Course) -> float | None:
    """At a jamb the first batten stands over the studs beside the opening."""
    member = course.layer.member
    return place.rain_from + member.width.value * 500 if place.edge == "jamb" and member and member.width else None


def _frame(place: RevealPlace, course: Course, far: End) -> Iterator[Piece]:
    """Timber round the opening, then the wall's own filling."""
    framed = course.layer.member is not None and place.closing > 0
    if framed:
        names = {"head": "header", "sill": "sill plate", "jamb": f"{course.layer.member.name} at the jamb"}
        count = DOUBLED if place.edge == "jamb" else 1
        each = place.closing / count
        for number in range(count):
            outline = _box(place, number * each, (number + 1) * each, course.start, course.end)
            if place.edge == "sill":
                outline = _sloped(place, course)
            turn = 0.0 if place.edge != "jamb" else 90.0
            yield Piece(outline, "timber", names[place.edge], turn, 0.5, number=number + course.layer.number)
    if not framed and place.closing:  # between framed layers: a board closes the filling
        name, closed = "buck", _box(place, place.top(course.start), BUCK, course.start, course.end)
        yield Piece(closed, "plywood", name, place.wall.turn + 90.0, 0.35)
    start = place.closing if framed else BUCK if place.closing else place.top(course.start)
    if far.s - start > 0.5:
        outline = place.wall.outline(course.start, course.end, End(start), far)
        yield Piece(outline, course.layer.family, place.wall.name(course.layer), place.wall.turn)


def _sloped(place: RevealPlace, course: Course) -> Outline:
    """The plate under a window: level inside its inner face, sloped outside it."""
    turn = min(max(place.window[1], course.start), course.end)
    corners = [(place.closing, course.start), (place.top(course.start), course.start)]
    corners += [(place.top(turn), turn)] if course.start < turn < course.end else []
    corners += [(place.top(course.end), course.end), (place.closing, course.end)]
    return tuple(place.place(s, d) for s, d in corners)


def _window(place: RevealPlace) -> Iterator[Piece]:
    d0, d1 = place.window
    if place.edge == "sill":
        yield Piece(_box(place, -JOINT, 0.0, d1 - PACKER - 4.0, d1 - 4.0), "timber", "packer", 0.0, 0.5)
    else:
        yield Piece(_box(place, -JOINT, 0.0, d0 + 4.0, d1 - 4.0), "plain", "joint filling", place.wall.turn, 0.25)
    yield Piece(_box(place, -JOINT - place.width, -JOINT, d0, d1), "timber", "window frame", 0.0, 0.5, number=2)
    middle = (d0 + d1) / 2
    outline = _box(place, place.beyond, -JOINT - place.width, middle - PANE / 2, middle + PANE / 2)
    yield Piece(outline, "glass", "pane", place.wall.turn)


def _lining(place: RevealPlace) -> Iterator[Piece]:
    """A board at the sill, the wall's own lining at head and jamb; outside a board covers the insulation's edge at the jamb."""
    d0, d1 = place.window
    if place.inner - d1 > 5.0:
        family = "timber-board" if place.edge == "sill" else place.lining.layer.family
        name = "window board" if place.edge == "sill" else "reveal lining"
        over = 20.0 if place.edge == "sill" else 0.0
        yield Piece(_box(place, -place.reveal, 0.0, d1, place.inner + over), family, name, place.wall.turn + 90.0)
    if place.edge == "jamb" and d0 - place.outer > 12.0:
        yield Piece(_box(place, -BOARD, 0.0, place.outer, d0 - 2.0), "timber-board", "reveal board", 90.0, 0.5)


def _box(place: RevealPlace, s0: float, s1: float, d0: float, d1: float) -> Outline:
    return place.wall.outline(d0, d1, End(s0), End(s1))
