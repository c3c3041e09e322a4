"""Weight of an assembly against the weights up to which a set's structural tables hold."""

from typing import Any

from layerfolio.assembly.types import Assembly
from layerfolio.codes import judges
from layerfolio.codes.context import Context
from layerfolio.codes.dead_load_parts import TOGETHER, Weighed, frame_of
from layerfolio.codes.findings import Finding, Measured, Verdict
from layerfolio.codes.making import finding
from layerfolio.codes.naming import by_name
from layerfolio.codes.outcomes import Outcome
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.site_figures import pressure
from layerfolio.codes.wording import listed
from layerfolio.studies.structure_types import DeadLoad
from layerfolio.studies.types import ThermalStudy, VapourStudy

MEMBRANE = 20.0
"""Pa: more than a sheet membrane weighs; so close to the limit a membrane that is not counted could turn it."""
UPRIGHT = 60.0  # degrees from which a part is a wall


def judge_dead_load(requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, about: Context) -> Finding:
    """Every layer with its framing against the limit of its kind; roof and ceiling together, on plan."""
    assembly, rule = thermal.assembly, requirement.rule
    one = Weighed(assembly, rule, about)
    limit = _limit(assembly, rule)
    found = _asked(rule, about) or _leaning(one) or _unknown(one) or _against(one, limit)
    figure = None if one.load.total is None else one.load.total if _unknown(one) else one.all
    return finding(
        requirement, about, found.verdict, assembly=assembly.name, asked=_asks(rule, assembly, limit, about), given=_given(one),
        reason=found.reason, next_step=found.next_step, limit=Measured("p_D", float(limit)),
        provided=None if figure is None else Measured("p_D", figure), performance=rule["performance"],
    )  # fmt: skip


def _limit(assembly: Assembly, rule: dict[str, Any]) -> float:
    """That of the kind; walls whose frame has a limit of its own by that."""
    frames = rule.get("frames", {})
    metal = assembly.kind == "wall" and frames and frame_of(assembly) == "metal"
    return frames["metal"] if metal else rule["limits"][assembly.kind]


def _asks(rule: dict[str, Any], assembly: Assembly, limit: float, about: Context) -> str:
    words = rule.get("together", "") if assembly.kind in TOGETHER else ""
    return ", ".join(filter(None, (f"{pressure(limit, about.customary)} at most", words, rule.get("average", ""))))


def _given(one: Weighed) -> str:
    """The weight in the plane of the part, on plan, and with the other part, as far as each is known."""
    load, customary = one.load, one.about.customary
    if load.total is None:
        return "dead load not known"
    said = [f"dead load {pressure(load.total, customary)}"]
    if load.on_plan is not None and one.assembly.slope:
        said.append(f"{pressure(load.on_plan, customary)} on plan at {one.assembly.slope:g}°")
    if not _unknown(one) and one.heaviest[0]:
        said.append(f"{pressure(one.all, customary)} with {one.heaviest[0]}")
    return ", ".join(said)


def _asked(rule: dict[str, Any], about: Context) -> Outcome | None:
    """What the seismic design category leaves of the question, where the set goes by that."""
    if "categories" not in rule:
        return None
    from layerfolio.codes.us_seismic import not_asked

    return not_asked(rule["categories"], about)


def _leaning(one: Weighed) -> Outcome | None:
    """A wall that leans as a roof does, and a roof as steep as a wall."""
    assembly = one.assembly
    if assembly.kind == "wall" and assembly.slope < UPRIGHT:
        reason = f"a wall at {assembly.slope:g}° is a roof by its slope, and its weight counts on plan"
        return Outcome(Verdict.NEEDS_JUDGEMENT, reason, "state it as a roof (kind: roof), or ask the authority how it counts")
    if assembly.kind != "wall" and assembly.slope > UPRIGHT and one.load.on_plan is None and one.load.total is not None:
        reason = f"at {assembly.slope:g}° it is a wall by its slope"
        return Outcome(Verdict.NEEDS_JUDGEMENT, reason, "state it as a wall (kind: wall), or ask the authority how it counts")
    return None


