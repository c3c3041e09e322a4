"""The building cut once from the ground to the ridge, so that every control line can be followed with a finger.

It is put together from the same pieces as the details: foot of the wall, floors, window, eave and ridge, each drawn as far as
its neighbour. x = 0 is the outer face of the wall's frame, y = 0 the top of what the lowest plate stands on.
"""

from collections.abc import Iterator

from layerfolio.assembly.junction_types import Junction
from layerfolio.drawing.building.cut import ROUND, STOREY, BuildingCut
from layerfolio.drawing.building.parts import Part, joined, moved_part
from layerfolio.drawing.detail.arm import Arm, End
from layerfolio.drawing.detail.edge_lines import sheets as edge_sheets
from layerfolio.drawing.detail.edge_lines import traces as edge_traces
from layerfolio.drawing.detail.edge_pieces import edge_pieces
from layerfolio.drawing.detail.edge_place import EdgePlace
from layerfolio.drawing.detail.model import Break, Bubble, Detail, Measure, Word
from layerfolio.drawing.detail.reveal_lines import sheets as reveal_sheets
from layerfolio.drawing.detail.reveal_lines import traces as reveal_traces
from layerfolio.drawing.detail.reveal_pieces import reveal_pieces
from layerfolio.drawing.detail.reveal_place import RevealPlace
from layerfolio.drawing.detail.ridge import ridge_half
from layerfolio.drawing.detail.ridge_place import RidgePlace
from layerfolio.drawing.detail.rim import RimPlace, rim_pieces, rim_sheets, rim_traces
from layerfolio.drawing.detail.sill_floor import floor_pieces
from layerfolio.drawing.detail.sill_lines import sheets as sill_sheets
from layerfolio.drawing.detail.sill_lines import traces as sill_traces
from layerfolio.drawing.detail.sill_place import SillPlace
from layerfolio.drawing.detail.sill_wall import wall_pieces
from layerfolio.drawing.marks import Point

PAST = 420.0  # mm of roof beyond the ridge
LEGIBLE = 20.0  # mm on paper: a shorter height has no room for its figure


def building_section(cut: BuildingCut) -> Detail | None:
    """None where no wall stands on a floor or under a roof."""
    if cut.wall is None:
        return None
    whole = joined(_parts(cut))
    return Detail(
        name="building section",
        kind="vertical section through a bay and a window",
        pieces=whole.pieces,
        sheets=whole.sheets,
        traces=whole.traces,
        breaks=whole.breaks,
        words=_words(cut, whole),
        measures=tuple(_measures(cut)),
        bubbles=tuple(_bubbles(cut)),
        remarks=_remarks(cut),
    )


def _measures(cut: BuildingCut) -> Iterator[Measure]:
    """Heights inside: each storey, sill and head of the window over the finished floor."""
    inner = Arm(cut.wall).courses[-1].end
    for low, high in zip(cut.levels, cut.levels[1:], strict=False):
        if cut.storeys:
            yield Measure((inner, low), (inner, high), "y", inner + 19 * cut.scale, (high - low) / 1000)
    if cut.window:
        low, high = cut.window
        for y in (low, high) if (low - cut.finish) / cut.scale >= LEGIBLE else ():
            line = inner + (7 if y == low else 13) * cut.scale
            yield Measure((inner, cut.finish), (inner, y), "y", line, (y - cut.finish) / 1000)


def _remarks(cut: BuildingCut) -> tuple[str, ...]:
    """What the section leaves out, and what it shows that nobody stated."""
    found = []
    if cut.span and cut.right < cut.span * 1000 - 1.0:
        short = cut.span - cut.right / 1000
        found.append(f"The span is drawn {short:.2f} m shorter than it is, so that it fits the page.")
    elif not cut.span and (eave := cut.first("eave")) and cut.assemblies[eave.of[1]].kind == "roof":
        found.append("How far the ridge is from the wall is not stated: the roof is broken off.")
    head = cut.first("window head")
    if head and cut.window is None:
        found.append(f"{head.opening} is not drawn here: as stated it leaves no room over or under it for header and plates.")
    if not cut.storeys:
        found.append(f"No height of a storey is stated: {STOREY / 1000:g} m is drawn.")
    return tuple(found)


def _parts(cut: BuildingCut) -> Iterator[Part]:
    seams = _seams(cut)
    yield _foot(cut, seams[0])
    for level, low, high in zip(cut.levels[1:-1], seams[1::2], seams[2::2], strict=False):
        yield _floor(cut, level, low, high)
    if cut.window:
        yield from _window(cut, *cut.window)
    yield _top(cut, seams[-1])
    if ridge := _ridge(cut):
        yield ridge


def _seams(cut: BuildingCut) -> list[float]:
    """y at which one part ends and the next begins: below and above the window, midway in the other storeys."""
    if cut.window:
        found = [cut.window[0] - ROUND, cut.window[1] + cut.over_window]
    else:
        middle = (cut.levels[0] + cut.levels[1]) / 2
        found = [middle, middle]
    for low, high in zip(cut.levels[1:], cut.levels[2:], strict=False):
        found += [(low + high) / 2] * 2
    return found


