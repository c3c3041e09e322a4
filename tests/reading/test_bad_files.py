"""Files that a person or a broken editor can produce: refused with a reason and a place, never a traceback."""

import os

import pytest
from workbench import PROJECT, problems, read, unmark, write

from layerfolio.problems import ProblemsFound
from layerfolio.reading.nodes import MOST_VALUES, compose

TEXTS = [
    ("", (1, 1), "the file is empty"),
    ("# only a remark\n\n", (1, 1), "the file is empty"),
    ("---\n", (1, 1), "the file is empty"),
    ("»- a\n- b\n", None, "the file must hold keys with values"),
    ("»just words\n", None, "the file must hold keys with values"),
    ("project:\n»\ttitle: x\n", None, "a tab cannot indent a line"),
    ("project:\n  title: x\n»\tlocation: y\n", None, "a tab cannot indent a line"),
    ("a: »[1, 2\nb: 3\n", None, "the bracket that opens here is not closed by ]"),
    ("a: »{b: 1, c: [2, 3]\n", None, "the bracket that opens here is not closed by }"),
    ("a: »{b: 1 c: 2}\n", None, "or a comma is missing, before line 1, column 11"),
    ("a: [\n", (2, 1), "the file ends here, and a value or a closing bracket is missing"),
    ("a: »]\n", None, "a bracket closes that was never opened"),
    ("a: 1\n»---\nb: 2\n", None, "a second document begins here"),
    ("a: 1\n...\n»---\nb: 2\n", None, "a second document begins here"),
    ("a: 1\n»a: 2\n", None, 'the key "a" stands twice (first in line 1)'),
    ("a:\n  b: 1\n  c: 2\n  »b: 3\n", None, 'the key "b" stands twice (first in line 2)'),
    ("a: {b: 1, »b: 2}\n", None, 'the key "b" stands twice'),
    ("a: »!!python/object/apply:os.system [ls]\n", None, "has no meaning here"),
    ("a: »!secret x\n", None, 'the tag "!secret" has no meaning here'),
    ("a: »!!str 5\n", None, "has no meaning here"),
    ("a: »!e!x 5\n", None, "a tag (a word with !) has no meaning here"),
    ("a: &x {b: 1}\nc:\n  »<<: *x\n", None, "merge keys (<<) are not read"),
    ("a: »*x\n", None, "nothing is named &x above this place"),
    ("a: &x\n  b: »*x\n", None, "*x stands inside itself"),
    ("a: &x [1, [2, »*x]]\n", None, "*x stands inside itself"),
    ("? »[a, b]\n: c\n", None, "a key must be a plain word"),
    ("»{a: b}: c\n", None, "a key must be a plain word"),
    ("a: b»: c\n", None, "a colon is not expected here"),
    ("title: 'x\nb: c\n", (1, 8), "a quotation mark that opens here is never closed"),
    ("unit: »%\n", None, "a text cannot begin with %: put it in quotes"),
    ("unit: »@x\n", None, "a text cannot begin with @: put it in quotes"),
    ("a: 1\n »b: 2\n", (2, 3), "a colon is not expected here"),
    ('a: "»\\q"\n', None, "a backslash stands in double quotes"),
    ("a: x»\x07y\n", None, "the control character U+0007 stands in the text"),
    ("é: ü»\x00\n", None, "the control character U+0000 stands in the text"),
    ("a:\n  - b\n  »c: d\n", None, "indentation"),
    ('a: »"Tern Point\nb: "Lot 7"\n', None, "a quotation mark that opens here is never closed"),
    ("a: »'Tern Point\nb: ship's shop\nc: 'x'\n", None, "a quotation mark that opens here is never closed"),
    ('# it\'s\na: "two\n  lines"\nb: »"Tern\nc: {d: "Lot"}\n', None, "a quotation mark that opens here is never"),
    ('- {a: »"larch, b: 1}\n- {a: "x", b: 1}\n', None, "a quotation mark that opens here is never closed"),
    ("a: 'ship»'s chandlery'\nb: c\n", None, "an apostrophe ends a text in single quotes"),
    ('a: "a 6»"x wall"\nb: c\n', None, "a quotation mark ends a text in double quotes"),
    ('a: "Tern" »Point\nb: c\n', None, "text stands after the closing quotation mark"),
    ("p:\n  »title Tern Point\n  location: Lot\n", None, "a key stands without its colon"),
    ("p:\n  title: x\n  »location Lot\n", None, "a key stands without its colon"),
    ("p:\n  title: x\n  »location Lot\n\n  # remark\n  owner: y\n", None, "a key stands without its colon"),
    ("a: 1\n»project\nb:\n  c: d\n", None, "a key stands without its colon"),
    ("a:\n  - »material spruce\n    thickness: 38 mm\n", None, "a key stands without its colon"),
    ("p:\n  title»:Tern\n  location: Lot\n", None, "a space is missing after the colon"),
    ("p:\n»\u00a0\u00a0title: x\n", None, "U+00A0 (no-break space) stands here"),
    ("p:\n  title: x\n »\u00a0location: Lot\n", None, "U+00A0 (no-break space) stands here"),
    ("p:\n  title:»\u00a0x\n  location: Lot\n", None, "U+00A0 (no-break space) stands here"),
    ("p:\n»\u3000title: x\n", None, "U+3000 (ideographic space) stands here"),
    ("a: »& co\nb: c\n", None, "a text cannot begin with &: put it in quotes"),
    ("a: »*studio*\nb: c\n", None, "a text cannot begin with *: put it in quotes"),
    ("a: »*studio\nb: c\n", None, "put a text that begins with * in quotes"),
    ("a: »| x\nb: c\n", None, "a text cannot begin with |: put it in quotes"),
    ("a: »- x\nb: c\n", None, "a text cannot begin with -: put it in quotes"),
    ("a: [draft] »house\nb: c\n", None, "text stands after the closing bracket"),
    ("x: " + "[" * 39 + "»[" + "]" * 40 + "\n", None, "nested more than 40 deep"),
]


