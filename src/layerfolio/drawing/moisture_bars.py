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
YEAR_BAR = 7.0
YEAR, LIMIT = 28.0, 20.0  # mm at the right for the year's two bars, and for the name of a limit
LIMIT_WIDTH, LIMIT_DASH, LIMIT_HALO = 0.5, (2.4, 1.2), 0.3
LIMIT_CLEAR = 0.9  # of a value from the middle of the line
HATCH_PITCH = 1.3
VALUE_GAP = 0.9  # from a bar to its value
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


@dataclass(frozen=True, slots=True)
class Column:
    """One bar: its middle and width in mm, the amount in the printed unit, whether water is added, both texts."""

    x: float
    width: float
    amount: float
    gains: bool
    value: str
    name: str


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
    line = limit if limit and limit_shown(limit, most) else None
    level = line.value * how.factor if line else 0.0
    room = (VALUE_GAP + 1.2 * CAPITAL + 0.8) / (top - bottom)  # a value above the highest bar stays below the top
    values = axis(0.0, max(most * how.factor, level) * (1 + 1.1 * room), bottom, top, lines=5)
    marks: list[Mark] = [*grid(values, LEFT, right), *figures(values, LEFT - 1.6)]
    columns = _columns(zone, months, how, right - YEAR - (LIMIT if line else 2.0))
    for one in columns:
        marks += _bar(values, one)
    texts = [mark for one in columns for mark in (*_value(values, one, level if line else None), _name(one, bottom))]
    return (*marks, *(_limit(values, line, level, right, texts) if line else ()), *texts)


def _columns(zone: Zone, months: Sequence[str], how: Amounts, year_left: float) -> list[Column]:
    """The twelve months, then what the whole year adds and what it takes away."""
    pitch = (year_left - 4.0 - LEFT) / 12
    found = [
        Column(LEFT + (n + 0.5) * pitch, pitch / 2, amount * how.factor, flow > 0, how.words(amount), months[n][:3])
        for n, (amount, flow) in enumerate(zip(zone.amounts, zone.flows, strict=True))
    ]
    gained = sum(flow for flow in zone.flows if flow > 0)
    dried = -sum(flow for flow in zone.flows if flow < 0)
    for place, (amount, name) in enumerate(((gained, "gained"), (dried, "dried"))):
        x = year_left + (place + 0.5) * YEAR / 2
        found.append(Column(x, YEAR_BAR, amount * how.factor, name == "gained", how.words(amount), name))
    return found


def _bar(values: Axis, one: Column) -> list[Mark]:
    """Solid where water is added, hatched where some goes."""
    if one.amount <= 0:
        return []
    outline = rectangle(one.x - one.width / 2, values.at(0.0), one.x + one.width / 2, values.at(one.amount))
    path = (("M", *outline[0]), *(("L", *corner) for corner in outline[1:]), ("Z",))
    if one.gains:
        return [Curve(path, fill="black", role="bar gaining")]
    lines = strokes(parallels(outline, 45.0, HATCH_PITCH), GRID)
    hatch = (Clip(outline, lines),) if lines else ()
    return [Curve(path, fill="white", role="bar drying"), *hatch, Curve(path, 0.35, role="bar outline")]


def _value(values: Axis, one: Column, level: float | None) -> list[Mark]:
    """Above its bar on white; above the limit too where the two would meet."""
    reach = CAPITAL / 2
    y = values.at(one.amount) + VALUE_GAP + reach
    if level is not None and abs(y - values.at(level)) < reach + LIMIT_CLEAR:
        y = values.at(level) + reach + LIMIT_CLEAR
    return _on_white(label(one.x, y, one.value, anchor="middle", role="amount"))


def _on_white(text: Text) -> list[Mark]:
    """Figures and capitals on a white ground no higher than they are, so that bars and lines beside them stay whole."""
    (left, _), _, (right, _), _ = text_box(text, 0.3)
    ground = rectangle(left, text.at[1] - 0.3, right, text.at[1] + CAPITAL + 0.3)
    path = (("M", *ground[0]), *(("L", *one) for one in ground[1:]), ("Z",))
    return [Curve(path, fill="white", role="ground"), text]


def _name(one: Column, bottom: float) -> Text:
    return Text((one.x, bottom - 1.4 - CAPITAL), one.name, FIGURES, anchor="middle", role="month")


def _limit(values: Axis, limit: Limit, level: float, right: float, texts: Sequence[Mark]) -> list[Mark]:
    """The dashed line on white, its name in bold at the right end, whose it is below."""
    y = values.at(level)
    marks: list[Mark] = [Line(((LEFT, y), (right, y)), LIMIT_WIDTH, LIMIT_DASH, halo=LIMIT_HALO, role="limit")]
    for words, style, base in ((limit.words, "bold", y + 0.9), (limit.source, "regular", y - 0.9 - CAPITAL)):
        one = Text((right - 0.3, base), words, FIGURES, style, "end", role="limit name")
        taken = (other for other in texts if isinstance(other, Text))
        if words and not any(boxes_touch(text_box(one, 0.25), text_box(other)) for other in taken):
            marks += _on_white(one)
    return marks


__all__ = ["Amounts", "Limit", "amounts_of", "bar_row", "limit_shown"]
