"""The heat that a whole building loses: conductances of its parts, the air that changes, the design heat loss in winter."""

from layerfolio.steps.formula import formula


@formula("A_n", source="iso-13789-2017, dimensions")
def net_area(*, area: float, A_w: tuple[float, ...]) -> float:
    """Area of an assembly without the openings in it."""
    return area - sum(A_w)


@formula("H_x", source="iso-13789-2017, direct transmission")
def conductance(*, area: float, U: float) -> float:
    """Heat flow per kelvin through an area."""
    return area * U


@formula("H_x", source="iso-13789-2017, direct transmission")
def join_conductance(*, l_j: float, psi_j: float) -> float:
    """Heat flow per kelvin that a join adds along its length."""
    return l_j * psi_j


@formula("H_T", source="iso-13789-2017, direct transmission")
def transmission(*, H_x: tuple[float, ...]) -> float:
    """Heat flow per kelvin by transmission, several parts together."""
    return sum(H_x)


@formula("U_m", source="iso-13789-2017, direct transmission")
def mean_transmittance(*, H_T: float, area: float) -> float:
    """Mean thermal transmittance, weighted by area."""
    return H_T / area


@formula("n_inf", source="common-practice, a twentieth of the air change at 50 Pa")
def infiltration(*, n_50: float) -> float:
    """Air changes per hour in use, by leakage."""
    return n_50 / 20


@formula("n_V", source="iso-13789-2017, ventilation")
def ventilation_rate(*, q_V: float, V: float) -> float:
    """Air changes per hour by mechanical ventilation, its flow per second."""
    return 3600 * q_V / V


@formula("n_a", source="iso-13789-2017, ventilation")
def air_changes(*, n_inf: float, n_V: float, eta: float) -> float:
    """Air changes per hour that take heat away, the recovered share of the ventilation left out."""
    return n_inf + n_V * (1 - eta)


@formula("c_V", source="iso-10456-2007, Table 3")
def air_heat_capacity(*, rho: float, c_p: float) -> float:
    """Heat capacity of a volume of air, in watt-hours."""
    return rho * c_p / 3600


@formula("H_V", source="iso-13789-2017, ventilation")
def air_loss(*, c_V: float, n_a: float, V: float) -> float:
    """Heat flow per kelvin that the change of air takes away."""
    return c_V * n_a * V


@formula("Phi", source="iso-13789-2017, design heat loss as for a whole building")
def transmission_loss(*, H_T: float, theta_i: float, theta_e: float) -> float:
    """Design heat loss by transmission, at the outdoor design temperature."""
    return H_T * (theta_i - theta_e)


@formula("Phi", source="iso-13789-2017, design heat loss as for a whole building")
def design_heat_loss(*, H_T: float, H_V: float, theta_i: float, theta_e: float) -> float:
    """Design heat loss in winter, at the outdoor design temperature."""
    return (H_T + H_V) * (theta_i - theta_e)
