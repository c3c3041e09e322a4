"""What `check` and `build` print: places of cautions, what is open, width of lines."""

import json
import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner

from layerfolio.cli import main

ROOT = Path(__file__).parents[2]


def run(*arguments):
    return CliRunner().invoke(main, [str(a) for a in arguments])


@pytest.fixture
def cottage(tmp_path):
    return Path(shutil.copytree(ROOT / "examples" / "straw-cottage", tmp_path / "cottage")) / "project.yaml"


def change(file, old, new):
    text = file.read_text(encoding="utf-8")
    assert old in text
    file.write_text(text.replace(old, new, 1), encoding="utf-8")


def line_of(file, words):
    return next(n for n, line in enumerate(file.read_text(encoding="utf-8").splitlines(), 1) if words in line)


@pytest.mark.parametrize("command", ["check", "build"])
def test_a_caution_has_its_place(cottage, command):
    change(cottage, "basis: rated to NFRC 100", "basis: guess")
    result = run(command, cottage)
    place = f"{cottage}:{line_of(cottage, 'basis: guess')}:12: openings."
    (line,) = [one for one in result.stdout.splitlines() if "guess" in one and place in one]
    assert result.exit_code == 0 and 'rated to NFRC 100' in line


def test_cautions_stand_below_the_problems(cottage):
    change(cottage, "layerfolio: 1", "layerfolio: 1\nstray: 1")
    change(cottage, "documents:", "documents:\n  - {title: Plan, number: P-1, file: no/such.pdf, for: [structure]}")
    result = run("check", cottage)
    assert result.exit_code == 2 and result.stdout == ""
    lines = result.stderr.strip().splitlines()
    last = [one for one in lines if "look again: " in one]
    assert last and lines[-len(last) :] == last
    assert any(one.startswith(f"{cottage}:{line_of(cottage, 'no/such.pdf')}:") and "is not there" in one for one in last)


def test_no_line_of_results_is_wider_than_a_terminal(cottage):
    text = run("check", cottage).stdout.partition("To look at again")[0]
    assert max(map(len, text.splitlines())) <= 100


def test_open_lines_come_first_by_topic(cottage):
    found = json.loads(run("check", cottage, "--format", "json").stdout)["findings"]
    text = " ".join(run("check", cottage).stdout.partition("\nOpen\n")[2].split())
    failing = [one for one in found if one["verdict"] == "does not meet"]
    assert failing and text.startswith("does not meet: ")
    assert all(f"{one['clause']}: {one['question']}" in text for one in failing)
    waiting = [one["topic"] for one in found if one["verdict"] == "needs evidence"]
    topic = waiting[0]
    assert f"needs evidence: {topic} {waiting.count(topic)}" in text


def test_an_amended_limit_names_its_source(cottage):
    ids = [one["id"] for one in json.loads(run("check", cottage, "--format", "json").stdout)["findings"]]
    asked = next(one for one in ids if one.endswith("/fenestration"))
    change(cottage, "amendments: []", f"amendments: [{{requirement: {asked}, value: U-0.20, source: by-law 12}}]")
    assert "limit amended: by-law 12" in " ".join(run("check", cottage).stdout.split())
