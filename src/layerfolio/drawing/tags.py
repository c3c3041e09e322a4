"""Tags as marks: leaders with their dots, numbers in circles, notes beside them."""

from collections.abc import Iterable

from layerfolio.drawing.layout_tags import NOTE_GAP, RADIUS, SIDE, Leader, half_width
from layerfolio.drawing.lettering import LINE, middle_text
from layerfolio.drawing.marks import Circle, Curve, Line, Mark

DOT, RING = 0.55, 0.85


def leaders_marks(leaders: Iterable[Leader]) -> list[Mark]:
    """All lines on their white first, then the dots, so that no leader wipes out another's dot."""
    leaders = list(leaders)
    return [mark for of in (_lines, _dots) for one in leaders for mark in of(one)]


def _lines(leader: Leader) -> list[Mark]:
    labels = leader.tag.labels
    marks: list[Mark] = [Line(leader.path, 0.25, (), 0.35, role=f"leader {labels[0]}")]
    if leader.further:
        marks.append(Line((leader.dot, *leader.further), 0.25, (), 0.35, role=f"leader {labels[-1]}"))
    return marks


def _dots(leader: Leader) -> list[Mark]:
    dots = (leader.dot, *leader.further)
    looks = ((RING, "white"), (DOT, "black"))
    return [Circle(one, radius, fill=fill, role="leader dot") for radius, fill in looks for one in dots]


def tag_marks(leader: Leader) -> list[Mark]:
    """Circles with their numbers, and the note."""
    x, y = leader.circle
    marks: list[Mark] = []
    for number, label in enumerate(leader.tag.labels):
        at = x + number * SIDE
        marks += [_outline(at, y, label), middle_text(at, y, label, anchor="middle", role=f"tag {label}")]
    off = (len(leader.tag.labels) - 1) * SIDE + half_width(leader.tag.labels[-1]) + NOTE_GAP
    start, anchor = (x - off, "end") if leader.left else (x + off, "start")
    rows = leader.tag.note
    for number, words in enumerate(rows):
        height = y + ((len(rows) - 1) / 2 - number) * LINE
        marks.append(middle_text(start, height, words, anchor=anchor, role="note"))
    return marks


def _outline(x: float, y: float, label: str) -> Mark:
    half = half_width(label)
    return Circle((x, y), RADIUS, 0.35, "white", role="tag") if half == RADIUS else long_circle(x, y, half, RADIUS, "tag")


def long_circle(x: float, y: float, half: float, r: float, role: str) -> Curve:
    """A circle of radius `r` drawn apart to `half` its width, white inside."""
    flat = half - r
    k = 0.5523 * r
    left, right = x - flat, x + flat
    commands = (
        ("M", left, y + r), ("L", right, y + r), ("C", right + k, y + r, right + r, y + k, right + r, y),
        ("C", right + r, y - k, right + k, y - r, right, y - r), ("L", left, y - r),
        ("C", left - k, y - r, left - r, y - k, left - r, y), ("C", left - r, y + k, left - k, y + r, left, y + r),
        ("Z",),
    )  # fmt: skip
    return Curve(commands, 0.35, "white", role=role)
