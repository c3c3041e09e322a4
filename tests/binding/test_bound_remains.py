"""What is left for the next page is never a lonely box, a footnote line or a small table by itself."""

import pytest
from pages import figures_table, sheet

from layerfolio.binding.filler import lay_out
from layerfolio.binding.formats import FORMATS
from layerfolio.codes.findings import Verdict
from layerfolio.drawing.marks import Drawing, Line
from layerfolio.sheets import blocks as b

LETTER = FORMATS["letter"]
BOX = b.ResultBox((("{U}", "0.186", ""),), "a clause", Verdict.MEETS, "by 70 %")


def figure(high: float) -> b.Figure:
    outline = ((0, 0), (150, 0), (150, high), (0, high), (0, 0))
    return b.Figure(Drawing("d", 150, high, (Line(outline, 0.5),), 5, "1 : 5"))


def table(rows: int) -> b.Table:
    return figures_table(tuple((f"row {n}", f"{n}.5") for n in range(rows)))


def laid(*blocks: b.Block):
    return [[piece for piece, _ in leaf.fields[0]] for leaf in lay_out([sheet(b.Head("W1", "T"), *blocks)], LETTER)]


@pytest.mark.parametrize("between", [(), (b.Space(2),)])
def test_a_result_box_stands_with_three_rows_of_its_table(between):
    parted = 0
    for high in range(90, 200, 2):
        pages = laid(figure(high), table(12), *between, BOX, b.Paragraph("key"))
        page = next(one for one in pages if any(piece.kind == "result box" for piece in one))
        rows = [len(piece.rows) for piece in page if piece.kind == "table"]
        assert rows
        assert rows[0] >= 3
        parted += rows[0] < 12
    assert parted > 3


def test_a_result_box_under_a_drawing_does_not_drag_it_along():
    for high in range(100, 200, 5):
        pages = laid(b.Paragraph("line"), figure(high), BOX)
        assert [piece.kind for piece in pages[0]][:3] == ["head", "text", "figure"]


def numbered(rows: int, footnote: str = "a footnote") -> b.Numbered:
    return b.Numbered("4", "Asked and provided", (table(rows), b.Paragraph(footnote)))


def test_a_numbered_item_does_not_go_on_with_one_line():
    parted = 0
    for lines in range(8, 45):
        pages = laid(*[b.Paragraph("line")] * lines, numbered(8))
        items = [piece for page in pages for piece in page if piece.kind == "numbered"]
        assert items[-1].content.pieces[0].kind == "table"
        parted += len(items) == 2
    assert parted > 3


def step(number: int) -> b.CalcStep:
    return b.CalcStep(str(number), f"Step {number}", "a source", (b.Equation("{R_T}", ("1", "2", "3")),))


BAND = b.Band("Required 2.97", "Step 9", Verdict.MEETS, "C1, line 2")


def test_a_small_table_behind_a_calculation_brings_the_band_along():
    brought = 0
    for count in range(2, 20):
        for lines in range(4):
            above = [b.Paragraph("line")] * lines
            calculation = b.Calculation("Total", "", tuple(map(step, range(count))))
            pages = laid(*above, calculation, BAND, b.Heading("Side by side"), table(3))
            kinds = [piece.kind for piece in pages[-1]]
            assert kinds[-3:] == ["calculation", "heading", "table"]
            brought += len(pages) == 2
            steps = [one for page in pages for piece in page if piece.kind == "calculation" for one in piece.steps]
            assert len(steps) == count
    assert brought > 3


def test_a_calculation_that_cannot_break_is_not_dragged_along():
    one = b.CalcStep("1", "Long", "a source", (b.Equation("{R_T}", tuple("1" * 34)),))
    pages = laid(b.Paragraph("line"), b.Calculation("Total", "", (one,)), BAND, b.Heading("Side by side"), table(5))
    assert [[piece.kind for piece in page] for page in pages] == [
        ["head", "text", "calculation"],
        ["head", "heading", "table"],
    ]


@pytest.mark.parametrize("words", [40, 80])
def test_the_key_below_a_result_box_does_not_stand_alone(words):
    """Two lines or three."""
    for high in range(90, 200):
        pages = laid(figure(high), table(12), b.Space(2), BOX, b.Paragraph("key " * words))
        assert [piece.kind for piece in pages[-1]][-2:] == ["result box", "text"]


def test_a_last_line_below_a_list_brings_an_item_along():
    for lines in range(8, 45):
        item = b.Numbered("5", "Numbers", (b.Bullets(("one", "two", "three")), b.Paragraph("Steps: W1-V")))
        pages = laid(*[b.Paragraph("line")] * lines, item)
        items = [piece for page in pages for piece in page if piece.kind == "numbered"]
        assert [piece.kind for piece in items[-1].content.pieces] == ["bullets", "text"]
