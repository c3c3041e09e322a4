"""DXF: millimetres of the building, layers by role, dimensions that measure what they say."""

import importlib.util
from fractions import Fraction

import clothed
import ezdxf
import pictured
import pytest
from readings import areas, texts

import builders
from layerfolio.drawing.clipping import inside, polylines
from layerfolio.drawing.geometry import rectangle
from layerfolio.drawing.marks import Curve, Drawing
from layerfolio.drawing.outputs import NoWriter, draw_to
from layerfolio.drawing.section import section
from layerfolio.drawing.writers import dxf

SHOWN = {
    "wall": lambda: section(clothed.screwed_wall()),
    "upright": lambda: section(clothed.screwed_wall(), view="vertical"),
    "roof": lambda: section(pictured.roof()),
    "slab": lambda: section(pictured.slab()),
    "fourteen": lambda: section(pictured.fourteen()),
}


@pytest.fixture(scope="module")
def read(tmp_path_factory):
    """Each shown drawing, written and read back once."""
    folder, done = tmp_path_factory.mktemp("dxf"), {}

    def get(name: str):
        if name not in done:
            drawing, target = SHOWN[name](), folder / f"{name}.dxf"
            dxf.write(drawing, target)
            done[name] = drawing, ezdxf.readfile(target)
        return done[name]

    return get


@pytest.mark.parametrize("name", SHOWN)
def test_the_file_is_sound_and_says_that_its_unit_is_the_millimetre(read, name):
    _, document = read(name)
    audit = document.audit()
    assert not audit.errors and not audit.fixes
    assert document.header["$INSUNITS"] == 4 and document.header["$MEASUREMENT"] == 1


@pytest.mark.parametrize("name", SHOWN)
def test_dimensions_measure_what_their_figure_says(read, name):
    """In every direction, a slope's too: a figure in millimetres is the length between its two points."""
    _, document = read(name)
    found = document.modelspace().query("DIMENSION")
    assert len(found) >= 4
    for one in found:
        assert one.get_measurement() == pytest.approx(float(Fraction(one.dxf.text)), abs=0.1)


def test_the_chain_adds_up_to_the_overall_dimension(read):
    drawing, document = read("wall")
    figures = [one.text for one in texts(drawing, "thickness")]
    measured = {one.dxf.text: one.get_measurement() for one in document.modelspace().query("DIMENSION")}
    assert sum(measured[one] for one in figures) == pytest.approx(measured["356.7"])


def test_customary_figures_stand_over_true_millimetres(tmp_path):
    """The figure says inches, the dimension measures millimetres: 5 1/2 in are 139.7."""
    assembly = pictured.inches(builders.assembly([pictured.layer(1, "Wool", 140, "batt")]), {1: "5 1/2 in"})
    dxf.write(section(assembly, units="customary"), tmp_path / "a.dxf")
    found = ezdxf.readfile(tmp_path / "a.dxf").modelspace().query("DIMENSION")
    assert {one.dxf.text.partition(" (")[0] for one in found} == {'5 1/2"'}
    assert all(one.get_measurement() == pytest.approx(139.7) for one in found)


@pytest.mark.parametrize("name", SHOWN)
def test_every_material_has_a_layer_that_does_not_print_and_every_mark_a_layer_of_its_role(read, name):
    drawing, document = read(name)
    wanted = {f"LF-MATERIAL-{one.family.upper()}" for one in areas(drawing)}
    there = {one.dxf.name: one.dxf.plot for one in document.layers if one.dxf.name.startswith("LF-MATERIAL")}
    assert set(there) <= wanted and wanted - set(there) <= {"LF-MATERIAL-AIR"} and not any(there.values())
    used = {one.dxf.layer for one in document.modelspace()}
    assert {"LF-CUT", "LF-HATCH", "LF-DIMENSIONS", "LF-TAGS", "LF-TEXT", "LF-LEADERS", "LF-KEY"} <= used
    assert "LF-OTHER" not in used


