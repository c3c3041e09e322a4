"""The catalogue against the library ht 1.2.0, which reprints two published tables.

`building_materials`: DIN EN 12524:2000 (forerunner of ISO 10456:2007, Table 3), a selection of which stands in the VDI
Heat Atlas, 2nd edition. `ASHRAE`: ASHRAE Handbook - Fundamentals 2013, table of thermal properties. Every row that a
material file says it took from there is compared by its exact key; single rows of the library are known to be wrong.
"""

import pytest
import yaml
from ht.insulation import ASHRAE, building_materials

from layerfolio.catalogue.materials import material, names
from layerfolio.home import folder

WRONG_CONDUCTIVITY = {
    "Floor covering, tiles, cork",  # 65 for 0.065
    "Particleboard, high density",  # 1.18, an inch-pound figure
    "Stone, lime, or sand",  # wet quarry stone, as the rows below
}
WRONG_ROWS = {
    "Particleboard, underlayment",  # R 1.22, an inch-pound figure
    "Plasters and renders, cement sand",  # exchanged with gypsum and sand
    "Plasters and renders, gypsum sand",
}
TABLES = {"iso-10456-2007": building_materials, "ashrae-hof-2013": ASHRAE}


def rows():
    """(material name, row) for every row read in the library, from the files themselves."""
    found = []
    for path in sorted((folder("shared") / "materials").glob("*/*.yaml")):
        content = yaml.safe_load(path.read_text(encoding="utf-8"))
        for row in (*content.get("figures", ()), *content.get("also_published", ())):
            if row.get("via") == "ht-1.2.0":
                found.append(pytest.param(row, id=f"{path.stem}: {row['row']}"))
    return found


def printed(row):
    """What the library prints in that row: our key to figure."""
    table = TABLES[row["source"]]
    line = table[row["row"]]
    if table is building_materials:
        return dict(zip(("density", "conductivity", "specific_heat"), line, strict=True))
    keys = ("density", "specific_heat", "conductivity", "resistance", "at_mm")
    return {key: figure for key, figure in zip(keys, line, strict=True) if figure is not None}


@pytest.mark.parametrize("row", rows())
def test_every_figure_equals_the_row_of_the_library(row):
    figures = ("density", "specific_heat", "conductivity", "resistance", "at_mm")
    taken = {key: row[key] for key in figures if key in row}
    expected = printed(row)
    if row["mark"] == "derived":  # conductivity from a resistance at a thickness
        expected["conductivity"] = expected["at_mm"] / 1000 / expected["resistance"]
    assert taken, "a row from the library holds a figure of the library"
    for key, figure in taken.items():
        assert figure == pytest.approx(expected[key], rel=0.005 if row["mark"] == "derived" else 0)


@pytest.mark.parametrize("row", rows())
def test_no_row_known_to_be_wrong_is_used(row):
    assert row["row"] not in WRONG_ROWS
    if row["row"] in WRONG_CONDUCTIVITY:
        assert "conductivity" not in row


ISO_10456_TABLE_3 = {  # key of the library, written down here a second time: name and row belong together
    "spruce": "Timber, 500 kg/m^3",
    "oak": "Timber, 700 kg/m^3",
    "plywood": "Wood, plywood 500 kg/m^3",
    "osb": "Wood, oriented strand board",
    "particleboard": "Wood, particleboard, 600 kg/m^3",
    "cement-bonded-particleboard": "Wood, cement-bonded particleboard",
    "fibreboard-250": "Wood, fibreboard, 250 kg/m^3",
    "gypsum-board": "Gypsum, plasterboard",
    "gypsum-plaster": "Plasters and renders, gypsum plastering, 1000 kg/m^3",
    "lime-plaster": "Plasters and renders, lime sand",
    "concrete": "Concrete, high density",
    "reinforced-concrete": "Concrete, reinforced with 1% steel",
    "steel-sheet": "Metals, steel",
    "aluminium-sheet": "Metals, aluminium alloys",
    "glass": "Glass, soda lime",
    "slate": "Stone, slate",
    "clay-roof-tile": "Tiles, clay",
    "ceramic-tile": "Tiles, ceramic or porcelain",
    "linoleum": "Floor covering, Linoleum",
    "bitumen-sheet": "Bitumen, felt or sheet",
    "epdm-sheet": "Rubber, ethylene propylene diene monomer (EPDM)",
    "ground-clay": "Solids, clay or silt",
    "ground-sand-gravel": "Solids, sand and gravel",
}


@pytest.mark.parametrize(("name", "key"), ISO_10456_TABLE_3.items())
def test_iso_10456_rows_by_name(name, key):
    one = material(name)
    density, conductivity, specific_heat = building_materials[key]
    assert one.conductivity.value == conductivity
    assert one.density.value == density
    assert one.specific_heat.value == specific_heat
    assert one.conductivity.origin.via == "ht-1.2.0"


ASHRAE_2013 = {
    "mineral-wool-batt": "Mineral fiber",
    "mineral-wool-board": "Mineral wool, felted, 100 kg/m^3",
    "glass-wool-batt": "Glass-fiber batts, 90 mm",
    "cellulose-loose-fill": "Loose fill, Cellulosic",
    "eps": "Expanded polystyrene, molded beads",
    "phenolic-board": "Phenolic foam board with facers, aged",
    "cellular-glass": "Cellular glass",
    "fibre-cement": "Board, Fiber/cement, 1400 kg/m^3",
    "brick": "Brick, fired clay, 1920 kg/m^3",
    "cedar-board": "Western red cedar",
    "stucco": "Cement plaster, sand aggregate",
    "straw-thatch": "Straw thatch",
}


@pytest.mark.parametrize(("name", "key"), ASHRAE_2013.items())
def test_ashrae_rows_by_name(name, key):
    one = material(name)
    density, _, conductivity, *_ = ASHRAE[key]
    assert one.conductivity.value == conductivity
    assert one.density.value == density


def test_the_library_is_wrong_about_cork_tiles_and_the_catalogue_is_not():
    assert building_materials["Floor covering, tiles, cork"][1] == 65.0
    one = material("cork-tile")
    assert one.conductivity.value == 0.065
    assert one.conductivity.origin.mark == "memory"


def test_most_of_the_catalogue_is_checked_here():
    checked = {parameter.id.split(":")[0] for parameter in rows()}
    assert len(checked & set(names())) > 0.7 * len(names())
