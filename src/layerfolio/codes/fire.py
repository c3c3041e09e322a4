"""Fire inside the assembly: flame spread of what the room sees and of insulation, fire blocks of concealed spaces.

NBC 9.10.16 and 9.10.17; IRC R302.9 and R302.11, which limit smoke too and know no ratings without a report.
"""

from typing import Any, NamedTuple

from layerfolio.assembly.types import Assembly, Layer
from layerfolio.codes import judges
from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Verdict
from layerfolio.codes.making import finding
from layerfolio.codes.naming import called
from layerfolio.codes.outcomes import Outcome
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.stated import documents_for, expired_for, figure_of, metres, of_assembly
from layerfolio.codes.wording import listed
from layerfolio.studies.types import ThermalStudy, VapourStudy


def judge_flame_spread(requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, about: Context) -> Finding:
    """The rating of the innermost layer: stated with its document, else by the code's own table of ratings."""
    assembly, figures = thermal.assembly, requirement.figures
    layer = assembly.layers[-1]
    most, smoke = figures["at_most"], figures.get("smoke_at_most")
    stated = ratings(layer, assembly, about)
    if stated.flame is not None or "generic" not in requirement.rule:
        found, given = of_report(stated, (most, smoke), layer, requirement.rule["standard"], about), given_ratings(stated, layer)
    else:
        found, given = _generic(requirement, layer, most)
    return finding(
        requirement, about, found.verdict, assembly=assembly.name, reason=found.reason, next_step=found.next_step,
        asked=limit_words(most, smoke), given=given,
    )  # fmt: skip


LINING, INSULATION = "flame-spread report of the lining", "surface-burning report of the insulation"
"""The report of a layer by what it is rated as: the codes have limits of their own for each, the register a row."""


class Ratings(NamedTuple):
    """Flame spread and smoke developed as stated, and the entries of the project file whose documents may show them."""

    flame: float | None
    smoke: float | None
    entries: tuple[Any, ...]


def ratings(layer: Layer, assembly: Assembly, about: Context) -> Ratings:
    """What the project file states of a layer, or of its material."""
    layers = of_assembly(about, assembly.name, "layers") or ()
    own = layers[layer.number - 1] if len(layers) >= layer.number else None
    material = (getattr(about.project, "materials", None) or {}).get(layer.material)
    entries = tuple(one for one in (own, material) if one is not None)
    flame, smoke = (
        next((getattr(one, key) for one in entries if getattr(one, key, None) is not None), None)
        for key in ("flame_spread", "smoke_developed")
    )
    return Ratings(flame, smoke, entries)


def limit_words(flame: float, smoke: float | None) -> str:
    """ "flame spread of 200 or less, smoke developed of 450 or less"."""
    return f"flame spread of {flame:g} or less" + (f", smoke developed of {smoke:g} or less" if smoke is not None else "")


def given_ratings(stated: Ratings, layer: Layer) -> str:
    """The stated ratings as a finding prints them."""
    shown = [f"{one:g}" for one in (stated.flame, stated.smoke) if one is not None]
    return f"{called(layer)}, {' and '.join(shown)} as stated" if shown else f"{called(layer)}, not rated"


def of_report(
    stated: Ratings, limits: tuple[float, float | None], layer: Layer, standard: str, about: Context, report: str = LINING
) -> Outcome:
    """Stated ratings against their limits; they count with a report that is valid. `limits`: flame, smoke (None: no limit);
    `report`: how it is called.
    """
    supply = f"supply the {report} {called(layer)} to {standard}"
    pairs = (("flame spread", stated.flame, limits[0]), ("smoke developed", stated.smoke, limits[1]))
    over = [word for word, value, most in pairs if value is not None and most is not None and not judges.at_most(value, most)]
    if over:
        are = "are" if len(over) > 1 else "is"
        return Outcome(Verdict.DOES_NOT_MEET, f"the stated {listed(over)} {are} over the limit", "cover it, or choose another")
    missing = [word for word, value, most in pairs if value is None and most is not None]
    if missing:
        return Outcome(Verdict.NEEDS_EVIDENCE, f"{listed(missing)} of {called(layer)} not stated", supply)
    if _reports(documents_for, stated, layer, about):
        return Outcome(Verdict.MEETS, "the stated flame spread, with its report, is within the limit")
    old = next(iter(_reports(expired_for, stated, layer, about)), None)
    words = f"its report {old.number} has expired ({old.expires})" if old else "it has no report"
    return Outcome(Verdict.NEEDS_EVIDENCE, f"the flame spread of {called(layer)} is stated; {words}", supply)


