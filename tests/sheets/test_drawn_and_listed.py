"""What a section shows stands in the layer table and in the legend, for every assembly of every example, in both views."""

from pathlib import Path

import pytest

from layerfolio.catalogue.hatches import printed_name
from layerfolio.dossier import compile_dossier, open_project
from layerfolio.drawing.legend import CONTROL_WORDS, SIGN_WORDS, legend
from layerfolio.drawing.marks import Area, Clip, Group, Text
from layerfolio.drawing.section import section
from layerfolio.sheets.layer_table import layer_table
from layerfolio.sheets.source_book import SourceBook

ROOT = Path(__file__).parents[2]
DOSSIERS = {
    f"{path.parent.name}/{path.stem}": compile_dossier(open_project(path))
    for path in sorted(ROOT.glob("examples/*/*.yaml"))
    if path.stem in ("project", "customary", "fixed")
}
CASES = [
    (name, assembly, view) for name, one in DOSSIERS.items() for assembly in one.assemblies
    for view in ((None, "vertical") if one.assemblies[assembly].kind == "wall" else (None,))
]  # fmt: skip


def flat(marks):
    for mark in marks:
        yield from flat(mark.marks) if isinstance(mark, Clip | Group) else [mark]


@pytest.mark.parametrize(("name", "assembly", "view"), CASES)
def test_every_material_that_is_drawn_is_in_the_table_and_in_the_legend(name, assembly, view):
    dossier = DOSSIERS[name]
    one = dossier.assemblies[assembly]
    drawing = section(one, units=dossier.system, view=view)
    table = layer_table(dossier.thermal[assembly], dossier.vapour[assembly], dossier.system, SourceBook())
    listed = {row.cells[0] for row in table.rows}
    shown = [mark for mark in flat(legend(drawing.families, 180.0, controls=True).marks) if isinstance(mark, Text)]
    words = {mark.text for mark in shown}
    drawn = [mark for mark in flat(drawing.marks) if isinstance(mark, Area)]
    assert {area.layer.partition("/")[0] for area in drawn} == {layer.name for layer in one.layers}
    for area in drawn:
        layer, _, member = area.layer.partition("/")
        assert f"{one.layer(layer).number}{'a' if member else ''}" in listed
        assert area.family == "air" or printed_name(area.family) in words, area.family


@pytest.mark.parametrize(("name", "assembly", "view"), CASES)
def test_every_sign_that_is_drawn_is_in_the_legend(name, assembly, view):
    dossier = DOSSIERS[name]
    drawing = section(dossier.assemblies[assembly], units=dossier.system, view=view)
    roles = {getattr(mark, "role", "") for mark in flat(drawing.marks)}
    words = {mark.text for mark in flat(legend(drawing.families, 180.0, controls=True).marks) if isinstance(mark, Text)}
    for role, sign in (("fastener", "fastener"), ("tape", "tape")):
        assert (role in roles) == (SIGN_WORDS[sign] in words)
    named = words - set(SIGN_WORDS.values())
    for letter, word in CONTROL_WORDS.items():
        assert (f"control letter {letter}" in roles) == (word in named)
