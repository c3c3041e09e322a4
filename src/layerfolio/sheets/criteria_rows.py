"""What the design criteria sheet lists, as rows of (criterion, value with unit, source); what is not given says so."""

from collections.abc import Iterator
from typing import Any

from layerfolio.catalogue.code_sets import code_set
from layerfolio.codes.findings import Finding
from layerfolio.sheets.desk import RECORD, Desk
from layerfolio.sheets.figures import NOT_GIVEN
from layerfolio.sheets.written import written
from layerfolio.units.quantity import Quantity

Rows = list[tuple[str, str, str]]
FILE, NO_SOURCE = "project file", "project file, no source stated"
ASKED = "the authority states it"  # where a figure of the place is not given


def at(desk: Desk, path: str) -> Any:
    """What the project file says at a dotted path; None where it says nothing or has no such key."""
    found = desk.dossier.project
    for name in path.split("."):
        found = getattr(found, name, None)
    return found


def row(desk: Desk, words: str, path: str, source: str = FILE, unit: str = "") -> tuple[str, str, str]:
    """One criterion of the project file as a row."""
    value = at(desk, path)
    if value is not None and not _stated(desk, path):
        source = "not stated: taken so"
    return words, shown(value, desk.system, unit), source if value is not None else ""


def _stated(desk: Desk, path: str) -> bool:
    """Whether the project file itself says it; a default stands in a record without being stated."""
    above, _, name = path.rpartition(".")
    record = at(desk, above) if above else desk.dossier.project
    return name in getattr(record, "stated", (name,))


def shown(value: object, system: str, unit: str = "") -> str:
    """A value of the project file as it prints."""
    if value is None:
        return NOT_GIVEN
    if isinstance(value, Quantity):
        return written(value, system)
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float):
        return f"{value:g}\u00a0{unit}".strip()
    return f"{value}\u00a0{unit}" if unit else str(value)


def finding_of(desk: Desk, question: str) -> Finding | None:
    """The first finding that answers a question of the set ("zone", "in-force")."""
    return next((one for one in desk.dossier.findings if one.id.endswith(f"/{question}")), None)


def line_words(desk: Desk, found: Finding) -> str:
    """Where a finding stands in the record: "C1, line 3"."""
    return f"{RECORD}, line {desk.line(found)}"


def code_rows(desk: Desk) -> Rows:
    """The set, its edition and adoption, the amendments, the path taken for energy."""
    code = desk.dossier.project.code
    found = code_set(code.set)
    rows = [
        ("Code", found.title, f"set {code.set}"),
        ("Where it holds", found.content["jurisdiction"], ""),
        ("Date of the project", shown(at(desk, "project.date"), desk.system), FILE),
    ]
    adopted = finding_of(desk, "in-force")
    if adopted:
        rows.append(("Edition in force here", str(adopted.verdict), line_words(desk, adopted)))
    rows.append(("Heat method of the set", found.content["method"].replace("-", " "), "sheets that end in -T"))
    rows.append(row(desk, "Energy path", "code.energy_path"))
    if code.heat_recovery is not None:
        rows.append(row(desk, "Ventilation with heat recovery", "code.heat_recovery"))
    rows += [(f"Amendment: {one.requirement}", str(one.value), one.source) for one in code.amendments]
    return rows if code.amendments else [*rows, ("Amendments of the authority", "none", FILE)]


def climate_rows(desk: Desk) -> Rows:
    """Zone and how it was found, design temperatures, degree-days, monthly means."""
    source = str(at(desk, "climate.source") or NO_SOURCE)
    rows = [
        row(desk, "Climate of", "climate.place", source),
        row(desk, "Outside temperature, heating design", "climate.heating_design_temperature", source),
        row(desk, f"Heating degree-days below 18 °C{_also(desk, '64.4 °F')}", "climate.heating_degree_days", source),
        row(desk, f"Cooling degree-days above 10 °C{_also(desk, '50 °F')}", "climate.cooling_degree_days", source),
    ]
    mean = mean_of_year(desk)
    rows.append(("Mean temperature of the year", mean, "mean of the twelve monthly means" if mean != NOT_GIVEN else ""))
    if at(desk, "climate.moisture_index") is not None:
        rows.append(row(desk, "Moisture index", "climate.moisture_index", source))
    zone = finding_of(desk, "zone")
    if zone or at(desk, "code.zone"):
        found = f"{zone.reason} ({line_words(desk, zone)})" if zone else ""
        source = str(at(desk, "code.zone_source") or "")
        how = "; ".join(filter(None, ("" if source in found else source, found)))
        rows.append(("Climate zone", shown(at(desk, "code.zone"), desk.system), how or FILE))
    return rows


def _also(desk: Desk, words: str) -> str:
    """The customary figure of a fixed temperature, in brackets where those units come first."""
    return f" ({words})" if desk.system == "customary" else ""


def mean_of_year(desk: Desk) -> str:
    """Mean of the monthly means outside, in words."""
    values = getattr(at(desk, "climate.monthly.temperature"), "values", None) or ()
    if len(values) != 12:
        return NOT_GIVEN
    return written(Quantity(sum(values) / 12, "temperature", f"{sum(values) / 12:.1f} degC"), desk.system)


OF_AMERICA = ("site_loads.wind_speed", "site_loads.seismic.category")
"""Figures that other codes do not ask for."""
OF_SOME = ("site_loads.wind_suction", "site_loads.seismic.Smax")
"""Figures that few lines go by: printed where they are given."""


