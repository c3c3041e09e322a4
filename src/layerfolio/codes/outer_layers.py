"""Layers outside a ventilated cavity: they count for nothing in the studies, and still have a place that a code asks about."""

from layerfolio.assembly.types import Assembly, Layer
from layerfolio.formulas import vapour as f


def ventilated_cavity(assembly: Assembly) -> Layer | None:
    """The ventilated cavity, the innermost of several; None without one."""
    return next((one for one in reversed(assembly.layers) if one.cavity == "ventilated"), None)


def outside_the_cavity(assembly: Assembly) -> tuple[Layer, ...]:
    """Layers outside the ventilated cavity, from the outside in."""
    cavity = ventilated_cavity(assembly)
    if cavity is None:
        return ()
    return tuple(one for one in assembly.layers if one.number < cavity.number and one.kind != "cavity")


def dry_permeance(layer: Layer) -> float | None:
    """Dry-cup permeance of a layer by its own figure, kg/(m2.s.Pa); None without the figure, or the thickness it needs."""
    figures = layer.vapour
    if figures is None or figures.dry is None:
        return None
    value = figures.dry.value
    if figures.basis == "permeance":
        return value
    if figures.basis == "s_d":
        return f.permeance(delta_0=f.DELTA_0, s_d=value) if value else None
    if layer.thickness is None or not layer.thickness.value or not value:
        return None
    mu = value if figures.basis == "mu" else f.resistance_factor(delta_0=f.DELTA_0, delta=value)
    return f.permeance(delta_0=f.DELTA_0, s_d=f.equivalent_air_layer(mu=mu, d=layer.thickness.value))
