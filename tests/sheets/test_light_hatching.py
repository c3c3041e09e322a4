"""A project may ask for lighter hatching: the same drawings with fewer strokes, and nothing else changed."""

from dataclasses import replace
from pathlib import Path

from layerfolio.dossier import compile_dossier, documented, open_project
from layerfolio.drawing.marks import Area, Clip, Curve, Group, Line, Text
from layerfolio.sheets.assembly_sheets import assembly_sheet
from layerfolio.sheets.blocks import Figure
from layerfolio.sheets.desk import Desk
from layerfolio.sheets.junction_sheets import junction_sheets

CHANDLERY = Path(__file__).parents[2] / "examples" / "chandlery"


def marks(sheet, kinds):
    left, found = [one.drawing for one in sheet.blocks if isinstance(one, Figure)], []
    left = [mark for drawing in left for mark in drawing.marks]
    while left:
        mark = left.pop()
        if isinstance(mark, Group | Clip):
            left += mark.marks
        elif isinstance(mark, kinds):
            found.append(mark)
    return found


class Light:
    """A dossier whose project asks for light hatching."""

    def __init__(self, dossier):
        self._dossier = dossier
        self.project = _With(dossier.project, project=_With(dossier.project.project, hatch="light"))

    def __getattr__(self, name):
        return getattr(self._dossier, name)


class _With:
    def __init__(self, record, **over):
        self._record = record
        self.__dict__.update(over)

    def __getattr__(self, name):
        return getattr(self._record, name)


def ink(sheet):
    """Points of all hatch strokes."""
    strokes = [one for one in marks(sheet, Line | Curve) if "hatch" in one.role]
    return sum(len(one.points) if isinstance(one, Line) else len(one.commands) for one in strokes)


def test_strokes_are_fewer_and_words_and_outlines_stay():
    dossier = documented(compile_dossier(open_project(CHANDLERY)))
    pairs = [
        (assembly_sheet(Desk(dossier), "W1"), assembly_sheet(Desk(Light(dossier)), "W1")),
        *zip(junction_sheets(Desk(dossier))[1:3], junction_sheets(Desk(Light(dossier)))[1:3], strict=True),
    ]
    for full, light in pairs:
        assert ink(light) < 0.8 * ink(full)
        for kind in (Text, Area):
            assert sorted(map(repr, marks(full, kind))) == sorted(map(repr, marks(light, kind)))


def test_full_hatching_is_what_a_project_gets_that_says_nothing():
    dossier = compile_dossier(open_project(CHANDLERY))
    assert dossier.project.project.hatch == "full" and not Desk(dossier).is_light
    assert replace(dossier).project.project.hatch == "full"
