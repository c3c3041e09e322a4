"""The mark-up of sheet texts, and what a person's own text becomes on its way into it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from layerfolio.drawing import font
from layerfolio.sheets.markup import NO_BREAK, Run, as_plain, clean, parse, plain, unprintable

HOSTILE = [
    "<img src=file.png>", "<b>", "&amp; & <", "{{ 7 * 7 }}", "{R_si}", "**bold**", "_oblique_", "`mono`", "\\**",
    "|a|b|", "# heading", "a_b_c", "{R|5;q}", "\\", "\\\\{R}", "~~~",
]  # fmt: skip


def test_looks_of_runs():
    assert parse("**a** b _c_ `d`") == (
        Run("a", bold=True), Run(" b "), Run("c", oblique=True), Run(" "), Run("d", mono=True),
    )  # fmt: skip


def test_bold_and_oblique_together():
    assert parse("**a _b_**") == (Run("a ", bold=True), Run("b", bold=True, oblique=True))


def test_symbol_is_oblique_with_an_upright_index():
    assert parse("{R_si}") == (Run("R", oblique=True), Run("si", index=True))
    assert parse("**{lam}**") == (Run("λ", bold=True, oblique=True),)


def test_symbol_with_another_index():
    assert parse("{R|5;q}") == (Run("R", oblique=True), Run("5;q", index=True))
    assert parse("{R_si|}") == (Run("R", oblique=True),)


def test_name_outside_the_glossary_reads_as_written():
    assert parse("{Q_no}") == (Run("Q", oblique=True), Run("no", index=True))


@pytest.mark.parametrize("text", ["hemp_batt_dry", "a * b", "2 _ 3", "f(x) = {1}", "a `"])
def test_what_is_no_mark_up_stays(text):
    assert as_plain(text).replace("`", "") == text.replace("`", "")


@pytest.mark.parametrize(
    ("text", "kept"),
    [
        ("15 mm", "15_mm"), ("0.04 W/(m·K)", "0.04_W/(m·K)"), ("20 %", "20_%"), ("−27 °C", "−27_°C"),
        ("1 1/2 in", "1_1/2_in"), ("10 : 1", "10_:_1"), ("38 × 184", "38_×_184"), ("2 walls", "2 walls"),
        ("zone 6 applies", "zone_6 applies"), ("a zone of 6", "a zone of 6"), ("3 mats", "3 mats"),
        ("52 m², one", "52_m², one"),
    ],
)  # fmt: skip
def test_figure_and_unit_stay_on_one_line(text, kept):
    assert parse(text)[0].text == kept.replace("_", NO_BREAK)
    assert as_plain(text) == text


@pytest.mark.parametrize("text", HOSTILE)
def test_a_persons_text_is_never_mark_up(text):
    assert parse(plain(text)) == (Run(text),)


@given(st.text(max_size=60))
def test_escaping_loses_nothing_and_marks_nothing(text):
    runs = parse(plain(text))
    assert "".join(run.text for run in runs).replace(NO_BREAK, " ") == clean(text).replace(NO_BREAK, " ")
    assert not any(run.bold or run.oblique or run.mono or run.index for run in runs)


@given(st.text(max_size=60))
def test_cleaned_text_can_be_drawn(text):
    assert font.missing_glyphs(clean(text)) == ""
    assert clean(clean(text)) == clean(text)


def test_control_characters_vanish_and_lines_join():
    assert clean("a\x00b\x1b[31m\tc\r\nd\u202e") == "ab[31m c d"


def test_right_to_left_and_unknown_become_one_mark():
    assert clean("Haus \u05d1\u05d9\u05ea 1") == "Haus ? 1"
    assert clean("\u6f22\u5b57") == "?"
    assert unprintable("x \u6f22\u6f22 \u05d1 é") == "\u6f22\u05d1"


def test_accents_are_composed_and_stacks_dropped():
    assert clean("e\u0301") == "é"
    assert clean("a\u0315\u0316\u0317b") == "ab"
