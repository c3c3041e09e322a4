"""Safety glazing by what sizes tell, and falls from windows (IRC R308.4 and R312.2; R324.4 and R321.2 in 2024)."""

from typing import Any

from layerfolio.codes import judges
from layerfolio.codes.context import Context, value
from layerfolio.codes.findings import Finding, Verdict
from layerfolio.codes.making import finding
from layerfolio.codes.outcomes import Outcome
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.stated import documents_for, metres, square_metres
from layerfolio.codes.wording import listed

MARKED = "supply the mark of the glass or its report, to 16 CFR 1201 or ANSI Z97.1"


def judge_safety_glazing(requirement: Requirement, opening: Any, about: Context) -> Finding | None:
    """A door, or a window that is large and low enough; None for others, which only their place can make hazardous."""
    door = opening.kind == "door"
    if getattr(opening.stated, "glazed", None) is False:
        return finding(
            requirement, about, Verdict.NOT_ASKED, reason=f"this {opening.kind} has no glass", asked=requirement.rule["doors"],
            given="no glass (glazed: false)", step="C4",
        ) if door else None  # fmt: skip
    sill = value(getattr(opening.stated, "sill_height", None))
    if not door and not _possible(requirement, opening, sill):
        return None
    found = _glass(opening, sill, about)
    sizes = {key: metres(requirement.figures[key], about.customary) for key in ("bottom", "top")}
    area = square_metres(requirement.figures["pane"], about.customary)
    height = "sill not given" if sill is None else f"sill at {metres(sill, about.customary)}"
    stated = getattr(opening.stated, "safety_glazing", None)
    known = "glass not stated" if stated is None else "safety glazing" if stated else "no safety glazing"
    return finding(
        requirement, about, found.verdict, reason=found.reason, next_step=found.next_step, step="C4",
        asked=requirement.rule["doors"] if door else requirement.rule["windows"].format(area=area, **sizes),
        given=known if door else f"{square_metres(opening.area, about.customary)}, {height}, {known}",
    )  # fmt: skip


def _possible(requirement: Requirement, opening: Any, sill: float | None) -> bool:
    figures = requirement.figures
    if judges.at_most(opening.area, figures["pane"]):
        return False
    if sill is None:
        return True
    return not judges.at_least(sill, figures["bottom"]) and not judges.at_most(sill + opening.height, figures["top"])


def _glass(opening: Any, sill: float | None, about: Context) -> Outcome:
    stated, door = getattr(opening.stated, "safety_glazing", None), opening.kind == "door"
    if stated:
        held = documents_for(about, opening.name, opening.stated)
        if any("safety" in word.lower() for one in held for word in getattr(one, "proves", None) or ()):
            return Outcome(Verdict.MEETS, "a document proves the safety glazing; its mark is seen on site")
        return Outcome(Verdict.NEEDS_EVIDENCE, "no document of the safety glazing is given", MARKED)
    if not door and sill is None:
        return Outcome(Verdict.NEEDS_EVIDENCE, "it turns on the height of its sill", "state sill_height, or safety_glazing")
    if door:
        step = "state that the door has no glass (glazed: false), or safety_glazing"
        return Outcome(Verdict.NEEDS_JUDGEMENT, "it turns on whether the door has glass", step)
    return Outcome(
        Verdict.NEEDS_JUDGEMENT, "by its size it needs safety glazing where people walk beside it",
        "answer: is a walking surface within 3'-0\" of it, without a rail, and is one pane so large?",
    )  # fmt: skip


def judge_window_falls(requirement: Requirement, about: Context) -> Finding:
    """Openable windows by the height of their clear opening above the floor."""
    figures, how = requirement.figures, about.customary
    windows = [one for one in about.envelope.openings.values() if one.kind == "window"]
    moving = [one for one in windows if getattr(one.stated, "operation", None) != "fixed"]
    sills = {one.name: value(getattr(one.stated, "sill_height", None)) for one in moving}
    open_ = [name for name, sill in sills.items() if sill is None]
    low = [name for name, sill in sills.items() if sill is not None and not judges.at_least(sill, figures["sill"])]
    if not about.envelope.openings:
        found = Outcome(Verdict.NEEDS_EVIDENCE, "the project lists no openings", "list the windows with sill_height")
    elif not moving:
        found = Outcome(Verdict.NOT_ASKED, "no openable window is listed")
    elif low:
        height = metres(figures["drop"], how)
        step = f"answer: is {listed(low)} over {height} above the ground outside, and which device stops a fall?"
        found = Outcome(Verdict.NEEDS_JUDGEMENT, f"{listed(low)} opens nearer the floor", step)
    elif open_:
        found = Outcome(Verdict.NEEDS_EVIDENCE, f"sill_height of {listed(open_)} not given", "state sill_height")
    else:
        found = Outcome(Verdict.MEETS, "every openable window opens higher above the floor")
    shown = [f"{name} {'not given' if sill is None else metres(sill, how)}" for name, sill in sills.items()]
    return finding(
        requirement, about, found.verdict, reason=found.reason, next_step=found.next_step, step="C4" if moving else "",
        asked=requirement.rule["asked"].format(sill=metres(figures["sill"], how), drop=metres(figures["drop"], how)),
        given=", ".join(shown) or "no openable window",
    )  # fmt: skip
