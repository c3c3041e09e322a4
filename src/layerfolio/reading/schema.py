"""The project file: the whole of it. Attribute names are the keys of the contract."""

from __future__ import annotations

from datetime import date
from typing import TYPE_CHECKING, Any

from layerfolio.reading.assemblies import Assembly, assembly_name_wrong, line_name_wrong, opening_name_wrong
from layerfolio.reading.climate import Climate, Indoor
from layerfolio.reading.definitions import Definitions
from layerfolio.reading.groups import Later, ListOf, MapOf, Nested
from layerfolio.reading.materials import Material, material_name_wrong
from layerfolio.reading.measures import Measure
from layerfolio.reading.record import Reader, Record, key
from layerfolio.reading.report import Report, join
from layerfolio.reading.scalars import Day, Flag, Line, Number, Pick
from layerfolio.reading.site import Revision, SiteLoads, Storey
from layerfolio.reading.tree import Mapping, Node
from layerfolio.units.quantity import Quantity

if TYPE_CHECKING:
    from layerfolio.reading.joins import Foundation, Join, ProjectDocument
    from layerfolio.reading.openings import Opening
    from layerfolio.reading.site_answers import Ventilation
    from layerfolio.reading.wall_lines import WallLine

FORMAT = 1
OCCUPANCIES = ("house", "dwelling-unit", "office", "mercantile", "workshop", "storage", "assembly", "other")
AIR_ROUTES = ("9.36.2.10", "CAN/ULC-S742", "ASTM E2357")
ABSENT = (
    "structural penetrations", "walls through insulation", "masonry flues", "appendages", "separate insulation planes",
    "services in walls", "ducts in floors or ceilings", "openings", "alternative solutions",
)  # fmt: skip
"""What a building may be said to have none of, each a question of a set."""
ENERGY_PATHS = ("prescriptive", "insulation R-values", "trade-off", "total UA", "performance")


class FormatVersion(Number):
    """The version of the project file; this tool reads one."""

    def __init__(self) -> None:
        super().__init__("a format version", str(FORMAT), 0, 1e9, whole=True)

    def read(self, node: Node, path: str, report: Report) -> Any:
        found = super().read(node, path, report)
        if found is not None and found != FORMAT:
            message = f"format version {found} is not known: this version of the tool reads {FORMAT}"
            report.problem(node.place, path, message, f"layerfolio: {FORMAT}")
        return found

    def schema(self, definitions: Definitions) -> dict:
        return {"const": FORMAT}


class Raw(Reader):
    """A number or a text that is read later, where it is known what it must be."""

    example = "2.97 m2.K/W"

    def read(self, node: Node, path: str, report: Report) -> str | None:
        return Line(self.example, 200).read(node, path, report)

    def schema(self, definitions: Definitions) -> dict:
        return {"type": ["string", "number"]}


class About(Record):
    """Whose project it is, where, and how it prints."""

    title: str = key(Line("Tern Point chandlery"), "name of the project", required=True)
    location: str | None = key(Line("Lot 7, Tern Point Road"), "site")
    owner: str | None = key(Line("name of the owner"), "owner")
    prepared_by: str | None = key(Line("name of the designer"), "who prepared the package")
    authority: str | None = key(Line("Building department"), "the authority having jurisdiction")
    permit: str | None = key(Line("BP-2027-014"), "number of the permit or of the application, once the authority has given one")
    parcel: str | None = key(Line("PID 025-117-308"), "number of the parcel in the land register or the tax roll")
    date: date | None = key(Day(), "date that prints on every sheet")
    revision: str | None = key(Line("A", 8), "mark of the revision")
    page: str = key(Pick("letter", "tabloid", "a4", "a3"), "sheet size", default="letter")
    units: str = key(Pick("metric", "customary"), "which units come first", default="metric")
    hatch: str = key(Pick("full", "light"), "hatching of drawings: light where an office copies its prints", default="full")
    sheet_numbers: str = key(
        Pick("plain", "discipline"), "plain, or by discipline letter, digit of kind and sequence", default="plain"
    )


class Building(Record):
    """What the code sets ask about the building."""

    use: str | None = key(Line("ship's chandlery (shop), no sleeping"), "use in words")
    occupancy: str | None = key(Pick(*OCCUPANCIES), "occupancy")
    hazard: str | None = key(Pick("low", "medium", "high"), "hazard of an industrial occupancy, where the set asks")
    storeys: int | None = key(Number("a number of storeys", "1", 1, 200, whole=True), "storeys above grade")
    building_area: Quantity | None = key(Measure("area"), "greatest horizontal area within the outside walls")
    conditioned_floor_area: Quantity | None = key(Measure("area"), "heated floor area")
    conditioned_volume: Quantity | None = key(Measure("volume"), "heated volume")
    sprinklered: bool | None = key(Flag(), "whether it has sprinklers throughout")
    fire_response: str | None = key(Pick("normal", "slow"), "slow where the fire department needs over 10 minutes or is none")
    accessory: bool | None = key(Flag(), "whether it belongs to a dwelling as its accessory structure, where the set asks")
    townhouse: bool | None = key(Flag(), "whether it is a townhouse, where the set asks")
    absent: tuple[str, ...] = key(ListOf(Pick(*ABSENT)), "what the building has none of, as you state it", default=())
    bedrooms: int | None = key(Number("a number of bedrooms", "2", 0, 100, whole=True), "sleeping rooms")
    solid_fuel: bool | None = key(Flag(), "whether a solid-fuel appliance stands in it")
    ventilation: Ventilation | None = key(
        Later("site_answers", "Ventilation", "{flow: 30 L/s, recovery: 75 %}"), "mechanical ventilation"
    )


