"""Corrections of a plane component's transmittance: fasteners, air voids, rain on an inverted roof (ISO 6946, annex F)."""

from dataclasses import dataclass

from layerfolio.assembly.beside import Fasteners
from layerfolio.assembly.types import Assembly
from layerfolio.formulas import corrections as f
from layerfolio.steps.trace import Recorder
from layerfolio.studies.layer_heat import source_words, subject
from layerfolio.studies.types import LayerHeat

ANNEX = "iso-6946-2017, annex F"


@dataclass(frozen=True, slots=True)
class Corrections:
    """Corrections of the transmittance, W/(m2.K), for what the plain layers do not show (ISO 6946, annex F).

    `counted` is False where they are so small together that they are dropped; `corrected_transmittance` is then the plain one.
    """

    fasteners: float
    air_voids: float
    inverted_roof: float
    total: float
    counted: bool
    corrected_transmittance: float


def corrections(
    assembly: Assembly, layers: tuple[LayerHeat, ...], space: float, transmittance: float, record: Recorder
) -> Corrections | None:
    """What is added to `transmittance` (W/(m2.K)); None where nothing is stated that the set counts.

    `space` is the resistance of an unheated space, m2.K/W, 0 without one. Layers and spaces count through their main
    materials, as the annex takes the resistances without thermal bridges.
    """
    data = assembly.completions
    if data is None:
        return None
    record.section("Corrections of the transmittance", key="corrections")
    parts = (assembly.inside_film.value, assembly.outside_film.value, space, *(one.resistance for one in layers))
    total = record.step(f.total_without_framing, R=tuple(part for part in parts if part))
    through = sum(_fasteners(assembly, one, total, record) for one in layers if one.layer.fasteners)
    voids = sum(_voids(assembly, one, total, record) for one in layers if one.layer.air_voids is not None)
    rain = _rain(assembly, layers, total, record)
    found = tuple(one for one in (through, voids, rain) if one)
    if not found:
        record.choice("The transmittance stays as it is", "no correction adds anything", ANNEX)
        return Corrections(0.0, 0.0, 0.0, 0.0, False, transmittance)
    together = record.step(f.all_corrections, dU_x=found)
    share = record.step(f.correction_share, dU=together, U=transmittance)
    limit = data.dropped_below
    if share < limit.value:
        words = f"together they are {share * 100:.2g} % of the transmittance, less than {limit.value * 100:g} %"
        record.choice("The corrections are dropped", words, ANNEX)
        return Corrections(through, voids, rain, together, False, transmittance)
    corrected = record.step(f.corrected_transmittance, U=transmittance, dU=together)
    return Corrections(through, voids, rain, together, True, corrected)


def _fasteners(assembly: Assembly, heat: LayerHeat, total: float, record: Recorder) -> float:
    """Correction for the fasteners of one layer; 0, with the reason, where they cannot or need not be counted."""
    pins, about = heat.layer.fasteners, subject(heat.layer)
    if pins.conducts_poorly:
        limit = assembly.completions.poor_below
        words = f"they conduct less than {limit.value:g} W/(m·K)"
        record.choice(f"No correction for {pins.title} of {about}", words, ANNEX)
        return 0.0
    if pins.lacking:
        record.choice(f"No correction for {pins.title} of {about}", f"missing: {'; '.join(pins.lacking)}", ANNEX)
        return 0.0
    thickness = heat.layer.thickness.value
    conductivity = pins.conductivity
    record.given("lam_pin", conductivity.value, pins.title, source_words(conductivity), conductivity)
    return record.step(
        f.fastener_correction,
        about=about,
        alpha=_coefficient(assembly, pins, thickness, record),
        lam_pin=conductivity.value,
        A_pin=record.step(f.fastener_section, D_pin=pins.diameter),
        n_pin=pins.per_area or record.step(f.fasteners_per_area, a_pin=pins.spacing, b_pin=pins.rows),
        d_ins=thickness,
        R_ins=heat.resistance,
        R_T0=total,
    )


def _coefficient(assembly: Assembly, pins: Fasteners, thickness: float, record: Recorder) -> float:
    """0.8 through the whole layer, in proportion for fasteners that do not reach through it."""
    if pins.depth is None or pins.depth >= thickness:
        given = assembly.completions.through
        return record.given("alpha", given.value, "reach through the layer", source_words(given), given)
    because = "their share of the layer's thickness stands before the coefficient; a transcription divides otherwise: confirm"
    record.choice("The fasteners do not reach through the layer", because, ANNEX)
    return record.step(f.recessed_coefficient, d_pen=pins.depth, d_ins=thickness)


def _voids(assembly: Assembly, heat: LayerHeat, total: float, record: Recorder) -> float:
    """Correction for the air voids of one layer by their level."""
    level = heat.layer.air_voids
    figure = assembly.completions.voids[level]
    if not figure.value:
        return 0.0
    record.given("dU_void", figure.value, f"air voids of level {level}", source_words(figure), figure)
    about = subject(heat.layer)
    return record.step(f.void_correction, about=about, dU_void=figure.value, R_ins=heat.resistance, R_T0=total)


def _rain(assembly: Assembly, layers: tuple[LayerHeat, ...], total: float, record: Recorder) -> float:
    """Correction for rain under the insulation that lies above the waterproof layer."""
    rain = assembly.inverted_roof
    if rain is None:
        return 0.0
    waterproof = max((x.number for x in assembly.layers if "water control" in x.serves), default=None)
    above = [one for one in layers if one.layer.insulating and waterproof and one.layer.number < waterproof]
    if not above:
        because = "no insulating layer lies outside the one that serves water control"
        record.choice("No correction for rain on the inverted roof", because, ANNEX)
        return 0.0
    insulation = record.step(f.insulation_above, R=tuple(one.resistance for one in above))
    record.given("p_rain", rain.precipitation, "rain", "project file")
    record.given("fx", rain.drainage.value, "drainage factor", source_words(rain.drainage), rain.drainage)
    return record.step(
        f.rain_correction, p_rain=rain.precipitation, fx=rain.drainage.value, R_ins=insulation, R_T0=total
    )
