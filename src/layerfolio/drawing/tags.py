"""Tags as marks: leaders with their dots, numbers in circles, notes beside them."""

from layerfolio.drawing.layout_tags import NOTE_GAP, RADIUS, SIDE, Leader, half_width
from layerfolio.drawing.lettering import LINE, middle_text
from layerfolio.drawing.marks import Circle, Curve, Line, Mark

DOT, RING = 0.55, 0.85


def leader_marks(leader: Leader) -> list[Mark]:
    """White, line and dots."""
    tag, dots = leader.tag, [leader.dot, *leader.further]
    marks: list[Mark] = [Line(leader.path, 0.25, (), 0.35, role=f"leader {tag.labels[0]}")]
    if tag.further:
        marks.append(Line(tuple(dots), 0.25, (), 0.35, role=f"leader {tag.labels[-1]}"))
    marks += [Circle(one, RING, fill="white", role="leader dot") for one in dots]
    return marks + [Circle(one, DOT, fill="black", role="leader dot") for one in dots]


def tag_marks(leader: Leader) -> list[Mark]:
    """Circles with their numbers, and the note."""
    x, y = leader.circle
    marks: list[Mark] = []
    for number, label in enumerate(leader.tag.labels):
        at = x + number * SIDE
        marks += [_outline(at, y, label), middle_text(at, y, label, anchor="middle", role=f"tag {label}")]
    start = x + (len(leader.tag.labels) - 1) * SIDE + half_width(leader.tag.labels[-1]) + NOTE_GAP
    rows = leader.tag.note
    for number, words in enumerate(rows):
        height = y + ((len(rows) - 1) / 2 - number) * LINE
        marks.append(middle_text(start, height, words, role="note"))
    return marks


def _outline(x: float, y: float, label: str) -> Mark:
    half = half_width(label)
    if half == RADIUS:
        return Circle((x, y), RADIUS, 0.35, "white", role="tag")
    r, flat = RADIUS, half - RADIUS
    k = 0.5523 * r
    left, right = x - flat, x + flat
    commands = (
        ("M", left, y + r), ("L", right, y + r), ("C", right + k, y + r, right + r, y + k, right + r, y),
        ("C", right + r, y - k, right + k, y - r, right, y - r), ("L", left, y - r),
        ("C", left - k, y - r, left - r, y - k, left - r, y), ("C", left - r, y + k, left - k, y + r, left, y + r),
        ("Z",),
    )  # fmt: skip
    return Curve(commands, 0.35, "white", role="tag")
