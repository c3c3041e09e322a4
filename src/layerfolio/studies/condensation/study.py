"""The moisture study of one assembly: both runs of the monthly balance, surface, two periods, sensitivity."""

from typing import Any

from layerfolio.assembly.types import Assembly
from layerfolio.catalogue.datum import Datum, Origin
from layerfolio.steps.trace import Recorder
from layerfolio.studies.climate_year import MONTHS, Year, climate_year, outside_of
from layerfolio.studies.condensation.balance import balance
from layerfolio.studies.condensation.cautions import cautions
from layerfolio.studies.condensation.no_calculation import construction
from layerfolio.studies.condensation.printed import record_airs, record_month, record_values
from layerfolio.studies.condensation.printed_limits import record_surface, record_two_period
from layerfolio.studies.condensation.section import column, cup_values, main_insulation, parts, parts_of
from layerfolio.studies.condensation.sensitivity import Case, sensitivity
from layerfolio.studies.condensation.surface import surface_study
from layerfolio.studies.condensation.two_period import two_period_study
from layerfolio.studies.condensation.types import MONTHLY, CondensationStudy, LayerValue, Run
from layerfolio.studies.types import ThermalStudy, VapourStudy

R_SI = {"horizontal": 0.13, "up": 0.10, "down": 0.17}
"""Inside surface resistance of the monthly balance by direction of heat flow, m2.K/W (as iso-6946-2017)."""
R_SE = 0.04


def condensation_study(
    assembly: Assembly, thermal: ThermalStudy, vapour: VapourStudy, year: Year | None, *,
    missing_inputs: tuple[str, ...] = (), method: str = MONTHLY, vapour_values: dict[str, str] | None = None,
    with_sensitivity: bool = True,
) -> CondensationStudy:  # fmt: skip
    """Everything about moisture in one assembly.

    `year` None with `missing_inputs` (keys of the project file) leaves the monthly balance and the surface out.
    `vapour_values` fixes the cup (dry, wet) of layers by name. Layers without a figure are named, never guessed.
    """
    fixed = dict(vapour_values or {})
    found = parts_of(assembly) if thermal.missing else parts(assembly, thermal.layers, vapour.layers)
    expected, lacking = cup_values(found, less_favourable=False, fixed=fixed)
    less, also_lacking = cup_values(found, less_favourable=True, fixed=fixed)
    missing = tuple(dict.fromkeys((*thermal.missing, *lacking, *also_lacking)))
    record = Recorder()
    if missing or not found:
        record.choice("No moisture result", "no heat or vapour figure for " + (", ".join(missing) or "any layer"))
        surface = _surface(assembly, thermal, year, record)
        return CondensationStudy(
            assembly, method, year, None, None, surface, None, (), (), missing, missing_inputs, record.done()
        )
    record_values(record, expected, less, main_insulation(found).title)
    runs = _runs(assembly, expected, less, year, record) if year else (None, None)
    surface = _surface(assembly, thermal, year, record)
    two_period = None
    if assembly.faces != "ground":
        two_period = two_period_study(assembly, expected, less, year)
        record_two_period(record, two_period, assembly)
    changes = ()
    if with_sensitivity and year and runs[0]:
        outside = outside_of(assembly.faces, year)
        both = tuple(film.value for film in films(assembly))
        changes = sensitivity(Case(assembly, found, year, outside, both, fixed, runs[0]))
    warned = cautions(assembly, year, runs[0], runs[1], surface)
    return CondensationStudy(
        assembly, method, year, *runs, surface, two_period, changes, warned, (), missing_inputs, record.done(),
        construction(assembly, less),
    )  # fmt: skip


def study_of_project(
    project: Any, name: str, assembly: Assembly, thermal: ThermalStudy, vapour: VapourStudy, *,
    with_sensitivity: bool = True,
) -> CondensationStudy:  # fmt: skip
    """The study of one assembly of a project, with the method and the cups that its file states."""
    year, missing = climate_year(project)
    given = project.assemblies[name]
    moisture = getattr(given, "moisture", None)
    fixed = getattr(given, "vapour_values", None) or getattr(moisture, "vapour_values", None)
    return condensation_study(
        assembly, thermal, vapour, year, missing_inputs=missing, method=getattr(moisture, "method", None) or MONTHLY,
        vapour_values=fixed, with_sensitivity=with_sensitivity,
    )  # fmt: skip


def films(assembly: Assembly) -> tuple[Datum, Datum]:
    """Inside and outside film of the monthly balance, m2.K/W: `surfaces` of the project file, else by direction."""
    inside = _stated(assembly.inside_film, R_SI[assembly.heat_direction], f"heat flow {assembly.heat_direction}")
    ground = assembly.faces == "ground"
    return inside, _stated(assembly.outside_film, 0.0 if ground else R_SE, "to ground" if ground else "outside")


def _stated(film: Datum, usual: float, place: str) -> Datum:
    """The project's own film, else the method's; that ISO 13788 takes these of ISO 6946 was not re-read."""
    if film.origin.chosen_by == "layer":
        return film
    return Datum(usual, Origin("default", "iso-6946-2017", f"surface resistances, {place}", "memory"))


def _runs(
    assembly: Assembly, expected: tuple[LayerValue, ...], less: tuple[LayerValue, ...], year: Year, record: Recorder
) -> tuple[Run, Run]:
    """Both runs; January of the one as expected is recorded step by step."""
    outside, both = outside_of(assembly.faces, year), films(assembly)
    resistances = [film.value for film in both]
    runs = tuple(balance(values, column(values, *resistances), year, outside) for values in (expected, less))
    month = _month_to_show(runs[0])
    record_airs(record, year, outside, month)
    record_month(record, runs[0], year, outside, month, both)
    return runs  # type: ignore[return-value]


def _month_to_show(run: Run) -> int:
    """January, unless it is dry in a year that is not: then the month with most condensate."""
    january = run.profiles[0]
    if run.outcome == "none" or january.held:
        return 0
    return MONTHS.index(max(run.months, key=lambda month: month.flow).name)


def _surface(assembly: Assembly, thermal: ThermalStudy, year: Year | None, record: Recorder):
    """The surface check, which needs no vapour figures; None without a year or a thermal figure."""
    if year is None or thermal.missing or not thermal.layers:
        return None
    outside = outside_of(assembly.faces, year)
    study = surface_study(assembly, thermal.layers, year, outside)
    record_surface(record, study, assembly, thermal.layers, year, outside)
    return study
