"""Sizes that a project states twice: lines of bracing against the area of their wall and the length of its joins."""

from collections.abc import Iterator
from typing import Any

from layerfolio.problems import Caution

NEAR = 0.05
"""By how much two statements of one size may differ before somebody should look again."""
CLOSED = 3
"""Lines from which on they are taken to go all round; fewer say nothing of the whole wall."""


def size_cautions(project: Any) -> Iterator[Caution]:
    """Walls that are smaller than their lines, sills and eaves that no lines are as long as."""
    walls: dict[str, list[Any]] = {}
    for line in (getattr(project, "wall_lines", None) or {}).values():
        if not line.interior:
            walls.setdefault(line.assembly, []).append(line)
    for name, lines in walls.items():
        if len(lines) >= CLOSED and name in project.assemblies:
            yield from _area(project, name, lines)
            yield from _joins(project, name, lines)


def _area(project: Any, name: str, lines: list[Any]) -> Iterator[Caution]:
    stated = project.assemblies[name]
    if stated.area is None:
        return
    own = stated.area_includes_openings
    holds = project.area_includes_openings if own is None else own
    cut = sum(one.count * one.width.value * one.height.value for one in project.openings.values()
              if one.in_ == name and one.width and one.height)  # fmt: skip
    gross = stated.area.value + (0.0 if holds else cut)
    upright = sum(one.length.value * one.height.value for one in lines)
    if gross < upright * (1 - NEAR):
        words = f"the lines of bracing of {name} come to {upright:.1f} m2 by length and height, the wall with its openings to"
        yield Caution(f"assemblies.{name}.area", f"{words} {gross:.1f} m2")


def _joins(project: Any, name: str, lines: list[Any]) -> Iterator[Caution]:
    along = {one.direction for one in lines}
    runs = [sum(one.length.value for one in lines)]
    runs += [sum(one.length.value for one in lines if one.direction == way) for way in sorted(map(str, along)) if len(along) > 1]
    for number, join in enumerate(project.joins):
        if join.at not in ("sill", "eave") or name not in join.of or join.length is None:
            continue
        fits = runs[:1] if join.at == "sill" else runs
        if all(abs(join.length.value - one) > NEAR * one for one in fits):
            words = f"the lines of bracing of {name} {' or '.join(f'{one:.3g} m' for one in fits)}"
            yield Caution(f"joins[{number}].length", f"the {join.at} is {join.length.value:.3g} m long, {words}")
