"""Tags of a detail: one column on each side, leaders that cross neither each other nor a figure."""

from collections.abc import Sequence
from dataclasses import replace

from layerfolio.drawing.control import WIDTH
from layerfolio.drawing.detail.control_legs import Leg, legs_of
from layerfolio.drawing.detail.fit import Fit
from layerfolio.drawing.detail.model import Detail, Note, Side
from layerfolio.drawing.detail.note_rows import rows_of
from layerfolio.drawing.detail.running_along import Along, along_of
from layerfolio.drawing.detail.sheet_marks import width
from layerfolio.drawing.detail.tag_side import TagSide, mirrored
from layerfolio.drawing.layout_harm import meet
from layerfolio.drawing.layout_tags import Column, Leader
from layerfolio.drawing.lines import Obstacle

FLIPS = 4
Numbered = tuple[Note, Leader]


def columns(
    detail: Detail, fit: Fit, legs: list[Leg], obstacles: Sequence[Obstacle], ground: float | None
) -> dict[Side, list[Numbered]]:
    """Leaders of both sides from the top down, numbered: first the right column, then the left one.

    `ground`: the height of a ground line that runs out under the left column; tags keep off it. A note whose leader cannot
    help crossing one of the other column stands in that column instead.
    """
    right, left = _both(detail, fit, legs, obstacles, ground)
    for _ in range(FLIPS):
        crossed = _crossed(right, left)
        if not crossed:
            break
        tries = [_both(_flipped(detail, note), fit, legs, obstacles, ground) for note in crossed[0] if _holds(fit, note)]
        better = [one for one in tries if len(_crossed(*one)) < len(crossed)]
        if not better:
            break
        right, left = better[0]
        detail = replace(detail, notes=tuple(note for note, _ in (*right, *left)))
    return {"right": _numbered(right, 1), "left": _numbered(left, 1 + len(right))}


def _both(
    detail: Detail, fit: Fit, legs: list[Leg], obstacles: Sequence[Obstacle], ground: float | None
) -> tuple[list[Numbered], list[Numbered]]:
    along = _along(detail, legs, fit.scale)
    right = TagSide("right", detail, fit, _column(fit, "right", obstacles, along), legs).leaders()
    turned = [Obstacle.of(tuple((-x, y) for x, y in one.outline)) for one in obstacles]
    beside = tuple(mirrored(one) for _, one in right)
    left = TagSide("left", detail, fit, _column(fit, "left", turned, along.mirrored()), legs, beside, ground).leaders()
    return right, [(note, mirrored(one)) for note, one in left]


def _crossed(right: list[Numbered], left: list[Numbered]) -> list[tuple[Note, Note]]:
    return [(note, other) for note, one in right for other, two in left if meet(one, two)]


def _flipped(detail: Detail, note: Note) -> Detail:
    other = replace(note, side="left" if note.side == "right" else "right")
    return replace(detail, notes=tuple(other if one is note else one for one in detail.notes))


def _holds(fit: Fit, note: Note) -> bool:
    """Whether the words find room in the other column."""
    room = fit.room("left" if note.side == "right" else "right")
    return room > 0 and not rows_of(note, room)[-1].endswith("…")


def _column(fit: Fit, side: Side, obstacles: Sequence[Obstacle], along: Along) -> Column:
    """The column as leaders see it; the left one mirrored."""
    at, sign = (1, 1) if side == "right" else (0, -1)
    return Column(sign * fit.elbows[at], sign * fit.circles[at], tuple(obstacles), strips=along)


def _along(detail: Detail, legs: list[Leg], scale: float) -> Along:
    """Control lines and heavy lines, with half their widths."""
    found = along_of(legs, WIDTH / 2)
    for one in detail.sheets:
        found += along_of(legs_of(one.points), width(one.role, scale) / 2)
    return Along(found)


def _numbered(found: list[Numbered], first: int) -> list[Numbered]:
    """Numbers follow the circles from the top down."""
    ordered = sorted(found, key=lambda one: -one[1].circle[1])
    return [
        (note, replace(leader, tag=replace(leader.tag, labels=(str(first + at),)))) for at, (note, leader) in enumerate(ordered)
    ]
