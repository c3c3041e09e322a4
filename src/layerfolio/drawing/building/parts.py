"""Parts of a building section: what a junction's maker gives, shifted to its place."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from layerfolio.drawing.detail.model import Break, Piece, Sheet, Trace
from layerfolio.drawing.geometry import bounds, rectangle
from layerfolio.drawing.marks import Point


@dataclass(frozen=True, slots=True)
class Part:
    pieces: tuple[Piece, ...] = ()
    sheets: tuple[Sheet, ...] = ()
    traces: tuple[Trace, ...] = ()
    breaks: tuple[Break, ...] = ()


def moved_part(part: Part, dx: float, dy: float) -> Part:
    """The same elsewhere."""

    def at(point: Point) -> Point:
        return point[0] + dx, point[1] + dy

    def line(points: Iterable[Point]) -> tuple[Point, ...]:
        return tuple(map(at, points))

    return Part(
        tuple(replace(one, outline=line(one.outline)) for one in part.pieces),
        tuple(replace(one, points=line(one.points)) for one in part.sheets),
        tuple(replace(one, runs=tuple(map(line, one.runs)), gaps=line(one.gaps)) for one in part.traces),
        tuple(Break(at(one.a), at(one.b)) for one in part.breaks),
    )


def joined(parts: Iterable[Part]) -> Part:
    """All parts as one; runs of one control that end where another begins become one run."""
    found = list(parts)
    return Part(
        _pieces([piece for one in found for piece in one.pieces]),
        tuple(sheet for one in found for sheet in one.sheets),
        _traces([trace for one in found for trace in one.traces]),
        tuple(mark for one in found for mark in one.breaks),
    )


def _pieces(pieces: list[Piece]) -> tuple[Piece, ...]:
    """Upright strips of one layer that touch end to end become one, so that no line marks where parts meet."""
    strips: dict[tuple, list[Piece]] = {}
    rest: list[Piece] = []
    for one in pieces:
        box = _upright(one)
        if box is None:
            rest.append(one)
        else:
            strips.setdefault((one.layer, one.family, round(box[0], 1), round(box[2], 1)), []).append(one)
    return (*(one for some in strips.values() for one in _stacked(some)), *rest)


def _upright(piece: Piece) -> tuple[float, float, float, float] | None:
    """The box of a rectangle whose layer runs upward; None for other shapes, boards and timber."""
    box = bounds(piece.outline)
    corners = {(box[0], box[1]), (box[2], box[1]), (box[2], box[3]), (box[0], box[3])}
    plain = piece.turn % 180 == 90 and piece.family not in ("timber", "plain") and "/" in piece.layer
    return box if plain and set(piece.outline) == corners else None


def _stacked(pieces: list[Piece]) -> list[Piece]:
    found: list[Piece] = []
    for one in sorted(pieces, key=lambda piece: bounds(piece.outline)[1]):
        x0, low, x1, high = bounds(one.outline)
        if found and abs(bounds(found[-1].outline)[3] - low) < 0.01:
            found[-1] = replace(found[-1], outline=rectangle(x0, bounds(found[-1].outline)[1], x1, high))
        else:
            found.append(one)
    return found


def _traces(traces: list[Trace]) -> tuple[Trace, ...]:
    letters = dict.fromkeys(one.letters for one in traces)
    return tuple(
        Trace(
            letter,
            _runs([run for one in traces if one.letters == letter for run in one.runs]),
            tuple(gap for one in traces if one.letters == letter for gap in one.gaps),
        )
        for letter in letters
    )


def _runs(runs: list[tuple[Point, ...]]) -> tuple[tuple[Point, ...], ...]:
    """Runs joined end to end, whichever way they were given."""
    left = [list(one) for one in runs]
    done: list[tuple[Point, ...]] = []
    while left:
        run = left.pop(0)
        while (found := _next(run, left)) is not None:
            number, more, front = found
            left.pop(number)
            run = more[:-1] + run if front else run + more[1:]
        done.append(_straight(run))
    return tuple(done)


def _next(run: list[Point], left: list[list[Point]]) -> tuple[int, list[Point], bool] | None:
    for number, one in enumerate(left):
        for more in (one, one[::-1]):
            if _same(run[-1], more[0]):
                return number, more, False
            if _same(run[0], more[-1]):
                return number, more, True
    return None


def _same(a: Point, b: Point) -> bool:
    return abs(a[0] - b[0]) < 1.0 and abs(a[1] - b[1]) < 1.0


def _straight(run: list[Point]) -> tuple[Point, ...]:
    """Without points in the middle of a straight stretch."""
    kept = run[:1]
    for before, point, after in zip(run, run[1:], run[2:], strict=False):
        cross = (point[0] - before[0]) * (after[1] - before[1]) - (point[1] - before[1]) * (after[0] - before[0])
        if abs(cross) > 1.0:
            kept.append(point)
    return (*kept, run[-1])
