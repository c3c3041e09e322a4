"""What a set is judged for: the edition, the date, and the answers of the project file that its tables ask."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from layerfolio.catalogue.code_sets import CodeSet, code_set
from layerfolio.codes.amendments import Amendment, amendments


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
    zone: str
    zone_by_degree_days: str
    heat_recovery: bool | None
    humidity_class: int | None
    customary: bool
    amended: Mapping[str, Amendment]

    @property
    def decimals(self) -> int | None:
        """The set's rounding rule for final resistances."""
        return self.edition.content.get("rounding", {}).get("decimals")

    @property
    def zones(self) -> tuple[str, ...]:
        said = dict.fromkeys(one for one in (self.zone, self.zone_by_degree_days) if one)
        rows = self.edition.content.get("zones", {}).get("rows", ())
        return tuple(said) or tuple(str(row["zone"]) for row in rows)


def zone_of(edition: CodeSet, degree_days: float | None) -> str:
    """The zone of so many heating degree-days; empty when they are unknown or the set has no zones.

    The table prints whole numbers. Between two of its rows the colder one is taken.
    """
    if degree_days is None:
        return ""
    for row in edition.content.get("zones", {}).get("rows", ()):
        inside = degree_days < row["below"] if "below" in row else degree_days <= row.get("to", degree_days)
        if inside:
            return str(row["zone"])
    return ""


def context(project: Any) -> Context:
    """The answers of a project (attributes named as the keys of the project file) for the set it names."""
    building, code = getattr(project, "building", None), project.code
    degree_days = value(getattr(getattr(project, "climate", None), "heating_degree_days", None))
    edition = code_set(code.set)
    about = getattr(project, "project", None)
    return Context(
        edition=edition,
        date=str(getattr(about, "date", None) or ""),
        occupancy=str(getattr(building, "occupancy", None) or ""),
        hazard=str(getattr(building, "hazard", None) or ""),
        storeys=getattr(building, "storeys", None),
        building_area=value(getattr(building, "building_area", None)),
        floor_area=value(getattr(building, "conditioned_floor_area", None)),
        degree_days=degree_days,
        zone=str(getattr(code, "zone", None) or ""),
        zone_by_degree_days=zone_of(edition, degree_days),
        heat_recovery=getattr(code, "heat_recovery", None),
        humidity_class=getattr(getattr(getattr(project, "indoor", None), "humidity", None), "class_", None),
        customary=getattr(about, "units", "metric") == "customary",
        amended=amendments(project),
    )


def value(quantity: Any) -> float | None:
    """The SI value of a quantity or plain number; None for nothing."""
    return None if quantity is None else float(getattr(quantity, "value", quantity))
