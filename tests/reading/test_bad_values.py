"""One mistake in an otherwise good project: one problem, at the right place, in words that help."""

import pytest
from workbench import problems, spoilt, write

LAYER = "{material: larch-board, thickness: 19 mm}"
FIRST = "assemblies.W1.layers[0]"
FRAMING = "assemblies.W1.layers[4].framing"
CAVITY = "assemblies.W1.layers[1]"

QUANTITIES = [
    ("area: 58 m2", "area: »58", "assemblies.W1.area", "the bare number 58 needs its unit"),
    ("area: 58 m2", "area: »58 mm", "assemblies.W1.area", '"mm" is not a unit of area'),
    ("area: 58 m2", "area: »0 m2", "assemblies.W1.area", "must be above zero"),
    ("area: 58 m2", "area: »[58 m2]", "assemblies.W1.area", "not a list"),
    ("area: 58 m2", "area: »{a: 58 m2}", "assemblies.W1.area", "not keys with values"),
    ("thickness: 19 mm", "thickness: »1,9 mm", f"{FIRST}.thickness", "has a comma: write a decimal point"),
    ("thickness: 19 mm", "thickness: »19", f"{FIRST}.thickness", "the bare number 19 needs its unit"),
    ("thickness: 19 mm", "thickness: »9**9**9 mm", f"{FIRST}.thickness", "is not a number with a unit"),
    ("thickness: 19 mm", "thickness: »1e400 m", f"{FIRST}.thickness", "too large"),
    ("thickness: 19 mm", "thickness: »nan m", f"{FIRST}.thickness", "is not a number that can be used"),
    ("thickness: 19 mm", "thickness: ».inf", f"{FIRST}.thickness", "is not a number that can be used"),
    ("thickness: 19 mm", "thickness: »-19 mm", f"{FIRST}.thickness", "must be above zero"),
    ("thickness: 19 mm", "thickness: »0 mm", f"{FIRST}.thickness", "must be above zero"),
    ("thickness: 19 mm", "thickness: »19 m", f"{FIRST}.thickness", "is over 10 m"),
    ("thickness: 19 mm", "thickness: »19 kg", f"{FIRST}.thickness", '"kg" is not a unit of length'),
    ("thickness: 19 mm", "thickness: »12:30", f"{FIRST}.thickness", "is not a number with a unit"),
    ("fraction: 20 %", "fraction: »120 %", f"{FRAMING}.fraction", "is over 100 %"),
    ("fraction: 20 %", "fraction: »0 %", f"{FRAMING}.fraction", "must be above zero"),
    ("fraction: 20 %", "fraction: »0.2", f"{FRAMING}.fraction", "the bare number 0.2 needs its unit"),
    ("spacing: 600 mm, fraction", "spacing: »30 mm, fraction", f"{FRAMING}.spacing", "smaller than the width 38 mm"),
    ("slope: 90 deg", "slope: »95 deg", "assemblies.W1.slope", "is over 90 deg"),
    ("0.040 W/(m.K)", "»0.040 m2.K/W", "materials.hemp-batt.conductivity", "is not a unit of thermal conductivity"),
    ("0.040 W/(m.K)", "»-0.040 W/(m.K)", "materials.hemp-batt.conductivity", "outside what a building can have"),
    ("{dry: 2, wet: 1}", "{dry: »0, wet: 1}", "materials.hemp-batt.vapour_resistance_factor.dry", "from 1 to"),
    (
        "{dry: 2, wet: 1}",
        "{»dri: 2, wet: 1}",
        "materials.hemp-batt.vapour_resistance_factor.dri",
        'did you mean "dry"?',
    ),
    ("{dry: 2, wet: 1}", "»{}", "materials.hemp-batt.vapour_resistance_factor", "a value is missing"),
    ("layer: 0.05 m,", "layer: »0 m,", "assemblies.W1.layers[2].equivalent_air_layer", "must be above zero"),
    ("-27 degC", "»-27", "climate.heating_design_temperature", "the bare number -27 needs its unit"),
    ("-27 degC", "»-300 degC", "climate.heating_design_temperature", "outside what a building can have"),
    ("temperature: 20 degC", "temperature: »120 degC", "indoor.temperature", "is over 60 degC"),
    ("4600 K.d", "»4600", "climate.heating_degree_days", "the bare number 4600 needs its unit"),
]

