"""Insulation carried through (NBC 9.36.2.4, 9.36.2.5, 9.36.2.8): the figures that details need, and what is judged of them."""

from layerfolio.codes import judges
from layerfolio.codes.context import Context, value
from layerfolio.codes.edge_insulation import edge_proved
from layerfolio.codes.envelope import EnvelopeRow, parts
from layerfolio.codes.findings import Finding, Measured, Verdict
from layerfolio.codes.limits import resolve
from layerfolio.codes.making import finding
from layerfolio.codes.outcomes import Outcome, worst
from layerfolio.codes.register_types import BUILDING
from layerfolio.codes.requirements import Requirement, requirements
from layerfolio.codes.site_figures import pressure
from layerfolio.codes.stated import metres, of_assembly, square_metres
from layerfolio.codes.wording import figure
from layerfolio.studies.types import ThermalStudy, VapourStudy
from layerfolio.units.show import in_units

WALL = ("wall",)


def wall_limits(about: Context) -> tuple[float, ...]:
    """The resistances that the walls of the project need, m2.K/W, smallest first; empty while a zone is open."""
    found = set()
    for one in requirements(about.edition.set_id):
        if one.question == "walls" and one.quantity == "R_eff":
            for study in about.envelope.thermal.values():
                if study.assembly.kind == "wall" and one.asks(study.assembly):
                    settled = resolve(one, study.assembly, about)
                    if not settled.question and settled.limit.value is not None:
                        found.add(settled.limit.value)
    return tuple(sorted(found))


def judge_share_of_wall(requirement: Requirement, about: Context) -> Finding:
    """What a detail needs, as a share of what the wall needs; the detail itself has to be supplied."""
    rule = requirement.rule
    limits = [rule["fixed"]] if "fixed" in rule else [rule["share"] * one for one in wall_limits(about)]
    shown = " or ".join(figure("R_eff", one, customary=about.customary, digits=3 if "share" in rule else 2) for one in limits)
    share = f"{rule['share'] * 100:.0f} % of the wall's figure" if "share" in rule else ""
    asked = rule["words"].format(limit=f"{shown} ({share})" if shown and share else shown or share)
    told = rule.get("unless_no")
    if told and about.answer(told) is False:
        return finding(requirement, about, Verdict.NOT_ASKED, asked=asked, given="none", reason=rule["unless_words"])
    return finding(
        requirement, about, Verdict.NEEDS_EVIDENCE, asked=asked, given="not in the project file",
        reason="whether the building has such a place is not in the project file",
        next_step="supply the detail with its resistance",
    )  # fmt: skip


def judge_penetrations(requirement: Requirement, about: Context) -> Finding:
    """The area that beams, slabs and the like may take of the walls together."""
    rows = [one for one in parts(about) if one.group in ("wall", "window", "door", "glass-block", "vehicle-door")]
    areas = [one.area for one in rows]
    share = requirement.figures["share"]
    known = bool(areas) and all(one is not None for one in areas)
    gross = sum(areas) if known else None
    most = f", {square_metres(share * gross, about.customary)} here" if gross else ""
    return finding(
        requirement, about, Verdict.NEEDS_EVIDENCE,
        asked=f"insulated tight all round, and together at most {share * 100:.0f} % of the gross wall area{most}",
        given=_gross_words(gross, rows, about) if gross else "gross wall area not known",
        step=BUILDING if gross and about.envelope.building is not None else "",
        reason="beams, slabs and joists through the envelope are not in the project file",
        next_step="supply the area of each major structural penetration",
    )  # fmt: skip


def _gross_words(gross: float, rows: list[EnvelopeRow], about: Context) -> str:
    """The gross area and what it is summed of."""
    net = sum(one.area for one in rows if one.group == "wall")
    shown = [square_metres(one, about.customary) for one in (gross, net, gross - net)]
    return f"gross wall area {shown[0]}: walls {shown[1]}, openings in them {shown[2]}"


