"""The moisture picture of one assembly: section, temperature and vapour pressure in two months, water over the year."""

from layerfolio.drawing.figures import Units
from layerfolio.drawing.geometry import moved
from layerfolio.drawing.marks import Drawing, Group, Mark
from layerfolio.drawing.moisture_bars import Limit
from layerfolio.drawing.moisture_head import head_marks, label_row_needed
from layerfolio.drawing.moisture_key import key_marks, key_rows
from layerfolio.drawing.moisture_list import layer_list
from layerfolio.drawing.moisture_plan import Across, Down, across, down
from layerfolio.drawing.moisture_rows import chart_rows
from layerfolio.drawing.moisture_strip import strip_marks, strip_scale
from layerfolio.drawing.moisture_view import zones
from layerfolio.drawing.moisture_water import Water, water_marks, water_of
from layerfolio.studies.condensation.types import CondensationStudy

HEIGHT = 178.0


def moisture_picture(
    study: CondensationStudy, *, units: Units = "metric", width: float = 180.0, height: float = HEIGHT,
    limit: Limit | None = None,
) -> Drawing:  # fmt: skip
    """Section strip, charts of the worst and the best month by thickness and by equivalent air layer, bars of the year.

    Needs the monthly balance as expected (ValueError without). `height` is what the charts are stretched to; a picture
    of many planes may be higher. `limit` is shown beside the bars. Paper mm, y upward.
    """
    run = study.expected
    if run is None or study.year is None:
        raise ValueError("a moisture picture needs the monthly balance")
    water = water_of(study, limit)
    place = across(study, run, units, width)
    found = zones(study.assembly, run)
    rows = down(
        len(study.assembly.layers), label_row_needed(place, run, found), len(water.rows), len(water.sentence),
        len(key_rows(_key(water, bool(found)), width)), height,
    )  # fmt: skip
    groups = _groups(study, water, place, rows, units, width)
    placed = tuple(moved(Group(name, tuple(marks)), by=(0.0, -rows.bottom)) for name, marks in groups if marks)
    bands = place.strip.stack.bands
    families = tuple(dict.fromkeys(band.layer.family for band in bands if band.form != "body" or band.layer.kind != "cavity"))
    return Drawing(
        f"{study.assembly.name} moisture", width, -rows.bottom, placed, place.strip.stack.scale,
        strip_scale(place.strip, units), families, _notes(place),
    )  # fmt: skip


def _groups(
    study: CondensationStudy, water: Water, place: Across, rows: Down, units: Units, width: float
) -> list[tuple[str, tuple[Mark, ...]]]:
    run = study.expected
    found = zones(study.assembly, run)
    left = place.air_layer.left
    return [
        ("strip", strip_marks(place.strip, *rows.strip)),
        ("head", head_marks(place, run, found, rows)),
        ("layers", layer_list(study, place.strip.stack.bands, units, left, width, 0.0)),
        *chart_rows(study, place, rows, found, units),
        ("water", water_marks(water, rows, width)),
        ("key", key_marks(_key(water, bool(found)), width, rows.key)),
    ]


def _key(water: Water, wet: bool) -> list[str]:
    names = ["actual", "saturation", *(["first pass"] if wet else [])]
    return [*names, *(["gaining", "drying"] if water.rows else [])]


def _notes(place: Across) -> tuple[str, ...]:
    thin = [str(b.layer.number) for b in place.strip.stack.bands if b.form in ("thin", "sheet")]
    nominal = [str(b.layer.number) for b in place.strip.stack.bands if b.nominal]
    notes = [f"thickness of layer {', '.join(thin)} not to scale"] if thin else []
    return (*notes, *([f"thickness of layer {', '.join(nominal)} not given, drawn at will"] if nominal else []))
