"""Frame, strip and title block measured on the finished page."""

import numpy as np
import pytest
from pages import LONG, data, package, raster, sheet, signs, words

from layerfolio.binding.book import render
from layerfolio.binding.fit import fit
from layerfolio.binding.formats import FORMATS
from layerfolio.binding.measure import width
from layerfolio.drawing.marks import Drawing, Line
from layerfolio.sheets import blocks as b

DPI = 600
SHEETS = {"letter": (215.9, 279.4), "a4": (210, 297), "tabloid": (431.8, 279.4), "a3": (420, 297)}


def dark_lines(column: np.ndarray, per_mm: float) -> list[tuple[float, float]]:
    """(middle, thickness) in mm of each dark stretch."""
    edges = np.flatnonzero(np.diff(np.concatenate(([0], (column < 128).astype(int), [0]))))
    return [((start + end) / 2 / per_mm, (end - start) / per_mm) for start, end in edges.reshape(-1, 2)]


@pytest.mark.parametrize("page", SHEETS)
def test_frame_and_strip_stand_where_the_design_has_them(page):
    picture = raster(data(page), 1, DPI)
    per_mm = DPI / 25.4
    wide, high = SHEETS[page]
    assert picture.shape[1] / per_mm == pytest.approx(wide, abs=0.1)
    assert picture.shape[0] / per_mm == pytest.approx(high, abs=0.1)
    lines = dark_lines(picture[:, int((FORMATS[page].left + 2) * per_mm)], per_mm)
    (top, thick), (bottom, _) = lines[0], lines[-1]
    strip = [at for at, line in lines if abs(line - 0.7) < 0.12][-2]
    assert top == pytest.approx(8, abs=0.1)
    assert thick == pytest.approx(0.7, abs=0.1)
    assert bottom == pytest.approx(high - 8, abs=0.1)
    assert bottom - strip == pytest.approx(40, abs=0.1)


@pytest.mark.parametrize("page", SHEETS)
def test_side_margins(page):
    per_mm = DPI / 25.4
    picture = raster(data(page), 1, DPI)
    lines = dark_lines(picture[int(10.5 * per_mm)], per_mm)
    left, right = {"letter": (18, 9.9), "tabloid": (18, 9.9), "a4": (15, 7), "a3": (15, 7)}[page]
    assert lines[0][0] == pytest.approx(left, abs=0.1)
    assert lines[-1][0] == pytest.approx(SHEETS[page][0] - right, abs=0.1)


@pytest.mark.parametrize(("page", "wide"), [("letter", 180), ("a4", 180), ("tabloid", 193.95), ("a3", 191)])
def test_field_widths(page, wide):
    assert FORMATS[page].field_width == pytest.approx(wide)


@pytest.mark.parametrize(("page", "room"), [("letter", 215.4), ("a4", 233), ("tabloid", 215.4), ("a3", 233)])
def test_content_height(page, room):
    assert FORMATS[page].room == pytest.approx(room)


def test_stamp_space_stays_empty():
    per_mm = 300 / 25.4
    for page in range(2):
        picture = raster(data(), page, 300)
        inside = picture[int(244.2 * per_mm) : int(267.6 * per_mm), int(22.6 * per_mm) : int(84.4 * per_mm)]
        corners = np.ones(inside.shape, dtype=bool)
        reach = int(4 * per_mm)
        for rows in (slice(0, reach), slice(-reach, None)):
            for columns in (slice(0, reach), slice(-reach, None)):
                corners[rows, columns] = False
        assert inside[corners].min() == 255


def test_every_page_has_the_notice_its_format_and_its_count():
    text = [words(data(), page) for page in range(4)]
    for number, one in enumerate(text, 1):
        assert "The final say rests with a licensed professional and the authority having jurisdiction." in one
        assert "letter, print at 100 %" in one
        assert f"{number} of 5" in one
    assert "A4, print at 100 %" in words(data("a4"), 0)


def cell(pdf: bytes, left: float, top: float, wide: float, high: float) -> str:
    found = signs(pdf)
    return "".join(
        one.text
        for one in found
        if left <= one.left and one.right <= left + wide and top <= one.top and one.bottom <= top + high
    )


@pytest.mark.parametrize("long", [LONG, "x" * 200, "wwwww " * 40, "<img src=a.png> {R} **b** " * 8])
def test_long_values_stay_in_their_cells(long):
    bound = package(
        b.Sheet("W1-NORTH-ANNEXE-T", long, "1 : 5", (b.Head("W1", long, long), b.Paragraph("text"))),
        project=long,
        site=long,
        prepared_by=long,
        date=long,
        revision=long,
    )
    pdf, _ = render(bound)
    x, y = 215.9 - 9.9 - 117, 279.4 - 8 - 34
    cells = [
        (x, y, 92, 8),
        (x, y + 8, 92, 8),
        (x, y + 16, 92, 10),
        (x, y + 26, 44, 8),
        (x + 44, y + 26, 22, 8),
        (x + 66, y + 26, 11, 8),
        (x + 77, y + 26, 15, 8),
        (x + 92, y, 25, 26),
        (x + 92, y + 26, 25, 8),
    ]
    held = sum(len(cell(pdf, *one)) for one in cells)
    block = [one for one in signs(pdf) if one.left > x and one.top > y]
    assert held == len(block)
    assert cell(pdf, *cells[2]).endswith("…")
    assert "1:5" in cell(pdf, *cells[6])


def test_continued_stays_when_a_title_is_cut():
    rows = tuple((f"row {n}", f"{n}.5") for n in range(90))
    from pages import figures_table

    pdf, info = render(package(b.Sheet("W1", LONG, "—", (b.Head("", "Rows"), figures_table(rows)))))
    assert info.pages >= 2
    assert "continued" in words(pdf, 1).split("Sheet title")[1]


def test_a_long_sheet_number_breaks_between_its_parts():
    pdf, _ = render(package(sheet(b.Paragraph("x"), number="W1-ANNEXE-T")))
    assert "W1-\nANNEXE-T" in words(pdf)


def test_a_scale_stands_on_the_pages_that_are_drawn_alone():
    outline = ((0, 0), (150, 0), (150, 40), (0, 40), (0, 0))
    drawn = b.Figure(Drawing("d", 150, 40, (Line(outline, 0.5),), 5, "1 : 7"))
    long = tuple(b.Paragraph(f"{n} " + "words that fill a page " * 30) for n in range(24))
    pdf, info = render(package(sheet(*long, drawn, scale="1 : 7")))
    shown = ["1 : 7" in words(pdf, page).split("Sheet title")[1] for page in range(info.pages)]
    assert info.pages > 1 and shown == [False] * (info.pages - 1) + [True]


def test_customary_scale_is_shortened_to_its_ratio():
    pdf, _ = render(package(sheet(b.Paragraph("x"), scale='1 1/2" = 1\'-0" (1 : 8)')))
    assert "Scale\n1 : 8" in words(pdf)


@pytest.mark.parametrize("text", [LONG, "y" * 300, "short", "two words", "a b c " * 30])
@pytest.mark.parametrize("lines", [1, 2])
def test_fitted_values_are_no_wider_than_their_room(text, lines):
    value = fit(text, 60, (13.6, 9), "bold", lines)
    assert len(value.lines) <= lines
    assert all(width(one, value.size, "bold") <= 60 for one in value.lines)
    shown = " ".join(value.lines)
    assert (
        shown == text.strip() or shown.endswith("…") or "".join(value.lines).replace(" ", "") == text.replace(" ", "")
    )
