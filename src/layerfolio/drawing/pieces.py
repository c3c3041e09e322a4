"""How a layer is cut into pieces along the section: bays between members, boards, or one piece."""

from layerfolio.drawing.layout_framing import Framing, View
from layerfolio.drawing.layout_stack import Band

OVER = 5.0  # mm that a piece runs on behind a break line
BOARD = 140.0  # real mm, width of boards that are cut across


def pieces(
    band: Band, frame: Framing | None, scale: float, length: float, view: View
) -> tuple[str, list[tuple[float, float]]]:
    """Family and ends of a layer's pieces: bays between members, boards, or one piece."""
    family = band.layer.family
    if frame and frame.centres:
        edges = [edge for pair in frame.intervals for edge in pair]
        first, last = edges[0], edges[-1]
        bay = frame.spacing - frame.width
        starts, ends = [min(first - bay, -OVER), *edges[1::2]], [*edges[::2], max(last + bay, length + OVER)]
        return family, [(a, b) for a, b in zip(starts, ends, strict=True) if b - a > 0.05 and b > 0 and a < length]
    stands = "vertical" in band.layer.title.lower()
    upright = view == "slope" or (view == "plan" and stands) or (view == "upright" and not stands)
    if family == "timber" or (family == "timber-board" and upright and not _runs_up(band)):
        step = BOARD / scale
        count = int((length + OVER) / step) + 1
        return "timber", [(one * step - 2.0, (one + 1) * step - 2.0) for one in range(count + 1)]
    return family, [(-OVER, length + OVER)]


def _runs_up(band: Band) -> bool:
    return "up the slope" in band.layer.title.lower()
