"""Fire inside the assembly: flame spread of what the room sees, fire blocks of concealed spaces (NBC 9.10.16 and 9.10.17)."""

from typing import Any

from layerfolio.assembly.types import Assembly, Layer
from layerfolio.codes import judges
from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Verdict
from layerfolio.codes.making import finding
from layerfolio.codes.naming import called
from layerfolio.codes.outcomes import Outcome
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.stated import documents_for, figure_of, metres, of_assembly
from layerfolio.codes.wording import listed
from layerfolio.studies.types import ThermalStudy, VapourStudy


def judge_flame_spread(requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, about: Context) -> Finding:
    """The rating of the innermost layer: stated with its document, else by the code's own table of ratings."""
    assembly = thermal.assembly
    layer = assembly.layers[-1]
    most = requirement.figures["at_most"]
    stated, entries = _stated(layer, assembly, about)
    if stated is not None:
        found, given = _of_report(stated, most, layer, entries, about), f"{called(layer)}, {stated:g} as stated"
    else:
        found, given = _generic(requirement, layer, most)
    return finding(
        requirement, about, found.verdict, assembly=assembly.name, reason=found.reason, next_step=found.next_step,
        asked=f"flame spread of {most} or less", given=given,
    )  # fmt: skip


def _stated(layer: Layer, assembly: Assembly, about: Context) -> tuple[float | None, tuple[Any, ...]]:
    """The rating that the project file gives the layer or its material, and the entries whose documents may show it."""
    layers = of_assembly(about, assembly.name, "layers") or ()
    own = layers[layer.number - 1] if len(layers) >= layer.number else None
    material = (getattr(about.project, "materials", None) or {}).get(layer.material)
    entries = tuple(one for one in (own, material) if one is not None)
    rating = next((one.flame_spread for one in entries if getattr(one, "flame_spread", None) is not None), None)
    return rating, entries


def _of_report(stated: float, most: float, layer: Layer, entries: tuple[Any, ...], about: Context) -> Outcome:
    if not judges.at_most(stated, most):
        return Outcome(Verdict.DOES_NOT_MEET, "the stated flame spread is over the limit", "cover it, or choose another surface")
    held = [one for entry in entries for one in documents_for(about, layer.material or layer.name, entry)]
    general = documents_for(about, layer.name, None, "flame spread")
    proves = [one for one in held if any("flame" in word.lower() for word in getattr(one, "proves", None) or ())]
    if proves or general:
        return Outcome(Verdict.MEETS, "the stated flame spread, with its report, is within the limit")
    return Outcome(
        Verdict.NEEDS_EVIDENCE, "the stated flame spread has no report",
        f"supply the flame-spread report of {called(layer)} to CAN/ULC-S102",
    )  # fmt: skip


def _generic(requirement: Requirement, layer: Layer, most: float) -> tuple[Outcome, str]:
    rule, place = requirement.rule, requirement.rule["generic_place"]
    report = f"supply the flame-spread report of {called(layer)} to CAN/ULC-S102, or cover it"
    if layer.family in rule["none"]:
        words = f"{place} has no rating for it: too little was tested"
        return Outcome(Verdict.NEEDS_EVIDENCE, words, report), f"{called(layer)}, no rating"
    depth = layer.thickness.value if layer.thickness else 0.0
    for row in rule["generic"]:
        if layer.family not in row.get("families", ()) and layer.material not in row.get("materials", ()):
            continue
        if "over" in row:
            words = f"{place} puts low-density fibreboard over {row['over']}"
            return Outcome(Verdict.NEEDS_EVIDENCE, words, report), f"{called(layer)}, over {row['over']} by {place}"
        if judges.at_least(depth + 2.5e-4, row["from"]):
            within = judges.at_most(row["rating"], most)
            verdict = Verdict.MEETS if within else Verdict.DOES_NOT_MEET
            return Outcome(verdict, f"by {place}, without a report"), f"{called(layer)}, {row['rating']} by {place}"
    return Outcome(Verdict.NEEDS_EVIDENCE, f"{place} has no row for it", report), f"{called(layer)}, not rated"


def judge_fire_blocks(requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, about: Context) -> Finding:
    """Concealed air spaces of a wall, and the distance of the blocks in them."""
    assembly, rule = thermal.assembly, requirement.rule
    spaces = [one for one in assembly.layers if one.kind == "cavity"]
    found = _spaces(requirement, assembly, spaces, about) or _blocks(requirement, assembly, about)
    up, along = (metres(rule[key], about.customary) for key in ("vertical", "horizontal"))
    shown = [f"{called(one)}, {metres(one.thickness.value, about.customary) if one.thickness else 'no depth'}" for one in spaces]
    return finding(
        requirement, about, found.verdict, assembly=assembly.name, reason=found.reason, next_step=found.next_step,
        asked=f"blocks at each floor, {up} apart upwards and {along} along at most; none where one space of "
        f"{metres(rule['one_space'], about.customary)} at most is all, or where spaces are filled",
        given=listed(shown) + _block_words(assembly, about) if spaces else "no concealed air space",
    )  # fmt: skip


def _block_words(assembly: Assembly, about: Context) -> str:
    shown = [
        f"{metres(value, about.customary)} {word}"
        for word, value in (("upwards", figure_of(about, assembly.name, "fire_blocks.vertical")),
                            ("along", figure_of(about, assembly.name, "fire_blocks.horizontal"))) if value is not None
    ]  # fmt: skip
    material = of_assembly(about, assembly.name, "fire_blocks.material")
    return f"; blocks {listed(shown)}{f' ({material})' if material else ''}" if shown else ""


def _spaces(requirement: Requirement, assembly: Assembly, spaces: list[Layer], about: Context) -> Outcome | None:
    if not spaces:
        return Outcome(Verdict.NOT_ASKED, "the wall has no concealed air space")
    most = requirement.rule["one_space"]
    insulated = any(one.insulating for one in assembly.layers)
    only = spaces[0]
    if len(spaces) == 1 and insulated and only.thickness and judges.at_most(only.thickness.value, most):
        return Outcome(Verdict.NOT_ASKED, f"its one air space is no deeper than {metres(most, about.customary)}")
    return None


def _blocks(requirement: Requirement, assembly: Assembly, about: Context) -> Outcome:
    rule = requirement.rule
    up, along = (figure_of(about, assembly.name, f"fire_blocks.{key}") for key in ("vertical", "horizontal"))
    far = [
        word for word, value, most in (("upwards", up, rule["vertical"]), ("along", along, rule["horizontal"]))
        if value is not None and not judges.at_most(value, most)
    ]  # fmt: skip
    if far:
        return Outcome(
            Verdict.DOES_NOT_MEET, f"the blocks are too far apart {listed(far)}", "set them closer, or fill the spaces"
        )
    missing = [f"fire_blocks.{key}" for key, value in (("vertical", up), ("horizontal", along)) if value is None]
    if not of_assembly(about, assembly.name, "fire_blocks.material"):
        missing.append("fire_blocks.material")
    if missing:
        return Outcome(
            Verdict.NEEDS_EVIDENCE, f"{listed(missing)} not given; concealed spaces need blocks unless what lines them is "
            "noncombustible or of flame spread 25 at most",
            f"state {listed(missing)}; blocks may be {rule['materials']}",
        )  # fmt: skip
    return Outcome(Verdict.MEETS, "the stated distances are within the limits; that they stand at each floor is seen on site")
