"""A drawing with lighter hatches, for offices that ask for it: every piece by its own family, all else untouched."""

from dataclasses import replace

from layerfolio.drawing.hatches.light import lightened
from layerfolio.drawing.marks import Area, Clip, Drawing, Group, Mark


def lighter(drawing: Drawing) -> Drawing:
    """The same drawing; the area that stands before a hatch tells its family."""
    return replace(drawing, marks=_lighter(drawing.marks, [""]))


def _lighter(marks: tuple[Mark, ...], family: list[str]) -> tuple[Mark, ...]:
    found: list[Mark] = []
    for mark in marks:
        match mark:
            case Area():
                family[0] = mark.family
                found.append(mark)
            case Group():
                found.append(replace(mark, marks=_lighter(mark.marks, family)))
            case Clip() if any(isinstance(one, Group) for one in mark.marks):
                found.append(replace(mark, marks=_lighter(mark.marks, family)))
            case _:
                found += lightened((mark,), family[0])
    return tuple(found)
