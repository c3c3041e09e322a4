"""The second plane of protection behind cladding: which membranes lie over which layer, and the question that this raises."""

from dataclasses import dataclass

from layerfolio.assembly.types import Assembly, Layer
from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Verdict
from layerfolio.codes.making import finding
from layerfolio.codes.naming import called
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.wording import listed
from layerfolio.studies.types import ThermalStudy, VapourStudy


@dataclass(frozen=True, slots=True)
class Plane:
    """What lies behind the cladding, from the outside in. `studs`: the framed layer, None where no framing is stated;
    `boards` then holds only the layer beneath the membranes.
    """

    membranes: tuple[Layer, ...]
    boards: tuple[Layer, ...]
    studs: Layer | None

    @property
    def membrane_words(self) -> str:
        return listed([called(one) for one in self.membranes]) or "no sheathing membrane"

    @property
    def words(self) -> str:
        """The plane in words: "Membrane (layer 3) over Board (layer 4); no other sheathing outside the studs (layer 5)"."""
        boards = listed([f"{called(one)}{_serving(one)}" for one in self.boards])
        found = self.membrane_words
        if boards:
            found += f" over {boards}" if self.membranes else f"; {boards}"
        if self.studs is None:
            return f"{found}; no framing is stated"
        if self.boards and not all(one.insulating for one in self.boards):
            return found
        other = "no other sheathing" if self.boards else "no sheathing"
        return f"{found}; {other} outside the studs (layer {self.studs.number})"


def judge_second_plane(requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, context: Context) -> Finding:
    """Always a question to the authority: the one that fits the wall's layers."""
    assembly, rule = thermal.assembly, requirement.rule
    plane = plane_of(assembly)
    question = rule["questions"][option(plane, rule["wood_based"], rule["soft"])]
    board = listed([called(one) for one in plane.boards])
    asked = question.format(board=board, membrane=plane.membrane_words, plane=plane.words.partition(";")[0])
    return finding(
        requirement, context, Verdict.NEEDS_JUDGEMENT, assembly=assembly.name, asked=rule["asked"], given=plane.words,
        reason=rule["reason"], next_step=f"ask the authority: {asked}",
    )  # fmt: skip


def plane_of(assembly: Assembly) -> Plane:
    """The layers behind the cladding and outside the studs."""
    studs = next((one for one in assembly.layers if one.member and one.kind == "solid" and one.counts), None)
    behind = [one for one in assembly.layers if one.counts and not one.is_cladding and "weather face" not in one.serves]
    outer = [one for one in behind if studs is None or one.number < studs.number]
    membranes = tuple(one for one in outer if one.kind == "membrane" and "water control" in one.serves)
    first = min((one.number for one in membranes), default=0)
    boards = [one for one in outer if one.kind == "solid"]
    if studs is None:
        boards = [one for one in boards if one.number > first][:1]
    return Plane(membranes, tuple(boards), studs)


def option(plane: Plane, wood_based: list[str], soft: list[str]) -> str:
    """Which of the requirement's questions fits the plane. `wood_based`, `soft`: families of boards that are no rigid
    insulating sheathing.
    """
    if plane.studs is None:
        return "unframed"
    if not plane.boards:
        return ("nothing", "one-membrane", "membranes")[min(len(plane.membranes), 2)]
    bare = "" if plane.membranes else "bare-"
    if not all(one.insulating for one in plane.boards):
        return f"{bare}sheathing"
    families = [one.family for one in plane.boards]
    if any(one in wood_based for one in families):
        return f"{bare}wood-fibre"
    return f"{bare}sheathing" if any(one in soft for one in families) else f"{bare}insulating"


def _serving(layer: Layer) -> str:
    return ", stated to serve water control" if "water control" in layer.serves else ""