WORDS = [
    ("layerfolio: 1", "layerfolio: »2", "layerfolio", "format version 2 is not known"),
    ("layerfolio: 1", "layerfolio: »one", "layerfolio", "is not a format version"),
    ("  title: Tern", "  »titel: Tern", "project.titel", 'unknown key "titel": did you mean "title"?'),
    ("occupancy: mercantile", "occupancy: »mercantil", "building.occupancy", 'did you mean "mercantile"?'),
    ("page: letter", "page: »a5", "project.page", '"a5" is not known here'),
    ("units: metric", "units: »imperial", "project.units", "is not known here"),
    ("storeys: 1", "storeys: »one", "building.storeys", "a whole number is expected"),
    ("storeys: 1", "storeys: »1.5", "building.storeys", "a whole number is expected"),
    ("storeys: 1", "storeys: »0", "building.storeys", "from 1 to 200"),
    ("storeys: 1", "storeys: »1_0", "building.storeys", "a whole number is expected"),
    ("heat_recovery: true", "heat_recovery: »yes", "code.heat_recovery", "is neither true nor false"),
    ("heat_recovery: true", "heat_recovery: »on", "code.heat_recovery", "is neither true nor false"),
    ("date: 2027-02-03", "date: »2027-02-30", "project.date", "there is no day 2027-02-30"),
    ("date: 2027-02-03", "date: »3 Feb 2027", "project.date", "is not a date: write year-month-day"),
    ("date: 2027-02-03", "date: »2027-2-3", "project.date", "is not a date"),
    ("set: nbc-2020", "set: »nbc-2200", "code.set", 'did you mean "nbc-2020"?'),
    ('zone: "6"', "zone: »9", "code.zone", 'zone "9" is not a zone of nbc-2020'),
    ('zone: "6"', "zone: »7", "code.zone", 'did you mean "7A" or "7B"?'),
    ("set: nbc-2020", "set: »nbc", "code.set", 'did you mean "nbc-2020"?'),
    ("set: nbc-2020", "set: »NBC 2020", "code.set", 'did you mean "nbc-2020"?'),
    ("material: larch-board", "material: »larchwood", f"{FIRST}.material", 'did you mean "larch-board"?'),
    ("kind: wall", "kind: »Wall", "assemblies.W1.kind", 'did you mean "wall"?'),
    ("faces: outside air", "faces: »outside", "assemblies.W1.faces", 'did you mean "outside air"?'),
    ("material: larch-board", "material: »larch-bord", f"{FIRST}.material", 'did you mean "larch-board"?'),
    (
        "material: spruce, width: 38 mm, spacing: 600",
        "material: »spruse, width: 38 mm, spacing: 600",
        f"{FRAMING}.material",
        'did you mean "spruce"?',
    ),
    (
        "serves: [water control]",
        "serves: [»water]",
        "assemblies.W1.layers[2].serves[0]",
        'did you mean "water control"?',
    ),
    ("seams: taped", "seams: »tapped", "assemblies.W1.layers[5].seams", 'did you mean "taped"?'),
    ("cavity: ventilated", "cavity: »vented", f"{CAVITY}.cavity", 'did you mean "ventilated"?'),
    ("method: monthly", "method: »montly", "assemblies.W1.moisture.method", 'did you mean "monthly"?'),
    ("  W1:", "  »W/1:", "assemblies.W/1", "cannot be a sheet number"),
    ("  W1:", "  »../W1:", "assemblies.../W1", "cannot be a sheet number"),
    ("  W1:", "  »WallNorthEast:", "assemblies.WallNorthEast", "cannot be a sheet number"),
    ("title: North and east walls", "title: »''", "assemblies.W1.title", "the text is empty"),
    ("  hemp-batt:\n", '  »"hemp\\u0007":\n', "materials.hemp?", "cannot be the name of a material"),
]

MISSING = [
    ("layerfolio: 1\n", "", "layerfolio", "layerfolio is missing", (1, 1)),
    ("  title: Tern Point chandlery\n", "", "project.title", "title is missing", (2, 1)),
    ("  set: nbc-2020\n", "", "code.set", "set is missing", (19, 1)),
    ("    kind: wall\n", "", "assemblies.W1.kind", "kind is missing", (49, 3)),
    ("kind: wall", "kind: ~", "assemblies.W1.kind", "kind is missing", (49, 3)),
]

