"""Printed steps that a reader can follow with a calculator: one plane, one month, from the airs to the amount."""

from typing import NamedTuple

from layerfolio.catalogue.datum import Datum, Mark, Origin
from layerfolio.formulas import moisture as f
from layerfolio.formulas.thermal import interface_temperature
from layerfolio.formulas.vapour import DELTA_0
from layerfolio.steps.trace import Recorder
from layerfolio.studies.condensation.run import LayerValue, Node, plane_words


class Airs(NamedTuple):
    """Both sides of the section: temperatures degC, vapour pressures Pa, films m2.K/W."""

    theta_i: float
    theta_e: float
    p_i: float
    p_e: float
    r_si: float
    r_se: float


class Neighbours(NamedTuple):
    """The nearest points on both sides at which the vapour pressure is known: the airs, or other wet planes.

    `inner`, `outer` are nodes; `p_inner`, `p_outer` their pressures, Pa, and None where they are the airs.
    """

    inner: Node
    outer: Node
    p_inner: float | None
    p_outer: float | None


def method_figure(
    record: Recorder, quantity: str, value: float, about: str, source: str, place: str, mark: Mark
) -> float:
    """A figure that a method brings with it, with its source and how sure it is; returns it."""
    words = f"{source}, {place}" + (", from memory" if mark == "memory" else "")
    return record.given(quantity, value, about, words, Datum(value, Origin("default", source, place, mark)))


def portions(values: tuple[LayerValue, ...], outer: Node, inner: Node, what: str) -> tuple[float, ...]:
    """`resistance` or `s_d` of each layer, as far as it lies between two nodes; from the outside in."""
    start, end = _position(values, outer), _position(values, inner)
    shares = [min(end, i + 1.0) - max(start, float(i)) for i in range(len(values))]
    return tuple(
        getattr(value, what) * min(share, 1.0)
        for value, share in zip(values, shares, strict=True)
        if share > 1e-12 and getattr(value, what) > 0
    )


def _position(values: tuple[LayerValue, ...], node: Node) -> float:
    """How many layers lie outside a node, with the part of the one it is in."""
    index = next(i for i, value in enumerate(values) if value.layer.number == node.layer)
    return index + node.fraction


def saturation_step(record: Recorder, theta: float, about: str) -> float:
    """Saturation pressure at a temperature, with the branch that holds there."""
    branch = f.saturation_over_ice if theta < 0 else f.saturation_over_water
    return record.step(branch, about=about, theta=theta)


def temperature_steps(
    record: Recorder, values: tuple[LayerValue, ...], ends: tuple[Node, Node], node: Node, airs: Airs, about: str
) -> float:
    """Temperature of a plane, from its place between both airs; returns it, degC."""
    inward = portions(values, node, ends[1], "resistance")[::-1]
    whole = portions(values, ends[0], ends[1], "resistance")[::-1]
    total = record.step(f.resistance_along, about="room to outside", R=(airs.r_si, *whole, airs.r_se))
    part = record.step(f.resistance_to_plane, about=f"room to {about}", R=(airs.r_si, *inward))
    return record.step(
        interface_temperature, about=about, theta_i=airs.theta_i, theta_e=airs.theta_e, R_x=part, R_T=total
    )


def plane_steps(
    record: Recorder, values: tuple[LayerValue, ...], ends: tuple[Node, Node], node: Node, airs: Airs,
    near: Neighbours, wet: bool,
) -> float | None:  # fmt: skip
    """Steps from the airs to the rate at one plane; returns the rate, kg/(m2.s), or None for a dry plane."""
    about = plane_words(node.between)
    theta = temperature_steps(record, values, ends, node, airs, about)
    p_sat = saturation_step(record, theta, about)
    p_1 = airs.p_i if near.p_inner is None else _neighbour(record, "p_1", near.p_inner, near.inner)
    p_2 = airs.p_e if near.p_outer is None else _neighbour(record, "p_2", near.p_outer, near.outer)
    inward = f"{about} to {_side(near.inner, near.p_inner, 'room')}"
    outward = f"{about} to {_side(near.outer, near.p_outer, 'outside')}"
    s_1 = record.step(f.air_layers_to_room, about=inward, s_d=portions(values, node, near.inner, "s_d")[::-1])
    s_2 = record.step(f.air_layers_to_outside, about=outward, s_d=portions(values, near.outer, node, "s_d")[::-1])
    if not wet:
        p_x = record.step(f.pressure_between, about=about, p_1=p_1, p_2=p_2, s_d_1=s_1, s_d_2=s_2)
        record.step(f.relative_humidity, about=about, p_x=p_x, p_sat=p_sat)
        return None
    return record.step(
        f.condensation_rate, about=about, delta_0=DELTA_0, p_1=p_1, p_c=p_sat, s_d_1=s_1, p_2=p_2, s_d_2=s_2
    )


def _neighbour(record: Recorder, quantity: str, pressure: float, node: Node) -> float:
    """Saturation at the next wet plane, found the same way as at this one."""
    return record.given(quantity, pressure, plane_words(node.between), "saturation there, found in the same way")


def _side(node: Node, pressure: float | None, air: str) -> str:
    return air if pressure is None else plane_words(node.between)
