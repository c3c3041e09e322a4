"""Membranes, flashing, tape and control lines at the foot of a wall."""

from collections.abc import Iterator

from layerfolio.assembly.courses import Course
from layerfolio.drawing.detail.model import Sheet, Trace
from layerfolio.drawing.detail.sill_place import COATING, SillPlace
from layerfolio.drawing.detail.traces import depth_of, insulation_middle, served, sheet_role, tight_pairs
from layerfolio.drawing.marks import Point

UPSTAND, DRIP = 70.0, 12.0  # mm: of the flashing behind the membrane, of its drip


def sheets(place: SillPlace) -> tuple[Sheet, ...]:
    """From the wall's membranes to the ground."""
    return (
        *_of_wall(place),
        *_of_floor(place),
        Sheet(flashing(place), "flashing", "flashing"),
        *_mesh(place),
        *_tape(place),
        Sheet(((place.drip - place.ground_out, place.ground), (ground_end(place), place.ground)), "ground", "ground"),
        *_ground_inside(place),
    )


def _ground_inside(place: SillPlace) -> Iterator[Sheet]:
    """Below a floor over a foundation wall the ground goes on at the same level, for want of another."""
    if place.below and place.founded == "wall" and place.ground < place.whole - 10.0:
        yield Sheet(((place.bears_from, place.ground), (place.right, place.ground)), "ground", "ground")


def flashing(place: SillPlace) -> tuple[Point, ...]:
    """Up behind the membrane, outward with a fall over what stands below, and down as a drip."""
    y, fall, x = place.gap - 3.0, place.flashing_fall, upstand_at(place)
    return (x, y + UPSTAND), (x, y), (place.drip, y - fall), (place.drip - 2.0, y - fall - DRIP)


def upstand_at(place: SillPlace) -> float:
    """x of the flashing's upstand: behind a membrane, which laps over it; against the face of a board, taped at its top."""
    course = served(place.wall, "W")
    return place.cover + (0.9 * place.scale if course and course.sheet else 0.0)


def ground_end(place: SillPlace) -> float:
    if place.below:
        return 0.0 if place.junction.foundation == "wall" else place.right
    return place.edge_face - (COATING if place.edge else 0.0)


def _of_wall(place: SillPlace) -> Iterator[Sheet]:
    for one in place.wall.courses:
        if one.sheet:
            low = place.gap if one.zone in ("rain", "outer") else 0.0
            role = sheet_role(one)
            foot = place.foot if one.zone == "rain" else low
            yield Sheet(((one.start, foot), (one.start, place.top)), role, place.wall.name(one.layer))


def _of_floor(place: SillPlace) -> Iterator[Sheet]:
    """A membrane below the slab turns up at its edge and lies under the plate; one on top runs under it; others stop."""
    for one in place.floor.courses:
        if not one.sheet:
            continue
        y = one.start - place.base
        role = sheet_role(one)
        yield Sheet(_floor_line(place, one, y), role, place.floor.name(one.layer))


def _floor_line(place: SillPlace, one: Course, y: float) -> tuple[Point, ...]:
    if one.start >= place.base - 0.01:
        return (place.right, y), (lap_end(place) if y < 0.01 else place.frame_end + 5.0, y)
    if place.below:
        return (place.right, y), (place.bears_from, y)
    return (place.right, y), (0.0, y), (0.0, 0.0), (lap_end(place), 0.0)


def lap_end(place: SillPlace) -> float:
    """x to which a membrane that is turned up reaches inward: to the inner face of the panel."""
    panel = served(place.wall, "A") or served(place.wall, "V")
    return (panel.end if panel and panel.start >= place.frame_end - 0.01 else place.frame_end) + 0.5


def _mesh(place: SillPlace) -> Iterator[Sheet]:
    """Insects stay out of the cavity."""
    cavities = [one for one in place.wall.zone("rain") if one.layer.cavity == "ventilated"]
    for one in cavities[-1:]:
        yield Sheet(((one.start, place.foot + 3.0), (one.end, place.foot + 3.0)), "mesh", "mesh")


