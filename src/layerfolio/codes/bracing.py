"""Bracing of walls: the figures of the place against the limits of each path. The answer is an engineer's, never ours."""

from dataclasses import replace
from typing import Any

from layerfolio.assembly.types import Assembly, Layer
from layerfolio.codes.context import Context, value
from layerfolio.codes.findings import Finding, Verdict
from layerfolio.codes.making import finding
from layerfolio.codes.naming import called
from layerfolio.codes.reminders import on_the_room_side, serving
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.site_figures import length, pressure
from layerfolio.codes.wording import listed
from layerfolio.studies.types import ThermalStudy, VapourStudy

SEISMIC, WIND = "earthquake figure Sa(0.2)", "wind pressure"


def judge_bracing(requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, context: Context) -> Finding:
    """Needs evidence while a figure is missing, else judgement: bracing is not calculated."""
    assembly, rule = thermal.assembly, requirement.rule
    panels = serving(assembly, "bracing")
    context = _by_key(context, rule)
    missing = _missing(assembly, panels, context, rule)
    lines = [name for name, one in context.envelope.wall_lines.items() if one.assembly == assembly.name]
    reasons = [_path(requirement.figures, context), _judged_as(lines) if lines else rule["reason"]]
    if panels and all(on_the_room_side(one, assembly) for one in panels):
        reasons.append(rule["inside"])
    supply = f"supply the {listed(missing)}; " if missing else ""
    return finding(
        requirement, context, Verdict.NEEDS_EVIDENCE if missing else Verdict.NEEDS_JUDGEMENT, assembly=assembly.name,
        asked=_asked(requirement.figures, context, rule), given=_given(assembly, panels, context, rule),
        reason="; ".join(filter(None, reasons)), next_step=f"{supply}{rule['next_step']}",
    )  # fmt: skip


def _judged_as(lines: list[str]) -> str:
    return f"judged line by line: {listed(lines)}; what else of this wall braces is not stated"


def _by_key(context: Context, rule: dict[str, Any]) -> Context:
    """With the seismic figure that the set goes by."""
    if "seismic" not in rule:
        return context
    return replace(context, seismic=value(context.answer(f"site_loads.seismic.{rule['seismic']['key']}")))


def _quake(rule: dict[str, Any]) -> str:
    return rule.get("seismic", {}).get("name", SEISMIC)


def _asked(figures: dict[str, Any], context: Context, rule: dict[str, Any]) -> str:
    first = figures["paths"][0]
    return f"{_limits(first, context, rule)}, for {first['by']} ({first['clause']})"


def _limits(path: dict[str, Any], context: Context, rule: dict[str, Any]) -> str:
    wind = pressure(path.get("wind_below") or path["wind_at_most"], context.customary)
    bound = f"below {wind}" if "wind_below" in path else f"of {wind} at most"
    return f"{_quake(rule)} of {path['seismic_at_most']:.2f} at most and hourly {WIND}, 1 in 50, {bound}"


def _fits(path: dict[str, Any], context: Context) -> bool:
    wind = context.wind_pressure
    within = wind < path["wind_below"] if "wind_below" in path else wind <= path["wind_at_most"]
    return context.seismic <= path["seismic_at_most"] and within


def _path(figures: dict[str, Any], context: Context) -> str:
    """The path that is open by the figures of the place; empty while one of them is missing."""
    if context.wind_pressure is None or context.seismic is None:
        return ""
    for path in figures["paths"]:
        if _fits(path, context):
            return f"the figures of the place lead to {path['clause']}: {path['by']}"
    beyond = figures["beyond"]
    return f"the figures of the place lead to {beyond['clause']}: {beyond['by']}"


def _given(assembly: Assembly, panels: tuple[Layer, ...], context: Context, rule: dict[str, Any]) -> str:
    customary, studs = context.customary, _studs(assembly)
    wind, seismic = context.wind_pressure, context.seismic
    said = [
        f"{WIND} not given" if wind is None else f"{WIND} {pressure(wind, customary)}",
        f"{_quake(rule)} not given" if seismic is None else f"{_quake(rule)} {seismic:g}",
        *(_panel(one, customary) for one in panels),
    ]
    if not panels:
        said.append("no layer is stated to serve bracing")
    member = studs.member if studs else None
    spaced = f"at {length(member.spacing, customary)}" if member and member.spacing else "spacing not given"
    return "; ".join([*said, f"studs {spaced}", _fastened(assembly, context)])


def _fastened(assembly: Assembly, context: Context) -> str:
    """Whether the lines of the wall state what fastens their panels; the line on it judges that."""
    lines = {name: one.stated for name, one in context.envelope.wall_lines.items() if one.assembly == assembly.name}
    stated = [name for name, one in lines.items() if one.panel_fastening is not None and one.panel_fastening.kind]
    left = [name for name in lines if name not in stated]
    if not stated:
        return "fastening of the panels not given"
    return f"fastening of the panels as stated of {listed(stated)}" + (f", not stated of {listed(left)}" if left else "")


def _panel(one: Layer, customary: bool) -> str:
    thickness = length(one.thickness, customary) if one.thickness else "thickness not given"
    return ", ".join(filter(None, (called(one), thickness, f"seams {one.seams}" if one.seams else "")))


def _studs(assembly: Assembly) -> Layer | None:
    return next((one for one in assembly.layers if one.member and one.kind == "solid" and one.counts), None)


def _missing(assembly: Assembly, panels: tuple[Layer, ...], context: Context, rule: dict[str, Any]) -> list[str]:
    """The figures that are missing, each with the place in the project file where it belongs."""
    found = []
    if context.wind_pressure is None:
        found.append(f"{WIND} of the place, hourly, 1 in 50 (site_loads.wind_pressure_1_50)")
    if context.seismic is None:
        key = rule.get("seismic", {}).get("key", "Sa02")
        found.append(f"{_quake(rule)} of the place (site_loads.seismic.{key})")
    found += [f"thickness of {called(one)}" for one in panels if one.thickness is None]
    studs = _studs(assembly)
    if studs is None or studs.member.spacing is None:
        found.append("spacing of the studs (framing.spacing)")
    return found
