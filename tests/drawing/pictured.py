"""Assemblies to draw: the chandlery's wall, roof and slab, and awkward ones."""

from dataclasses import replace

import builders
from layerfolio.assembly.types import Assembly, Layer, Member
from layerfolio.units.quantity import Quantity


def member(name: str, width: float, spacing: float, direction: str = "", **kwargs) -> Member:
    """Lengths in mm."""
    values = {"name": name, "title": f"spruce {name}s", "width": builders.length(width / 1000),
              "spacing": builders.length(spacing / 1000), "direction": direction}  # fmt: skip
    return builders.member(0.1, lam=0.13, **values | kwargs)


def layer(number: int, title: str, thickness: float | None, family: str, **kwargs) -> Layer:
    """Thickness in mm."""
    deep = None if thickness is None else thickness / 1000
    made = builders.layer(number, d=deep, lam=0.1, family=family, name=kwargs.pop("name", title.lower()), **kwargs)
    return replace(made, title=title)


def wall(direction: str = "horizontal") -> Assembly:
    """The chandlery's W1."""
    battens, strapping = member("batten", 64, 600, "vertical"), member("batten", 38, 400, direction)
    return builders.assembly([
        layer(1, "Larch boards", 19, "timber-board", serves=["weather face"]),
        layer(2, "Ventilated cavity", 38, "air", kind="cavity", cavity="ventilated", frame=battens),
        layer(3, "Sheathing membrane", None, "membrane", kind="membrane", serves=["water control"]),
        layer(4, "Mineral-wool board", 50, "mineral-board", insulating=True),
        layer(5, "Hemp batts", 184, "batt", insulating=True, frame=member("stud", 38, 600, "vertical")),
        layer(6, "Panel-15", 15, "strand-board", serves=["bracing", "vapour control", "air control"]),
        layer(7, "Service cavity", 38, "air", kind="cavity", cavity="unventilated", frame=strapping),
        layer(8, "Gypsum board", 12.7, "gypsum"),
    ])  # fmt: skip


def roof(slope: float = 30.0) -> Assembly:
    """The chandlery's R1."""
    battens, strapping = member("batten", 64, 600, "up the slope"), member("batten", 38, 400, "across the slope")
    rafter = member("rafter", 38, 600, "up the slope")
    return builders.assembly([
        layer(1, "Standing-seam steel", 0.6, "metal"),
        layer(2, "Boarding", 19, "timber-board"),
        layer(3, "Vent space", 64, "air", kind="cavity", cavity="ventilated", frame=battens),
        layer(4, "Roof underlay", None, "membrane", kind="membrane", serves=["water control"]),
        layer(5, "Wood-fibre board", 35, "wood-fibre", insulating=True),
        layer(6, "Hemp batts", 286, "batt", insulating=True, frame=rafter),
        layer(7, "Panel-15", 15, "strand-board", serves=["bracing", "vapour control", "air control"]),
        layer(8, "Service space", 38, "air", kind="cavity", cavity="unventilated", frame=strapping),
        layer(9, "Gypsum board", 12.7, "gypsum"),
    ], kind="roof", name="R1", slope=slope)  # fmt: skip


def inches(assembly: Assembly, texts: dict[int, str]) -> Assembly:
    """The same with thicknesses written in inches; `texts` by layer number, such as `5 1/2 in`."""
    def written(one: Layer) -> Layer:
        if one.number not in texts:
            return one
        whole, _, part = texts[one.number].removesuffix(" in").rpartition(" ")
        top, _, under = part.partition("/")
        value = float(whole or 0) + float(top) / float(under or 1)
        return replace(one, thickness=Quantity(value * 0.0254, "length", texts[one.number]))

    return replace(assembly, layers=tuple(map(written, assembly.layers)))


def customary_roof() -> Assembly:
    texts = {2: "3/4 in", 3: "2 1/2 in", 5: "1 3/8 in", 6: "11 1/4 in", 7: "19/32 in", 8: "1 1/2 in", 9: "1/2 in"}
    return inches(roof(), texts)


def slab() -> Assembly:
    """The chandlery's floor on the ground."""
    return builders.assembly([
        layer(1, "Foam-glass gravel", 350, "gravel", insulating=True),
        layer(2, "Membrane", None, "membrane", kind="membrane", serves=["vapour control", "air control"]),
        layer(3, "Reinforced concrete", 120, "concrete"),
        layer(4, "Cork tile", 6, "cork"),
    ], kind="slab", name="F1", slope=0.0, faces="ground")  # fmt: skip


def flat_roof() -> Assembly:
    return builders.assembly([
        layer(1, "Roofing membrane", 1.5, "membrane", kind="membrane", serves=["water control"]),
        layer(2, "Foam board", 120, "foam", insulating=True),
        layer(3, "Vapour membrane", None, "membrane", kind="membrane", serves=["vapour control", "air control"]),
        layer(4, "Plywood", 18, "plywood"),
        layer(5, "Mineral wool", 235, "batt", insulating=True, frame=member("joist", 38, 400)),
        layer(6, "Gypsum board", 12.7, "gypsum"),
    ], kind="roof", name="R2", slope=1.0)  # fmt: skip


