"""Membranes, sill pan, flashing, tape and control lines at one edge of a window."""

from collections.abc import Iterator

from layerfolio.assembly.courses import Course
from layerfolio.drawing.detail.model import Sheet, Trace
from layerfolio.drawing.detail.reveal_place import FALL, JOINT, RevealPlace
from layerfolio.drawing.detail.traces import depth_of, insulation_middle, sheet_role
from layerfolio.drawing.marks import Point

UPTURN, DRIP, OVER = 26.0, 14.0, 28.0  # mm: back of the pan; drip; past the cladding


def sheets(place: RevealPlace) -> tuple[Sheet, ...]:
    return (*_membranes(place), *_sill(place), *_head(place), *_mesh(place), *_tape(place))


def _membranes(place: RevealPlace) -> Iterator[Sheet]:
    """The wall's own, up to the opening; the water control layer is turned into it up to the window."""
    for one in place.wall.courses:
        if not one.sheet:
            continue
        role = sheet_role(one)
        start = place.rain_from if one.zone == "rain" else place.top(one.start)
        line = [place.place(place.far, one.start), place.place(start, one.start)]
        if "water control" in one.layer.serves and place.edge == "jamb" and place.window[0] - one.start > 4.0:
            line.append(place.place(0.0, place.window[0]))
        yield Sheet(tuple(line), role, place.wall.name(one.layer))


def _sill(place: RevealPlace) -> Iterator[Sheet]:
    """A pan under the window that drains over the membrane, and the sill that sheds past the cladding."""
    if place.edge != "sill":
        return
    d0, d1 = place.window
    x = place.cover - 0.9 * place.scale
    pan = ((d1 + 1.0, 2.0 + UPTURN), (d1 + 1.0, 1.5), (x, 1.5 - FALL * (d1 - x)), (x, 1.5 - FALL * (d1 - x) - 60.0))
    yield Sheet(tuple(place.wall.place(-y, d) for d, y in pan), "membrane", "sill pan")
    edge = place.outer - OVER
    high = 16.0
    drip = high + FALL * (edge - d0)
    sill = ((d0 - 1.0, high + 14.0), (d0 - 1.0, high), (edge, drip), (edge, drip - DRIP))
    yield Sheet(tuple(place.wall.place(-y, d) for d, y in sill), "flashing", "sill")


def _head(place: RevealPlace) -> Iterator[Sheet]:
    """From behind the membrane outward over the window, with a drip."""
    if place.edge != "head":
        return
    edge, y, water = place.outer - OVER / 2, 6.0, place.served("W")
    leg = place.cover + (0.9 * place.scale if water and water.sheet else 0.0)  # behind a membrane, against a board
    drip = y + FALL * (edge - place.cover)
    line = ((leg, y + 60.0), (leg, y), (edge, drip), (edge, drip - DRIP))
    yield Sheet(tuple(place.wall.place(s, d) for d, s in line), "flashing", "head flashing")
    if water and not water.sheet:
        d = place.cover - 0.8 * place.scale
        yield Sheet((place.wall.place(y + 40.0, d), place.wall.place(y + 84.0, d)), "tape", "tape")


def _mesh(place: RevealPlace) -> Iterator[Sheet]:
    cavities = [one for one in place.wall.zone("rain") if one.layer.cavity == "ventilated"]
    if place.edge != "jamb":
        for one in cavities[-1:]:
            s = place.rain_from + 3.0
            yield Sheet((place.place(s, one.start), place.place(s, one.end)), "mesh", "mesh")


def _tape(place: RevealPlace) -> Iterator[Sheet]:
    """From the wall's air control layer round into the reveal to the window's inner face."""
    link, course = place.junction.link("A"), place.served("A")
    if not link or link.broken or course is None or "tape" not in link.by:
        return
    d, d1 = course.end + 1.2, place.window[1] + 1.2
    line = (place.place(34.0, d), place.place(-1.2, d), place.place(-1.2, d1), place.place(-JOINT - 20.0, d1))
    yield Sheet(line, "tape", "tape")


def traces(place: RevealPlace) -> tuple[Trace, ...]:
    return (*_water(place), *_tight(place), *_heat(place))


def _water(place: RevealPlace) -> Iterator[Trace]:
    course = place.served("W")
    if course is None:
        return
    d, d0 = course.start - place.off, place.window[0] - place.off * 0.6
    turn = -JOINT / 2 if place.edge != "sill" else place.top(place.cover) + 4.0
    line = ((place.far, d), (turn, d), (turn, d0), (-JOINT - place.width * 0.6, d0))
    if d0 < d + 1.0:  # the window stands as far out as the membrane: straight on
        line = ((place.far, d), (-JOINT - place.width * 0.6, d))
    yield _run(place, "W", line)


def _tight(place: RevealPlace) -> Iterator[Trace]:
    found = [(one, place.served(one)) for one in "AV"]
    found = [one for one in found if one[1]]
    if len(found) == 2 and found[0][1] == found[1][1]:
        found = [("AV", found[0][1])]
    for number, (letters, course) in enumerate(found):
        yield _inward(place, letters, course, place.off * (1 + 1.1 * number))


def _inward(place: RevealPlace, letters: str, course: Course, off: float) -> Trace:
    d, d1 = depth_of(place.wall, course, off), place.window[1] + off * 0.5
    turn = -place.reveal - off * 0.5
    if course.start < place.window[1]:  # the layer lies outside the window's inner face
        return _run(place, letters, ((place.far, d), (-JOINT / 2, d), (-JOINT / 2, (place.window[0] + place.window[1]) / 2)))
    return _run(place, letters, ((place.far, d), (turn, d), (turn, d1), (-JOINT - place.width * 0.7, d1)))


def _run(place: RevealPlace, letters: str, line: tuple[Point, ...]) -> Trace:
    link = place.junction.link(letters[0])
    points = tuple(place.place(s, d) for s, d in line)
    if link and link.broken:
        return Trace(letters, (points[:2],), (points[1],))
    return Trace(letters, (points,))


def _heat(place: RevealPlace) -> Iterator[Trace]:
    middle = insulation_middle(place.wall)
    if middle is None:
        return
    window = (place.window[0] + place.window[1]) / 2
    s = place.closing + 14.0 if place.closing else 10.0
    line = ((place.far, middle), (s, middle), (s, window), (place.beyond, window))
    if abs(middle - window) < 3.0:
        line = ((place.far, middle), (place.beyond, middle))
    yield _run(place, "T", line)
