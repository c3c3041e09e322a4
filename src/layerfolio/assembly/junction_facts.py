"""Lengths and kinds that a junction is drawn with: as the project file states them, else derived, each with its reason."""

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from layerfolio.assembly.junction_types import Junction
from layerfolio.assembly.types import Assembly, Choice

# Round in the units that come first, with their words: this room loads no printing of lengths for them.
OVERHANG = {"metric": (0.4, "400 mm"), "customary": (0.4064, '16"')}
GROUND = {"metric": "200 mm", "customary": '8"'}  # of the ground below the foot of the cladding, as drawn
FRAME = {
    "frame_width": {"metric": (0.11, "110 mm"), "customary": (0.10795, '4 1/4"')},
    "frame_depth": {"metric": (0.07, "70 mm"), "customary": (0.06985, '2 3/4"')},
}
DEFAULT = "drafting default: the project file does not say"


def with_facts(junction: Junction, join: Any, project: Any, assemblies: Mapping[str, Assembly]) -> Junction:
    """The junction with what its drawing needs; `join` is its entry in the project file, or None."""
    units = getattr(getattr(project, "project", None), "units", "metric")
    if junction.kind in ("eave", "verge"):
        return _edge(junction, join, units, assemblies)
    if junction.kind == "sill":
        return _sill(junction, project, units, assemblies)
    if junction.opening:
        return _window(junction, join, project, units)
    return junction


def _with(junction: Junction, *choices: Choice, **facts: Any) -> Junction:
    return replace(junction, choices=(*junction.choices, *choices), **facts)


def _edge(junction: Junction, join: Any, units: str, assemblies: Mapping[str, Assembly]) -> Junction:
    own = getattr(join, "overhang", None)
    if own is not None:
        return _with(junction, overhang=own.value)
    over = assemblies[junction.of[1]]
    if over.kind == "ceiling":
        words = "Insulation over the plate at its full depth"
        return _with(junction, Choice(words, "the project file does not say how high the roof stands over the plate"))
    found, words = OVERHANG[units]
    return _with(junction, Choice(f"Overhang {words}", DEFAULT), overhang=found)


def _sill(junction: Junction, project: Any, units: str, assemblies: Mapping[str, Assembly]) -> Junction:
    wall, floor = (assemblies[name] for name in junction.of[:2])
    given, stated = project.assemblies.get(wall.name), getattr(project, "foundation", None)
    clearance = getattr(given, "clearance_to_ground", None)
    level = getattr(stated, "ground_level", None)
    made = replace(
        junction,
        clearance=clearance.value if clearance else None,
        ground_level=level.value if level else None,
        edge_insulation=_edge_insulation(floor),
    )
    if clearance is None and level is None:
        made = _with(made, Choice(f"Ground {GROUND[units]} below the foot of the cladding", DEFAULT))
    elif level is None:
        made = _with(made, Choice("Level of the ground from the clearance of the cladding", "the project file states that alone"))
    if kind := getattr(stated, "kind", None):
        return replace(made, foundation=kind)
    kind, because = _foundation(floor, assemblies)
    return _with(made, Choice(f"Foundation drawn: {kind}", because), foundation=kind) if kind else made


def _foundation(floor: Assembly, assemblies: Mapping[str, Assembly]) -> tuple[str, str]:
    if floor.kind == "slab" or floor.faces == "ground":
        return "slab edge", f"{floor.kind} {floor.name} lies on the ground"
    walls = [one.name for one in assemblies.values() if one.kind == "foundation-wall"]
    if walls:
        return "wall", f"foundation wall {walls[0]} is in the project file"
    if floor.ground.get("underfloor"):
        return "wall", f"the space under floor {floor.name} has walls"
    return "", ""


def _edge_insulation(floor: Assembly) -> tuple[float, float] | None:
    """Thickness and depth of what stands upright against the edge of a slab."""
    edge = floor.ground.get("edge_insulation") or {}
    thickness, depth = edge.get("thickness"), edge.get("width")
    return (thickness, depth) if edge.get("direction") == "vertical" and thickness and depth else None


def _window(junction: Junction, join: Any, project: Any, units: str) -> Junction:
    opening = project.openings[junction.opening]
    frame, choices = opening.frame, []
    known = {"frame_width": getattr(frame, "width", None), "frame_depth": getattr(frame, "depth", None)}
    lacking = [name for name, value in known.items() if value is None]
    facts = {name: FRAME[name][units][0] if value is None else value.value for name, value in known.items()}
    if lacking:
        words = {"frame_width": "wide", "frame_depth": "deep"}
        sizes = " and ".join(f"{FRAME[name][units][1]} {words[name]}" for name in lacking)
        choices.append(Choice(f"Frame of {junction.opening} drawn {sizes}", DEFAULT))
    frame_set = getattr(join, "frame_set", None)
    if frame_set is None:
        frame_set = "in the insulation"
        choices.append(Choice("Frame set in the plane of the insulation", DEFAULT))
    low = opening.sill_height
    return _with(
        junction,
        *choices,
        frame_set=frame_set,
        opening_size=(opening.width.value, opening.height.value),
        sill_height=low.value if low else None,
        **facts,
    )
