"""The method tables of the sets: printed tables of the codes recomputed from this project's own rows."""

import dataclasses

import pytest

from codes_builders import cases
from layerfolio.catalogue import code_rows, code_sets, code_tables, materials
from layerfolio.catalogue.datum import Datum
from layerfolio.catalogue.files import CatalogueError
from layerfolio.catalogue.sources import all_sources
from layerfolio.formulas import thermal

NBC, ISO = code_tables.load("nbc-2020"), code_tables.load("iso")


def wood(tables, depth):
    """Resistance of sawn spruce of that depth, m2.K/W, as the set prints it."""
    found = tables.material("spruce", depth)
    return found.resistance.value if found.resistance else found.resistivity.value * depth


def framed(depth, cavity, frame, spacing):
    share = NBC.framing_share(frame, "stud", spacing / 1000).value
    return thermal.framed_layer_resistance(f=(share, 1 - share), R=(wood(NBC, depth / 1000), cavity))


FRAMED_CELLS = [
    (table["depth"], spacing, row["cavity"], printed)
    for table in cases("nbc-framing-cavity")["tables"]
    for row in table["rows"]
    for spacing, printed in zip(table["spacings"], row["printed"], strict=True)
    if printed is not None
]


@pytest.mark.parametrize(("depth", "spacing", "cavity", "printed"), FRAMED_CELLS)
def test_every_printed_cell_of_framing_and_cavity(depth, spacing, cavity, printed):
    """NBC 2020, Tables A-9.36.2.8.(1)-B and -C. The row of no insulation is an air space of that depth."""
    cavity = cavity or NBC.air_space(depth / 1000, "horizontal").value
    assert framed(depth, cavity, "foundation-wall", spacing) == pytest.approx(printed, abs=0.005 + 1e-9)


def resistance(layer):
    """One entry of a worked row: a film, a plain figure, a material of some mm, or a row of the set's table."""
    name, *rest = layer
    if name == "plain":
        return rest[0]
    if name.startswith("film "):
        return NBC.film(name.removeprefix("film "), "horizontal").value
    if not rest:
        return NBC.listed(name).resistance.value
    found = NBC.material(name, rest[0] / 1000)
    return found.resistance.value if found.resistance else found.resistivity.value * rest[0] / 1000


def worked(row):
    parts = [resistance(layer) for layer in row["layers"]]
    if "framed" in row:
        how = row["framed"]
        parts.append(framed(how["depth"], NBC.listed(how["cavity"]).resistance.value, how["frame"], how["spacing"]))
    return thermal.series_resistance(R=tuple(parts))


ROWS = {row["id"]: row for row in cases("nbc-worked-rows")["rows"]}


@pytest.mark.parametrize("name", ROWS)
def test_worked_rows_of_the_code_and_the_wood_trade(name):
    row = ROWS[name]
    assert worked(row) == pytest.approx(row["printed"], abs=row["within"])
    if "framed_printed" in row:
        alone = row | {"layers": []}
        assert worked(alone) == pytest.approx(row["framed_printed"], abs=0.005)


@pytest.mark.parametrize("row", cases("nbc-worked-rows")["remainders"]["rows"], ids=lambda row: row["limit"])
def test_remainder_to_the_limits_of_foundation_walls(row):
    """N13: the printed remainder is the limit less the rounded sum."""
    assert row["limit"] - round(worked(ROWS["N3"]), 2) == pytest.approx(row["printed"], abs=1e-9)


def test_parallel_path_of_the_steel_example():
    case = cases("nbc-worked-rows")["steel_parallel"]
    share = case["share"]
    found = thermal.upper_limit(f_q=(share, 1 - share), R_q=(case["framing_path"], case["cavity_path"]))
    assert found == pytest.approx(case["printed"], abs=case["within"])


AIR = cases("iso-air-layers")


@pytest.mark.parametrize("direction", ["up", "horizontal", "down"])
def test_air_layers_of_iso_6946(direction):
    for mm, printed in zip(AIR["thicknesses"], AIR[direction], strict=True):
        assert ISO.air_space(mm / 1000, direction).value == printed


