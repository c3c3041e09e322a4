"""A tight retarder inside with foam boards or a second tight layer outside (IRC R702.7, notes b and c)."""

from layerfolio.codes.climate_zones import named
from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Measured, Verdict
from layerfolio.codes.frame_wall import FrameWall, asked_outside, enough_outside, frame_wall, has_row, total
from layerfolio.codes.inputs import FROM_MEMORY
from layerfolio.codes.making import finding
from layerfolio.codes.naming import called as layer_called
from layerfolio.codes.outcomes import Outcome, by_zone, worst
from layerfolio.codes.permeances import cups, own, report
from layerfolio.codes.requirements import Requirement, requirements
from layerfolio.codes.retarder_class import PERM, Classed, class_words, classed, opens
from layerfolio.codes.retarders import NO_RETARDER, TEST
from layerfolio.codes.wording import figure, listed
from layerfolio.studies.types import LayerVapour, ThermalStudy, VapourStudy


def _class(row: LayerVapour, context: Context) -> Classed:
    """The class by the rules of the set's own requirement on retarders."""
    rule = next(x for x in requirements(context.edition.set_id) if x.question == "vapour-retarder")
    return classed(row, rule.rule, rule.figures, context)


def judge_retarder_with_foam(
    requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, context: Context
) -> Finding:
    """Enough insulation outside a tight retarder, and a retarder that opens by the wet cup."""
    wall, control = frame_wall(thermal), vapour.control
    foam = [layer_called(one.layer) for one in wall.outside if one.layer.family in requirement.rule["foam"]]
    outcome = by_zone({zone: _with_foam(requirement, wall, foam, control, zone, context) for zone in context.zones})
    given = f"{listed(foam) or 'no foam board'} outside; {_retarder_words(control, context)}"
    provided, limit = _measured(requirement, wall, context) if outcome.verdict != Verdict.NOT_ASKED else (None, None)
    return finding(
        requirement, context, outcome.verdict, assembly=vapour.assembly.name, given=given, provided=provided,
        limit=limit, asked=_asked_with_foam(requirement, context), reason=outcome.reason,
        next_step=outcome.next_step, step=f"{vapour.assembly.name}-V",
        amended=context.amended[requirement.id].source if requirement.id in context.amended else "",
    )  # fmt: skip


def _measured(requirement: Requirement, wall: FrameWall, context: Context) -> tuple[Measured, Measured]:
    """The insulation outside, and the most that a zone which may be meant asks of it."""
    zones = [zone for zone in context.zones if has_row(requirement.figures["insulation"], zone)]
    limit = max(asked_outside(requirement, zone, wall, context)[1] for zone in zones)
    return Measured("R_eff", total(wall.outside)[0]), Measured("R_eff", limit)


def _retarder_words(control: LayerVapour | None, context: Context) -> str:
    return f"{layer_called(control.layer)} {cups(control, context.customary, context.both)}" if control else NO_RETARDER


def _asked_with_foam(requirement: Requirement, context: Context) -> str:
    rule = requirement.figures["wet_cup"]
    edge = "more than" if "over" in rule else "at least"
    limit = figure("W", PERM, customary=context.customary, both=context.both)
    classes = " or ".join(requirement.figures["classes"])
    return f"with a Class {classes} retarder: continuous insulation by the table, and {edge} {limit} by the wet cup"


def _with_foam(
    requirement: Requirement, wall: FrameWall, foam: list[str], control: LayerVapour | None, zone: str, context: Context
) -> Outcome:
    asked = requirement.figures["classes"]
    if not foam:
        return Outcome(Verdict.NOT_ASKED, "no foam board lies outside the framing as continuous insulation")
    if control is None:
        return Outcome(Verdict.NOT_ASKED, NO_RETARDER)
    found = _class(control, context)
    if not set(found.classes) & set(asked):
        return Outcome(Verdict.NOT_ASKED, f"the retarder is {class_words(found.classes[0])}")
    if not has_row(requirement.figures["insulation"], zone):
        return Outcome(Verdict.NOT_ASKED, "the table has no row for this zone")
    outcome = worst((enough_outside(requirement, zone, wall, context), _opens_wet(requirement, control, context)))
    if len(found.classes) > 1 and outcome.verdict is Verdict.DOES_NOT_MEET:
        reason = f"{found.doubt}; if it is of that class: {outcome.reason}"
        return Outcome(Verdict.NEEDS_EVIDENCE, reason, f"supply {TEST}")
    return outcome