def _reports(papers: Any, stated: Ratings, layer: Layer, about: Context) -> list[Any]:
    """Those of the papers that prove the flame spread: of its material or layer, or of the project under that claim."""
    held = [one for entry in stated.entries for one in papers(about, layer.material or layer.name, entry)]
    proves = [one for one in held if any("flame" in word.lower() for word in getattr(one, "proves", None) or ())]
    return [*proves, *papers(about, layer.name, None, "flame spread")]


def _generic(requirement: Requirement, layer: Layer, most: float) -> tuple[Outcome, str]:
    rule, place = requirement.rule, requirement.rule["generic_place"]
    report = f"supply the flame-spread report of the lining {called(layer)} to {rule['standard']}, or cover it"
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
    sizes = {key: metres(rule[key], about.customary) for key in ("vertical", "horizontal", "one_space") if key in rule}
    shown = [f"{called(one)}, {metres(one.thickness.value, about.customary) if one.thickness else 'no depth'}" for one in spaces]
    return finding(
        requirement, about, found.verdict, assembly=assembly.name, reason=found.reason, next_step=found.next_step,
        asked=rule["asked"].format(**sizes),
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
    most = requirement.rule.get("one_space", 0.0)  # of the IRC: no space is free of blocks
    insulated = any(one.insulating for one in assembly.layers)
    only = spaces[0]
    if len(spaces) == 1 and insulated and only.thickness and judges.at_most(only.thickness.value, most):
        return Outcome(Verdict.NOT_ASKED, f"its one air space is no deeper than {metres(most, about.customary)}")
    return None


def _blocks(requirement: Requirement, assembly: Assembly, about: Context) -> Outcome:
    rule = requirement.rule
    up, along = (figure_of(about, assembly.name, f"fire_blocks.{key}") for key in ("vertical", "horizontal"))
    far = [
        word for word, value, most in (("upwards", up, rule.get("vertical")), ("along", along, rule["horizontal"]))
        if None not in (value, most) and not judges.at_most(value, most)
    ]  # fmt: skip
    if far:
        return Outcome(
            Verdict.DOES_NOT_MEET, f"the blocks are too far apart {listed(far)}", "set them closer, or fill the spaces"
        )
    missing = [f"fire_blocks.{key}" for key, value in (("vertical", up), ("horizontal", along)) if value is None and key in rule]
    if not of_assembly(about, assembly.name, "fire_blocks.material"):
        missing.append("fire_blocks.material")
    if missing:
        return Outcome(
            Verdict.NEEDS_EVIDENCE, f"{listed(missing)} not given{rule.get('unless', '')}",
            f"state {listed(missing)}; blocks may be {rule['materials']}",
        )  # fmt: skip
    words = "the stated distances are within the limits"
    open_ = [one for one in assembly.layers if one.cavity == "ventilated"]
    if open_:
        spaces = listed([called(one) for one in open_])
        step = f"ask the authority: how does air pass the blocks in {spaces}, which is drawn ventilated?"
        words += "; solid blocks close a space that counts as ventilated"
        if len(every := [called(one) for one in assembly.layers if one.kind == "cavity"]) > 1:
            words += f"; whether the blocks stand in each of {listed(every)} is not stated"
            step = f"show in which spaces the blocks stand; {step}"
        return Outcome(Verdict.NEEDS_JUDGEMENT, words, step)
    return Outcome(Verdict.MEETS, f"{words}; that they stand at each floor is seen on site")
