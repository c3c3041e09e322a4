"""Insulation against condensation in an unvented roof (IRC R806.5): by table, or by how warm the sheathing stays."""

from layerfolio.codes.climate_zones import cell, named
from layerfolio.codes.context import Context
from layerfolio.codes.findings import Finding, Measured, Verdict
from layerfolio.codes.frame_wall import RSI, resistance_words, total
from layerfolio.codes.judges import at_least
from layerfolio.codes.making import finding
from layerfolio.codes.outcomes import Outcome, best, by_zone, grouped
from layerfolio.codes.requirements import Requirement
from layerfolio.codes.roof_parts import RoofParts, roof_parts
from layerfolio.codes.wording import listed, pair
from layerfolio.studies.types import LayerHeat, ThermalStudy, VapourStudy
from layerfolio.units.show import fixed

AIR_TEST = ("air permeance", "air-impermeable", "air impermeable", "air leakage")


def judge_unvented_roof(
    requirement: Requirement, thermal: ThermalStudy, vapour: VapourStudy, context: Context
) -> Finding:
    """Rigid insulation on the sheathing, or foam against its underside, as the zone asks."""
    parts = roof_parts(requirement, thermal)
    limits = {zone: _limit(requirement, parts, thermal, zone, context) for zone in context.zones}
    outcome = by_zone({z: _in_zone(requirement, parts, thermal, z, limits[z], context) for z in context.zones})
    foam, fibres = _split(requirement, parts)
    tight, most = max(total(parts.above)[0], total(foam)[0]), max(limits.values())
    weighed = outcome.verdict is not Verdict.NOT_ASKED
    return finding(
        requirement, context, outcome.verdict, assembly=vapour.assembly.name,
        given=_given(parts, foam, fibres, context), asked=_asked(limits, context),
        provided=Measured("R_eff", tight) if weighed else None, limit=Measured("R_eff", most) if weighed else None,
        reason=outcome.reason, next_step=outcome.next_step, step=f"{vapour.assembly.name}-T",
        amended=context.amended[requirement.id].source if requirement.id in context.amended else "",
    )  # fmt: skip


def _asked(limits: dict[str, float], context: Context) -> str:
    words = grouped({zone: resistance_words(one, context) for zone, one in limits.items()})
    where = f", zone {context.zone_words}" if context.zone_words and len(set(limits.values())) == 1 else ""
    return f"rigid or air-impermeable insulation at the sheathing: {words}{where}"


def _split(requirement: Requirement, parts: RoofParts) -> tuple[tuple[LayerHeat, ...], tuple[LayerHeat, ...]]:
    """Foam against the underside of the sheathing, and all other insulation below it."""
    foam, edge = [], parts.deck.number if parts.deck else 0
    for one in parts.below:
        if one.layer.family not in requirement.rule["foam"] or one.layer.number != edge + 1:
            break
        foam.append(one)
        edge = one.layer.number
    return tuple(foam), tuple(one for one in parts.below if one not in foam)


def _given(parts: RoofParts, foam: tuple[LayerHeat, ...], fibres: tuple[LayerHeat, ...], context: Context) -> str:
    if parts.vented:
        return f"{parts.air.title} (layer {parts.air.number})"
    said = [
        f"{resistance_words(total(layers)[0], context)} {where} ({listed([one.layer.name for one in layers])})"
        for layers, where in ((parts.above, "on the sheathing"), (foam, "of foam under it"), (fibres, "else below it"))
        if layers
    ]
    return "; ".join(said) or "no insulation"


def _limit(requirement: Requirement, parts: RoofParts, thermal: ThermalStudy, zone: str, context: Context) -> float:
    amended = context.amended.get(requirement.id)
    if amended is not None and isinstance(amended.value, float):
        return amended.value
    tiles = requirement.rule["tile_roof"]
    if zone in tiles["zones"] and any(one.material in tiles["materials"] for one in thermal.assembly.layers):
        return 0.0
    return cell(requirement.figures["insulation"], zone) * RSI