def judge_placement(requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, about: Context) -> Finding:
    """How far in from the edge the insulation of a floor goes, and what stands at the edge of the slab."""
    assembly, rule = thermal.assembly, requirement.rule
    by = next(one for one in requirements(about.edition.set_id) if one.question == rule["limit_of"])
    settled = resolve(by, assembly, about)
    if settled.question:
        found = Outcome(Verdict.NEEDS_JUDGEMENT, "which row of the table asks is open", f"answer: {settled.question}?")
    elif settled.limit.value is None:
        found = Outcome(Verdict.NOT_ASKED if settled.limit.has_value else Verdict.NEEDS_JUDGEMENT, settled.limit.note)
    else:
        found = worst([_reach(requirement, thermal, about), _edge(requirement, thermal, settled.limit.value, about)])
    named = settled.limit.value is not None and not settled.question
    edge = f", {figure('R_eff', rule['edge_share'] * settled.limit.value, customary=about.customary)}" if named else ""
    return finding(
        requirement, about, found.verdict, assembly=assembly.name, reason=found.reason, next_step=found.next_step,
        asked="outside the foundation wall down to the footing, or "
        f"{metres(rule['from_edge'], about.customary)} in from the edge (a heated floor: all of it) and at the slab edge "
        f"{rule['edge_share'] * 100:.0f} % of what the floor needs{edge}",
        given=_given(thermal, about),
    )  # fmt: skip


def _reach(requirement: Requirement, thermal: ThermalStudy, about: Context) -> Outcome:
    stated = value(of_assembly(about, thermal.assembly.name, "ground.insulated_from_edge"))
    least = requirement.rule["from_edge"]
    whole = any(one.insulating and one.counts for one in thermal.assembly.layers)
    if thermal.assembly.ground.get("heated") and not whole:
        words = "a heated floor is insulated over all its area, and no layer is insulation"
        return Outcome(Verdict.NEEDS_EVIDENCE, words, "name the insulation as a layer")
    if stated is None and whole:
        return Outcome(Verdict.MEETS, "the insulation is a layer of the whole floor")
    if stated is None:
        return Outcome(Verdict.NEEDS_EVIDENCE, "no layer is insulation", "state ground.insulated_from_edge")
    if judges.at_least(stated, least):
        return Outcome(Verdict.MEETS, f"the insulation goes {metres(stated, about.customary)} in")
    return Outcome(Verdict.DOES_NOT_MEET, f"the insulation goes {metres(stated, about.customary)} in", "take it further in")


def _edge(requirement: Requirement, thermal: ThermalStudy, limit: float, about: Context) -> Outcome:
    stated = value(of_assembly(about, thermal.assembly.name, "ground.edge_insulation.resistance"))
    least = requirement.rule["edge_share"] * limit
    heated = bool(thermal.assembly.ground.get("heated"))
    if stated is None:
        step = "supply the detail of the slab edge with ground.edge_insulation"
        return Outcome(Verdict.NEEDS_EVIDENCE, "the insulation at the edge of the slab is not given", step)
    if heated and judges.at_least(stated, least) and not judges.at_least(stated, limit):
        step = "ask the authority: does a heated floor need all of its resistance at the edge too?"
        return Outcome(Verdict.NEEDS_JUDGEMENT, "the edge of a heated floor has less than the floor needs", step)
    if judges.at_least(stated, least):
        return edge_proved(thermal.assembly.name, about)
    return Outcome(
        Verdict.DOES_NOT_MEET, "the insulation at the edge of the slab is less than its share", "more of it at the edge"
    )


def _given(thermal: ThermalStudy, about: Context) -> str:
    name = thermal.assembly.name
    reach, edge = (
        value(of_assembly(about, name, f"ground.{key}")) for key in ("insulated_from_edge", "edge_insulation.resistance")
    )
    whole = any(one.insulating and one.counts for one in thermal.assembly.layers)
    first = metres(reach, about.customary) + " in" if reach is not None else "whole floor" if whole else "not given"
    return f"{first}; at the edge {'not given' if edge is None else figure('R_eff', edge, customary=about.customary)}"


