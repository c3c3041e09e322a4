"""The study of a line of bracing: what its panels come to, where they stand, how slender they are. Lengths in m."""

from collections.abc import Mapping
from itertools import pairwise
from typing import Any

from layerfolio.assembly.types import Assembly
from layerfolio.formulas import bracing as f
from layerfolio.steps.trace import Recorder
from layerfolio.studies.structure_types import WallLineStudy
from layerfolio.studies.wall_shear import wall_shear


def wall_line_studies(project: Any, assemblies: Mapping[str, Assembly]) -> dict[str, WallLineStudy]:
    """A study for each line of the project file, in its order; empty where it states none."""
    lines = getattr(project, "wall_lines", None) or {}
    return {name: wall_line_study(name, line, assemblies.get(line.assembly)) for name, line in lines.items()}


def wall_line_study(name: str, line: Any, assembly: Assembly | None) -> WallLineStudy:
    """`line` is the project file's own record (reading.wall_lines.WallLine), `assembly` the wall it is built as."""
    record = Recorder()
    record.section("Panels of the line", key="panels")
    length, height = line.length.value, line.height.value
    tall = [one.height.value if one.height else height for one in line.panels]
    given = [(one.at.value if one.at else None, one.length.value, h) for one, h in zip(line.panels, tall, strict=True)]
    laid_out = all(at is not None for at, _, _ in given)
    given = sorted(given, key=lambda one: one[0]) if laid_out else given
    total = record.step(f.panels_together, b_p=tuple(one[1] for one in given)) if given else 0.0
    record.given("L_w", length, "length of the line", "project file")
    share = record.step(f.panel_share, L_p=total, L_w=length) if given else 0.0
    panels = tuple((at, size) for at, size, _ in given) if laid_out else _spread(given, length, total)
    gaps, ends = _between(panels, length, record) if laid_out and given else ((), None)
    ratios = tuple(record.step(f.aspect_ratio, about=f"P{n}", h_p=one[2], b_p=one[1]) for n, one in enumerate(given, 1))
    shear, missing = wall_shear(line, assembly, ratios, record)
    where = () if laid_out else ("panels.at: where each panel begins",)
    none = () if given else ("panels",)
    return WallLineStudy(
        name, line.assembly, length, height, panels, laid_out and bool(given), total, share,
        max(gaps, default=0.0) if laid_out and given else None, max(ends) if ends else None, (*none, *where, *missing),
        record.done(), line, shear.design_wind if shear else None, shear, ratios, gaps, ends,
    )  # fmt: skip


def _between(panels: tuple, length: float, record: Recorder) -> tuple[tuple[float, ...], tuple[float, float]]:
    """Clear distances between neighbours, and from both ends of the line."""
    edges = [(at, round(at + size, 9)) for at, size in panels]  # what floats leave of a sum is no gap
    gaps = tuple(
        record.step(f.clear_distance, about=f"P{n} to P{n + 1}", x_1=before[1], x_2=after[0])
        for n, (before, after) in enumerate(pairwise(edges), 1)
    )
    ends = (edges[0][0], record.step(f.clear_distance, about="last panel to the end", x_1=edges[-1][1], x_2=length))
    return gaps, ends


def _spread(given: list, length: float, total: float) -> tuple[tuple[float, float], ...]:
    """Panels without a place, spread from end to end so that they can be drawn; nothing is judged by these places."""
    gap = max(length - total, 0.0) / (len(given) - 1) if len(given) > 1 else 0.0
    found, at = [], 0.0
    for _, size, _ in given:
        found.append((at, size))
        at += size + gap
    return tuple(found)
