"""The space under a suspended floor (IRC R408.2, R317.1, R302.13): its openings, wood over soil, the floor's underside."""

from typing import Any

from layerfolio.assembly.types import Assembly, Layer
from layerfolio.codes import judges
from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Measured, Verdict
from layerfolio.codes.making import finding
from layerfolio.codes.naming import called
from layerfolio.codes.outcomes import Outcome
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.stated import limit_figure, metres, square_metres
from layerfolio.studies.types import ThermalStudy, VapourStudy

ROUNDED = 2.5e-4
"""What a thickness in whole millimetres may lack of one in inches, m."""
SQUARE_MILLIMETRE = 1e-6
TIMBER = ("timber", "timber-board", "plywood", "strand-board", "particle-board")
NO_SPACE = "no space under the floor is described (ground.underfloor)"
PLAN = (
    "supply the plan of the space: its openings with their net area and mesh, one within 3 ft of each corner, and what covers "
    "the ground"
)


def judge_under_floor_vents(requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, about: Context) -> Finding:
    """The stated free area against its shares of the floor; places and ground cover are seen on plans, so it never meets."""
    assembly, rule = thermal.assembly, requirement.rule
    area, free = assembly.area.value if assembly.area else None, _free(assembly)
    shares = [f"1/{rule[key]}" + (f" ({square_metres(area / rule[key], about.customary)})" if area else "")
              for key in ("usual", "covered")]  # fmt: skip
    found = _nothing_below(assembly) or _vents(rule, area, free)
    return finding(
        requirement, about, found.verdict, assembly=assembly.name, reason=found.reason, next_step=found.next_step,
        asked=f"openings of {shares[0]} of the area, or of {shares[1]} with a Class I retarder on the ground; one near each "
        "corner",
        given="openings not stated" if free is None else f"openings of {square_metres(free, about.customary)}",
        provided=None if free is None else Measured("area", free), performance=rule["performance"],
    )  # fmt: skip


def _free(assembly: Assembly) -> float | None:
    """Free area of the openings, m2: as much a metre as stated, mm2/m, along the perimeter."""
    each, around = assembly.ground.get("underfloor", {}).get("vents"), assembly.ground.get("perimeter")
    return None if each is None or around is None else each * SQUARE_MILLIMETRE * around


def _nothing_below(assembly: Assembly) -> Outcome | None:
    """The answer where the file describes no space under the floor."""
    if "underfloor" in assembly.ground:
        return None
    if assembly.faces == "vented space":
        step = "describe the space under the floor (ground.underfloor), or say what lies below"
        return Outcome(Verdict.NEEDS_EVIDENCE, NO_SPACE, step)
    return Outcome(Verdict.NOT_ASKED, NO_SPACE)


def _vents(rule: dict[str, Any], area: float | None, free: float | None) -> Outcome:
    missing = [name for name, one in (("area", area), ("ground.underfloor.vents and ground.perimeter", free)) if one is None]
    if missing:
        return Outcome(Verdict.NEEDS_EVIDENCE, "the openings are not stated", f"state {' and '.join(missing)}")
    if judges.at_least(free, area / rule["usual"]):
        words = f"the stated openings reach 1/{rule['usual']}; their places are not in the file"
        return Outcome(Verdict.NEEDS_EVIDENCE, words, PLAN)
    if judges.at_least(free, area / rule["covered"]):
        words = f"the stated openings are less than 1/{rule['usual']}: they do with a Class I retarder on the ground alone"
        return Outcome(Verdict.NEEDS_EVIDENCE, words, PLAN)
    words = f"the stated openings are less than 1/{rule['covered']}"
    return Outcome(Verdict.DOES_NOT_MEET, words, "larger openings, or an unvented space by R408.3")


def judge_wood_over_soil(requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, about: Context) -> Finding:
    """How far joists stay above bare soil, were the ground in the space as high as outside; it may lie lower or be covered."""
    assembly = thermal.assembly
    least, source = limit_figure(requirement, about)
    clear = _clear(assembly)
    found = _nothing_below(assembly) or _soil(assembly, clear, least)
    words = "height not stated" if clear is None else f"{metres(max(clear, 0.0), about.customary)} above the ground outside"
    return finding(
        requirement, about, found.verdict, assembly=assembly.name, reason=found.reason, next_step=found.next_step, amended=source,
        asked=f"joists and the underside of a wood floor {metres(least, about.customary)} or more above exposed ground, girders "
        f"{metres(requirement.rule['girders'], about.customary)}",
        given=words, provided=None if clear is None else Measured("d", clear), limit=Measured("d", least),
        performance=requirement.rule["performance"],
    )  # fmt: skip


