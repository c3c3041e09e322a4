"""Tables: decimals align, heads repeat, no row is lost wherever a table breaks."""

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pages import figures_table, package, sheet, signs, words

from layerfolio.binding.book import render
from layerfolio.binding.cells import decimal_point
from layerfolio.binding.filler import lay_out
from layerfolio.binding.formats import FORMATS
from layerfolio.binding.rich import line
from layerfolio.binding.table_layout import slots_of
from layerfolio.binding.tables import TablePiece, table_piece
from layerfolio.codes.findings import Verdict
from layerfolio.sheets import blocks as b

FIGURES = ["0.05", "12.7", "184", "0.0360", "−27.5", "1 204.25"]


def test_decimal_points_stand_below_each_other():
    rows = (("a", "x"), *((f"layer {n}", one) for n, one in enumerate(FIGURES) if "." in one))
    pdf, _ = render(package(sheet(figures_table(tuple(rows[1:])))))
    points = [one for one in signs(pdf) if one.text == "." and one.left > 150 and one.top < 60]
    assert len(points) == len(rows) - 1
    assert max(p.left for p in points) - min(p.left for p in points) < 0.05


def test_whole_figures_end_at_the_point_and_dashes_are_centred_on_it():
    pdf, _ = render(package(sheet(figures_table((("a", "12.75"), ("b", "184"), ("c", "–"))))))
    found = [one for one in signs(pdf) if one.left > 150 and 15 < one.top < 40]
    point = next(one for one in found if one.text == ".")
    last = next(one for one in found if one.text == "4")
    dash = next(one for one in found if one.text == "–")
    assert last.right < point.left
    assert point.left - last.right < 0.7
    assert (dash.left + dash.right) / 2 == pytest.approx(point.left - 0.35, abs=0.5)


def test_bold_total_aligns_with_its_column():
    columns = (b.Column("Path"), b.Column("f", "", 25, "decimal"))
    table = b.Table(columns, (b.Row(("a", "0.125")), b.Row(("Sum", "1.000"), total=True)))
    pdf, _ = render(package(sheet(table)))
    points = [one for one in signs(pdf) if one.text == "." and one.left > 150 and one.top < 40]
    centres = [(p.left + p.right) / 2 for p in points]
    assert abs(centres[0] - centres[1]) < 0.15


@pytest.mark.parametrize(
    ("text", "kind"), [("12.5", "figure"), ("not given", "words"), ("–", "dash"), ("5.06", "figure")]
)
def test_where_the_point_of_a_cell_is(text, kind):
    one = line(text)
    point = decimal_point(one)
    if kind == "words":
        assert point is None
    elif kind == "dash":
        assert point == one.width / 2
    else:
        assert 0 < point < one.width


def test_columns_fill_the_field_exactly():
    for widths in ((8, 0, 20), (8, 58, 14, 20), (0, 0), (100, 100, 100, 0)):
        table = b.Table(tuple(b.Column("x", "", one) for one in widths), ())
        slots = slots_of(table, 180)
        assert slots[0].x == 0
        assert slots[-1].x + slots[-1].width == pytest.approx(180)
        assert all(two.x == pytest.approx(one.x + one.width) for one, two in pairwise(slots))
        assert all(one.width >= 5 for one in slots)


texts = st.text("abcdefgh ijklmnop", min_size=1, max_size=200)
rows_of_texts = st.lists(st.tuples(texts, texts), min_size=1, max_size=70)


@settings(max_examples=40, deadline=None)
@given(rows_of_texts, st.sampled_from(sorted(FORMATS)), st.booleans(), st.integers(0, 20))
def test_every_cell_appears_once_and_in_order(rows, page, long_text, above):
    blocks = [b.Head("", "Rows"), *(b.Paragraph("text above") for _ in range(above))]
    columns = (b.Column("One", "", 60), b.Column("Two"))
    table = b.Table(
        columns, tuple(b.Row((f"{n} {one}", two)) for n, (one, two) in enumerate(rows)), long_text=long_text
    )
    pages = lay_out([sheet(*blocks, table)], FORMATS[page])
    parts = [piece for leaf in pages for placed in leaf.fields for piece, _ in placed if isinstance(piece, TablePiece)]
    shown = [
        tuple("".join(one.text for one in cell.lines).replace("\u00a0", "").replace(" ", "") for cell in row.cells)
        for part in parts
        for row in part.rows
    ]
    assert shown == [(f"{n}{one}".replace(" ", ""), two.replace(" ", "")) for n, (one, two) in enumerate(rows)]
    assert all(part.layout.heads for part in parts)
    assert all(part.open_end for part in parts[:-1])
    assert not parts[-1].open_end