def floor() -> Assembly:
    return builders.assembly([
        layer(1, "Gypsum sheathing", 12.7, "gypsum"),
        layer(2, "Mineral wool", 286, "batt", insulating=True, frame=member("joist", 38, 400)),
        layer(3, "Plywood", 18, "plywood", serves=["structure", "vapour control"]),
        layer(4, "Softwood flooring", 22, "timber-board", serves=["lining"]),
    ], kind="floor", name="F2", slope=0.0, faces="vented space")  # fmt: skip


def ceiling() -> Assembly:
    chord = member("truss chord", 38, 600)
    return builders.assembly([
        layer(1, "Blown fibre", 360, "loose-fill", insulating=True),
        layer(2, "Blown fibre between", 89, "loose-fill", insulating=True, frame=chord),
        layer(3, "Open membrane", None, "membrane", kind="membrane", serves=["air control"]),
        layer(4, "Gypsum board", 16, "gypsum"),
    ], kind="ceiling", name="C1", slope=0.0, faces="vented space")  # fmt: skip


def foundation_wall() -> Assembly:
    stud = member("stud", 41, 600, "vertical", family="metal", is_metal=True)
    return builders.assembly([
        layer(1, "Drainage mat", 8, "membrane", kind="membrane", serves=["water control"]),
        layer(2, "Foam board", 100, "foam", insulating=True),
        layer(3, "Concrete", 200, "concrete"),
        layer(4, "Mineral wool", 89, "batt", insulating=True, frame=stud),
        layer(5, "Gypsum board", 12.7, "gypsum"),
    ], kind="foundation-wall", name="B1", faces="ground")  # fmt: skip


def fourteen() -> Assembly:
    """14 layers with three framings and a cavity's battens."""
    stud, batten = member("stud", 38, 600, "vertical"), member("batten", 64, 600, "vertical")
    return builders.assembly([
        layer(1, "Larch boards", 19, "timber-board", serves=["weather face"]),
        layer(2, "Ventilated cavity", 38, "air", kind="cavity", cavity="ventilated", frame=batten),
        layer(3, "Sheathing membrane", 0.5, "membrane", kind="membrane", serves=["water control"]),
        layer(4, "Gypsum sheathing", 12.5, "gypsum"),
        layer(5, "Blown wood fibre", 89, "loose-fill", insulating=True, frame=stud),
        layer(6, "Wood-fibre board", 40, "wood-fibre", insulating=True),
        layer(7, "Wood-fibre board again", 40, "wood-fibre", insulating=True),
        layer(8, "Hemp batts", 89, "batt", insulating=True, frame=stud),
        layer(9, "Plywood", 12.5, "plywood", serves=["bracing"]),
        layer(10, "Variable membrane", 0.2, "membrane", kind="membrane", serves=["vapour control", "air control"]),
        layer(11, "Service cavity", 45, "air", kind="cavity", cavity="unventilated",
              frame=member("batten", 45, 400, "vertical")),
        layer(12, "Strand board", 11, "strand-board"),
        layer(13, "Gypsum board", 12.7, "gypsum"),
        layer(14, "Clay plaster", 3, "plaster"),
    ], name="W14")  # fmt: skip


def two_layers() -> Assembly:
    return builders.assembly([
        layer(1, "Brick", 102, "masonry", serves=["weather face"]), layer(2, "Lime plaster", 15, "plaster"),
    ], name="W2")  # fmt: skip


def straw() -> Assembly:
    """600 mm of straw beside a membrane of 0.2 mm."""
    return builders.assembly([
        layer(1, "Lime render", 20, "plaster", serves=["weather face", "water control"]),
        layer(2, "Straw", 600, "straw", insulating=True, frame=member("post", 45, 800, "vertical")),
        layer(3, "Variable membrane", 0.2, "membrane", kind="membrane", serves=["vapour control"]),
        layer(4, "Clay plaster", 30, "plaster", serves=["air control"]),
    ], name="S1")  # fmt: skip


def unknown() -> Assembly:
    """A family without a hatch, a thickness nobody gave, framing by its share alone."""
    by_share = replace(member("stud", 38, 600), width=None, spacing=None)
    return builders.assembly([
        layer(1, "Reclaimed cladding", 24, "quark"),
        layer(2, "Insulation by report", None, "foam", insulating=True),
        layer(3, "Batts", 140, "batt", insulating=True, frame=by_share),
        layer(4, "Gypsum board", 12.7, "gypsum"),
    ], name="W5")  # fmt: skip


SHOWN = {one.__name__: one for one in (
    wall, roof, customary_roof, slab, flat_roof, floor, ceiling, foundation_wall, fourteen, two_layers, straw, unknown,
)}  # fmt: skip