def _clear(assembly: Assembly) -> float | None:
    """From the ground outside to the lowest wood of the floor, m."""
    height = assembly.ground.get("underfloor", {}).get("height")
    wood = _wooden(assembly)
    if height is None or not wood or any(one.thickness is None for one in wood if one.kind != "membrane"):
        return None
    return height - sum(one.thickness.value for one in wood if one.kind != "membrane")


def _wooden(assembly: Assembly) -> list[Layer]:
    """The layers from the lowest wood upwards; a floor has its outside below."""
    wood = [one.number for one in assembly.layers if one.family in TIMBER or (one.member and not one.member.is_metal)]
    return [one for one in assembly.layers if one.number >= wood[0]] if wood else []


def _soil(assembly: Assembly, clear: float | None, least: float) -> Outcome:
    if not _wooden(assembly):
        return Outcome(Verdict.NOT_ASKED, "no layer of the floor is wood")
    section = "supply the section of the space: how far joists and girders stay above its ground, and what covers that"
    if clear is None:
        step = f"state ground.underfloor.height; {section}"
        return Outcome(Verdict.NEEDS_EVIDENCE, "the height of the floor is not stated", step)
    if judges.at_least(clear, least):
        return Outcome(Verdict.NEEDS_EVIDENCE, "kept if the ground in the space is no higher than outside", section)
    return Outcome(
        Verdict.NEEDS_JUDGEMENT, "so near to exposed ground wood has to be naturally durable or preservative-treated",
        "ask the authority: does the ground in the space lie lower, is it covered, or is the wood durable or treated to AWPA U1?",
    )  # fmt: skip


def judge_floor_protection(requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, about: Context) -> Finding:
    """The membrane under the joists; without one the exceptions of the section, which are for the authority to see."""
    assembly = thermal.assembly
    under = next((one for one in assembly.layers if one.kind == "solid"), None)
    found = _protection(requirement.rule, assembly, under)
    given = f"{called(under)}, {metres(under.thickness.value, about.customary)}" if under and under.thickness else "not stated"
    board, panel = (metres(row["least"], about.customary) for row in requirement.rule["membranes"])
    return finding(
        requirement, about, found.verdict, assembly=assembly.name, reason=found.reason, next_step=found.next_step,
        asked=f"under the joists {board} of gypsum wallboard, {panel} of wood panel, or equal; not over a crawl space without "
        "stores and heating appliances, nor under joists of lumber 2 by 10 or more",
        given=given, performance=requirement.rule["performance"],
    )  # fmt: skip


def _protection(rule: dict[str, Any], assembly: Assembly, under: Layer | None) -> Outcome:
    if under is not None and not under.member and any(_is(row, under) for row in rule["membranes"]):
        return Outcome(Verdict.MEETS, "the lowest layer is a membrane that the section names")
    ways = ["that nothing is stored and no heating appliance stands in the space"]
    if any(_deep(rule["joists"], one) for one in assembly.layers):
        ways.append("that the joists are lumber of 2 by 10 or more")
    board = rule["membranes"][0]
    if under is not None and under.family in rule["equal"] and _thick(under, board["least"]):
        ways.append(f"that {called(under)} is equal to wallboard")
    question = f"ask the authority, and show it: {', or '.join(ways)}"
    return Outcome(Verdict.NEEDS_JUDGEMENT, "no membrane that the section names lies under the joists", question)


def _is(row: dict[str, Any], layer: Layer) -> bool:
    named = layer.material in row["materials"] if "materials" in row else layer.family in row["families"]
    return named and _thick(layer, row["least"])


def _thick(layer: Layer, least: float) -> bool:
    return layer.thickness is not None and layer.thickness.value + ROUNDED >= least


def _deep(joists: dict[str, float], layer: Layer) -> bool:
    """Whether the layer's framing is as deep and wide as the joists that need no membrane."""
    width = layer.member.width if layer.member else None
    return width is not None and width.value + ROUNDED >= joists["width"] and _thick(layer, joists["depth"])