class Amendment(Record):
    """A figure of the local authority in place of the set's own."""

    requirement: str = key(Line("nbc-2020/9.36.2.6/walls", 200), "id of the requirement", required=True)
    value: str = key(Raw(), "the authority's figure", required=True)
    source: str = key(Line("by-law 12, section 4"), "where the authority says so", required=True)


class Code(Record):
    """The code set that the project is judged by."""

    set: str = key(Line("nbc-2020", 40), "id of the code set", required=True)
    zone: str | None = key(Line("6", 20), "climate zone in the set's own naming")
    zone_source: str | None = key(Line("county list", 200), "what settles the zone where degree-days say another")
    energy_path: str | None = key(Pick(*ENERGY_PATHS), "path of the energy requirements that the project takes")
    air_route: str | None = key(Pick(*AIR_ROUTES), "route by which the air barrier is shown (NBC 9.36.2.9)")
    heat_recovery: bool | None = key(Flag(), "whether the ventilation recovers heat, where the set asks")
    amendments: tuple[Amendment, ...] = key(ListOf(Nested(Amendment)), "figures of the local authority", default=())

    def check(self, node: Mapping, path: str, report: Report) -> None:
        if "zone_source" in self.stated and "zone" not in self.stated:
            message = "zone_source settles a zone, and no zone is stated"
            report.problem(node.keys["zone_source"], join(path, "zone_source"), message, 'zone: "6", zone_source: county list')


class Project(Record):
    """A layerfolio project: one building and its layered assemblies."""

    layerfolio: int = key(FormatVersion(), "format version of this file", required=True)
    variant_of: str | None = key(Line("project.yaml", 300), "another project file; this one holds only what differs")
    project: About = key(Nested(About, "{title: Tern Point chandlery}"), "whose project it is", required=True)
    building: Building = key(Nested(Building), "what the code sets ask about the building", default=Building())
    code: Code = key(Nested(Code, "{set: nbc-2020}"), "code set and zone", required=True)
    climate: Climate = key(Nested(Climate), "climate of the site", default=Climate())
    indoor: Indoor = key(Nested(Indoor), "climate inside", default=Indoor())
    site_loads: SiteLoads = key(Nested(SiteLoads), "wind, snow and seismic values", default=SiteLoads())
    air_changes_at_50_pa: float | None = key(
        Number("air changes per hour", "1.0", 0.01, 100), "air changes per hour at 50 Pa that are aimed at"
    )
    measured_air_changes_at_50_pa: float | None = key(
        Number("air changes per hour", "1.0", 0.01, 100), "the same as a test has measured them; its report stands in documents"
    )
    storeys: tuple[Storey, ...] = key(ListOf(Nested(Storey)), "storeys from the ground up", default=())
    revisions: tuple[Revision, ...] = key(ListOf(Nested(Revision)), "issues of the package, oldest first", default=())
    materials: dict[str, Material] = key(
        MapOf(Nested(Material), "{hemp-batt: {conductivity: 0.040 W/(m.K), source: ...}}", 0, material_name_wrong),
        "the project's own",
        default={},
    )
    assemblies: dict[str, Assembly] = key(
        MapOf(Nested(Assembly), "W1: {kind: wall, layers: [...]}", 1, assembly_name_wrong),
        "walls, roofs, floors by the name of their sheet",
        required=True,
        default={},
    )
    area_includes_openings: bool = key(Flag(), "whether the areas of assemblies count their openings", default=False)
    openings: dict[str, Opening] = key(
        MapOf(Later("openings", "Opening"), "A1: {kind: window, in: W1, width: 1200 mm, height: 1400 mm}", 0, opening_name_wrong),
        "windows, doors and skylights by name",
        default={},
    )
    joins: tuple[Join, ...] = key(
        ListOf(Later("joins", "Join"), "[{at: sill, of: [W1, S1], length: 28 m, psi: 0.06 W/(m.K)}]"),
        "where assemblies and openings meet",
        default=(),
    )
    foundation: Foundation | None = key(
        Later("joins", "Foundation", "{kind: slab edge, ground_level: -200 mm}"), "what the building stands on"
    )
    documents: tuple[ProjectDocument, ...] = key(
        ListOf(Later("joins", "ProjectDocument"), "[{title: Bracing design, number: B-7, for: [W1, bracing]}]", single=True),
        "documents that speak for more than one layer",
        default=(),
    )

    wall_lines: dict[str, WallLine] = key(
        MapOf(Later("wall_lines", "WallLine"), "L1: {assembly: W1, length: 9.6 m, height: 2.7 m}", 0, line_name_wrong),
        "lines of bracing by name",
        default={},
    )

    def check(self, node: Mapping, path: str, report: Report) -> None:
        from layerfolio.reading.project_rules import check_project

        check_project(self, node, report)
