"""The whole envelope: what each part lets through per kelvin, their sum, and what it comes to on a design winter day."""

from collections.abc import Mapping
from typing import Any

from layerfolio.catalogue.datum import Datum, Origin
from layerfolio.formulas import envelope as f
from layerfolio.steps.trace import Recorder
from layerfolio.studies import air_change
from layerfolio.studies.envelope_types import BuildingStudy, EnvelopePart, GroundStudy, HeatLoss, OpeningStudy
from layerfolio.studies.types import ThermalStudy

OPENINGS_SHEET = "C4"
MOST_AT_ONCE = 8
"""A sum over more parts is taken kind by kind first, so that its line stays readable."""
KINDS = {"assembly": "assemblies", "opening": "openings", "join": "joins"}


def building_study(
    project: Any,
    thermal: Mapping[str, ThermalStudy],
    ground: Mapping[str, GroundStudy],
    openings: Mapping[str, OpeningStudy],
) -> BuildingStudy:
    """Every assembly net of its openings, every opening, every join with psi and length; then sum and design heat loss.

    A part without a size or a figure has no conductance and says what it lacks; the sum is then None, never a lower one.
    """
    record = Recorder()
    net = _net_areas(project, thermal, openings, record)
    record.section("Conductance of each part", key="parts")
    parts = [_assembly(name, study, ground.get(name), net[name], record) for name, study in thermal.items()]
    parts += [_opening(one, record) for one in openings.values()]
    parts += _joins(project, record)
    lacking = tuple(f"{part.name}: {part.lacking}" for part in parts if part.lacking)
    total = None
    if parts and not lacking:
        total = _sum(parts, record)
        _mean_of_windows(parts, record)
    loss = _heat_loss(project, parts, total, air_change.air_change(project, record), record)
    return BuildingStudy(tuple(parts), total, loss, record.done(), lacking)


def _net_areas(
    project: Any, thermal: Mapping[str, ThermalStudy], openings: Mapping[str, OpeningStudy], record: Recorder
) -> dict[str, float | None]:
    """Areas without openings, m2. Stated areas are net, unless the project or the assembly says that they hold them."""
    found: dict[str, float | None] = {}
    steps = []
    for name, study in thermal.items():
        stated = study.assembly.area
        found[name] = stated.value if stated else None
        held = tuple(one.total_area for one in openings.values() if one.wall == name)
        own = getattr(project.assemblies.get(name), "area_includes_openings", None)
        gross = getattr(project, "area_includes_openings", False) if own is None else own
        if stated and gross and held:
            steps.append((name, stated.value, held))
    if steps:
        record.section("Areas without their openings", key="net")
    for name, area, held in steps:
        found[name] = record.step(f.net_area, about=name, area=area, A_w=held)
    return found


def _assembly(name: str, study: ThermalStudy, ground: GroundStudy | None, area: float | None, record: Recorder) -> EnvelopePart:
    figure, lacking = _assembly_figure(study, ground)
    if area is None:
        lacking = "; ".join(filter(None, ("area", lacking)))
    elif area <= 0:
        lacking, area = "an area larger than its openings", None
    assembly = study.assembly
    whole = None if lacking else record.step(f.conductance, about=f"{name} {assembly.title}".strip(), area=area, U=figure)
    return EnvelopePart("assembly", name, assembly.title, area, figure, whole, f"{name}-T", lacking, group=assembly.kind)


def _assembly_figure(study: ThermalStudy, ground: GroundStudy | None) -> tuple[float | None, str]:
    """The transmittance that counts, or what it lacks: through the ground, else corrected, else as the set asks it."""
    if study.final is None:
        return None, "thermal figures of " + ", ".join(study.missing)
    if ground is not None:
        return ground.transmittance, "ground: " + ", ".join(ground.missing) if ground.transmittance is None else ""
    if study.assembly.faces == "ground":
        return None, "a study of the ground"
    return study.final.transmittance, ""


