"""Where the dot of each tag may lie: inside its layer or member, clear of what is drawn there."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from layerfolio.drawing.control import ControlLine
from layerfolio.drawing.fasteners import Pins
from layerfolio.drawing.figures import Units
from layerfolio.drawing.layout_framing import DRIFT, Framing
from layerfolio.drawing.layout_stack import Band, Stack
from layerfolio.drawing.layout_strips import THIN as SLIM
from layerfolio.drawing.marks import Point
from layerfolio.drawing.names import layer_note, member_note

STEPS = (13.0, 9.0, 17.0, 5.5, 21.0, 3.2, 25.0, 30.0, 36.0, 44.0, 54.0, 66.0, 80.0, 96.0)
"""mm from the right break line"""
NEAR = (2.2, 4.6)  # the same for dots whose leaders leave the section at once
LINE_CLEAR, EDGE_CLEAR, SIGN_CLEAR = 1.5, 1.2, 3.0
OPEN, WHOLE = (0.36, 0.28, 0.5, 0.2, 0.56, 0.62, 0.72, 0.8), (0.5, 0.38, 0.62, 0.25, 0.75, 0.2, 0.8)
BESIDE = (0.68, 0.6, 0.5, 0.78, 0.4, 0.88, 0.22)
"""Shares of a layer's depth: beside members, in a layer without, in a member"""
THIN = 4.0  # mm on paper: dots of successive thin layers step along


@dataclass(frozen=True, slots=True)
class Spots:
    """A tag's places in the section's directions, best first; `notes` from the fullest to the shortest."""

    label: str
    notes: tuple[str, ...]
    places: tuple[Point, ...]
    member: bool = False


def spots(
    stack: Stack,
    framing: tuple[Framing, ...],
    controls: tuple[ControlLine, ...],
    signs: Iterable[Point],
    length: float,
    units: Units,
    thick: bool = True,
    pins: Sequence[Pins] = (),
) -> list[Spots]:
    """One entry for each layer, and for each framing that is drawn, from the top down; `thick`: with thicknesses."""
    frames = {one.band.layer.number: one for one in framing}
    lines, signs = [one.y for one in controls], list(signs)
    found, thin = [], 0
    for band in stack.bands:
        thin = thin + 1 if band.depth < THIN else 0
        frame = frames.get(band.layer.number)
        shown = frame is not None and (frame.seen == "along" or bool(frame.centres))
        heights = _heights(band, lines, OPEN if shown else WHOLE)
        columns = _open_columns(band, frame, signs, length, thin)
        notes = tuple(layer_note(band, shown) for shown in ((units, None) if thick else (None,)))
        found.append(Spots(str(band.layer.number), notes, _places(columns, heights)))
        if shown:
            heights = _heights(band, lines, BESIDE)
            columns = _clear_of(_member_columns(frame, length), band, pins)
            found.append(Spots(frame.tag, (member_note(frame, units),), _places(columns, heights), True))
    return found


def _places(columns: list[float], heights: list[float]) -> tuple[Point, ...]:
    first = [(x, heights[0]) for x in columns]
    return (*first, *((x, y) for y in heights[1:] for x in columns))


def _heights(band: Band, lines: list[float], shares: tuple[float, ...]) -> list[float]:
    """Heights in the band that keep clear of control lines; the middle where none does."""
    if band.line or band.depth < 2.2:
        return [band.middle]
    heights = [band.top - share * band.depth for share in shares]
    clear = [y for y in heights if all(abs(y - line) >= LINE_CLEAR for line in lines)]
    return clear or [max(heights, key=lambda y: min((abs(y - line) for line in lines), default=9.0))]


def _open_columns(band: Band, frame: Framing | None, signs: list[Point], length: float, thin: int) -> list[float]:
    turn = thin % 3
    steps = STEPS[:3][turn:] + STEPS[:3][:turn] + STEPS[3:]
    steps = (*NEAR, *steps) if band.depth < SLIM else (*steps, *NEAR)
    columns = [length - one for one in steps if one < length - 3]
    if frame and frame.seen == "along":
        columns = [frame.torn - one for one in (4.0, 8.0, 12.0, 16.0, 22.0, 28.0) if one < frame.torn - 2]
    blocked = [(a - EDGE_CLEAR, b + EDGE_CLEAR) for a, b in (frame.intervals if frame else ())]
    blocked += [(x - SIGN_CLEAR, x + SIGN_CLEAR) for x, y in signs if band.bottom < y < band.top]
    clear = [x for x in columns if not any(a < x < b for a, b in blocked)]
    return clear or _gaps(blocked, length) or [length / 2]


def _gaps(blocked: list[tuple[float, float]], length: float) -> list[float]:
    """Middles of what is left between the blocked stretches, from the right."""
    edges, at = [], 1.0
    for left, right in sorted(blocked):
        if left > at:
            edges.append((at + left) / 2)
        at = max(at, right)
    if at < length - 1:
        edges.append((at + length - 1) / 2)
    return edges[::-1]


def _clear_of(columns: list[float], band: Band, pins: Sequence[Pins]) -> list[float]:
    """Places beside the fasteners that pass a layer; all of them where none is clear."""
    passing = [(x, one.width / 2) for one in pins if one.passes(band.middle) for x in one.places]
    clear = [x for x in columns if all(abs(x - at) > half + 0.9 for at, half in passing)]
    return clear or columns


def _member_columns(frame: Framing, length: float) -> list[float]:
    if frame.seen == "along":
        start, end = frame.torn + DRIFT * frame.band.depth + 2.5, length - 3.0
        return [start + share * (end - start) for share in (0.5, 0.65, 0.35, 0.8, 0.2)]
    found = []
    for left, right in frame.intervals[::-1]:
        left, right = max(left, 0.8), min(right, length - 0.8)
        if right - left > 0.5:
            found += [left + share * (right - left) for share in (0.6, 0.35, 0.8, 0.2)]
    return found or [length / 2]
