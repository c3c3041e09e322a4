"""Judges of structure by module and name, imported when a set asks for one."""

OF_STRUCTURE = {
    "furring_over_foam": ("hung_cladding", "judge_furring_over_foam"),
    "cladding_through_foam": ("hung_cladding", "judge_cladding_through_foam"),
    "furring_by_calculation": ("hung_cladding", "judge_furring_by_calculation"),
    "wind_on_cladding": ("hung_cladding", "judge_wind_on_cladding"),
    "wall_line": ("wall_lines", "judge_wall_line"),
    "dead_load": ("dead_loads", "judge_dead_load"),
}
