"""Questions that a package must raise though nothing is calculated for them; each is data with its fixed verdict."""

from typing import Any

from layerfolio.assembly.types import Assembly, Layer
from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Verdict
from layerfolio.codes.making import finding
from layerfolio.codes.naming import called
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.wording import figure, listed

SEALED, UNSEALED = ("taped", "sealed"), ("lapped", "open")


def judge_reminder(requirement: Requirement, assembly: Assembly | None, context: Context) -> Finding | None:
    """The reminder; None where its condition does not hold."""
    rule = requirement.rule
    if rule.get("when", {}).get("heat_recovery", context.heat_recovery) != context.heat_recovery:
        return None
    rule = rule | requirement.figures
    rule |= _of_lines(rule, context) if "by_lines" in rule else {}
    if "only_by" in rule and context.answer("code.energy_path") == "performance":
        return finding(
            requirement, context, Verdict.NOT_ASKED, asked=rule["asked"], given=rule.get("given", ""),
            reason=f"it is asked of {rule['only_by']} alone",
        )  # fmt: skip
    return finding(
        requirement, context, Verdict(rule["verdict"]), assembly=assembly.name if assembly else None,
        asked=rule["asked"], given=rule.get("given", "") or _transmittance(assembly, context), reason=rule["reason"],
        next_step=_step(rule, context),
    )  # fmt: skip


def _transmittance(subject: Any, context: Context) -> str:
    """What is provided of an opening on which a reminder is: its transmittance with its basis; empty for other subjects."""
    value = getattr(subject, "transmittance", None)
    if value is None:
        return ""
    basis = "computed by ISO 10077-1" if subject.how == "computed" else subject.basis or "no basis stated"
    return f"{figure('U', value, digits=2, customary=context.customary, both=context.both)}, {basis}"


def _of_lines(rule: dict[str, Any], context: Context) -> dict[str, str]:
    """What a reminder on bracing says: beside the lines that are judged one by one, or where none is stated."""
    lines = list(context.envelope.wall_lines)
    if lines:
        return {"given": f"{listed(lines)}, judged line by line", "reason": rule["others"], "next_step": rule["by_lines"]}
    layers = [
        f"{called(one)} of {name}" for name, study in context.envelope.thermal.items()
        for one in serving(study.assembly, "bracing")
    ]  # fmt: skip
    given = f"{listed(layers)}, stated to brace; no line of bracing" if layers else "no line of bracing and no layer that braces"
    return {"given": given, "reason": "bracing is judged on stated lines alone", "next_step": rule["without"]}


def _step(rule: dict[str, Any], context: Context) -> str:
    """What to supply; first the openings that do not state what it turns on, but for those without glass."""
    missing, openings = rule.get("not_stated"), getattr(context.project, "openings", None) or {}
    if not missing:
        return rule["next_step"]
    names = [
        name for name, one in openings.items()
        if one.kind in missing["of"] and getattr(one, missing["key"], None) is None and getattr(one, "glazed", None) is not False
    ]  # fmt: skip
    return "; ".join([*([missing["step"].format(names=listed(names))] if names else []), rule["next_step"]])


def judge_air_barrier(requirement: Requirement, assembly: Assembly, context: Context) -> Finding:
    """Seams that are stated open or merely lapped do not meet; all else waits for the evidence of the site."""
    rule = requirement.rule
    layers = serving(assembly, "air control")
    unsealed = tuple(one for one in layers if one.seams in UNSEALED)
    verdict, next_step = Verdict.NEEDS_EVIDENCE, rule["next_step"]
    reason = "joints are seen on site, not in the project file"
    if not layers:
        verdict, reason = Verdict.NEEDS_JUDGEMENT, "no layer is stated to serve air control"
        next_step = "name the layers of the air barrier (serves: [air control]) and how their seams are closed"
    elif any(one.seams == "open" for one in unsealed):
        verdict, reason = Verdict.DOES_NOT_MEET, f"the seams of {named(unsealed)} are stated open"
        next_step = "seal every joint of the air barrier"
    elif unsealed:
        reason = f"{named(unsealed)}: a lap is a joint only when it is sealed, or 100 mm wide and clamped"
    elif any(one.seams not in SEALED for one in layers):
        reason = "the project file does not say how the seams are closed"
    return finding(
        requirement, context, verdict, assembly=assembly.name, asked=rule["asked"], given=named(layers) or "none named",
        reason=reason, next_step=next_step,
    )  # fmt: skip


def serving(assembly: Assembly, role: str) -> tuple[Layer, ...]:
    """The layers that serve a role, from the outside in."""
    return tuple(layer for layer in assembly.layers if role in layer.serves)


def named(layers: tuple[Layer, ...]) -> str:
    """Layers by title, number and seams: "Strand board (layer 6), seams taped"."""
    shown = [called(one) + (f", seams {one.seams}" if one.seams else "") for one in layers]
    return listed(shown) if len(shown) < 2 else "; ".join(shown)


def on_the_room_side(layer: Layer, assembly: Assembly) -> bool:
    """Whether all insulation lies outside the layer."""
    insulation = [one.number for one in assembly.layers if one.insulating]
    return bool(insulation) and layer.number > max(insulation)
