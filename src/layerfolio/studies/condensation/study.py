"""The moisture study of one assembly: both runs of the monthly balance, the surface, two periods."""

from typing import Any

from layerfolio.assembly.types import Assembly
from layerfolio.catalogue.datum import Datum, Origin
from layerfolio.studies.climate_year import Year, climate_year, outside_of
from layerfolio.studies.condensation.balance import balance
from layerfolio.studies.condensation.cautions import cautions
from layerfolio.studies.condensation.section import column, cup_values, parts, parts_of
from layerfolio.studies.condensation.surface import surface_study
from layerfolio.studies.condensation.two_period import two_period_study
from layerfolio.studies.condensation.types import MONTHLY, Basis, CondensationStudy, Run, SurfaceStudy
from layerfolio.studies.types import ThermalStudy, VapourStudy

R_SI = {"horizontal": 0.13, "up": 0.10, "down": 0.17}
"""Inside surface resistance of the monthly balance by direction of heat flow, m2.K/W (as iso-6946-2017)."""
R_SE = 0.04


def condensation_study(
    assembly: Assembly, thermal: ThermalStudy, vapour: VapourStudy, year: Year | None, *,
    missing_inputs: tuple[str, ...] = (), method: str = MONTHLY, vapour_values: dict[str, str] | None = None,
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
    surface = _surface(assembly, thermal, year)
    if missing or not found:
        basis = Basis(found, thermal.layers, films(assembly), fixed, (), ())
        return CondensationStudy(assembly, method, year, None, None, surface, None, (), missing, missing_inputs, basis)
    basis = Basis(found, thermal.layers, films(assembly), fixed, expected, less)
    runs = _runs(assembly, basis, year) if year else (None, None)
    two_period = two_period_study(assembly, expected, less, year) if assembly.faces != "ground" else None
    warned = cautions(assembly, year, runs[0], runs[1], surface)
    return CondensationStudy(assembly, method, year, *runs, surface, two_period, warned, (), missing_inputs, basis)


def study_of_project(
    project: Any, name: str, assembly: Assembly, thermal: ThermalStudy, vapour: VapourStudy
) -> CondensationStudy:
    """The study of one assembly of a project, with the method and the cups that its file states."""
    year, missing = climate_year(project)
    given = project.assemblies[name]
    moisture = getattr(given, "moisture", None)
    fixed = getattr(given, "vapour_values", None) or getattr(moisture, "vapour_values", None)
    return condensation_study(
        assembly, thermal, vapour, year, missing_inputs=missing, method=getattr(moisture, "method", None) or MONTHLY,
        vapour_values=fixed,
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


def _runs(assembly: Assembly, basis: Basis, year: Year) -> tuple[Run, Run]:
    """Both runs of the monthly balance."""
    outside = outside_of(assembly.faces, year)
    resistances = [film.value for film in basis.films]
    return tuple(
        balance(values, column(values, *resistances), year, outside)
        for values in (basis.expected, basis.less_favourable)
    )  # type: ignore[return-value]


def _surface(assembly: Assembly, thermal: ThermalStudy, year: Year | None) -> SurfaceStudy | None:
    """The surface check, which needs no vapour figures; None without a year or a thermal figure."""
    if year is None or thermal.missing or not thermal.layers:
        return None
    return surface_study(assembly, thermal.layers, year, outside_of(assembly.faces, year))
