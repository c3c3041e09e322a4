"""Bars of the heat that a building loses on a design winter day: one for each part, the largest at the top."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from layerfolio.drawing import font
from layerfolio.drawing.geometry import Outline, parallels, rectangle
from layerfolio.drawing.hatches.strokes import strokes
from layerfolio.drawing.marks import Clip, Curve, Drawing, Line, Mark, Text
from layerfolio.drawing.moisture_axes import BASE, CAPITAL, FIGURES, GRID, Axis, axis, label
from layerfolio.units.show import fixed, in_units

Kind = Literal["assembly", "opening", "join", "air"]
KINDS: dict[str, str] = {
    "assembly": "walls, roofs, floors", "opening": "windows and doors", "join": "joins", "air": "air change",
}  # fmt: skip
PITCH, THICK = 6.3, 3.8  # mm from bar to bar, and of a bar
MOST = 22
"""Smaller parts beyond so many bars stand together in the last one."""
NAMES = 62.0  # mm at the left that the names may take
LEAST = 0.5  # W: less prints as nothing
GAP = 1.4  # from a bar to its value, from a name to the axis
HATCH = 1.3
FOOT = 14.0  # below the bars: figures of the axis, its unit, the key
UNIT = 5.0  # from the end of the axis to its unit
SWATCH, BETWEEN = 9.0, 5.0  # of the key


@dataclass(frozen=True, slots=True)
class HeatBar:
    """One part: its name, W, and what it is."""

    name: str
    watts: float
    kind: Kind


def heat_bars(bars: Sequence[HeatBar], *, system: str = "metric", width: float = 180.0) -> Drawing | None:
    """The chart, `width` mm wide; values in W, in Btu/h first where the system is customary. None where
    no part loses half a watt.
    """
    rows = _gathered(sorted(bars, key=lambda one: -one.watts))
    if not rows or rows[0].watts < LEAST:
        return None
    values = [_value(one, system) for one in rows]
    figures = max(font.width(text, FIGURES) for text in values)
    names = [_fitting(one.name, NAMES - GAP) for one in rows]
    behind = max(figures + GAP, UNIT + font.width(_unit(system), FIGURES))
    left, right = max(font.width(text, FIGURES) for text in names) + GAP, width - behind
    height = FOOT + PITCH * len(rows)
    scale = axis(0.0, _amount(rows[0].watts, system), left, right)
    marks: list[Mark] = _axis(scale, system, FOOT, height)
    for number, (one, name, value) in enumerate(zip(rows, names, values, strict=True)):
        marks += _row(one, name, value, height - PITCH * (number + 0.5), scale, system)
    marks += _key([kind for kind in KINDS if any(one.kind == kind for one in rows)], left, width)
    return Drawing("design heat loss", width, height, tuple(marks))


def _gathered(rows: list[HeatBar]) -> list[HeatBar]:
    if len(rows) <= MOST:
        return rows
    rest = rows[MOST - 1 :]
    return [*rows[: MOST - 1], HeatBar(f"{len(rest)} smaller parts", sum(one.watts for one in rest), rest[0].kind)]


def _amount(watts: float, system: str) -> float:
    return in_units(watts, "Btu/h") if system == "customary" else watts


def _unit(system: str) -> str:
    return "Btu/h" if system == "customary" else "W"


def _value(one: HeatBar, system: str) -> str:
    watts = f"{fixed(one.watts, 0)} W"
    return f"{fixed(_amount(one.watts, system), 0)} Btu/h ({watts})" if system == "customary" else watts


def _axis(scale: Axis, system: str, bottom: float, top: float) -> list[Mark]:
    """Upright grid lines with their figures below; the one at zero is the base."""
    marks: list[Mark] = []
    for number, tick in enumerate(scale.ticks):
        x = scale.at(tick)
        base = number == 0
        marks.append(Line(((x, bottom), (x, top)), BASE if base else GRID, role="base" if base else "grid"))
        marks.append(label(x, bottom - 1.2 - CAPITAL / 2, scale.figure(tick), anchor="middle", role="axis"))
    marks.append(label(scale.end + UNIT, bottom - 1.2 - CAPITAL / 2, _unit(system), role="axis"))
    return marks


def _row(one: HeatBar, name: str, value: str, y: float, scale: Axis, system: str) -> list[Mark]:
    """Name, bar and value; a part that lowers the loss has a value and no bar."""
    end = scale.at(max(0.0, _amount(one.watts, system)))
    marks: list[Mark] = [label(scale.start - GAP, y, name, anchor="end", role="name")]
    if end - scale.start > 0.2:
        marks += bar(rectangle(scale.start, y - THICK / 2, end, y + THICK / 2), one.kind)
    marks.append(label(end + GAP, y, value, box=0.3, role="value"))
    return marks


def bar(outline: Outline, kind: str) -> list[Mark]:
    """Solid for assemblies, hatched for openings, crossed for joins, white for the air."""
    path = (("M", *outline[0]), *(("L", *corner) for corner in outline[1:]), ("Z",))
    if kind == "assembly":
        return [Curve(path, fill="black", role="bar assembly")]
    angles = {"opening": (45.0,), "join": (45.0, 135.0)}.get(kind, ())
    hatches = [strokes(parallels(outline, angle, HATCH), GRID) for angle in angles]
    clipped = [Clip(outline, lines) for lines in hatches if lines]
    return [Curve(path, fill="white", role=f"bar {kind}"), *clipped, Curve(path, 0.35, role="bar outline")]


def _key(kinds: list[str], left: float, width: float) -> list[Mark]:
    """What the bars' fillings stand for, in one line at the foot, under the bars where it fits there."""
    marks: list[Mark] = []
    wide = sum(SWATCH + 1.6 + font.width(KINDS[kind], FIGURES) + BETWEEN for kind in kinds) - BETWEEN
    x = max(0.0, min(left, width - wide))
    for kind in kinds:
        marks += bar(rectangle(x, 0.4, x + SWATCH, 0.4 + THICK - 1.0), kind)
        text = Text((x + SWATCH + 1.6, 0.6), KINDS[kind], FIGURES, role="key")
        marks.append(text)
        x += SWATCH + 1.6 + font.width(KINDS[kind], FIGURES) + BETWEEN
    return marks


def _fitting(text: str, room: float) -> str:
    """The text, cut where it is wider than the room, between words if it can be."""
    if font.width(text, FIGURES) <= room:
        return text
    words = text.split(" ")
    while len(words) > 1 and font.width(" ".join(words) + "…", FIGURES) > room:
        words.pop()
    short = " ".join(words)
    while font.width(short + "…", FIGURES) > room:
        short = short[:-1]
    return short + "…"
