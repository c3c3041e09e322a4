"""The cover: what the project is, what is in the set, the code basis, design criteria, revisions, notice, space."""

import re

from layerfolio.catalogue.notices import notice
from layerfolio.sheets.blocks import Beside, Column, FreeSpace, Head, Heading, Index, Pairs, Row, Sheet, Table
from layerfolio.sheets.desk import COVER, Desk
from layerfolio.sheets.figures import NOT_GIVEN
from layerfolio.sheets.markup import plain
from layerfolio.units.pretty import pretty_unit
from layerfolio.units.quantity import Quantity
from layerfolio.units.show import in_units, significant

UNITS = {
    "temperature": ("degC", "degF"),
    "pressure": ("kPa", "psf"),
    "area": ("m2", "ft2"),
    "volume": ("m3", "ft3"),
    "degree_days": ("K.d", "F.d"),
    "speed": ("m/s", "mph"),
}
"""By kind of quantity: the metric unit and the customary one that a cover prints."""

_CUSTOMARY = re.compile("F|ft|in|yd|sf|ps[fi]|mph")


def cover(desk: Desk) -> Sheet:
    about = desk.dossier.project.project
    head = Head(
        "", plain(about.title), f"Revision {plain(about.revision)}" if about.revision else "", large=True,
        subtitle="Envelope assemblies: permit submittal package", under=plain(str(about.date or "")),
    )  # fmt: skip
    facts = Beside(
        (Heading("Project", True), _project(desk), Heading("Code basis", True), _code(desk)),
        (Heading("In this set", True), Index()),
    )
    revisions = _revisions(desk)
    return Sheet(COVER, "Cover and index", "—", desk.templates.blocks(
        "cover", head=head, facts=facts, criteria=_criteria(desk), revisions=revisions, notice=notice("cover").text,
        approval=FreeSpace("Space for the authority's decision and conditions", 25),
    ))  # fmt: skip


def written(quantity: Quantity | None, system: str) -> str:
    """A quantity of the project file as its writer put it, and beside it the other system where the two differ in order.

    Customary first: both, the metric figure in brackets. Metric first: as written, after the metric figure if that is customary.
    """
    if quantity is None:
        return NOT_GIVEN
    units = UNITS.get(quantity.kind)
    in_customary = bool(_CUSTOMARY.search(quantity.text.partition(" ")[2]))
    if units is None or (system == "metric" and not in_customary):
        return _as_text(quantity)
    as_written, other = _as_text(quantity), _converted(quantity, units[0] if in_customary else units[1])
    first_as_written = in_customary == (system == "customary")
    return f"{as_written} ({other})" if first_as_written else f"{other} ({as_written})"


def _converted(quantity: Quantity, unit: str) -> str:
    digits = 4 if quantity.kind == "degree_days" else 3
    return f"{significant(in_units(quantity.value, unit), digits)}\u00a0{pretty_unit(unit)}"


def _as_text(quantity: Quantity) -> str:
    number, _, unit = quantity.text.partition(" ")
    return f"{number.replace('-', '−')}\u00a0{pretty_unit(unit)}".strip() if unit else quantity.text


def _project(desk: Desk) -> Pairs:
    project = desk.dossier.project
    about, building = project.project, project.building
    storeys = f"; {building.storeys} {'storey' if building.storeys == 1 else 'storeys'}" if building.storeys else ""
    rows = [
        ("Site", about.location), ("Climate of", project.climate.place), ("Owner", about.owner),
        ("Use", building.use or "not given"), ("Occupancy", f"{building.occupancy or NOT_GIVEN}{storeys}"),
        ("Building area", written(building.building_area, desk.system)),
        ("Conditioned", f"{written(building.conditioned_floor_area, desk.system)}; "
                        f"{written(building.conditioned_volume, desk.system)}"),
        ("Authority", about.authority), ("Prepared by", about.prepared_by),
    ]  # fmt: skip
    return Pairs(tuple((label, f"**{plain(str(value or NOT_GIVEN))}**") for label, value in rows))


def _code(desk: Desk) -> Pairs:
    from layerfolio.catalogue.code_sets import code_set

    code = desk.dossier.project.code
    found = code_set(code.set)
    rows = [("Code", found.title), ("Set", code.set), ("Zone", code.zone or "not stated")]
    if code.heat_recovery is not None:
        rows.append(("Ventilation", "with heat recovery" if code.heat_recovery else "without heat recovery"))
    rows.append(("Method", found.content["method"].replace("-", " ")))
    if code.amendments:
        rows.append(("Amendments", str(len(code.amendments))))
    return Pairs(tuple((label, f"**{plain(str(value))}**") for label, value in rows))


def _criteria(desk: Desk) -> Table:
    columns = (Column("Criterion", width=70), Column("Value", width=58), Column("Source"))
    return Table(columns, tuple(Row(tuple(map(plain, row))) for row in criteria_rows(desk)))


def criteria_rows(desk: Desk) -> list[tuple[str, str, str]]:
    """(criterion, value with unit, source); what the project file does not give says so."""
    project = desk.dossier.project
    climate, indoor, loads = project.climate, project.indoor, getattr(project, "site_loads", None)
    source = str(climate.source or "project file, no source stated") if climate else "project file"
    rows = [
        ("Outside temperature, heating design", climate and climate.heating_design_temperature, source),
        ("Heating degree-days below 18 °C", climate and climate.heating_degree_days, source),
        ("Room temperature", indoor and indoor.temperature, "project file"),
        ("Room humidity", _humidity(indoor), "project file"),
    ]
    for key, words in (("snow", "Ground snow load"), ("wind_pressure_1_50", "Hourly wind pressure, 1 in 50"),
                       ("wind_speed", "Wind speed")):  # fmt: skip
        value = getattr(loads, key, None) if loads else None
        if value is not None:
            rows.append((words, value, "project file; confirm"))
    leakage = getattr(project, "air_changes_at_50_pa", None)
    if leakage is not None:
        rows.append(("Airtightness aimed at", f"{leakage:g} air changes an hour at 50 Pa", "project file; by test"))
    return [(words, _value(value, desk.system), origin) for words, value, origin in rows]


def _value(value: object, system: str) -> str:
    return written(value, system) if isinstance(value, Quantity) else str(value or NOT_GIVEN)


def _humidity(indoor) -> str | None:
    humidity = indoor.humidity if indoor else None
    if humidity is None:
        return None
    if getattr(humidity, "class_", None) is not None:
        return f"class {humidity.class_} of ISO 13788"
    if getattr(humidity, "continental", None):
        return f"continental chart of ISO 13788, {humidity.continental} occupancy"
    constant = getattr(humidity, "relative_humidity", None)
    return f"{constant.text} relative humidity" if constant is not None else "monthly values of the project file"


def _revisions(desk: Desk) -> Table | str:
    listed = getattr(desk.dossier.project, "revisions", None) or ()
    if not listed:
        return ""
    columns = (Column("Rev.", width=14), Column("Date", width=24), Column("What changed"))
    rows = tuple(Row((f"**{plain(r.mark)}**", plain(str(r.date)), plain(r.note))) for r in listed)
    return Table(columns, rows)


__all__ = ["cover", "criteria_rows", "written"]
