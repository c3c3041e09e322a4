"""Vents of roof spaces and the air above their insulation (NBC 9.19.1)."""

from layerfolio.assembly.types import Assembly, Layer
from layerfolio.codes import judges
from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Measured, Verdict
from layerfolio.codes.making import finding
from layerfolio.codes.naming import called
from layerfolio.codes.outcomes import Outcome
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.stated import limit_figure, metres, square_metres
from layerfolio.codes.vents import Vents, vents_of
from layerfolio.codes.wording import listed
from layerfolio.studies.types import ThermalStudy, VapourStudy

UNVENTED = "ask the authority: is venting shown to be unnecessary for this roof (9.19.1.1.(1)), and by what?"


def judge_roof_vents(requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, about: Context) -> Finding:
    """Net free area against the share that slope and kind of roof ask for, a quarter of it high and a quarter low."""
    assembly = thermal.assembly
    vents = vents_of(assembly, about)
    shares = _shares(requirement, assembly)
    found = _outcome(requirement, assembly, vents, shares, about)
    given = "no vents given"
    if vents.low is not None or vents.high is not None:
        given = f"low {_area(vents.low, about)}, high {_area(vents.high, about)}, for {_area(vents.served, about)}"
    return finding(
        requirement, about, found.verdict, assembly=assembly.name, reason=found.reason, next_step=found.next_step,
        asked=_asked(requirement, shares, vents, about), given=given,
    )  # fmt: skip


def _area(value: float | None, about: Context) -> str:
    return "not given" if value is None else square_metres(value, about.customary)


def _shares(requirement: Requirement, assembly: Assembly) -> tuple[int, ...]:
    """The part of the ceiling area that the vents are at least: 1 in 300 or 1 in 150, both where it cannot be told."""
    usual, larger = requirement.figures["usual"], requirement.figures["larger"]
    if assembly.kind == "ceiling":
        return (usual, larger)  # the slope of the roof over an attic is not in the file
    joists = any(x.member and x.member.name.lower() in requirement.rule["joists"] for x in assembly.layers)
    return (larger,) if joists or assembly.slope < requirement.rule["slope_below"] else (usual,)


def _asked(requirement: Requirement, shares: tuple[int, ...], vents: Vents, about: Context) -> str:
    words = " or ".join(f"1/{one}" for one in shares)
    end = requirement.rule["end_share"] * 100
    if vents.served is not None:
        words += f" ({' or '.join(square_metres(vents.served / one, about.customary) for one in shares)})"
    return f"{words} of the insulated ceiling area, {end:.0f} % of what is required high and {end:.0f} % low"


def _outcome(requirement: Requirement, assembly: Assembly, vents: Vents, shares: tuple[int, ...], about: Context) -> Outcome:
    if assembly.kind == "roof" and _air_above(assembly) is None:
        return Outcome(Verdict.NEEDS_JUDGEMENT, "no ventilated space lies outside the insulation", UNVENTED)
    if vents.missing:
        return Outcome(
            Verdict.NEEDS_EVIDENCE, f"{listed(vents.missing)} not given", f"supply the net free areas ({listed(vents.missing)})"
        )  # fmt: skip
    passed = [one for one in shares if not _short(requirement, vents, one)]
    if len(passed) == len(shares):
        return Outcome(Verdict.MEETS, "the stated areas reach what is asked; that they lie on opposite sides is not judged")
    if passed:
        return Outcome(
            Verdict.NEEDS_JUDGEMENT, f"enough for 1/{passed[0]}, not for 1/{shares[-1]}",
            "answer: does the roof over the attic slope 1 in 6 or more, without roof joists?",
        )  # fmt: skip
    return Outcome(
        Verdict.DOES_NOT_MEET, _short(requirement, vents, shares[0]), "larger vents, or " + UNVENTED.removeprefix("ask ")
    )


def _short(requirement: Requirement, vents: Vents, share: int) -> str:
    """What is too small; empty when nothing is."""
    needed = vents.served / share
    if not judges.at_least(vents.low + vents.high, needed):
        return "low and high vents together are too small"
    for name, area in (("high", vents.high), ("low", vents.low)):
        if not judges.at_least(area, requirement.rule["end_share"] * needed):
            return f"the {name} vents are too small"
    return ""


def _air_above(assembly: Assembly) -> Layer | None:
    """The innermost ventilated space outside the insulation."""
    insulation = [one.number for one in assembly.layers if one.insulating and one.counts]
    outer = min(insulation, default=0)
    spaces = [one for one in assembly.layers if one.cavity == "ventilated" and one.number < outer]
    return spaces[-1] if spaces else None


def judge_roof_clearance(requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, about: Context) -> Finding:
    """The air between the insulation and the underside of the sheathing."""
    assembly = thermal.assembly
    least, source = limit_figure(requirement, about)
    space = _air_above(assembly)
    size = space.thickness.value if space is not None and space.thickness else None
    if assembly.kind == "ceiling":
        found = Outcome(
            Verdict.NEEDS_EVIDENCE, "the air over the insulation of an attic is seen at the eave",
            "supply the detail at the eave, with baffles that leave 25 mm where insulation meets the roof",
        )  # fmt: skip
    elif space is None:
        found = Outcome(Verdict.NEEDS_JUDGEMENT, "no ventilated space lies outside the insulation", UNVENTED)
    elif size is None:
        found = Outcome(Verdict.NEEDS_EVIDENCE, f"{called(space)} states no depth", f"state the depth of {called(space)}")
    elif judges.at_least(size, least):
        found = Outcome(Verdict.MEETS, "the depth of the ventilated space reaches it")
    else:
        found = Outcome(
            Verdict.DOES_NOT_MEET, "the ventilated space is too shallow", "a deeper space, or " + UNVENTED.removeprefix("ask ")
        )
    return finding(
        requirement, about, found.verdict, assembly=assembly.name, reason=found.reason, next_step=found.next_step, amended=source,
        asked=f"{metres(least, about.customary)} or more between the insulation and the underside of the sheathing",
        given="not in the project file" if size is None else f"{called(space)}, {metres(size, about.customary)}",
        provided=None if size is None else Measured("d", size), limit=Measured("d", least),
    )  # fmt: skip
