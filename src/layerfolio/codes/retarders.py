"""The vapour retarder inside a frame wall, by class and climate zone (IRC R702.7)."""

from dataclasses import dataclass

from layerfolio.codes.class_iii import class_iii, vented_cladding
from layerfolio.codes.climate_zones import cell, named
from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Measured, Verdict
from layerfolio.codes.frame_wall import FrameWall, frame_wall
from layerfolio.codes.making import finding
from layerfolio.codes.naming import called
from layerfolio.codes.outcomes import Outcome, agreed, by_zone, grouped
from layerfolio.codes.requirements import Requirement, requirements
from layerfolio.codes.retarder_class import PERM, Classed, class_of, class_words, classed, given_words
from layerfolio.codes.without_retarder import without_retarder
from layerfolio.codes.wording import figure, listed
from layerfolio.studies.types import LayerVapour, ThermalStudy, VapourStudy

NO_RETARDER = "no layer is stated to serve vapour control"
TEST = "the test report of the product, dry and wet cup, with its number and date"


@dataclass(frozen=True, slots=True)
class Case:
    """One wall and the requirement on its retarder."""

    requirement: Requirement
    wall: FrameWall
    vapour: VapourStudy
    context: Context

    def other(self, question: str) -> Requirement | None:
        """A requirement of the same set by its question; None where the edition has none."""
        return next((x for x in requirements(self.context.edition.set_id) if x.question == question), None)


def judge_vapour_retarder(
    requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, context: Context
) -> Finding:
    """The class of the control layer, against what its zone permits."""
    case = Case(requirement, frame_wall(thermal), vapour, context)
    amended = context.amended.get(requirement.id)
    control = vapour.control
    found = classed(control, requirement.rule, requirement.figures, context) if control else None
    by_class = {zone: _in_zone(case, found, zone) for zone in context.zones}
    outcome = _framing(case, _amended(case, amended) if amended else by_zone(by_class))
    value = control.permeance_dry if control else None
    limit = float(amended.value) if amended else _limit(case, outcome)
    before = _before(case)
    return finding(
        requirement, context, outcome.verdict, assembly=vapour.assembly.name,
        asked="; ".join(filter(None, (_asked(case, amended), before))),
        given=given_words(control, found, context) if control and found else NO_RETARDER,
        provided=None if value is None else Measured("W", value), limit=None if limit is None else Measured("W", limit),
        reason="; ".join(filter(None, (outcome.reason, before if outcome.verdict is Verdict.MEETS else ""))),
        next_step=outcome.next_step, amended=amended.source if amended else "", step=f"{vapour.assembly.name}-V",
    )  # fmt: skip


def _in_zone(case: Case, found: Classed | None, zone: str) -> Outcome:
    """What the zone makes of every class and every opening that the layer may have."""
    permitted = cell(case.requirement.figures["permitted"], zone)
    if permitted == "not asked":
        return Outcome(Verdict.NOT_ASKED, "no vapour retarder is asked in this zone")
    if found is None:
        return _no_layer(case, zone)
    outcomes = [
        _permitted(case, name, opening, permitted, zone) for name in found.classes for opening in found.responsive
    ]
    doubt = found.doubt or "that it opens by the wet cup is not proved"
    open_yet = Outcome(Verdict.NEEDS_EVIDENCE, f"{doubt}; by its figure {outcomes[0].reason}", f"supply {TEST}")
    settled = agreed(outcomes, open_yet)
    if settled is open_yet or not found.backing:
        return settled
    return Outcome(settled.verdict, f"{settled.reason}; the class rests on {found.backing}", settled.next_step)


