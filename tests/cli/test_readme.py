"""What the README shows is what the tool does: its YAML is read, its commands and code sets are there."""

import re
from pathlib import Path

import pytest
import yaml
from click.testing import CliRunner

from layerfolio.catalogue.code_sets import set_ids
from layerfolio.cli import main
from layerfolio.dossier import compile_dossier, open_project

ROOT = Path(__file__).parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")
BLOCKS = re.findall(r"^```yaml\n(.*?)^```", README, re.M | re.S)
INLINE = re.findall(r"`(\w+):\s+(\[\{[^`]*\}\])`", README)
HOLDERS = {"evidence": ("materials", "own-board"), "amendments": ("code",), "documents": ()}
REFERENCE = (
    "fasteners", "wall_lines", "panels", "panel_fastening", "ground", "edge_insulation", "site_loads", "indoor", "monthly",
    "openings", "joins", "overhang", "frame_set", "foundation", "storeys", "documents", "sheet_numbers",
)  # fmt: skip


def merged(base, more):
    """As a variant is merged: maps merge, lists replace."""
    if isinstance(base, dict) and isinstance(more, dict):
        return base | {key: merged(base.get(key), value) for key, value in more.items()}
    return more


def written(folder, number):
    """A file of the blocks up to this one, each over those before."""
    made = {}
    for block in BLOCKS[: number + 1]:
        made = merged(made, yaml.load(block, Loader=yaml.BaseLoader))
    path = folder / "project.yaml"
    path.write_text(yaml.safe_dump(made, allow_unicode=True, sort_keys=False), encoding="utf-8")
    return path


def section(title):
    return README.partition(f"## {title}\n")[2].partition("\n## ")[0]


@pytest.mark.parametrize("number", range(len(BLOCKS)))
def test_every_block_is_read_and_calculated_with_those_before(tmp_path, number):
    dossier = compile_dossier(open_project(written(tmp_path, number)))
    assert dossier.thermal["W1"].asked is not None
    stated = yaml.load(BLOCKS[number], Loader=yaml.BaseLoader)
    assert set(stated) <= dossier.project.stated


def test_there_are_blocks_of_yaml_and_none_in_another_dress():
    assert len(BLOCKS) >= 3 and len(re.findall(r"^```ya?ml", README, re.M)) == len(BLOCKS)


def test_a_misspelt_key_of_a_block_would_be_found(tmp_path):
    path = written(tmp_path, len(BLOCKS) - 1)
    text = path.read_text(encoding="utf-8")
    path.write_text(text.replace("panel_fastening", "panel_fastning"), encoding="utf-8")
    result = CliRunner().invoke(main, ["check", str(path)])
    assert result.exit_code == 2 and 'did you mean "panel_fastening"?' in result.stderr


def test_the_whole_of_it_leaves_nothing_to_look_at_that_a_reader_would_copy(tmp_path):
    dossier = compile_dossier(open_project(written(tmp_path, len(BLOCKS) - 1)))
    assert [str(one) for one in dossier.cautions] == []
    assert [one.question for one in dossier.findings if one.verdict == "does not meet"] == []


@pytest.mark.parametrize(("stated", "other"), [
    ("humidity: {class: 2}", "humidity: {relative_humidity: 45 %}"), ("humidity: {class: 2}", "humidity: {continental: normal}"),
    ("spacing: 400 mm, rows_at: 600 mm", "per_area: 5"), ("kind: slab edge", "kind: piers"),
    ("nail: 8d common", "nail: 63 mm x 3.25 mm"),
    ('set: nbc-2020, zone: "6", heat_recovery: true', 'set: irc-2021, zone: "6"'),
    ("wind_pressure_1_50: 0.45 kPa, wind_suction: 1.2 kPa, seismic: {Sa02: 0.3}",
     "wind_speed: 115 mph, exposure: B, seismic: {category: B}"),
])  # fmt: skip
def test_what_a_comment_offers_instead_is_read_too(tmp_path, stated, other):
    words = re.split(r"[{},:]+ ?", other)
    assert stated in BLOCKS[-1] and all(one in README for one in words if one)
    made = {}
    for block in BLOCKS:
        made = merged(made, yaml.load(block.replace(stated, other), Loader=yaml.BaseLoader))
    (tmp_path / "project.yaml").write_text(yaml.safe_dump(made), encoding="utf-8")
    assert compile_dossier(open_project(tmp_path / "project.yaml")).findings


@pytest.mark.parametrize(("key", "value"), INLINE)
def test_examples_within_a_line_are_read(tmp_path, key, value):
    more = {key: yaml.load(value, Loader=yaml.BaseLoader)}
    for holder in reversed(HOLDERS[key]):
        more = {holder: more}
    own = {"materials": {"own-board": {"conductivity": "0.13 W/(m.K)", "permeance": "48 ng/(Pa.s.m2)", "source": "P-15-2"}}}
    whole = merged(
        merged(yaml.load(written(tmp_path, len(BLOCKS) - 1).read_text(encoding="utf-8"), Loader=yaml.BaseLoader), own), more
    )
    (tmp_path / "project.yaml").write_text(yaml.safe_dump(whole), encoding="utf-8")
    assert compile_dossier(open_project(tmp_path / "project.yaml")).findings


def test_every_inline_example_has_its_holder():
    assert {key for key, _ in INLINE} == set(HOLDERS)


def test_the_reference_fits_a_screen_and_holds_its_keys():
    block = re.search(r"```yaml\n(.*?)```", section("Keys by example"), re.S)[1]
    assert [key for key in REFERENCE if f"{key}:" not in block] == []
    assert block.count("\n") <= 60 and max(map(len, block.splitlines())) <= 140


def test_no_command_is_promised_that_is_not_there():
    lines = re.findall(r"^layerfolio (\w+)(.*)$", section("Commands").partition("```")[2].partition("```")[0], re.M)
    assert {name for name, _ in lines} <= set(main.commands) and len(lines) >= 5
    for name, rest in lines:
        known = {option for one in main.commands[name].params for option in one.opts}
        assert set(re.findall(r"--\w+", rest)) <= known
    named = set(re.findall(r"`layerfolio (\w+)", README))
    assert named <= set(main.commands)


def test_every_code_set_stands_in_its_table_and_no_other():
    assert set(re.findall(r"`((?:nbc|bc|qc|irc|iso)[\w-]*)`", section("Code sets"))) == set(set_ids())
