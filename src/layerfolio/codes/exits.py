"""Exits, doors and barrier-free access of other occupancies than dwellings: a question, with what the doors state."""

from typing import Any

from layerfolio.codes.context import Context, value
from layerfolio.codes.findings import Finding, Verdict
from layerfolio.codes.making import finding
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.stated import metres
from layerfolio.codes.wording import listed


def judge_exits(requirement: Requirement, about: Context) -> Finding | None:
    """The question with the doors of the project file; None for the occupancies that it is not asked of."""
    rule = requirement.rule
    if about.occupancy in rule["not_for"]:
        return None
    doors = [one for one in about.envelope.openings.values() if one.kind == "door"]
    lacking = [one.name for one in doors if _clear(one) is None]
    step = (f"state clear_opening.width of {listed(lacking)}; " if lacking else "") + rule["next_step"]
    return finding(
        requirement, about, Verdict.NEEDS_JUDGEMENT, asked=rule["asked"], reason=rule["reason"], next_step=step,
        given="; ".join(_words(one, about) for one in doors) or "no door in the project file",
    )  # fmt: skip


def _clear(door: Any) -> float | None:
    return value(getattr(getattr(door.stated, "clear_opening", None), "width", None))


def _words(door: Any, about: Context) -> str:
    clear = _clear(door)
    shown = "clear width not given" if clear is None else f"{metres(clear, about.customary)} clear"
    return f"{door.name}: {metres(door.width, about.customary)} wide over the frame, {shown}"
