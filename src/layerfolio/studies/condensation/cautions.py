"""What the monthly balance finds but cannot judge, and where this assembly touches the limits of the method."""

from layerfolio.assembly.types import Assembly
from layerfolio.studies.climate_year import Year
from layerfolio.studies.condensation.run import plane_words
from layerfolio.studies.condensation.timber import run_off
from layerfolio.studies.condensation.types import Run, SurfaceStudy

RUN_OFF_FROM = 0.2
"""kg/m2 from which water may run off a layer that absorbs nothing (ISO 13788, from memory: it decides nothing)."""


def cautions(
    assembly: Assembly, year: Year | None, expected: Run | None, less: Run | None, surface: SurfaceStudy | None
) -> tuple[str, ...]:
    """Sentences for the sheet, in a fixed order."""
    found = []
    if surface is not None and surface.mould.beyond:
        months = ", ".join(surface.mould.beyond)
        found.append(f"the room air itself is over {surface.mould.limit * 100:g} % in {months}: no surface stays below")
    if year is not None and expected is not None and less is not None:
        found += [*_running(assembly, expected, less), *_wet_surface(expected), *_all_year(expected, less)]
        pairs = zip(year.indoor_temperature, year.outdoor_temperature, strict=True)
        if all(inside < outside for inside, outside in pairs):
            found.append("the room is colder than outside in every month: the surface test asks nothing")
    if assembly.faces == "ground":
        found.append("the ground is taken as saturated at the yearly mean temperature (from memory)")
        found.append("the two-period method has no climate for the ground and is not run")
    return tuple(found)


def _running(assembly: Assembly, expected: Run, less: Run) -> list[str]:
    """Planes that hold more than the run-off level beside a layer that absorbs nothing."""
    found: dict[str, None] = {}
    for run in (expected, less):
        for position, (_, between) in enumerate(run.planes()):
            most = max(month.planes[position].accumulated for month in run.months)
            layers = run_off(assembly, between)
            if most > RUN_OFF_FROM and layers:
                where = plane_words(between)
                found[f"water may run off {' and '.join(layers)} at {where}: more than 200 g/m² gather there"] = None
    return list(found)


def _wet_surface(run: Run) -> list[str]:
    if not run.saturated:
        return []
    return [f"the inside surface itself is wet in {', '.join(run.saturated)}: the balance takes it as saturated there"]


def _all_year(expected: Run, less: Run) -> list[str]:
    return [
        f"condensation in all twelve months, {words}: there is no month to start from, January was taken"
        for run, words in ((expected, "as expected"), (less, "less favourable"))
        if run.start == "January" and all(month.flow > 0 for month in run.months)
    ]
