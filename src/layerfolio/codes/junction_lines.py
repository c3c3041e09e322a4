"""Where parts meet: whether each control passes, as the details draw it. One line for a control, one for each junction where
one stops.

A drawing shows how a junction is meant, never how it is built: nothing here meets.
"""

from collections.abc import Iterator, Sequence

from layerfolio.assembly.junction_types import Junction, Link
from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Verdict
from layerfolio.codes.making import finding
from layerfolio.codes.requirements import Requirement, requirements
from layerfolio.codes.wording import listed

CONTROLS = {"A": "air control", "V": "vapour control", "W": "water control", "T": "thermal control"}
JUDGE = "control_line"


def judge_control_line(requirement: Requirement, about: Context) -> Finding | None:
    """The line of one control through the whole building; None where the set has no such line or nothing carries the control.

    A set that asks for the details whatever is drawn (`without`) always has its line.
    """
    rule = requirement.rule | requirement.figures
    letter = rule.get("letter", "")
    met = [(one, link) for one in about.envelope.junctions for link in one.links if link.letter == letter]
    if not rule.get("line", True) or not (met or "without" in rule):
        return None
    if not met:
        return finding(
            requirement, about, Verdict.NEEDS_EVIDENCE, asked=rule["asked"], given="no junction is drawn with it",
            reason=f"no layer of parts that meet carries {CONTROLS[letter]}", next_step=rule["without"],
        )  # fmt: skip
    passed, stopped = ([one.number for one, link in met if bool(link.broken) is state] for state in (False, True))
    every = sheets([one.number for one, _ in met])
    given = f"{CONTROLS[letter]} passes {_count(len(passed))} ({sheets(passed)})" if passed else ""
    stops = f"it stops at {sheets(stopped)}" if passed else f"{CONTROLS[letter]} stops at {sheets(stopped)}"
    reason = rule.get("reason", "drawn on {sheets}; what is built there is seen on site").format(sheets=every)
    if stopped:
        reason += "; where it stops has its own line"
    return finding(
        requirement, about, Verdict(rule["verdict"]), asked=rule["asked"],
        given="; ".join(filter(None, (given, stops if stopped else ""))), reason=reason,
        next_step=rule["next_step"].format(sheets=every),
    )  # fmt: skip


def judge_junctions(about: Context) -> Iterator[tuple[Finding, Requirement]]:
    """A line for each junction that a control does not pass, or whose parts cannot meet."""
    lines = [one for one in requirements(about.edition.set_id) if one.judge == JUDGE]
    for junction in about.envelope.junctions if lines else ():
        if junction.cannot:
            yield _impossible(junction, lines[0], about), lines[0]
        elif junction.broken:
            requirement = _line_for(junction.broken, lines)
            yield _stopped(junction, requirement, about), requirement


def _line_for(broken: Sequence[Link], lines: list[Requirement]) -> Requirement:
    """The set's line on the first control that stops there; its first line where it has none of its own."""
    letters = [letter for letter in CONTROLS if any(one.letter == letter for one in broken)]
    found = (one for letter in letters for one in lines if one.rule.get("letter") == letter)
    return next(found, lines[0])


def _stopped(junction: Junction, requirement: Requirement, about: Context) -> Finding:
    said = [f"{CONTROLS[one.letter]} stops: {one.broken}" for one in junction.broken]
    return finding(
        requirement, about, Verdict.NEEDS_JUDGEMENT, assembly=subject(junction), asked=requirement.rule["asked"],
        given=f"{junction.title}, {'as stated' if junction.stated else 'derived'}", step=f"D{junction.number}",
        reason="; ".join(said), next_step=_next(junction.broken),
    )  # fmt: skip


def _next(broken: Sequence[Link]) -> str:
    missing = [CONTROLS[one.letter] for one in broken if one.letter != "T" or not (one.start and one.end)]
    steps = []
    if missing:
        steps.append(f"name the layer that serves {listed(missing)} on that side, or say why none is needed there")
    if len(missing) < len(broken):
        steps.append("close the gap in the insulation, or ask the authority: is it accepted as drawn?")
    return "; ".join(steps)


def _impossible(junction: Junction, requirement: Requirement, about: Context) -> Finding:
    return finding(
        requirement, about, Verdict.NEEDS_JUDGEMENT, assembly=subject(junction), asked=requirement.rule["asked"],
        given=junction.title, reason=f"the parts cannot be drawn as meeting: {junction.cannot}",
        next_step=f"correct {junction.path or 'the join'}; supply the detail where it is meant",
    )  # fmt: skip


def subject(junction: Junction) -> str:
    """How a finding names a junction: "sill W1/S1"."""
    return f"{junction.kind} {'/'.join(junction.of)}"


def sheets(numbers: Sequence[int]) -> str:
    """Detail sheets in a sentence: "D1 to D4 and D7"."""
    runs: list[list[int]] = []
    for one in sorted(dict.fromkeys(numbers)):
        if runs and one == runs[-1][-1] + 1:
            runs[-1].append(one)
        else:
            runs.append([one])
    shown = [[f"D{run[0]} to D{run[-1]}"] if len(run) > 2 else [f"D{one}" for one in run] for run in runs]
    return listed([word for run in shown for word in run])


def _count(number: int) -> str:
    return "1 junction" if number == 1 else f"{number} junctions"
