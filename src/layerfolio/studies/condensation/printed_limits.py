"""Printed steps of the surface check and of the two-period balance."""

from layerfolio.assembly.types import Assembly
from layerfolio.formulas import moisture as f
from layerfolio.formulas.moisture import AT_ZERO
from layerfolio.formulas.vapour import DELTA_0
from layerfolio.steps.trace import Recorder
from layerfolio.studies.climate_year import MONTHS, Outside
from layerfolio.studies.condensation import surface, two_period
from layerfolio.studies.condensation.run import plane_words
from layerfolio.studies.condensation.section import Column
from layerfolio.studies.condensation.string import rates
from layerfolio.studies.condensation.types import CondensationStudy, Period, TwoPeriodStudy
from layerfolio.studies.condensation.walk import (
    Airs,
    Neighbours,
    method_figure,
    plane_steps,
    saturation_step,
)
from layerfolio.studies.paths import paths
from layerfolio.studies.thermal import path_name

ISO, DIN = "iso-13788-2012", two_period.SOURCE
WINTER, SUMMER = "condensation period", "evaporation period"
FEW = 2
"""Wet planes of the winter block that are printed one by one."""


def record_surface(record: Recorder, whole: CondensationStudy, outside: Outside) -> None:
    """The factor the section has, and the one the critical month asks against mould; the study has a surface check."""
    study, assembly, heat, year = whole.surface, whole.assembly, whole.basis.heat, whole.year
    record.section("Inside surface against mould", key="surface", source=ISO)
    r_se = surface.outside_film(assembly)
    method_figure(record, "R_si", surface.R_SI, "inside film of this check", ISO, "surface humidity", "memory")
    method_figure(record, "R_se", r_se, "outside film", ISO, "surface humidity", "memory")
    for path in paths(heat):
        about = f"through {path_name(path, heat)}" if path_name(path, heat) else "through the layers"
        total = record.step(f.resistance_along, about=about, R=(surface.R_SI, *reversed(path.resistances), r_se))
        record.step(f.temperature_factor, about=about, R_si=surface.R_SI, R_T=total)
    need = study.mould
    if need.beyond:
        words = f"the room air itself is over {need.limit * 100:g} % in {', '.join(need.beyond)}"
        record.choice("No section can answer for every month", f"{words}: those months are left out here", ISO)
    if need.required is None:
        record.choice("The surface test asks nothing more", "the room is in no other month warmer than outside", ISO)
        return
    month = MONTHS.index(need.critical_month)
    record.choice(f"{need.critical_month} is the critical month", "of the twelve it asks the highest factor", ISO)
    p_i = record.given("p_i", year.indoor_pressure[month], f"room, {need.critical_month}", year.rule.words)
    limit = method_figure(record, "phi_cr", need.limit, "mould, monthly mean", ISO, "surface humidity", "memory")
    p_min = record.step(f.saturation_needed, p_i=p_i, phi_cr=limit)
    branch = f.temperature_over_ice if p_min < AT_ZERO else f.temperature_over_water
    theta = record.step(branch, p_sat_min=p_min)
    theta_e = record.given("theta_e", outside.temperature[month], f"outside, {need.critical_month}", outside.source)
    record.step(
        f.temperature_factor_needed, theta_si_min=theta, theta_e=theta_e, theta_i=year.indoor_temperature[month]
    )


def record_two_period(record: Recorder, study: TwoPeriodStudy, assembly: Assembly) -> None:
    """The winter block at each wet plane and the summer block, as expected."""
    record.section("Two periods: winter wets, summer dries", key="two-period", source=DIN)
    for reason in study.outside:
        record.choice("Outside the limits of this method", reason, DIN)
    period = study.expected
    airs = _winter_airs(record, assembly)
    nodes, _, limit = two_period.winter(assembly, period.values)
    wet = two_period.wet_nodes(nodes, limit)
    ends = (nodes.nodes[0], nodes.nodes[-1])
    t = method_figure(record, "t", two_period.SECONDS, "90 days, each period", DIN, "periods", "found")
    for node in _walked(record, nodes, limit, wet):
        near = _between(nodes, limit, wet, wet.index(node))
        rate = plane_steps(record, period.values, ends, nodes.nodes[node], airs, near, True)
        record.step(f.condensate, about=plane_words(nodes.nodes[node].between), g_c=rate, t=t)
    _summer(record, assembly, period, nodes, limit, len(wet) == 1, t)


