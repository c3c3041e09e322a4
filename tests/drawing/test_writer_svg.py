"""The SVG writer: millimetres, y downward, text as text, patterns written once, names that are valid and unique."""

import pytest
from rendering import SVG, svg_paths, svg_root

from layerfolio.drawing import font
from layerfolio.drawing.geometry import rectangle
from layerfolio.drawing.hatches import FAMILIES, swatch
from layerfolio.drawing.marks import Area, Circle, Clip, Curve, Drawing, Group, Line, Stipple, Text
from layerfolio.drawing.writers import svg

XLINK = "{http://www.w3.org/1999/xlink}href"


def body(*marks, height=50):
    return svg_root(svg.write(Drawing("one", 100, height, marks))).find(f"{SVG}g")


def test_size_is_in_millimetres_and_so_is_the_view_box():
    root = svg_root(svg.write(Drawing("one", 184.5, 90, ())))
    assert (root.get("width"), root.get("height")) == ("184.5mm", "90mm")
    assert [float(one) for one in root.get("viewBox").replace(",", " ").split()] == [0, 0, 184.5, 90]


def test_y_is_turned_over():
    line = Line(((10, 20), (90, 45)), 0.5)
    assert svg_paths(svg.write(Drawing("one", 100, 50, (line,))), 50) == [[(10, 20), (90, 45)]]
    assert body(line).find(f"{SVG}path").get("d") == "M10 30L90 5"


def test_pens():
    line = body(Line(((0, 0), (9, 0)), 0.7, dash=(5, 1.2), halo=0.45)).findall(f"{SVG}path")
    assert [(one.get("stroke"), one.get("stroke-width")) for one in line] == [("white", "1.6"), ("black", "0.7")]
    assert [one.get("stroke-dasharray") for one in line] == [None, "5 1.2"]
    assert line[1].get("stroke-linecap") is None  # butt ends
    assert body(Line(((0, 0), (9, 0)), 0.7, round_ends=True)).find(f"{SVG}path").get("stroke-linecap") == "round"


def test_a_closed_line_is_closed():
    box = rectangle(1, 1, 5, 5)
    assert body(Line((*box, box[0]), 0.5)).find(f"{SVG}path").get("d").endswith("Z")


def test_curves_and_circles():
    curve = body(Curve((("M", 0, 0), ("C", 1, 1, 2, 1, 3, 0), ("Z",)), 0.25, "white")).find(f"{SVG}path")
    assert (curve.get("d"), curve.get("fill")) == ("M0 50C1 49 2 49 3 50Z", "white")
    ring, dot = body(Circle((5, 5), 2.9, 0.35, "white"), Circle((5, 5), 0.55, fill="black")).findall(f"{SVG}circle")
    assert (ring.get("cy"), ring.get("r"), ring.get("stroke-width"), ring.get("fill")) == ("45", "2.9", "0.35", "white")
    assert (dot.get("stroke"), dot.get("fill")) == (None, "black")


def test_an_area_paints_nothing():
    assert list(body(Area(rectangle(0, 0, 1, 1), "hemp", "batt"))) == []


@pytest.mark.parametrize(("anchor", "share"), [("start", 0), ("middle", 0.5), ("end", 1)])
def test_text_is_text_with_its_measured_width(anchor, share):
    text = body(Text((50, 10), "Hemp <184> & more", anchor=anchor, style="bold oblique")).find(f"{SVG}text")
    wide = font.width("Hemp <184> & more", 9.72, "bold oblique")
    assert text.text == "Hemp <184> & more"
    assert float(text.get("textLength")) == pytest.approx(wide, abs=0.001)
    assert float(text.get("x")) == pytest.approx(50 - share * wide, abs=0.001)
    assert text.get("y") == "40"
    assert "DejaVu Sans Condensed" in text.get("font-family")
    assert float(text.get("font-size")) == pytest.approx(9.72 * 25.4 / 72, abs=0.001)
    assert (text.get("font-weight"), text.get("font-style")) == ("bold", "oblique")


def test_spaced_letters_stand_each_at_its_own_place():
    text = body(Text((50, 10), "OUT", anchor="middle", spaced=3)).find(f"{SVG}text")
    places = [float(one) for one in text.get("x").replace(",", " ").split()]
    letter, space = font.width("O", 9.72), 3 * 25.4 / 72
    assert places[0] == pytest.approx(50 - font.width("OUT", 9.72, spaced=3) / 2, abs=0.001)
    assert places[1] - places[0] == pytest.approx(letter + space, abs=0.002)


def test_a_text_box_is_painted_before_its_text():
    box, text = body(Text((50, 10), "600", turn=90, box=0.6))
    assert box.get("fill") == "white" and box.tag == f"{SVG}path"
    assert text.get("transform") == "rotate(-90 50 40)"


def test_control_characters_do_not_break_the_document():
    assert body(Text((5, 5), "a\x07\x00b\u202e")).find(f"{SVG}text").text == "ab"
    assert list(body(Text((5, 5), "\x07"))) == []


def test_names_of_groups_are_valid_and_unique():
    groups = (Group("control W", ()), Group("control W", ()), Group("3 «hemp»", ()), Group("", ()))
    names = [one.get("id") for one in body(*groups)]
    assert names == ["control-W", "control-W-2", "part-3--hemp", "part"]


def test_a_clip_names_its_outline():
    text = svg.write(Drawing("one", 100, 50, (Clip(rectangle(0, 0, 5, 5), (Line(((0, 0), (9, 9)), 0.2),)),)))
    root = svg_root(text)
    (clip,) = root.iter(f"{SVG}clipPath")
    assert root.find(f"{SVG}g").find(f"{SVG}g").get("clip-path") == f"url(#{clip.get('id')})"
    assert clip.find(f"{SVG}path").get("d") == "M0 50L5 50L5 45L0 45Z"


def test_a_tile_is_written_once_and_placed_often():
    box = rectangle(0, 0, 40, 40)
    text = svg.write(Drawing("one", 100, 50, (Stipple(box, "gravel"), Stipple(box, "gravel", (3, 4), 30.0))))
    root = svg_root(text)
    patterns = {one.get("id"): one for one in root.iter(f"{SVG}pattern")}
    full = [one for one in patterns.values() if len(one)]
    placed = [one for one in patterns.values() if not len(one)]
    assert len(full) == 1 and len(placed) == 2
    assert all(one.get(XLINK) == f"#{full[0].get('id')}" for one in placed)
    assert placed[1].get("patternTransform") == "translate(3 46) rotate(-30) translate(0 -24)"
    fills = [one.get("fill") for one in root.find(f"{SVG}g")]
    assert fills == [f"url(#{one.get('id')})" for one in placed]


def test_the_same_drawing_gives_the_same_text_and_every_name_leads_somewhere():
    drawing = Drawing("all", 100, 50, tuple(mark for family in FAMILIES for mark in swatch(family, 40, 40)))
    text = svg.write(drawing)
    assert text == svg.write(drawing)
    names = {one.get("id") for one in svg_root(text).iter() if one.get("id")}
    used = {part.split(")")[0] for part in text.split("url(#")[1:]}
    assert used and used <= names
