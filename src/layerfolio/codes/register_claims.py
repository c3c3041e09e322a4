"""What a package claims of the whole building: each claim that the project file makes wants a document of its own."""

from collections.abc import Callable, Iterator, Mapping
from typing import Any

from layerfolio.assembly.types import Assembly, Layer
from layerfolio.catalogue.expected_documents import ExpectedDocument, claims
from layerfolio.codes.register_papers import Paper, project_papers
from layerfolio.codes.register_subjects import Subject
from layerfolio.codes.register_types import BUILDING, RECORD
from layerfolio.codes.site_figures import degree_days, pressure, temperature
from layerfolio.units.show import in_units

Assemblies = Mapping[str, Assembly]
Made = tuple[str, list[str]] | None  # what is claimed in words, and the sheets it is used on; None: not claimed


def claim_subjects(project: Any, assemblies: Assemblies, customary: bool) -> Iterator[Subject]:
    """The claims that the project makes, in the order of the data; each with the documents that are for it."""
    for one in claims():
        made = _MADE[one.name](project, assemblies, customary) if one.name in _MADE else None
        held = tuple(paper for paper in project_papers(project) if answers(paper, one))
        if made is None and not held:
            continue
        words, sheets = made or ("", [RECORD])
        subject = Subject(one.name, "claim", one.title, one, figures={one.name: words} if words else {})
        subject.why = _why(project, one.name)
        subject.papers += held
        subject.used_on += sheets
        yield subject


def _why(project: Any, claim: str) -> str:
    """Why a document is wanted: nobody named one, or the project file names a source in words alone."""
    entry = {"climate": project.climate, "site-loads": getattr(project, "site_loads", None)}.get(claim)
    source = getattr(entry, "source", None)
    return f"no document is listed for it ({source})" if source else "no document is listed for it"


def answers(paper: Paper, claim: ExpectedDocument) -> bool:
    """Whether a document of the project is for a claim: by what it says it is for, else by what it proves."""
    said = paper.speaks_for or paper.document.proves
    return any(word.lower() in claim.words for word in said)


def _airtightness(project: Any, assemblies: Assemblies, customary: bool) -> Made:
    aim, measured = (getattr(project, key, None) for key in ("air_changes_at_50_pa", "measured_air_changes_at_50_pa"))
    rate = aim if measured is None else measured
    how = "" if measured is None else ", measured"
    return (f"{rate:g} air changes an hour at 50 Pa{how}", [BUILDING, RECORD]) if rate is not None else None


def _heat_recovery(project: Any, assemblies: Assemblies, customary: bool) -> Made:
    share = getattr(getattr(project.building, "ventilation", None), "recovery", None)
    if share is not None:
        return f"recovery of {share.value * 100:g} % as stated", [BUILDING]
    return ("heat recovery is stated", [RECORD]) if project.code.heat_recovery else None


def _serving(assemblies: Assemblies, wanted: Callable[[Layer], bool]) -> tuple[list[str], list[str]]:
    """Titles of the layers that are wanted, and the assemblies they are in; each once, in order."""
    found = [(name, layer.title) for name, one in assemblies.items() for layer in one.layers if wanted(layer)]
    return list(dict.fromkeys(title for _, title in found)), list(dict.fromkeys(name for name, _ in found))


def _bracing(project: Any, assemblies: Assemblies, customary: bool) -> Made:
    titles, names = _serving(assemblies, lambda one: "bracing" in one.serves)
    return (f"bracing by {', '.join(titles)}", [*names, RECORD]) if names else None


def _seams(project: Any, assemblies: Assemblies, customary: bool) -> Made:
    titles, names = _serving(assemblies, lambda one: one.seams in ("taped", "sealed"))
    return (f"seams of {', '.join(titles)}", [*names, RECORD]) if names else None


def _humidity(project: Any, assemblies: Assemblies, customary: bool) -> Made:
    given = getattr(project.indoor, "humidity", None)
    sheets = [f"{name}-V" for name, one in assemblies.items() if one.faces != "ground"]
    return (_humidity_words(given), sheets[:3] or [RECORD]) if given is not None else None


def _humidity_words(given: Any) -> str:
    if getattr(given, "class_", None):
        return f"humidity class {given.class_} of ISO 13788"
    if getattr(given, "relative_humidity", None):
        return f"relative humidity {given.relative_humidity.value * 100:.3g} % inside"
    if getattr(given, "continental", None):
        return f"indoor climate by the continental chart, {given.continental} occupancy"
    return "relative humidity inside, month by month"


def _climate(project: Any, assemblies: Assemblies, customary: bool) -> Made:
    climate = project.climate
    days, design = climate.heating_degree_days, getattr(climate, "heating_design_temperature", None)
    said = [_degree_days(days.value, customary)] if days else []
    said += [f"design temperature {temperature(design.value, customary)}"] if design else []
    said += ["monthly means"] if getattr(climate, "monthly", None) else []
    return ("; ".join(said), [BUILDING, RECORD]) if said else None  # the zone of the record, the losses of the sum


def _degree_days(value: float, customary: bool) -> str:
    """Whole degree-days: a figure in customary units has decimals in the other."""
    return degree_days(value) if not customary else f"{in_units(value, 'F.d'):.0f} °F·d ({value:.0f} K·d)"


def _loads(project: Any, assemblies: Assemblies, customary: bool) -> Made:
    loads = getattr(project, "site_loads", None)
    said = [
        f"{word} {pressure(one.value, customary)}"
        for word, one in (("wind pressure", getattr(loads, "wind_pressure_1_50", None)), ("snow", getattr(loads, "snow", None)))
        if one is not None
    ]
    said += ["wind speed"] if getattr(loads, "wind_speed", None) else []
    said += ["earthquake figures"] if getattr(loads, "seismic", None) else []
    return ("; ".join(said), [RECORD]) if said else None


_MADE: dict[str, Callable[[Any, Assemblies, bool], Made]] = {
    "airtightness": _airtightness, "heat-recovery": _heat_recovery, "bracing": _bracing, "seams": _seams,
    "site-loads": _loads, "indoor-humidity": _humidity, "climate": _climate,
}  # fmt: skip
