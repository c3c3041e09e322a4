"""Tags of a detail as marks; at the left the words stand before their circles, set to the right."""

from layerfolio.drawing.detail.model import Side
from layerfolio.drawing.layout_tags import NOTE_GAP, RADIUS, Leader, half_width
from layerfolio.drawing.lettering import LINE, middle_text
from layerfolio.drawing.marks import Circle, Line, Mark


def leader_line(leader: Leader, side: Side) -> Line:
    """Dot, elbow, edge of the circle."""
    sign = 1 if side == "right" else -1
    end = leader.circle[0] - sign * RADIUS, leader.circle[1]
    return Line((leader.dot, leader.elbow, end), 0.25, (), 0.35, role=f"leader {leader.tag.labels[0]}")


def leader_dots(leader: Leader) -> list[Mark]:
    return [
        Circle(leader.dot, radius, fill=fill, role="leader dot") for radius, fill in ((0.85, "white"), (0.55, "black"))
    ]  # fmt: skip


def tag_marks(leader: Leader, side: Side) -> list[Mark]:
    """Circle, number, words."""
    x, y = leader.circle
    label = leader.tag.labels[0]
    marks: list[Mark] = [Circle((x, y), RADIUS, 0.35, "white", role="tag")]
    marks.append(middle_text(x, y, label, anchor="middle", role=f"tag {label}"))
    sign, anchor = (1, "start") if side == "right" else (-1, "end")
    start = x + sign * (max(RADIUS, half_width(label)) + NOTE_GAP)
    rows = leader.tag.note
    for number, words in enumerate(rows):
        height = y + ((len(rows) - 1) / 2 - number) * LINE
        marks.append(middle_text(start, height, words, anchor=anchor, role="note"))
    return marks
