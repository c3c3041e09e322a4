"""Walls of houses toward the boundary: construction by distance (NBC 9.10.15, IRC R302.1), glazed area (NBC 9.10.15)."""

from collections.abc import Sequence
from typing import Any, NamedTuple

from layerfolio.codes import judges
from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Measured, Verdict
from layerfolio.codes.making import finding
from layerfolio.codes.outcomes import Outcome, agreed, worst
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.said_absent import STATED, absent
from layerfolio.codes.stated import figure_of, metres, square_metres
from layerfolio.codes.wording import listed
from layerfolio.studies.types import ThermalStudy, VapourStudy

RESPONSE = "answer: does the fire department arrive within 10 min in more than 90 % of calls (building.fire_response)?"
NO_DISTANCE = Outcome(Verdict.NEEDS_EVIDENCE, "distance_to_boundary (project file) is not given", "state distance_to_boundary")


def counted(distance: float, about: Context) -> tuple[float, ...]:
    """The distances that may count: half where the fire department is slow and the building is not sprinklered."""
    if about.answer("building.sprinklered") is True or about.answer("building.fire_response") == "normal":
        return (distance,)
    if about.answer("building.fire_response") == "slow":
        return (distance / 2,) if about.answer("building.sprinklered") is False else (distance, distance / 2)
    return (distance, distance / 2)


def _open(about: Context) -> Outcome:
    """What is asked where the answer about the fire department turns the verdict."""
    slow = about.answer("building.fire_response") == "slow"
    step = "answer: is the building sprinklered (building.sprinklered)?" if slow else RESPONSE
    return Outcome(Verdict.NEEDS_JUDGEMENT, "it turns on whether the whole limiting distance counts or half of it", step)


def judge_limiting_distance(requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, about: Context) -> Finding:
    """The band of the wall; below the free distance its fire resistance is evidence from elsewhere."""
    name, free = thermal.assembly.name, requirement.rule["free_from"]
    distance = figure_of(about, name, "distance_to_boundary")
    if distance is None:
        found = NO_DISTANCE
    else:
        found = agreed([_band(row, one) for row, one in cases(requirement, distance, about)], open_answer(requirement, about))
    return finding(
        requirement, about, found.verdict, assembly=name, reason=found.reason, next_step=found.next_step,
        asked=requirement.rule["asked"].format(free=metres(free, about.customary)),
        given=distance_words(requirement, distance, about),
    )  # fmt: skip


def cases(requirement: Requirement, distance: float, about: Context) -> list[tuple[dict[str, Any], float]]:
    """The rows that may hold and the distances that may count: a set has rows of its own for sprinklered buildings, or
    halves the distance.
    """
    rule = requirement.rule
    if "sprinklered" not in rule:
        return [(rule, one) for one in counted(distance, about)]
    rows = {True: [rule["sprinklered"]], False: [rule]}
    return [(row, distance) for row in rows.get(about.answer("building.sprinklered"), [rule, rule["sprinklered"]])]


def open_answer(requirement: Requirement, about: Context) -> Outcome:
    """What is asked where the cases come to different verdicts."""
    if "sprinklered" not in requirement.rule:
        return _open(about)
    step = "answer: is the building sprinklered (building.sprinklered)?"
    return Outcome(Verdict.NEEDS_JUDGEMENT, "it turns on whether the building is sprinklered", step)


def distance_words(requirement: Requirement, distance: float | None, about: Context) -> str:
    """The stated distance; under a set that halves it, what of it counts."""
    if distance is not None and "sprinklered" in requirement.rule:
        state = {True: ", sprinklered", False: ", not sprinklered"}.get(about.answer("building.sprinklered"), "")
        return f"{metres(distance, about.customary)} to the lot line{state}"
    return _distance_words(distance, about)


def _distance_words(distance: float | None, about: Context) -> str:
    if distance is None:
        return "not given"
    counts = counted(distance, about)
    half = {(distance,): "", (distance / 2,): ", of which half counts"}.get(counts, ", of which half may count")
    return f"limiting distance {metres(distance, about.customary)}{half}"


def _band(rows: dict[str, Any], distance: float) -> Outcome:
    if judges.at_least(distance, rows["free_from"]):
        return Outcome(Verdict.MEETS, "at this distance no fire resistance or cladding is asked")
    row = next(one for one in rows["bands"] if distance < one["below"])
    return Outcome(
        Verdict.NEEDS_EVIDENCE, f"at this distance it asks for {row['asked']}",
        "supply the listing or test of the wall, with its cladding as drawn",
    )  # fmt: skip


class _Face(NamedTuple):
    """The exposing building face and what is glazed in it; `sure` counts windows, `most` also doors, m2."""

    area: float
    distance: float
    sure: float
    most: float
    single: float  # the largest single glazed opening that is not just a way of escape


