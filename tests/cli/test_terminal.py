"""What `check` and `build` print: places of cautions, what is open, width of lines."""

import json
import re
import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner

from codes_builders import finding
from layerfolio.cli import main
from layerfolio.codes.findings import Verdict
from layerfolio.codes.left_to_do import Kind, left_to_do
from layerfolio.dossier import compile_dossier, open_project
from layerfolio.terminal import FIRST, first_answers

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


class TestFirst:
    """The keys to answer first stand at the end, those that most lines wait for on top."""

    @staticmethod
    def listed(text):
        """(number of lines, words) of the list."""
        rows = text.partition("\nAnswer these first\n")[2].partition("\n\n")[0]
        return [(int(n), " ".join(words.split())) for n, words in re.findall(r"^ {2}(\d+) lines?: (.+(?:\n {4}.+)*)", rows, re.M)]

    def test_it_stands_before_the_count_of_verdicts(self, cottage):
        change(cottage, "basis: rated to NFRC 100", "basis: guess")
        text = run("check", cottage).stdout
        head, found, tail = text.partition("\nAnswer these first\n")
        assert found and "To look at again" in head
        assert tail.partition("\n\n")[2].startswith("meets ") and tail.rstrip().endswith("have the final say.")

    @pytest.mark.parametrize("example", ["chandlery", "straw-cottage", "net-loft"])
    def test_it_holds_what_most_lines_wait_for(self, example):
        folder = ROOT / "examples" / example
        wishes = [one for one in left_to_do(compile_dossier(open_project(folder)).findings) if one.kind is Kind.ANSWER]
        rows = self.listed(run("check", folder).stdout)
        assert len(rows) == min(len(wishes), FIRST) and [n for n, _ in rows] == sorted((n for n, _ in rows), reverse=True)
        by_words = {one.words: len(one.lines) for one in wishes}
        shown = {words.rpartition(" (")[0]: n for n, words in rows}
        assert all(by_words[words] == n for words, n in shown.items()), shown
        assert all(n <= min(shown.values()) for words, n in by_words.items() if words not in shown)

    def test_a_key_that_is_answered_leaves_it(self, cottage):
        before = run("check", cottage).stdout
        assert any("building.absent" in words and "alternative solutions" in words for _, words in self.listed(before))
        change(cottage, "building:\n", "building:\n  absent: [alternative solutions]\n")
        assert not any("building.absent" in words for _, words in self.listed(run("check", cottage).stdout))

    def test_many_are_cut_and_the_rest_counted(self, tmp_path):
        findings = [finding(Verdict.NEEDS_JUDGEMENT, f"state key_{n}") for n in range(FIRST + 3)]
        lines = first_answers(findings)
        assert len(lines) == FIRST + 3 and lines[-1].strip().startswith("3 more")
        assert first_answers(findings[:FIRST])[-1].strip().startswith("1 line: ")
        assert first_answers([finding(Verdict.MEETS, "")]) == []
