"""Water over the year: which run the bars show, a sentence where there is nothing to show."""

from dataclasses import dataclass

from layerfolio.drawing.marks import Mark, Text
from layerfolio.drawing.moisture_axes import FIGURES, Part, fitting, words
from layerfolio.drawing.moisture_bars import LEFT, Amounts, Limit, amounts_of, bar_row
from layerfolio.drawing.moisture_plan import Down
from layerfolio.drawing.moisture_view import Zone, shown_zones, zones
from layerfolio.studies.condensation.types import CondensationStudy, Run

TITLE_RISE = 1.9
NONE = "No month with condensation: no plane takes up water, as expected or with less favourable vapour values."
NONE_AS_EXPECTED = "As expected, no month with condensation; below the run with less favourable vapour values."


@dataclass(frozen=True, slots=True)
class Water:
    """Rows of bars with their titles; `sentence` stands in place of them, or above them."""

    rows: tuple[tuple[tuple[Part, ...], Zone], ...]
    months: tuple[str, ...]
    sentence: tuple[str, ...]
    how: Amounts
    most: float
    limit: Limit | None


def water_of(study: CondensationStudy, limit: Limit | None) -> Water:
    """The run as expected; where that stays dry the less favourable one, if it does not."""
    expected, less = study.expected, study.less_favourable
    if expected.planes():
        return _water(study, expected, (), limit)
    if less is not None and less.planes():
        return _water(study, less, (NONE_AS_EXPECTED,), limit)
    return Water((), (), (NONE,), amounts_of(1.0), 0.0, None)


def _water(study: CondensationStudy, run: Run, sentence: tuple[str, ...], limit: Limit | None) -> Water:
    shown = shown_zones(zones(study.assembly, run))
    most = max(max(*zone.amounts, *_year(zone)) for zone in shown)
    how = amounts_of(most)
    rows = tuple((_title(zone, run, how, number == 0), zone) for number, zone in enumerate(shown))
    return Water(rows, tuple(month.name for month in run.months), sentence, how, most, limit)


def _year(zone: Zone) -> tuple[float, float]:
    """What the year adds and what it takes away."""
    return sum(f for f in zone.flows if f > 0), -sum(f for f in zone.flows if f < 0)


def _title(zone: Zone, run: Run, how: Amounts, first: bool) -> tuple[Part, ...]:
    if zone.name.startswith("in "):
        where = f"in layer {zone.name[3:]}"
    else:
        where = f"at {zone.name}" if zone.name.startswith("the ") else f"at plane {zone.name}"
    parts = [(f"Water {where}", "bold"), (f", {how.unit}", "regular")]
    if first:
        parts.append((", at the end of each month", "regular"))
        parts += [(" of the second year", "regular")] if run.years > 1 else []
        parts.append(("; at the right the whole year", "regular"))
    return tuple(parts)


def water_marks(water: Water, rows: Down, width: float) -> tuple[Mark, ...]:
    """Sentence and bars."""
    marks: list[Mark] = []
    for number, line in enumerate(water.sentence):
        marks.append(Text((0.0, rows.sentence - 4.5 * number), line, FIGURES, "bold", role="sentence"))
    for (title, zone), (top, bottom) in zip(water.rows, rows.bars, strict=True):
        marks += words(LEFT, top + TITLE_RISE, fitting(title, width - LEFT), role="title")
        marks += bar_row(zone, water.months, water.how, water.most, water.limit, top, bottom, width)
    return tuple(marks)
