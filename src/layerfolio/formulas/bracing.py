"""Lines of bracing: what the panels come to, and what a table's length becomes with its factors."""

from layerfolio.steps.formula import formula


@formula("L_p", source="common-practice, geometry")
def panels_together(*, b_p: tuple[float, ...]) -> float:
    """Length of all panels of a line."""
    return sum(b_p)


@formula("f_p", source="common-practice, geometry")
def panel_share(*, L_p: float, L_w: float) -> float:
    """Share of the line that panels take."""
    return L_p / L_w


@formula("g_p", source="common-practice, geometry")
def clear_distance(*, x_1: float, x_2: float) -> float:
    """Clear distance from edge to edge."""
    return x_2 - x_1


@formula("a_p", source="common-practice, geometry")
def aspect_ratio(*, h_p: float, b_p: float) -> float:
    """Height of a panel over its length."""
    return h_p / b_p


@formula("L_r", source="irc-2021, R602.10.3")
def length_by_wind(
    *, L_t: float, k_e: float, k_r: float, k_h: float, k_n: float, k_hd: float, k_g: float, k_f: float, k_b: float
) -> float:
    """Required length of bracing by wind: the table's length and every factor that applies."""
    return L_t * k_e * k_r * k_h * k_n * k_hd * k_g * k_f * k_b


@formula("L_r", source="irc-2021, R602.10.3")
def length_by_earthquake(*, L_t: float, k_h: float, k_s: float, k_w: float, k_r: float, k_g: float, k_b: float) -> float:
    """Required length of bracing by earthquake: the table's length and every factor that applies."""
    return L_t * k_h * k_s * k_w * k_r * k_g * k_b


@formula("L_r", source="bc-2024, 9.23.13")
def length_by_factors(*, L_t: float, k_e: float, k_r: float, k_s: float, k_n: float, k_g: float, k_c: float) -> float:
    """Required length of braced panels by wind: the unadjusted length and every factor."""
    return L_t * k_e * k_r * k_s * k_n * k_g * k_c


@formula("V_t", source="common-practice, resistance times length")
def band_force(*, L_t: float, v_r: float) -> float:
    """Force behind a table of lengths."""
    return L_t * v_r


@formula("V_b", source="bc-2024, 9.23.13")
def force_by_factors(*, V_t: float, k_e: float, k_r: float, k_s: float, k_n: float) -> float:
    """Force on a band by wind: the one behind the table, with exposure, roof, spacing and number of bands."""
    return V_t * k_e * k_r * k_s * k_n


@formula("k_G", source="sdpws-2015, 4.3.3")
def species_factor(*, G: float) -> float:
    """Factor for framing of a specific gravity up to 0.5."""
    return 1 - (0.5 - G)


@formula("v_d", source="sdpws-2015, 4.3.3")
def design_shear(*, v_n: float, Om: float, k_G: float) -> float:
    """Unit shear for allowable stress design: the nominal figure by its divisor, with the species factor."""
    return v_n / Om * k_G


@formula("k_a", source="sdpws-2015, 4.3.4")
def aspect_factor(*, a_p: float) -> float:
    """Factor on a panel of more than two to one."""
    return 1.25 - 0.125 * a_p
