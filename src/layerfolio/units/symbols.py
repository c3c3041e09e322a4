"""The closed table of unit symbols: each with its factor to SI and its dimension.

A dimension counts (length, mass, time, temperature, angle, carbon). Carbon dioxide equivalents have one of their own,
so that they never pass for a mass.
"""

Dimension = tuple[int, int, int, int, int, int]

NONE: Dimension = (0, 0, 0, 0, 0, 0)
_LENGTH: Dimension = (1, 0, 0, 0, 0, 0)
_MASS: Dimension = (0, 1, 0, 0, 0, 0)
_TIME: Dimension = (0, 0, 1, 0, 0, 0)
_TEMPERATURE: Dimension = (0, 0, 0, 1, 0, 0)
_ANGLE: Dimension = (0, 0, 0, 0, 1, 0)
_CARBON: Dimension = (0, 0, 0, 0, 0, 1)
_VOLUME: Dimension = (3, 0, 0, 0, 0, 0)
_FLOW: Dimension = (3, 0, -1, 0, 0, 0)
_SPEED: Dimension = (1, 0, -1, 0, 0, 0)
_FORCE: Dimension = (1, 1, -2, 0, 0, 0)
_LINE_LOAD: Dimension = (0, 1, -2, 0, 0, 0)
_PRESSURE: Dimension = (-1, 1, -2, 0, 0, 0)
_DENSITY: Dimension = (-3, 1, 0, 0, 0, 0)
_ENERGY: Dimension = (2, 1, -2, 0, 0, 0)
_POWER: Dimension = (2, 1, -3, 0, 0, 0)
_PERMEANCE: Dimension = (-1, 0, 1, 0, 0, 0)  # kg/(m2.s.Pa)

INCH, FOOT, POUND, GRAVITY = 0.0254, 0.3048, 0.45359237, 9.80665  # exact by definition
BTU = 1055.05585262  # J, international table
_INCH_OF_MERCURY = 3386.389  # Pa, at 0 degC
PERM = POUND / 7000 / (3600 * FOOT**2 * _INCH_OF_MERCURY)  # grain/(h.ft2.inHg): 57.2135 ng/(Pa.s.m2)
_PSF = POUND * GRAVITY / FOOT**2

SYMBOLS: dict[str, tuple[float, Dimension]] = {
    "m": (1.0, _LENGTH), "mm": (1e-3, _LENGTH), "cm": (1e-2, _LENGTH), "km": (1e3, _LENGTH), "µm": (1e-6, _LENGTH),
    "in": (INCH, _LENGTH), "ft": (FOOT, _LENGTH), "yd": (0.9144, _LENGTH), "mi": (1609.344, _LENGTH),
    "mil": (INCH / 1000, _LENGTH),
    "kg": (1.0, _MASS), "g": (1e-3, _MASS), "mg": (1e-6, _MASS), "µg": (1e-9, _MASS), "ng": (1e-12, _MASS),
    "t": (1e3, _MASS), "lb": (POUND, _MASS), "oz": (POUND / 16, _MASS), "gr": (POUND / 7000, _MASS),
    "s": (1.0, _TIME), "min": (60.0, _TIME), "h": (3600.0, _TIME), "d": (86400.0, _TIME),
    "K": (1.0, _TEMPERATURE), "degC": (1.0, _TEMPERATURE), "degF": (5 / 9, _TEMPERATURE),
    "deg": (1.0, _ANGLE), "rad": (57.29577951308232, _ANGLE),
    "L": (1e-3, _VOLUME), "cfm": (FOOT**3 / 60, _FLOW), "mph": (0.44704, _SPEED),
    "N": (1.0, _FORCE), "kN": (1e3, _FORCE), "lbf": (POUND * GRAVITY, _FORCE),
    "plf": (POUND * GRAVITY / FOOT, _LINE_LOAD),
    "Pa": (1.0, _PRESSURE), "hPa": (1e2, _PRESSURE), "kPa": (1e3, _PRESSURE), "MPa": (1e6, _PRESSURE),
    "GPa": (1e9, _PRESSURE), "psf": (_PSF, _PRESSURE), "psi": (_PSF * 144, _PRESSURE), "ksi": (_PSF * 144e3, _PRESSURE),
    "inHg": (_INCH_OF_MERCURY, _PRESSURE), "pcf": (POUND / FOOT**3, _DENSITY),
    "J": (1.0, _ENERGY), "kJ": (1e3, _ENERGY), "MJ": (1e6, _ENERGY), "Wh": (3600.0, _ENERGY), "kWh": (3.6e6, _ENERGY),
    "Btu": (BTU, _ENERGY), "W": (1.0, _POWER), "kW": (1e3, _POWER),
    "perm": (PERM, _PERMEANCE),
    "kgCO2e": (1.0, _CARBON), "gCO2e": (1e-3, _CARBON), "tCO2e": (1e3, _CARBON),
    "kgC": (1.0, _MASS),
    "%": (0.01, NONE),
}  # fmt: skip

ALIASES: dict[str, str] = {
    "inch": "in", "inches": "in", '"': "in", "foot": "ft", "feet": "ft", "'": "ft", "um": "µm", "mils": "mil",
    "metre": "m", "metres": "m", "meter": "m", "meters": "m", "millimetres": "mm", "millimeters": "mm",
    "ug": "µg", "lbs": "lb", "grain": "gr", "grains": "gr", "sec": "s", "hr": "h", "hrs": "h", "hour": "h",
    "hours": "h",
    "day": "d", "days": "d", "°C": "degC", "C": "degC", "°F": "degF", "F": "degF", "°": "deg", "degrees": "deg",
    "l": "L", "BTU": "Btu", "btu": "Btu", "lbm": "lb", "perms": "perm", "percent": "%", "kgCO2": "kgCO2e",
    # written without a sign between the two symbols
    "mK": "m.K", "m2K": "m2.K", "kgK": "kg.K", "Kd": "K.d", "Cd": "degC.d", "Fd": "degF.d",
    "sqft": "ft2", "sf": "ft2", "cuft": "ft3", "sqm": "m2",
}  # fmt: skip
