"""Words of tags in details, and where the tags of one column of layers point."""

from collections.abc import Iterable

from layerfolio.assembly.courses import Course
from layerfolio.assembly.junction_types import Junction
from layerfolio.drawing.detail.arm import Arm
from layerfolio.drawing.detail.model import Note, Side
from layerfolio.drawing.figures import Units
from layerfolio.drawing.marks import Point
from layerfolio.drawing.names import layer_words


def course_note(arm: Arm, course: Course, at: Point, side: Side, units: Units) -> Note:
    """The tag of a layer: its name and thickness, its seams where they are sealed, and its number in the layer table."""
    layer = course.layer
    words = layer_words(layer, None if course.sheet else units)
    if layer.seams in ("taped", "sealed") and "seam" not in words:
        words += f", seams {layer.seams}"
    return Note(words, (at,), side, f"{arm.assembly.name}/{layer.number}")


def with_choices(remarks: Iterable[str], junction: Junction) -> tuple[str, ...]:
    """Remarks of a drawing, and what was derived for it with the reason."""
    return (*remarks, *(f"{one.text}: {one.because}" for one in junction.choices))


LONGEST = 48  # letters of a tag's words; the schedule has the whole sentence


def joined_words(junction: Junction, arm: Arm) -> list[tuple[str, str]]:
    """What joins the controls that pass, each wording once, with the first letter it speaks of; `arm` has the first layers."""
    found: dict[str, str] = {}
    for one in junction.links:
        words = one.words or one.by
        if len(words) > LONGEST and one.start:
            layer = next((each for each in arm.assembly.layers if each.name == one.start[1]), None)
            words = f"{layer_words(layer, None) if layer else one.start[1]}: {one.by}"
        if words and not one.broken and one.letter != "T":
            found.setdefault(words, one.letter)
    return list(found.items())


def slots(high: float, low: float, count: int) -> list[float]:
    """`count` heights from just below `high` down to `low`, evenly spread."""
    step = (high - low) / max(1, count)
    return [high - (number + 0.5) * step for number in range(count)]