@pytest.mark.parametrize(("text", "place", "message"), TEXTS)
def test_texts_that_are_no_project(tmp_path, text, place, message):
    text, places = unmark(text)
    found = problems(write(tmp_path, text))
    assert len(found) == 1, found
    assert (found[0].line, found[0].column) == (place or places[0])
    assert message in found[0].message


def test_every_repeated_key_is_reported_at_once():
    with pytest.raises(ProblemsFound) as caught:
        compose("a: 1\na: 2\nb: {c: 1, c: 2}\nb: 3\n", "x.yaml")
    assert [(p.line, p.column, p.path) for p in caught.value.problems] == [(2, 1, "a"), (3, 11, "b.c"), (4, 1, "b")]


def test_an_alias_bomb_is_refused_before_it_is_unfolded(tmp_path):
    lines = ["a0: &a0 [x, x, x, x, x, x, x, x, x, x]"]
    lines += [f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 10)}]" for n in range(1, 12)]
    (found,) = problems(write(tmp_path, "\n".join(lines) + "\n"))
    assert found.line == 5 and f"more than {MOST_VALUES} values" in found.message


def test_plain_aliases_are_read(tmp_path):
    text = PROJECT.replace("surfaces: {inside: 0.13 m2.K/W", "surfaces: {inside: &film 0.13 m2.K/W").replace(
        "0.04 m2.K/W", "*film"
    )
    loaded = read(write(tmp_path, text))
    assert loaded.project.assemblies["W1"].surfaces.outside.value == 0.13


def test_many_values_are_refused(tmp_path):
    (found,) = problems(write(tmp_path, "a: [" + "1, " * (MOST_VALUES + 5) + "]\n"))
    assert "more than 20000 values" in found.message


