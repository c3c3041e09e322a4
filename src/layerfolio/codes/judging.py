"""A set judged whole: whether it applies comes first, then the building, then each assembly in file order."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from importlib import import_module
from typing import Any

from layerfolio.catalogue.code_sets import code_set, set_ids, zones
from layerfolio.codes import applies, reach
from layerfolio.codes.amendments import in_force_id
from layerfolio.codes.context import Context, Envelope, context
from layerfolio.codes.findings import Finding, Verdict
from layerfolio.codes.given_papers import with_papers
from layerfolio.codes.heat import judge_heat
from layerfolio.codes.heat_recovery import judge_heat_recovery
from layerfolio.codes.judge_names import OF_ONE_CODE
from layerfolio.codes.making import MEMORY_LIMIT
from layerfolio.codes.reminders import judge_air_barrier, judge_reminder
from layerfolio.codes.requirements import Requirement, requirements
from layerfolio.codes.said_absent import with_absence
from layerfolio.codes.tight_layers import judge_tight_layers
from layerfolio.codes.vapour_barrier import judge_position, judge_vapour_barrier
from layerfolio.studies.types import ThermalStudy, VapourStudy

TOPICS = (
    "applicability", "structure", "thermal", "vapour", "air", "water", "fire", "openings", "materials", "administration",
)  # fmt: skip
"""In the order of the compliance record."""

Studies = Mapping[str, tuple[ThermalStudy, VapourStudy]]


def judge(
    project: Any, studies: Studies, envelope: Envelope | None = None, about: Context | None = None
) -> tuple[Finding, ...]:
    """All findings of the set that `project.code.set` names; KeyError when there is no such set.

    `project` has the keys of the project file as attributes; `studies` maps an assembly's name to its studies, `envelope`
    holds those of openings, ground and building. The first finding is whether the set applies; where it does not, or
    that is unknown, no other says *meets*.
    """
    about = about or context(project, envelope)
    first, answer = applies.judge_applies(about)
    scopes, scoped = _scopes(about)
    found = [*_set_findings(about), *scoped, *_of_building(about, scopes)]
    found += [one for thermal, vapour in studies.values() for one in _of_assembly(thermal, vapour, about, scopes)]
    found += _of_openings(about, scopes)
    found += _of_lines(about, scopes)
    found += _of_junctions(about, scopes)
    found = [gate(one, answer, first) for one in found]
    return (first, *found, *(gate(one, answer, first) for one in _after(about, scopes, tuple(found))))


def _scopes(about: Context) -> tuple[dict[str, tuple[applies.Answer, Finding]], list[Finding]]:
    names = about.edition.content.get("scopes", {})
    found = {name: reach.judge_scope(about, name) for name in names}
    return {name: (answer, said) for name, (said, answer) in found.items()}, [said for said, _ in found.values()]


def _set_findings(about: Context) -> Iterator[Finding]:
    yield from (one for one in (applies.judge_in_force(about), reach.judge_zone(about)) if one is not None)


def _of_building(about: Context, scopes: dict) -> Iterator[Finding]:
    for requirement in requirements(about.edition.set_id):
        if requirement.of_building and requirement.judge not in AFTER:
            found = judge_of(requirement.judge, OF_BUILDING)(requirement, about)
            if found is not None:
                yield _within(_remembered(found, requirement), requirement, scopes, about)


def _of_openings(about: Context, scopes: dict) -> Iterator[Finding]:
    if not about.envelope.openings:
        return
    for requirement in requirements(about.edition.set_id):
        for opening in about.envelope.openings.values():
            if opening.kind in requirement.of_openings:
                found = judge_of(requirement.judge, OF_OPENING)(requirement, opening, about)
                if found is not None:
                    said = replace(_remembered(found, requirement), assembly=opening.name, opening=True)
                    yield _within(said, requirement, scopes, about)


def _of_lines(about: Context, scopes: dict) -> Iterator[Finding]:
    """What is asked of lines of bracing; their judges are loaded where the project states lines."""
    if about.envelope.wall_lines:
        from layerfolio.codes.wall_lines import judge_lines

        for found, requirement in judge_lines(about):
            yield _within(_remembered(found, requirement), requirement, scopes, about)


def _of_junctions(about: Context, scopes: dict) -> Iterator[Finding]:
    """Junctions that a control does not pass."""
    if any(one.broken or one.cannot for one in about.envelope.junctions):
        from layerfolio.codes.junction_lines import judge_junctions

        for found, requirement in judge_junctions(about):
            yield _within(found, requirement, scopes, about)


def _after(about: Context, scopes: dict, before: tuple[Finding, ...]) -> Iterator[Finding]:
    """What is asked of the building and looks at what was found of its parts."""
    for requirement in requirements(about.edition.set_id):
        if requirement.judge in AFTER:
            found = judge_of(requirement.judge, AFTER)(requirement, about, before)
            if found is not None:
                yield _within(_remembered(found, requirement), requirement, scopes, about)


def _of_assembly(thermal: ThermalStudy, vapour: VapourStudy, about: Context, scopes: dict) -> Iterator[Finding]:
    for requirement in requirements(about.edition.set_id):
        if requirement.asks(thermal.assembly):
            found = judge_of(requirement.judge)(requirement, thermal, vapour, about)
            if found is not None:
                yield _within(_moist(_remembered(found, requirement), requirement, about), requirement, scopes, about)


def _remembered(found: Finding, requirement: Requirement) -> Finding:
    """A requirement whose figures rest on memory decides nothing, whatever its judge says."""
    settled = found.verdict in (Verdict.MEETS, Verdict.DOES_NOT_MEET)
    if requirement.mark != "memory" or found.amended or not settled:
        return found
    reason = f"the limit {MEMORY_LIMIT}; by that limit: {found.reason}"
    return replace(found, verdict=Verdict.NEEDS_JUDGEMENT, reason=reason, next_step=f"confirm {requirement.clause}")


def _moist(found: Finding, requirement: Requirement, about: Context) -> Finding:
    """Where the use makes much moisture the set's own rule hands over to another part: *meets* is open then."""
    rule = requirement.rule.get("moist")
    if rule is None or (about.humidity_class or 0) < rule["class_from"] or found.verdict != Verdict.MEETS:
        return found
    reason = f"{found.reason}; but at humidity class {about.humidity_class} {rule['clause']} asks for {rule['instead']}"
    step = f"show the assembly by {rule['instead']}, or that the use makes less moisture"
    return replace(found, verdict=Verdict.NEEDS_JUDGEMENT, reason=reason, next_step=step)


