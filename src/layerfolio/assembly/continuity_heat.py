"""Thermal control past a junction: whether the insulation of both sides touches as the details draw it, or how far it is apart.

Depths in building mm, inward from the outer face of the frame. Timber plates, decks and boards between two insulations count as
touching; concrete, masonry and metal do not.
"""

from layerfolio.assembly.courses import Course, courses
from layerfolio.assembly.joining import short
from layerfolio.assembly.junction_titles import called
from layerfolio.assembly.junction_types import Junction, Link
from layerfolio.assembly.types import Assembly, Layer

APART = 80.0  # mm of timber between insulations: two plates
WINDOW = 10.0  # mm inward from the frame at which a window is set where no insulation lies outside
ALONE = {"penetration": "insulation tight round the pipe", "ridge": "insulation over the ridge"}
CARRIES = ("concrete", "masonry", "metal", "earth", "glass", "tile")


def heat_link(junction: Junction, sides: list[Assembly]) -> Link | None:
    """The link of the thermal line; None where no side has insulation."""
    main = [_main(one) for one in sides]
    ends = [(side.name, layer.name) if layer else None for side, layer in zip(sides, main, strict=True)]
    if junction.opening:
        return main[0] and _opening(junction, sides[0], ends[0])
    if junction.kind == "rim":
        return main[0] and _rim(sides, main, ends)
    if len(sides) == 1:
        words = ALONE.get(junction.kind, "insulation round the corner")
        return main[0] and Link("T", ends[0], ends[0], "in contact", words)
    if not all(main):
        lacking = sides[main.index(None)]
        return Link("T", *ends, broken=f"{called(lacking)} has no insulation") if any(main) else None
    gap, words = _meeting(junction, sides)
    if gap:
        return Link("T", *ends, broken=f"{gap:.0f} mm of {words} between the insulations")
    return Link("T", *ends, "in contact", words or f"insulation of {sides[0].name} meets that of {sides[1].name}")


def _main(assembly: Assembly) -> Layer | None:
    """The thickest insulating layer."""
    found = [one for one in assembly.layers if one.insulating and one.counts]
    return max(found, key=lambda one: one.thickness.value if one.thickness else 0.0, default=None)


def _warm(assembly: Assembly) -> list[Course]:
    return [one for one in courses(assembly) if one.layer.insulating and one.layer.counts]


def _has(assembly: Assembly, *zones: str) -> bool:
    return any(one.zone in zones for one in _warm(assembly))


def _meeting(junction: Junction, sides: list[Assembly]) -> tuple[float, str]:
    """How far the insulations are apart (0: they touch) and by what, or what joins them."""
    if junction.kind == "sill":
        return _sill(junction, *sides)
    if junction.kind in ("eave", "verge"):
        return _edge(*sides)
    return _corner(*sides)


def _sill(junction: Junction, wall: Assembly, floor: Assembly) -> tuple[float, str]:
    """The plate stands on the floor's carrying layers; outer insulation covers the edge of a floor over a space, edge
    insulation that of a slab."""
    found = courses(floor)
    bearing = [one for one in found if one.zone == "frame"][-1].end
    below = [one.end for one in _warm(floor) if one.end <= bearing + 0.01]
    if not below:
        return 0.0, ""  # it lies on the carrying layers, beside the foot of the wall
    between = [one for one in found if max(below) - 0.01 <= one.start and one.end <= bearing + 0.01]
    gap = bearing - max(below)
    carries = any(one.layer.family in CARRIES for one in between)
    if gap < 1.0 or (not carries and gap <= APART):
        return 0.0, ""
    if floor.faces != "ground":
        return (0.0, "outer insulation runs down over the floor") if _has(wall, "outer") else (gap, _stuff(between))
    if junction.edge_insulation:
        rest = gap - junction.edge_insulation[1] * 1000
        return (0.0, "edge insulation joins wall and floor") if rest <= 0.5 else (rest, "bare edge")
    return gap, _stuff(between)


def _stuff(between: list[Course]) -> str:
    thick = max((one for one in between if one.depth), key=lambda one: one.depth, default=None)
    return short(thick.layer) if thick else "other material"


def _edge(wall: Assembly, over: Assembly) -> tuple[float, str]:
    """The roof's frame lies on the plates; the wall's outer insulation runs up to the roof's outer boards."""
    if _has(over, "frame") or (_has(over, "outer") and _has(wall, "outer")):
        return 0.0, ""
    frame = [one for one in courses(over) if one.zone == "frame"]
    deep = frame[-1].end - frame[0].start
    if _has(over, "outer"):
        return (0.0, "") if deep <= APART else (deep, "rafter space")
    low = max(one.end for one in _warm(over)) - frame[-1].end
    return (0.0, "") if _has(wall, "inner") or low > APART else (APART - low, "plates")


def _corner(first: Assembly, second: Assembly) -> tuple[float, str]:
    """Where depths of both walls overlap their insulations meet round the corner."""
    best = min(max(a.start, b.start) - min(a.end, b.end) for a in _warm(first) for b in _warm(second))
    return (0.0, "") if best <= 30.0 else (best, "frame")


def _rim(sides: list[Assembly], main: list[Layer | None], ends: list) -> Link:
    wall, floor = sides
    if _has(wall, "outer"):
        return Link("T", ends[0], ends[0], "same layer", "outer insulation past the floor")
    if main[1]:
        return Link("T", ends[0], ends[1], "in contact", f"{short(main[1])} behind the rim")
    deep = sum(one.depth for one in courses(floor) if one.zone == "frame")
    return Link("T", ends[0], ends[0], broken=f"{deep:.0f} mm of floor without insulation behind the rim")


def _opening(junction: Junction, wall: Assembly, at: tuple[str, str] | None) -> Link:
    """Whether the window's frame stands in the plane of insulation."""
    found = courses(wall)
    start, end = _frame(junction, found)
    gap = min(max(one.start - end, start - one.end) for one in _warm(wall))
    frame = (junction.opening, "frame")
    if gap > 1.0:
        return Link("T", at, frame, broken=f"frame of {junction.opening} stands {gap:.0f} mm off the insulation")
    return Link("T", at, frame, "in contact", f"insulation up to the frame of {junction.opening}")


def _frame(junction: Junction, found: tuple[Course, ...]) -> tuple[float, float]:
    """Depths of the window frame's faces, as the details set it."""
    outer = [one for one in found if one.zone == "outer"]
    cover = outer[0].start if outer else 0.0
    frame_end = [one for one in found if one.zone == "frame"][-1].end
    depth = junction.frame_depth * 1000
    if junction.frame_set == "at the outside":
        start = cover
    elif junction.frame_set == "in the framing":
        start = min(30.0, max(0.0, frame_end - depth))
    else:
        start = max(cover, -depth / 2) if cover < -20.0 else WINDOW
    return start, start + depth
