"""Sizes that a project states twice: each statement that leaves the other raises a caution, both sides of five per cent."""

from pathlib import Path

import pytest

from layerfolio.dossier import compile_dossier, open_project

CHANDLERY = (Path(__file__).parents[2] / "examples" / "chandlery" / "project.yaml").read_text(encoding="utf-8")


def cautions(folder, *changes):
    text = CHANDLERY
    for old, new in changes:
        assert text.count(old) == 1, old
        text = text.replace(old, new)
    path = folder / "project.yaml"
    path.write_text(text, encoding="utf-8")
    return [one for one in compile_dossier(open_project(path)).cautions if "lines of bracing" in one.message]


def test_the_example_agrees_with_itself(tmp_path):
    assert cautions(tmp_path) == []


@pytest.mark.parametrize(("old", "new", "path"), [
    ("area: 65 m2", "area: 54 m2", "assemblies.W1.area"),
    ("at: eave, of: [W1, R1], length: 19.2 m", "at: eave, of: [W1, R1], length: 16 m", "joins[1].length"),
    ("at: sill, of: [W1, S1], length: 29 m", "at: sill, of: [W1, S1], length: 24 m", "joins[0].length"),
])  # fmt: skip
def test_a_size_that_leaves_the_lines_is_named(tmp_path, old, new, path):
    (one,) = cautions(tmp_path, (old, new))
    assert one.path == path and "W1" in one.message


@pytest.mark.parametrize(("area", "seen"), [("54.6 m2", 0), ("54.5 m2", 1)])
def test_five_per_cent_of_the_wall(tmp_path, area, seen):
    """29 m by 2.4 m is 69.6 m2, 95 % of it 66.12 m2; openings take 11.57 m2."""
    assert len(cautions(tmp_path, ("area: 65 m2", f"area: {area}"))) == seen


@pytest.mark.parametrize("length", ["9.8 m", "29 m", "19.0 m"])
def test_an_eave_may_run_along_either_direction_or_all_round(tmp_path, length):
    assert cautions(tmp_path, ("[W1, R1], length: 19.2 m", f"[W1, R1], length: {length}")) == []
