"""The three rows of charts with their titles, values and scale."""

from collections.abc import Sequence
from dataclasses import replace

from layerfolio.drawing import moisture_labels as labels
from layerfolio.drawing.figures import Units
from layerfolio.drawing.marks import Circle, Line, Mark, Text
from layerfolio.drawing.moisture_axes import CAPITAL, FIGURES, Part, fitting, words
from layerfolio.drawing.moisture_charts import (
    DOT,
    Panel,
    Row,
    pressure_axis,
    pressure_row,
    shown_temperature,
    temperature_row,
)
from layerfolio.drawing.moisture_plan import Across, Down, air_layer_ticks
from layerfolio.drawing.moisture_strip import strip_scale
from layerfolio.drawing.moisture_titles import month_title
from layerfolio.drawing.moisture_view import MonthView, Zone, months_shown, nearest
from layerfolio.glossary import term
from layerfolio.studies.condensation.types import CondensationStudy, Run
from layerfolio.units.pretty import pretty_unit
from layerfolio.units.show import fixed, in_units

TITLE_RISE = 1.9  # baseline of a title above its chart
Named = tuple[str, tuple[Mark, ...]]


def chart_rows(study: CondensationStudy, place: Across, rows: Down, found: Sequence[Zone], units: Units) -> list[Named]:
    """Temperature of both months, pressures of the worst, pressures of the best, the scale below."""
    run = study.expected
    worst, best = months_shown(study)
    planes = [zone.node for zone in found]
    top, bottom = rows.charts["temperature"]
    heat = temperature_row(run, (worst, best), place.panels, top, bottom, units, planes)
    named = [("temperature", (*heat.marks, *_heat_words(place, heat, run, (worst, best), top, bottom, units)))]
    values = pressure_axis((worst, best), *rows.charts["worst"])
    for key, month in (("worst", worst), ("best", best)):
        top, bottom = rows.charts[key]
        if key == "best":
            values = replace(values, start=bottom, end=top).coarser(4)
        row = pressure_row(run, month, place.panels, values, planes)
        said = _pressure_words(study, place, row, month, found, top, bottom)
        named.append((f"{key} month", (*row.marks, *said)))
    named.append(("scale", tuple(_scale(place, run, rows.charts["best"][1], units))))
    return named


def _title(x: float, top: float, parts: Sequence[Part], room: float) -> tuple[Text, ...]:
    """As many of the parts as fit."""
    return words(x, top + TITLE_RISE, fitting(parts, room), role="title")


def _heat_words(
    place: Across, row: Row, run: Run, months: tuple[MonthView, MonthView], top: float, bottom: float, units: Units
) -> list[Mark]:
    unit = pretty_unit(term("theta").customary if units == "customary" else "degC")
    room = place.thickness.right - place.thickness.left
    marks: list[Mark] = list(
        _title(place.thickness.left, top, (("Temperature  ", "bold"), ("θ", "oblique"), (f", {unit}", "regular")), room)
    )
    marks += labels.right_labels(place.labels, _ends(row, months, units), top, bottom)
    worst = months[0]
    if worst.profile.held:
        node = _wettest_held(run, worst)
        value = shown_temperature(worst.profile.temperature[node], units)
        marks += _point(place.thickness, row, node, run, value, f"{fixed(value, 1)} {unit}", marks, top, bottom)
    return marks


def _ends(row: Row, months: tuple[MonthView, MonthView], units: Units) -> list[tuple[float, str, str]]:
    """Outside of both months by name; the room once where both are alike."""
    found = []
    for month in months:
        outside, style = shown_temperature(month.outside, units), "bold" if month.worst else "regular"
        found.append((row.axis.at(outside), f"{month.name[:3]} outside {fixed(outside, 1)}", style))
    rooms = [shown_temperature(month.inside, units) for month in months]
    if abs(rooms[0] - rooms[1]) < 0.05:
        return [(row.axis.at(rooms[0]), f"inside {fixed(rooms[0], 1)}", "regular"), *found]
    named = zip(months, rooms, strict=True)
    return [
        *((row.axis.at(t), f"{month.name[:3]} inside {fixed(t, 1)}", "bold" if month.worst else "regular") for month, t in named),
        *found,
    ]


