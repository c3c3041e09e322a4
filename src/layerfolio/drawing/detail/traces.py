"""Where control lines run in an arm, in building millimetres across it."""

from typing import Literal

from layerfolio.assembly.courses import Course
from layerfolio.drawing.control import SOFT
from layerfolio.drawing.detail.arm import Arm


def depth_of(arm: Arm, course: Course, off: float) -> float:
    """Depth of the air or vapour line of a course: off its inner side; in its middle where soft insulation
    or a thin board follows."""
    found = arm.courses
    index = found.index(course)
    inner = found[index + 1] if index + 1 < len(found) else None
    if course.depth and inner and inner.layer.kind == "solid" and inner.depth:
        poor = inner.layer.family in SOFT or inner.depth < 2 * off
        if poor and course.depth >= 1.37 * off:
            return course.middle
    if course.depth and inner is None:  # the room's own face: in the layer
        return course.end - min(off, course.depth / 2)
    return course.end + off


def insulation(arm: Arm) -> tuple[float, float] | None:
    """Depths of the first and last face of the insulating layers."""
    found = [one for one in arm.courses if one.layer.insulating and one.depth]
    return (found[0].start, found[-1].end) if found else None


def insulation_middle(arm: Arm) -> float | None:
    """Depth of the thermal line: the middle of what insulates."""
    found = insulation(arm)
    return (found[0] + found[1]) / 2 if found else None


SERVES = {"W": "water control", "A": "air control", "V": "vapour control"}


def served(arm: Arm, letter: str) -> Course | None:
    """The course of an arm that carries a control."""
    return next((one for one in arm.courses if SERVES[letter] in one.layer.serves), None)


def tight_pairs(first: Arm, second: Arm) -> list[tuple[Course | None, Course | None, str]]:
    """What carries air and vapour on both sides, with its letters: one line "AV" where the same layers carry both."""
    found = [(served(first, one), served(second, one), one) for one in "AV"]
    found = [one for one in found if one[0] or one[1]]
    if len(found) == 2 and found[0][:2] == found[1][:2]:
        return [(*found[0][:2], "AV")]
    return found


def sheet_role(course: Course) -> Literal["metal", "membrane"]:
    """How a layer is drawn that is a line and no body."""
    return "metal" if course.layer.family == "metal" else "membrane"
