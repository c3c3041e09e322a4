"""Values beside the curves: at the right of a row, and at the planes where nothing else stands."""

from collections.abc import Sequence
from itertools import pairwise

from layerfolio.drawing.geometry import boxes_touch, text_box
from layerfolio.drawing.lettering import spread
from layerfolio.drawing.lines import crosses_outline
from layerfolio.drawing.marks import Point, Text
from layerfolio.drawing.moisture_axes import label

CROSSED = 6.0  # a curve under a label counts as so many mm of distance
PITCH = 3.9  # between values at the right
AWAY = (1.8, 3.0, 4.5, 6.5, 9.0, 12.0, 16.0)  # mm from a point to its label, tried in turn
BESIDE = 4.5  # mm at most where a label has to be seen as the point's own


def right_labels(x: float, wanted: Sequence[tuple[float, str, str]], top: float, bottom: float) -> list[Text]:
    """(height, words, style) at the right of a chart, spread apart and held between its top and its bottom."""
    ordered = sorted(wanted, key=lambda one: -one[0])
    at = spread([one[0] for one in ordered], [PITCH] * len(ordered))
    at = _held(at, top - 0.5, bottom + 0.5)
    return [label(x, y, words, style=style, role="end value") for y, (_, words, style) in zip(at, ordered, strict=True)]


def _held(at: list[float], top: float, bottom: float) -> list[float]:
    """Pushed down from the top, then up from the bottom, the order kept."""
    placed, edge = list(at), top
    for index, y in enumerate(placed):
        placed[index] = min(y, edge)
        edge = placed[index] - PITCH
    edge = bottom
    for index in range(len(placed) - 1, -1, -1):
        placed[index] = max(placed[index], edge)
        edge = placed[index] + PITCH
    return placed


def point_label(
    point: Point,
    words: str,
    curves: Sequence[Sequence[Point]],
    taken: Sequence[Text],
    frame: tuple[float, float, float, float],
    spare: bool = False,
) -> Text | None:
    """A bold value near a point, inside the frame, clear of other texts, and of curves where it can be; None: no room.

    `spare`: the value is said elsewhere too, so it stands only close to its point and off every curve.
    """
    left, bottom, right, top = frame
    best, least = None, 1e9
    for away in (one for one in AWAY if not spare or one <= BESIDE):
        for dx, dy, anchor in (
            (1, -1, "start"),
            (1, 1, "start"),
            (-1, 1, "end"),
            (-1, -1, "end"),
            (1, 0, "start"),
            (-1, 0, "end"),
        ):
            one = label(point[0] + dx * away, point[1] + dy * max(away, 2.4), words, style="bold", anchor=anchor, box=0.4)
            box = text_box(one, 0.4)
            xs, ys = [x for x, _ in box], [y for _, y in box]
            if min(xs) < left or max(xs) > right or min(ys) < bottom or max(ys) > top:
                continue
            if any(boxes_touch(box, text_box(other)) for other in taken):
                continue
            crossed = sum(crosses_outline(a, b, box) for curve in curves for a, b in pairwise(curve))
            cost = CROSSED * crossed + away
            if cost < least and not (spare and crossed):
                best, least = one, cost
        if best is not None and least < away + 1.0:
            return best
    return best
