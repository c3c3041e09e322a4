"""A lighter print of any hatch: every second stroke, every second dot. For offices that ask for it."""

from dataclasses import replace

from layerfolio.drawing.hatches.strokes import ROLE
from layerfolio.drawing.marks import Circle, Clip, Curve, Group, Mark, Stipple

WHOLE = ("batt", "plywood", "glass", "ground", "membrane", "tile")  # with half their strokes they say something else
SUFFIX = "-light"  # of the tiles that repeat a scattered hatch with fewer grains


def lightened(marks: tuple[Mark, ...], family: str = "") -> tuple[Mark, ...]:
    """The same marks with half their hatching; everything that is no hatch stays. `family` tells what stays whole."""
    if family in WHOLE:
        return tuple(marks)
    found: list[Mark] = []
    dots = 0
    for mark in marks:
        if isinstance(mark, Circle) and mark.role == ROLE:
            dots += 1
            if dots % 2:
                found.append(mark)
        else:
            found.append(_lightened(mark, family))
    return tuple(found)


def _lightened(mark: Mark, family: str) -> Mark:
    match mark:
        case Clip():
            return replace(mark, marks=lightened(mark.marks, family))
        case Group():
            return replace(mark, marks=lightened(mark.marks, family))
        case Stipple():
            return mark if mark.tile.endswith(SUFFIX) else replace(mark, tile=mark.tile + SUFFIX)
        case Curve() if mark.role == ROLE:
            return replace(mark, commands=_every_second(mark.commands))
    return mark


def _every_second(commands: tuple[tuple, ...]) -> tuple[tuple, ...]:
    """Of strokes that follow each other in one path; a single one stays."""
    kept: list[tuple] = []
    stroke = 0
    for one in commands:
        stroke += one[0] == "M"
        if stroke % 2:
            kept.append(one)
    return tuple(kept)
