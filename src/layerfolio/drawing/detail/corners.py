"""Corners of walls in plan: one wall runs to the right, the other down, from the corner of their frames at (0, 0)."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from layerfolio.assembly.courses import Course
from layerfolio.assembly.junction_types import Junction
from layerfolio.assembly.types import Assembly
from layerfolio.drawing.detail.arm import Arm, End, crosses
from layerfolio.drawing.detail.corner_words import look_at, notes, order_of_work, remarks
from layerfolio.drawing.detail.model import Break, Detail, Measure, Piece, Sheet, Trace, Word
from layerfolio.drawing.detail.traces import depth_of, insulation_middle, served, sheet_role, tight_pairs
from layerfolio.drawing.detail.wholes import whole_text
from layerfolio.drawing.figures import Units
from layerfolio.drawing.marks import Point

ALONG = 27.0  # paper mm of each wall beyond the other's inner face


@dataclass(frozen=True)
class Corner:
    """`through` runs past the other wall; at an inside corner both arms turn their outer faces towards each other."""

    junction: Junction
    through: Arm
    butted: Arm
    scale: float
    outward: bool  # an outside corner

    @property
    def off(self) -> float:
        return 1.75 * self.scale

    @cached_property
    def alike(self) -> bool:
        """Whether both walls have the same layers, so that each layer meets itself."""
        return [(one.layer.name, one.depth) for one in self.through.courses] == [
            (one.layer.name, one.depth) for one in self.butted.courses
        ]

    def far(self, arm: Arm) -> float:
        """Where an arm is broken off, from the corner."""
        other = self.butted if arm is self.through else self.through
        reach = max(abs(other.courses[0].start), abs(other.courses[-1].end)) if self.outward else abs(other.courses[0].start)
        return reach + ALONG * self.scale

    def starts(self, arm: Arm, course: Course) -> float:
        """Where a course begins: the wall that runs through covers the corner's square, the other one stops at it."""
        other = self.butted if arm is self.through else self.through
        twin = self._twin(course, other)
        near, back = (twin[0], twin[1]) if self.outward else (-twin[1], -twin[0])
        return near if arm is self.through else back

    def _twin(self, course: Course, other: Arm) -> tuple[float, float]:
        """Depths in the other wall that a course meets: those of its twin, else of the whole zone."""
        if self.alike:
            one = next(one for one in other.courses if one.layer.number == course.layer.number)
            return one.start, one.end
        zone = other.zone(course.zone)
        if zone:
            return zone[0].start, zone[-1].end
        edge = {"rain": other.courses[0].start, "outer": 0.0}.get(course.zone, other.courses[-1].end)
        return edge, edge


def outside_corner(junction: Junction, assemblies: Mapping[str, Assembly], units: Units, scale: float = 5.0) -> Detail:
    """Outside at the top and at the left."""
    return _detail(Corner(junction, *_walls(junction, assemblies, 0.0), scale, True), units)


def inside_corner(junction: Junction, assemblies: Mapping[str, Assembly], units: Units, scale: float = 5.0) -> Detail:
    """Outside below and at the left of the corner."""
    return _detail(Corner(junction, *_walls(junction, assemblies, 180.0), scale, False), units)


def _walls(junction: Junction, assemblies: Mapping[str, Assembly], turn: float) -> tuple[Arm, Arm]:
    a, b = assemblies[junction.of[0]], assemblies[junction.of[-1]]
    return Arm(a, turn=turn, cut="level"), Arm(b, turn=270.0, left=True, cut="level")


def _detail(corner: Corner, units: Units) -> Detail:
    a, b = corner.through, corner.butted
    return Detail(
        name=f"{corner.junction.kind} {a.assembly.name} {b.assembly.name}",
        kind="level section between floor and window",
        pieces=(*_pieces(corner, a), *_pieces(corner, b)),
        sheets=(*_sheets(corner), *_tape(corner)),
        traces=tuple(_traces(corner)),
        notes=notes(corner, units),
        measures=_measures(corner, units),
        breaks=(_break(corner, a), _break(corner, b)),
        words=_sides(corner),
        remarks=remarks(corner),
        order=order_of_work(corner),
        look=look_at(corner),
    )


def _pieces(corner: Corner, arm: Arm) -> Iterator[Piece]:
    far = End(corner.far(arm))
    for course in arm.courses:
        start = End(corner.starts(arm, course))
        if course.zone == "frame" and crosses(course.layer, "level"):
            yield from _frame(corner, arm, course, start, far)
        else:
            yield from arm.pieces(course, start, far, _batten(corner, arm, course))


def _batten(corner: Corner, arm: Arm, course: Course) -> float | None:
    """Outside the first batten stands over the stud that closes the wall that runs through; inside it begins at the start."""
    member = course.layer.member
    if not member or not member.width:
        return None
    half = member.width.value * 500
    if course.zone != "rain" or not corner.outward:
        return half + corner.starts(arm, course)
    stud = next((one.layer.member for one in corner.through.zone("frame") if one.layer.member and one.layer.member.width), None)
    return max(half, stud.width.value * 500) if stud and arm is corner.through else half


