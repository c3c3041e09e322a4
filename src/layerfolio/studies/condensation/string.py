"""Vapour pressure through the section: a string pulled taut between both sides, on or below saturation."""

from itertools import pairwise

from layerfolio.formulas.vapour import DELTA_0

LEAST_KINK = 1e-16 / DELTA_0
"""Change of slope, Pa/m, below which the string does not bend: less than a microgram a month."""


def taut_string(s_d: tuple[float, ...], limit: list[float], held: list[int]) -> list[int]:
    """Nodes at which the string bends or is held, in order: between two neighbours of them it is straight.

    `limit` is saturation at every node and the air's own vapour pressure at both ends; `held` the nodes at which the
    string lies on `limit` whatever happens: both ends and the wet planes, in order. Between two of them the string is
    the lower convex hull of the points, so it bends only where it rests on saturation, and there vapour condenses.
    """
    line = [held[0]]
    for first, last in pairwise(held):
        fixed = len(line)
        for k in range(first + 1, last + 1):
            s_k, p_k = s_d[k], limit[k]
            while len(line) > fixed:
                middle, before = line[-1], line[-2]
                slope_in = (p_k - limit[middle]) / (s_k - s_d[middle])
                slope_out = (limit[middle] - limit[before]) / (s_d[middle] - s_d[before])
                if slope_in - slope_out > LEAST_KINK:
                    break
                line.pop()
            line.append(k)
    return line


def rates(s_d: tuple[float, ...], limit: list[float], line: list[int]) -> tuple[dict[int, float], float, float]:
    """Condensation rate at each inner node of the line (negative: it dries), and what enters and leaves, kg/(m2.s)."""
    crossing = [DELTA_0 * (limit[inner] - limit[outer]) / (s_d[inner] - s_d[outer]) for outer, inner in pairwise(line)]
    found = {node: crossing[i + 1] - crossing[i] for i, node in enumerate(line[1:-1])}
    return found, crossing[-1], crossing[0]


def pressures(s_d: tuple[float, ...], limit: list[float], line: list[int]) -> list[float]:
    """Vapour pressure at every node, Pa."""
    found = [limit[line[0]]]
    for outer, inner in pairwise(line):
        slope = (limit[inner] - limit[outer]) / (s_d[inner] - s_d[outer])
        found += [limit[outer] + slope * (s_d[k] - s_d[outer]) for k in range(outer + 1, inner)] + [limit[inner]]
    return found
