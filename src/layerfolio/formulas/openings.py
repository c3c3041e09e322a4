"""Thermal transmittance of windows and doors from frame, glass and the edge of the glass: ISO 10077-1."""

from layerfolio.steps.formula import formula


@formula("A_w", source="iso-10077-1-2017, areas")
def opening_area(*, b_w: float, h_w: float) -> float:
    """Area of an opening, frame included."""
    return b_w * h_w


@formula("A_g", source="iso-10077-1-2017, areas")
def glass_area(*, b_w: float, h_w: float, b_f: float) -> float:
    """Area of glass within a frame of one width all round."""
    return (b_w - 2 * b_f) * (h_w - 2 * b_f)


@formula("A_f", source="iso-10077-1-2017, areas")
def frame_area(*, A_w: float, A_g: float) -> float:
    """Area of the frame, the rest of the opening."""
    return A_w - A_g


@formula("A_g", source="iso-10077-1-2017, areas")
def glass_beside_frame(*, A_w: float, A_f: float) -> float:
    """Area of glass, the rest of the opening."""
    return A_w - A_f


@formula("l_g", source="iso-10077-1-2017, perimeter of the glass")
def glass_edge(*, b_w: float, h_w: float, b_f: float) -> float:
    """Length of the edge of the glass within a frame of one width all round."""
    return 2 * (b_w + h_w - 4 * b_f)


@formula("U_w", source="iso-10077-1-2017, thermal transmittance of a window")
def window_transmittance(*, A_g: float, U_g: float, A_f: float, U_f: float, l_g: float, psi_g: float) -> float:
    """Thermal transmittance of a window: glass, frame, and the edge where they meet."""
    return (A_g * U_g + A_f * U_f + l_g * psi_g) / (A_g + A_f)


@formula("U_w", source="iso-10077-1-2017, thermal transmittance of a window")
def window_without_edge(*, A_g: float, U_g: float, A_f: float, U_f: float) -> float:
    """Thermal transmittance of a window with single glass, whose edge has no spacer."""
    return (A_g * U_g + A_f * U_f) / (A_g + A_f)
