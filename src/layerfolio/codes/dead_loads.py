"""Weight of an assembly against the weights up to which a set's structural tables hold."""

from layerfolio.codes import judges
from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Measured, Verdict
from layerfolio.codes.making import finding
from layerfolio.codes.naming import by_name
from layerfolio.codes.outcomes import Outcome
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.site_figures import pressure
from layerfolio.codes.wording import listed
from layerfolio.studies.dead_load import dead_load
from layerfolio.studies.structure_types import DeadLoad
from layerfolio.studies.types import ThermalStudy, VapourStudy

MEMBRANE = 20.0
"""Pa: more than a sheet membrane weighs; so close to the limit a membrane that is not counted could turn it."""


def judge_dead_load(requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, about: Context) -> Finding:
    """Every layer with its framing against the limit of its kind."""
    assembly, rule = thermal.assembly, requirement.rule
    load, limit = dead_load(assembly), rule["limits"][assembly.kind]
    found = _asked(rule, about) or _against(load, limit, rule, thermal, about)
    total = "not known" if load.total is None else pressure(load.total, about.customary)
    return finding(
        requirement, about, found.verdict, assembly=assembly.name, asked=f"{pressure(limit, about.customary)} at most",
        given=f"dead load {total}", reason=found.reason, next_step=found.next_step, limit=Measured("p_D", float(limit)),
        provided=None if load.total is None else Measured("p_D", load.total), performance=rule["performance"],
    )  # fmt: skip


def _asked(rule: dict, about: Context) -> Outcome | None:
    """Whether the seismic design category asks for it at all, where the set goes by that."""
    if "free" not in rule:
        return None
    category = about.answer("site_loads.seismic.category")
    if category is None:
        step = "supply the seismic design category of the site (site_loads.seismic.category)"
        return Outcome(Verdict.NEEDS_EVIDENCE, "the seismic design category is not given", step)
    if category.strip().upper() in rule["free"]:
        return Outcome(Verdict.NOT_ASKED, f"seismic design category {category}: only the wind tables are asked")
    return None


def _against(load: DeadLoad, limit: float, rule: dict, thermal: ThermalStudy, about: Context) -> Outcome:
    if load.total is None:
        names = listed(by_name(thermal.assembly, load.missing))
        return Outcome(Verdict.NEEDS_EVIDENCE, f"the weight of {names} is not known", f"state density and thickness of {names}")
    if not judges.at_most(load.total, limit):
        return Outcome(Verdict.DOES_NOT_MEET, rule["beyond"], rule["performance"])
    uncounted = [one.name for one in load.layers if one.source == "not counted"]
    if load.total + MEMBRANE * len(uncounted) > limit:
        names = listed(by_name(thermal.assembly, uncounted))
        return Outcome(Verdict.NEEDS_EVIDENCE, f"so near the limit the weight of {names} counts", f"state the weight of {names}")
    remembered = [one.name for one in load.layers if one.mark == "memory"]
    if remembered:
        names = listed(by_name(thermal.assembly, remembered))
        step = f"state the density of {names} with its source"
        return Outcome(Verdict.NEEDS_EVIDENCE, f"the density of {names} rests on memory", step)
    return Outcome(Verdict.MEETS, f"every layer with its framing, membranes left out, against {pressure(limit, about.customary)}")
