"""The cover: what the project is, what is in the set, the code basis, design criteria, revisions, notice, space."""

from layerfolio.catalogue.notices import notice
from layerfolio.sheets.blocks import Beside, Column, FreeSpace, Head, Heading, Index, Pairs, Row, Sheet, Table
from layerfolio.sheets.criteria_rows import climate_rows, inside_rows, load_rows
from layerfolio.sheets.desk import COVER, CRITERIA, RECORD, Desk
from layerfolio.sheets.figures import NOT_GIVEN
from layerfolio.sheets.markup import plain
from layerfolio.sheets.written import written

FIRST = (
    "Outside temperature, heating design", "Heating degree-days below 18 °C", "Ground snow load",
    "Hourly wind pressure, 1 in 50 years", "Basic wind speed", "Seismic design category",
)  # fmt: skip
"""Criteria that the cover repeats."""


def cover(desk: Desk) -> Sheet:
    about = desk.dossier.project.project
    head = Head(
        "", plain(about.title), f"Revision {plain(about.revision)}" if about.revision else "", large=True,
        subtitle=f"Envelope assemblies: permit submittal package{_variant(desk)}", under=plain(str(about.date or "")),
    )  # fmt: skip
    facts = Beside(
        (Heading("Project", True), _project(desk), Heading("Code basis", True), _code(desk)),
        (Heading("In this set", True), Index()),
    )
    revisions = _revisions(desk)
    return Sheet(COVER, "Cover and index", "—", desk.templates.blocks(
        "cover", head=head, facts=facts, criteria=_criteria(desk), revisions=revisions,
        all_criteria=f"sheet {CRITERIA}", notice=notice("cover").text,
        approval=FreeSpace("Space for the authority's decision and conditions", 25),
    ))  # fmt: skip


def _variant(desk: Desk) -> str:
    """Of a project file that holds only what differs: where the differences stand."""
    return f"; variant ({CRITERIA})" if desk.dossier.project.variant_of else ""


def _project(desk: Desk) -> Pairs:
    project = desk.dossier.project
    about, building = project.project, project.building
    storeys = f"; {building.storeys} {'storey' if building.storeys == 1 else 'storeys'}" if building.storeys else ""
    rows = [
        ("Site", about.location), ("Owner", about.owner),
        ("Use", building.use or "not given"), ("Occupancy", f"{building.occupancy or NOT_GIVEN}{storeys}"),
        ("Building area", written(building.building_area, desk.system)),
        ("Authority", about.authority), ("Prepared by", about.prepared_by),
    ]  # fmt: skip
    rows[1:1] = [(label, said) for label, said in (("Parcel", about.parcel), ("Permit", about.permit)) if said]
    return Pairs(tuple((label, f"**{plain(str(value or NOT_GIVEN))}**") for label, value in rows))


def _code(desk: Desk) -> Pairs:
    from layerfolio.catalogue.code_sets import code_set

    code = desk.dossier.project.code
    rows = [
        ("Code", code_set(code.set).title), ("Zone", code.zone or "not stated"),
        ("Energy path", getattr(code, "energy_path", None) or NOT_GIVEN),
    ]  # fmt: skip
    if code.heat_recovery is not None:
        rows.append(("Ventilation", "with heat recovery" if code.heat_recovery else "without heat recovery"))
    if code.amendments:
        rows.append(("Amendments", f"{len(code.amendments)}, sheet {CRITERIA}"))
    rows.append(("Path by path", f"sheet {RECORD}"))
    return Pairs(tuple((label, f"**{plain(str(value))}**") for label, value in rows))


def _criteria(desk: Desk) -> Table:
    """The few that are looked for first; all of them, with their sources, stand on their own sheet."""
    rows = [one[:2] for one in (*climate_rows(desk), *load_rows(desk), *inside_rows(desk)) if one[0].startswith(FIRST)]
    columns = (Column("Criterion", width=80), Column("Value"))
    return Table(columns, tuple(Row(tuple(map(plain, row))) for row in rows if row[1] != NOT_GIVEN))


def _revisions(desk: Desk) -> Table | str:
    listed = desk.dossier.project.revisions
    if not listed:
        return ""
    columns = (Column("Rev.", width=14), Column("Date", width=24), Column("What changed"))
    rows = tuple(Row((f"**{plain(r.mark)}**", plain(str(r.date)), plain(r.note))) for r in listed)
    return Table(columns, rows)


__all__ = ["cover", "written"]
