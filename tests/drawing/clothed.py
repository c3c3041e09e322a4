"""Assemblies with what only some have: fasteners, taped seams, built-up and staggered members."""

from dataclasses import replace

import pictured
from hypothesis import strategies as st

import builders
from layerfolio.assembly.beside import Fasteners
from layerfolio.assembly.types import Assembly


def fasteners(
    length: float, diameter: float = 6.0, spacing: float | None = 400, rows: float | None = 600, kind: str = "wood screw"
) -> Fasteners:
    """Lengths in mm."""
    apart, between = (None if one is None else one / 1000 for one in (spacing, rows))
    return Fasteners(
        title=kind, conductivity=None, diameter=diameter / 1000, per_area=None, spacing=apart, rows=between, depth=None,
        kind=kind, outer=diameter / 1000, length=length / 1000,
    )  # fmt: skip


def with_layer(assembly: Assembly, number: int, **changes) -> Assembly:
    """The same with one layer changed."""
    return replace(assembly, layers=tuple(replace(one, **changes) if one.number == number else one for one in assembly.layers))


def screwed_wall(length: float = 160, number: int = 2) -> Assembly:
    """The chandlery's W1 as it is stated: battens screwed through the boards, the panel's seams taped."""
    return with_layer(with_layer(pictured.wall(), number, fasteners=fasteners(length)), 6, seams="taped")


def i_studs(by_id: bool = True) -> Assembly:
    """Studs of flanges and a web, told by one id or by their names."""
    same = {"member_id": "stud-1"} if by_id else {}
    flange = pictured.member("flange", 63, 600, "vertical", **same)
    web = pictured.member("web", 10, 600, "vertical", family="strand-board", **same)
    return builders.assembly([
        pictured.layer(1, "Larch boards", 19, "timber-board", serves=["weather face"]),
        pictured.layer(2, "Ventilated cavity", 38, "air", kind="cavity", cavity="ventilated",
                       frame=pictured.member("batten", 64, 600, "vertical")),
        pictured.layer(3, "Cross cavity", 25, "air", kind="cavity", cavity="ventilated",
                       frame=pictured.member("batten", 64, 400, "horizontal")),
        pictured.layer(4, "Wood-fibre board", 35, "wood-fibre", serves=["water control"], insulating=True),
        pictured.layer(5, "Outer wool", 38, "batt", insulating=True, frame=flange),
        pictured.layer(6, "Wool", 224, "batt", insulating=True, frame=web),
        pictured.layer(7, "Inner wool", 38, "batt", insulating=True, frame=flange),
        pictured.layer(8, "Strand board", 15, "strand-board", serves=["air control", "vapour control"]),
    ], name="WI")  # fmt: skip


def double_studs(staggered: bool) -> Assembly:
    """Two framed layers with wool between."""
    outer = pictured.member("stud", 38, 600, "vertical")
    return builders.assembly([
        pictured.layer(1, "Larch boards", 19, "timber-board", serves=["weather face"]),
        pictured.layer(2, "Outer wool", 89, "batt", insulating=True, frame=outer),
        pictured.layer(3, "Wool between", 90, "batt", insulating=True),
        pictured.layer(4, "Inner wool", 89, "batt", insulating=True, frame=replace(outer, staggered=staggered)),
        pictured.layer(5, "Strand board", 15, "strand-board", serves=["air control", "vapour control"]),
    ], name="WD")  # fmt: skip


CLOTHED = {
    "screwed": screwed_wall, "i_studs": i_studs, "double": lambda: double_studs(False), "staggered": lambda: double_studs(True),
}  # fmt: skip


@st.composite
def clothed(draw, assemblies):
    """Any of `assemblies` with fasteners, taped seams and staggered or built-up members here and there."""
    plain, layers = draw(assemblies), []
    for one in plain.layers:
        changes: dict = {"seams": draw(st.sampled_from(("", "taped", "lapped")))}
        if one.kind != "membrane" and draw(st.integers(0, 3)) == 0:
            spacing = draw(st.sampled_from((None, 150, 400, 600)))
            long, thick = draw(st.sampled_from((50, 90, 160, 320, 500))), draw(st.sampled_from((3, 6, 10)))
            changes["fasteners"] = fasteners(long, thick, spacing)
        if one.member:
            member_id = draw(st.sampled_from(("", "joist-1")))
            changes["member"] = replace(one.member, staggered=draw(st.booleans()), member_id=member_id)
        layers.append(replace(one, **changes))
    return replace(plain, layers=tuple(layers))
