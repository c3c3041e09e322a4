"""Lines of bracing small enough to see through, judged under a set: helpers of the tests."""

from dataclasses import replace
from types import SimpleNamespace

import builders as b
from codes_builders import project
from layerfolio import codes
from layerfolio.codes.context import Envelope, context
from layerfolio.codes.wall_lines import line_judged, line_verdict
from layerfolio.reading.wall_lines import (
    BracingPanel,
    LineOpening,
    PanelBoard,
    PanelFastening,
    PlateNailing,
    PlateStrips,
    Shank,
    WallLine,
)
from layerfolio.studies.thermal import thermal_study
from layerfolio.studies.vapour import vapour_study
from layerfolio.studies.wall_line import wall_line_study
from layerfolio.units.grammar import parse, parse_dimensions


def mm(text):
    return parse(text, "length")


def shank(text):
    return Shank(*parse_dimensions(text), text)


def pins(nail="63 mm x 3.25 mm", edge="150 mm", field="300 mm", blocked=True, kind="nail", **more):
    return PanelFastening(**{kind: shank(nail), "edge": mm(edge), "field": mm(field), "blocked": blocked} | more)


def panel(size, at=None, height=None):
    """One panel of a line, by the words of the project file."""
    given = {"length": size, "at": at, "height": height}
    return BracingPanel(**{key: mm(value) for key, value in given.items() if value})


def line(panels=(("2.4 m", "0 m"), ("2.4 m", "7.2 m")), *, openings=(), grade="plywood", thickness="12.5 mm", **more):
    """A line of 9.6 m under a roof, panels at both ends; `more` overrides any key, None takes it away."""
    made = tuple(one if isinstance(one, BracingPanel) else panel(*one) for one in panels)
    cut = tuple(LineOpening(width=mm(size), height=mm("1.2 m")) for size in openings)
    values = {
        "assembly": "W1", "length": "9.6 m", "height": "2.4 m", "line_spacing": "7.6 m", "eave_to_ridge": "3 m",
        "lines_in_direction": 2, "storeys_above": 0, "construction": "light", "panels": made, "openings": cut,
        "panel": PanelBoard(grade=grade, thickness=mm(thickness)) if grade else None, "panel_fastening": pins(),
        "plate_nailing": PlateNailing(nail=shank("82 mm x 3.66 mm"), spacing=mm("150 mm")),
    } | more  # fmt: skip
    lengths = ("length", "height", "line_spacing", "eave_to_ridge")
    return WallLine(**{
        key: mm(value) if key in lengths and value else value for key, value in values.items() if value is not None
    })  # fmt: skip


def wall(inside=True, studs="400 mm", gypsum_outside=False, gypsum_inside=None, between=()):
    """Gypsum board, studs and panel as the line's panels lie; from the outside in. A panel inside is what the room sees."""
    gypsum_inside = not inside if gypsum_inside is None else gypsum_inside
    member = replace(b.member(0.2, R=1.5), spacing=mm(studs), material="spruce-pine-fir")
    batts = replace(b.layer(1, R=3, d=0.14, insulating=True, name="Batts"), member=member)
    panel = b.layer(1, R=0.1, d=0.0125, serves=["bracing"], name="Panel")
    board = b.layer(1, R=0.08, d=0.0127, name="Board", family="gypsum")
    layers = [batts, *between, panel] if inside else [panel, *between, batts]
    layers = [board] * gypsum_outside + layers + [replace(board, name="Lining")] * gypsum_inside
    numbered = [replace(one, number=n) for n, one in enumerate(layers, 1)]
    return b.assembly(numbered, name="W1")


def place(set_id="nbc-2020", *, wind=450, Sa02=0.3, Smax=0.3, mph=115, exposure="rough", category="B", **more):
    seismic = SimpleNamespace(Sa02=Sa02, Smax=Smax, category=category)
    loads = SimpleNamespace(
        wind_pressure_1_50=None if wind is None else parse(f"{wind} Pa", "pressure"), seismic=seismic, exposure=exposure,
        wind_speed=None if mph is None else parse(f"{mph} mph", "speed"),
    )  # fmt: skip
    usual = {"zone": None, "occupancy": "house", "degree_days": None} if set_id.startswith("irc") else {}
    where = project(set_id=set_id, **usual | more)
    where.site_loads = loads
    return where


def strips(width="50 mm", thickness="0.41 mm", spacing="1.2 m", nails=2, nail="63 mm x 3.25 mm"):
    """Strips of steel from the wall to the floor; None takes a figure away."""
    made = {"width": width, "thickness": thickness, "spacing": spacing}
    sizes = {key: mm(one) if one else None for key, one in made.items()}
    return PlateStrips(nails=nails, nail=shank(nail) if nail else None, **sizes)


def studied(stated, assembly, name="L1"):
    return wall_line_study(name, stated, assembly)


def _lines(stated, assembly, beside):
    """The line with those that stand beside it, by name."""
    return {name: studied(one, assembly, name) for name, one in {"L1": stated, **(beside or {})}.items()}


def judged(where, stated, assembly=None, beside=None):
    """The line as its judge sees it; `beside`: other lines of the building, by name."""
    assembly = assembly or wall()
    thermal, lines = {"W1": thermal_study(assembly)}, _lines(stated, assembly, beside)
    return line_judged(lines["L1"], context(where, Envelope(thermal, wall_lines=lines)))


def findings(where, stated, assembly=None, beside=None, *, others=(), junctions=()):
    """Findings on the line by question; `others`: assemblies beside the wall, `junctions`: where they meet."""
    made = {one.name: one for one in (assembly or wall(), *others)}
    heat = {name: thermal_study(one) for name, one in made.items()}
    around = Envelope(heat, wall_lines=_lines(stated, made["W1"], beside), junctions=tuple(junctions))
    both = {name: (one, vapour_study(made[name], one.layers)) for name, one in heat.items()}
    found = codes.judge(where, both, around)
    return {one.id.rpartition("/")[2]: one for one in found if one.assembly == "L1"}


def verdicts(where, stated, assembly=None, beside=None):
    """Verdicts on the line by question, as words."""
    return {question: str(one.verdict) for question, one in findings(where, stated, assembly, beside).items()}


def whole(where, stated, assembly=None, beside=None):
    """The verdict of the line, as a word."""
    return str(line_verdict(list(findings(where, stated, assembly, beside).values()), "L1"))
