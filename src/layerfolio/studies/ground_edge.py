"""Edge insulation of a floor on the ground (ISO 13370, annex D)."""

from layerfolio.formulas import ground as f
from layerfolio.steps.trace import Recorder

ANNEX = "iso-13370-2017, annex D"
FILE = "project file"


def edge_insulation(
    edge: dict, plain: float, dimension: float, equivalent: float, conductivity: float, record: Recorder
) -> float:
    """Transmittance with edge insulation, W/(m2.K); `plain` where it would not lessen it.

    `edge` states direction, width (how deep, or how far in, m), thickness (m) and resistance (m2.K/W).
    """
    record.section("Edge insulation", key="ground-edge")
    lacking = [key for key in ("direction", "width", "thickness", "resistance") if edge.get(key) is None]
    if lacking:
        record.choice("The edge insulation is not counted", f"not stated: {', '.join(lacking)}", ANNEX)
        return plain
    resistance = record.given("R_n", edge["resistance"], "edge insulation", FILE)
    thickness = record.given("d_n", edge["thickness"], "its thickness", FILE)
    added = record.step(f.edge_resistance, R_n=resistance, d_n=thickness, lam_g=conductivity)
    if added <= 0:
        record.choice("The edge insulation is not counted", "it resists no more than the ground in its place", ANNEX)
        return plain
    deeper = record.step(f.edge_equivalent, R_add=added, lam_g=conductivity)
    upright = edge["direction"] == "vertical"
    width = record.given("D_e", edge["width"], "how deep it goes" if upright else "how far in it goes", FILE)
    formula = f.vertical_edge if upright else f.horizontal_edge
    psi = record.step(formula, lam_g=conductivity, D_e=width, d_f=equivalent, d_add=deeper)
    value = f.with_edge_insulation(U_0=plain, psi_e=psi, B=dimension)
    if value <= 0:
        because = "it is too wide for this floor: the formula is meant for a strip that is narrow beside the building"
        record.choice("The edge insulation is not counted", because, ANNEX)
        return plain
    return record.step(f.with_edge_insulation, U_0=plain, psi_e=psi, B=dimension, running_total=True)
