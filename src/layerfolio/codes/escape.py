"""Ways of escape from bedrooms (NBC 9.9.10.1, IRC R310): the clear opening of each, and one for each bedroom."""

from typing import Any

from layerfolio.codes import judges
from layerfolio.codes.context import Context, value
from layerfolio.codes.findings import Finding, Measured, Verdict
from layerfolio.codes.making import finding
from layerfolio.codes.outcomes import Outcome, worst
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.stated import metres, square_metres
from layerfolio.codes.wording import listed

NOT_NEEDED = Outcome(Verdict.NOT_ASKED, "none is asked where the suite is sprinklered (building.sprinklered)")


def clear_opening(opening: Any) -> tuple[float | None, float | None, float | None]:
    """Clear width, height (m) and area (m2) as stated; the area of width by height where it is not stated."""
    stated = getattr(opening.stated, "clear_opening", None)
    width, height, area = (value(getattr(stated, key, None)) for key in ("width", "height", "area"))
    if area is None and width is not None and height is not None:
        area = width * height
    return width, height, area


def judge_egress(requirement: Requirement, opening: Any, about: Context) -> Finding | None:
    """The clear opening of one that is stated to be a way of escape; None for others."""
    if not getattr(opening.stated, "egress", None):
        return None
    width, height, area = clear_opening(opening)
    found = worst([_clear(requirement, width, height, area, about), *_sill(requirement, opening)])
    least, how, sill = requirement.figures["area"], about.customary, value(getattr(opening.stated, "sill_height", None))
    shown = [f"{metres(one, how)} {word}" for one, word in ((width, "wide"), (height, "high")) if one is not None]
    shown += [f"{square_metres(area, how)} clear"] if area is not None else []
    shown += [f"sill at {metres(sill, how)}"] if sill is not None and "sill" in requirement.figures else []
    return finding(
        requirement, about, found.verdict, reason=found.reason, next_step=found.next_step, step="C4",
        asked=f"{square_metres(least, how)} clear or more, {_sides(requirement, how)}",
        given=", ".join(shown) or "clear opening not given",
        provided=None if area is None else Measured("area", area), limit=Measured("area", least),
    )  # fmt: skip


def _least(requirement: Requirement, side: str) -> float:
    return requirement.figures.get(side, requirement.figures.get("dimension"))


def _sides(requirement: Requirement, customary: bool) -> str:
    figures = requirement.figures
    if "dimension" in figures:
        return f"no side less than {metres(figures['dimension'], customary)}"
    wide, high, sill = (metres(figures[key], customary) for key in ("width", "height", "sill"))
    return f"{wide} wide, {high} high or more, its bottom {sill} above the floor at most"


def _sill(requirement: Requirement, opening: Any) -> list[Outcome]:
    """How high the bottom of the clear opening of a window is, where the set asks."""
    if "sill" not in requirement.figures or opening.kind == "door":
        return []
    sill = value(getattr(opening.stated, "sill_height", None))
    if sill is None:
        return [Outcome(Verdict.NEEDS_EVIDENCE, "sill_height not given", "state sill_height")]
    if judges.at_most(sill, requirement.figures["sill"]):
        return [Outcome(Verdict.MEETS, "")]
    return [Outcome(Verdict.DOES_NOT_MEET, "its sill is too high above the floor", "a lower sill, or a raised floor in front")]


def _clear(requirement: Requirement, width: float | None, height: float | None, area: float | None, about: Context) -> Outcome:
    if requirement.rule.get("sprinklered_free") and about.answer("building.sprinklered"):
        return NOT_NEEDED
    missing = [f"clear_opening.{key}" for key, one in (("width", width), ("height", height)) if one is None]
    small = [
        word for word, one in (("width", width), ("height", height))
        if one is not None and not judges.at_least(one, _least(requirement, word))
    ]  # fmt: skip
    if small:
        return Outcome(
            Verdict.DOES_NOT_MEET, f"the clear {listed(small)} is too small", "a larger opening, or another way it opens"
        )
    if missing:
        return Outcome(Verdict.NEEDS_EVIDENCE, f"{listed(missing)} not given", f"state {listed(missing)}, measured with it open")
    if not judges.at_least(area, requirement.figures["area"]):
        grade = requirement.figures.get("area_at_grade")
        if grade is not None and judges.at_least(area, grade):
            step = f"answer: is it of the storey at grade, where {square_metres(grade, about.customary)} are enough?"
            return Outcome(Verdict.NEEDS_JUDGEMENT, "the clear area is enough for the storey at grade alone", step)
        return Outcome(Verdict.DOES_NOT_MEET, "the clear area is too small", "a larger opening, or another way it opens")
    return Outcome(Verdict.MEETS, "the stated clear opening reaches it; that it opens without keys or tools is seen on site")


def judge_bedrooms(requirement: Requirement, about: Context) -> Finding:
    """One way of escape for each bedroom."""
    count = about.answer("building.bedrooms")
    named = [one for one in about.envelope.openings.values() if getattr(one.stated, "egress", None)]
    ways = sum(one.count for one in named)
    if requirement.rule.get("sprinklered_free") and about.answer("building.sprinklered"):
        found = NOT_NEEDED
    elif count is None:
        found = Outcome(Verdict.NEEDS_EVIDENCE, "building.bedrooms (project file) is not given", "state building.bedrooms")
    elif ways >= count:
        found = Outcome(
            Verdict.NEEDS_EVIDENCE, "as many ways of escape are named as there are bedrooms; which room has which is not shown",
            "supply the floor plan with the way of escape of each bedroom",
        )  # fmt: skip
    else:
        found = Outcome(
            Verdict.NEEDS_EVIDENCE, f"{ways} ways of escape are named for {count} bedrooms",
            "name the window or door of each bedroom (egress: true)",
        )  # fmt: skip
    names = f": {listed([one.name for one in named])}" if named else ""
    return finding(
        requirement, about, found.verdict, reason=found.reason, next_step=found.next_step,
        asked=requirement.rule["asked"],
        given=f"{'bedrooms not given' if count is None else f'{count} bedrooms'}, {ways} ways of escape named{names}",
    )  # fmt: skip
