"""Water vapour in and around building components: ISO 13788, and the two-period method of DIN 4108-3."""

from math import exp
from math import log as ln

from layerfolio.steps.formula import formula

WATER, ICE = (0.0, 90.0), (-100.0, 0.0)
"""Temperatures for which the two saturation formulas are used here, degC; both give 610.5 Pa at 0 degC."""
AT_ZERO = 610.5
"""Saturation pressure at 0 degC in both formulas, Pa."""


@formula("p_sat", source="iso-13788-2012, saturation pressure over water", within={"theta": WATER})
def saturation_over_water(*, theta: float) -> float:
    """Saturation vapour pressure at 0 degC and above."""
    return 610.5 * exp(17.269 * theta / (237.3 + theta))


@formula("p_sat", source="iso-13788-2012, saturation pressure over ice", within={"theta": ICE})
def saturation_over_ice(*, theta: float) -> float:
    """Saturation vapour pressure below 0 degC, over ice."""
    return 610.5 * exp(21.875 * theta / (265.5 + theta))


@formula("theta_si_min", source="iso-13788-2012, inverse over water", within={"p_sat_min": (610.5, 120000.0)})
def temperature_over_water(*, p_sat_min: float) -> float:
    """Temperature at which the air is saturated, at 610.5 Pa and above."""
    return 237.3 * ln(p_sat_min / 610.5) / (17.269 - ln(p_sat_min / 610.5))


@formula("theta_si_min", source="iso-13788-2012, inverse over ice", within={"p_sat_min": (1e-6, 610.5)})
def temperature_over_ice(*, p_sat_min: float) -> float:
    """Temperature at which the air is saturated, below 610.5 Pa."""
    return 265.5 * ln(p_sat_min / 610.5) / (21.875 - ln(p_sat_min / 610.5))


def saturation_pressure(theta: float) -> float:
    """Saturation vapour pressure, Pa, at `theta` degC, over ice below 0 degC; ValueError outside -100 to 90 degC."""
    return saturation_over_ice(theta=theta) if theta < 0 else saturation_over_water(theta=theta)


def saturation_temperature(pressure: float) -> float:
    """Temperature, degC, at which that pressure (Pa) is the saturation pressure."""
    branch = temperature_over_ice if pressure < AT_ZERO else temperature_over_water
    return branch(p_sat_min=pressure)


@formula("p_e", source="iso-13788-2012, external conditions")
def outside_vapour_pressure(*, phi_e: float, p_sat: float) -> float:
    """Vapour pressure of the outside air."""
    return phi_e * p_sat


@formula("p_i", source="iso-13788-2012, internal conditions")
def room_vapour_pressure(*, phi_i: float, p_sat: float) -> float:
    """Vapour pressure of the room air from its relative humidity."""
    return phi_i * p_sat


@formula("dp", source="iso-13788-2012, Annex A, humidity classes", within={"theta_e": (0.0, 20.0)})
def class_excess(*, dp_0: float, theta_e: float) -> float:
    """Excess of the room's vapour pressure, falling straight to nothing at 20 degC outside."""
    return dp_0 * (20 - theta_e) / 20


@formula("p_i", source="iso-13788-2012, internal conditions")
def room_vapour_pressure_by_excess(*, p_e: float, dp: float) -> float:
    """Vapour pressure of the room air: that of the outside air and the excess of the humidity class."""
    return p_e + dp


@formula("phi_i", source="iso-13788-2012, Annex A, continental chart", within={"theta_e": (-10.0, 20.0)})
def chart_humidity(*, phi_1: float, phi_2: float, theta_e: float) -> float:
    """Relative humidity of the room from the chart, between its values at -10 and at 20 degC outside."""
    return phi_1 + (phi_2 - phi_1) * (theta_e + 10) / 30


@formula("theta_i", source="iso-13788-2012, Annex A, continental chart", within={"theta_e": (10.0, 20.0)})
def chart_temperature(*, theta_e: float) -> float:
    """Temperature of the room from the chart, between 10 and 20 degC outside."""
    return 20 + 5 * (theta_e - 10) / 10


@formula("R_T", source="iso-13788-2012, temperature distribution")
def resistance_along(*, R: tuple[float, ...]) -> float:
    """Films and layers in series along one section, air to air."""
    return sum(R)