def _pressure_words(
    study: CondensationStudy,
    place: Across,
    row: Row,
    month: MonthView,
    found: Sequence[Zone],
    top: float,
    bottom: float,
) -> list[Mark]:
    run, profile = study.expected, month.profile
    room = place.labels + 29.0 - place.thickness.left
    marks: list[Mark] = list(_title(place.thickness.left, top, month_title(study, month, found, row.hatched), room))
    saturation = row.curves[0][-1][1]
    ends = [
        (saturation, f"saturation {fixed(_value(row, saturation), 0)}", "regular"),
        (row.axis.at(profile.pressure[-1]), f"actual {fixed(profile.pressure[-1], 0)}", "bold"),
    ]
    marks += labels.right_labels(place.labels, ends, top, bottom)
    if profile.held:
        node = _wettest_held(run, month)
        said = f"{fixed(profile.pressure[node], 0)} Pa"
    elif month.worst:
        node, humidity = nearest(run, profile)
        said = f"{humidity * 100:.0f} %"
        for panel in place.panels:
            marks.append(
                Circle(
                    (panel.place(run.nodes[node]), row.axis.at(profile.pressure[node])),
                    DOT,
                    fill="black",
                    role="nearest",
                )
            )
    else:
        return marks
    nearest_only = not profile.held  # its share stands in the title, its dot is drawn
    return marks + _point(
        place.thickness, row, node, run, profile.pressure[node], said, marks, top, bottom, dot=False, spare=nearest_only
    )


def _value(row: Row, y: float) -> float:
    values = row.axis
    return values.low + (y - values.start) / (values.end - values.start) * (values.high - values.low)


def _wettest_held(run: Run, month: MonthView) -> int:
    """Of the planes wet in the month that with the greatest flow."""
    flows = {plane.node: abs(plane.flow) for plane in run.month(month.name).planes}
    return max(month.profile.held, key=lambda node: flows.get(node, 0.0))


def _point(
    panel: Panel, row: Row, node: int, run: Run, value: float, said: str, taken: Sequence[Mark], top: float, bottom: float,
    dot: bool = True, spare: bool = False,
) -> list[Mark]:  # fmt: skip
    """A dot at a node and its value beside it."""
    at = panel.place(run.nodes[node]), row.axis.at(value)
    texts = [one for one in taken if isinstance(one, Text)]
    frame = (panel.left + 0.5, bottom + 0.3, panel.right - 0.5, top - 0.3)
    found = labels.point_label(at, said, row.curves, texts, frame, spare)
    return [*([Circle(at, DOT, fill="black", role="plane dot")] if dot else []), *([found] if found else [])]


def _scale(place: Across, run: Run, bottom: float, units: Units) -> list[Mark]:
    """Below the last row: the strip's scale, and the figures of the equivalent air layers."""
    base = bottom - 1.5 - CAPITAL
    panel = place.air_layer
    unit = term("s_d").customary if units == "customary" else term("s_d").si
    whole = in_units(run.nodes[-1].s_d, unit) if units == "customary" else run.nodes[-1].s_d
    marks: list[Mark] = [
        Text((place.thickness.left, base), f"by thickness, {strip_scale(place.strip, units)}", FIGURES, role="scale")
    ]
    for x, figure in air_layer_ticks(panel, whole):
        marks.append(Line(((x, bottom), (x, bottom - 1.0)), 0.25, role="scale tick"))
        marks.append(Text((x, base), figure, FIGURES, anchor="middle", role="scale figure"))
    marks += words(
        place.labels,
        base,
        (("by ", "regular"), ("s", "oblique"), ("d", "index"), (f", {pretty_unit(unit)}", "regular")),
        role="scale",
    )
    return marks
