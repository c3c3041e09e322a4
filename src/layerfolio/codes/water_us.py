"""The drained wall and its water-resistive barrier (IRC R703.1.1, R703.2)."""

from layerfolio.assembly.types import Assembly, Layer
from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Verdict
from layerfolio.codes.fire import ratings
from layerfolio.codes.making import finding
from layerfolio.codes.naming import called
from layerfolio.codes.outcomes import Outcome, worst
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.second_plane import plane_of
from layerfolio.codes.stated import documents_for
from layerfolio.codes.wording import listed
from layerfolio.studies.types import ThermalStudy, VapourStudy


def judge_water_barrier(requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, about: Context) -> Finding:
    """What serves water control outside the framing, the document that proves it, and whether the wall drains."""
    assembly = thermal.assembly
    plane = plane_of(assembly)
    boards = tuple(one for one in plane.boards if "water control" in one.serves)
    found = worst([_barrier(requirement, plane.membranes, boards, assembly, about), _drains(assembly)])
    spaces = [called(one) for one in assembly.layers if one.kind == "cavity" and one.cavity == "ventilated"]
    return finding(
        requirement, about, found.verdict, assembly=assembly.name, reason=found.reason, next_step=found.next_step,
        asked=f"a wall that drains; over studs or sheathing {requirement.figures['listed']}; laps of {requirement.rule['laps']}",
        given=f"{listed([called(one) for one in (*plane.membranes, *boards)]) or 'no layer named for water control'}; "
        f"{listed(spaces) or 'no ventilated space'}",
    )  # fmt: skip


def _barrier(
    requirement: Requirement, membranes: tuple[Layer, ...], boards: tuple[Layer, ...], assembly: Assembly, about: Context
) -> Outcome:
    layers = membranes or boards
    if not layers:
        step = "name the layer over studs or sheathing that keeps water out (serves: [water control])"
        return Outcome(Verdict.NEEDS_EVIDENCE, "no layer outside the framing is stated to serve water control", step)
    named = listed([called(one) for one in layers])
    proved = any(_proved(one, assembly, about) for one in layers)
    if not proved:
        step = f"supply the report of {named} as a water-resistive barrier, with its number"
        return Outcome(Verdict.NEEDS_EVIDENCE, "no valid document proves it against water", step)
    if not membranes:
        step = f"ask the authority: is {named}, with its joints as drawn, accepted as the barrier ({requirement.clause})?"
        return Outcome(Verdict.NEEDS_JUDGEMENT, "a board is a barrier only where it is accepted as one", step)
    return Outcome(Verdict.MEETS, "a document proves the barrier; laps and flashings are seen on site")


def _proved(layer: Layer, assembly: Assembly, about: Context) -> bool:
    entries = ratings(layer, assembly, about).entries
    held = [one for entry in (*entries, layer) for one in documents_for(about, layer.material or layer.name, _Held(entry))]
    general = documents_for(about, layer.name, None, "water-resistive barrier")
    return bool(general) or any("water" in word.lower() for one in held for word in getattr(one, "proves", None) or ())


class _Held:
    """The documents of an entry of the project file, or of the layer itself, under one name."""

    def __init__(self, entry: object) -> None:
        self.evidence = getattr(entry, "evidence", None) or getattr(entry, "documents", None) or ()


def _drains(assembly: Assembly) -> Outcome:
    if any(one.cavity == "ventilated" for one in assembly.layers):
        return Outcome(Verdict.MEETS, "")
    return Outcome(
        Verdict.NEEDS_JUDGEMENT, "no ventilated space lies behind the cladding",
        "ask the authority: how does the wall drain, or is it tested to ASTM E331?",
    )  # fmt: skip