def _opens_wet(requirement: Requirement, control: LayerVapour, context: Context) -> Outcome:
    wet = control.permeance_wet
    if wet is None:
        reason = f"no wet-cup permeance is given for {layer_called(control.layer)}"
        return Outcome(Verdict.NEEDS_EVIDENCE, reason, f"supply {TEST}")
    datum = control.layer.vapour.wet
    shown = figure("W", wet, customary=context.customary, both=context.both)
    if own(datum.origin) and report(control.layer, datum, context.date)[0] is None:
        reason = f"the wet-cup figure of {layer_called(control.layer)} ({shown}) is the project's own and no report proves it"
        return Outcome(Verdict.NEEDS_EVIDENCE, reason, f"supply {TEST}")
    if not opens(wet, requirement.figures["wet_cup"]):
        edge = "is not more than" if "over" in requirement.figures["wet_cup"] else "is less than"
        reason = f"the wet-cup permeance of {layer_called(control.layer)}, {shown}, {edge} 1.0 US perm"
        return Outcome(Verdict.DOES_NOT_MEET, reason, "a retarder that opens by the wet cup")
    if datum.origin.mark == FROM_MEMORY:
        reason = f"the wet-cup figure of {layer_called(control.layer)} ({shown}) rests on memory"
        return Outcome(Verdict.NEEDS_EVIDENCE, reason, f"supply {TEST}")
    return Outcome(Verdict.MEETS, f"{layer_called(control.layer)} opens by the wet cup: {shown}")


def judge_both_faces(requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, context: Context) -> Finding:
    """Class I on both faces is left to a design that the authority accepts."""
    control = vapour.control
    outer = _outer(vapour, context)
    outcome = by_zone({zone: _both(requirement, control, outer, zone, context) for zone in context.zones})
    names = listed([layer_called(row.layer) for row, _ in outer])
    given = f"{_retarder_words(control, context)}; {names or 'no layer that may be Class I'} outside the insulation"
    return finding(
        requirement, context, outcome.verdict, assembly=vapour.assembly.name,
        asked="no Class I retarder inside together with Class I outside, unless by an accepted design", given=given,
        reason=outcome.reason, next_step=outcome.next_step, step=f"{vapour.assembly.name}-V",
    )  # fmt: skip


def _outer(vapour: VapourStudy, context: Context) -> list[tuple[LayerVapour, Classed]]:
    """Layers outside the main insulation, and this itself, that are or may be Class I, with their classes."""
    main = vapour.main_insulation
    number = vapour.assembly.layer(main).number if main else 0
    found = [
        (row, _class(row, context)) for row in vapour.layers if row.layer.number <= number and row is not vapour.control
    ]
    sure = [(row, one) for row, one in found if one.classes == ("I",)]
    return sure or [(row, one) for row, one in found if one.classes[0] == "I" or row.permeance_dry is None]


def _both(requirement: Requirement, control: LayerVapour | None, outer: list, zone: str, context: Context) -> Outcome:
    figures = requirement.figures
    if control is None:
        return Outcome(Verdict.NOT_ASKED, NO_RETARDER)
    if zone not in figures["zones"] and not named(zone, figures["zones"]):
        return Outcome(Verdict.NOT_ASKED, "the note does not stand on the cell of this zone")
    found = _class(control, context)
    if "I" not in found.classes or (len(found.classes) > 1 and found.classes[0] not in ("I", "")):
        return Outcome(Verdict.NOT_ASKED, f"the retarder inside is {class_words(found.classes[0])}")
    if figures["unless_responsive"] and found.responsive == (True,):
        return Outcome(Verdict.NOT_ASKED, "the retarder inside opens by the wet cup")
    if not outer:
        return Outcome(Verdict.MEETS, "no layer outside the insulation is Class I by its figure")
    names = listed([layer_called(row.layer) for row, _ in outer])
    if any(len(one.classes) > 1 for _, one in outer) or len(found.classes) > 1:
        reason = f"whether {names} outside is Class I too is not proved"
        return Outcome(Verdict.NEEDS_EVIDENCE, reason, f"supply {TEST}")
    return Outcome(
        Verdict.NEEDS_JUDGEMENT, f"Class I inside and outside ({names}): the wall dries to neither face",
        "show it by a hygrothermal analysis, and ask the authority whether that design is accepted",
    )  # fmt: skip
