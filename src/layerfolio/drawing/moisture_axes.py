"""Axes of charts: round figures, places on paper, grid; texts made of symbols and words."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import ceil, floor, log10

from layerfolio.drawing import font
from layerfolio.drawing.marks import Line, Mark, Point, Text
from layerfolio.units.show import fixed

FIGURES = 9.0  # pt
GRID, BASE = 0.20, 0.35
MOST_LINES = 7
FIGURE_PITCH = 3.3  # mm between the figures of an axis at least
STEPS = (1.0, 2.0, 2.5, 4.0, 5.0, 10.0)
CAPITAL = font.cap_height(FIGURES)


@dataclass(frozen=True, slots=True)
class Axis:
    """Values from `low` to `high` in `step`, on paper from `start` to `end`."""

    low: float
    high: float
    step: float
    start: float = 0.0
    end: float = 1.0

    def at(self, value: float) -> float:
        """The place on paper of a value, mm."""
        return self.start + (value - self.low) / (self.high - self.low) * (self.end - self.start)

    @property
    def ticks(self) -> tuple[float, ...]:
        count = round((self.high - self.low) / self.step)
        return tuple(self.low + one * self.step for one in range(count + 1))

    def coarser(self, lines: int) -> "Axis":
        """The same range with at most so many grid lines, none where there was none before."""
        count = len(self.ticks) - 1
        every = next(k for k in range(1, count + 1) if count % k == 0 and count // k <= lines - 1)
        return replace(self, step=self.step * every)

    def figure(self, value: float) -> str:
        return fixed(value, decimals_of(self.step)) if abs(value) > 1e-9 * self.step else "0"


def decimals_of(step: float) -> int:
    """Digits after the point that tell multiples of a step apart."""
    return next((n for n in range(0, 9) if abs(round(step, n) - step) < 1e-9 * step), 9)


def axis(low: float, high: float, start: float, end: float, lines: int = MOST_LINES) -> Axis:
    """Round values that hold `low` to `high` with at most so many grid lines."""
    if high - low < 1e-12:
        high = low + 1.0
    lines = max(2, min(lines, int(abs(end - start) / FIGURE_PITCH) + 1)) if abs(end - start) > 1.0 else lines
    rough = (high - low) / max(1, lines - 1)
    power = 10.0 ** floor(log10(rough))
    for factor in (*STEPS, 20.0, 25.0, 40.0, 50.0):
        step = factor * power
        first, last = floor(low / step + 1e-9), ceil(high / step - 1e-9)
        if last - first <= lines - 1:
            return Axis(first * step, max(last, first + 1) * step, step, start, end)
    raise AssertionError("a step of fifty times the range always fits")


def grid(values: Axis, left: float, right: float) -> list[Mark]:
    """Level grid lines; the lowest is the base."""
    return [
        Line(((left, values.at(tick)), (right, values.at(tick))), BASE if number == 0 else GRID,
             role="base" if number == 0 else "grid")
        for number, tick in enumerate(values.ticks)
    ]  # fmt: skip


def figures(values: Axis, right: float) -> list[Mark]:
    """The figures of an upright axis, right-aligned."""
    return [label(right, values.at(tick), values.figure(tick), anchor="end", role="axis") for tick in values.ticks]


def label(x: float, y: float, text: str, *, style: str = "regular", anchor: str = "start", role: str = "value",
          box: float = 0.0, size: float = FIGURES) -> Text:  # fmt: skip
    """A text whose capitals stand level with `y`."""
    return Text((x, y - font.cap_height(size) / 2), text, size, style, anchor, box=box, role=role)


Part = tuple[str, str]
"""Words and their style: regular, bold, oblique, or index (lowered, smaller)."""


def words(x: float, y: float, parts: Sequence[Part], *, size: float = FIGURES, role: str = "title") -> tuple[Text, ...]:
    """A line of text of several styles from `x` on, baseline at `y`."""
    made = []
    for text, style in parts:
        low = style == "index"
        one = Text((x, y - (0.18 * size * font.MM_PER_PT if low else 0.0)), text, size * 0.72 if low else size,
                   "regular" if low else style, role=role)  # fmt: skip
        made.append(one)
        x += font.width(text, one.size, one.style)
    return tuple(made)


def wide(parts: Sequence[Part], size: float = FIGURES) -> float:
    """Width of such a line, mm."""
    return sum(
        font.width(text, size * 0.72 if style == "index" else size, "regular" if style == "index" else style)
        for text, style in parts
    )


def fitting(parts: Sequence[Part], room: float) -> list[Part]:
    """As many of the parts, from the first on, as fit; the first in any case."""
    kept = list(parts)
    while len(kept) > 1 and wide(kept) > room:
        kept.pop()
    return kept


def dashed(x: float, top: float, bottom: float, role: str = "face line") -> Line:
    """A layer's face running down through a chart."""
    return Line(((x, top), (x, bottom)), GRID, (0.9, 0.9), role=role)


def polyline(points: Sequence[Point], width: float, dash: tuple[float, ...] = (), role: str = "curve") -> Line:
    """A curve through points; points on one spot stand once."""
    kept = [points[0]]
    for point in points[1:]:
        if abs(point[0] - kept[-1][0]) > 1e-6 or abs(point[1] - kept[-1][1]) > 1e-6:
            kept.append(point)
    return Line(tuple(kept), width, dash, role=role)
