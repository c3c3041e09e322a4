"""Nails, screws and lag screws across a joint with a gap: dowel bearing, the six yield modes, withdrawal (NDS, TR 12).

Every mode but the two of bearing alone is the positive root of A P² + B P = C. Lengths, forces and stresses go together in
any one system of units; what a source prints with a unit of its own comes in as an argument.
"""

from layerfolio.steps.formula import formula

TR12 = "awc-tr12, general dowel equations with a gap"
NDS = "nds-2018, 12.3"
WITHDRAWAL = "nds-2018, 12.2"


@formula("F_e", source="nds-2018, Table 12.3.3, note")
def small_dowel_bearing(*, F_0: float, G: float) -> float:
    """Dowel bearing strength of wood for a diameter below a quarter of an inch, along and across the grain."""
    return F_0 * G**1.84


@formula("F_e", source="nds-2018, Table 12.3.3, note")
def bearing_along_grain(*, F_0: float, G: float) -> float:
    """Dowel bearing strength of wood for a diameter from a quarter of an inch on, along the grain."""
    return F_0 * G


@formula("F_e", source="nds-2018, Table 12.3.3, note")
def bearing_across_grain(*, F_0: float, G: float, D_1: float, D_y: float) -> float:
    """Dowel bearing strength of wood for a diameter from a quarter of an inch on, across the grain."""
    return F_0 * G**1.45 * (D_1 / D_y) ** 0.5


@formula("q_f", source=TR12)
def bearing_per_length(*, F_e: float, D_y: float) -> float:
    """Dowel bearing resistance per length of fastener."""
    return F_e * D_y


@formula("M_y", source=TR12)
def dowel_moment(*, F_yb: float, D_y: float) -> float:
    """Bending resistance of a fastener."""
    return F_yb * D_y**3 / 6


@formula("P_y", source=TR12)
def yield_side(*, q_s: float, l_s: float) -> float:
    """Mode Is, bearing in the side member."""
    return q_s * l_s


@formula("P_y", source=TR12)
def yield_main(*, q_m: float, l_m: float) -> float:
    """Mode Im, bearing in the main member."""
    return q_m * l_m


@formula("A_y", source=TR12)
def a_rotation(*, q_s: float, q_m: float) -> float:
    """Coefficient A of mode II, rotation in both members."""
    return 1 / (4 * q_s) + 1 / (4 * q_m)


@formula("B_y", source=TR12)
def b_rotation(*, l_s: float, gap: float, l_m: float) -> float:
    """Coefficient B of mode II, rotation in both members."""
    return l_s / 2 + gap + l_m / 2


@formula("C_y", source=TR12)
def c_rotation(*, q_s: float, l_s: float, q_m: float, l_m: float) -> float:
    """Coefficient C of mode II, rotation in both members."""
    return q_s * l_s**2 / 4 + q_m * l_m**2 / 4


@formula("A_y", source=TR12)
def a_hinge_side(*, q_s: float, q_m: float) -> float:
    """Coefficient A of mode IIIm, a hinge in the side member."""
    return 1 / (2 * q_s) + 1 / (4 * q_m)


@formula("B_y", source=TR12)
def b_hinge_side(*, gap: float, l_m: float) -> float:
    """Coefficient B of mode IIIm, a hinge in the side member."""
    return gap + l_m / 2


@formula("C_y", source=TR12)
def c_hinge_side(*, M_y: float, q_m: float, l_m: float) -> float:
    """Coefficient C of mode IIIm, a hinge in the side member."""
    return M_y + q_m * l_m**2 / 4


@formula("A_y", source=TR12)
def a_hinge_main(*, q_s: float, q_m: float) -> float:
    """Coefficient A of mode IIIs, a hinge in the main member."""
    return 1 / (4 * q_s) + 1 / (2 * q_m)


@formula("B_y", source=TR12)
def b_hinge_main(*, l_s: float, gap: float) -> float:
    """Coefficient B of mode IIIs, a hinge in the main member."""
    return l_s / 2 + gap


@formula("C_y", source=TR12)
def c_hinge_main(*, q_s: float, l_s: float, M_y: float) -> float:
    """Coefficient C of mode IIIs, a hinge in the main member."""
    return q_s * l_s**2 / 4 + M_y


@formula("A_y", source=TR12)
def a_two_hinges(*, q_s: float, q_m: float) -> float:
    """Coefficient A of mode IV, a hinge in each member."""
    return 1 / (2 * q_s) + 1 / (2 * q_m)


@formula("C_y", source=TR12)
def c_two_hinges(*, M_y: float) -> float:
    """Coefficient C of mode IV, a hinge in each member; B is the gap."""
    return 2 * M_y


@formula("P_y", source=TR12)
def yield_root(*, A_y: float, B_y: float, C_y: float) -> float:
    """Load at yield, the positive root of the mode's equation."""
    return 2 * C_y / (B_y + (B_y**2 + 4 * A_y * C_y) ** 0.5)


@formula("R_d", source=f"{NDS}, reduction term")
def small_reduction(*, D_y: float, D_1: float) -> float:
    """Reduction term for a diameter above 0.17 in and below a quarter of an inch."""
    return 10 * D_y / D_1 + 0.5


@formula("K_th", source=f"{NDS}, reduction term")
def angle_factor(*, th: float) -> float:
    """Factor for the greatest angle of the load to the grain, a quarter more at a right angle."""
    return 1 + 0.25 * th / 90


@formula("R_d", source=f"{NDS}, reduction term")
def large_reduction(*, k_d: float, K_th: float) -> float:
    """Reduction term for a diameter from a quarter of an inch on, by the mode."""
    return k_d * K_th


@formula("Z_y", source=NDS)
def mode_capacity(*, P_y: float, R_d: float) -> float:
    """Reference lateral capacity of a fastener in one mode."""
    return P_y / R_d


@formula("w_p", source=f"{WITHDRAWAL}, wood screws")
def screw_withdrawal(*, W_0: float, G: float, D_s: float) -> float:
    """Withdrawal resistance of a wood screw per length of thread in the main member."""
    return W_0 * G**2 * D_s


@formula("w_p", source=f"{WITHDRAWAL}, nails")
def nail_withdrawal(*, W_0: float, G: float, D_s: float) -> float:
    """Withdrawal resistance of a smooth nail per length in the main member."""
    return W_0 * G**2.5 * D_s


@formula("w_p", source=f"{WITHDRAWAL}, lag screws")
def lag_withdrawal(*, W_0: float, G: float, D_s: float, D_1: float) -> float:
    """Withdrawal resistance of a lag screw per length of thread in the main member."""
    return W_0 * G**1.5 * D_1 * (D_s / D_1) ** 0.75


@formula("W_p", source=WITHDRAWAL)
def withdrawal_capacity(*, w_p: float, l_w: float) -> float:
    """Reference withdrawal capacity of a fastener."""
    return w_p * l_w
