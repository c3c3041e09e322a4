"""Scattered hatches: dots, flecks and grains, one or none to a cell of a jittered lattice.

Each recipe draws what stands at one place; `fill` walks the lattice. x runs along the layer, y across it. `even` is a
number in 0..1 that neighbouring places share out evenly: by it a recipe chooses between two shapes without clusters.
"""

from collections.abc import Callable
from dataclasses import dataclass
from math import cos, pi, sin
from random import Random

from layerfolio.drawing.hatches.strokes import FINE, FLECK, ROLE, arc, blob, dot, ellipse, fleck, polygon
from layerfolio.drawing.marks import Curve, Mark

EVEN = 0.7549, 0.5698  # 1/p and 1/p2 with p3 = p + 1: their multiples spread over 0..1 without clusters
Draw = Callable[[Random, float, float, float], list[Mark]]


@dataclass(frozen=True, slots=True)
class Recipe:
    """`pitch` of the lattice along and across; `stray` is how far a place may move, as a share of its cell; an area of
    more than `loose` places repeats a tile instead."""

    draw: Draw
    pitch: tuple[float, float]
    stray: tuple[float, float]
    loose: int = 150
    staggered: bool = False  # odd rows moved by half a cell


def fill(
    name: str,
    rng: Random,
    box: tuple[float, float, float, float],
    *,
    wrap: bool = False,
    finer: float = 1.0,
) -> list[Mark]:
    """Marks in a box, in whole rows and columns; `wrap` makes opposite edges meet. KeyError for an unknown name.

    `finer` closes up the lattice, so that a small swatch shows more grains.
    """
    recipe = RECIPES[name]
    x0, y0, x1, y1 = box
    columns = max(1, round((x1 - x0) / recipe.pitch[0] * finer))
    rows = max(1, round((y1 - y0) / recipe.pitch[1] * finer))
    if wrap and recipe.staggered:
        rows += rows % 2
    dx, dy = (x1 - x0) / columns, (y1 - y0) / rows
    draw, (along, across) = recipe.draw, recipe.stray
    marks: list[Mark] = []
    for row in range(rows):
        half = 0.5 if recipe.staggered and row % 2 else 0.0
        for column in range(columns + (half > 0 and not wrap)):
            x = x0 + (column + 0.5 - half + rng.uniform(-along, along)) * dx
            y = y0 + (row + 0.5 + rng.uniform(-across, across)) * dy
            marks += draw(rng, x, y, (column * EVEN[0] + row * EVEN[1]) % 1)
    return marks


def places(name: str, length: float, depth: float) -> float:
    """About how many cells of the lattice an area has."""
    across, upward = RECIPES[name].pitch
    return length * depth / (across * upward)


def _gypsum(rng: Random, x: float, y: float, even: float) -> list[Mark]:
    return [dot(x, y, rng.choice((0.17, 0.19, 0.21, 0.23, 0.25)))]


def _plaster(rng: Random, x: float, y: float, even: float) -> list[Mark]:
    return [dot(x, y, rng.choice((0.17, 0.18)))]


def _concrete(rng: Random, x: float, y: float, even: float) -> list[Mark]:
    if even < 0.24:
        return [polygon(_corners(rng, x, y, 3, rng.uniform(0.55, 1.05), 0.35))]
    spots = [(x, y)] if even < 0.62 else [(x, y), (x + rng.uniform(0.6, 1.1), y + rng.uniform(-0.9, 0.9))]
    return [dot(*spot, rng.choice((0.16, 0.20, 0.24))) for spot in spots]


def _gravel(rng: Random, x: float, y: float, even: float) -> list[Mark]:
    return [ellipse(x, y, rng.uniform(0.9, 1.2), rng.uniform(0.55, 0.9), rng.uniform(0, 180))]


def _strand(rng: Random, x: float, y: float, even: float) -> list[Mark]:
    lean = 0.0 if rng.random() < 0.5 else rng.choice((-20.0, 20.0)) * rng.uniform(0.7, 1.3)
    return [fleck(x, y, rng.uniform(0.5, 1.2), lean)]


