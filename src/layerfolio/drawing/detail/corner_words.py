"""Tags and texts at the corner of two walls."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from layerfolio.drawing.detail.model import Note
from layerfolio.drawing.detail.traces import served
from layerfolio.drawing.detail.words import course_note, joined_words, with_choices
from layerfolio.drawing.figures import Units

if TYPE_CHECKING:
    from layerfolio.drawing.detail.corners import Corner


def notes(corner: Corner, units: Units) -> tuple[Note, ...]:
    """All layers of the wall that runs to the side, where it is broken off; what joins them in the corner."""
    arm, side = corner.through, "right" if corner.outward else "left"
    found = [one for one in arm.courses if one.layer.kind != "cavity"]
    layers = found if corner.outward else found[::-1]
    far = corner.far(arm)
    tags = [
        course_note(arm, one, arm.place(far - (8 + 3.0 * (number % 3)) * corner.scale, one.middle), side, units)
        for number, one in enumerate(layers)
    ]
    return (*tags, *_corner(corner))


def _corner(corner: Corner) -> Iterator[Note]:
    side = "left" if corner.outward else "right"
    frame = corner.butted.zone("frame")
    member = next((one.layer.member for one in frame if one.layer.member and one.layer.member.width), None)
    if member:
        at = corner.butted.place(corner.starts(corner.butted, frame[0]) + member.width.value * 500, frame[0].middle)
        yield Note(f"{member.name} at the corner", (at,), side)
    for words, letter in joined_words(corner.junction, corner.through):
        course = served(corner.butted, letter)
        if course and letter != "W":
            at = corner.butted.place(corner.starts(corner.butted, course) + 12.0, course.end)
            yield Note(words, (at,), side)
    for one in corner.junction.broken:
        yield Note(one.broken, (corner.butted.place(corner.starts(corner.butted, frame[0]), frame[0].start),), side)


def remarks(corner: Corner) -> tuple[str, ...]:
    found = ["Studs at the corner are drawn as commonly built; their number and nailing follow the structural drawings."]
    if corner.junction.cannot:
        found.append(corner.junction.cannot)
    return with_choices(found, corner.junction)


def order_of_work(corner: Corner) -> tuple[str, ...]:
    found = ["Frames first, the corner filled with insulation before it is closed."]
    if any("air control" in one.layer.serves for one in corner.through.courses):
        found.append("Air control layer round the corner and sealed, then services and lining.")
    if any("water control" in one.layer.serves for one in corner.through.courses):
        found.append("Water control layer round the corner in one piece, then battens on both sides of the edge.")
    return tuple(found)


def look_at(corner: Corner) -> tuple[str, ...]:
    found = []
    if not corner.junction.broken:
        found.append("Each control line goes round the corner without a break.")
    found.append("No empty pocket between the corner studs.")
    if corner.through.zone("rain"):
        found.append("Boards of the cladding end clear of each other, the cavity behind them open.")
    return tuple(found)
