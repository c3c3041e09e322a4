"""Walls of straw bales by the appendix on strawbale construction, as far as it was read; the rest is a question."""

from dataclasses import replace
from typing import Any

from layerfolio.assembly.types import Assembly, Layer
from layerfolio.catalogue.datum import Datum, Origin
from layerfolio.codes import judges
from layerfolio.codes.climate_zones import named
from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Measured, Verdict
from layerfolio.codes.making import finding
from layerfolio.codes.naming import called
from layerfolio.codes.outcomes import Outcome, worst
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.stated import figure_of, limit_figure, metres
from layerfolio.codes.wording import figure, listed
from layerfolio.studies.types import LayerVapour, ThermalStudy, VapourStudy
from layerfolio.units.table import unit_factor

STRAW, PLASTER = "straw", "plaster"
PERM = unit_factor("perm", "permeance")
R_UNIT = unit_factor("ft2.h.F/Btu", "resistance")
INCH = 0.0254


def bales(assembly: Assembly) -> tuple[Layer, ...]:
    """The layers of straw, from the outside in."""
    return tuple(one for one in assembly.layers if one.family == STRAW)


def judge_straw_bales(requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, about: Context) -> Finding:
    """Their thickness; which straw they are of is shown by their document."""
    assembly, (least, amended) = thermal.assembly, limit_figure(requirement, about)
    straw = bales(assembly)
    sizes = [one.thickness.value for one in straw if one.thickness]
    if len(sizes) < len(straw):
        found = Outcome(Verdict.NEEDS_EVIDENCE, "the thickness of the bales is not given", "state their thickness")
    elif judges.at_least(min(sizes), least):
        found = Outcome(Verdict.MEETS, "the bales are that thick; the straw is seen on site")
    else:
        found = Outcome(Verdict.DOES_NOT_MEET, "the bales are too thin", "thicker bales")
    thick = [metres(one.thickness.value, about.customary) if one.thickness else "no thickness" for one in straw]
    shown = [f"{called(one)}, {size}" for one, size in zip(straw, thick, strict=True)]
    return finding(
        requirement, about, found.verdict, assembly=assembly.name, reason=found.reason, next_step=found.next_step,
        asked=f"bales of {metres(least, about.customary)} or more in height and thickness, of {requirement.rule['straws']} straw",
        given="; ".join(shown), provided=Measured("d", min(sizes)) if sizes else None, limit=Measured("d", least),
        amended=amended,
    )  # fmt: skip


def judge_straw_finishes(requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, about: Context) -> Finding:
    """What lies on the bales on either side: plaster, or another layer that the authority takes as the finish."""
    assembly = thermal.assembly
    straw = bales(assembly)
    outside = next((one for one in reversed(assembly.layers[: straw[0].number - 1]) if one.kind == "solid"), None)
    inside = next((one for one in assembly.layers[straw[-1].number :] if one.kind == "solid"), None)
    found = worst([_finish(outside, "outside"), _finish(inside, "inside")])
    shown = [f"{side}: {called(one) if one else 'nothing'}" for side, one in (("outside", outside), ("inside", inside))]
    return finding(
        requirement, about, found.verdict, assembly=assembly.name, reason=found.reason, next_step=found.next_step,
        asked="a finish on both sides, against weather, damage, fire and air through the bales", given="; ".join(shown),
    )  # fmt: skip


def _finish(layer: Layer | None, side: str) -> Outcome:
    if layer is None:
        return Outcome(Verdict.DOES_NOT_MEET, f"no finish lies {side}", f"a finish {side}")
    if layer.family == PLASTER:
        return Outcome(Verdict.MEETS, "plaster lies on the bales")
    return Outcome(
        Verdict.NEEDS_JUDGEMENT, f"what lies on the bales {side} is no plaster",
        f"ask the authority: is {called(layer)} accepted as the finish of the bales {side}?",
    )  # fmt: skip


def judge_straw_base(requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, about: Context) -> Finding:
    """Always evidence: the base is a detail. The distance to the earth stands beside its figure."""
    height, least = figure_of(about, thermal.assembly.name, "clearance_to_ground"), requirement.rule["least_earth"]
    above = f"{metres(least, about.customary)} above the earth (second-hand, from memory)"
    space = metres(requirement.figures["space"], about.customary)
    low = height is not None and not judges.at_least(height, least)
    return finding(
        requirement, about, Verdict.NEEDS_EVIDENCE, assembly=thermal.assembly.name,
        asked=f"a Class II retarder between bales and concrete or masonry, a filled space of {space} or more over it, {above}",
        given=f"clearance to the ground {'not given' if height is None else metres(height, about.customary)}",
        reason="the base of the wall is not in the project file" + ("; by memory the bales are too low" if low else ""),
        next_step="supply the detail at the base: sill plates, filling, retarder, flashing",
    )  # fmt: skip