def _unknown(one: Weighed) -> Outcome | None:
    """A weight that counts and is not known: of a layer, or of the other part."""
    if one.load.total is None:
        names = listed(by_name(one.assembly, one.load.missing))
        return Outcome(Verdict.NEEDS_EVIDENCE, f"the weight of {names} is not known", f"state density and thickness of {names}")
    unknown = [name for name, (_, load) in one.others.items() if load.total is None]
    if unknown:
        reason = f"the weight of {listed(unknown)}, which counts together with it, is not known"
        return Outcome(Verdict.NEEDS_EVIDENCE, reason, f"state density and thickness of every layer of {listed(unknown)}")
    return None


def _against(one: Weighed, limit: float) -> Outcome:
    """What the part weighs for certain, then what may count beside it, then how well its figures are known."""
    rule, kind = one.rule, one.assembly.kind
    most = rule.get("heavier", {}).get(kind)
    if one.assembly.kind == "wall" and "frames" in rule and not frame_of(one.assembly):
        if not judges.at_most(one.sure, rule["frames"]["panels"]):
            return Outcome(Verdict.NEEDS_JUDGEMENT, rule["frameless"], "ask the authority which limit is that of this wall")
    elif not judges.at_most(one.sure, limit):
        if most is not None and judges.at_most(one.sure, most):
            return Outcome(Verdict.NEEDS_JUDGEMENT, rule["heavier"]["words"], rule["heavier"]["step"])
        return Outcome(Verdict.DOES_NOT_MEET, rule["beyond"], rule["performance"])
    return _alone(one) or _beside(one, limit) or _known(one, limit) or Outcome(
        Verdict.MEETS, f"every layer with its framing, membranes left out, against {pressure(limit, one.about.customary)}"
    )  # fmt: skip


def _alone(one: Weighed) -> Outcome | None:
    """A ceiling without its roof, and a roof that must have a ceiling below which is not in the file."""
    if one.others or one.assembly.kind not in TOGETHER:
        return None
    if one.assembly.kind == "roof" and any(layer.insulating for layer in one.assembly.layers):
        return None
    other = TOGETHER[one.assembly.kind]
    where = "over" if other == "roof" else "below"
    reason = f"the {other} {where} it, which counts together with it, is not in the project file"
    return Outcome(Verdict.NEEDS_EVIDENCE, reason, f"state the {other} as an assembly, or show its weight")


def _beside(one: Weighed, limit: float) -> Outcome | None:
    if judges.at_most(one.all, limit):
        return None
    reason = f"alone it is within the limit; {one.rule['open']}"
    step = "show which parts lie over one another, with their weights, or ask the authority"
    return Outcome(Verdict.NEEDS_JUDGEMENT, reason, step)


def _known(one: Weighed, limit: float) -> Outcome | None:
    """What could still turn a weight within the limit: membranes close to it, densities from memory."""
    parts = [(one.assembly, one.load), *one.others.values()]
    uncounted = [title for part, load in parts for title in _layers(part, load, lambda x: x.source == "not counted")]
    if uncounted and one.all + MEMBRANE * len(uncounted) > limit:
        names = listed(uncounted)
        return Outcome(Verdict.NEEDS_EVIDENCE, f"so near the limit the weight of {names} counts", f"state the weight of {names}")
    remembered = [title for part, load in parts for title in _layers(part, load, lambda x: x.mark == "memory")]
    if remembered:
        names = listed(remembered)
        step = f"state the density of {names} with its source"
        return Outcome(Verdict.NEEDS_EVIDENCE, f"the density of {names} rests on memory", step)
    return None


def _layers(assembly: Assembly, load: DeadLoad, wanted: Any) -> list[str]:
    return by_name(assembly, [x.name for x in load.layers if wanted(x)])
