"""The building section with its schedule, and the sheets of the junctions, for every example."""

import re
from dataclasses import replace
from pathlib import Path

import pytest

from layerfolio.assembly.junction_types import Link
from layerfolio.dossier import compile_dossier, documented, open_project
from layerfolio.drawing.marks import Clip, Group, Text
from layerfolio.sheets.as_text import as_text
from layerfolio.sheets.blocks import Figure, Table
from layerfolio.sheets.desk import Desk
from layerfolio.sheets.junction_sheets import junction_sheets

EXAMPLES = Path(__file__).parents[2] / "examples"
NAMES = ["chandlery", "straw-cottage", "net-loft"]


@pytest.fixture(scope="module", params=NAMES)
def dossier(request):
    return documented(compile_dossier(open_project(EXAMPLES / request.param)))


def schedule(sheet):
    return next(one for one in sheet.blocks if isinstance(one, Table))


def words(sheet):
    figure = next(one for one in sheet.blocks if isinstance(one, Figure))
    found, left = [], list(figure.drawing.marks)
    while left:
        mark = left.pop()
        if isinstance(mark, Group | Clip):
            left += mark.marks
        elif isinstance(mark, Text):
            found.append(mark.text)
    return found


def test_every_junction_has_a_head_in_the_schedule_and_a_sheet_of_its_own(dossier):
    sheets = junction_sheets(Desk(dossier))
    heads = [row.cells[0] for row in schedule(sheets[0]).rows if row.head]
    assert len(heads) == len(dossier.junctions)
    drawn = [one for one in dossier.junctions if not one.cannot]
    assert [one.number for one in sheets] == ["D0", *(f"D{one.number}" for one in drawn)]
    for head, junction in zip(heads, dossier.junctions, strict=True):
        assert junction.title.split(":")[0] in head
        assert f"D{junction.number}" in head or junction.cannot


def test_the_schedule_has_a_row_for_each_control_and_names_layers_by_number(dossier):
    rows = [row for row in schedule(junction_sheets(Desk(dossier))[0]).rows if not row.head]
    assert len(rows) == sum(max(1, len(one.links)) for one in dossier.junctions)
    wall = dossier.assemblies["W1"]
    for row in rows:
        for number in re.findall(r"\bW1\.(\d+)", " ".join(row.cells[1:3])):
            assert 1 <= int(number) <= len(wall.layers)


def test_bubbles_of_the_section_lead_to_sheets_that_exist(dossier):
    sheets = junction_sheets(Desk(dossier))
    named = {one for one in words(sheets[0]) if re.fullmatch(r"D\d+", one)}
    assert named and named <= {one.number for one in sheets}


def test_a_detail_says_what_it_adds_and_claims_nothing(dossier):
    for sheet in junction_sheets(Desk(dossier))[1:]:
        text = as_text(sheet)
        assert "as commonly built" in text or "drawn as a sign" in text or "sign of its kind" in text
        assert not re.search(r"\b(None|nan|approved|complies|guarantee)", text)
        assert sheet.scale != "—"


def test_a_control_that_stops_is_bold_in_the_schedule_and_marked_in_the_drawing():
    dossier = documented(compile_dossier(open_project(EXAMPLES / "chandlery")))
    first = dossier.junctions[0]
    stopped = {one.letter: Link(one.letter, one.start, None, broken="no layer of S1 serves it") for one in first.links}
    links = tuple(stopped[one.letter] if one.letter in "AV" else one for one in first.links)
    broken = replace(dossier, junctions=(replace(first, links=links), *dossier.junctions[1:]))
    sheets = junction_sheets(Desk(broken))
    rows = [row.cells[3] for row in schedule(sheets[0]).rows if not row.head]
    assert sum("**does not pass**" in one for one in rows) == 2
    assert any("no layer of S1" in one or "serves it" in one for one in words(sheets[1]))
    whole = junction_sheets(Desk(dossier))
    assert not any("does not pass" in row.cells[-1] for row in schedule(whole[0]).rows)


def test_a_project_whose_assemblies_do_not_meet_has_none():
    dossier = documented(compile_dossier(open_project(EXAMPLES / "chandlery")))
    assert junction_sheets(Desk(replace(dossier, junctions=()))) == []
