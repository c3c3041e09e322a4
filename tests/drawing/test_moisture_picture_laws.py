"""Laws of the moisture picture: nothing overlaps, nothing stands out, and what is drawn is what was calculated."""

from dataclasses import replace

import moisture_pictures
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from readings import flat, lines, overlapping_labels, texts

import builders
from layerfolio.drawing.extent import extent
from layerfolio.drawing.marks import Circle, Curve, Text
from layerfolio.drawing.moisture import moisture_picture
from layerfolio.drawing.moisture_bars import Limit
from layerfolio.drawing.moisture_view import months_shown, zones
from layerfolio.studies.climate_year import MONTHS
from layerfolio.studies.indoor_air import year_by_class
from moisture_cases import HUMIDITY, TEMPERATURE, study

FAMILIES = ("timber-board", "plywood", "strand-board", "wood-fibre", "mineral-board", "batt", "foam", "gypsum",
            "masonry", "concrete", "plaster", "straw", "quark")  # fmt: skip
TITLES = ("Board", "Hemp batts", "Panel of a long and wordy name, second grade", "Reclaimed larch boards, planed")
LIMIT = Limit(0.5, "limit 0.50", "DIN 4108-3")


@st.composite
def rows(draw, number):
    name = f"{draw(st.sampled_from(TITLES))} {number}"
    s_d = draw(st.sampled_from((0.01, 0.05, 0.2, 0.7, 2.0, (3.0, 1.0), (12.0, 4.0), 100.0)))
    if draw(st.integers(0, 4)) == 0:
        return moisture_pictures.row(number, name, None, None, s_d, "membrane")
    thick = draw(st.sampled_from((0.6, 3, 6, 12.7, 15, 18, 24, 38, 50, 89, 140, 184, 286, 400)))
    lam = draw(st.sampled_from((0.022, 0.035, 0.04, 0.13, 0.25, 1.0)))
    return moisture_pictures.row(number, name, thick, lam, s_d, draw(st.sampled_from(FAMILIES)))


@st.composite
def assemblies(draw):
    made = [draw(rows(number + 1)) for number in range(draw(st.integers(1, 12)))]
    if all(one.kind == "membrane" for one in made):
        made.append(moisture_pictures.row(len(made) + 1, "Last board", 20, 0.13, 0.5, "plywood"))
    layers = moisture_pictures.outside(*made) if draw(st.booleans()) else made
    kind = draw(st.sampled_from(("wall", "wall", "roof", "ceiling", "floor")))
    faces = draw(st.sampled_from(("outside air", "vented space", "unheated space")))
    return builders.assembly(layers, kind=kind, faces=faces, slope=30.0 if kind == "roof" else 90.0)


def pictured(found, **how):
    """The picture, after what holds for every one."""
    picture = moisture_picture(found, **how)
    assert overlapping_labels(picture) == []
    x0, y0, x1, y1 = extent(picture.marks)
    assert x0 >= -0.01 and y0 >= -0.01 and x1 <= picture.width + 0.01 and y1 <= picture.height + 0.01
    small = [one.text for one in texts(picture) if one.size < 9]
    assert set(small) <= {"d"}  # the index of a symbol
    assert sorted(one.text for one in texts(picture, "list number")) == sorted(str(x.number) for x in found.assembly.layers)
    return picture


HOW = st.sampled_from(({}, {"units": "customary"}, {"width": 193.95}, {"height": 150.0}, {"limit": LIMIT}))


