"""Signs for moving air in ventilated cavities."""

from layerfolio.drawing.control import ControlLine
from layerfolio.drawing.layout_framing import Framing, View
from layerfolio.drawing.layout_stack import Band, Stack
from layerfolio.drawing.marks import Circle, Curve, Line, Mark, Point

RADIUS, DOT = 1.0, 0.32  # air towards the viewer
ARROW, HEAD, HALF_HEAD = 9.0, 2.6, 1.0  # air along the paper
LEAST = 2.25  # clear depth a sign needs
LINE, FACE = 0.36, 0.25  # what a control line and a face take of it


def air_signs(
    stack: Stack, framing: tuple[Framing, ...], controls: tuple[ControlLine, ...], length: float, view: View
) -> list[tuple[Point, tuple[Mark, ...]]]:
    """Middle and marks of each sign; a cavity that is too shallow gets none."""
    signs = []
    frames = {one.band.layer.number: one for one in framing}
    for band in stack.bands:
        if band.layer.cavity != "ventilated" or band.form != "body":
            continue
        frame = frames.get(band.layer.number)
        y = _clear_height(band, controls)
        if y is None:
            continue
        along = view in ("slope", "upright") or (view == "level" and not (frame and frame.centres))
        signs += [((x, y), arrow(x, y) if along else towards(x, y)) for x in _places(frame, length, along)]
    return signs


def _clear_height(band: Band, controls: tuple[ControlLine, ...]) -> float | None:
    """Middle of the widest stretch of the cavity's depth that no control line takes."""
    lines = sorted(one.y for one in controls if band.bottom < one.y < band.top)
    lower = [band.bottom + FACE, *(y + LINE for y in lines)]
    upper = [*(y - LINE for y in lines), band.top - FACE]
    deep, y = max((high - low, (high + low) / 2) for low, high in zip(lower, upper, strict=True))
    return y if deep >= LEAST else None


def _places(frame: Framing | None, length: float, along: bool) -> list[float]:
    half = ARROW / 2 if along else RADIUS
    end = frame.torn if frame and frame.torn else length
    places = []
    for share in (0.32, 0.63) if end == length else (0.27, 0.7):
        x = share * end
        for left, right in frame.intervals if frame else ():
            if left - half - 1.5 < x < right + half + 1.5:
                x = left - half - 1.5 if left > 0.3 * length else right + half + 1.5
        if x < length - 20 and (not places or x - places[-1] > 2 * half + 4):
            places.append(x)
    return places


def towards(x: float, y: float) -> tuple[Mark, ...]:
    """Air that moves towards the reader."""
    return Circle((x, y), RADIUS, 0.25, "white", role="air"), Circle((x, y), DOT, fill="black", role="air")


def arrow(x: float, y: float) -> tuple[Mark, ...]:
    """Air that moves along the paper, to the right."""
    tip, tail = x + ARROW / 2, x - ARROW / 2
    head = (("M", tip, y), ("L", tip - HEAD, y + HALF_HEAD), ("L", tip - HEAD, y - HALF_HEAD), ("Z",))
    return Line(((tail, y), (tip - HEAD, y)), 0.25, role="air"), Curve(head, fill="black", role="air")
