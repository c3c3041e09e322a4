"""The inside surface: temperature factor that the limits of humidity ask, and the factor the section has."""

from layerfolio.assembly.types import Assembly
from layerfolio.formulas import moisture as f
from layerfolio.formulas.moisture import saturation_temperature
from layerfolio.studies.climate_year import MONTHS, Outside, Year
from layerfolio.studies.condensation.types import Need, SurfaceStudy
from layerfolio.studies.paths import paths
from layerfolio.studies.types import LayerHeat

R_SI = 0.25
"""Inside surface resistance for surface humidity, m2.K/W: higher than in the open, for corners and behind furniture."""
R_SE = 0.04
MOULD, CORROSION = 0.80, 0.60
"""Highest monthly mean of relative humidity at the surface (ISO 13788, from memory)."""
SAME = 1e-9
"""K: a room no warmer than this above the outside asks nothing of the surface."""


def surface_study(assembly: Assembly, heat: tuple[LayerHeat, ...], year: Year, outside: Outside) -> SurfaceStudy:
    """Factors provided, through the insulation and through framing, and the factors needed.

    `heat` holds every layer that counts for heat. Films are those of this check (0.25 inside; 0.04 outside, 0 to
    ground), whatever the assembly's own are.
    """
    r_se = outside_film(assembly)
    main = factor(r_se, tuple(one.resistance or 0.0 for one in heat))
    framing = min((factor(r_se, path.resistances) for path in paths(heat) if path.in_member), default=None)
    lowest = min(main, framing) if framing is not None else main
    return SurfaceStudy(lowest, main, framing, need(year, outside, MOULD), need(year, outside, CORROSION))


def outside_film(assembly: Assembly) -> float:
    """Outside surface resistance of the moisture checks, m2.K/W."""
    return 0.0 if assembly.faces == "ground" else R_SE


def factor(r_se: float, resistances: tuple[float, ...]) -> float:
    """Temperature factor of a plane element along one path."""
    return f.temperature_factor(R_si=R_SI, R_T=f.resistance_along(R=(R_SI, *resistances, r_se)))


def need(year: Year, outside: Outside, limit: float) -> Need:
    """The factor each month asks, and the month that asks most; nothing where the room is no warmer than outside."""
    monthly = tuple(
        _needed(pressure, limit, indoor, outdoor)
        for pressure, indoor, outdoor in zip(
            year.indoor_pressure, year.indoor_temperature, outside.temperature, strict=True
        )
    )
    beyond = tuple(MONTHS[m] for m, value in enumerate(monthly) if value is not None and value >= 1)
    asked = [(value, -m) for m, value in enumerate(monthly) if value is not None and value < 1]
    if not asked:
        return Need(limit, monthly, None, "", beyond)
    required, month = max(asked)
    return Need(limit, monthly, required, MONTHS[-month], beyond)


def _needed(pressure: float, limit: float, indoor: float, outdoor: float) -> float | None:
    if indoor - outdoor < SAME:
        return None
    lowest = saturation_temperature(f.saturation_needed(p_i=pressure, phi_cr=limit))
    return f.temperature_factor_needed(theta_si_min=lowest, theta_e=outdoor, theta_i=indoor)