@settings(max_examples=100, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(assemblies(), st.integers(1, 4), HOW)
def test_labels_keep_clear_and_inside(assembly, humidity_class, how):
    pictured(study(assembly, year_by_class(TEMPERATURE, HUMIDITY, 20.0, humidity_class)), **how)


@pytest.mark.parametrize("units", ["metric", "customary"])
@pytest.mark.parametrize("name", moisture_pictures.SHOWN)
def test_shown_pictures_keep_the_laws(name, units):
    found = moisture_pictures.SHOWN[name]()
    assert pictured(found, units=units, limit=LIMIT) == moisture_picture(found, units=units, limit=LIMIT)


@pytest.fixture(params=moisture_pictures.SHOWN)
def case(request):
    return moisture_pictures.SHOWN[request.param]()


def bars(picture):
    """Height of each bar by the middle of its foot, values included."""
    found = {}
    for one in flat(picture.marks):
        if isinstance(one, Curve) and one.role in ("bar gaining", "bar drying"):
            (_, x0, y0), _, (_, x1, y1), *_ = one.commands
            found[round((x0 + x1) / 2, 2), round(y0, 2)] = y1 - y0
    return found


def test_bars_are_as_high_as_the_amounts(case):
    run = case.expected if case.expected.planes() else case.less_favourable
    picture = moisture_picture(case)
    if not run.planes():
        assert not bars(picture) and len(texts(picture, "sentence")) == 1
        return
    amounts = [a for zone in zones(case.assembly, run) for a in zone.amounts]
    year = [sum(sign * f for f in zone.flows if sign * f > 0) for zone in zones(case.assembly, run) for sign in (1, -1)]
    expected = sorted(one for one in (*amounts, *year) if one > 0)
    heights = sorted(bars(picture).values())
    assert len(heights) == len(expected)
    assert heights == pytest.approx([one * heights[-1] / expected[-1] for one in expected])
    zero = sum(one == 0 for one in (*amounts, *year))
    assert [one.text for one in texts(picture, "amount")].count("0") == zero


def test_months_run_from_the_start_month(case):
    run = case.expected if case.expected.planes() else case.less_favourable
    shown = [one.text for one in texts(moisture_picture(case), "month")]
    if run.planes():
        assert shown[:14] == [*(m.name[:3] for m in run.months for _ in "x"), "gained", "dried"] or len(shown) > 14
        assert run.start[:3] in shown


def test_each_wet_zone_has_its_mark(case):
    picture = moisture_picture(case)
    marks = [one for one in flat(picture.marks) if isinstance(one, Curve) and one.role == "plane mark"]
    assert len(marks) == len(zones(case.assembly, case.expected))


def test_dots_lie_on_the_pressure_of_their_plane(case):
    """Read back from the paper: figures of the axis and the dot's height give the calculated pressure."""
    picture = moisture_picture(case)
    worst, _ = months_shown(case)
    dots = [one for one in flat(_group(picture, "worst month")) if isinstance(one, Circle)]
    figures = {one.text: one.at[1] for one in _figures(picture)}
    low, high = min(figures, key=float), max(figures, key=float)
    scale = (float(high) - float(low)) / (figures[high] - figures[low])
    base = figures[low] + 9 * 0.729 * 25.4 / 72 / 2
    read = sorted({round((one.centre[1] - base) * scale + float(low), 3) for one in dots})
    if worst.profile.held:
        assert read == pytest.approx(sorted({round(worst.profile.pressure[k], 3) for k in worst.profile.held}), abs=0.01)
    else:
        assert len(read) == 1 and any(read[0] == pytest.approx(p, abs=0.01) for p in worst.profile.pressure)


def test_actual_pressure_never_lies_above_saturation(case):
    picture = moisture_picture(case)
    for name in ("worst month", "best month"):
        group = _group(picture, name)
        saturation = [line.points for line in group if getattr(line, "role", "") == "saturation"]
        actual = [line.points for line in group if getattr(line, "role", "") == "pressure"]
        assert len(saturation) == len(actual) == 2
        for upper, lower in zip(saturation, actual, strict=True):
            for x, y in lower:
                tops = [top for at, top in upper if abs(at - x) < 1e-9]
                assert not tops or y <= max(tops) + 1e-6


def test_first_pass_is_drawn_only_where_something_condenses(case):
    picture = moisture_picture(case)
    worst, _ = months_shown(case)
    assert bool(lines(picture, "first pass")) == bool(worst.profile.held)


def _group(picture, name):
    return next(one.marks for one in picture.marks if one.name == name)


def _figures(picture):
    """The figures of the axis of the worst month."""
    return [one for one in flat(_group(picture, "worst month")) if isinstance(one, Text) and one.role == "axis"]


def test_charts_grow_where_there_is_nothing_to_show_below():
    """With bars the charts of the same wall are lower."""
    dry, wet = moisture_pictures.panel_inside(), moisture_pictures.foam_outside()
    assert not dry.expected.planes() and wet.expected.planes()
    heights = []
    for found in (dry, wet):
        ys = [one.at[1] for one in _figures(moisture_picture(found, height=165.0))]
        heights.append(max(ys) - min(ys))
    assert heights[0] > heights[1] + 5


def test_worst_and_best_month():
    wet = moisture_pictures.panel_outside()
    flow = {month.name: month.flow for month in wet.expected.months}
    worst, best = months_shown(wet)
    assert flow[worst.name] == max(flow.values()) > 0 > flow[best.name] == min(flow.values())
    dry = moisture_pictures.panel_inside()
    worst, best = months_shown(dry)
    humidity = {
        one.month: max(p / s for p, s in list(zip(one.pressure, one.saturation, strict=True))[1:-1])
        for one in dry.expected.profiles
    }
    assert worst.name == max(MONTHS, key=humidity.get) and best.name == min(MONTHS, key=humidity.get)


def test_less_favourable_bars_stand_under_a_sentence_that_says_so():
    found = moisture_pictures.dry_as_expected_only()
    assert not found.expected.planes() and found.less_favourable.planes()
    picture = moisture_picture(found)
    assert "less favourable" in texts(picture, "sentence")[0].text and bars(picture)


def test_a_limit_far_above_the_amounts_is_left_out():
    wet = moisture_pictures.panel_outside()
    most = wet.expected.greatest_accumulation
    near = moisture_picture(wet, limit=Limit(most * 2.9, "near"))
    far = moisture_picture(wet, limit=Limit(most * 3.1, "far"))
    assert lines(near, "limit") and not lines(far, "limit")


def test_without_a_balance_there_is_no_picture():
    with pytest.raises(ValueError, match="monthly balance"):
        moisture_picture(replace(moisture_pictures.panel_inside(), expected=None))
