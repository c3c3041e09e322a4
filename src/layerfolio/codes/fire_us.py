"""What the IRC asks about fire beside other codes: openings near the lot line (R302.1), insulation (R302.10)."""

from typing import Any

from layerfolio.assembly.types import Assembly, Layer
from layerfolio.codes import judges
from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Measured, Verdict
from layerfolio.codes.fire import INSULATION, Ratings, given_ratings, limit_words, of_report, ratings
from layerfolio.codes.fire_distance import NO_DISTANCE, cases, distance_words, open_answer
from layerfolio.codes.making import finding
from layerfolio.codes.naming import called
from layerfolio.codes.outcomes import Outcome, agreed, worst
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.said_absent import absent
from layerfolio.codes.stated import documents_for, figure_of, metres, square_metres
from layerfolio.codes.wording import listed as _listed
from layerfolio.studies.types import ThermalStudy, VapourStudy

ROUNDED = 2.5e-4
"""What a thickness in whole millimetres may lack of one in inches, m."""


def judge_openings_near_line(requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, about: Context) -> Finding:
    """Openings of the wall against the share that its distance to the lot line leaves."""
    name, rule = thermal.assembly.name, requirement.rule
    distance = figure_of(about, name, "distance_to_boundary")
    area = sum(one.total_area for one in about.envelope.openings.values() if one.wall == name)
    wall = figure_of(about, name, "face_area") or (thermal.assembly.area.value if thermal.assembly.area else None)
    found = NO_DISTANCE
    if distance is not None:
        rows = cases(requirement, distance, about)
        listed = bool(about.envelope.openings) or absent(about, "openings")
        possible = [_share(_allowed(row, one), (area, wall), listed, about) for row, one in rows]
        found = agreed(possible, open_answer(requirement, about))
    near, free = (metres(one, about.customary) for one in (rule["bands"][0]["below"], rule["free_from"]))
    names = [one.name for one in about.envelope.openings.values() if one.wall == name]
    openings = f"{square_metres(area, about.customary)} of openings, {_listed(names)}" if area else "no openings listed"
    return finding(
        requirement, about, found.verdict, assembly=name, reason=found.reason, next_step=found.next_step,
        asked=rule["asked"].format(near=near, free=free), step="C4" if area else "",
        given=f"{openings}; {distance_words(requirement, distance, about)}", provided=Measured("area", area),
    )  # fmt: skip


def _allowed(rows: dict[str, Any], distance: float) -> float | None:
    """The share of the wall that may be open; None where it is not limited."""
    if judges.at_least(distance, rows["free_from"]):
        return None
    below = (one for one in rows["bands"] if not judges.at_least(distance, one["below"]))
    return next(below)["share"]


def _share(share: float | None, areas: tuple[float, float | None], listed: bool, about: Context) -> Outcome:
    area, wall = areas
    if share is None:
        return Outcome(Verdict.MEETS, "at this distance openings are not limited")
    if not listed:
        step = "list the openings of each wall; where there are none, state building.absent: [openings]"
        return Outcome(Verdict.NEEDS_EVIDENCE, "the project lists no openings", step)
    if area == 0:
        return Outcome(Verdict.MEETS, "no opening is listed in this wall")
    if share == 0:
        return Outcome(Verdict.DOES_NOT_MEET, "so near the lot line no opening is allowed", "no openings in this wall")
    if wall is None:
        return Outcome(Verdict.NEEDS_EVIDENCE, "the area of the wall is not given", "state face_area")
    most = square_metres(share * wall, about.customary)
    if judges.at_most(area, share * wall):
        return Outcome(Verdict.MEETS, f"within {share * 100:.0f} % of the wall, {most}")
    words = f"more than {share * 100:.0f} % of the wall, {most}"
    return Outcome(Verdict.DOES_NOT_MEET, words, "fewer or smaller openings, or more distance")


def judge_insulation_flame_spread(
    requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, about: Context
) -> Finding:
    """Each layer of insulation by its stated ratings; foam, straw and loose fill have routes of their own."""
    assembly, figures = thermal.assembly, requirement.figures
    layers = [one for one in assembly.layers if one.insulating]
    found = worst([_layer(requirement, one, assembly, about) for one in layers])
    shown = dict.fromkeys(given_ratings(ratings(one, assembly, about), one) for one in layers)
    return finding(
        requirement, about, found.verdict, assembly=assembly.name, reason=found.reason, next_step=found.next_step,
        asked=limit_words(figures["at_most"], figures["smoke_at_most"]), given="; ".join(shown),
    )  # fmt: skip


