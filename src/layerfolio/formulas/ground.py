"""Steady heat flow through the ground: floors, edge insulation, suspended floors and basements by ISO 13370.

The formulas keep the standard's numbers in their source. Symbols with one letter too many in this house have an index of
their own: the glossary says which.
"""

from math import log as ln
from math import pi

from layerfolio.steps.formula import formula


@formula("B", source="iso-13370-2017, formula (2)")
def characteristic_dimension(*, area: float, P: float) -> float:
    """Characteristic dimension of the floor: its area over half the exposed perimeter."""
    return area / (0.5 * P)


@formula("R_f", source="iso-13370-2017, resistance of the floor")
def floor_layers(*, R: tuple[float, ...]) -> float:
    """The floor's own layers in series, without films."""
    return sum(R)


@formula("R_w", source="iso-13370-2017, resistance of the walls of a basement")
def wall_layers(*, R: tuple[float, ...]) -> float:
    """The basement wall's own layers in series, without films."""
    return sum(R)


@formula("d_f", source="iso-13370-2017, formula (3)")
def floor_equivalent(*, w_e: float, lam_g: float, R_si: float, R_f: float, R_se: float) -> float:
    """Equivalent thickness of the floor: the depth of ground that resists as much."""
    return w_e + lam_g * (R_si + R_f + R_se)


@formula("U_0", source="iso-13370-2017, formula (4)")
def slab_transmittance(*, lam_g: float, B: float, d_f: float) -> float:
    """Transmittance of a floor on the ground, uninsulated or moderately insulated."""
    return 2 * lam_g / (pi * B + d_f) * ln(pi * B / d_f + 1)


@formula("U_0", source="iso-13370-2017, formula (5)")
def insulated_slab_transmittance(*, lam_g: float, B: float, d_f: float) -> float:
    """Transmittance of a floor on the ground, well insulated."""
    return lam_g / (0.457 * B + d_f)


@formula("R_add", source="iso-13370-2017, formula (D.2)")
def edge_resistance(*, R_n: float, d_n: float, lam_g: float) -> float:
    """What edge insulation resists beyond the ground that it replaces."""
    return R_n - d_n / lam_g


@formula("d_add", source="iso-13370-2017, formula (D.1)")
def edge_equivalent(*, R_add: float, lam_g: float) -> float:
    """The depth of ground that resists as much as the edge insulation adds."""
    return R_add * lam_g


@formula("psi_e", source="iso-13370-2017, formula (D.5)")
def horizontal_edge(*, lam_g: float, D_e: float, d_f: float, d_add: float) -> float:
    """Linear transmittance of edge insulation that lies."""
    return -lam_g / pi * (ln(D_e / d_f + 1) - ln(D_e / (d_f + d_add) + 1))


@formula("psi_e", source="iso-13370-2017, formula (D.6)")
def vertical_edge(*, lam_g: float, D_e: float, d_f: float, d_add: float) -> float:
    """Linear transmittance of edge insulation that stands."""
    return -lam_g / pi * (ln(2 * D_e / d_f + 1) - ln(2 * D_e / (d_f + d_add) + 1))


@formula("U_gr", source="iso-13370-2017, formula (D.4)")
def with_edge_insulation(*, U_0: float, psi_e: float, B: float) -> float:
    """Transmittance of a floor on the ground with its edge insulation."""
    return U_0 + 2 * psi_e / B


@formula("U_fl", source="iso-13370-2017, transmittance of the suspended part")
def suspended_part(*, R_si: float, R_f: float, R_se: float) -> float:
    """Transmittance of a suspended floor into the space below it, an inner film on both faces."""
    return 1 / (R_si + R_f + R_se)


@formula("d_gr", source="iso-13370-2017, formula (9)")
def bottom_equivalent(*, w_e: float, lam_g: float, R_si: float, R_se: float) -> float:
    """Equivalent thickness of the bottom of an underfloor space that is bare ground."""
    return w_e + lam_g * (R_si + R_se)


@formula("U_bot", source="iso-13370-2017, formula (10)")
def bottom_transmittance(*, lam_g: float, B: float, d_gr: float) -> float:
    """Transmittance through the bottom of an underfloor space."""
    return 2 * lam_g / (pi * B + d_gr) * ln(pi * B / d_gr + 1)


@formula("U_x", source="iso-13370-2017, formula (11)")
def underfloor_transmittance(*, h_u: float, U_uw: float, B: float, eps: float, v_w: float, f_w: float) -> float:
    """Transmittance by the walls and the vents of an underfloor space."""
    return 2 * h_u * U_uw / B + 1450 * eps * v_w * f_w / B


@formula("U_gr", source="iso-13370-2017, formula (8)")
def suspended_floor(*, U_fl: float, U_bot: float, U_x: float) -> float:
    """Transmittance of a suspended floor with the space below it."""
    return 1 / (1 / U_fl + 1 / (U_bot + U_x))


@formula("U_gr", source="iso-13370-2017, formula (13)")
def basement_floor(*, lam_g: float, B: float, d_f: float, z: float) -> float:
    """Transmittance of a basement floor, uninsulated or moderately insulated."""
    return 2 * lam_g / (pi * B + d_f + 0.5 * z) * ln(pi * B / (d_f + 0.5 * z) + 1)


@formula("U_gr", source="iso-13370-2017, formula (14)")
def insulated_basement_floor(*, lam_g: float, B: float, d_f: float, z: float) -> float:
    """Transmittance of a basement floor, well insulated."""
    return lam_g / (0.457 * B + d_f + 0.5 * z)


@formula("d_w", source="iso-13370-2017, formula (15)")
def wall_equivalent(*, lam_g: float, R_si: float, R_w: float, R_se: float) -> float:
    """Equivalent thickness of a basement wall."""
    return lam_g * (R_si + R_w + R_se)


@formula("U_gr", source="iso-13370-2017, formula (16)")
def basement_wall(*, lam_g: float, z: float, d_f: float, d_w: float) -> float:
    """Transmittance of a basement wall over the depth of the floor."""
    return 2 * lam_g / (pi * z) * (1 + 0.5 * d_f / (d_f + z)) * ln(z / d_w + 1)
