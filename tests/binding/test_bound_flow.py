"""What stands on which page: rules of breaking, continued heads, spaces that take what is left."""

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pages import figures_table, package, sheet, signs, words

from layerfolio.binding.book import render
from layerfolio.binding.calculation import CalculationPiece
from layerfolio.binding.filler import lay_out
from layerfolio.binding.formats import FORMATS
from layerfolio.binding.piece import Piece
from layerfolio.binding.stacking import take
from layerfolio.binding.texts import HeadingPiece, paragraph
from layerfolio.codes.findings import Verdict
from layerfolio.drawing.marks import Drawing, Line
from layerfolio.sheets import blocks as b

LETTER = FORMATS["letter"]


def step(number: int, lines: int = 3) -> b.CalcStep:
    equation = b.Equation("{R_T}", tuple(f"{n} + 1" for n in range(lines)), "0.17")
    return b.CalcStep(str(number), f"Step {number}", "a source", (equation,))


def drawing(width: float, height: float) -> Drawing:
    outline = ((0, 0), (width, 0), (width, height), (0, height), (0, 0))
    return Drawing("d", width, height, (Line(outline, 0.5),), 5, "1 : 5")


word_lists = st.lists(st.sampled_from(["alpha", "beta", "gamma"]), min_size=1, max_size=120).map(" ".join)
any_block = st.one_of(
    word_lists.map(b.Paragraph),
    st.builds(b.Heading, st.just("Heading"), st.booleans()),
    st.integers(1, 30).map(lambda n: figures_table(tuple((f"row {k}", f"{k}.5") for k in range(n)))),
    st.integers(1, 9).map(lambda n: b.Bullets(tuple("item of a list" for _ in range(n)), columns=1 + n % 2)),
    st.integers(1, 9).map(lambda n: b.Calculation("Total", "{R}", tuple(step(k) for k in range(n)))),
    st.floats(10, 150).map(lambda high: b.Figure(drawing(150, high))),
    st.just(b.ResultBox((("{U}", "0.186", ""),), "a clause", Verdict.MEETS, "by 70 %")),
    st.just(b.Beside((b.Paragraph("left " * 80),), (b.Paragraph("right " * 40),))),
    st.just(b.Numbered("1", "Question", (b.Paragraph("text " * 90), b.Bullets(("one", "two"))), rule=True)),
    st.just(b.NoteBox("Official’s note", ("accepted",))),
    st.just(b.FreeSpace("free")),
    word_lists.map(lambda words: b.Framed("Caution", (b.Paragraph(words), b.Bullets(("one", "two"))))),
    st.just(b.Space(4)),
    st.just(b.FieldBreak()),
)


@settings(max_examples=150, deadline=None)
@given(st.lists(any_block, min_size=1, max_size=14), st.sampled_from(sorted(FORMATS)), st.booleans())
def test_pieces_stay_in_their_fields_and_below_each_other(blocks, page, head):
    fmt = FORMATS[page]
    start = [b.Head("W1", "A head", "phrase")] if head else []
    for leaf in lay_out([sheet(*start, *blocks)], fmt):
        assert 1 <= len(leaf.fields) <= fmt.fields
        for placed in leaf.fields:
            at = 0.0
            for piece, y in placed:
                assert y >= at - 1e-6
                at = y + piece.height
            assert at <= fmt.room + 1e-6
            assert not placed or not placed[-1][0].keep_with_next or len(placed) == 1 or _last(blocks)


def _last(blocks) -> bool:
    """A heading with nothing behind it may stand at the foot."""
    left = [one for one in blocks if not isinstance(one, b.Space | b.FieldBreak)]
    return isinstance(left[-1], b.Heading) or any(isinstance(one, b.FieldBreak) for one in blocks)


@pytest.mark.parametrize("lines", range(36, 48))
def test_a_heading_is_never_alone_at_the_foot(lines):
    blocks = (
        b.Head("", "Title"),
        *[b.Paragraph("line")] * (lines - 10),
        b.Heading("Heading"),
        b.Paragraph("word " * 300),
    )
    pages = lay_out([sheet(*blocks)], LETTER)
    for leaf in pages:
        assert not leaf.fields[0][-1][0].keep_with_next


def test_the_count_of_verdicts_stays_with_its_record():
    for rows in range(10, 46):
        record = figures_table(tuple((f"row {n}", "1.5") for n in range(rows)))
        pages = lay_out([sheet(b.Head("", "Record"), record, b.VerdictCount(((Verdict.MEETS, rows),)))], LETTER)
        kinds = [[piece.kind for piece, _ in leaf.fields[0]] for leaf in pages]
        assert kinds[-1][-2:] == ["table", "count"]


