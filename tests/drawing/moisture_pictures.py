"""Studies to draw moisture pictures of: dry, wet at one plane, at two, in a zone, all year, and awkward ones."""

from dataclasses import replace

import builders
from moisture_cases import CLASS_2, CLASS_3, CLASS_4, HALF, study


def row(number, name, thick, lam, s_d, family="plain", **how):
    """Thickness in mm, None for a membrane; s_d in m, one number or (dry, wet)."""
    kind = how.pop("kind", "solid" if thick else "membrane")
    deep = None if thick is None else thick / 1000
    made = builders.layer(number, name=name.lower(), d=deep, lam=lam, s_d=s_d, family=family, kind=kind, **how)
    return replace(made, title=name)


def outside(*inner):
    """Boards and a ventilated cavity outside the layers."""
    boards = row(1, "Larch boards", 19, 0.13, 1.0, "timber-board", counts=False)
    cavity = row(2, "Ventilated cavity", 38, None, None, "air", kind="cavity", cavity="ventilated", counts=False)
    return (boards, cavity, *(replace(one, number=number) for number, one in enumerate(inner, 3)))


MEMBRANE = row(1, "Sheathing membrane", None, None, 0.05, "membrane")
WOOL = row(1, "Mineral-wool board", 50, 0.035, 0.05, "mineral-board")
BATTS = row(1, "Hemp batts", 184, 0.04, (0.37, 0.18), "batt")
PANEL = row(1, "Panel-15, strand board", 15, 0.13, (4.17, 1.43), "strand-board", serves=["vapour control"])
CAVITY = row(1, "Still-air cavity", 38, 0.211, 0.01, "air", kind="cavity", cavity="unventilated")
LINING = row(1, "Gypsum board", 12.7, 0.25, (0.127, 0.05), "gypsum")
FOAM = row(1, "Foam boards", 50, 0.034, 7.5, "foam")


def panel_inside():
    return study(builders.assembly(outside(MEMBRANE, WOOL, BATTS, PANEL, CAVITY, LINING)), CLASS_2)


def panel_outside():
    return study(builders.assembly(outside(MEMBRANE, PANEL, BATTS, LINING)), CLASS_3)


def foam_outside():
    """A wet zone that reaches into the foam."""
    return study(builders.assembly(outside(MEMBRANE, FOAM, BATTS, LINING)), CLASS_2)


def dry_as_expected_only():
    """Condensation only with the less favourable values: the bars show that run."""
    board = row(1, "Strand board", 12, 0.13, (1.6, 0.3), "strand-board")
    return study(builders.assembly(outside(MEMBRANE, board, BATTS, PANEL, LINING)), CLASS_3)


def two_planes():
    sheathing = row(1, "Sheathing", 12, 0.13, 0.72, "strand-board")
    outer, inner = row(1, "Outer fill", 100, 0.04, 0.1, "loose-fill"), row(1, "Inner fill", 60, 0.04, 0.06, "batt")
    tight = row(1, "Tight board", 18, 0.13, 2.16, "plywood")
    rows = [replace(one, number=n) for n, one in enumerate((sheathing, outer, tight, inner, LINING), 1)]
    return study(builders.assembly(rows), CLASS_4)


def all_year():
    """Never dries: a steel face outside."""
    steel = row(1, "Steel sheet", 0.6, 50, 1500.0, "metal")
    rows = [replace(one, number=n) for n, one in enumerate((steel, BATTS, LINING), 1)]
    return study(builders.assembly(rows), CLASS_4)


def sloped_roof():
    board = row(1, "Wood-fibre board", 35, 0.044, 0.105, "wood-fibre")
    batts = row(1, "Hemp batts", 286, 0.04, (0.57, 0.29), "batt")
    layers = outside(MEMBRANE, board, batts, PANEL, CAVITY, LINING)
    return study(builders.assembly(layers, kind="roof", slope=30.0, name="R1", heat_direction="up"), HALF)


def floor_over_vented_space():
    deck = row(1, "Plywood deck", 18, 0.13, 1.8, "plywood")
    rows = [replace(one, number=n) for n, one in enumerate((BATTS, deck), 1)]
    how = {"kind": "floor", "faces": "vented space", "name": "F1", "heat_direction": "down"}
    return study(builders.assembly(rows, **how), CLASS_3)


def lone_board():
    return study(builders.assembly([replace(LINING, number=1)]), CLASS_2)


SHOWN = {one.__name__: one for one in (
    panel_inside, panel_outside, foam_outside, dry_as_expected_only, two_planes, all_year, sloped_roof,
    floor_over_vented_space, lone_board,
)}  # fmt: skip
