"""The PDF writer: the same geometry as the SVG, embedded fonts, identical bytes, nothing that leaks."""

import io

import pypdfium2
import pytest
from pypdf import PdfReader
from rendering import PER_MM, pdf_bytes, pdf_paths, pixels, svg_paths
from reportlab.pdfgen.canvas import Canvas

from layerfolio.drawing import font
from layerfolio.drawing.geometry import moved, rectangle
from layerfolio.drawing.hatches import FAMILIES, hatch, swatch
from layerfolio.drawing.marks import Area, Circle, Clip, Curve, Drawing, Group, Line, Mark, Stipple, Text
from layerfolio.drawing.writers import pdf, svg
from layerfolio.drawing.writers.fonts_pdf import NAMES, register

LEGEND = Drawing(
    "legend",
    180,
    30,
    tuple(
        moved(mark, by=(3 + number % 12 * 14.5, 3 + number // 12 * 9))
        for number, family in enumerate(FAMILIES)
        for mark in swatch(family, 12, 6.2)
    ),
)


def loose(marks: tuple[Mark, ...]) -> list[Mark]:
    """Lines and curves only, out of their clips."""
    found = []
    for mark in marks:
        if isinstance(mark, (Clip, Group)):
            found += loose(mark.marks)
        elif isinstance(mark, (Line, Curve)):
            found.append(mark)
    return found


def test_svg_and_pdf_hold_the_same_paths():
    drawing = Drawing("paths", 180, 30, tuple(loose(LEGEND.marks)))
    in_pdf = [points for _, points in pdf_paths(drawing)]
    in_svg = svg_paths(svg.write(drawing), 30)
    assert len(in_pdf) == len(in_svg) > 20
    for one, other in zip(in_pdf, in_svg, strict=True):
        assert [v for p in one for v in p] == pytest.approx([v for p in other for v in p], abs=0.005)


def test_a_line_stands_where_the_drawing_says():
    drawing = Drawing("line", 100, 50, (Line(((10, 20), (90, 45.5)), 0.5),))
    assert pdf_paths(drawing) == [("S", [pytest.approx((10, 20), abs=0.004), pytest.approx((90, 45.5), abs=0.004)])]
    assert pixels(drawing)[500 - 200 - 2 : 500 - 200 + 3, 101].min() < 100


def test_a_clip_hides_what_lies_outside():
    bar = Line(((0, 5), (20, 5)), 2.0)
    seen = pixels(Drawing("clip", 20, 10, (Clip(rectangle(5, 0, 10, 10), (bar,)),)))
    row = seen[50]
    assert row[60] < 10 and row[40] > 250 and row[110] > 250


def test_dashes_have_butt_ends_and_a_halo_is_white():
    under = Line(((0, 5), (40, 5)), 6.0)
    line = Line(((0, 5), (40, 5)), 0.7, dash=(5, 1.2), halo=0.45)
    row = pixels(Drawing("dash", 40, 10, (under, line)))[50]
    assert row[48] < 10 and row[52] > 245 and row[60] > 245 and row[64] < 10
    column = pixels(Drawing("halo", 40, 10, (under, line)))[:, 20]
    assert column[50 + 2] < 60 and column[50 + 6] > 200 and column[50 + 15] < 10  # 0.35 line, 0.45 halo, then the bar


def test_of_two_crossing_lines_the_later_one_cuts_the_earlier():
    first = Line(((0, 10), (20, 10)), 0.7, halo=0.45)
    second = Line(((10, 0), (10, 20)), 0.7, halo=0.45)
    row = pixels(Drawing("crossing", 20, 20, (first, second)))[100]
    assert row[100] < 10 and row[106] > 200 and row[120] < 10


def test_an_area_paints_nothing():
    assert pixels(Drawing("area", 10, 10, (Area(rectangle(1, 1, 9, 9), "hemp", "batt"),))).min() == 255


def test_circles_are_ringed_and_filled():
    tag = Circle((10, 10), 2.9, 0.35, "white")
    seen = pixels(Drawing("tag", 20, 20, (Line(((0, 10), (20, 10)), 1.0), tag, Circle((3, 17), 0.5, fill="black"))))
    assert seen[100, 100] == 255 and seen[100, 10] < 10
    assert seen[100, 100 + 29] < 120
    assert seen[30, 30] < 10


@pytest.mark.parametrize("anchor", ["start", "middle", "end"])
@pytest.mark.parametrize("style", ["regular", "bold", "oblique", "bold oblique"])
@pytest.mark.parametrize("spaced", [0.0, 2.5])
def test_text_stands_as_wide_as_it_was_measured(anchor, style, spaced):
    text = Text((50, 10), "Hemp 184 mm H", anchor=anchor, style=style, spaced=spaced)
    document = pypdfium2.PdfDocument(pdf_bytes(Drawing("text", 100, 20, (text,))))
    page = document[0].get_textpage()
    boxes = [page.get_charbox(number, loose=True) for number in range(page.count_chars())]
    document.close()
    wide = font.width(text.text, 9.72, style, spaced)
    left = 50 - {"start": 0, "middle": wide / 2, "end": wide}[anchor]
    assert boxes[0][0] / PER_MM == pytest.approx(left, abs=0.12)
    assert boxes[-1][2] / PER_MM == pytest.approx(left + wide, abs=0.12 + spaced / PER_MM)


def test_letter_spacing_does_not_leak_into_the_next_text():
    marks = Text((5, 15), "OUTSIDE", spaced=4.0), Text((5, 5), "OUTSIDE")
    document = pypdfium2.PdfDocument(pdf_bytes(Drawing("text", 60, 20, marks)))
    page = document[0].get_textpage()
    wide, plain = (page.get_rect(number) for number in range(page.count_rects()))
    document.close()
    assert (wide[2] - wide[0]) / PER_MM == pytest.approx(font.width("OUTSIDE", 9.72, spaced=4.0), abs=0.6)
    assert (plain[2] - plain[0]) / PER_MM == pytest.approx(font.width("OUTSIDE", 9.72), abs=0.6)


def test_a_text_box_whitens_what_lies_behind():
    bar = Line(((0, 10), (60, 10)), 12.0)
    seen = pixels(Drawing("box", 60, 20, (bar, Text((30, 9), "l", anchor="middle", box=1.0))))
    wide = font.width("l", 9.72) / 2
    assert seen[100, round((30 - wide - 0.8) * 10)] > 250
    assert seen[100, round((30 - wide - 1.3) * 10)] < 10


def test_control_characters_are_dropped_and_marks_of_mark_up_are_letters():
    text = Text((5, 5), "a<b>&\x07\u202e</b>{{ x }}")
    page = PdfReader(io.BytesIO(pdf_bytes(Drawing("text", 80, 20, (text,))))).pages[0]
    assert page.extract_text().strip() == "a<b>&</b>{{ x }}"


def test_all_fonts_are_embedded_and_none_is_foreign():
    marks = [Text((5, 5 + 6 * number), f"{style} λ½", style=style) for number, style in enumerate(NAMES)]
    reader = PdfReader(io.BytesIO(pdf_bytes(Drawing("fonts", 80, 40, tuple(marks)))))
    fonts = [one.get_object() for one in reader.pages[0]["/Resources"]["/Font"].values()]
    for one in fonts:
        assert "DejaVuSans" in one["/BaseFont"]
        assert "/FontFile2" in one["/FontDescriptor"]
    assert len({one["/BaseFont"] for one in fonts}) == len(NAMES)


def test_title_and_language_are_set():
    reader = PdfReader(io.BytesIO(pdf_bytes(LEGEND, title="Wall W1", lang="en-CA")))
    assert reader.metadata.title == "Wall W1"
    assert reader.trailer["/Root"]["/Lang"] == "en-CA"
    assert [float(one) * 25.4 / 72 for one in reader.pages[0].mediabox[2:]] == pytest.approx([180, 30], abs=0.01)


def test_the_same_drawing_gives_the_same_bytes(tmp_path):
    assert pdf_bytes(LEGEND) == pdf_bytes(LEGEND)
    pdf.write(LEGEND, tmp_path / "one.pdf", margin=0)
    assert (tmp_path / "one.pdf").read_bytes() == pdf_bytes(LEGEND)


def test_painting_leaves_the_canvas_as_it_was():
    register()
    target = io.BytesIO()
    canvas = Canvas(target, pagesize=(300, 200), invariant=1, initialFontName="LF")
    marks = (Line(((0, 0), (10, 10)), 3.0, dash=(1, 1)), Text((5, 5), "far", spaced=9), Circle((5, 5), 2, 1, "black"))
    pdf.paint(canvas, Drawing("one", 20, 20, marks), 10, 10)
    canvas.line(100, 150, 200, 150)
    canvas.save()
    operations = target.getvalue()
    page = PdfReader(io.BytesIO(operations)).pages[0].get_contents().get_data().decode("latin-1")
    assert page.split().count("q") == page.split().count("Q")
    after = page[page.rindex("Q") :]
    assert "100 150 m 200 150 l S" in " ".join(after.split())
    assert " w" not in after and " d" not in after and "cm" not in after


def test_a_repeated_tile_is_written_once():
    areas = tuple(Stipple(rectangle(0, 30 * one, 150, 30 * one + 29), "gravel", turn=one) for one in range(5))
    drawing = Drawing("tiles", 150, 150, areas)
    one_tile = len(pdf_bytes(Drawing("tile", 150, 150, areas[:1])))
    assert len(pdf_bytes(drawing)) < one_tile + 4000


def test_many_sheets_of_hatches_stay_small():
    register()
    target = io.BytesIO()
    canvas = Canvas(target, invariant=1, initialFontName="LF", pageCompression=1)
    pages = 5
    for number in range(pages):
        marks = [
            mark
            for row, family in enumerate(FAMILIES)
            for mark in hatch(family, rectangle(20, 9 * row, 154, 9 * row + 7.6), seed=f"{number} {family}")
        ]
        pdf.paint(canvas, Drawing("sheet", 190, 250, tuple(marks)), 10, 10)
        canvas.showPage()
    canvas.save()
    assert len(target.getvalue()) < pages * 3_000_000 / 20  # every family on every sheet: 20 sheets under 3 MB