def _permitted(case: Case, name: str, opening: bool, permitted: dict, zone: str) -> Outcome:
    figures = case.requirement.figures
    if not name:
        if named(zone, figures.get("not_required", [])):
            return Outcome(Verdict.MEETS, "no vapour retarder is required in this zone, and this is none")
        limit = figure("W", 10 * PERM, customary=case.context.customary, both=case.context.both)
        reason = f"the layer is no vapour retarder: Class III ends at {limit}"
        return Outcome(Verdict.DOES_NOT_MEET, reason, _otherwise(case, zone))
    if opening and name in ("I", "II"):
        return Outcome(Verdict.MEETS, f"Class {name} that opens by the wet cup is permitted in every zone")
    if permitted[name] == "table":
        conditions = case.other("class-iii-conditions")
        found = class_iii(conditions, case.wall, case.vapour, zone, case.context)
        if found.verdict is Verdict.DOES_NOT_MEET:
            return Outcome(found.verdict, found.reason, figures["otherwise"])
        return found
    if permitted[name] == "yes":
        return Outcome(Verdict.MEETS, f"{class_words(name)} is permitted in this zone")
    reason = f"{class_words(name)} is not permitted inside in this zone"
    return Outcome(Verdict.DOES_NOT_MEET, reason, figures["otherwise"])


def _no_layer(case: Case, zone: str) -> Outcome:
    """Without a control layer: not required, insulation in its place, a layer that could do, or a plain no."""
    figures = case.requirement.figures
    if named(zone, figures.get("not_required", [])):
        return Outcome(Verdict.NOT_ASKED, "no vapour retarder is required in this zone")
    table = case.other("insulation-without-retarder")
    instead = without_retarder(table, case.wall, case.vapour, zone, case.context)
    if instead is not None and instead.verdict is not Verdict.DOES_NOT_MEET:
        return instead
    insulation = [one for one in case.wall.inside if one.layer.insulating]
    main = max(insulation, key=lambda one: one.resistance or 0.0, default=None)
    inside = [row for row in case.vapour.layers if main is None or row.layer.number >= main.layer.number]
    between = _soft_between_framing(case)
    inside = [row for row in inside if row.layer.number not in between]
    classes = case.requirement.rule["classes"]
    could = [
        f"{row.layer.title} (layer {row.layer.number}, {class_words(name)})" for row in inside
        if row.permeance_dry is not None and (name := class_of(row.permeance_dry, classes))
    ]  # fmt: skip
    if could:
        reason = f"no layer serves vapour control; by its figure {listed(could)} could"
        return Outcome(Verdict.NEEDS_JUDGEMENT, reason, "name the vapour retarder (serves: [vapour control])")
    if any(row.permeance_dry is None for row in inside):
        reason = "no layer serves vapour control, and not every permeance is known"
        return Outcome(Verdict.NEEDS_EVIDENCE, reason, f"supply {TEST}")
    also = f"; {instead.reason}" if instead else ""
    also += _tightest(inside, case.context)
    reason = f"no layer serves vapour control, and none inside the insulation is a retarder by its figure{also}"
    return Outcome(Verdict.DOES_NOT_MEET, reason, _otherwise(case, zone))


def _tightest(inside: list[LayerVapour], context: Context) -> str:
    """The layer inside that comes nearest, with its figure; empty where none has one."""
    known = [row for row in inside if row.permeance_dry is not None and row.layer.kind != "cavity" and not row.layer.insulating]
    if not known:
        return ""
    least = min(known, key=lambda row: row.permeance_dry)
    shown = figure("W", least.permeance_dry, customary=context.customary, both=context.both)
    return f"; the tightest, {called(least.layer)}, lets {shown} through by the dry cup"


def _otherwise(case: Case, zone: str) -> str:
    """What else would do: a Class III finish first, where the cladding of this wall is what the table asks beside it."""
    plain = case.requirement.figures["otherwise"]
    if cell(case.requirement.figures["permitted"], zone)["III"] != "table":
        return plain
    rule = case.other("class-iii-conditions")
    found = vented_cladding(rule, case.vapour.assembly, zone)
    if found.verdict is Verdict.DOES_NOT_MEET:
        return plain
    most = figure("W", case.requirement.rule["classes"]["III"] * PERM, customary=case.context.customary, both=case.context.both)
    over = "" if found.verdict is Verdict.MEETS else ", if the authority accepts the cladding as vented"
    return f"a finish of {most} or less inside, as Class III with the vented cladding ({rule.figures['table']}){over}; or {plain}"


