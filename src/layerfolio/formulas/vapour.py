"""Resistance of layers to vapour by diffusion: ISO 13788 and ISO 10456 terms."""

from layerfolio.steps.formula import formula

DELTA_0 = 2e-10
"""Vapour permeability of still air, kg/(m.s.Pa): the value of ISO 13788:2012 for building use."""


@formula("s_d", source="iso-13788-2012, 3.1 terms")
def equivalent_air_layer(*, mu: float, d: float) -> float:
    """Thickness of still air with the same resistance to vapour."""
    return mu * d


@formula("W", source="iso-13788-2012, 3.1 terms")
def permeance(*, delta_0: float, s_d: float) -> float:
    """Vapour permeance of a layer from its equivalent air layer."""
    return delta_0 / s_d


@formula("s_d", source="iso-13788-2012, 3.1 terms")
def equivalent_air_layer_of_permeance(*, delta_0: float, W: float) -> float:
    """Equivalent air layer of a layer with a tested permeance."""
    return delta_0 / W


@formula("mu", source="iso-13788-2012, 3.1 terms")
def resistance_factor(*, delta_0: float, delta: float) -> float:
    """Vapour resistance factor from the permeability of the material."""
    return delta_0 / delta


@formula("s_d", source="iso-13788-2012, 3.1 terms")
def sum_of_air_layers(*, s_d: tuple[float, ...]) -> float:
    """Equivalent air layers in series."""
    return sum(s_d)


@formula("openness", source="common-practice")
def openness_ratio(*, s_d_in: float, s_d_out: float) -> float:
    """Inside over outside equivalent air layer, the main insulation left out."""
    return s_d_in / s_d_out