JUDGES = {
    "at_least": lambda requirement, thermal, vapour, about: judge_heat(requirement, thermal, about),
    "at_most": lambda requirement, thermal, vapour, about: judge_heat(requirement, thermal, about),
    "vapour_barrier": lambda requirement, thermal, vapour, about: judge_vapour_barrier(requirement, vapour, about),
    "vapour_barrier_position": judge_position,
    "tight_layers": judge_tight_layers,
    "air_barrier": lambda requirement, thermal, vapour, about: judge_air_barrier(requirement, thermal.assembly, about),
    "reminder": lambda requirement, thermal, vapour, about: judge_reminder(requirement, thermal.assembly, about),
    "figures_only": lambda requirement, thermal, vapour, about: None,  # another judge asks for these figures
}

OF_BUILDING: dict[str, Any] = {
    "reminder": lambda requirement, about: judge_reminder(requirement, None, about),
    "heat_recovery": judge_heat_recovery,
    "share_of_wall": ("continuity", "judge_share_of_wall"),
    "penetrations": ("continuity", "judge_penetrations"),
    "air_routes": ("continuity", "judge_air_routes"),
    "ventilation": ("continuity", "judge_ventilation"),
    "control_line": ("junction_lines", "judge_control_line"),
    "bedrooms": ("escape", "judge_bedrooms"),
    "exits": ("exits", "judge_exits"),
    "whole_house_ventilation": ("ventilation_us", "judge_whole_house_ventilation"),
    "window_falls": ("glazing_us", "judge_window_falls"),
    "air_leakage": ("us_leakage", "judge_air_leakage"),
    "figures_only": lambda requirement, about: None,
}
"""Judges of what is asked of the building and not of an assembly; a pair names module and function, imported on use."""

