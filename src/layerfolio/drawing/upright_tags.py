"""Tags of an upright section: two columns, each leader as level as can be, dots stepping down from layer to layer."""

from collections.abc import Sequence
from dataclasses import replace

from layerfolio.drawing.compose import made_tag
from layerfolio.drawing.cut import Cut
from layerfolio.drawing.frame import Frame
from layerfolio.drawing.layout_framing import Framing
from layerfolio.drawing.layout_spots import Spots, spots
from layerfolio.drawing.layout_tags import NOTE_PITCHES, PITCH, Column, Leader, Tag, arranged
from layerfolio.drawing.lines import Obstacle
from layerfolio.drawing.marks import Point

STEP = 1.5  # mm between the places tried for a dot
ENDS = 4.0  # mm that dots keep from the break lines
Places = tuple[float, float]  # x of elbows and of circles


def both_columns(
    one: Cut, frame: Frame, left: Places, right: Places, note_room: float | None, obstacles: tuple[Obstacle, ...]
) -> tuple[Leader, ...]:
    """All leaders: outer layers to the left column, inner ones to the right."""
    found = _with_more_places(one)
    half = _half(one, found)
    leaders: list[Leader] = []
    for chosen, (elbow, circle), mirrored in ((found[:half], left, True), (found[half:], right, False)):
        if chosen:
            column = Column(-elbow if mirrored else elbow, -circle if mirrored else circle, _seen(obstacles, mirrored))
            tags = _tags(one, frame, chosen, note_room, mirrored)
            made = arranged(tags, column)
            leaders += [_turned_back(each) for each in made] if mirrored else made
    return tuple(leaders)


def _half(one: Cut, found: Sequence[Spots]) -> int:
    """How many tags go to the left: the layers of the outer half, members with their layers."""
    numbers = [band.layer.number for band in one.stack.bands]
    for count in range(len(found) // 2, len(found)):
        if not found[count].member:
            return count
    return len(found) if len(numbers) == 1 else len(found) // 2


def _with_more_places(one: Cut) -> list[Spots]:
    """Spots with a place every few millimetres of the height, where the material is what the tag says."""
    signs = [at for at, _ in one.signs]
    plain = spots(one.stack, one.framing, one.controls, signs, one.length, one.units, True, one.pins)
    frames = {each.band.layer.number: each for each in one.framing}
    bands = {str(band.layer.number): band for band in one.stack.bands}
    found = []
    for each in plain:
        number = each.label.rstrip("a")
        frame = frames.get(bands[number].layer.number)
        heights = list(dict.fromkeys(y for _, y in each.places))
        ends = _stretches(one, frame, each.member)
        signed = [x for x, y in signs if bands[number].bottom < y < bands[number].top]
        pinned = [x for pins in one.pins if pins.passes(bands[number].middle) for x in pins.places]
        xs = [x for a, b in ends for x in _along(a, b) if all(abs(x - at) > 6.0 for at in signed)]
        xs = [x for x in xs if all(abs(x - at) > 1.6 for at in pinned)] or [x for x, _ in each.places]
        found.append(replace(each, places=tuple((x, y) for y in heights for x in xs)))
    return found


def _stretches(one: Cut, frame: Framing | None, member: bool) -> list[tuple[float, float]]:
    """Where along the section a layer, or the member in it, shows."""
    low, high = ENDS, one.length - ENDS
    if frame is None or frame.seen == "no":
        return [(low, high)]
    if frame.seen == "along":
        return [(frame.torn + 4.0, high)] if member else [(low, frame.torn - 3.0)]
    if member:
        return [(max(low, a) + 1.0, min(high, b) - 1.0) for a, b in frame.intervals if min(high, b) - max(low, a) > 2.0]
    edges = [low, *(edge for a, b in frame.intervals for edge in (a - 1.4, b + 1.4)), high]
    return [(a, b) for a, b in zip(edges[::2], edges[1::2], strict=True) if b > a]


def _along(low: float, high: float) -> list[float]:
    if high <= low:
        return [(low + high) / 2]
    count = max(1, round((high - low) / STEP))
    return [low + (high - low) * number / count for number in range(count + 1)]


def _tags(one: Cut, frame: Frame, found: Sequence[Spots], note_room: float | None, mirrored: bool) -> list[Tag]:
    """From the top down: members seen beyond the cut first, each aiming at its own height."""
    ordered = _from_above(one, found)
    tags: list[Tag] = []
    for pitch in NOTE_PITCHES:
        tags = [made_tag(each, frame, note_room, pitch) for each in ordered]
        if sum(each.size for each in tags) <= one.length + 14.0:
            break
    else:
        tags = [made_tag(each, frame, note_room, PITCH, 1) for each in ordered]
    aimed = _aims(one, ordered, tags)
    return [replace(tag, places=_nearest(tag.places, y, mirrored)) for tag, y in zip(tags, aimed, strict=True)]


def _from_above(one: Cut, found: Sequence[Spots]) -> list[Spots]:
    along = {each.tag for each in one.framing if each.seen == "along"}
    last = max((at for at, each in enumerate(found) if each.label in along), default=-1)
    upper = [each for at, each in enumerate(found) if at <= last and f"{each.label}a" not in along]
    return [*upper, *(each for each in found if each not in upper)]


def _aims(one: Cut, ordered: Sequence[Spots], tags: Sequence[Tag]) -> list[float]:
    """Heights on the page, spread over the section, or over what a tag's material leaves of it."""
    total = sum(each.size for each in tags)
    spread = max(1.0, (one.length - 2 * ENDS) / total) if total else 1.0
    y = (one.length + total * spread) / 2
    aims = []
    for spot, tag in zip(ordered, tags, strict=True):
        wanted = y - tag.size * spread / 2
        y -= tag.size * spread
        xs = [x for x, _ in spot.places]
        aims.append(min(max(wanted, min(xs)), max(xs)))
    return aims


def _nearest(places: Sequence[Point], y: float, mirrored: bool) -> tuple[Point, ...]:
    """Places nearest to a height first; mirrored for the left column."""
    sign = -1 if mirrored else 1
    ranked = sorted(enumerate(places), key=lambda each: (round(abs(each[1][1] - y), 3), each[0]))
    return tuple((sign * x, at) for _, (x, at) in ranked[:40])


def _seen(obstacles: tuple[Obstacle, ...], mirrored: bool) -> tuple[Obstacle, ...]:
    if not mirrored:
        return obstacles
    return tuple(Obstacle.of(tuple((-x, y) for x, y in one.outline)) for one in obstacles)


def _turned_back(one: Leader) -> Leader:
    """From the mirrored column to the left one."""
    tag = replace(one.tag, places=tuple((-x, y) for x, y in one.tag.places))
    dot, elbow, circle = ((-x, y) for x, y in (one.dot, one.elbow, one.circle))
    return Leader(tag, dot, elbow, circle, True)

