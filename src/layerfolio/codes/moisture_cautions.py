"""Where the simple moisture method is outside its limits, each found by a small named rule with what to do about it."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from layerfolio.assembly.types import Assembly
from layerfolio.codes.naming import called
from layerfolio.codes.site_figures import pressure
from layerfolio.studies.condensation.types import CondensationStudy

STUDY = "a study by EN 15026 from a specialist"


@dataclass(frozen=True, slots=True)
class Caution:
    """`asked` is what the method takes for granted, `given` what the project file says."""

    key: str
    title: str
    asked: str
    given: str
    reason: str
    next_step: str


Rule = Callable[[Any, CondensationStudy], Caution | None]
RULES: list[Rule] = []


def rule(found: Rule) -> Rule:
    """List a rule, in the order in which its finding prints."""
    RULES.append(found)
    return found


def cautions(project: Any, study: CondensationStudy) -> list[Caution]:
    """Every rule that the assembly touches."""
    return [found for found in (one(project, study) for one in RULES) if found]


@rule
def inward_drive(project: Any, study: CondensationStudy) -> Caution | None:
    """Outdoor dew point over the room's temperature in a month: vapour is driven inward (common practice, no source)."""
    year = study.year
    if year is None:
        return None
    months = [
        month for month, t, rh, room in zip(_names(), year.outdoor_temperature, year.outdoor_humidity,
                                            year.indoor_temperature, strict=True)
        if dew_point(t, rh) > room
    ]  # fmt: skip
    if not months:
        return None
    return Caution(
        "inward-drive", "Vapour driven inward in summer", "an outdoor dew point below the room temperature",
        f"above it in {', '.join(months)}", "behind a tight inside layer moisture from outside can gather",
        f"use a layer inside that opens when humid, or {STUDY}",
    )  # fmt: skip


def dew_point(theta: float, humidity: float) -> float:
    """Dew point of outside air, degC, by the saturation formulas of ISO 13788."""
    from layerfolio.formulas.moisture import saturation_pressure, saturation_temperature

    return saturation_temperature(saturation_pressure(theta) * humidity)


def _names() -> tuple[str, ...]:
    from layerfolio.studies.climate_year import MONTHS

    return MONTHS


@rule
def humid_room(project: Any, study: CondensationStudy) -> Caution | None:
    """Humidity class 4 or 5, or more than 50 % in the coldest month: pools, saunas, laundries (common practice)."""
    humidity = project.indoor.humidity if project.indoor else None
    number = getattr(humidity, "class_", None)
    if number is not None and number >= 4:
        given = f"humidity class {number}"
    elif study.year is None:
        return None
    else:
        coldest = min(range(12), key=lambda i: study.year.outdoor_temperature[i])
        inside = study.year.indoor_humidity[coldest]
        if inside <= 0.5:
            return None
        given = f"{inside * 100:.0f} % in {_names()[coldest]}"
    return Caution(
        "humid-room", "High humidity inside", "an ordinary room: class 3 or below, 50 % or less in winter", given,
        "the answer of this package is for ordinary rooms",
        f"line the room apart with a ventilated, foil-type barrier, and {STUDY}",
    )  # fmt: skip


@rule
def no_ventilated_cavity(project: Any, study: CondensationStudy) -> Caution | None:
    """Cladding fixed without a ventilated space: outward drying is lost and rain drives in."""
    one = study.assembly
    if one.kind not in ("wall", "roof") or one.faces != "outside air" or any(x.cavity == "ventilated" for x in one.layers):
        return None
    return Caution(
        "no-ventilated-cavity", "No ventilated space behind the outer layer", "a ventilated space behind the cladding",
        "none is listed", "rain and sun load the layers directly; the method knows neither",
        f"add a ventilated space, or {STUDY}",
    )  # fmt: skip


@rule
def closed_roof(project: Any, study: CondensationStudy) -> Caution | None:
    """Unvented roofs with the insulation between the members: dark or flat ones warm and dry too little."""
    one = study.assembly
    vented = any(x.cavity == "ventilated" for x in one.layers)
    if one.kind != "roof" or vented or not any(x.member and x.insulating for x in one.layers):
        return None
    return Caution(
        "closed-roof", "Unvented roof insulated between its members", "a ventilated space above the insulation",
        f"none; slope {one.slope:g}°", "what gets in can hardly dry out; colour, shade and snow decide, and the method "
        "knows none of them", f"ventilate it, or {STUDY}",
    )  # fmt: skip


SLOPE, SNOW = 10.0, 2500.0
"""Below this slope (degrees) and above this ground snow load (Pa) vents may lie under snow (common practice, no source)."""


@rule
def vents_under_snow(project: Any, study: CondensationStudy) -> Caution | None:
    one = study.assembly
    snow = getattr(getattr(project, "site_loads", None), "snow", None)
    vented = any(x.cavity == "ventilated" for x in one.layers)
    if one.kind != "roof" or not vented or (one.slope >= SLOPE and (snow is None or snow.value <= SNOW)):
        return None
    customary = project.project.units == "customary"
    load = f", ground snow {pressure(snow.value, customary)}" if snow else ""
    return Caution(
        "vents-under-snow", "Roof vents under snow", "vents that stay open all winter", f"slope {one.slope:g}°{load}",
        "a vented roof whose vents are buried for months acts as an unvented one",
        "raise the vents above the snow and widen the path; show it on the drawing",
    )  # fmt: skip


@rule
def tight_outside(project: Any, study: CondensationStudy) -> Caution | None:
    """Outside layers together tighter than one fifth of the inside ones (rule of thumb, common practice, no source)."""
    ratio = _ratio(study)
    if ratio is None or ratio >= 5:
        return None
    title = "Outside layers nearly as tight as inside ones" if ratio >= 1 else "Outside layers tighter than inside ones"
    return Caution(
        "tight-outside", title, "inside five times tighter (a rule of thumb, no limit)",
        f"{ratio:.2g} : 1", "little can dry outward; the balance above shows the amounts",
        f"open the outside, tighten the inside, or {STUDY}",
    )  # fmt: skip


def _ratio(study: CondensationStudy) -> float | None:
    """Inside over outside s_d as expected, the layer of greatest resistance left out; None without figures."""
    if study.expected is None or not study.expected.values:
        return None
    values = study.expected.values
    main = max(values, key=lambda one: one.resistance).layer.number
    inside = sum(one.s_d for one in values if one.layer.number > main)
    outside = sum(one.s_d for one in values if one.layer.number < main)
    return inside / outside if outside else None


@rule
def reclaimed(project: Any, study: CondensationStudy) -> Caution | None:
    """Layers named as reclaimed: nobody knows what they let through."""
    named = [called(x) for x in study.assembly.layers if "reclaimed" in f"{x.name} {x.title} {x.material}".lower()]
    if not named:
        return None
    return Caution(
        "reclaimed", "Reclaimed material", "known vapour and moisture figures", ", ".join(named),
        "species, treatment and moisture are unknown", "have it tested; use it where nothing depends on its figures",
    )  # fmt: skip


@rule
def inner_finish(project: Any, study: CondensationStudy) -> Caution | None:
    """What is painted or papered on later can close an open wall: said wherever nothing inside controls vapour."""
    one: Assembly = study.assembly
    if any("vapour control" in x.serves for x in one.layers) or one.kind not in ("wall", "roof"):
        return None
    return Caution(
        "inner-finish", "No vapour control layer is named", "a layer inside that controls vapour", "none",
        "the balance then rests on the lining and its paint, which the next owner may change",
        "name the layer that controls vapour, and keep oil paint and vinyl off the room side",
    )  # fmt: skip
