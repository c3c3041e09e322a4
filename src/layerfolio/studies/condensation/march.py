"""One month of the balance: planes wet, drying and running dry, the month split at each moment of drying out."""

from layerfolio.studies.condensation.string import pressures, rates, taut_string

DRY = 1e-12
"""kg/m2 that count as nothing: rounding, not water."""


class Passage:
    """What a month did. `flow` by node, inflow and outflow, kg/m2; `line` the nodes that held the string in the month's
    longest part, `longest` seconds; `dried_after` seconds from the start of the month, one entry a plane."""

    __slots__ = ("dried_after", "flow", "inflow", "line", "longest", "outflow")

    def __init__(self) -> None:
        self.flow: dict[int, float] = {}
        self.inflow = self.outflow = self.longest = 0.0
        self.dried_after: list[float] = []
        self.line: list[int] = []


def march(s_d: tuple[float, ...], limit: list[float], stored: dict[int, float], seconds: float) -> Passage:
    """Run one month; `stored` (kg/m2 by node, only wet nodes) is changed in place.

    `limit` as in taut_string. A plane that holds water is at saturation; one that runs dry is let go, and the rest of
    the month runs without it. Each part of the month ends with a plane running dry or with the month.
    """
    passage = Passage()
    left, last = seconds, len(s_d) - 1
    while left > 0:
        line = taut_string(s_d, limit, [0, *sorted(stored), last])
        rate, entering, leaving = rates(s_d, limit, line)
        step = min([left, *(stored[k] / -g for k, g in rate.items() if g < 0)])
        if step > passage.longest:
            passage.longest, passage.line = step, line
        passage.inflow += entering * step
        passage.outflow += leaving * step
        left = left - step if step < left else 0.0
        _store(rate, stored, passage, step, seconds - left)
    return passage


def _store(rate: dict[int, float], stored: dict[int, float], passage: Passage, step: float, clock: float) -> None:
    for node, g in rate.items():
        before = stored.get(node, 0.0)
        after = before + g * step
        if after < DRY:
            after = 0.0
            if stored.pop(node, None) is not None:
                passage.dried_after.append(clock)
        else:
            stored[node] = after
        passage.flow[node] = passage.flow.get(node, 0.0) + after - before


def profile(s_d: tuple[float, ...], limit: list[float], passage: Passage) -> list[float]:
    """Vapour pressures at every node in the longest part of the month, Pa."""
    return pressures(s_d, limit, passage.line)
