"""Findings name a layer by its printed title with its number; the keys of the project file stay in the project file."""

import re
from dataclasses import replace
from pathlib import Path

import pytest

import builders as b
from codes_builders import insulation, of_resistance, only, project, studies
from layerfolio import codes
from layerfolio.codes.naming import by_name, called
from layerfolio.dossier import compile_dossier, open_project

ROOT = Path(__file__).parents[2]
PROJECTS = sorted((ROOT / "examples" / "chandlery").glob("*.yaml")) + sorted(
    (ROOT / "shared" / "starters").glob("*/project.yaml")
)


@pytest.mark.parametrize("path", PROJECTS, ids=lambda one: f"{one.parent.name}/{one.stem}")
def test_no_key_of_a_layer_is_printed(path):
    dossier = compile_dossier(open_project(path))
    keys = {
        x.name for one in dossier.assemblies.values() for x in one.layers if re.search(r"\w-\w", x.name) and x.name != x.title
    }
    assert keys
    for one in dossier.findings:
        text = " ".join((one.asked, one.given, one.reason, one.next_step))
        assert not [key for key in keys if re.search(rf"(?<![\w-]){re.escape(key)}(?![\w-])", text)], text


def test_the_chandlery_names_its_insulation():
    dossier = compile_dossier(open_project(ROOT / "examples" / "chandlery"))
    place = only([one for one in dossier.findings if one.assembly == "W1"], "/vapour-barrier-position")
    assert place.given == "Panel-15, strand board (layer 6), inside Mineral-wool board (layer 4) and Hemp batts (layer 5)"


def titled(layer, title):
    return replace(layer, title=title)


def wall(*layers):
    return studies(of_resistance(0, layers=[replace(one, number=i + 1) for i, one in enumerate(layers)]))


def test_what_is_missing_or_rests_on_memory_is_named_by_title():
    bare = titled(b.layer(2, name="mystery-board", d=0.012), "Mystery board")
    found = only(codes.judge(project(), wall(insulation(5), bare)), "/walls")
    assert found.next_step == "supply a sourced figure for Mystery board (layer 2)"
    guessed = titled(insulation(0.6, name="guessed-board", mark="memory"), "Guessed board")
    found = only(codes.judge(project(), wall(insulation(2.6), guessed)), "/walls")
    assert "Guessed board (layer 2)" in found.next_step and "guessed-board" not in found.reason


def test_a_name_of_no_layer_stands_as_it_is():
    assembly = of_resistance(3)
    assert by_name(assembly, ["batts", "the inside film"]) == ["batts (layer 1)", "the inside film"]
    assert called(titled(assembly.layers[0], "Hemp batts")) == "Hemp batts (layer 1)"
