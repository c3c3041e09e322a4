"""Members built of flanges and a web over several layers: one member, one filling beside it, no face between the layers."""

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from layerfolio.drawing.geometry import Outline
from layerfolio.drawing.layout_framing import Framing
from layerfolio.drawing.layout_stack import Band, Stack
from layerfolio.drawing.marks import Point

PARTS = ("flange", "web", "chord")
Run = tuple[Framing, ...]


def runs_of(stack: Stack, framing: Sequence[Framing]) -> tuple[Run, ...]:
    """Neighbouring layers of one filling whose members are parts of one member: by id, or by the names flange and web."""
    frames = {one.band.layer.number: one for one in framing if one.seen != "no"}
    runs: list[list[Framing]] = []
    for upper, lower in pairwise(stack.bands):
        one, other = frames.get(upper.layer.number), frames.get(lower.layer.number)
        if one is None or other is None or not _same(one, other):
            continue
        if runs and runs[-1][-1] is one:
            runs[-1].append(other)
        else:
            runs.append([one, other])
    return tuple(map(tuple, runs))


def _same(one: Framing, other: Framing) -> bool:
    first, second = one.band.layer, other.band.layer
    filled_alike = first.kind == second.kind == "solid" and (first.family, first.material) == (second.family, second.material)
    alike = filled_alike and one.seen == other.seen and abs(one.spacing - other.spacing) < 0.01
    if not alike or one.band.cut_short or other.band.cut_short:
        return False
    ids = one.member.member_id, other.member.member_id
    return (bool(ids[0]) and ids[0] == ids[1]) or (is_part(one) and is_part(other))


def is_part(one: Framing) -> bool:
    """Whether its name or id says flange, chord or web."""
    return any(part in f"{one.member.name} {one.member.member_id}".lower() for part in PARTS)


def is_web(one: Framing) -> bool:
    """A web stands across the layer: its sheets run from flange to flange."""
    return "web" in one.member.name.lower()


def inner_faces(runs: Sequence[Run]) -> set[float]:
    """Heights at which no face is drawn, because the filling goes on."""
    return {round(one.band.bottom, 6) for run in runs for one in run[:-1]}


def whole(run: Run) -> Band:
    """One band over the depth of a run."""
    return replace(run[0].band, bottom=run[-1].band.bottom, middle=(run[0].band.top + run[-1].band.bottom) / 2)


def bays(run: Run, ends: Sequence[tuple[float, float]]) -> list[Outline]:
    """The filling between the members of a run, stepping in beside flanges; `ends` of the bays at the widest: the webs."""
    found = []
    for left, right in ends:
        lefts = [(max(left, _reach(one, left, 1)), one) for one in run]
        rights = [(min(right, _reach(one, right, -1)), one) for one in run]
        down = [point for x, one in lefts for point in ((x, one.band.top), (x, one.band.bottom))]
        up = [point for x, one in rights[::-1] for point in ((x, one.band.bottom), (x, one.band.top))]
        found.append(_plain([*down, *up]))
    return found


def _reach(one: Framing, edge: float, side: int) -> float:
    """How far a member of this layer reaches into the bay that begins or ends at `edge`."""
    ends = [b if side > 0 else a for a, b in one.intervals if a - 1e-6 <= edge <= b + 1e-6]
    return ends[0] if ends else edge


def _plain(points: list[Point]) -> Outline:
    """Without points that stand twice."""
    return tuple(point for number, point in enumerate(points) if point != points[number - 1])


def thinnest(run: Run) -> Framing:
    """The part whose bays are widest."""
    return min(run, key=lambda one: one.width)


def part_of_edge(edge: Sequence[Point], top: float, bottom: float) -> tuple[Point, ...]:
    """What lies of a torn edge, drawn from above, between two heights."""
    inner = [one for one in edge if bottom + 1e-9 < one[1] < top - 1e-9]
    return ((_at(edge, top), top), *inner, (_at(edge, bottom), bottom))


def _at(edge: Sequence[Point], y: float) -> float:
    for (ax, ay), (bx, by) in pairwise(edge):
        if by - 1e-9 <= y <= ay + 1e-9 and ay > by:
            return ax + (bx - ax) * (ay - min(max(y, by), ay)) / (ay - by)
    return edge[0][0] if y > edge[0][1] else edge[-1][0]
