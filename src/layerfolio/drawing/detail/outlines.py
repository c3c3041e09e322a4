"""The lines between pieces: where two meet one line, at the stronger weight of both."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from itertools import pairwise
from math import atan2, degrees, hypot

from layerfolio.drawing.detail.model import Piece
from layerfolio.drawing.geometry import Outline, direction
from layerfolio.drawing.marks import Line

FINE = 0.03  # mm: corners nearer to each other are one
STRONG = 0.5  # what nothing touches is an outer face
ROLES = {0.5: "outline", 0.35: "face"}


@dataclass(slots=True)
class Track:
    """All edges on one straight line: direction in degrees, distance from the origin, and (start, end, width, piece)."""

    turn: float
    off: float
    spans: list[tuple[float, float, float, int]] = field(default_factory=list)


def outline_lines(pieces: Iterable[tuple[Piece, Outline]], finer: Mapping[float, float] | None = None) -> list[Line]:
    """Lines for pieces with the outlines they are painted with. Air has no line of its own: it makes the face beside it a
    thin one. A piece whose `edge` is 0 leaves its edges to its neighbours. `finer`: widths to take instead, at small
    scales."""
    tracks: dict[tuple[int, int], Track] = {}
    for number, (piece, outline) in enumerate(pieces):
        width = 0.0 if piece.family == "air" else piece.edge
        for at in range(len(outline)):
            _add(tracks, outline[at - 1], outline[at], width, number)
    lines = [line for track in tracks.values() for line in _lines(track)]
    return [replace(one, width=finer.get(one.width, one.width)) for one in lines] if finer else lines


def _add(tracks: dict[tuple[int, int], Track], a, b, width: float, number: int) -> None:
    long = hypot(b[0] - a[0], b[1] - a[1])
    if long < FINE:
        return
    turn = degrees(atan2(b[1] - a[1], b[0] - a[0])) % 180
    turn = 0.0 if turn > 179.95 or turn < 0.05 else 90.0 if abs(turn - 90) < 0.05 else turn
    c, s = direction(turn)
    off = c * a[1] - s * a[0]
    track = _track(tracks, turn, off)
    c, s = direction(track.turn)
    start, end = sorted((c * a[0] + s * a[1], c * b[0] + s * b[1]))
    track.spans.append((start, end, width, number))


def _track(tracks: dict[tuple[int, int], Track], turn: float, off: float) -> Track:
    """The track that lies there already, or a new one."""
    row, column = round(turn * 10), round(off / FINE)
    for near in (0, -1, 1):
        for beside in (0, -1, 1):
            if (found := tracks.get((row + near, column + beside))) is not None:
                return found
    return tracks.setdefault((row, column), Track(turn, off))


def _lines(track: Track) -> Iterator[Line]:
    c, s = direction(track.turn)
    for start, end, width in _joined(_elements(track.spans)):
        ends = tuple((c * at - s * track.off, s * at + c * track.off) for at in (start, end))
        yield Line(ends, width, round_ends=True, role=ROLES.get(width, "outline"))


def _elements(spans: list[tuple[float, float, float, int]]) -> Iterator[tuple[float, float, float]]:
    """Stretches between two corners with the width that their pieces give."""
    stops: list[float] = []
    for at in sorted(value for one in spans for value in one[:2]):
        if not stops or at - stops[-1] > FINE:
            stops.append(at)
    for start, end in pairwise(stops):
        middle = (start + end) / 2
        over = [one for one in spans if one[0] < middle < one[1]]
        width = max((one[2] for one in over), default=0.0)
        if width:
            yield start, end, width if len({one[3] for one in over}) > 1 else max(width, STRONG)


def _joined(elements: Iterable[tuple[float, float, float]]) -> Iterator[tuple[float, float, float]]:
    last: tuple[float, float, float] | None = None
    for one in elements:
        if last and abs(last[1] - one[0]) < FINE and last[2] == one[2]:
            last = last[0], one[1], one[2]
            continue
        if last:
            yield last
        last = one
    if last:
        yield last
