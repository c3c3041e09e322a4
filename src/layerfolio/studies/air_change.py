"""The air that changes in a heated building in use, and the heat that it takes away per kelvin."""

from dataclasses import dataclass
from typing import Any

from layerfolio.catalogue.openings import air
from layerfolio.formulas import envelope as f
from layerfolio.steps.trace import Recorder

AIM = "air_changes_at_50_pa"


@dataclass(frozen=True, slots=True)
class AirChange:
    """Air changes per hour that take heat away, and W/K; None where `lacking` names the keys that are wanted."""

    changes: float | None
    conductance: float | None
    lacking: str = ""


def air_change(project: Any, record: Recorder) -> AirChange:
    """By leakage, a twentieth of the air change at 50 Pa (common practice), and by the ventilation that is stated."""
    measured = getattr(project, "measured_air_changes_at_50_pa", None)
    tested, key = (project.air_changes_at_50_pa, AIM) if measured is None else (measured, f"measured_{AIM}")
    volume = project.building.conditioned_volume
    wanted = ((AIM, tested), ("building.conditioned_volume", volume))
    lacking = ", ".join(name for name, value in wanted if value is None)
    if lacking:
        return AirChange(None, None, lacking)
    record.section("Air changes in use", key="air-changes")
    record.given("n_50", tested, "tightness", f"project file, {key}")
    record.given("V", volume.value, "heated volume", "project file, building.conditioned_volume")
    changes = record.step(f.infiltration, n_50=tested)
    changes = _with_ventilation(project, changes, volume.value, record)
    record.section("Heat capacity of the air", key="air-heat")
    density, heat = air()
    record.given("rho", density.value, "air", density.origin.source, density)
    record.given("c_p", heat.value, "air", heat.origin.source, heat)
    capacity = record.step(f.air_heat_capacity, rho=density.value, c_p=heat.value)
    record.section("Heat that the air takes away", key="air")
    record.given("c_V", capacity, "air", "the step above")
    record.given("V", volume.value, "heated volume", "project file, building.conditioned_volume")
    return AirChange(changes, record.step(f.air_loss, c_V=capacity, n_a=changes, V=volume.value))


def _with_ventilation(project: Any, leakage: float, volume: float, record: Recorder) -> float:
    """Leakage and the share of the mechanical ventilation whose heat is not recovered."""
    stated = getattr(project.building, "ventilation", None)
    flow = getattr(stated, "flow", None)
    if flow is None:
        record.choice("Leakage alone is counted", "the project file states no ventilation flow (building.ventilation.flow)")
        return leakage
    recovery = getattr(stated, "recovery", None)
    share = float(getattr(recovery, "value", recovery)) if recovery is not None else 0.0
    record.given("q_V", flow.value, "ventilation", "project file, building.ventilation.flow")
    where = "project file, building.ventilation.recovery" if recovery is not None else "none stated"
    record.given("eta", share, "recovered", where)
    by_fan = record.step(f.ventilation_rate, q_V=flow.value, V=volume)
    return record.step(f.air_changes, n_inf=leakage, n_V=by_fan, eta=share)