SERIES = [
    ("15, 18, 17.5", "15, 17.5", "climate.monthly.temperature.values", "11 values stand here, 12 are needed"),
    ("15, 18, 17.5", "15, 18, 18, 17.5", "climate.monthly.temperature.values", "13 values stand here, 12 are needed"),
]  # the mark stands before the list, added below


@pytest.mark.parametrize(("before", "after", "path", "message"), QUANTITIES + WORDS)
def test_one_mistake_is_one_problem_at_its_place(tmp_path, before, after, path, message):
    text, places = spoilt(before, after)
    found = problems(write(tmp_path, text))
    expected = [one for one in found if one.path == path]
    assert [(one.line, one.column) for one in expected] == places, found
    assert message in expected[0].message
    follow_on = {"hemp?": 'the material "hemp-batt"'}  # renaming a material leaves the layer that used it alone
    others = [one for one in found if one not in expected and not any(w in one.message for w in follow_on.values())]
    assert others == []


@pytest.mark.parametrize(("before", "after", "path", "message", "place"), MISSING)
def test_what_is_missing_is_reported_where_it_belongs(tmp_path, before, after, path, message, place):
    text, _ = spoilt(before, after)
    (found,) = problems(write(tmp_path, text))
    assert (found.path, found.line, found.column) == (path, *place)
    assert message in found.message and found.example


@pytest.mark.parametrize(("before", "after", "path", "message"), SERIES)
def test_a_year_has_twelve_months(tmp_path, before, after, path, message):
    text, places = spoilt(
        f"values: [-12, -10, -2.5, 4.5, 10.5, {before}", f"values: »[-12, -10, -2.5, 4.5, 10.5, {after}"
    )
    (found,) = problems(write(tmp_path, text))
    assert (found.path, [(found.line, found.column)]) == (path, places)
    assert message in found.message


@pytest.mark.parametrize(
    ("after", "path", "message"),
    [
        ("{relative_humidity: »0.45}", "indoor.humidity.relative_humidity", "write 45 %"),
        ("{relative_humidity: »45}", "indoor.humidity.relative_humidity", "write 45 %"),
        ("{relative_humidity: »0.45 %}", "indoor.humidity.relative_humidity", "write 45 % if that is meant"),
        ("{relative_humidity: »104 %}", "indoor.humidity.relative_humidity", "is over 100 %"),
        ("{class: »6}", "indoor.humidity.class", "from 1 to 5"),
        ("{class: »2 %}", "indoor.humidity.class", "a whole number is expected"),
        ("»45 %", "indoor.humidity", "a class or a relative humidity is expected here"),
        (
            '{unit: "%", values: »[0.4, 0.4, 0.4, 0.4, 0.4, 0.4, 0.4, 0.4, 0.4, 0.4, 0.4, 0.45]}',
            "indoor.humidity.values",
            "write percent, 45 instead of 0.45",
        ),
        (
            '{unit: "%", values: [40, 40, 40, 40, 40, 40, 40, 40, 40, 40, 40, »101]}',
            "indoor.humidity.values[11]",
            "over 100 %",
        ),
        (
            '{unit: "%", values: [40, 40, 40, 40, 40, 40, 40, 40, 40, 40, 40, »40 %]}',
            "indoor.humidity.values[11]",
            "is not a bare number",
        ),
        (
            "{unit: »degC, values: [4, 4, 4, 4, 4, 4, 4, 4, 4, 4, 4, 4]}",
            "indoor.humidity.unit",
            "is not a unit for these",
        ),
    ],
)
def test_indoor_humidity(tmp_path, after, path, message):
    text, places = spoilt("{class: 2}", after)
    (found,) = problems(write(tmp_path, text))
    assert (found.path, [(found.line, found.column)]) == (path, places)
    assert message in found.message


def test_indoor_humidity_is_stated_in_one_way(tmp_path):
    text, _ = spoilt("{class: 2}", "{class: 2, relative_humidity: 45 %}")
    (found,) = problems(write(tmp_path, text))
    assert "cannot both stand" in found.message and (found.line, found.column) == (34, 3)
