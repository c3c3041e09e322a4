"""What is added to the transmittance of a plane component: fasteners, air voids, rain under insulation (ISO 6946, annex F)."""

from math import pi

from layerfolio.steps.formula import formula


@formula("R_T0", source="iso-6946-2017, 6.7.1.2")
def total_without_framing(*, R: tuple[float, ...]) -> float:
    """Films and layers in series through the main materials, framing left out."""
    return sum(R)


@formula("A_pin", source="iso-6946-2017, annex F")
def fastener_section(*, D_pin: float) -> float:
    """Cross-section of a round fastener."""
    return pi * D_pin**2 / 4


@formula("n_pin", source="iso-6946-2017, annex F")
def fasteners_per_area(*, a_pin: float, b_pin: float) -> float:
    """Fasteners per square metre from their spacing along the rows and the distance of the rows."""
    return 1 / (a_pin * b_pin)


@formula("alpha", source="iso-6946-2017, annex F")
def recessed_coefficient(*, d_pen: float, d_ins: float) -> float:
    """Coefficient of a fastener that does not reach through the insulation."""
    return 0.8 * d_pen / d_ins


@formula("dU_f", source="iso-6946-2017, formula (F.5)")
def fastener_correction(
    *, alpha: float, lam_pin: float, A_pin: float, n_pin: float, d_ins: float, R_ins: float, R_T0: float
) -> float:
    """Correction for fasteners that cross insulation."""
    return alpha * lam_pin * A_pin * n_pin / d_ins * (R_ins / R_T0) ** 2


@formula("dU_g", source="iso-6946-2017, formula (F.3)")
def void_correction(*, dU_void: float, R_ins: float, R_T0: float) -> float:
    """Correction for air voids in insulation."""
    return dU_void * (R_ins / R_T0) ** 2


@formula("dU_r", source="iso-6946-2017, formula (F.6)")
def rain_correction(*, p_rain: float, fx: float, R_ins: float, R_T0: float) -> float:
    """Correction for rain that runs between the insulation and the waterproof layer of an inverted roof."""
    return p_rain * fx * (R_ins / R_T0) ** 2


@formula("R_ins", source="iso-6946-2017, annex F")
def insulation_above(*, R: tuple[float, ...]) -> float:
    """Insulation above the waterproof layer of an inverted roof."""
    return sum(R)


@formula("dU", source="iso-6946-2017, formula (F.2)")
def all_corrections(*, dU_x: tuple[float, ...]) -> float:
    """All corrections together."""
    return sum(dU_x)


@formula("s_dU", source="iso-6946-2017, annex F")
def correction_share(*, dU: float, U: float) -> float:
    """Share of the corrections in the transmittance."""
    return dU / U


@formula("U_c", source="iso-6946-2017, formula (F.1)")
def corrected_transmittance(*, U: float, dU: float) -> float:
    """Corrected thermal transmittance."""
    return U + dU
