"""What a set is judged for: the edition, the date, and the answers of the project file that its tables ask."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

from layerfolio.catalogue.code_sets import CodeSet, code_set
from layerfolio.codes.amendments import Amendment, amendments
from layerfolio.codes.climate_zones import all_zones, expanded, zone_of

if TYPE_CHECKING:
    from layerfolio.assembly.junction_types import Junction
    from layerfolio.studies.envelope_types import BuildingStudy, GroundStudy, OpeningStudy
    from layerfolio.studies.structure_types import WallLineStudy
    from layerfolio.studies.types import ThermalStudy


@dataclass(frozen=True, slots=True)
class Envelope:
    """The studies that requirements on openings and on the whole building look at; each by the name of its subject."""

    thermal: "Mapping[str, ThermalStudy]" = field(default_factory=dict)
    ground: "Mapping[str, GroundStudy]" = field(default_factory=dict)
    openings: "Mapping[str, OpeningStudy]" = field(default_factory=dict)
    building: "BuildingStudy | None" = None
    wall_lines: "Mapping[str, WallLineStudy]" = field(default_factory=dict)
    junctions: "tuple[Junction, ...]" = ()


@dataclass(frozen=True, slots=True)
class Context:
    """Unknown answers are None, unknown texts empty. `zones` are those that may be meant, one when it is settled."""

    edition: CodeSet
    date: str
    occupancy: str
    hazard: str
    storeys: int | None
    building_area: float | None
    floor_area: float | None
    degree_days: float | None
    cooling_degree_days: float | None
    cold_months: float | None  # mean outdoor temperature of the three coldest months, degC
    zone: str
    zone_by_degree_days: str
    heat_recovery: bool | None
    humidity_class: int | None
    customary: bool
    amended: Mapping[str, Amendment]
    wind_pressure: float | None = None  # hourly, 1 in 50 years, Pa
    seismic: float | None = None  # Sa(0.2)
    design_temperature: float | None = None  # of heating, degC
    project: Any = None  # the project file, for the answers that one requirement alone asks
    envelope: Envelope = Envelope()
    zone_source: str = ""  # the list or letter that settles the zone

    def answer(self, path: str) -> Any:
        """What the project file says at a dotted path ("building.sprinklered"); None where it says nothing."""
        found = self.project
        for name in path.split("."):
            found = getattr(found, name, None)
        return found

    @property
    def decimals(self) -> int | None:
        """The set's rounding rule for final resistances."""
        return self.edition.content.get("rounding", {}).get("decimals")

    @property
    def both(self) -> bool:
        """Whether the code prints customary figures: they then stand beside the metric ones."""
        return self.edition.content.get("prints") == "customary"

    @property
    def named_zones(self) -> tuple[str, ...]:
        """The stated zone and the one that the degree-days give; one where they agree, two where they do not.

        Where a set goes by a list of places first, a stated zone with its source stands alone.
        """
        if self.listed_zone:
            return (self.zone,)
        said = (self.zone, self.zone_by_degree_days)
        if self.zone_by_degree_days and self.zone_by_degree_days == self.zone.rstrip("ABC"):
            said = (self.zone,)  # the letter says more than degree-days can
        return tuple(dict.fromkeys(one for one in said if one))

    @property
    def listed_zone(self) -> bool:
        """Whether the zone is settled by the set's own list of places, as the project file says."""
        rule = self.edition.content.get("zones", {})
        return bool(self.zone and self.zone_source) and ("by_degree_days" in rule or rule.get("listed", False))

    @property
    def zones(self) -> tuple[str, ...]:
        """Every zone that may be meant; a number without the letter that the set tells apart stands for several."""
        return tuple(x for one in self.named_zones for x in expanded(self.edition, one)) or all_zones(self.edition)

    @property
    def zone_words(self) -> str:
        """The zones as they are stated, for print: "6", "4 and 5"; empty when nothing is known."""
        return " and ".join(self.named_zones)


def context(project: Any, envelope: Envelope | None = None) -> Context:
    """The answers of a project (attributes named as the keys of the project file) for the set it names."""
    building, code = getattr(project, "building", None), project.code
    climate = getattr(project, "climate", None)
    degree_days = value(getattr(climate, "heating_degree_days", None))
    cooling = value(getattr(climate, "cooling_degree_days", None))
    edition = code_set(code.set)
    about, loads = getattr(project, "project", None), getattr(project, "site_loads", None)
    return Context(
        edition=edition,
        date=str(getattr(about, "date", None) or ""),
        occupancy=str(getattr(building, "occupancy", None) or ""),
        hazard=str(getattr(building, "hazard", None) or ""),
        storeys=getattr(building, "storeys", None),
        building_area=value(getattr(building, "building_area", None)),
        floor_area=value(getattr(building, "conditioned_floor_area", None)),
        degree_days=degree_days,
        cooling_degree_days=cooling,
        cold_months=_cold_months(climate),
        zone=str(getattr(code, "zone", None) or ""),
        zone_source=str(getattr(code, "zone_source", None) or ""),
        zone_by_degree_days=zone_of(edition, degree_days, cooling),
        heat_recovery=getattr(code, "heat_recovery", None),
        humidity_class=getattr(getattr(getattr(project, "indoor", None), "humidity", None), "class_", None),
        customary=getattr(about, "units", "metric") == "customary",
        amended=amendments(project),
        design_temperature=value(getattr(climate, "heating_design_temperature", None)),
        wind_pressure=value(getattr(loads, "wind_pressure_1_50", None)),
        seismic=value(getattr(getattr(loads, "seismic", None), "Sa02", None)),
        project=project,
        envelope=envelope or Envelope(),
    )


def _cold_months(climate: Any) -> float | None:
    """Mean of the three coldest of twelve monthly means, degC."""
    series = getattr(getattr(climate, "monthly", None), "temperature", None)
    values = sorted(getattr(series, "values", None) or ())
    return sum(values[:3]) / 3 if len(values) == 12 else None


def value(quantity: Any) -> float | None:
    """The SI value of a quantity or plain number; None for nothing."""
    return None if quantity is None else float(getattr(quantity, "value", quantity))
