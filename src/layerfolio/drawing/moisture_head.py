"""Above and below the strip: words of both sides, wet planes with their names, the layers' numbers."""

from collections.abc import Sequence

from layerfolio.drawing.geometry import boxes_touch, text_box
from layerfolio.drawing.lettering import SIZE
from layerfolio.drawing.marks import Curve, Line, Mark, Text
from layerfolio.drawing.moisture_numbers import air_layer_numbers, number_row
from layerfolio.drawing.moisture_plan import LABEL_ROW, SIDE_SPACED, Across, Down
from layerfolio.drawing.moisture_view import Zone, node_words
from layerfolio.studies.condensation.types import Run

TRIANGLE, HIGH = 1.6, 2.6  # half the width of a plane's mark, its height
RISE = 2.5  # of words above the strip
MOST_NAMES = 3


def label_row_needed(place: Across, run: Run, found: Sequence[Zone]) -> bool:
    """Whether names of planes would meet the words of both sides in one row."""
    texts = [*_words(place, 0.0), *_names(place, run, found, 0.0)]
    boxes = [text_box(one, 0.8) for one in texts]
    marks = [place.strip.x(run.nodes[zone.node]) for zone in found]
    crossed = any(
        box[0][0] - TRIANGLE < x < box[1][0] + TRIANGLE for x in marks for box in (text_box(one) for one in _words(place, 0.0))
    )
    return crossed or any(boxes_touch(a, b) for i, a in enumerate(boxes) for b in boxes[i + 1 :])


def head_marks(place: Across, run: Run, found: Sequence[Zone], rows: Down) -> tuple[Mark, ...]:
    """Everything about the strip that is not the strip, and the numbers above the second panel."""
    top, bottom = rows.strip
    lift = LABEL_ROW if label_row_needed(place, run, found) else 0.0
    marks: list[Mark] = [*_words(place, top + lift), *_names(place, run, found, top)]
    for zone in found:
        marks += _pointer(place, run, zone, top)
    bands = [(b.layer.number, sum(place.strip.span(b.layer.number)) / 2) for b in place.strip.stack.bands]
    row, _ = number_row(bands, bottom - 5.2, place.thickness.left, place.thickness.right)
    return (*marks, *row, *air_layer_numbers(place, run, rows.charts["temperature"][0]))


def _words(place: Across, top: float) -> list[Text]:
    left, right = place.thickness.left, place.thickness.right
    outside, inside = place.words
    return [
        Text((left, top + RISE), outside, SIZE, "bold", spaced=SIDE_SPACED, role="side"),
        Text((right, top + RISE), inside, SIZE, "bold", "end", spaced=SIDE_SPACED, role="side"),
    ]


def _names(place: Across, run: Run, found: Sequence[Zone], top: float) -> list[Text]:
    """Names of the wettest planes beside their marks; of others the bars' titles tell."""
    named = sorted(found, key=lambda zone: -max(zone.amounts))[:MOST_NAMES]
    texts: list[Text] = []
    for zone in sorted(named, key=lambda one: one.node):
        x = place.strip.x(run.nodes[zone.node])
        words = node_words(place.strip.assembly, run.nodes[zone.node])
        right = Text((x + TRIANGLE + 0.9, top + RISE), words, SIZE, "bold", role="plane name")
        left = Text((x - TRIANGLE - 0.9, top + RISE), words, SIZE, "bold", "end", role="plane name")
        others = [place.strip.x(run.nodes[other.node]) for other in found if other is not zone]
        for one in (right, left):
            box = text_box(one, 0.6)
            inside = box[0][0] > 0 and box[1][0] < place.air_layer.left
            free = inside and all(not boxes_touch(box, text_box(other, 0.4)) for other in texts)
            if free and all(not box[0][0] - TRIANGLE < at < box[1][0] + TRIANGLE for at in others):
                texts.append(one)
                break
    return texts


def _pointer(place: Across, run: Run, zone: Zone, top: float) -> list[Mark]:
    """A solid triangle on the strip, a heavy line over a zone with a width, and the plane through the strip."""
    x = place.strip.x(run.nodes[zone.node])
    path = (("M", x, top + 0.2), ("L", x - TRIANGLE, top + 0.2 + HIGH), ("L", x + TRIANGLE, top + 0.2 + HIGH), ("Z",))
    ends = [place.strip.x(run.nodes[node]) for node in zone.nodes]
    marks: list[Mark] = [Curve(path, fill="black", role="plane mark")]
    if ends[-1] - ends[0] > 0.5:
        marks.append(Line(((ends[0], top), (ends[-1], top)), 0.7, role="wet zone"))
    return marks
