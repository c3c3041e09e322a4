"""Dead load of layers and of an assembly, and what comes to one fastener."""

from layerfolio.steps.formula import formula

WEIGHT = "common-practice"


@formula("p_l", source=WEIGHT)
def layer_weight(*, rho: float, g_n: float, d_l: float) -> float:
    """Weight of a layer per area."""
    return rho * g_n * d_l


@formula("p_l", source=WEIGHT)
def part_weight(*, f: float, rho: float, g_n: float, d_l: float) -> float:
    """Weight per area of what takes a share of a layer: framing, battens, or what lies between them."""
    return f * rho * g_n * d_l


@formula("f", source=WEIGHT)
def share_between(*, f_fr: float) -> float:
    """Share of a layer between its members."""
    return 1 - f_fr


@formula("p_D", source=WEIGHT)
def dead_load_sum(*, p_l: tuple[float, ...]) -> float:
    """Dead load per area, the layers added."""
    return sum(p_l)


@formula("p_h", source=WEIGHT)
def load_on_plan(*, p_D: float, c_s: float) -> float:
    """Dead load per area of plan of a part that is sloped."""
    return p_D / c_s


@formula("A_t", source=WEIGHT)
def tributary_area(*, a_f: float, b_f2: float) -> float:
    """Area that comes to one fastener."""
    return a_f * b_f2


@formula("V_f", source=WEIGHT)
def fastener_weight(*, p_D: float, A_t: float) -> float:
    """Weight that one fastener carries across its axis."""
    return p_D * A_t


@formula("T_f", source=WEIGHT)
def fastener_suction(*, p_w: float, A_t: float) -> float:
    """Pull on one fastener along its axis from wind suction."""
    return p_w * A_t


@formula("l_m", source=WEIGHT)
def penetration(*, L_f: float, l_s: float, gap: float) -> float:
    """Length of a fastener in the main member, its head flush with the side member."""
    return L_f - l_s - gap


@formula("l_m", source="nds-2018, 12.1.6, tip of a fastener")
def penetration_without_tip(*, p_f: float, D_s: float) -> float:
    """Length in the main member that counts where the whole is short of ten diameters."""
    return p_f - 2 * D_s


@formula("u_f", source=WEIGHT)
def use_of_capacity(*, V_f: float, Z_y: float) -> float:
    """Share of the capacity that the load uses."""
    return V_f / Z_y