@formula("R_x", source="iso-13788-2012, temperature distribution")
def resistance_to_plane(*, R: tuple[float, ...]) -> float:
    """Film and layers between the room air and the plane."""
    return sum(R)


@formula("s_d_1", source="iso-13788-2012, vapour pressure distribution")
def air_layers_to_room(*, s_d: tuple[float, ...]) -> float:
    """Equivalent air layers between the plane and the room, or the next wet plane that way."""
    return sum(s_d)


@formula("s_d_2", source="iso-13788-2012, vapour pressure distribution")
def air_layers_to_outside(*, s_d: tuple[float, ...]) -> float:
    """Equivalent air layers between the plane and the outside, or the next wet plane that way."""
    return sum(s_d)


@formula("p_x", source="iso-13788-2012, vapour pressure distribution")
def pressure_between(*, p_1: float, p_2: float, s_d_1: float, s_d_2: float) -> float:
    """Vapour pressure at a plane without condensation, on the straight line between both sides."""
    return p_1 - (p_1 - p_2) * s_d_1 / (s_d_1 + s_d_2)


@formula("phi", source="iso-13788-2012, terms")
def relative_humidity(*, p_x: float, p_sat: float) -> float:
    """Relative humidity at a plane."""
    return p_x / p_sat


@formula("g_c", source="iso-13788-2012, rate of condensation")
def condensation_rate(*, delta_0: float, p_1: float, p_c: float, s_d_1: float, p_2: float, s_d_2: float) -> float:
    """Vapour that arrives at a wet plane less the vapour that leaves it; negative where the plane dries."""
    return delta_0 * ((p_1 - p_c) / s_d_1 - (p_c - p_2) / s_d_2)


@formula("M_c", source="iso-13788-2012, amount of condensate")
def condensate(*, g_c: float, t: float) -> float:
    """Condensate of a period at a steady rate."""
    return g_c * t


@formula("M_a", source="iso-13788-2012, accumulated moisture")
def accumulated(*, M_0: float, M_c: float) -> float:
    """Moisture at the plane at the end of the period."""
    return M_0 + M_c


@formula("g_ev", source="din-4108-3-2018, evaporation period")
def evaporation_rate(*, delta_0: float, p_c: float, p_i: float, s_d_1: float, p_e: float, s_d_2: float) -> float:
    """Vapour that leaves a wet plane to both sides."""
    return delta_0 * ((p_c - p_i) / s_d_1 + (p_c - p_e) / s_d_2)


@formula("M_ev", source="din-4108-3-2018, evaporation period")
def evaporable(*, g_ev: float, t: float) -> float:
    """Moisture that can evaporate in a period at a steady rate."""
    return g_ev * t


@formula("M_res", source="din-68800-2, drying reserve")
def drying_reserve(*, M_ev: float, M_c: float) -> float:
    """What can evaporate beyond the condensate."""
    return M_ev - M_c


@formula("du", source="din-4108-3-2018, limits for wood")
def wood_moisture_rise(*, M_c: float, rho: float, d: float) -> float:
    """Rise of the wood's moisture content by mass when one layer takes all the condensate."""
    return M_c / (rho * d)


@formula("f_Rsi", source="iso-13788-2012, temperature factor of a plane element")
def temperature_factor(*, R_si: float, R_T: float) -> float:
    """Temperature factor of the inside surface of a plane element."""
    return 1 - R_si / R_T


@formula("f_Rsi", source="iso-13788-2012, temperature factor")
def temperature_factor_of_surface(*, theta_si: float, theta_e: float, theta_i: float) -> float:
    """Temperature factor of a surface whose temperature is known."""
    return (theta_si - theta_e) / (theta_i - theta_e)


@formula("p_sat_min", source="iso-13788-2012, surface humidity")
def saturation_needed(*, p_i: float, phi_cr: float) -> float:
    """Saturation pressure the surface must have so that its relative humidity stays at the limit."""
    return p_i / phi_cr


@formula("f_Rsi_min", source="iso-13788-2012, surface humidity")
def temperature_factor_needed(*, theta_si_min: float, theta_e: float, theta_i: float) -> float:
    """Temperature factor that keeps the surface at or above its lowest allowed temperature."""
    return (theta_si_min - theta_e) / (theta_i - theta_e)
