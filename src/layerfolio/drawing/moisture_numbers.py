"""Rows of the layers' numbers: below the strip, and above the panel of equivalent air layers."""

from layerfolio.drawing.lettering import SIZE, spread, wide
from layerfolio.drawing.marks import Line, Mark, Text
from layerfolio.drawing.moisture_plan import Across
from layerfolio.studies.condensation.types import Run

NUMBER_GAP = 1.3  # between two numbers
LEADER = 2.0  # from a chart to the numbers above it


def number_row(places: list[tuple[int, float]], y: float, left: float, right: float) -> tuple[list[Text], list[float]]:
    """The numbers of the layers in a row, baseline at `y`, near their places; and where they came to stand."""
    texts = [str(number) for number, _ in places]
    sizes = [wide(text) + NUMBER_GAP for text in texts]
    at = [-x for x in spread([-x for _, x in places], sizes)]
    at = _within(at, sizes, left, right)
    row = [Text((x, y), text, SIZE, anchor="middle", role="number") for text, x in zip(texts, at, strict=True)]
    return row, at


def _within(at: list[float], sizes: list[float], left: float, right: float) -> list[float]:
    """The same places pushed inside both ends, order and distances kept."""
    placed = list(at)
    edge = left
    for index, size in enumerate(sizes):
        placed[index] = max(placed[index], edge + size / 2)
        edge = placed[index] + size / 2
    edge = right
    for index in range(len(sizes) - 1, -1, -1):
        placed[index] = min(placed[index], edge - sizes[index] / 2)
        edge = placed[index] - sizes[index] / 2
    return placed


def air_layer_numbers(place: Across, run: Run, top: float) -> list[Mark]:
    """Numbers of the layers that are widest by equivalent air layer, as many as fit; leaders where they had to move."""
    panel = place.air_layer
    edges: dict[int, list[float]] = {}
    for node in run.nodes:
        edges.setdefault(node.layer, []).append(panel.place(node))
    spans, before = [], panel.first
    for value in run.values:
        end = edges[value.layer.number][-1]
        spans.append((value.layer.number, before, end))
        before = end
    room = panel.right - panel.left
    kept: list[tuple[int, float, float]] = []
    for span in sorted(spans, key=lambda one: one[1] - one[2]):
        if sum(wide(str(n)) + 1.3 for n, _, _ in (*kept, span)) <= room:
            kept.append(span)
    kept.sort(key=lambda one: one[1])
    middles = [(number, (start + end) / 2) for number, start, end in kept]
    row, at = number_row(middles, top + LEADER + 0.3, panel.left, panel.right)
    leaders = [
        Line(((x, top + 0.1), (to, top + LEADER - 0.2)), 0.2, role="number leader")
        for (_, x), to in zip(middles, at, strict=True)
        if abs(to - x) > 0.8
    ]
    return [*leaders, *row]