def judge_air_routes(requirement: Requirement, about: Context) -> Finding:
    """Three routes are open, the third only up to a wind pressure; which is taken has to be shown."""
    wind, most = about.wind_pressure, requirement.rule["pressure_at_most"]
    leakage = f"{requirement.rule['leakage']:.2f} L/(s·m²) at 75 Pa"
    limit = pressure(most, about.customary)
    third = "wind pressure not given" if wind is None else f"wind pressure {pressure(wind, about.customary)}"
    closed = wind is not None and wind > most
    route = about.answer("code.air_route")
    found = _route(route, wind, limit, closed)
    return finding(
        requirement, about, found.verdict, reason=found.reason, next_step=found.next_step,
        asked=f"(a) built as 9.36.2.10 describes, (b) tested to CAN/ULC-S742, {leakage} at most, or (c) tested to ASTM E2357, "
        f"{leakage} at most, with the barrier on the warm side and wind pressure of {limit} at most",
        given=(f"route by {route}; " if route else "") + third + (", so route (c) is closed" if closed else ""),
    )  # fmt: skip


DETAILS = "details by 9.36.2.10 (joints, laps of 50 mm, sill, rim, windows, ducts)"


def _route(route: str | None, wind: float | None, limit: str, closed: bool) -> Outcome:
    """What is left to show of the route that code.air_route names."""
    if route is None:
        step = f"supply a test report, or the {DETAILS}, and name the route (code.air_route)"
        return Outcome(Verdict.NEEDS_EVIDENCE, "which route is taken is not in the project file", step)
    if route == "9.36.2.10":
        return Outcome(Verdict.NEEDS_EVIDENCE, "the details are seen on drawings and on site", f"supply the {DETAILS}")
    if route == "ASTM E2357" and closed:
        return Outcome(Verdict.DOES_NOT_MEET, f"at a wind pressure over {limit} this route is not open", "take another route")
    if route == "ASTM E2357" and wind is None:
        return Outcome(
            Verdict.NEEDS_EVIDENCE, f"this route is open to a wind pressure of {limit}, and none is given",
            "state site_loads.wind_pressure_1_50",
        )  # fmt: skip
    return Outcome(Verdict.NEEDS_EVIDENCE, "a test shows it, not the project file", f"supply the test report to {route}")


def judge_ventilation(requirement: Requirement, about: Context) -> Finding:
    """The flow of the principal fan against its range by the number of bedrooms."""
    bedrooms, flow = about.answer("building.bedrooms"), value(about.answer("building.ventilation.flow"))
    table = requirement.rule["by_bedrooms"]
    ends = table.get(max(bedrooms, 1)) if bedrooms is not None else None
    if bedrooms is None:
        found = Outcome(Verdict.NEEDS_EVIDENCE, "building.bedrooms (project file) is not given", "state building.bedrooms")
    elif ends is None:
        beyond = requirement.rule["beyond"]
        found = Outcome(
            Verdict.NEEDS_EVIDENCE, f"more than {max(table)} bedrooms go by {beyond}", f"supply the design to {beyond}"
        )
    elif flow is None:
        found = Outcome(Verdict.NEEDS_EVIDENCE, "the flow of the principal fan is not given", "state building.ventilation.flow")
    elif judges.between(flow * 1000, *ends):
        found = Outcome(Verdict.MEETS, "the stated flow lies within the range")
    else:
        found = Outcome(
            Verdict.DOES_NOT_MEET, "the stated flow lies outside the range", "another flow, or a design to CAN/CSA-F326"
        )
    count = "bedrooms not given" if bedrooms is None else f"{bedrooms} bedrooms"
    return finding(
        requirement, about, found.verdict, reason=found.reason, next_step=found.next_step,
        asked=f"{_flows(about, *(one / 1000 for one in ends))} in normal use" if ends else "by the number of bedrooms",
        given=f"{count}, {'flow not given' if flow is None else _flows(about, flow)}",
        provided=None if flow is None else Measured("q_V", flow),
    )  # fmt: skip


def _flows(about: Context, *flows: float) -> str:
    """A flow, or a range of it, from m3/s; customary first where that is asked."""
    metric, other = (" to ".join(f"{in_units(one, unit):.3g}" for one in flows) + f" {unit}" for unit in ("L/s", "cfm"))
    return f"{other} ({metric})" if about.customary else metric
