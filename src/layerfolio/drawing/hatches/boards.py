"""Boards: layered, pressed and foamed sheets."""

from math import ceil, cos, floor, hypot, radians, sin, sqrt

from layerfolio.drawing.geometry import parallels
from layerfolio.drawing.hatches.piece import Piece
from layerfolio.drawing.hatches.strokes import FLECK, ROLE, fleck, merged, strokes
from layerfolio.drawing.marks import Clip, Curve, Mark

ACROSS = {False: 45.0, True: 135.0}  # direction of slanted lines; the second of two adjacent layers leans the other way


def plywood(piece: Piece) -> tuple[Mark, ...]:
    """Three bands, five above a depth of 3.6; the even ones with short strokes."""
    x0, y0, x1, _ = piece.box
    bands = 3 if piece.depth <= 3.6 else 5
    deep = piece.depth / bands
    segments = [((x0, y0 + number * deep), (x1, y0 + number * deep)) for number in range(1, bands)]
    for number in range(1, bands, 2):
        low, high = y0 + number * deep, y0 + (number + 1) * deep
        xs = (step * 1.3 for step in range(floor(x0 / 1.3), ceil(x1 / 1.3) + 1))  # in phase, so that pieces meet
        segments += [((x, low), (x + 0.5, high)) for x in xs]
    return piece.paper(strokes(segments))


def strand_board(piece: Piece) -> tuple[Mark, ...]:
    """Flecks, mostly along the board."""
    return piece.scattered("strand-board")


def particle_board(piece: Piece) -> tuple[Mark, ...]:
    """Small angular chips and short flecks."""
    return piece.scattered("particle-board")


def gypsum(piece: Piece) -> tuple[Mark, ...]:
    """Dots."""
    return piece.scattered("gypsum")


def cork(piece: Piece) -> tuple[Mark, ...]:
    """Rounded grains, some of them solid."""
    return piece.scattered("cork")


def wood_fibre(piece: Piece) -> tuple[Mark, ...]:
    """Slanted lines every 2.6, and between each pair a row of flecks about square to them."""
    degrees, pitch = ACROSS[piece.alternate], 2.6
    slant = piece.slant(degrees)
    rng = piece.generator("wood-fibre")
    c, s = cos(radians(slant)), sin(radians(slant))
    flecks: list[Mark] = []
    for (ax, ay), (bx, by) in parallels(piece.outline, slant, pitch, pitch / 2):
        length = hypot(bx - ax, by - ay)
        u = rng.uniform(0.6, 2.2)
        while u < length - 0.4:
            flecks.append(fleck(ax + c * u, ay + s * u, rng.uniform(0.55, 0.85), slant + 90 + rng.uniform(-25, 25)))
            u += rng.uniform(2.0, 3.1) * sqrt(2)  # 2.0 to 3.1 in height
    return (*piece.lines(degrees, pitch), Clip(piece.outline, merged(flecks)))


def mineral_board(piece: Piece) -> tuple[Mark, ...]:
    """Rows of small waves along the layer, odd rows moved by half."""
    rng = piece.generator("mineral-board")
    x0, y0, x1, _ = piece.box
    rows, pitch = max(1, round(piece.depth / 2.0)), 4.2
    deep = piece.depth / rows
    commands: list[tuple] = []
    for row in range(rows):
        for column in range(floor(x0 / pitch) - 1, ceil(x1 / pitch) + 1):
            x = (column + 0.5 * (row % 2)) * pitch + rng.uniform(-0.25, 0.25)
            y = y0 + (row + 0.5) * deep + rng.uniform(-0.15, 0.15)
            length, height = 2.5 + rng.uniform(-0.25, 0.25), rng.uniform(0.36, 0.44)
            if x + length > x0 and x < x1:
                commands += _wave(x, y, length, height)
    return piece.paper([Curve(tuple(commands), FLECK, role=ROLE)])


def _wave(x: float, y: float, length: float, height: float) -> list[tuple]:
    """One period, its crests `height` above and below: a cubic half wave reaches three quarters of its handles."""
    quarter, reach = length / 4, height * 4 / 3
    middle = x + 2 * quarter
    return [
        ("M", x, y),
        ("C", x + 0.73 * quarter, y + reach, middle - 0.73 * quarter, y + reach, middle, y),
        ("C", middle + 0.73 * quarter, y - reach, x + length - 0.73 * quarter, y - reach, x + length, y),
    ]


def foam(piece: Piece) -> tuple[Mark, ...]:
    """Lines both ways at 45°."""
    return (*piece.lines(45, 3.2), *piece.lines(-45, 3.2))


def loose_fill(piece: Piece) -> tuple[Mark, ...]:
    """Scattered curls."""
    return piece.scattered("loose-fill")


def straw(piece: Piece) -> tuple[Mark, ...]:
    """Bundles of stalks along the layer, and dots where stalks show their cut ends."""
    return piece.scattered("straw")