@settings(max_examples=40, deadline=None)
@given(st.integers(4, 120), st.integers(0, 35))
def test_a_total_never_stands_alone(count, above):
    rows = (*(b.Row((f"row {n}", "1.5")) for n in range(count)), b.Row(("Sum", "9.9"), total=True))
    table = b.Table((b.Column("Layer"), b.Column("R", "", 30, "decimal")), rows)
    pages = lay_out([sheet(b.Head("", "Rows"), *[b.Paragraph("above")] * above, table)], FORMATS["letter"])
    parts = [piece for leaf in pages for placed in leaf.fields for piece, _ in placed if isinstance(piece, TablePiece)]
    assert all(len(part.rows) >= 2 for part in parts)
    assert not parts[-1].rows[0].total


def test_heads_and_notes_on_paper():
    rows = tuple((f"row {n}", f"{n}.5") for n in range(90))
    pdf, info = render(package(sheet(b.Head("W1", "Rows"), figures_table(rows), number="W1-T")))
    assert info.pages == 3
    pages = [words(pdf, number) for number in range(3)]
    assert all(one.count("m²·K/W") == 1 for one in pages)
    assert "continued on W1-T, sheet 2 of 3" in pages[0]
    assert "continued on W1-T, sheet 3 of 3" in pages[1]
    assert "continued on" not in pages[2]
    assert "Rows, continued" in pages[1]
    assert all(f"row {n} {n}.5" in "\n".join(pages).replace("\n", " ") for n in range(90))


def test_wide_pages_continue_at_the_right():
    rows = tuple((f"row {n}", f"{n}.5") for n in range(60))
    pdf, info = render(package(sheet(b.Head("W1", "Rows"), figures_table(rows)), page="tabloid"))
    assert info.pages == 1
    assert "continued at the right" in words(pdf)


def test_a_row_no_page_holds_breaks_inside_and_says_so():
    cell = "\n".join(f"part {n} " + "word " * 30 for n in range(60))
    columns = (b.Column("No.", "", 8), b.Column("Question", "", 40), b.Column("Asked"), b.Column("Verdict", "", 40))
    row = b.Row(("1", "A question", cell, b.VerdictCell(Verdict.MEETS, "why")))
    pdf, info = render(package(sheet(b.Head("", "Record"), b.Table(columns, (row,), long_text=True))))
    assert info.pages > 1
    text = words(pdf)
    assert [text.index(f"part {n} ") for n in range(60)] == sorted(text.index(f"part {n} ") for n in range(60))
    assert text.count("word") == 60 * 30
    assert "(continued)" in words(pdf, 1)
    assert text.count("meets") == 1


def test_the_last_line_of_a_row_holds_verdict_and_reason():
    row = b.Row(
        ("E1-05", "Membrane"), after=b.VerdictCell(Verdict.NEEDS_EVIDENCE, "Expired before the date of this set.")
    )
    table = b.Table((b.Column("No.", "", 15), b.Column("Document")), (row,))
    assert (
        table_piece(table, 180).rows[0].height
        > table_piece(b.Table(table.columns, (b.Row(row.cells),)), 180).rows[0].height
    )
    pdf, _ = render(package(sheet(table)))
    assert "needs evidence Expired before the date of this set." in words(pdf).replace("  ", " ")


@settings(max_examples=40, deadline=None)
@given(st.lists(st.integers(1, 14), min_size=12, max_size=40))
def test_a_row_of_a_record_that_is_not_tall_stays_with_its_reason(heights):
    rows = tuple(
        b.Row((str(n), f"question {n}", "\n".join(["asked"] * high), b.VerdictCell(Verdict.MEETS, "path")), after="because")
        for n, high in enumerate(heights)
    )
    columns = (b.Column("No.", "", 12), b.Column("Question", "", 50), b.Column("Asked"), b.Column("Verdict", "", 40))
    pages = lay_out([sheet(b.Head("", "Record"), b.Table(columns, rows, long_text=True))], FORMATS["letter"])
    parts = [piece for leaf in pages for placed in leaf.fields for piece, _ in placed if isinstance(piece, TablePiece)]
    for one, two in pairwise(parts):
        last, first = one.rows[-1], two.rows[0]
        if first.cells[0].lines and last.cells[0].lines and first.cells[0].lines[0].text == last.cells[0].lines[0].text:
            assert heights[int(last.cells[0].lines[0].text)] + 1 >= 9
