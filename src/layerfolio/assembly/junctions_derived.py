"""Junctions that a project does not state and that its main wall, floor and roof have all the same."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from layerfolio.assembly.junction_drafts import STEEPEST, Draft, main_floor, main_roof, main_wall
from layerfolio.assembly.junction_titles import called
from layerfolio.assembly.types import Assembly, Choice

LEAST = 5.0  # degrees from which verge and ridge are drawn unasked
NOT_LISTED = "the project file lists no such join"


def derived(project: Any, assemblies: Mapping[str, Assembly], said: Sequence[Draft]) -> Iterator[Draft]:
    """What `said` leaves out, for one wall, one floor and one roof."""
    kinds = {one.kind for one in said}
    wall, floor, roof = main_wall(assemblies), main_floor(assemblies), main_roof(assemblies)
    for kind, of in _pairs(wall, floor, roof):
        if kind not in kinds:
            yield Draft(kind, tuple(one.name for one in of), (_choice(kind, of),))
    if wall and not any(kind.startswith("window") for kind in kinds):
        yield from _window(project, wall)


def _pairs(wall: Assembly | None, floor: Assembly | None, roof: Assembly | None) -> Iterator[tuple]:
    sloped = bool(roof and roof.kind == "roof" and LEAST <= roof.slope <= STEEPEST)
    if wall and floor:
        yield "sill", (wall, floor)
    if wall and roof and (roof.kind == "ceiling" or roof.slope <= STEEPEST):
        yield "eave", (wall, roof)
        if sloped:
            yield "verge", (wall, roof)
    if roof and sloped:
        yield "ridge", (roof,)
    if wall:
        yield "outside corner", (wall,)
        yield "penetration", (wall,)


def _choice(kind: str, of: Sequence[Assembly]) -> Choice:
    words = " and ".join(map(called, of))
    what = {"penetration": "One pipe or duct", "outside corner": "Corner"}.get(kind, kind.capitalize())
    link = "through" if kind == "penetration" else "of"
    return Choice(f"{what} {link} {words} is derived", NOT_LISTED)


def _window(project: Any, wall: Assembly) -> Iterator[Draft]:
    """All edges of the first window of the main wall."""
    openings = getattr(project, "openings", None) or {}
    found = [name for name, one in openings.items() if one.in_ == wall.name and one.kind == "window"]
    if found:
        name = found[0]
        choice = Choice(f"The edges of {name} are derived", f"it is the first window of {called(wall)}, and {NOT_LISTED}")
        for edge in ("sill", "jamb", "head"):
            yield Draft(f"window {edge}", (wall.name, name), (choice,), name)