def _foot(cut: BuildingCut, top: float) -> Part:
    junction = cut.first("sill")
    if junction is None:
        arm = Arm(cut.wall)
        return Part(tuple(piece for one in arm.courses for piece in arm.pieces(one, End(0.0), End(top))))
    place = SillPlace(junction, Arm(cut.wall), cut.assemblies[junction.of[1]], cut.scale, top, cut.right)
    over = 4 * cut.scale
    edge = Break((cut.right, max(0.0, place.finish) + over), (cut.right, place.bottom - over))
    return Part((*wall_pieces(place), *floor_pieces(place)), sill_sheets(place), sill_traces(place), (edge,))


def _floor(cut: BuildingCut, level: float, low: float, high: float) -> Part:
    """A storey's floor with its rim; without a junction for it the wall goes on."""
    junction = cut.first("rim")
    if junction is None:
        arm = Arm(cut.wall)
        return Part(tuple(piece for one in arm.courses for piece in arm.pieces(one, End(low), End(high))))
    floor = cut.assemblies[junction.of[1]]
    place = RimPlace(junction, Arm(cut.wall), floor, cut.scale, high - level, cut.right, bottom_at=low - level)
    over = 4 * cut.scale
    edge = Break((cut.right, max(0.0, place.finish) + over), (cut.right, place.whole - over))
    return moved_part(Part(tuple(rim_pieces(place)), tuple(rim_sheets(place)), tuple(rim_traces(place)), (edge,)), 0.0, level)


def _window(cut: BuildingCut, low: float, high: float) -> Iterator[Part]:
    half = -(high - low) / 2
    for edge, turn, left, y in (("sill", 270.0, True, low), ("head", 90.0, False, high)):
        junction = cut.first(f"window {edge}") or cut.first("window head")
        far = ROUND if edge == "sill" else cut.over_window
        place = RevealPlace(junction, Arm(cut.wall, (0.0, y), turn, left), edge, cut.scale, far, half)
        yield Part(tuple(reveal_pieces(place)), reveal_sheets(place), reveal_traces(place))


def _top(cut: BuildingCut, low: float) -> Part:
    junction, top = cut.first("eave") or cut.first("verge"), cut.levels[-1]
    arm, over = Arm(cut.wall), 4 * cut.scale
    if junction is None:
        pieces = tuple(piece for one in arm.courses for piece in arm.pieces(one, End(low), End(top)))
        ends = Break((arm.courses[0].start - over, top), (arm.courses[-1].end + over, top))
        return Part(pieces, breaks=(ends,))
    roof = cut.assemblies[junction.of[1]]
    place = EdgePlace(junction, arm, roof, cut.scale, junction.kind == "verge", low - top, cut.right)
    courses = place.roof.courses
    high, deep = place.height(courses[0].start, cut.right) + over, place.height(courses[-1].end, cut.right) - over
    ends = () if _has_ridge(cut) else (Break((cut.right, high), (cut.right, deep)),)
    return moved_part(Part(tuple(edge_pieces(place)), edge_sheets(place), edge_traces(place), ends), 0.0, top)


def _has_ridge(cut: BuildingCut) -> bool:
    eave, ridge = cut.first("eave"), cut.first("ridge")
    return bool(cut.span and eave and ridge and ridge.of[0] == eave.of[1])


def _ridge(cut: BuildingCut) -> Part | None:
    """The other slope's beginning, where it is known how far the ridge is."""
    if not _has_ridge(cut):
        return None
    eave, ridge = cut.first("eave"), cut.first("ridge")
    edge = EdgePlace(eave, Arm(cut.wall), cut.assemblies[eave.of[1]], cut.scale, False, right_at=cut.right)
    place = RidgePlace(ridge, cut.assemblies[ridge.of[0]], cut.scale, PAST)
    courses, over = place.arm.courses, 4 * cut.scale
    ends = (PAST, place.height(courses[0].start, PAST) + over), (PAST, place.height(courses[-1].end, PAST) - over)
    part = Part(*ridge_half(place), (Break(*ends),))
    return moved_part(part, cut.right, cut.levels[-1] + edge.height(0.0, cut.right))


def _words(cut: BuildingCut, whole: Part) -> tuple[Word, ...]:
    x0 = min((point[0] for one in whole.pieces for point in one.outline), default=0.0)
    y = cut.levels[1] * 0.55
    return (Word("OUTSIDE", (x0 - 2 * cut.scale, y)), Word("INSIDE", (cut.right * 0.62, y)))


def _bubbles(cut: BuildingCut) -> Iterator[Bubble]:
    for one in cut.junctions:
        at = _spot(cut, one)
        if at is not None and one is cut.first(one.kind):
            yield Bubble(str(one.number), f"D{one.number}", at)


def _spot(cut: BuildingCut, junction: Junction) -> Point | None:
    """Where a junction stands in the section; corners and jambs are not cut by it."""
    frame = Arm(cut.wall).zone("frame")
    middle = frame[-1].end / 2
    window = cut.window
    spots = {
        "sill": (middle, 0.0),
        "rim": (middle, cut.levels[1]) if len(cut.levels) > 2 else None,
        "window sill": (middle, window[0]) if window else None,
        "window head": (middle, window[1]) if window else None,
        "eave": (middle, cut.levels[-1]),
        "ridge": (cut.right, _ridge_height(cut)) if _has_ridge(cut) else None,
    }
    return spots.get(junction.kind)


def _ridge_height(cut: BuildingCut) -> float:
    eave = cut.first("eave")
    edge = EdgePlace(eave, Arm(cut.wall), cut.assemblies[eave.of[1]], cut.scale, False, right_at=cut.right)
    return cut.levels[-1] + edge.height(edge.carries.middle, cut.right)