@pytest.mark.parametrize("direction", ["up", "horizontal", "down"])
def test_air_layers_follow_from_the_annex_formula(direction):
    """ISO 6946, annex on air spaces: R = 1 / (h_a + h_r), emissivity 0.9 on both faces, 10 °C; written out anew."""
    radiation = 4 * 5.67e-8 * 283.15**3 / (1 / 0.9 + 1 / 0.9 - 1)
    for mm, printed in zip(AIR["thicknesses"][1:], AIR[direction][1:], strict=True):
        d = mm / 1000
        convection = {"up": 1.95, "horizontal": 1.25, "down": 0.12 * d**-0.44}[direction]
        assert 1 / (max(convection, 0.025 / d) + radiation) == pytest.approx(printed, abs=AIR["tolerance"])


def test_air_space_between_below_and_beyond_rows():
    half = NBC.air_space(0.030, "down")
    assert half.value == pytest.approx(0.19) and half.note == "between 20 mm (0.18 m²·K/W) and 40 mm (0.2 m²·K/W)"
    assert half.origin.mark == "memory"
    assert ISO.air_space(0.0025, "up").value == pytest.approx(0.055)
    assert NBC.air_space(0.0094, "horizontal") is None
    assert "9.5 mm" in NBC.air_space_missing("horizontal")
    assert NBC.air_space(0.0095, "horizontal").value == 0.15
    beyond = NBC.air_space(0.3, "horizontal")
    assert beyond.value == 0.18 and "last row, 90 mm" in beyond.note


@pytest.mark.parametrize(("direction", "inside"), [("up", 0.10), ("horizontal", 0.13), ("down", 0.17)])
def test_films_of_iso_6946(direction, inside):
    """Guide DA DB-HE/1, Table 1; beside sheltered air the outer surface is as an inner one; none on the ground."""
    assert ISO.film("inside", direction).value == inside
    assert ISO.film("outside", direction).value == 0.04
    assert ISO.film("outside", direction, "outside air", True).value == inside
    for faces in ("vented space", "unheated space"):
        assert ISO.film("outside", direction, faces).value == inside
        assert ISO.film_choice("outside", direction, faces).text.startswith("the outside film is")
    assert ISO.film("outside", direction, "ground").value == 0
    assert ISO.film("outside", direction, "ground", True).value == 0
    assert ISO.film_choice("outside", direction) is None
    assert "inner surface" in ISO.film_choice("outside", direction, "outside air", True).text


@pytest.mark.parametrize(("direction", "inside"), [("up", 0.11), ("horizontal", 0.12), ("down", 0.16)])
def test_films_of_the_nbc_stay_outside_a_ventilated_cavity(direction, inside):
    assert NBC.film("inside", direction).value == inside
    for faces, ventilated in (("outside air", False), ("outside air", True), ("vented space", False)):
        assert NBC.film("outside", direction, faces, ventilated).value == 0.03
    assert NBC.film("outside", direction, "ground").value == 0
    assert NBC.film_choice("outside", direction, "outside air", True).source.startswith("nbc-2020")


@pytest.mark.parametrize(
    ("spacing", "share"), [(0.400, 0.23), (0.406, 0.23), (0.600, 0.20), (0.610, 0.20), (0.304, 0.245)]
)
def test_framing_shares_take_both_labels_of_a_spacing(spacing, share):
    assert NBC.framing_share("wall", "stud", spacing).value == pytest.approx(share)


@pytest.mark.parametrize(("frame", "member", "spacing"), [
    ("wall", "stud", 0.5), ("wall", "stud", 0.2), ("wall", "batten", 0.4), ("slab", "joist", 0.4),
    ("roof", "rafter", 0.304),
])  # fmt: skip
def test_no_framing_share_without_a_row(frame, member, spacing):
    assert NBC.framing_share(frame, member, spacing) is None
    assert ISO.framing_share(frame, member, spacing) is None


def test_share_from_memory_says_so():
    assert NBC.framing_share("roof", "rafter", 0.6).origin.mark == "memory"
    assert NBC.framing_share("wall", "stud", 0.4).origin.mark == "found"