def _layer(requirement: Requirement, layer: Layer, assembly: Assembly, about: Context) -> Outcome:
    rule, figures, stated = requirement.rule, requirement.figures, ratings(layer, assembly, about)
    limits, loose = (figures["at_most"], figures["smoke_at_most"]), rule["loose_fill"]
    if layer.family in rule["foam"]["families"]:
        own = of_report(stated, (figures["foam_at_most"], limits[1]), layer, rule["standard"], about, INSULATION)
        return worst([own, _barrier(requirement, layer, assembly)])
    if layer.family in rule["straw"]["families"] and stated.flame is None:
        return Outcome(Verdict.NEEDS_JUDGEMENT, f"{called(layer)}, not rated", f"ask the authority: {rule['straw']['ask']}")
    if layer.family in loose["families"]:
        return _loose(loose, layer, stated, limits, about)
    return of_report(stated, limits, layer, rule["standard"], about, INSULATION)


def _loose(loose: dict[str, Any], layer: Layer, stated: Ratings, limits: tuple[float, float], about: Context) -> Outcome:
    """Loose fill; of cellulosic fibre it meets only with what the federal rule asks of it."""
    found = of_report(stated, limits, layer, loose["standard"], about, INSULATION)
    if found.verdict is Verdict.NEEDS_EVIDENCE:
        return Outcome(found.verdict, f"{found.reason}; {loose['cellulose']}", found.next_step)
    words = f"{layer.material} {layer.title}".lower()
    cellulosic = any(one in words for one in loose["cellulosic"])
    if found.verdict is not Verdict.MEETS or not cellulosic or _says(loose["part"], layer, stated, about):
        return found
    return Outcome(
        Verdict.NEEDS_EVIDENCE, f"flame spread and smoke are within the limits; {loose['cellulose']}",
        f"supply the surface-burning label of the insulation {called(layer)} under 16 CFR 1209 and 1404 (proves: 16 CFR 1209)",
    )  # fmt: skip


def _says(word: str, layer: Layer, stated: Ratings, about: Context) -> bool:
    """Whether a valid document of the layer or its material names the word among what it proves."""
    held = [one for entry in stated.entries for one in documents_for(about, layer.material or layer.name, entry)]
    return any(word in claim.lower() for one in held for claim in getattr(one, "proves", None) or ())


def judge_exposed_insulation(requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, about: Context) -> Finding:
    """Insulation that nothing covers on the floor of an attic; its flux is no figure of the file: a report is named, not read."""
    assembly, rule = thermal.assembly, requirement.rule
    top = next((one for one in assembly.layers if one.kind == "solid"), None)
    if top is None or not top.insulating:
        found = Outcome(Verdict.NOT_ASKED, "no insulation lies exposed")
    elif _says(rule["proof"], top, ratings(top, assembly, about), about):
        step = f"the authority reviews the report of {called(top)}: does it show 0.12 W/cm² or more, by ASTM E970?"
        found = Outcome(Verdict.NEEDS_JUDGEMENT, "a report on radiant flux is given, and not read by this tool", step)
    else:
        step = f"supply the report on the critical radiant flux of the insulation {called(top)}, by ASTM E970"
        found = Outcome(Verdict.NEEDS_EVIDENCE, "it lies exposed, and no document is on its critical radiant flux", step)
    return finding(
        requirement, about, found.verdict, assembly=assembly.name, reason=found.reason, next_step=found.next_step,
        asked=rule["asked"], given="nothing exposed" if top is None else f"{called(top)} on top",
    )  # fmt: skip


def _barrier(requirement: Requirement, layer: Layer, assembly: Assembly) -> Outcome:
    """What separates foam from the room."""
    rule, clause = requirement.rule["foam"], requirement.figures["foam_clause"]
    for one in assembly.layers[layer.number :]:
        enough = one.thickness and one.thickness.value + ROUNDED >= rule["barrier"]["least"]
        if one.family in rule["barrier"]["families"] and enough:
            return Outcome(Verdict.MEETS, f"{called(one)} separates it from the room ({clause})")
    words = f"{clause}: foam needs {rule['barrier_words']}"
    return Outcome(Verdict.NEEDS_JUDGEMENT, words, f"ask the authority: what separates {called(layer)} from the room?")