def judge_glazed_area(requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, about: Context) -> Finding:
    """Glazed openings of the wall against the table, or against the square of the distance."""
    name = thermal.assembly.name
    inside = [one for one in about.envelope.openings.values() if one.wall == name]
    distance, area = (figure_of(about, name, key) for key in ("distance_to_boundary", "face_area"))
    sure, most = _glazed(inside)
    found = _glazing(requirement, inside, (distance, area, sure, most), about)
    limit = None
    if distance is not None and area is not None:
        limit = min(allowed(requirement, area, one) for one in counted(distance, about))
    return finding(
        requirement, about, found.verdict, assembly=name, reason=found.reason, next_step=found.next_step,
        asked=f"{square_metres(limit, about.customary)} or less" if limit is not None else "by limiting distance and face area",
        given=f"{square_metres(most, about.customary)} of windows and doors; {_distance_words(distance, about)}",
        provided=Measured("area", most), limit=None if limit is None else Measured("area", limit), step="C4" if inside else "",
    )  # fmt: skip


def _glazed(inside: Sequence[Any]) -> tuple[float, float]:
    """Area that is glazed for certain, and at most: a door may be glazed."""
    sure = sum(one.total_area for one in inside if one.kind in ("window", "glass-block"))
    return sure, sure + sum(one.total_area for one in inside if one.kind == "door")


def _glazing(requirement: Requirement, inside: Sequence[Any], sizes: tuple, about: Context) -> Outcome:
    distance, area, sure, most = sizes
    if not about.envelope.openings and absent(about, "openings"):
        return Outcome(Verdict.NOT_ASKED, f"the building has no openings, {STATED}")
    if not about.envelope.openings:
        step = "list the openings of each wall; where there are none, state building.absent: [openings]"
        return Outcome(Verdict.NEEDS_EVIDENCE, "the project lists no openings", step)
    if most == 0:
        return Outcome(Verdict.NOT_ASKED, "no glazed opening is listed in this wall")
    missing = [word for word, value in (("distance_to_boundary", distance), ("face_area", area)) if value is None]
    if missing:
        return Outcome(Verdict.NEEDS_EVIDENCE, f"{listed(missing)} of the wall not given", f"state {listed(missing)}")
    single = max((one.area for one in inside if _counts_alone(one, requirement)), default=0.0)
    found = [_at(requirement, _Face(area, one, sure, most, single), distance, about) for one in counted(distance, about)]
    return agreed(found, _open(about))


def _counts_alone(opening: Any, requirement: Requirement) -> bool:
    escape = getattr(opening.stated, "egress", None) and opening.area <= requirement.rule["egress_area"]
    return opening.kind in ("window", "glass-block") and not escape


def allowed(requirement: Requirement, area: float, distance: float) -> float:
    """Largest glazed area, m2: by the table without drawing lines between its cells, or the square of the distance."""
    table = requirement.rule["by_distance"]
    rows = [row for face, row in table.items() if face == "over" or face >= area]
    shares = [percent for row in rows for at, percent in row.items() if judges.at_least(distance, at)]
    squared = distance**2 if judges.at_least(distance, requirement.rule["squared_from"]) else 0.0
    return max(max(shares, default=0) / 100 * area, squared)


def _at(requirement: Requirement, face: _Face, actual: float, about: Context) -> Outcome:
    limit = allowed(requirement, face.area, face.distance)
    sprinklered = about.answer("building.sprinklered")
    whole = _sum(face, limit, sprinklered)
    near = judges.at_most(actual, requirement.rule["half_up_to"])
    if near and not sprinklered and face.single > limit / 2 * (1 + judges.NOISE):
        words = (
            f"a single opening of more than half of that, at {metres(requirement.rule['half_up_to'], about.customary)} or less"
        )
        return worst([whole, Outcome(Verdict.DOES_NOT_MEET, words, "smaller openings, apart from each other")])
    return whole


def _sum(face: _Face, limit: float, sprinklered: bool | None) -> Outcome:
    if judges.at_most(face.most, limit):
        return Outcome(Verdict.MEETS, "windows and doors together are within the limit")
    if judges.at_most(face.sure, limit):
        return Outcome(
            Verdict.NEEDS_JUDGEMENT, "the windows are within the limit, not with the doors", "answer: are the doors glazed?"
        )
    if sprinklered and judges.at_most(face.sure, 2 * limit):
        return Outcome(
            Verdict.NEEDS_JUDGEMENT, "within twice the limit, which holds where every room along the wall is sprinklered",
            "answer: are all rooms along this wall sprinklered, closets and bathrooms too?",
        )  # fmt: skip
    return Outcome(
        Verdict.DOES_NOT_MEET, "more is glazed than the distance allows", "fewer or smaller openings, or more distance"
    )