def test_listed_thickness_stands_before_multiplication():
    """Note A-9.36.2.4.(1): 12.7 mm gypsum board is 0.0775, 11.1 mm strand board 0.11 (multiplied it would be 0.109)."""
    assert NBC.material("gypsum-board", 0.0127).resistance.value == 0.0775
    assert NBC.material("osb", 0.0111).resistance.value == 0.11
    other = NBC.material("osb", 0.015)
    assert other.resistance is None and other.resistivity.value == pytest.approx(9.8)
    assert NBC.material("hemp-batt", 0.1) is None and ISO.material("spruce", 0.1) is None
    assert NBC.material("fibre-cement", 0.010) is None
    assert NBC.material("spruce", None) is None


@pytest.mark.parametrize(("openings", "iso", "nbc"), [
    (0, "unventilated", "unventilated"), (500, "unventilated", "ventilated"),
    (501, "slightly ventilated", "ventilated"),
    (1499, "slightly ventilated", "ventilated"), (1500, "ventilated", "ventilated"),
])  # fmt: skip
def test_slightly_ventilated_cavities(openings, iso, nbc):
    assert ISO.slightly_ventilated(openings).counts_as == iso
    assert NBC.slightly_ventilated(openings).counts_as == nbc


def data(thing):
    """Every Datum inside tables, however nested."""
    if isinstance(thing, Datum):
        yield thing
    elif isinstance(thing, dict):
        for one in thing.values():
            yield from data(one)
    elif isinstance(thing, tuple | list):
        for one in thing:
            yield from data(one)
    elif dataclasses.is_dataclass(thing):
        for field in dataclasses.fields(thing):
            yield from data(getattr(thing, field.name))


@pytest.mark.parametrize("set_id", code_sets.set_ids())
def test_every_figure_names_a_described_source_place_and_mark(set_id):
    found = list(data(code_tables.load(set_id)))
    assert len(found) > 20
    for datum in found:
        assert datum.origin.chosen_by == "code" and datum.origin.place
        assert datum.origin.mark in ("found", "memory", "derived")
        assert datum.origin.source in all_sources()
        assert not datum.origin.via or datum.origin.via in all_sources()


def test_code_materials_are_catalogue_materials_each_once():
    names = NBC.material_names()
    assert len(names) == len(set(names)) > 30
    assert set(names) <= set(materials.names())


@pytest.mark.parametrize("missing", ["source", "place", "mark"])
def test_a_figure_without_source_place_or_mark_does_not_load(tmp_path, missing):
    row = {"value": 0.12, "source": "nbc-2020", "place": "a table", "mark": "found"}
    assert code_rows.figure(row, {}, tmp_path / "x.yaml").value == 0.12
    del row[missing]
    with pytest.raises(CatalogueError, match=missing):
        code_rows.figure(row, {}, tmp_path / "x.yaml")
    assert code_rows.figure(row, {missing: "found"}, tmp_path / "x.yaml").value == 0.12


@pytest.mark.parametrize(
    "wrong", [{"mark": "given"}, {"mark": "sure"}, {"value": "0.12"}, {"value": True}, {"value": -1}]
)
def test_a_wrong_mark_or_value_does_not_load(tmp_path, wrong):
    row = {"value": 0.12, "source": "nbc-2020", "place": "a table", "mark": "found"} | wrong
    with pytest.raises(CatalogueError):
        code_rows.figure(row, {}, tmp_path / "x.yaml")


def test_sets_and_zones():
    assert code_sets.set_ids() == ("bc-2024", "irc-2018", "irc-2021", "irc-2024", "iso", "nbc-2015", "nbc-2020", "qc-r1")
    assert code_sets.zones("nbc-2020") == ("4", "5", "6", "7A", "7B", "8")
    assert code_sets.zones("iso") == ()
    for unknown in ("nbc-2010", "nbc", "nowhere-2020", ""):
        with pytest.raises(KeyError):
            code_tables.load(unknown)