def _tape(place: SillPlace) -> Iterator[Sheet]:
    """Where the air line passes from the wall's layer to the floor's by tape; over the flashing's top edge on a board."""
    water = served(place.wall, "W")
    if water and not water.sheet:
        x, y = place.cover - 0.8 * place.scale, place.gap - 3.0 + UPSTAND
        yield Sheet(((x, y - 22.0), (x, y + 26.0)), "tape", "tape")
    link = place.junction.link("A") or place.junction.link("V")
    course = link and served(place.wall, link.letter)
    if link and not link.broken and course and "tape" in link.by and course.start >= place.frame_end - 0.01:
        x = course.end + 1.2
        yield Sheet(((x, 42.0), (x, 1.0)), "tape", "tape")


def traces(place: SillPlace) -> tuple[Trace, ...]:
    """Water down to the drip; air and vapour down the panel and round the slab; heat through the middle of the insulation."""
    return (*_water(place), *_tight(place), *_heat(place))


def _water(place: SillPlace) -> Iterator[Trace]:
    course = served(place.wall, "W")
    if course is None:
        return
    x, y = course.start - place.off, place.gap - 3.0 + place.off
    yield Trace("W", (((x, place.top), (x, y - place.flashing_fall / 2)),))


def _tight(place: SillPlace) -> Iterator[Trace]:
    """One line for what one layer serves; the floor's own part keeps the wall's letters where both serve them."""
    for number, (wall, floor, letters) in enumerate(tight_pairs(place.wall, place.floor)):
        off = place.off * (1 + number * 1.1)
        yield _around(place, wall, floor, letters, off)


def _around(place: SillPlace, wall: Course | None, floor: Course | None, letters: str, off: float) -> Trace:
    link = place.junction.link(letters[0])
    runs: list[tuple[Point, ...]] = []
    x = depth_of(place.wall, wall, off) if wall else 0.0
    low = _floor_height(place, floor, off) if floor else 0.0
    if wall and floor and not (link and link.broken):
        runs.append(((x, place.top), *_corner(place, floor, x, off, low), (place.right, low)))
        return Trace(letters, tuple(runs))
    if wall:
        runs.append(((x, place.top), (x, 4.0)))
    if floor:
        runs.append(((lap_end(place), low), (place.right, low)))
    gaps = tuple(run[-1] if number == 0 and wall else run[0] for number, run in enumerate(runs))
    return Trace(letters, tuple(runs), gaps)


def _floor_height(place: SillPlace, floor: Course, off: float) -> float:
    """y of a line that follows a floor's layer on its inner side: above it, but inside a slab that stands on its membrane."""
    return (floor.start if floor.sheet else floor.end) - place.base + (off if not _on_deck(place, floor) else -off)


def _on_deck(place: SillPlace, floor: Course) -> bool:
    """Whether a layer with depth lies at the deck, where a line above it would run in the room: it runs in the layer then."""
    return not floor.sheet and abs(floor.end - place.base) < 0.01


def _corner(place: SillPlace, floor: Course, x: float, off: float, low: float) -> tuple[Point, ...]:
    """How the line gets from the wall's layer to the floor's."""
    if place.below or floor.end >= place.base - 0.01:
        return ((x, low),)
    return (x, -off), (off, -off), (off, low)


def _heat(place: SillPlace) -> Iterator[Trace]:
    wall = insulation_middle(place.wall)
    floor = insulation_middle(place.floor)
    if wall is None:
        return
    start = (wall, place.top)
    if place.below and floor is not None:
        y = floor - place.base
        yield Trace("T", ((start, (wall, y), (place.right, y)),)) if wall < place.right else Trace("T", ((start,),))
        return
    turn = place.plate + 10.0
    if place.edge and floor is not None and floor - place.base < 0:
        x, y = place.edge_face / 2, max(floor - place.base, place.bottom + 4.0)
        yield Trace("T", ((start, (wall, turn), (x, turn), (x, y), (place.right, y)),))
    elif place.edge:
        x = place.edge_face / 2
        yield Trace("T", ((start, (wall, turn), (x, turn), (x, max(place.bottom + 2, -place.edge[1]))),))
    elif floor is not None and floor - place.base > place.bottom:
        y = floor - place.base
        gap = ((wall, turn), (0.0, y)) if y < 0 else ()
        yield Trace("T", ((start, (wall, turn)), ((0.0 if y < 0 else place.frame_end, y), (place.right, y))), gap)
    else:
        yield Trace("T", ((start, (wall, turn)),), ((wall, turn),))