OF_OPENING: dict[str, Any] = {
    "reminder": lambda requirement, opening, about: judge_reminder(requirement, opening, about),
    "rated_opening": ("openings_nbc", "judge_rated"),
    "glass_block": ("openings_nbc", "judge_glass_block"),
    "fenestration": ("us_fenestration", "judge_fenestration"),
    "hatch": ("us_fenestration", "judge_hatch"),
    "solar_gain": ("us_solar_gain", "judge_solar_gain"),
    "nominal_resistance": ("openings_nbc", "judge_nominal"),
    "egress": ("escape", "judge_egress"),
    "safety_glazing": ("glazing_us", "judge_safety_glazing"),
    "figures_only": lambda requirement, opening, about: None,
}
"""Judges of openings, in the same way."""

AFTER: dict[str, Any] = {
    "trade_off": ("trade_off", "judge_trade_off"),
    "total_ua": ("us_total_ua", "judge_total_ua"),
    "fenestration_maxima": ("us_total_ua", "judge_fenestration_maxima"),
}
"""Judges of the building that see the findings of its parts, in the same way."""

def judge_of(name: str, table: dict[str, Any] | None = None) -> Any:
    """The judge of that name in a table (of assemblies where none is given); KeyError when there is none."""
    table = {**OF_ONE_CODE, **JUDGES} if table is None else table
    found = table[name]
    if not isinstance(found, tuple):
        return found
    module, function = found
    return getattr(import_module(f"layerfolio.codes.{module}"), function)


def _within(found: Finding, requirement: Requirement, scopes: dict, about: Context) -> Finding:
    found = with_absence(with_papers(found, requirement, about), requirement, about)
    if "occupancies" in requirement.rule:
        from layerfolio.codes.occupancies import within_occupancy

        found = within_occupancy(found, requirement, about)
    if "scope" not in requirement.rule:
        return found
    answer, said = scopes[requirement.rule["scope"]]
    return gate(found, answer, said)


def gate(found: Finding, answer: applies.Answer, said: Finding) -> Finding:
    """A finding under one that decides whether it is asked: no leaves it unasked, unknown leaves *meets* open. A failure
    stays one, and says that it is one only where it is asked.
    """
    if answer == "no" and found.verdict != Verdict.NOT_ASKED:
        reason = f"{said.question} No: {said.reason}"
        return replace(found, verdict=Verdict.NOT_ASKED, reason=reason, next_step="")
    if answer == "unknown" and found.verdict in (Verdict.MEETS, Verdict.DOES_NOT_MEET):
        meets, open_ = found.verdict == Verdict.MEETS, f"whether it is asked is open ({said.clause})"
        reason = "; ".join(filter(None, (found.reason, open_)))
        step = "; ".join(filter(None, ("" if meets else found.next_step, said.next_step)))
        return replace(found, verdict=Verdict.NEEDS_JUDGEMENT if meets else found.verdict, reason=reason, next_step=step)
    return found


def sets() -> tuple[str, ...]:
    """The ids of all sets."""
    return set_ids()


def requirement_ids(set_id: str) -> tuple[str, ...]:
    """Ids of everything the set can find, in the order in which it is judged."""
    content = code_set(set_id).content
    found = [f"{set_id}/{content['applies']['article']}/applies"]
    if "adopted" in code_set(set_id).edition:
        found.append(in_force_id(set_id))
    if "zones" in content:
        found.append(f"{set_id}/{content['zones']['article']}/zone")
    found += [f"{set_id}/{rule['article']}/{name}-scope" for name, rule in content.get("scopes", {}).items()]
    return (*found, *(one.id for one in requirements(set_id)))


__all__ = ["gate", "judge", "requirement_ids", "sets", "zones"]