def _in_zone(
    requirement: Requirement, parts: RoofParts, thermal: ThermalStudy, zone: str, limit: float, context: Context
) -> Outcome:
    if parts.vented:
        return Outcome(Verdict.NOT_ASKED, "the roof is ventilated between insulation and sheathing")
    if parts.deck is None:
        step = "name the structural sheathing among the layers (a panel or boards on the rafters)"
        return Outcome(Verdict.NEEDS_JUDGEMENT, "no structural sheathing is found outside the insulation", step)
    foam, fibres = _split(requirement, parts)
    if not parts.below:
        return Outcome(Verdict.NOT_ASKED, "all insulation lies on the sheathing; none below it keeps it cold")
    if not fibres:
        return _airtight(foam, Outcome(Verdict.MEETS, "foam alone lies against the sheathing"), context)
    ways = [_enough(parts.above, limit, "on the sheathing", context)]
    if foam:
        ways.append(_airtight(foam, _enough(foam, limit, "of foam against the sheathing", context), context))
    if parts.above:
        ways.append(_warm(requirement, parts, thermal, context))
    found = best(ways)
    if found.verdict is not Verdict.DOES_NOT_MEET:
        return found
    reason = "; ".join(dict.fromkeys(one.reason for one in ways))
    port = ", or the way with a vapour diffusion port" if named(zone, requirement.rule["port_zones"]) else ""
    return Outcome(found.verdict, reason, f"more insulation on the sheathing{port}, or ventilation below it")


def _enough(layers: tuple[LayerHeat, ...], limit: float, where: str, context: Context) -> Outcome:
    value, doubtful = total(layers)
    shown, asked = pair("R_eff", value, limit, None, customary=context.customary, both=context.both)
    words = f"{shown} {where}, {asked} asked"
    if not at_least(value, limit):
        return Outcome(Verdict.DOES_NOT_MEET, words, "more insulation")
    if not at_least(value - doubtful, limit):
        step = f"supply the resistance of {listed([one.layer.name for one in layers])} with its source"
        return Outcome(Verdict.NEEDS_EVIDENCE, f"{words}, with figures that rest on memory", step)
    return Outcome(Verdict.MEETS, words)


def _airtight(foam: tuple[LayerHeat, ...], outcome: Outcome, context: Context) -> Outcome:
    """Foam counts as air-impermeable by a test alone: 0.02 L/(s.m2) at 75 Pa at most."""
    if outcome.verdict is Verdict.DOES_NOT_MEET:
        return outcome
    proved = all(_air_report(one, context) for one in foam)
    if proved:
        return outcome
    names = listed([one.layer.name for one in foam])
    limit = "0.02 L/(s·m²) at 75 Pa at most"
    step = f"supply the air permeance of {names} at its thickness, {limit} (proves: [air permeance])"
    return Outcome(Verdict.NEEDS_EVIDENCE, f"{outcome.reason}; that {names} lets no air through is not proved", step)


def _air_report(one: LayerHeat, context: Context) -> bool:
    """Whether a document of the layer, or of its material, proves its air permeance and has not expired."""
    datum = one.layer.resistance or one.layer.resistivity or one.layer.conductivity
    held = (*one.layer.documents, *(datum.origin.documents if datum else ()))
    return any(
        any(word in claim.lower() for claim in document.proves for word in AIR_TEST)
        and (not document.expires or not context.date or document.expires >= context.date)
        for document in held
    )


def _warm(requirement: Requirement, parts: RoofParts, thermal: ThermalStudy, context: Context) -> Outcome:
    """The underside of the sheathing with the mean of the three coldest months outside."""
    rule, cold = requirement.rule["underside"], context.cold_months
    if cold is None or thermal.missing:
        reason = "the temperature of the sheathing is not calculated without monthly means and all thermal figures"
        return Outcome(Verdict.DOES_NOT_MEET, reason)
    inner = sum(one.resistance or 0.0 for one in thermal.layers if one.layer.number > parts.deck.number)
    inner += thermal.assembly.inside_film.value
    whole = sum(one.resistance or 0.0 for one in thermal.layers)
    whole += thermal.assembly.inside_film.value + thermal.assembly.outside_film.value
    found = rule["inside"] - (rule["inside"] - cold) * inner / whole
    words = (
        f"underside of the sheathing at {fixed(found, 2)} °C with {rule['inside']:g} °C inside and {fixed(cold, 1)} °C "
        f"outside (mean of the three coldest months), {fixed(inner, 2)} of {fixed(whole, 2)} m²·K/W inside it; above "
        f"45 °F ({fixed(rule['least'], 2)} °C) asked"
    )
    doubtful = total(parts.above)[1]
    if found <= rule["least"]:
        return Outcome(Verdict.DOES_NOT_MEET, words)
    if rule["inside"] - (rule["inside"] - cold) * inner / (whole - doubtful) <= rule["least"]:
        reason = f"{words}, with figures that rest on memory"
        return Outcome(Verdict.NEEDS_EVIDENCE, reason, "supply the resistance of the outer insulation with its source")
    return Outcome(Verdict.MEETS, words)
