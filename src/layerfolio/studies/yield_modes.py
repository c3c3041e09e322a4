"""The six yield modes of one fastener across a gap, and its withdrawal, each as recorded steps."""

from dataclasses import dataclass

from layerfolio.catalogue.fastening import FastenerData, fastener_data
from layerfolio.formulas import dowel as f
from layerfolio.steps.formula import Formula
from layerfolio.steps.trace import Recorder
from layerfolio.studies.layer_heat import source_words
from layerfolio.studies.structure_types import YieldMode

INCH = 0.0254
SIDE, MAIN = "side member", "main member"
COEFFICIENTS = {
    "II": (f.a_rotation, f.b_rotation, f.c_rotation),
    "IIIm": (f.a_hinge_side, f.b_hinge_side, f.c_hinge_side),
    "IIIs": (f.a_hinge_main, f.b_hinge_main, f.c_hinge_main),
    "IV": (f.a_two_hinges, None, f.c_two_hinges),  # its B is the gap
}
MODES = ("Im", "Is", *COEFFICIENTS)


@dataclass(frozen=True, slots=True)
class Dowel:
    """A fastener between two members of wood. SI: lengths in m, F_yb in Pa; angles of the load to the grain in degrees."""

    kind: str  # nail | screw | lag
    outer: float
    bearing: float  # diameter that bears and bends: shank of a nail, root of a thread
    bending_yield: float
    side: float  # length in the side member
    gap: float
    main: float  # length in the main member that counts
    side_gravity: float
    main_gravity: float
    side_angle: float = 0.0
    main_angle: float = 0.0


def yield_modes(dowel: Dowel, record: Recorder) -> tuple[YieldMode, ...]:
    """Reference capacity of each mode, N, in the order of the standard; ValueError for a diameter over an inch."""
    data = fastener_data()
    if dowel.bearing > data.figures["reduction.large_to"].value:
        raise ValueError("the yield equations hold up to a diameter of 1 in")
    record.section("Bearing and bending", key="bearing", source=f.TR12)
    q_s = _bearing(dowel, dowel.side_gravity, dowel.side_angle, SIDE, data, record)
    q_m = _bearing(dowel, dowel.main_gravity, dowel.main_angle, MAIN, data, record)
    moment = record.step(f.dowel_moment, F_yb=dowel.bending_yield, D_y=dowel.bearing)
    record.section("Load at yield, mode by mode", key="modes", source=f.TR12)
    loads = _loads(dowel, q_s, q_m, moment, record)
    record.section("Reference capacity", key="capacity", source=f.NDS)
    terms = _reductions(dowel, data, record)
    return tuple(
        YieldMode(name, record.step(f.mode_capacity, about=f"mode {name}", P_y=load, R_d=terms[name]))
        for name, load in loads.items()
    )


def governing(modes: tuple[YieldMode, ...]) -> YieldMode:
    """The mode of least capacity; of equal ones the first."""
    return min(modes, key=lambda one: one.capacity)


def _bearing(dowel: Dowel, gravity: float, angle: float, about: str, data: FastenerData, record: Recorder) -> float:
    """Bearing resistance per length, N/m; the strength rounded as the published table rounds it."""
    strength = _strength(dowel, gravity, angle, about, data, record)
    step = data.figures["bearing.rounded_to"].value
    rounded = max(1, round(strength / step)) * step
    record.given("F_e", rounded, f"{about}, to the nearest 50 psi as in the table", "nds-2018, Table 12.3.3")
    return record.step(f.bearing_per_length, about=about, F_e=rounded, D_y=dowel.bearing)


def _strength(dowel: Dowel, gravity: float, angle: float, about: str, data: FastenerData, record: Recorder) -> float:
    if dowel.bearing < data.figures["reduction.large_from"].value:
        return record.step(f.small_dowel_bearing, about=about, F_0=_given("bearing.small", "F_0", data, record), G=gravity)
    if angle == 0:
        return record.step(f.bearing_along_grain, about=about, F_0=_given("bearing.along", "F_0", data, record), G=gravity)
    return record.step(
        f.bearing_across_grain, about=about, F_0=_given("bearing.across", "F_0", data, record), G=gravity, D_1=INCH,
        D_y=dowel.bearing,
    )  # fmt: skip


def _given(name: str, quantity: str, data: FastenerData, record: Recorder) -> float:
    """A coefficient of the method, printed once with its source."""
    figure = data.figures[name]
    said = any(getattr(one, "figure", None) is figure for one in record.entries)
    return figure.value if said else record.given(quantity, figure.value, "coefficient", source_words(figure), figure)


def _loads(dowel: Dowel, q_s: float, q_m: float, moment: float, record: Recorder) -> dict[str, float]:
    """Load at yield of each mode, N."""
    known = {"q_s": q_s, "q_m": q_m, "M_y": moment, "l_s": dowel.side, "l_m": dowel.main, "gap": dowel.gap}
    found = {"Im": _run(f.yield_main, "mode Im", known, record), "Is": _run(f.yield_side, "mode Is", known, record)}
    for mode, (a, b, c) in COEFFICIENTS.items():
        A, B, C = (_run(one, f"mode {mode}", known, record) if one else dowel.gap for one in (a, b, c))
        found[mode] = record.step(f.yield_root, about=f"mode {mode}", A_y=A, B_y=B, C_y=C)
    return found


def _run(formula: Formula, about: str, known: dict[str, float], record: Recorder) -> float:
    """A formula with those of the known figures that it takes."""
    wanted = [name for name in formula.function.__annotations__ if name != "return"]
    return record.step(formula, about=about, **{name: known[name] for name in wanted})


def _reductions(dowel: Dowel, data: FastenerData, record: Recorder) -> dict[str, float]:
    """Reduction term of each mode: by the diameter that bears; from a quarter of an inch on by mode and angle."""
    limit, large = data.figures["reduction.up_to"].value, data.figures["reduction.large_from"].value
    thick = dowel.outer >= large * 0.999
    factor = 1.0
    if thick or dowel.bearing >= large:
        factor = record.step(f.angle_factor, th=max(dowel.side_angle, dowel.main_angle))
    if dowel.bearing >= large:
        return {
            one: record.step(f.large_reduction, about=f"mode {one}", k_d=_mode_term(one, data, record), K_th=factor)
            for one in MODES
        }
    if dowel.bearing <= limit:
        term = _given("reduction.small", "R_d", data, record)
    else:
        term = record.step(f.small_reduction, D_y=dowel.bearing, D_1=INCH)
    if factor != 1.0:
        term = record.step(f.large_reduction, k_d=term, K_th=factor)
    return dict.fromkeys(MODES, term)


def _mode_term(mode: str, data: FastenerData, record: Recorder) -> float:
    return _given(f"reduction.modes.{mode}", "k_d", data, record)


def withdrawal(dowel: Dowel, length: float, record: Recorder) -> float:
    """Reference withdrawal capacity, N, of that length in the main member."""
    data = fastener_data()
    record.section("Withdrawal", key="withdrawal", source=f.WITHDRAWAL)
    coefficient = _given(f"withdrawal.{dowel.kind}", "W_0", data, record)
    figures = {"W_0": coefficient, "G": dowel.main_gravity, "D_s": dowel.outer}
    if dowel.kind == "lag":
        per_length = record.step(f.lag_withdrawal, **figures, D_1=INCH)
    else:
        per_length = record.step(f.nail_withdrawal if dowel.kind == "nail" else f.screw_withdrawal, **figures)
    return record.step(f.withdrawal_capacity, w_p=per_length, l_w=length)


__all__ = ["Dowel", "governing", "withdrawal", "yield_modes"]