def test_a_space_does_not_part_record_and_count():
    for rows in range(10, 46):
        record = figures_table(tuple((f"row {n}", "1.5") for n in range(rows)))
        blocks = (b.Head("", "Record"), record, b.Space(2), b.VerdictCount(((Verdict.MEETS, rows),)))
        pages = lay_out([sheet(*blocks)], LETTER)
        assert [piece.kind for piece, _ in pages[-1].fields[0]][-3:] == ["table", "space", "count"]


def test_evening_out_two_fields_reduces_no_drawing():
    rows = tuple((f"row {n}", "1.5") for n in range(12))
    for high in (40, 110, 180):
        blocks = (b.Head("W1", "Wall"), b.Figure(drawing(150, high)), figures_table(rows), b.Paragraph("key"))
        [leaf] = lay_out([sheet(*blocks)], FORMATS["tabloid"])
        figure = next(piece for placed in leaf.fields for piece, _ in placed if piece.kind == "figure")
        assert figure.shrink == 1.0
        assert len(leaf.fields) == 2


def test_a_result_box_grows_rather_than_set_text_over_text():
    long = "A code with a long name, a table with a long number, zone 6, with all that the authority added to it since"
    remark = "the figure asked rests on memory: confirm against the adopted text"
    box = b.ResultBox((("{U}", "0.186", ""),) * 3, long, Verdict.NEEDS_JUDGEMENT, remark)
    [leaf] = lay_out([sheet(box)], LETTER)
    assert leaf.fields[0][0][0].height > 17
    found = signs(render(package(sheet(box)))[0])
    inside = [one for one in found if one.left > 110 and one.bottom < 40]
    lines = sorted({round(one.bottom, 1) for one in inside if one.text in "eatomn"})
    rows = [lines[0], *(two for one, two in pairwise(lines) if two - one > 0.5)]
    assert len(rows) == 5  # three of the clause, nothing of it cut
    assert all(two - one > 3.5 for one, two in pairwise(rows))


def test_tables_close_up_only_where_that_saves_a_page():
    def leaves(rows: int, lines: int):
        table = figures_table(tuple((f"row {n}", "1.5") for n in range(rows)))
        return lay_out([sheet(b.Head("", "Rows"), table, *[b.Paragraph("line")] * lines)], LETTER)

    def pitch(leaf) -> float:
        return next(piece.rows[0].height for piece, _ in leaf.fields[0] if piece.kind == "table")

    assert [(len(leaves(30, n)), pitch(leaves(30, n)[0])) for n in (8, 10, 11, 20)] == [
        (1, pytest.approx(4.85)),
        (1, pytest.approx(4.575)),
        (1, pytest.approx(4.3)),
        (2, pytest.approx(4.85)),
    ]


def test_steps_close_up_before_they_take_a_second_page():
    def pages(count: int):
        steps = tuple(step(n, 2 if n else 4) for n in range(count))
        return lay_out([sheet(b.Head("", "T"), b.Calculation("Total", "{R}", steps))], LETTER)

    def pitch(leaf) -> float:
        return next(piece.between for piece, _ in leaf.fields[0] if isinstance(piece, CalculationPiece))

    assert [len(pages(count)) for count in (9, 10, 11, 12)] == [1, 1, 1, 2]
    assert pitch(pages(10)[0]) == 3.5
    assert pitch(pages(11)[0]) == 2.5


def test_a_calculation_goes_on_with_its_head_and_ends_with_its_band():
    calculation = b.Calculation("Running total", "{R}, m²·K/W", tuple(step(n) for n in range(1, 16)))
    band = b.Band("Required 2.97", "Step 15", Verdict.MEETS, "C1, line 2")
    pdf, info = render(package(sheet(b.Head("W1", "Steps"), calculation, band, number="W1-T")))
    assert info.pages == 2
    first, second = words(pdf, 0), words(pdf, 1)
    assert "Running total" in first
    assert "Running total" in second
    assert "continued on W1-T, sheet 2 of 2" in first
    assert "Required" not in first
    assert "Required 2.97" in second
    assert [n for n in range(1, 16) if f"Step {n}\n" in first + second or f"Step {n} " in first + second] == list(
        range(1, 16)
    )


def test_equals_signs_stand_below_each_other():
    equations = (
        b.Equation("{R_T}", ("{R_si} + {R_se}", "0.13 + 0.04", "**0.17**"), "0.17"),
        b.Equation("{U}", ("1 / {R_T}",)),
    )
    wide = b.Equation("1 / {R|T;upper;of a very long index}", ("1",))
    for body in (equations, (*equations, wide)):
        calculation = b.Calculation("Total", "{R}", (b.CalcStep("1", "Title", "source", body),))
        pdf, _ = render(package(sheet(b.Head("", "T"), calculation)))
        places = [one.left for one in signs(pdf) if one.text == "="]
        assert len(places) == 3 + len(body) - 1
        assert max(places) - min(places) < 0.05


