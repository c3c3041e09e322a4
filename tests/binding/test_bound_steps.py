"""Where a calculation step may break: between its parts, with its number and title again, and only against white."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pages import figures_table, package, sheet, words

from layerfolio.binding.book import render
from layerfolio.binding.calculation import CalculationPiece
from layerfolio.binding.filler import lay_out
from layerfolio.binding.formats import FORMATS
from layerfolio.sheets import blocks as b

LETTER = FORMATS["letter"]


def equation(lines: int = 2) -> b.Equation:
    return b.Equation("{R_T}", tuple(f"{n} + 1" for n in range(lines)))


def table(rows: int) -> b.Table:
    return figures_table(tuple((f"row {n}", f"{n}.5") for n in range(rows)))


def short(number: int) -> b.CalcStep:
    return b.CalcStep(str(number), f"Step {number}", "a source", (equation(3),))


def bound(*steps: b.CalcStep, page: str = "letter"):
    """The calculation's part on each page or field, in order."""
    leaves = lay_out([sheet(b.Head("W1", "Steps"), b.Calculation("Running total", "", steps))], FORMATS[page])
    return [p for leaf in leaves for placed in leaf.fields for p, _ in placed if isinstance(p, CalculationPiece)]


def kinds(step) -> list[str]:
    return [part.kind for _, part in step.parts]


def test_a_long_step_breaks_between_its_parts_and_says_so():
    long = b.CalcStep("7", "Parallel paths", "a source", (b.Paragraph("Given."), *[equation()] * 14))
    first, second = bound(*map(short, range(6)), long)
    assert len(first.steps) == 7
    assert kinds(first.steps[-1]) + kinds(second.steps[0]) == ["text", *["equation"] * 14]
    assert second.steps[0].number == "7"
    calculation = b.Calculation("Running total", "", (*map(short, range(6)), long))
    pdf, _ = render(package(sheet(b.Head("W1", "Steps"), calculation)))
    assert "Parallel paths" in words(pdf, 0)
    assert "(continued)" not in words(pdf, 0)
    assert "Parallel paths (continued)" in words(pdf, 1)


@pytest.mark.parametrize(("before", "white"), [(8, False), (7, True)])
def test_a_step_breaks_only_where_much_white_would_be_left(before, white):
    """A step and the space behind it take 22: eight leave less than 30, seven leave more."""
    long = b.CalcStep("7", "Long", "a source", (b.Paragraph("Given."), *[equation()] * 8))
    first, second = bound(*map(short, range(before)), long)
    assert len(first.steps) == before + white
    assert sum(len(kinds(part.steps[-1 if part is first else 0])) for part in (first, second)) == 9 + (not white)


def test_no_equation_and_no_short_table_is_broken():
    body = (b.Paragraph("Given."), table(5), equation(9))
    for before in range(4, 9):
        parts = bound(*map(short, range(before)), b.CalcStep("7", "Long", "", body))
        found = [part for piece in parts for step in piece.steps if step.number == "7" for _, part in step.parts]
        assert [part.kind for part in found][-3:] == ["text", "table", "equation"]


def test_what_announces_and_what_concludes_stay_where_they_belong():
    body = (
        b.Paragraph("Given."), equation(), equation(), b.Paragraph("Then:"), equation(), equation(), b.Paragraph("So.")
    )  # fmt: skip
    for before in range(4, 9):
        for lines in range(2, 8):
            one = b.CalcStep("7", "Long", "", (*body[:2], equation(lines), *body[2:]))
            for piece in bound(*map(short, range(before)), one):
                for step in piece.steps:
                    assert kinds(step)[-1:] != ["text"] or (step is piece.steps[-1] and not piece.open_end)
                    assert kinds(step)[0] != "text" or len(step.parts) > 1


def test_a_long_table_in_a_step_repeats_its_head_and_says_once_that_it_goes_on():
    long = b.CalcStep("7", "Faces", "a source", (b.Paragraph("Given."), table(40)))
    calculation = b.Calculation("Running total", "", (*map(short, range(5)), long))
    pdf, info = render(package(sheet(b.Head("W1", "Steps"), calculation)))
    assert info.pages == 2
    assert words(pdf, 0).count("continued on") == 1
    assert all("m²·K/W" in words(pdf, page) for page in (0, 1))
    assert "Faces (continued)" in words(pdf, 1)


part_lists = st.lists(
    st.one_of(
        st.integers(1, 9).map(equation), st.integers(1, 12).map(table), st.integers(5, 60).map(lambda n: "word " * n)
    ),
    min_size=1, max_size=9,
)  # fmt: skip


@settings(max_examples=80, deadline=None)
@given(st.lists(part_lists, min_size=1, max_size=9), st.sampled_from(sorted(FORMATS)))
def test_no_part_of_a_step_is_lost_and_its_beginning_stays_together(bodies, page):
    steps = tuple(
        b.CalcStep(str(n), f"S{n}", "source", tuple(b.Paragraph(x) if isinstance(x, str) else x for x in body))
        for n, body in enumerate(bodies)
    )
    pieces = bound(*steps, page=page)
    for number, body in enumerate(bodies):
        shares = [one for piece in pieces for one in piece.steps if one.number == str(number)]
        parts = [part for one in shares for _, part in one.parts]
        assert sum(part.kind == "equation" for part in parts) == sum(isinstance(x, b.Equation) for x in body)
        rows = sum(len(part.rows) for part in parts if part.kind == "table")
        assert rows == sum(len(x.rows) for x in body if isinstance(x, b.Table))
        assert all(len(one.parts) >= min(2, len(body)) for one in shares[:1])
    for piece in pieces[:-1]:
        assert piece.open_end


def test_steps_close_up_where_that_brings_one_more_to_a_page_with_much_white():
    """Seven steps leave about 44 for the next; closed up, 10 more."""
    closed = []
    for lines in range(3, 14):
        long = b.CalcStep("7", "Long", "a source", (b.Paragraph("Given."), equation(lines)))
        first, *_ = bound(*map(short, range(7)), long, *map(short, range(3)))
        whole = [step.number for step in first.steps][-1] == "7"
        closed.append((whole, first.between < 3.5))
    assert closed == sorted(closed, key=lambda one: (-one[0], one[1]))
    assert (True, True) in closed
    assert (False, False) in closed


def test_a_table_of_few_high_rows_breaks_too():
    high = figures_table(tuple((f"row {n} " + "word " * 60, f"{n}.5") for n in range(4)))
    first, second = bound(*map(short, range(4)), b.CalcStep("7", "Long", "", (b.Paragraph("Given."), high)))
    assert [len(part.rows) for piece in (first, second) for _, part in piece.steps[-1].parts if part.kind == "table"] == [2, 2]
