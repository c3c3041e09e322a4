"""Unit strings as printed: `m2.K/W` becomes m²·K/W."""

_WORDS = {
    "1": "", "degC": "°C", "degF": "°F", "perm": "US perm", "perm.in": "US perm·in", "K.d": "K·d", "F.d": "°F·d",
    "h.ft2.F/Btu": "ft²·°F·h/Btu", "Btu/(h.ft2.F)": "Btu/(h·ft²·°F)", "Btu.in/(h.ft2.F)": "Btu·in/(h·ft²·°F)",
    "Btu/(h.ft.F)": "Btu/(h·ft·°F)", "Btu/(h.F)": "Btu/(h·°F)", "Btu/(ft3.F)": "Btu/(ft³·°F)", "Btu/(lb.F)": "Btu/(lb·°F)",
    "h.ft2.F/(Btu.in)": "ft²·°F·h/(Btu·in)",
}  # fmt: skip


def pretty_unit(unit: str) -> str:
    """The printed form of a unit string; empty for a plain number."""
    if unit in _WORDS:
        return _WORDS[unit]
    return unit.replace("2", "²").replace("3", "³").replace(".", "·")