STRAW = "straw"


def _before(case: Case) -> str:
    """On a wall of bales: which appendix may stand before this section, where it is adopted."""
    appendix = case.other("strawbale-vapour")
    if appendix is None or not any(one.family == STRAW for one in case.vapour.assembly.layers):
        return ""
    return f"where it is adopted the strawbale appendix may stand before this section: see {appendix.clause}"


def _soft_between_framing(case: Case) -> set[int]:
    """Numbers of layers between the framing, foam apart: batts and bales are not on the inside of the frame."""
    foam = case.other("class-iii-conditions").rule["spray_foam"]["families"]
    return {one.layer.number for one in case.wall.framed if one.layer.family not in foam}


def _framing(case: Case, outcome: Outcome) -> Outcome:
    """The section is on frame walls: without any framing in the file a failure waits for that answer."""
    if case.wall.framed or outcome.verdict is not Verdict.DOES_NOT_MEET:
        return outcome
    reason = f"no framing is stated in this wall; as a frame wall: {outcome.reason}"
    return Outcome(Verdict.NEEDS_JUDGEMENT, reason, "state the framing, or ask whether R702.7 speaks of this wall")


def _amended(case: Case, amended) -> Outcome:
    control, limit = case.vapour.control, float(amended.value)
    if control is None:
        return Outcome(Verdict.DOES_NOT_MEET, "no layer serves vapour control", case.requirement.figures["otherwise"])
    found = classed(control, {"classes": {"as amended": limit / PERM}}, {}, case.context)
    if found.classes == ("as amended",):
        return Outcome(Verdict.MEETS, f"the permeance is within the amended limit; it rests on {found.backing}")
    if found.classes == ("",):
        return Outcome(Verdict.DOES_NOT_MEET, "the permeance is above the amended limit", "a tighter layer")
    return Outcome(Verdict.NEEDS_EVIDENCE, found.doubt, f"supply {TEST}")


def _limit(case: Case, outcome: Outcome) -> float | None:
    """The permeance that ends the most open class permitted; None where none is asked."""
    if outcome.verdict is Verdict.NOT_ASKED:
        return None
    tables = [cell(case.requirement.figures["permitted"], zone) for zone in case.context.zones]
    classes, control = case.requirement.rule["classes"], case.vapour.control
    third = all(isinstance(one, dict) and one["III"] == "yes" for one in tables)
    if not third and control is not None and control.permeance_dry is not None:
        third = outcome.verdict is Verdict.MEETS and class_of(control.permeance_dry, classes) == "III"
    return classes["III" if third else "II"] * PERM


def _asked(case: Case, amended) -> str:
    if amended:
        context = case.context
        return f"{figure('W', float(amended.value), customary=context.customary, both=context.both)} or less, dry cup"
    rows = {zone: _class_row(case, zone) for zone in case.context.zones}
    where = f", zone {case.context.zone_words}" if case.context.zone_words and len(set(rows.values())) == 1 else ""
    return f"{grouped(rows)}{where}; by the dry cup"


def _class_row(case: Case, zone: str) -> str:
    permitted = cell(case.requirement.figures["permitted"], zone)
    if permitted == "not asked":
        return "no vapour retarder"
    plain = [name for name, said in permitted.items() if said == "yes"]
    words = f"Class {listed(plain).replace(' and ', ' or ')}" if plain else ""
    if permitted["III"] == "table":
        words += f", or III under {case.other('class-iii-conditions').figures['table']}"
    none = "none, or " if named(zone, case.requirement.figures.get("not_required", [])) else ""
    return f"{none}{words}"