def test_a_stud_is_as_large_as_it_is_built(read):
    _, document = read("wall")
    timber = [one for one in document.modelspace().query("LWPOLYLINE") if one.dxf.layer == "LF-MATERIAL-TIMBER"]
    sizes = []
    for one in timber:
        xs, ys = zip(*((x, y) for x, y, *_ in one.get_points()), strict=True)
        sizes.append((round(max(xs) - min(xs), 2), round(max(ys) - min(ys), 2)))
    assert (38.0, 184.0) in sizes and (64.0, 38.0) in sizes


def test_lettering_is_two_and_a_half_millimetres_at_the_written_scale(read):
    drawing, document = read("wall")
    assert {round(one.dxf.height / drawing.scale, 2) for one in document.modelspace().query("TEXT")} == {2.5}


def test_the_same_drawing_gives_the_same_bytes(tmp_path):
    for name in ("a", "b"):
        dxf.write(section(pictured.wall()), tmp_path / f"{name}.dxf")
    assert (tmp_path / "a.dxf").read_bytes() == (tmp_path / "b.dxf").read_bytes()


def test_without_the_library_the_message_says_what_to_install(tmp_path, monkeypatch):
    plain = importlib.util.find_spec
    monkeypatch.setattr(importlib.util, "find_spec", lambda name, *rest: None if name == "ezdxf" else plain(name, *rest))
    with pytest.raises(NoWriter, match=r"pip install layerfolio\[dxf\]"):
        draw_to(section(pictured.wall()), tmp_path / "a.dxf")
    assert not list(tmp_path.iterdir())


def test_a_drawing_without_a_scale_is_written_as_it_stands_on_paper(tmp_path):
    drawing = Drawing("key", 20.0, 10.0, (Curve((("M", 1, 1), ("L", 9, 1)), 0.5, role="outline"),))
    dxf.write(drawing, tmp_path / "a.dxf")
    (line,) = ezdxf.readfile(tmp_path / "a.dxf").modelspace()
    assert [tuple(one[:2]) for one in line.get_points()] == [(1, 1), (9, 1)]


class TestClipping:
    box = rectangle(0.0, 0.0, 10.0, 10.0)
    notched = ((0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (6.0, 10.0), (6.0, 4.0), (4.0, 4.0), (4.0, 10.0), (0.0, 10.0))

    def test_a_line_through_an_outline_is_cut_at_both_sides(self):
        assert inside(((-5.0, 5.0), (15.0, 5.0)), [self.box]) == [((0.0, 5.0), (10.0, 5.0))]

    def test_a_notch_leaves_two_pieces_and_bends_stay_joined(self):
        assert inside(((-1.0, 8.0), (11.0, 8.0)), [self.notched]) == [((0.0, 8.0), (4.0, 8.0)), ((6.0, 8.0), (10.0, 8.0))]
        assert inside(((1.0, 1.0), (9.0, 1.0), (9.0, 3.0)), [self.notched]) == [((1.0, 1.0), (9.0, 1.0), (9.0, 3.0))]

    def test_all_outlines_count(self):
        half = rectangle(5.0, 0.0, 20.0, 10.0)
        assert inside(((-5.0, 5.0), (15.0, 5.0)), [self.box, half]) == [((5.0, 5.0), (10.0, 5.0))]
        assert inside(((-5.0, 50.0), (15.0, 50.0)), [self.box]) == []
        assert inside(((-5.0, 50.0), (15.0, 50.0)), []) == [((-5.0, 50.0), (15.0, 50.0))]

    def test_a_bezier_begins_and_ends_where_it_says(self):
        (stroke,) = polylines(Curve((("M", 0, 0), ("C", 0, 5, 10, 5, 10, 0), ("Z",)), 0.2))
        assert stroke[0] == stroke[-1] == (0, 0) and stroke[-2] == pytest.approx((10, 0))
        assert max(y for _, y in stroke) == pytest.approx(3.75)
