"""The thickness of a whole assembly as a dimension: always the sum of the printed figures of its layers."""

from collections.abc import Iterator

from layerfolio.drawing.detail.arm import Arm
from layerfolio.drawing.detail.model import Measure
from layerfolio.drawing.figures import Units, figure, total, with_other


def whole_text(arm: Arm, units: Units) -> tuple[float, str] | None:
    """Thickness in m and its figure; None where a layer has none."""
    thick = [one.layer.thickness for one in arm.courses if one.depth]
    if not thick or any(one is None for one in thick):
        return None
    metres = sum(one.value for one in thick)
    return metres, with_other(total((figure(one, units) for one in thick), units), metres, units)


def whole(arm: Arm, line: float, y: float, units: Units) -> Iterator[Measure]:
    """Of an upright wall, measured at `y` with its line at the height `line`."""
    found = whole_text(arm, units)
    if found:
        ends = (arm.courses[0].start, y), (arm.courses[-1].end, y)
        yield Measure(*ends, "x", line, *found)