def _opening(one: OpeningStudy, record: Recorder) -> EnvelopePart:
    lacking = "" if one.transmittance is not None else ", ".join(one.missing)
    about = f"{one.name} {one.title}".strip() + (f" ({one.count})" if one.count > 1 else "")
    whole = None if lacking else record.step(f.conductance, about=about, area=one.total_area, U=one.transmittance)
    step = OPENINGS_SHEET if one.how == "computed" else ""
    return EnvelopePart(
        "opening", one.name, one.title, one.total_area, one.transmittance, whole, step, lacking, one.figure, one.kind
    )


def _joins(project: Any, record: Recorder) -> list[EnvelopePart]:
    """Joins that state their psi; those that do not are not counted, and none is left out of a sum for it."""
    counted = [one for one in getattr(project, "joins", None) or () if one.psi is not None]
    found = []
    if any(one.length is not None for one in counted):
        record.section("Conductance of the joins", key="joins")
    for one in counted:
        name = f"{one.at} {', '.join(one.of)}"
        origin = Origin("project", str(one.source or f"project file, join {name} (no source stated)"))
        length = one.length.value if one.length else None
        whole = None if length is None else record.step(f.join_conductance, about=name, l_j=length, psi_j=one.psi.value)
        lacking = "length" if length is None else ""
        datum = Datum(one.psi.value, origin)
        found.append(EnvelopePart("join", name, "", length, one.psi.value, whole, "", lacking, datum, "join"))
    return found


def _sum(parts: list[EnvelopePart], record: Recorder) -> float:
    record.section("Transmission of the whole envelope", key="transmission")
    values = {kind: tuple(part.conductance for part in parts if part.kind == kind) for kind in KINDS}
    values = {kind: one for kind, one in values.items() if one}
    if len(parts) > MOST_AT_ONCE and len(values) > 1:
        whole = tuple(
            record.step(f.transmission, about=KINDS[kind], H_x=one) if len(one) > 1 else one[0] for kind, one in values.items()
        )
        return record.step(f.transmission, about="all", H_x=whole)
    return record.step(f.transmission, H_x=tuple(part.conductance for part in parts))


def _mean_of_windows(parts: list[EnvelopePart], record: Recorder) -> None:
    """Mean transmittance of the windows, where there are several: authorities limit it."""
    windows = [part for part in parts if part.group == "window"]
    if len(windows) < 2:
        return
    record.section("Mean transmittance of the windows", key="windows")
    through = record.step(f.transmission, H_x=tuple(part.conductance for part in windows))
    record.step(f.mean_transmittance, H_T=through, area=sum(part.size for part in windows))


def _heat_loss(
    project: Any, parts: list[EnvelopePart], total: float | None, change: air_change.AirChange, record: Recorder
) -> HeatLoss | None:
    """None without the sum or a design temperature."""
    indoor = getattr(project.indoor, "temperature", None) if project.indoor else None
    outdoor = getattr(project.climate, "heating_design_temperature", None) if project.climate else None
    if total is None or indoor is None or outdoor is None:
        return None
    inside, outside = indoor.value, outdoor.value
    by_part = tuple((part.name, part.conductance * (inside - outside)) for part in parts)
    record.section("Design heat loss in winter", key="loss")
    record.given("theta_i", inside, "room air", "project file, indoor.temperature")
    record.given("theta_e", outside, "design temperature", "project file, climate.heating_design_temperature")
    transmission = record.step(f.transmission_loss, H_T=total, theta_i=inside, theta_e=outside)
    if change.conductance is None:
        return HeatLoss(inside, outside, by_part, transmission, None, None, None, change.lacking)
    all_ = record.step(f.design_heat_loss, H_T=total, H_V=change.conductance, theta_i=inside, theta_e=outside)
    return HeatLoss(inside, outside, by_part, transmission, all_ - transmission, all_, change.changes)
