"""Rain on walls: whether a capillary break is asked and there, and how far cladding stays above ground and roofs."""

from layerfolio.assembly.types import Layer
from layerfolio.codes import judges
from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Measured, Verdict
from layerfolio.codes.making import finding
from layerfolio.codes.naming import called
from layerfolio.codes.outcomes import Outcome
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.site_figures import degree_days
from layerfolio.codes.stated import figure_of, limit_figure, metres
from layerfolio.studies.types import ThermalStudy, VapourStudy


def judge_capillary_break(requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, about: Context) -> Finding:
    """Asked by degree-days and moisture index; a vented space of the depth is one, whether it is asked or not."""
    assembly = thermal.assembly
    depth, source = limit_figure(requirement, about)
    space = next((one for one in assembly.layers if one.cavity == "ventilated"), None)
    found = _break(requirement, space, depth, about)
    size = space.thickness.value if space is not None and space.thickness else None
    return finding(
        requirement, about, found.verdict, assembly=assembly.name, reason=found.reason, next_step=found.next_step,
        asked=f"a vented and drained space of {metres(depth, about.customary)} or more, furring on "
        f"{requirement.rule['furring_at_most'] * 100:.0f} % of the area at most{_where(requirement, about)}",
        given=_space_words(space, about), amended=source,
        provided=None if size is None else Measured("d", size), limit=Measured("d", depth),
    )  # fmt: skip


def asked_by_place(requirement: Requirement, about: Context) -> bool | None:
    """Whether the place asks for a capillary break; None while degree-days or moisture index are missing."""
    index, days = about.answer("climate.moisture_index"), about.degree_days
    cold, always = requirement.rule["places"]
    if index is None:
        return None
    if index > always["moisture_index_over"]:
        return True
    if index <= cold["moisture_index_over"]:
        return False
    return None if days is None else days < cold["degree_days_below"]


def _where(requirement: Requirement, about: Context) -> str:
    index = about.answer("climate.moisture_index")
    if index is None:
        return ""
    days = "degree-days not given" if about.degree_days is None else degree_days(about.degree_days, about.customary)
    said = {True: "asked here", False: "not asked here", None: "whether it is asked is open"}[asked_by_place(requirement, about)]
    return f"; {said}: moisture index {index:g}, {days}"


def _space_words(space: Layer | None, about: Context) -> str:
    if space is None:
        return "no ventilated space"
    size = metres(space.thickness.value, about.customary) if space.thickness else "of no stated depth"
    share = f", furring {space.member.share.value * 100:.0f} % of the area" if space.member else ""
    return f"{called(space)}, {size}{share}"


def _break(requirement: Requirement, space: Layer | None, depth: float, about: Context) -> Outcome:
    asked = asked_by_place(requirement, about)
    wrong = _wrong(requirement, space, depth, about)
    if not wrong:
        return Outcome(Verdict.MEETS, "the space is there, whether the place asks for one or not")
    if asked is False:
        return Outcome(Verdict.NOT_ASKED, f"{wrong}; the place does not ask for a capillary break")
    if asked is None:
        step = "state climate.moisture_index and climate.heating_degree_days"
        return Outcome(Verdict.NEEDS_EVIDENCE, f"{wrong}; whether the place asks for a capillary break is not known", step)
    return Outcome(
        Verdict.DOES_NOT_MEET, f"{wrong}; the place asks for a capillary break",
        "a ventilated space behind the cladding, or show that leaving it out does no harm",
    )  # fmt: skip


def _wrong(requirement: Requirement, space: Layer | None, depth: float, about: Context) -> str:
    if space is None:
        return "no layer is a ventilated space"
    if space.thickness is None or not judges.at_least(space.thickness.value, depth):
        return f"the space is less than {metres(depth, about.customary)} deep"
    most = requirement.rule["furring_at_most"]
    if space.member is not None and not judges.at_most(space.member.share.value, most):
        return f"its furring takes more than {most * 100:.0f} % of the area"
    return ""


def judge_clearance(requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, about: Context) -> Finding:
    """How far cladding that moisture harms stays above the ground, or above a roof."""
    assembly, rule = thermal.assembly, requirement.rule
    least, source = limit_figure(requirement, about)
    value = figure_of(about, assembly.name, rule["answer"])
    outer = assembly.layers[0]
    if outer.family not in rule["sensitive"]:
        found = Outcome(Verdict.NOT_ASKED, f"{called(outer)} is not counted among cladding that moisture harms")
    elif value is None:
        found = Outcome(
            Verdict.NEEDS_EVIDENCE, f"{rule['answer']} (project file) is not given",
            f"state {rule['answer']}{rule.get('open_words', '')}",
        )  # fmt: skip
    elif judges.at_least(value, least):
        found = Outcome(Verdict.MEETS, "the distance is kept")
    else:
        found = Outcome(
            Verdict(rule.get("below", "does not meet")), rule.get("below_reason", "the distance is too small"),
            rule.get("below_step", "raise the cladding, or use one that moisture does not harm"),
        )  # fmt: skip
    return finding(
        requirement, about, found.verdict, assembly=assembly.name, reason=found.reason, next_step=found.next_step,
        asked=f"{metres(least, about.customary)} or more", amended=source,
        given="not given" if value is None else metres(value, about.customary),
        provided=None if value is None else Measured("d", value), limit=Measured("d", least),
    )  # fmt: skip