@pytest.mark.parametrize("opening", ["[", "{a: ", "- ", "? "])
def test_very_deep_nesting_is_refused_quickly(tmp_path, opening):
    (found,) = problems(write(tmp_path, opening * (900_000 // len(opening))))
    assert "nested more than 40 deep" in found.message or "a key must be a plain word" in found.message


def test_over_one_megabyte(tmp_path):
    (found,) = problems(write(tmp_path, PROJECT + "# " + "x" * 1_000_000))
    assert "larger than 1 MB" in found.message and found.line == 0


def test_not_utf8(tmp_path):
    (found,) = problems(write(tmp_path, PROJECT.replace("Tern Point chandlery", "Térn").encode("latin-1")))
    assert "not UTF-8" in found.message and (found.line, found.column) == (3, 11)
    (found,) = problems(write(tmp_path, PROJECT.encode("utf-16")))
    assert "not UTF-8" in found.message


def test_byte_order_mark_and_line_ends_are_accepted(tmp_path):
    assert read(write(tmp_path, b"\xef\xbb\xbf" + PROJECT.encode())).project.project.title == "Tern Point chandlery"
    assert read(write(tmp_path, PROJECT.replace("\n", "\r\n"))).project.project.revision == "A"


def test_paths_that_are_no_project(tmp_path):
    (found,) = problems(tmp_path / "none.yaml")
    assert "there is no such file" in found.message and "none.yaml" in found.file
    (found,) = problems(tmp_path)
    assert "the folder holds no project.yaml" in found.message
    (tmp_path / "project.yaml").mkdir()
    (found,) = problems(tmp_path)
    assert "this is not a file" in found.message
    (found,) = problems(tmp_path / ("x" * 5000))
    assert "cannot be read" in found.message
    (found,) = problems(tmp_path / "a\x00b")
    assert "cannot be read" in found.message and "\x00" not in str(found)
    os.mkfifo(tmp_path / "pipe")
    (found,) = problems(tmp_path / "pipe")
    assert "this is not a file" in found.message


def test_a_folder_without_project_yaml_names_the_files_it_has(tmp_path):
    for name in ("shop.yaml", "barn.yml", "notes.txt"):
        write(tmp_path, PROJECT, name)
    (found,) = problems(tmp_path)
    assert 'the folder holds no project.yaml; it holds "barn.yml", "shop.yaml"' in found.message
    assert found.example == f"layerfolio check {tmp_path / 'barn.yml'}"


def test_a_folder_stands_for_its_project_file(tmp_path):
    path = write(tmp_path, PROJECT)
    assert read(tmp_path).project == read(path).project


def test_a_problem_prints_as_file_line_column_path_message_example(tmp_path):
    path = write(tmp_path, PROJECT.replace("area: 58 m2", "area: 58"))
    (found,) = problems(path)
    expected = f"{path}:52:11: assemblies.W1.area: the bare number 58 needs its unit (for example: 58 m2)"
    assert str(found) == expected


@pytest.mark.parametrize(
    ("value", "example"),
    [("& co", '"& co"'), ("*studio*", '"*studio*"'), ('@ the "Tern"', "'@ the \"Tern\"'"), ("%  # share", '"%"')],
)
def test_the_example_is_the_persons_own_text_in_quotes(value, example):
    with pytest.raises(ProblemsFound) as caught:
        compose(f"title: {value}\nb: c\n", "x.yaml")
    (found,) = caught.value.problems
    assert found.example == example and compose(f"title: {example}\n", "x.yaml").items["title"].text in value


@pytest.mark.parametrize("value", ["Studio #4", "Studio # 4", "Studio #four"])
def test_a_text_cut_off_by_a_comment_sign_is_a_caution(tmp_path, value):
    loaded = read(write(tmp_path, PROJECT.replace("title: Tern Point chandlery", f"title: {value}")))
    (found,) = [one for one in loaded.cautions if one.path == "project.title"]
    assert "in quotes" in found.message and value[7:] in found.message


@pytest.mark.parametrize("value", ["Studio  # prints on every sheet", '"Studio #4"', "Studio#4", "Studio ## x", '"A"  #4'])
def test_ordinary_comments_and_quoted_texts_are_no_caution(tmp_path, value):
    loaded = read(write(tmp_path, PROJECT.replace("title: Tern Point chandlery", f"title: {value}")))
    assert [one for one in loaded.cautions if one.path == "project.title"] == []


def test_a_large_file_with_a_mistake_is_refused_quickly(tmp_path):
    rows = "".join(f'k{n}: ["a", \'b\', {{c: "d"}}]\n' for n in range(3000))
    (found,) = problems(write(tmp_path, rows + 'x: "Tern\ny: "Point"\n'))
    assert (found.line, found.column) == (3001, 4)