def _particle(rng: Random, x: float, y: float, even: float) -> list[Mark]:
    if even < 0.35:
        return [fleck(x, y, rng.uniform(0.25, 0.45), rng.uniform(0, 180))]
    return [polygon(_corners(rng, x, y, rng.choice((3, 4, 4)), rng.uniform(0.36, 0.58), 0.3))]


def _loose(rng: Random, x: float, y: float, even: float) -> list[Mark]:
    radius, start, sweep = rng.uniform(0.55, 0.85), rng.uniform(0, 2 * pi), rng.uniform(1.1, 1.5) * pi
    opening = ("M", x + radius * cos(start), y + radius * sin(start))
    return [Curve((opening, *arc(x, y, radius, start, sweep, 3)), FLECK, role=ROLE)]


def _straw(rng: Random, x: float, y: float, even: float) -> list[Mark]:
    if even < 0.16:  # stalks that lie the other way show their cut ends
        return [dot(x + 0.75 * step, y + rng.uniform(-0.55, 0.55), 0.22) for step in (-2, -1, 0, 1, 2)]
    lean = rng.uniform(-5, 5)
    return [
        fleck(x + rng.uniform(-0.5, 0.5), y + 0.62 * row, rng.uniform(1.4, 2.2), lean + rng.uniform(-2, 2), FINE)
        for row in (-1, 0, 1)
    ]


def _cork(rng: Random, x: float, y: float, even: float) -> list[Mark]:
    if even < 0.14:
        return [blob(_corners(rng, x, y, 6, 0.55, 0.25), 0.0, "black")]
    return [blob(_corners(rng, x, y, 7, rng.uniform(0.90, 1.02), 0.18))]


def _earth(rng: Random, x: float, y: float, even: float) -> list[Mark]:
    if even < 0.45:
        return [dot(x + step, y + rng.uniform(-0.3, 0.3), 0.18) for step in (-1.0, 0.0, 1.0)]
    half, rise = rng.uniform(1.1, 1.7), rng.uniform(0.2, 0.35) * rng.choice((-1, 1))
    bow = ("C", x - half / 3, y + rise, x + half / 3, y + rise, x + half, y - rise / 2)
    return [Curve((("M", x - half, y - rise / 2), bow), FLECK, role=ROLE)]


def _corners(rng: Random, x: float, y: float, count: int, radius: float, uneven: float) -> list[tuple[float, float]]:
    """Corners about a middle, radius and angle each off by the share `uneven`."""
    start, step = rng.uniform(0, 2 * pi), 2 * pi / count
    corners = []
    for number in range(count):
        angle = start + (number + uneven * rng.uniform(-0.5, 0.5)) * step
        far = radius * (1 + uneven * rng.uniform(-1, 1))
        corners.append((x + far * cos(angle), y + far * sin(angle)))
    return corners


RECIPES: dict[str, Recipe] = {
    "gypsum": Recipe(_gypsum, (1.2, 1.2), (0.40, 0.35), 500),
    "plaster": Recipe(_plaster, (1.0, 0.8), (0.15, 0.12), 500, staggered=True),
    "concrete": Recipe(_concrete, (3.0, 3.0), (0.40, 0.40), 500),
    "gravel": Recipe(_gravel, (2.6, 2.4), (0.07, 0.08), staggered=True),
    "strand-board": Recipe(_strand, (1.9, 1.0), (0.50, 0.40), 500),
    "particle-board": Recipe(_particle, (1.6, 1.45), (0.22, 0.18), staggered=True),
    "loose-fill": Recipe(_loose, (2.4, 2.2), (0.18, 0.18), staggered=True),
    "straw": Recipe(_straw, (4.8, 2.2), (0.10, 0.08), staggered=True),
    "cork": Recipe(_cork, (2.3, 2.1), (0.06, 0.06), staggered=True),
    "earth": Recipe(_earth, (4.2, 1.9), (0.12, 0.16), staggered=True),
}