def _walked(record: Recorder, nodes: Column, limit: list[float], wet: list[int]) -> list[int]:
    """The wet nodes that are printed: all of a few, the wettest of many."""
    if len(wet) <= FEW:
        return wet
    record.choice(f"One of {len(wet)} wet planes is shown", "the wettest; the others are found in the same way")
    rate, _, _ = rates(nodes.s_d, limit, [0, *wet, len(nodes.s_d) - 1])
    return [max(wet, key=lambda node: rate[node])]


def _between(nodes: Column, limit: list[float], wet: list[int], position: int) -> Neighbours:
    """What lies next to one of the wet nodes: the wet nodes beside it, or the airs."""
    last = position == len(wet) - 1
    inner = len(nodes.s_d) - 1 if last else wet[position + 1]
    outer = 0 if position == 0 else wet[position - 1]
    return Neighbours(
        nodes.nodes[inner], nodes.nodes[outer],
        None if last else limit[inner], None if position == 0 else limit[outer],
    )  # fmt: skip


def _winter_airs(record: Recorder, assembly: Assembly) -> Airs:
    r_se = two_period.outside_film(assembly)
    method_figure(record, "R_si", two_period.R_SI, "inside film of this method", DIN, "films", "found")
    method_figure(record, "R_se", r_se, "outside film of this method", DIN, "films", "found")
    theta_i = method_figure(record, "theta_i", two_period.INDOOR, "room, winter", DIN, WINTER, "found")
    theta_e = method_figure(record, "theta_e", two_period.OUTDOOR, "outside, winter", DIN, WINTER, "found")
    phi_i = method_figure(record, "phi_i", two_period.INDOOR_HUMIDITY, "room, winter", DIN, WINTER, "found")
    phi_e = method_figure(record, "phi_e", two_period.OUTDOOR_HUMIDITY, "outside, winter", DIN, WINTER, "found")
    p_i = record.step(f.room_vapour_pressure, phi_i=phi_i, p_sat=saturation_step(record, theta_i, "room"))
    p_e = record.step(f.outside_vapour_pressure, phi_e=phi_e, p_sat=saturation_step(record, theta_e, "outside"))
    return Airs(theta_i, theta_e, p_i, p_e, two_period.R_SI, r_se)


def _summer(
    record: Recorder, assembly: Assembly, period: Period, nodes: Column, limit: list[float], walked: bool, t: float
) -> None:
    """One plane in full; several in words, with what they come to. `walked`: the plane's s_d stand above already."""
    places, total = two_period.places(nodes, limit), nodes.s_d[-1]
    if not period.planes:
        record.choice("No condensation in winter", "what could evaporate is found at the face nearest to saturation")
    if len(places) == 1 and not walked:
        where = "the middle of the wet zone" if period.planes else "that face"
        record.given("s_d_1", total - places[0][0], f"{where} to room", "sum of the layers between")
        record.given("s_d_2", places[0][0], f"{where} to outside", "sum of the layers between")
    saturation = two_period.summer_saturation(assembly)
    p_c = method_figure(record, "p_c", saturation, "wet plane, summer", DIN, SUMMER, "found")
    p_air = method_figure(record, "p_i", two_period.SUMMER_PRESSURE, "both airs, summer", DIN, SUMMER, "found")
    if len(places) == 1:
        outward = places[0][0]
        rate = record.step(
            f.evaporation_rate, delta_0=DELTA_0, p_c=p_c, p_i=p_air, s_d_1=total - outward, p_e=p_air, s_d_2=outward
        )
        gone = record.step(f.evaporable, g_ev=rate, t=t)
    else:
        gone = record.given("M_ev", period.evaporated, "several planes", "each dries to its own side, the last never")
    record.given("M_c", period.condensed, "all planes", "winter, above")
    record.step(f.drying_reserve, M_ev=gone, M_c=period.condensed)
