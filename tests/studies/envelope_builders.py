"""Openings, joins and projects from plain numbers, for tests of the studies of openings and of the whole building."""

from types import SimpleNamespace

from builders import assembly, datum, layer
from layerfolio.reading.joins import Join
from layerfolio.reading.openings import ClearOpening, Edge, Frame, Glass, Opening
from layerfolio.studies.thermal import thermal_study
from layerfolio.units.quantity import Quantity

__all__ = ["ClearOpening", "datum", "frame_and_glass", "join", "opening", "project", "q", "wall"]


def q(value, kind="length", text=""):
    return None if value is None else Quantity(value, kind, text or f"{value:g}")


def opening(width=1.23, height=1.48, **keys):
    """A window; keys as in the project file, quantities as plain SI numbers."""
    values = {"kind": "window", "in_": "W1", "width": q(width), "height": q(height)} | keys
    if isinstance(values.get("transmittance"), float):
        values["transmittance"] = q(values["transmittance"], "transmittance")
    return Opening(**values)


def frame_and_glass(U_f, U_g, *, psi=None, width=0.11, frame_area=None, glass_area=None, edge_length=None, material=None,
                    spacer=None, coating=None, panes=None):  # fmt: skip
    """The keys `frame`, `glass` and `edge` of an opening."""
    return {
        "frame": Frame(width=q(width), area=q(frame_area, "area"), transmittance=q(U_f, "transmittance"), material=material),
        "glass": Glass(transmittance=q(U_g, "transmittance"), area=q(glass_area, "area"), panes=panes, coating=coating),
        "edge": Edge(psi=q(psi, "linear_transmittance"), length=q(edge_length), spacer=spacer),
    }  # fmt: skip


def join(at, of, length, psi, source="detail 12"):
    return Join(at=at, of=of, length=q(length), psi=q(psi, "linear_transmittance"), source=source)


def wall(U, area, name="W1", **kwargs):
    """The thermal study of an assembly of that transmittance (W/(m2.K)) and area (m2)."""
    size = None if area is None else q(area, "area")
    layers = [layer(1, R=1 / U if U else None)]
    return thermal_study(assembly(layers, inside=0.0, outside=0.0, name=name, area=size, **kwargs))


def project(*, joins=(), gross=False, own_gross=None, indoor=20.0, outdoor=-27.0, n50=1.0, volume=130.0, flow=None,
            recovery=None, assemblies=("W1",)):  # fmt: skip
    """What the studies read of a project file."""
    ventilation = SimpleNamespace(flow=q(flow, "airflow"), recovery=q(recovery, "share")) if flow is not None else None
    return SimpleNamespace(
        joins=tuple(joins),
        area_includes_openings=gross,
        assemblies={name: SimpleNamespace(area_includes_openings=own_gross) for name in assemblies},
        indoor=SimpleNamespace(temperature=q(indoor, "temperature")),
        climate=SimpleNamespace(heating_design_temperature=q(outdoor, "temperature")),
        air_changes_at_50_pa=n50,
        building=SimpleNamespace(conditioned_volume=q(volume, "volume"), ventilation=ventilation),
    )
