"""What kinds of quantity there are: the unit inside the house, an example, and the bounds of what a building can have.

Temperatures are degC inside, slopes degrees, degree-days K.d, cavity openings mm2/m; all else is plain SI.
"""

from dataclasses import dataclass
from functools import cache
from math import inf

from layerfolio.units.expression import UnitError, read_unit
from layerfolio.units.symbols import Dimension


@dataclass(frozen=True, slots=True)
class Kind:
    """`noun` as in "kg is not a unit of length"; `least` and `most` bound the value in `unit`."""

    noun: str
    unit: str
    example: str
    least: float
    most: float


KINDS: dict[str, Kind] = {
    "length": Kind("length", "m", "38 mm", -1e4, 1e4),
    "area": Kind("area", "m2", "58 m2", 0, 1e6),
    "volume": Kind("volume", "m3", "130 m3", 0, 1e7),
    "angle": Kind("angle", "deg", "30 deg", -360, 360),
    "temperature": Kind("temperature", "degC", "-27 degC", -273.15, 2000),
    "temperature_difference": Kind("temperature difference", "K", "5 K", -1000, 1000),
    "degree_days": Kind("degree-days", "K.d", "4600 K.d", 0, 3e4),
    "conductivity": Kind("thermal conductivity", "W/(m.K)", "0.040 W/(m.K)", 0, 1e4),
    "resistivity": Kind("thermal resistivity", "m.K/W", "25 m.K/W", 0, 1e4),
    "resistance": Kind("thermal resistance", "m2.K/W", "3.5 m2.K/W", 0, 1e3),
    "transmittance": Kind("thermal transmittance", "W/(m2.K)", "0.25 W/(m2.K)", 0, 1e4),
    "linear_transmittance": Kind("linear thermal transmittance", "W/(m.K)", "0.06 W/(m.K)", -100, 100),
    "point_transmittance": Kind("heat flow per kelvin", "W/K", "0.02 W/K", -1e6, 1e6),
    "density": Kind("density", "kg/m3", "40 kg/m3", 0, 3e4),
    "surface_density": Kind("mass per area", "kg/m2", "12 kg/m2", 0, 1e5),
    "mass": Kind("mass", "kg", "11.3 kg", 0, 1e9),
    "specific_heat": Kind("specific heat", "J/(kg.K)", "1600 J/(kg.K)", 0, 2e4),
    "heat_capacity": Kind("heat capacity per volume", "Wh/(m3.K)", "0.34 Wh/(m3.K)", 0, 1e4),
    "permeability": Kind("vapour permeability", "kg/(m.s.Pa)", "1.0e-10 kg/(m.s.Pa)", 0, 1e-3),
    "permeance": Kind("vapour permeance", "kg/(m2.s.Pa)", "48 ng/(Pa.s.m2)", 0, 10),
    "share": Kind("share", "1", "20 %", -10, 10),
    "cavity_openings": Kind("opening area per length", "mm2/m", "800 mm2/m", 0, 1e7),
    "openings_per_area": Kind("opening area per area", "mm2/m2", "800 mm2/m2", 0, 1e6),
    "vapour_flow": Kind("vapour flow per area", "kg/(m2.s)", "3.5e-8 kg/(m2.s)", -10, 10),
    "pressure": Kind("pressure", "Pa", "0.45 kPa", -1e12, 1e12),
    "force": Kind("force", "N", "1.2 kN", -1e9, 1e9),
    "line_load": Kind("force per length", "N/m", "4.5 kN/m", -1e9, 1e9),
    "speed": Kind("speed", "m/s", "115 mph", 0, 500),
    "power": Kind("heat flow", "W", "3.2 kW", -1e9, 1e9),
    "heat_flux": Kind("heat flow per area", "W/m2", "12 W/m2", -1e6, 1e6),
    "energy": Kind("energy", "J", "12 kWh", -1e15, 1e15),
    "airflow": Kind("air flow", "m3/s", "30 L/s", 0, 1e4),
    "air_leakage": Kind("air leakage per area", "m3/(s.m2)", "0.02 L/(s.m2)", 0, 10),
    "time": Kind("time", "s", "45 min", 0, inf),
    "carbon_per_mass": Kind("emissions per mass", "kgCO2e/kg", "0.45 kgCO2e/kg", -1e3, 1e3),
    "carbon_per_area": Kind("emissions per area", "kgCO2e/m2", "12 kgCO2e/m2", -1e5, 1e5),
    "carbon_per_volume": Kind("emissions per volume", "kgCO2e/m3", "80 kgCO2e/m3", -1e6, 1e6),
    "compliance": Kind("length per force", "m/N", "0.1 mm/kN", 0, 1e3),
    "gravity": Kind("force per mass", "N/kg", "9.81 N/kg", 0, 1e3),
    "mass_share": Kind("mass per mass", "kg/kg", "0.44 kg/kg", 0, 1),
}  # fmt: skip

# A length of slots per metre of wall cancels down to a length: these few are told apart by how they are written.
OPENING_UNITS = {
    "cavity_openings": {"mm2/m": 1.0, "cm2/m": 100.0, "m2/m": 1e6, "in2/ft": 25.4**2 / 0.3048},
    "openings_per_area": {"mm2/m2": 1.0, "cm2/m2": 100.0, "in2/ft2": 25.4**2 / 0.3048**2},
}


@cache
def dimension(kind: str) -> Dimension:
    """The dimension of a kind's unit."""
    return read_unit(KINDS[kind].unit)[1]


@cache
def house_factor(kind: str) -> float:
    """SI value of one house unit of the kind (86400 K.s for K.d)."""
    return read_unit(KINDS[kind].unit)[0]


@cache
def unit_factor(unit: str, kind: str) -> float:
    """How many house units of the kind one `unit` is. UnitError when it is unknown or of another dimension."""
    plain = unit.translate(_PLAIN).replace(" ", "").replace("^", "")
    if kind in OPENING_UNITS:
        if plain not in OPENING_UNITS[kind]:
            raise UnitError("dimension", unit)
        return OPENING_UNITS[kind][plain]
    factor, found = read_unit(unit)
    if found != dimension(kind):
        raise UnitError("dimension", unit)
    return factor / house_factor(kind)


_PLAIN = str.maketrans("²³", "23")