def _frame(corner: Corner, arm: Arm, course: Course, start: End, far: End) -> Iterator[Piece]:
    """A stud closes the frame; in the wall that runs through a second one gives the inner layers their edge."""
    member = course.layer.member
    wide, step = member.width.value * 1000, member.spacing.value * 1000
    other = corner.butted if arm is corner.through else corner.through
    back = other.zone("frame")[-1].end
    studs = [start.s]
    if corner.outward and arm is corner.through and back - start.s > 1.5 * wide:
        studs.append(back)
    regular = start.s + step
    studs += [at for at in (regular - wide / 2 + n * step for n in range(8)) if at > studs[-1] + 2 * wide and at + wide <= far.s]
    family = "timber" if member.family == "timber-board" else member.family
    name = f"{arm.name(course.layer)}/{member.name}"
    edge = start
    for number, at in enumerate(studs):
        end = End(min(at + wide, far.s))
        yield Piece(arm.outline(course.start, course.end, End(at), end), family, name, arm.turn, 0.5, number=number)
        if at - edge.s > 0.5:
            yield _bay(arm, course, edge, End(at), number)
        edge = end
    if far.s - edge.s > 0.5:
        yield _bay(arm, course, edge, far, len(studs))


def _bay(arm: Arm, course: Course, a: End, b: End, number: int) -> Piece:
    outline = arm.outline(course.start, course.end, a, b)
    return Piece(outline, course.layer.family, arm.name(course.layer), arm.turn, number=number)


def around(corner: Corner, d_through: float, d_butted: float) -> tuple[Point, ...]:
    """A line that follows one depth of each wall round the corner."""
    a, b = corner.through, corner.butted
    x, _ = b.place(0.0, d_butted)
    _, y = a.place(0.0, d_through)
    return a.place(corner.far(a), d_through), (x, y), b.place(corner.far(b), d_butted)


def _sheets(corner: Corner) -> Iterator[Sheet]:
    """Membranes go round the corner in one piece where both walls have them at one place in the order."""
    for one in corner.through.courses:
        twin = next((o for o in corner.butted.courses if o.layer.name == one.layer.name and o.sheet), None)
        if one.sheet and twin:
            role = sheet_role(one)
            yield Sheet(around(corner, one.start, twin.start), role, corner.through.name(one.layer))
    for arm, other in ((corner.through, corner.butted), (corner.butted, corner.through)):
        names = {one.layer.name for one in other.courses if one.sheet}
        for one in arm.courses:
            if one.sheet and one.layer.name not in names:
                ends = arm.place(corner.starts(arm, one), one.start), arm.place(corner.far(arm), one.start)
                yield Sheet(ends, sheet_role(one), arm.name(one.layer))


def _tape(corner: Corner) -> Iterator[Sheet]:
    """In the corner of taped panels."""
    link = corner.junction.link("A")
    a, b = served(corner.through, "A"), served(corner.butted, "A")
    if link and not link.broken and "tape" in link.by and a and b and not a.sheet:
        x, y = around(corner, a.end + 1.2, b.end + 1.2)[1]
        along = 40.0 if corner.outward else -40.0
        yield Sheet(((x + along, y), (x, y), (x, y - 40.0)), "tape", "tape")


def _traces(corner: Corner) -> Iterator[Trace]:
    water = served(corner.through, "W"), served(corner.butted, "W")
    if any(water):
        yield _trace(corner, *water, "W")
    for a, b, letters in tight_pairs(corner.through, corner.butted):
        yield _trace(corner, a, b, letters)
    middles = insulation_middle(corner.through), insulation_middle(corner.butted)
    if None not in middles:
        yield Trace("T", (around(corner, *middles),))


def _trace(corner: Corner, a: Course | None, b: Course | None, letters: str) -> Trace:
    depths = [_depth(corner, arm, one, letters) for arm, one in ((corner.through, a), (corner.butted, b))]
    link = corner.junction.link(letters[0])
    if None not in depths and not (link and link.broken):
        return Trace(letters, (around(corner, *depths),))
    runs = []
    for arm, depth in ((corner.through, depths[0]), (corner.butted, depths[1])):
        if depth is not None:
            runs.append((arm.place(corner.far(arm), depth), arm.place(depth if corner.outward else -depth, depth)))
    return Trace(letters, tuple(runs), tuple(run[-1] for run in runs))


def _depth(corner: Corner, arm: Arm, course: Course | None, letters: str) -> float | None:
    if course is None:
        return None
    return course.start - corner.off if letters == "W" else depth_of(arm, course, corner.off)


def _measures(corner: Corner, units: Units) -> tuple[Measure, ...]:
    arm = corner.butted
    found = whole_text(arm, units)
    if found is None:
        return ()
    far = corner.far(arm)
    a, b = arm.place(far, arm.courses[0].start), arm.place(far, arm.courses[-1].end)
    return (Measure(a, b, "x", -far - 9 * corner.scale, *found),)


def _break(corner: Corner, arm: Arm) -> Break:
    over, far = 4 * corner.scale, corner.far(arm)
    return Break(arm.place(far, arm.courses[0].start - over), arm.place(far, arm.courses[-1].end + over))


def _sides(corner: Corner) -> tuple[Word, ...]:
    scale, a, b = corner.scale, corner.through, corner.butted
    if corner.outward:
        out = (b.place(0.0, b.courses[0].start)[0] - 24 * scale, a.place(0.0, a.courses[0].start)[1] - 4 * scale)
        inside = (b.place(0.0, b.courses[-1].end)[0] + 12 * scale, a.place(0.0, a.courses[-1].end)[1] - 14 * scale)
    else:
        out = (-corner.far(a) + 8 * scale, a.place(0.0, a.courses[0].start)[1] - 14 * scale)
        inside = (b.place(0.0, b.courses[-1].end)[0] + 8 * scale, a.place(0.0, a.courses[-1].end)[1] - 6 * scale)
    return Word("OUTSIDE", out), Word("INSIDE", inside)
