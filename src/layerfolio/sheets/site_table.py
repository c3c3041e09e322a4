"""The figures of the place as the project gives them, each with its source."""

from layerfolio.sheets.blocks import Column, Row, Table
from layerfolio.sheets.criteria_rows import FILE, NO_SOURCE, at, row
from layerfolio.sheets.desk import Desk
from layerfolio.sheets.markup import plain

FIGURES = (
    ("Hourly wind pressure, 1 in 50 years", "site_loads.wind_pressure_1_50"), ("Basic wind speed", "site_loads.wind_speed"),
    ("Wind suction on the cladding", "site_loads.wind_suction"), ("Exposure", "site_loads.exposure"),
    ("Spectral acceleration Sa(0.2)", "site_loads.seismic.Sa02"), ("Spectral acceleration Smax", "site_loads.seismic.Smax"),
    ("Seismic design category", "site_loads.seismic.category"), ("Ground snow load", "site_loads.snow"),
)  # fmt: skip
AMERICAN = ("site_loads.wind_speed", "site_loads.seismic.category")
CANADIAN = ("site_loads.wind_pressure_1_50", "site_loads.seismic.Sa02")
RARE = ("site_loads.seismic.Smax", "site_loads.wind_suction")
"""Asked for by some sets alone: printed where they are given."""


def site_table(desk: Desk) -> Table:
    """Every figure of the place that the set goes by, and every other that is given; what is missing says so."""
    source = str(at(desk, "site_loads.source") or NO_SOURCE)
    shown = [(words, path) for words, path in FIGURES if _asked(desk, path) or at(desk, path) is not None]
    rows = [row(desk, words, path, source) for words, path in shown]
    rows.append(row(desk, "Storeys above grade", "building.storeys", FILE))
    columns = (Column("Figure of the place", width=68), Column("Value", width=62), Column("Source"))
    return Table(columns, tuple(Row(tuple(map(plain, one))) for one in rows))


def site_stated(desk: Desk) -> bool:
    """Whether the project gives any figure of the place."""
    return any(at(desk, path) is not None for _, path in FIGURES)


def _asked(desk: Desk, path: str) -> bool:
    set_id = desk.dossier.project.code.set
    if path in RARE:
        return path.endswith("Smax") and set_id.startswith("bc-")
    if set_id.startswith("irc-"):
        return path not in CANADIAN
    return path not in AMERICAN