def judge_straw_vapour(requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, about: Context) -> Finding:
    """Always a question: the sentences were read second-hand. What the figures would say stands in the reason."""
    rule, assembly = requirement.rule, thermal.assembly
    first, last = bales(assembly)[0].number, bales(assembly)[-1].number
    rows = [one for one in vapour.layers if one.layer.kind != "cavity" and not first <= one.layer.number <= last]
    inside = [one for one in rows if one.layer.number > last]
    least, most = rule["least"] * PERM, rule["class_iii"]["most"] * PERM
    cold = any(named(zone, rule["class_iii"]["zones"]) for zone in about.zones)
    how = {"customary": about.customary, "both": about.both}
    said = [_tight(rows, least), _class_iii(inside, most) if cold else ""]
    return finding(
        requirement, about, Verdict.NEEDS_JUDGEMENT, assembly=assembly.name, step=f"{assembly.name}-V",
        asked=f"by a transcription of 2015: nothing under {figure('W', least, **how)} on bales, no Class I or II retarder; "
        f"inside, zones 5 to 8 and marine 4, Class III at most: {figure('W', most, **how)}",
        given="; ".join(f"{called(one.layer)} {_permeance(one, how)}" for one in rows) or "nothing on the bales",
        reason="; ".join(filter(None, ("the adopted appendix was not read", *said))),
        next_step="ask the authority: which permeance does the adopted appendix ask of plaster, boards and membranes on bales, "
        "and does it stand before R702.7?",
    )  # fmt: skip


def _permeance(row: LayerVapour, how: dict[str, bool]) -> str:
    return "not given" if row.permeance_dry is None else figure("W", row.permeance_dry, **how)


def _tight(rows: list[LayerVapour], least: float) -> str:
    tight = [called(one.layer) for one in rows if one.permeance_dry is not None and not judges.at_least(one.permeance_dry, least)]
    return f"by it {listed(tight)} would be too tight" if tight else "by it no layer would be too tight"


def _class_iii(inside: list[LayerVapour], most: float) -> str:
    """Whether the layers inside the bales together would be Class III at most."""
    values = [one.permeance_dry for one in inside]
    if not values or any(one is None or one <= 0 for one in values):
        return "the permeance inside is not known"
    together = 1 / sum(1 / one for one in values)
    return "inside it would be enough" if judges.at_most(together, most) else "inside it would be too open"


def judge_straw_resistance(requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, about: Context) -> Finding:
    """The project's resistance of the bales beside the appendix's, with the transmittance of the wall by each."""
    assembly = thermal.assembly
    straw = bales(assembly)
    thick = all(one.thickness for one in straw)
    inches = sum(one.thickness.value for one in straw) / INCH if thick else 0.0
    rows = requirement.rule["per_inch"].items()
    found = [(way, r * R_UNIT * inches, _transmittance(assembly, R_UNIT * r / INCH)) for way, r in rows]
    own = sum(one.resistance or 0.0 for one in thermal.layers if one.layer.family == STRAW)
    how = {"customary": about.customary, "both": about.both}
    shown = [f"{way} {figure('R', R, **how)}, wall {figure('U', U, **how)}" for way, R, U in found if thick and U is not None]
    mine = f"{figure('R', own, **how)}" + (f", wall {figure('U', thermal.final.transmittance, **how)}" if thermal.final else "")
    return finding(
        requirement, about, Verdict.NEEDS_JUDGEMENT, assembly=assembly.name, step=f"{assembly.name}-T",
        asked=f"by a second-hand reading of the appendix, bales {'; '.join(shown)}" if shown
        else "the appendix's own resistance of bales for each inch",
        given=f"bales by the project file {mine}", provided=Measured("R", own) if own else None,
        reason="where the appendix is adopted its own resistance may stand before the project's; its table was not read",
        next_step="ask the authority: which resistance of bales counts, the adopted appendix's or the test report's?",
    )  # fmt: skip


def _transmittance(assembly: Assembly, resistivity: float) -> float | None:
    """The wall's transmittance with bales of that resistivity (m.K/W), all else as it is."""
    from layerfolio.studies.thermal import thermal_study

    datum = Datum(1 / resistivity, Origin("code", "straw-author", "", "memory"))
    final = thermal_study(_with(assembly, datum)).final
    return final.transmittance if final else None


def _with(assembly: Assembly, datum: Any) -> Assembly:
    plain = {"conductivity": datum, "resistivity": None, "resistance": None}
    layers = tuple(replace(one, **plain) if one.family == STRAW else one for one in assembly.layers)
    return replace(assembly, layers=layers, still=None)
