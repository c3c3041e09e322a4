"""The parts of the results file on openings and on the whole building; unknown is null. Loaded only to print results."""

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from layerfolio.studies.envelope_types import BuildingStudy, EnvelopePart, OpeningStudy


def openings_part(openings: "dict[str, OpeningStudy]") -> dict[str, Any]:
    """Every opening by its name, in file order; areas of one and of all its pieces."""
    return {name: _opening(one) for name, one in openings.items()}


def _opening(one: "OpeningStudy") -> dict[str, Any]:
    origin = one.figure.origin if one.figure else None
    return {
        "kind": one.kind,
        "title": one.title or None,
        "count": one.count,
        "in": one.wall,
        "orientation": one.orientation or None,
        "width": _quantity(one.width, "m"),
        "height": _quantity(one.height, "m"),
        "area": _quantity(one.area, "m2"),
        "total_area": _quantity(one.total_area, "m2"),
        "transmittance": _quantity(one.transmittance, "W/(m2.K)"),
        "how": one.how,
        "basis": one.basis or None,
        "solar_factor": one.solar_factor,
        "source": origin.source if origin else None,
        "mark": origin.mark if origin else None,
        "missing": list(one.missing),
    }


def building_part(building: "BuildingStudy | None", envelope: Any = None) -> dict[str, Any]:
    """The whole envelope; `envelope` is codes.envelope.EnvelopeJudged, or None where the set limits no part.

    `ua` sets the parts that the set limits beside their limits; `transmission` is the sum over every part and join.
    """
    total = building.conductance if building else None
    designed = total if envelope is None else getattr(envelope, "ua_designed", total)
    loss = building.heat_loss if building else None
    return {
        "ua": {
            "as_designed": _quantity(designed, "W/K"),
            "limit": _quantity(getattr(envelope, "ua_limit", None), "W/K"),
        },
        "trade_off": {
            "as_designed": _quantity(getattr(envelope, "trade_off_designed", None), "W/K"),
            "limit": _quantity(getattr(envelope, "trade_off_limit", None), "W/K"),
            "verdict": str(getattr(envelope, "trade_off_verdict", "")) or None,
        },
        "transmission": _quantity(total, "W/K"),
        "design_heat_loss": _quantity(loss.total if loss else None, "W"),
        "transmission_loss": _quantity(loss.transmission if loss else None, "W"),
        "air_loss": _quantity(loss.air if loss else None, "W"),
        "air_changes": loss.air_changes if loss else None,
        "indoor_temperature": _quantity(loss.indoor if loss else None, "degC"),
        "outdoor_temperature": _quantity(loss.outdoor if loss else None, "degC"),
        "parts": _parts(building) if building else [],
        "missing": _missing(building, envelope),
    }


def _parts(building: "BuildingStudy") -> list[dict[str, Any]]:
    """One entry for each line of the heat-loss sum, with its watts on the design day where they are known."""
    losses = [watts for _, watts in building.heat_loss.by_part] if building.heat_loss else [None] * len(building.parts)
    return [_part(one, watts) for one, watts in zip(building.parts, losses, strict=True)]


def _part(one: "EnvelopePart", watts: float | None) -> dict[str, Any]:
    join = one.kind == "join"
    return {
        "kind": one.kind,
        "group": one.group or None,
        "name": one.name,
        "size": _quantity(one.size, "m" if join else "m2"),
        "linear_transmittance" if join else "transmittance": _quantity(one.figure, "W/(m.K)" if join else "W/(m2.K)"),
        "conductance": _quantity(one.conductance, "W/K"),
        "design_heat_loss": _quantity(watts, "W"),
        "missing": one.lacking or None,
    }


def _missing(building: "BuildingStudy | None", envelope: Any) -> list[str]:
    """What keeps a sum open, each thing once."""
    loss = building.heat_loss if building else None
    said = [*(building.lacking if building else ()), *([loss.lacking] if loss and loss.lacking else ())]
    return list(dict.fromkeys([*said, *getattr(envelope, "lacking", ())]))


def _quantity(value: float | None, unit: str) -> dict | None:
    return None if value is None else {"value": value, "unit": unit}