def test_the_left_side_ends_before_the_equals_sign():
    for left in ("{R_T}", "1 / {R|T;upper}", "a very long left side of an equation"):
        calculation = b.Calculation("Total", "", (b.CalcStep("1", "T", "s", (b.Equation(left, ("1 + 2",)),)),))
        found = signs(render(package(sheet(b.Head("", "H"), calculation)))[0])
        equals = next(one for one in found if one.text == "=")
        line = [one for one in found if abs(one.bottom - equals.bottom) < 2.5 and 30 < one.left < 160]
        before = max(one.right for one in line if one.left < equals.left)
        behind = min(one.left for one in line if one.left > equals.left)
        assert 1.0 < equals.left - before < 2.5
        assert 1.0 < behind - equals.right < 2.5


class Stubborn(Piece):
    """Promises to begin with little, then does not split."""

    height = 60.0
    least = 5.0  # type: ignore[assignment]


def test_a_heading_goes_along_with_what_breaks_its_promise():
    heading = HeadingPiece(b.Heading("Heading"), 180)
    placed, rest = take([paragraph(b.Paragraph("text"), 180), heading, Stubborn()], 50)
    assert [piece.kind for piece, _ in placed] == ["text"]
    assert rest[0] is heading


def test_free_space_takes_what_is_left_in_each_format():
    for page in ("letter", "a4"):
        fmt = FORMATS[page]
        [leaf] = lay_out([sheet(b.Head("", "T"), b.Paragraph("one"), b.FreeSpace("free"), b.Paragraph("below"))], fmt)
        pieces = leaf.fields[0]
        assert pieces[-1][1] + pieces[-1][0].height == pytest.approx(fmt.room)
        assert pieces[-2][0].height > 150


def test_boxes_to_write_in_never_shrink_below_their_least():
    for above in range(30, 48):
        for block, least in ((b.FreeSpace("free", least=10), 25), (b.NoteBox("Note", ("accepted",), lines=2), 30)):
            leaves = lay_out([sheet(b.Head("", "T"), *[b.Paragraph("line")] * (above - 8), block)], LETTER)
            assert leaves[-1].fields[0][-1][0].height >= least


def test_a_drawing_no_page_holds_is_reduced_and_says_so():
    pdf, info = render(package(sheet(b.Head("W1", "Wall"), b.Figure(drawing(150, 260)))))
    assert info.pages == 1
    assert "not to scale" in words(pdf)
    assert "not to scale" not in words(render(package(sheet(b.Head("W1", "Wall"), b.Figure(drawing(150, 100)))))[0])


def test_two_heads_stand_in_two_fields_or_on_two_pages():
    blocks = (b.Head("W1", "North"), b.Paragraph("one"), b.Head("W2", "South"), b.Paragraph("two"))
    assert len(lay_out([sheet(*blocks)], FORMATS["tabloid"])) == 1
    assert len(lay_out([sheet(*blocks)], LETTER)) == 2


def test_a_sheet_says_what_stands_in_the_right_field():
    blocks = (b.Head("W1", "North"), b.Figure(drawing(150, 60)), b.FieldBreak(), b.Paragraph("right"))
    [leaf] = lay_out([sheet(*blocks)], FORMATS["a3"])
    assert [[piece.kind for piece, _ in placed] for placed in leaf.fields] == [["head", "figure"], ["head", "text"]]
    [leaf] = lay_out([sheet(*blocks)], LETTER)
    assert [piece.kind for piece, _ in leaf.fields[0]] == ["head", "figure", "text"]


def test_the_scale_is_named_only_where_something_is_drawn():
    blocks = (
        b.Head("W1", "Wall"),
        b.Figure(drawing(150, 100)),
        figures_table(tuple((f"r{n}", "1.5") for n in range(40))),
    )
    pdf, info = render(package(sheet(*blocks, scale="1 : 5")))
    assert info.pages == 2
    assert "Scale\n1 : 5" in words(pdf, 0)
    assert "Scale\n—" in words(pdf, 1)


def test_many_sheets_index_over_several_pages():
    sheets = [sheet(b.Head("", "Cover", large=True), b.Beside((b.Paragraph("x"),), (b.Index(),)), number="G0")]
    sheets += [sheet(b.Paragraph("text"), number=f"W{n}", title=f"Wall number {n}") for n in range(120)]
    pdf, info = render(package(*sheets))
    assert info.pages == 123
    text = "".join(words(pdf, page) for page in range(3))
    assert all(f"Wall number {n} " in text for n in range(120))
