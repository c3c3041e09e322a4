"""Bars of the water that is held at a plane at each month's end, and what a whole year adds and takes away."""

from collections.abc import Sequence
from dataclasses import dataclass

from layerfolio.drawing.geometry import boxes_touch, parallels, rectangle, text_box
from layerfolio.drawing.hatches.strokes import strokes
from layerfolio.drawing.marks import Clip, Curve, Line, Mark, Text
from layerfolio.drawing.moisture_axes import CAPITAL, FIGURES, GRID, Axis, axis, figures, grid, label
from layerfolio.drawing.moisture_view import Zone
from layerfolio.units.show import fixed

LEFT = 12.0
YEAR, LIMIT = 28.0, 20.0  # mm at the right for the year's two bars, and for the name of a limit
LIMIT_WIDTH, LIMIT_DASH, LIMIT_HALO = 0.5, (2.4, 1.2), 0.3
HATCH_PITCH = 1.3
VALUE_GAP = 1.3  # from a bar to its value
REACH = 3.0  # times the greatest amount: a limit beyond would make the bars too low
GRAMS_BELOW = 0.1  # kg/m2: smaller amounts print in g/m2


@dataclass(frozen=True, slots=True)
class Limit:
    """A level to show beside the amounts, kg/m2, its name above the line and whose it is below."""

    value: float
    words: str
    source: str = ""


@dataclass(frozen=True, slots=True)
class Amounts:
    """How amounts print: factor from kg/m2, unit, digits after the point."""

    factor: float
    unit: str
    decimals: int

    def words(self, amount: float) -> str:
        value = amount * self.factor
        if value == 0:
            return "0"
        shown = fixed(value, self.decimals)
        return f"<{fixed(10.0**-self.decimals, self.decimals)}" if float(shown.replace("−", "-")) == 0 else shown


def amounts_of(most: float) -> Amounts:
    """Unit and digits for amounts up to `most` kg/m2."""
    if most >= GRAMS_BELOW:
        return Amounts(1.0, "kg/m²", 2 if most < 100 else 0)
    return Amounts(1000.0, "g/m²", 1 if most >= 0.001 else 3)


def limit_shown(limit: Limit | None, most: float) -> bool:
    """Whether amounts up to `most` kg/m2 come near enough to a limit for a line."""
    return limit is not None and limit.value <= REACH * most


def bar_row(
    zone: Zone,
    months: Sequence[str],
    how: Amounts,
    most: float,
    limit: Limit | None,
    top: float,
    bottom: float,
    right: float,
) -> tuple[Mark, ...]:
    """One chart: twelve bars from the start month on, then the year's gain and loss; names of the months below."""
    level = limit.value * how.factor if limit else 0.0
    high = max(most * how.factor, level if limit_shown(limit, most) else 0.0)
    room = (VALUE_GAP + 1.2 * CAPITAL + 0.8) / (top - bottom)  # a value above the highest bar stays below the top
    values = axis(0.0, high * (1 + 1.1 * room), bottom, top, lines=5)
    line = limit if limit_shown(limit, most) else None
    year_left = right - YEAR - (LIMIT if line else 2.0)
    pitch = (year_left - 4.0 - LEFT) / 12
    marks: list[Mark] = [*grid(values, LEFT, right), *_figures(values)]
    bars, texts = [], []
    for number, (amount, flow) in enumerate(zip(zone.amounts, zone.flows, strict=True)):
        x = LEFT + (number + 0.5) * pitch
        bars += _bar(values, x, pitch / 2, amount * how.factor, flow > 0)
        texts += [
            _value(values, x, how.words(amount), amount * how.factor, line, level),
            _month(x, bottom, months[number][:3]),
        ]
    gained = sum(flow for flow in zone.flows if flow > 0)
    dried = -sum(flow for flow in zone.flows if flow < 0)
    for place, (amount, words, gains) in enumerate(((gained, "gained", True), (dried, "dried", False))):
        x = year_left + (place + 0.5) * YEAR / 2
        bars += _bar(values, x, 7.0, min(amount * how.factor, values.high), gains)
        texts += [
            _value(values, x, how.words(amount), min(amount * how.factor, values.high), line, level),
            _month(x, bottom, words),
        ]
    drawn = _limit(values, line, level, right, texts) if line else []
    return (*marks, *bars, *drawn, *texts)


def _figures(values: Axis) -> list[Mark]:
    return figures(values, LEFT - 1.6)


def _bar(values: Axis, x: float, width: float, amount: float, gains: bool) -> list[Mark]:
    """Solid where the month adds water, hatched where it takes some away."""
    if amount <= 0:
        return []
    low, high = values.at(0.0), values.at(amount)
    outline = rectangle(x - width / 2, low, x + width / 2, high)
    path = (("M", *outline[0]), *(("L", *one) for one in outline[1:]), ("Z",))
    if gains:
        return [Curve(path, fill="black", role="bar gaining")]
    lines = strokes(parallels(outline, 45.0, HATCH_PITCH), GRID)
    return [
        Curve(path, fill="white", role="bar drying"), *((Clip(outline, lines),) if lines else ()),
        Curve(path, 0.35, role="bar outline"),
    ]  # fmt: skip


def _value(values: Axis, x: float, words: str, amount: float, line: Limit | None, level: float) -> Text:
    """Above its bar; above the limit too where the two would meet."""
    y = values.at(amount) + VALUE_GAP + CAPITAL / 2
    if line and abs(y - values.at(level)) < CAPITAL / 2 + 1.2:
        y = values.at(level) + CAPITAL / 2 + 1.4
    return label(x, y, words, anchor="middle", role="amount", box=0.25)


def _month(x: float, bottom: float, words: str) -> Text:
    return Text((x, bottom - 1.4 - CAPITAL), words, FIGURES, anchor="middle", role="month")


def _limit(values: Axis, limit: Limit, level: float, right: float, texts: Sequence[Text]) -> list[Mark]:
    """The dashed line on white, its name in bold at the right end, whose it is below."""
    y = values.at(level)
    marks: list[Mark] = [Line(((LEFT, y), (right, y)), LIMIT_WIDTH, LIMIT_DASH, halo=LIMIT_HALO, role="limit")]
    for words, style, base in ((limit.words, "bold", y + 1.4), (limit.source, "regular", y - 1.3 - CAPITAL)):
        one = Text((right, base), words, FIGURES, style, "end", box=0.25, role="limit name")
        if words and not any(boxes_touch(text_box(one, 0.25), text_box(other)) for other in texts):
            marks.append(one)
    return marks


__all__ = ["Amounts", "Limit", "amounts_of", "bar_row", "limit_shown"]
