"""Steady heat flow through plane building components: ISO 6946 and the effective resistance of Canadian codes."""

from math import prod

from layerfolio.steps.formula import formula


@formula("R", source="iso-6946-2017, 6.7.1.1")
def layer_resistance(*, d: float, lam: float) -> float:
    """Thermal resistance of a homogeneous layer."""
    return d / lam


@formula("R", source="iso-6946-2017, 6.7.1.1")
def resistance_by_thickness(*, d: float, r: float) -> float:
    """Thermal resistance of a layer from the code's resistance per thickness."""
    return d * r


@formula("R_T", source="iso-6946-2017, formula (11)")
def slightly_ventilated_resistance(*, A_v: float, R_u: float, R_v: float) -> float:
    """Resistance of an assembly whose cavity is slightly ventilated, between the still and the well ventilated case."""
    return (1500 - A_v) / 1000 * R_u + (A_v - 500) / 1000 * R_v


@formula("R_sp", source="iso-6946-2017, formula (12)")
def unheated_space_resistance(
    *, A_i: float, A_e: tuple[float, ...], U_e: tuple[float, ...], n_u: float, V_u: float
) -> float:
    """Resistance of an unheated space: its envelope and the air it changes, for the area towards the room."""
    return A_i / (sum(A_e * U_e for A_e, U_e in zip(A_e, U_e, strict=True)) + 0.33 * n_u * V_u)


@formula("R_fr", source="iso-6946-2017, 6.7.2.4")
def framed_layer_resistance(*, f: tuple[float, ...], R: tuple[float, ...]) -> float:
    """Resistance of a framed layer, its parts side by side."""
    return 1 / sum(f / R for f, R in zip(f, R, strict=True))


@formula("R_h", source="iso-6946-2017, 6.7.1.2")
def homogeneous_total(*, R: tuple[float, ...]) -> float:
    """Films and homogeneous layers in series."""
    return sum(R)


@formula("R_q", source="iso-6946-2017, 6.7.2.3")
def path_resistance(*, R: tuple[float, ...]) -> float:
    """Resistance along one heat-flow path, air to air."""
    return sum(R)


@formula("R_lower", source="iso-6946-2017, 6.7.2.4")
def series_resistance(*, R: tuple[float, ...]) -> float:
    """Resistances in series, each framed layer with its parallel-path value."""
    return sum(R)


@formula("f_q", source="iso-6946-2017, 6.7.2.3")
def path_share(*, f: tuple[float, ...]) -> float:
    """Share of the area of one heat-flow path: the shares of what it crosses, multiplied."""
    return prod(f)


@formula("R_upper", source="iso-6946-2017, 6.7.2.3")
def upper_limit(*, f_q: tuple[float, ...], R_q: tuple[float, ...]) -> float:
    """Upper limit of the total resistance: every heat-flow path on its own."""
    return 1 / sum(f_q / R_q for f_q, R_q in zip(f_q, R_q, strict=True))


@formula("R_T", source="iso-6946-2017, 6.7.2.2")
def mean_of_limits(*, R_upper: float, R_lower: float) -> float:
    """Total resistance: mean of upper and lower limit."""
    return (R_upper + R_lower) / 2


@formula("ratio", source="iso-6946-2017, 6.7.2.1")
def limits_ratio(*, R_upper: float, R_lower: float) -> float:
    """Upper limit over lower limit; the combined method holds up to 1.5."""
    return R_upper / R_lower


@formula("e", source="iso-6946-2017, 6.7.2.5")
def greatest_relative_error(*, R_upper: float, R_lower: float, R_T: float) -> float:
    """Greatest relative error of the combined method."""
    return (R_upper - R_lower) / (2 * R_T)


@formula("U", source="iso-6946-2017, 6.5")
def transmittance(*, R_T: float) -> float:
    """Thermal transmittance."""
    return 1 / R_T


@formula("U", source="iso-6946-2017, 6.5")
def transmittance_of_planes(*, R_lower: float) -> float:
    """Thermal transmittance by isothermal planes."""
    return 1 / R_lower


@formula("U", source="iso-6946-2017, 6.5")
def transmittance_of_paths(*, R_upper: float) -> float:
    """Thermal transmittance by parallel paths."""
    return 1 / R_upper


@formula("U_fr", source="iso-6946-2017, 6.7.2.3")
def framing_heat(*, f_q: tuple[float, ...], R_q: tuple[float, ...]) -> float:
    """Heat flow per kelvin through the paths that hold framing."""
    return sum(f_q / R_q for f_q, R_q in zip(f_q, R_q, strict=True))


@formula("s_fr", source="iso-6946-2017, 6.7.2.3")
def framing_share_of_heat(*, U_fr: float, R_upper: float) -> float:
    """Share of the heat that flows through framing, path by path."""
    return U_fr * R_upper


@formula("theta_x", source="ashrae-hof-2021-ch27, temperature at an interface")
def interface_temperature(*, theta_i: float, theta_e: float, R_x: float, R_T: float) -> float:
    """Temperature of an interface, in proportion to the resistance between it and the room air."""
    return theta_i - (theta_i - theta_e) * R_x / R_T


@formula("R_s", source="iso-6946-2017, 6.8")
def surface_resistances(*, R_si: float, R_se: float) -> float:
    """Surface resistances of both sides together."""
    return R_si + R_se
