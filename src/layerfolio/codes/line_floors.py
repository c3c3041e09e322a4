"""Floors on the lowest exterior frame wall of the building, which limit every line: also one that carries a roof alone."""

from dataclasses import dataclass
from typing import Any

from layerfolio.codes.findings import Verdict
from layerfolio.codes.line_facts import Facts
from layerfolio.codes.line_types import FACE, Answer, LineJudged

ESTIMATE = "an estimate: a knee wall below would add one, a lowest storey of concrete or masonry would take one away"


@dataclass(frozen=True, slots=True)
class LowestWall:
    """`floors`: the most that anything stated gives, never fewer than the wall carries by it; `by`: what gives it, in words."""

    floors: int
    by: str


def lowest_wall(known: Facts) -> LowestWall:
    """The greatest of the line's own floors, those of the other lines, and the storeys of the building less one."""
    others = {name: one.stated.floors_above or 0 for name, one in known.about.envelope.wall_lines.items() if one.stated}
    found = LowestWall(known.floors or 0, "as this line")
    for name, floors in others.items():
        if floors > found.floors:
            found = LowestWall(floors, f"as line {name}")
    storeys = known.about.storeys
    if storeys is not None and storeys - 1 > found.floors:
        return LowestWall(storeys - 1, f"by building.storeys, {ESTIMATE}")
    return found


def one_storey(known: Facts) -> bool | None:
    """Whether the building has one storey by all that is stated; None where neither storeys nor a floor above is."""
    if lowest_wall(known).floors:
        return False
    return None if known.about.storeys is None else True


def weight(known: Facts) -> str:
    """Heavy where any line of the building is, else as this line states it; empty where it does not."""
    lines = [one.stated.construction for one in known.about.envelope.wall_lines.values() if one.stated]
    return "heavy" if "heavy" in (known.line.construction, *lines) else known.line.construction or ""


def too_many(known: Facts, limits: dict[str, int]) -> str:
    """Why the floors are beyond the limits of light and heavy construction, in words; empty where they are not for certain."""
    wall, built = lowest_wall(known), weight(known)
    if wall.floors <= limits[built or "light"]:
        return ""
    return f"the lowest frame wall of the building carries {wall.floors} floors ({wall.by})"


def floors_open(known: Facts, limits: dict[str, int], clause: str, given: str) -> LineJudged | None:
    """The line while the file does not say how many floors its lowest wall carries, or how heavy they are; None else."""
    wall, need = lowest_wall(known), ""
    if known.about.storeys is None:
        need = "building.storeys"
    elif not weight(known) and wall.floors > limits["heavy"]:
        need = "construction: light or heavy"
    if not need:
        return None
    asked = f"floors on the lowest frame wall: {limits['light']} of light construction at most, {limits['heavy']} of heavy"
    reason = f"not stated: {need}; which path is open hangs on it"
    answer = Answer(Verdict.NEEDS_EVIDENCE, clause, asked, given, reason, f"state {need}")
    return LineJudged(known.study.name, "open: the floors on the lowest wall are not known", {FACE: answer})


def floors_given(known: Facts) -> str:
    """The floors that were taken, in words; their knee walls and concrete where a figure is an estimate."""
    wall: Any = lowest_wall(known)
    by = wall.by if "estimate" in wall.by else f"{wall.by}; a knee wall below would add one, concrete take one away"
    return f"lowest frame wall of the building: floors carried {wall.floors} ({by})"