def load_rows(desk: Desk) -> Rows:
    """Loads of the site."""
    source = str(at(desk, "site_loads.source") or f"{FILE}; confirm")
    listed = (
        ("Ground snow load", "site_loads.snow"), ("Hourly wind pressure, 1 in 50 years", "site_loads.wind_pressure_1_50"),
        ("Basic wind speed", "site_loads.wind_speed"), ("Exposure", "site_loads.exposure"),
        ("Wind suction on the cladding", "site_loads.wind_suction"),
        ("Spectral acceleration Sa(0.2)", "site_loads.seismic.Sa02"),
        ("Spectral acceleration Smax", "site_loads.seismic.Smax"),
        ("Seismic design category", "site_loads.seismic.category"),
    )  # fmt: skip
    american = desk.dossier.project.code.set.startswith("irc-")
    left_out = OF_SOME if american else (*OF_SOME, *OF_AMERICA)
    asked = [one for one in listed if one[1] not in left_out or at(desk, one[1]) is not None]
    return [row(desk, words, path, source) for words, path in asked]


def inside_rows(desk: Desk) -> Rows:
    """The room, the airtightness aimed at, ventilation."""
    leakage, measured = at(desk, "air_changes_at_50_pa"), at(desk, "measured_air_changes_at_50_pa")
    aimed = NOT_GIVEN if leakage is None else f"{leakage:g} air changes an hour at 50 Pa"
    tested = [] if measured is None else [("Airtightness measured", f"{measured:g} air changes an hour at 50 Pa", FILE)]
    rows = [
        row(desk, "Room temperature", "indoor.temperature"),
        ("Room humidity", humidity_words(desk) or NOT_GIVEN, FILE if humidity_words(desk) else ""),
        ("Airtightness aimed at", aimed, f"{FILE}; by test" if leakage is not None else ""),
        *tested,
        row(desk, "Ventilation, flow", "building.ventilation.flow"),
        row(desk, "Ventilation, share of heat recovered", "building.ventilation.recovery"),
    ]
    return rows


def humidity_words(desk: Desk) -> str:
    """How the humidity of the room is stated; empty where it is not."""
    humidity = at(desk, "indoor.humidity")
    if humidity is None:
        return ""
    if getattr(humidity, "class_", None) is not None:
        return f"class {humidity.class_} of ISO 13788"
    if getattr(humidity, "continental", None):
        return f"continental chart of ISO 13788, {humidity.continental} occupancy"
    constant = getattr(humidity, "relative_humidity", None)
    return f"{constant.text} relative humidity" if constant is not None else "monthly values of the project file"


def building_rows(desk: Desk) -> Rows:
    """Facts of the building that the set asks about."""
    listed = (
        ("Use", "building.use", ""), ("Occupancy", "building.occupancy", ""), ("Storeys above grade", "building.storeys", ""),
        ("Building area", "building.building_area", ""), ("Heated floor area", "building.conditioned_floor_area", ""),
        ("Heated volume", "building.conditioned_volume", ""), ("Bedrooms", "building.bedrooms", ""),
        ("Sprinklers", "building.sprinklered", ""), ("Solid-fuel appliance", "building.solid_fuel", ""),
        ("Fire department response", "building.fire_response", ""),
    )  # fmt: skip
    rows = [row(desk, words, path, FILE, unit) for words, path, unit in listed]
    rows += [(f"Height of {one.name or 'storey'}", shown(one.height, desk.system), FILE) for one in at(desk, "storeys") or ()]
    rows += [row(desk, words, path) for words, path in ASKED_OF_SOME if at(desk, path) is not None or _asks_for(desk, path)]
    if said := at(desk, "building.absent"):
        rows.append(("There is none of", ", ".join(said), FILE))
    return rows


ASKED_OF_SOME = (
    ("Hazard of the occupancy", "building.hazard"), ("Accessory structure of a dwelling", "building.accessory"),
    ("Townhouse", "building.townhouse"),
)  # fmt: skip
"""Facts that a set asks of some buildings alone; they stand in the list where they are stated or a line asks for them."""


def _asks_for(desk: Desk, path: str) -> bool:
    return any(path in f"{one.reason} {one.next_step}" for one in desk.dossier.findings)


def american_rows(desk: Desk) -> Rows:
    """The climatic and geographic criteria that an American jurisdiction fills in; the list is from memory."""
    have = {
        "Ground snow load": "site_loads.snow", "Wind design: speed": "site_loads.wind_speed",
        "Wind design: exposure": "site_loads.exposure", "Seismic design category": "site_loads.seismic.category",
        "Winter design temperature": "climate.heating_design_temperature",
    }  # fmt: skip
    return list(_american(desk, have))


def _american(desk: Desk, have: dict[str, str]) -> Iterator[tuple[str, str, str]]:
    for words in AMERICAN:
        if words == "Mean annual temperature":
            mean = mean_of_year(desk)
            yield words, mean, "mean of the monthly means; confirm" if mean != NOT_GIVEN else ASKED
        elif words in have and at(desk, have[words]) is not None:
            yield words, shown(at(desk, have[words]), desk.system), f"{FILE}; confirm"
        else:
            yield words, NOT_GIVEN, ASKED


AMERICAN = (
    "Ground snow load", "Wind design: speed", "Wind design: topographic effects", "Wind design: special wind region",
    "Wind design: wind-borne debris zone", "Wind design: exposure", "Seismic design category", "Damage from weathering",
    "Damage from frost: depth of the frost line", "Damage from termites", "Winter design temperature",
    "Ice barrier underlayment", "Flood hazards", "Air freezing index", "Mean annual temperature",
)  # fmt: skip
"""Heads of Table R301.2 (R301.2(1) in older editions), from memory."""
