"""What a reader sees on a drawing: its texts, ticks, leaders and dots, taken from the marks."""

from collections.abc import Iterator
from itertools import combinations, pairwise

from layerfolio.drawing.extent import extent
from layerfolio.drawing.geometry import boxes_touch, text_box
from layerfolio.drawing.lines import crosses_outline, segments_cross
from layerfolio.drawing.marks import Area, Circle, Clip, Drawing, Group, Line, Mark, Text


def flat(marks: tuple[Mark, ...]) -> Iterator[Mark]:
    """All marks, clips and groups opened."""
    for mark in marks:
        if isinstance(mark, Clip | Group):
            yield from flat(mark.marks)
        else:
            yield mark


def texts(drawing: Drawing, role: str = "") -> list[Text]:
    return [one for one in flat(drawing.marks) if isinstance(one, Text) and one.role.startswith(role)]


def lines(drawing: Drawing, role: str) -> list[Line]:
    return [one for one in flat(drawing.marks) if isinstance(one, Line) and one.role.startswith(role)]


def areas(drawing: Drawing) -> list[Area]:
    return [one for one in flat(drawing.marks) if isinstance(one, Area)]


def dots(drawing: Drawing) -> list[Circle]:
    circles = [one for one in flat(drawing.marks) if isinstance(one, Circle) and one.role == "leader dot"]
    return [one for one in circles if one.fill == "black"]


def overlapping_labels(drawing: Drawing) -> list[tuple[str, str]]:
    boxes = [(one.text, text_box(one)) for one in texts(drawing)]
    pairs = combinations(boxes, 2)
    return [(a, b) for (a, first), (b, second) in pairs if boxes_touch(first, second)]


def labels_crossed(drawing: Drawing, role: str) -> list[tuple[str, str]]:
    """Labels that a line of the role runs through, with that line's role."""
    found = []
    for line in lines(drawing, role):
        for a, b in pairwise(line.points):
            found += [(one.text, line.role) for one in texts(drawing) if crosses_outline(a, b, text_box(one, -0.2))]
    return found


def crossing_leaders(drawing: Drawing) -> list[tuple[str, str]]:
    pieces = [(one.role, a, b) for one in lines(drawing, "leader") for a, b in pairwise(one.points)]
    pairs = combinations(pieces, 2)
    return [(one, two) for (one, *first), (two, *second) in pairs if one != two and segments_cross(*first, *second)]


def inside_its_frame(drawing: Drawing) -> None:
    """Nothing leaves the drawing's own size."""
    x0, y0, x1, y1 = extent(drawing.marks)
    assert x0 >= -0.01 and y0 >= -0.01 and x1 <= drawing.width + 0.01 and y1 <= drawing.height + 0.01


def keeps_the_laws(drawing: Drawing) -> None:
    """No label on another, on a tick or on a leader; no leaders that cross; nothing outside the frame."""
    assert overlapping_labels(drawing) == []
    assert labels_crossed(drawing, "tick") == []
    assert labels_crossed(drawing, "leader") == []
    assert crossing_leaders(drawing) == []
    inside_its_frame(drawing)
