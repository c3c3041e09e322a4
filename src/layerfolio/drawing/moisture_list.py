"""The layers named beside the strip, with the equivalent air layer that each run takes."""

from collections.abc import Sequence

from layerfolio.drawing.figures import Units
from layerfolio.drawing.layout_stack import Band
from layerfolio.drawing.lettering import SIZE, wide
from layerfolio.drawing.marks import Line, Mark, Text
from layerfolio.drawing.moisture_axes import wide as words_wide
from layerfolio.drawing.moisture_axes import words
from layerfolio.drawing.names import layer_note
from layerfolio.glossary import term
from layerfolio.studies.condensation.types import CondensationStudy
from layerfolio.units.pretty import pretty_unit
from layerfolio.units.show import in_units, significant

PITCH, TIGHT = 4.1, 3.9
HEAD = 5.2
INDENT = 6.0  # from the number to the name
GAP = 2.5  # between name and value
NONE = "–"


def list_height(count: int) -> float:
    """Of the head and so many layers, mm."""
    return HEAD + count * _pitch(count)


def _pitch(count: int) -> float:
    return PITCH if count <= 9 else TIGHT


def layer_list(
    study: CondensationStudy, bands: Sequence[Band], units: Units, left: float, right: float, top: float
) -> tuple[Mark, ...]:
    """Number, name, thickness; s_d as expected and less favourable, once where both are the same."""
    expected, less = ({v.layer.number: v.s_d for v in run} for run in (study.basis.expected, study.basis.less_favourable))
    unit = pretty_unit(term("s_d").customary if units == "customary" else term("s_d").si)
    head = (("s", "bold oblique"), ("d", "index"), (f", {unit}: as expected / less favourable", "regular"))
    base = top - 3.4
    marks: list[Mark] = list(words(right - words_wide(head), base, head, role="list head"))
    marks.append(Line(((left, base - 1.4), (right, base - 1.4)), 0.35, role="list rule"))
    pitch = _pitch(len(bands))
    for row, band in enumerate(bands):
        number = band.layer.number
        y = top - HEAD - (row + 1) * pitch + 1.1
        value = _values(expected.get(number), less.get(number), units)
        room = right - left - INDENT - GAP - wide(value)
        marks += [
            Text((left, y), str(number), SIZE, role="list number"),
            Text((left + INDENT, y), _name(band, units, room), SIZE, role="list name"),
            Text((right, y), value, SIZE, anchor="end", role="list value"),
        ]
    return tuple(marks)


def _values(expected: float | None, less: float | None, units: Units) -> str:
    if expected is None or less is None:
        return NONE
    one, other = (figure_s_d(value, units) for value in (expected, less))
    return one if one == other else f"{one} / {other}"


def figure_s_d(value: float, units: Units) -> str:
    """Up to three significant digits in the unit that comes first."""
    shown = significant(in_units(value, term("s_d").customary) if units == "customary" else value, 3)
    return shown.rstrip("0").rstrip(".") if "." in shown and "·" not in shown else shown


def _name(band: Band, units: Units, room: float) -> str:
    """The longest way of naming a layer that fits."""
    full, alone = layer_note(band, units), layer_note(band, None)
    short = alone.split(",")[0]
    thick = full.removeprefix(alone).strip() if full.startswith(alone) else ""
    for name in (full, f"{short} {thick}".strip(), short):
        if wide(name) <= room:
            return name
    while short and wide(short + "…") > room:
        short = short[:-1]
    return short.rstrip() + "…"
